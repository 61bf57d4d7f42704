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
import android.media.RingtoneManager
import android.os.Build
import androidx.core.app.NotificationCompat
import androidx.core.app.NotificationManagerCompat
import app.restwater.R
import app.restwater.core.screen.WatchAlarm
import app.restwater.core.screen.WatchView
import app.restwater.core.shellWords
import app.restwater.ui.Lookout

/**
 * The running wait on the lock screen, with its keys, and the alarms. There is no foreground service: the chronometer of
 * the notification is drawn by the system, and an alarm of the system's wakes the app, so nothing of ours has to run.
 */
class LockScreen(private val context: Context) : Lookout {
    private val notifications = NotificationManagerCompat.from(context)
    private val words = shellWords()

    init {
        val wait = NotificationChannel(WAIT, words.channelWait, NotificationManager.IMPORTANCE_LOW)
        wait.setShowBadge(false)
        val alarm = NotificationChannel(ALARM, words.channelAlarm, NotificationManager.IMPORTANCE_HIGH)
        val sound = AudioAttributes.Builder().setUsage(AudioAttributes.USAGE_ALARM).setContentType(AudioAttributes.CONTENT_TYPE_SONIFICATION).build()
        alarm.setSound(RingtoneManager.getDefaultUri(RingtoneManager.TYPE_ALARM), sound)
        alarm.enableVibration(true)
        alarm.vibrationPattern = BUZZ
        alarm.lockscreenVisibility = Notification.VISIBILITY_PUBLIC
        notifications.createNotificationChannels(listOf(wait, alarm))
    }

    /** Whether the system lets anything be shown. */
    val allowed: Boolean
        get() {
            val asked = Build.VERSION.SDK_INT < Build.VERSION_CODES.TIRAMISU ||
                context.checkSelfPermission(Manifest.permission.POST_NOTIFICATIONS) == PackageManager.PERMISSION_GRANTED
            return asked && notifications.areNotificationsEnabled()
        }

    override fun show(watch: WatchView): String? {
        val late = Alarms(context).set(watch.alarms)
        if (!watch.open) {
            notifications.cancel(WAIT_ID)
            return null
        }
        if (!allowed) return words.noNotifications
        post(WAIT_ID, running(watch))
        return words.lateAlarms.takeIf { late }
    }

    private fun running(watch: WatchView): Notification {
        val builder = NotificationCompat.Builder(context, WAIT)
            .setSmallIcon(R.drawable.fan)
            .setContentTitle(watch.title)
            .setContentText(watch.text)
            .setOngoing(true)
            .setOnlyAlertOnce(true)
            .setCategory(NotificationCompat.CATEGORY_STOPWATCH)
            .setVisibility(NotificationCompat.VISIBILITY_PUBLIC)
            .setContentIntent(openApp())
        watch.sinceWallMs?.let { builder.setUsesChronometer(true).setWhen(it).setShowWhen(true) }
        watch.keys.forEach { builder.addAction(0, it.label, KeyReceiver.intent(context, it.key, watch.rod)) }
        return builder.build()
    }

    /** Rings: sound and vibration of the alarm channel, and full screen where the phone is locked and that is allowed. */
    fun ring(alarm: WatchAlarm) {
        if (!allowed) return
        val notification = NotificationCompat.Builder(context, ALARM)
            .setSmallIcon(R.drawable.fan)
            .setContentTitle(alarm.title)
            .setContentText(alarm.text)
            .setCategory(NotificationCompat.CATEGORY_ALARM)
            .setPriority(NotificationCompat.PRIORITY_MAX)
            .setVisibility(NotificationCompat.VISIBILITY_PUBLIC)
            .setAutoCancel(true)
            .setContentIntent(openApp())
            .setFullScreenIntent(openApp(), true)
            .build()
        post(alarm.id.hashCode(), notification)
    }

    /** Stops an alarm that rang for what is over by now. */
    fun hush(alarmId: String) = notifications.cancel(alarmId.hashCode())

    // Every way here asks [allowed] first; the lint can't see it.
    @SuppressLint("MissingPermission")
    private fun post(id: Int, notification: Notification) = notifications.notify(id, notification)

    private fun openApp(): PendingIntent {
        val intent = Intent(context, MainActivity::class.java).addFlags(Intent.FLAG_ACTIVITY_NEW_TASK or Intent.FLAG_ACTIVITY_SINGLE_TOP)
        return PendingIntent.getActivity(context, 0, intent, PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT)
    }

    companion object {
        const val WAIT = "wait"
        const val ALARM = "alarm"
        const val WAIT_ID = 1
        private val BUZZ = longArrayOf(0, 600, 300, 600, 300, 600)
    }
}
