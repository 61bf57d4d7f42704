package app.restwater.android

import android.Manifest
import android.annotation.SuppressLint
import android.app.Notification
import android.app.NotificationChannel
import android.app.NotificationManager
import android.app.PendingIntent
import android.content.Context
import android.content.Intent
import android.content.pm.PackageManager
import android.media.AudioAttributes
import android.media.AudioManager
import android.media.RingtoneManager
import android.os.Build
import android.provider.Settings
import android.service.notification.StatusBarNotification
import androidx.core.app.NotificationCompat
import androidx.core.app.NotificationManagerCompat
import app.restwater.R
import app.restwater.core.WatchAlarm
import app.restwater.core.WatchView
import app.restwater.core.shellWords
import app.restwater.ui.Lookout
import app.restwater.ui.Refused
import app.restwater.ui.language

/**
 * The running wait on the lock screen, with its keys, and the alarms. There is no foreground service: the system draws
 * the chronometer of the notification, and a system alarm wakes the app, so none of our code has to run.
 */
class LockScreen(private val context: Context) : Lookout, Ringing {
    private val notifications = NotificationManagerCompat.from(context)
    private val manager = checkNotNull(context.getSystemService(NotificationManager::class.java))
    private val words get() = shellWords(language())
    private val alarms = Alarms(context, this) { openApp() }
    private val app get() = context.applicationContext as RestwaterApplication

    init {
        renamed()
    }

    /** Gives the channels the names of the phone's language; the angler's own settings of a channel are kept. */
    fun renamed() {
        val wait = NotificationChannel(WAIT, words.channelWait, NotificationManager.IMPORTANCE_LOW)
        wait.setShowBadge(false)
        val alarm = NotificationChannel(ALARM, words.channelAlarm, NotificationManager.IMPORTANCE_HIGH)
        val sound = AudioAttributes.Builder().setUsage(AudioAttributes.USAGE_ALARM).setContentType(AudioAttributes.CONTENT_TYPE_SONIFICATION).build()
        alarm.setSound(RingtoneManager.getDefaultUri(RingtoneManager.TYPE_ALARM), sound)
        alarm.enableVibration(true)
        alarm.vibrationPattern = BUZZ
        alarm.lockscreenVisibility = Notification.VISIBILITY_PUBLIC
        val trouble = NotificationChannel(TROUBLE, context.getString(R.string.channel_not_saved), NotificationManager.IMPORTANCE_HIGH)
        notifications.createNotificationChannels(listOf(wait, alarm, trouble))
    }

    /** Whether the system allows notifications. */
    val allowed: Boolean
        get() {
            val asked = Build.VERSION.SDK_INT < Build.VERSION_CODES.TIRAMISU ||
                context.checkSelfPermission(Manifest.permission.POST_NOTIFICATIONS) == PackageManager.PERMISSION_GRANTED
            return asked && notifications.areNotificationsEnabled()
        }

    /** What the angler lets a channel do: each can be switched off, or set to silent. */
    private fun importance(channel: String) = notifications.getNotificationChannel(channel)?.importance ?: NotificationManager.IMPORTANCE_HIGH

    private fun isOff(channel: String) = importance(channel) == NotificationManager.IMPORTANCE_NONE

    private val importance get() = importance(ALARM)

    /** Whether the running wait alone was switched off: a long press on it offers that. */
    val waitHidden: Boolean get() = allowed && isOff(WAIT)

    /** Whether an alarm may be shown, with or without a sound. */
    private val alarmsShown: Boolean get() = allowed && importance != NotificationManager.IMPORTANCE_NONE

    /** Whether an alarm may be shown and may sound or shake. */
    private val alarmsNoticed: Boolean get() = allowed && importance >= NotificationManager.IMPORTANCE_DEFAULT

    /** Whether the alarms' channel has a tone: the angler may have chosen none, for it or for all alarms of the phone. */
    private val toned: Boolean
        get() {
            val sound = notifications.getNotificationChannel(ALARM)?.sound ?: return false
            return sound != Settings.System.DEFAULT_ALARM_ALERT_URI ||
                RingtoneManager.getActualDefaultRingtoneUri(context, RingtoneManager.TYPE_ALARM) != null
        }

    /** Whether an alarm may be shown and may ring. */
    val alarmsAllowed: Boolean get() = alarmsNoticed && toned

    /** Whether Do not disturb silences alarms at this moment. The angler chose that, so nothing sounds instead. */
    internal val undisturbed: Boolean
        get() = when (manager.currentInterruptionFilter) {
            NotificationManager.INTERRUPTION_FILTER_NONE -> true
            NotificationManager.INTERRUPTION_FILTER_PRIORITY -> !alarmsLetThrough
            else -> false
        }

    /** Whether alarms are among the exceptions of Do not disturb. Before Android 11 no app may ask. */
    private val alarmsLetThrough: Boolean
        get() {
            if (Build.VERSION.SDK_INT < Build.VERSION_CODES.R) return true
            val policy: NotificationManager.Policy? = manager.consolidatedNotificationPolicy
            return policy == null || policy.priorityCategories and NotificationManager.Policy.PRIORITY_CATEGORY_ALARMS != 0
        }

    override fun show(watch: WatchView): Refused? {
        val isNew = alarms.set(watch)
        if (!watch.open) {
            notifications.cancel(WAIT_ID)
            return null
        }
        if (allowed) {
            Question.granted(context)
            post(null, WAIT_ID, running(watch))
        }
        // A wait that is not shown is said when it comes to that, not with each alarm.
        return refused(watch)?.let { Refused(it, isNew && it != words.waitHidden) }
    }

    /** What is not allowed of what a session needs. While the question is still open, nothing is refused. */
    private fun refused(watch: WatchView): String? = when {
        !allowed -> words.noNotifications.takeIf { Question.isAnswered(context) }
        // An alarm matters more.
        else -> hindered(watch) ?: words.waitHidden.takeIf { waitHidden }
    }

    /** What hinders alarms that may be shown. */
    private fun hindered(watch: WatchView): String? = when {
        watch.alarms.isEmpty() -> null
        !alarmsAllowed -> words.alarmsSilent
        undisturbed -> words.alarmsUndisturbed
        !alarms.exact -> words.lateAlarms
        else -> null
    }

    private fun running(watch: WatchView): Notification {
        val builder = NotificationCompat.Builder(context, WAIT)
            .setSmallIcon(R.drawable.wait)
            .setContentTitle(watch.title)
            .setContentText(watch.text)
            .setOngoing(true)
            .setOnlyAlertOnce(true)
            .setCategory(NotificationCompat.CATEGORY_STOPWATCH)
            .setVisibility(NotificationCompat.VISIBILITY_PUBLIC)
            .setContentIntent(openApp())
            .setDeleteIntent(swept(null))
            // Where the system has a place for live updates, the wait is shown there as a counting chip.
            .setRequestPromotedOngoing(true)
        (hindered(watch) ?: silenced(watch))?.let { builder.setStyle(below(watch.text, it)) }
        watch.sinceWallMs?.let { builder.setUsesChronometer(true).setWhen(it).setShowWhen(true) }
        watch.keys.forEach { builder.addAction(0, it.label, KeyReceiver.intent(context, it.key, watch.rod, it.label)) }
        return builder.build()
    }

    private fun below(text: String, words: String) = NotificationCompat.BigTextStyle().bigText(listOf(text, words).joinToString("\n"))

    /** What silences an alarm that has rung. */
    private fun silenced(watch: WatchView): String? = words.alarmsUndisturbed.takeIf { undisturbed && watch.due.any { it.rod != null } }

    /** A system alarm went off. Whether Do not disturb silences it, which Android 14 and later tell only an app in the foreground. */
    internal fun wentOff(alarm: WatchAlarm, due: Due?): Boolean {
        alarms.wentOff(alarm, due)
        return undisturbed
    }

    /**
     * Sound and vibration of the alarm channel until it is answered; full screen if the phone is locked and that is
     * allowed. An alarm of the match only informs, so it sounds once.
     */
    override fun ring(alarm: WatchAlarm) {
        app.rings(alarm)
        // Where the notification would be silent the phone still sounds or shakes, for as long as the system lets it.
        val asks = alarm.rod != null
        // A channel without a tone shakes, as the angler chose.
        if (!alarmsNoticed) {
            app.sounder.sound(alarm.id, once = !asks)
            if (asks) alarms.endLater()
        }
        if (!alarmsShown) return
        val builder = shown(alarm)
        if (fullScreen) builder.setFullScreenIntent(openApp(alarm), true)
        val shown = builder.build()
        if (asks) shown.flags = shown.flags or Notification.FLAG_INSISTENT
        post(alarm.id, ALARM_ID, shown)
        if (asks && alarmsNoticed) alarms.checkInAMinute()
    }

    /** The alarms that nobody has answered or silenced, as they are shown. */
    private val sounding: List<StatusBarNotification>
        get() = manager.activeNotifications.filter { it.id == ALARM_ID && it.notification.flags and Notification.FLAG_INSISTENT != 0 }

    /**
     * A minute after an alarm rang, and each minute after that until it is answered: a call or another notification may have
     * silenced it without the app knowing. During a call it would only beep, so it waits until the call ends. One that
     * was heard for ten minutes falls silent. Returns whether Do not disturb, which silenced it, has ended by now.
     */
    internal fun soundAgain(): Boolean = synchronized(Alarms) {
        // Nobody is there: a phone in a bag, its session still open, would ring until its battery is empty.
        sounding.filter { alarms.heardTooLong(it.tag, silent = undisturbed || inCall) }.forEach(::hush)
        val wasSilenced = sounding.any(::saysMore)
        if (sounding.isEmpty()) return false
        if (!inCall) resound()
        alarms.checkInAMinute()
        wasSilenced && !undisturbed
    }

    private val inCall: Boolean
        get() = context.getSystemService(AudioManager::class.java)?.mode in
            setOf(AudioManager.MODE_RINGTONE, AudioManager.MODE_IN_CALL, AudioManager.MODE_IN_COMMUNICATION)

    /** Posts the newest of the alarms that are sounding, last and with its sound: the phone's one player plays for that. */
    private fun resound() {
        val all = sounding.sortedBy { it.postTime }
        val newest = all.lastOrNull() ?: return
        if (!undisturbed) all.dropLast(1).filter { saysMore(it) }.forEach { post(it, sounds = false) }
        post(newest, sounds = true)
    }

    /** Whether it says what silences it. */
    private fun saysMore(shown: StatusBarNotification) = shown.notification.extras.containsKey(Notification.EXTRA_TEMPLATE)

    /** Posts an alarm again. It filled the screen the first time; now a screen in a pocket stays dark. */
    private fun post(shown: StatusBarNotification, sounds: Boolean) {
        // The builder writes into what it is given.
        val again = Notification.Builder.recoverBuilder(context, shown.notification.clone()).setFullScreenIntent(null, false).setOnlyAlertOnce(!sounds)
        // What was said of Do not disturb is over with it.
        if (!undisturbed) again.setStyle(null)
        post(shown.tag, shown.id, again.build().apply { flags = flags or Notification.FLAG_INSISTENT })
    }

    /** Shows an alarm that was swiped away, without its sound. */
    internal fun showAgain(alarm: WatchAlarm) {
        if (alarmsShown) post(alarm.id, ALARM_ID, shown(alarm).setSilent(true).build())
    }

    /** Shows what had rung for a cast before the system dropped it, and sounds once, since nobody has answered it. */
    internal fun showDropped(watch: WatchView): Unit = synchronized(Alarms) {
        val there = manager.activeNotifications.map { it.tag }
        val dropped = watch.due.filter { it.rod != null && alarms.hasRung(it.id) && it.id !in there }
        if (alarmsShown) dropped.forEach { post(it.id, ALARM_ID, shown(it).build()) }
    }

    /** Whether an alarm has rung and its cast is not over. */
    internal fun hasRung(alarmId: String) = alarms.hasRung(alarmId)

    private fun shown(alarm: WatchAlarm): NotificationCompat.Builder {
        val builder = NotificationCompat.Builder(context, ALARM)
            .setSmallIcon(R.drawable.wait)
            .setContentTitle(alarm.title)
            .setContentText(alarm.text)
            .setCategory(NotificationCompat.CATEGORY_ALARM)
            .setPriority(NotificationCompat.PRIORITY_MAX)
            .setVisibility(NotificationCompat.VISIBILITY_PUBLIC)
            .setContentIntent(openApp(alarm))
            .setDeleteIntent(swept(alarm.id))
            // One of a cast stays with its keys until the cast is over.
            .setAutoCancel(alarm.rod == null)
        if (undisturbed) builder.setStyle(below(alarm.text, words.alarmsUndisturbed))
        alarm.rod?.let { rod -> alarm.keys.forEach { builder.addAction(0, it.label, KeyReceiver.intent(context, it.key, rod, it.label)) } }
        return builder
    }

    /** Whether an alarm comes at its exact minute. */
    val exactAlarms get() = alarms.exact

    /** Whether an alarm may fill the screen of a locked phone: from Android 14 this can be revoked, and its channel may be too low. */
    val fullScreen: Boolean get() = fullScreenGranted && importance >= NotificationManager.IMPORTANCE_HIGH

    /** Whether the app may fill the screen at all. */
    val fullScreenGranted: Boolean
        get() = Build.VERSION.SDK_INT < Build.VERSION_CODES.UPSIDE_DOWN_CAKE ||
            manager.canUseFullScreenIntent()

    /** Stops alarms whose cast is over by now. If the phone's one player played for one of them, another goes on. */
    override fun silence(alarmIds: Set<String>): Unit = synchronized(Alarms) {
        val sounded = sounding.any { it.tag in alarmIds }
        alarmIds.forEach { id ->
            notifications.cancel(id, ALARM_ID)
            app.sounder.stop(id)
        }
        if (sounding.isEmpty()) alarms.stopChecking() else if (sounded && !inCall) resound()
    }

    /** Ends the sound of a ringing alarm; the alarm stays on the screen with its keys until its cast has ended. */
    fun quieten(): Unit = synchronized(Alarms) {
        app.sounder.stopAll()
        alarms.stopChecking()
        // Those that were silenced before are in a group.
        manager.activeNotifications.filter { it.id == ALARM_ID && it.notification.group == null }.forEach(::hush)
    }

    private fun hush(shown: StatusBarNotification) {
        notifications.cancel(shown.tag, shown.id)
        // The group leaves the sound to its summary, which doesn't exist.
        val silent = Notification.Builder.recoverBuilder(context, shown.notification)
            .setGroup(QUIET)
            .setGroupAlertBehavior(Notification.GROUP_ALERT_SUMMARY)
            .build()
        post(shown.tag, shown.id, silent.apply { flags = flags and Notification.FLAG_INSISTENT.inv() })
    }

    /**
     * Reports a key that was tapped on the lock screen and is not in the log: its label and the core's reason. If its own channel
     * is off, it comes by that of the running wait, whose key it was, or by the alarms'.
     */
    fun notSaved(label: String, why: String) {
        if (!allowed) return
        val channel = listOf(TROUBLE, WAIT, ALARM).firstOrNull { !isOff(it) } ?: return
        val notification = NotificationCompat.Builder(context, channel)
            .setSmallIcon(R.drawable.wait)
            .setContentTitle(context.getString(R.string.not_saved, label))
            .setContentText(why)
            .setStyle(NotificationCompat.BigTextStyle().bigText(why))
            .setCategory(NotificationCompat.CATEGORY_ERROR)
            .setVisibility(NotificationCompat.VISIBILITY_PUBLIC)
            .setAutoCancel(true)
            .setContentIntent(openApp())
            .build()
        post(label, TROUBLE_ID, notification)
    }

    // Every caller checks [allowed] first; the lint can't see that.
    @SuppressLint("MissingPermission")
    private fun post(tag: String?, id: Int, notification: Notification) = notifications.notify(tag, id, notification)

    /** Opens the Bank, with the rod of an alarm that rang. */
    private fun openApp(alarm: WatchAlarm? = null): PendingIntent =
        // Each alarm has an intent of its own: extras don't tell two apart.
        PendingIntent.getActivity(context, alarm?.id.hashCode(), MainActivity.bank(context, alarm), FLAGS)

    private fun swept(alarmId: String?): PendingIntent =
        PendingIntent.getBroadcast(context, 0, Intent(context, SweptReceiver::class.java).setAction(alarmId), FLAGS)

    companion object {
        private const val FLAGS = PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT
        const val WAIT = "wait"
        const val ALARM = "alarm"
        const val TROUBLE = "trouble"
        const val WAIT_ID = 1
        private const val ALARM_ID = 2
        private const val QUIET = "quiet"
        const val TROUBLE_ID = 3
        internal val BUZZ = longArrayOf(0, 600, 300, 600, 300, 600)
    }
}
