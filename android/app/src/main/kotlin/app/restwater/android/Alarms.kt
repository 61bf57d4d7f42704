package app.restwater.android

import android.app.AlarmManager
import android.app.NotificationManager
import android.app.PendingIntent
import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import android.os.Build
import app.restwater.core.Key
import app.restwater.core.WatchAlarm
import app.restwater.core.WatchKey
import app.restwater.core.WatchView
import app.restwater.core.keyAction
import kotlin.math.abs

/**
 * The system's alarms: they wake the phone out of doze. The alarms that are set and those that have rung are stored on
 * the phone, since the process may no longer exist when one rings and the system forgets its own list at a restart.
 */
internal class Alarms(private val context: Context, private val ringing: Ringing, private val openApp: () -> PendingIntent) {
    private val manager = checkNotNull(context.getSystemService(AlarmManager::class.java))
    private val app get() = context.applicationContext as RestwaterApplication
    private val planned = Kept(context, "planned:")
    private val rung = Kept(context, "rung:")

    /** Since when an alarm can be heard, by the clock that nobody sets. */
    private val heard = Kept(context, "heard:")

    /** Whether an alarm comes at its exact minute. */
    val exact get() = Build.VERSION.SDK_INT < Build.VERSION_CODES.S || manager.canScheduleExactAlarms()

    /** Sets the alarms that are still to come and no others; returns whether one of them is new. */
    fun set(watch: WatchView): Boolean = synchronized(Alarms) {
        val due = watch.due.associateBy { it.id }
        // Two readings of the phone's clocks differ slightly: an alarm that has just rung is not still to come.
        val coming = watch.alarms.filterNot { alarm -> near(rung[alarm.id], alarm.atWallMs) }
        val ids = coming.map { it.id }.toSet()
        val still = due.keys + (watch.alarms.map { it.id } - ids)
        val over = rung.ids - still
        if (over.isNotEmpty()) ringing.silence(over)
        over.forEach(rung::drop)
        over.forEach(heard::drop)
        (planned.ids - ids).forEach { id ->
            cancel(id)
            planned.drop(id)
            // Its minute passed while the phone was off, or the system delivered it late.
            due[id]?.let(::ring)
        }
        val isNew = coming.any { !near(planned[it.id], it.atWallMs) }
        coming.forEach(::plan)
        isNew
    }

    private fun plan(alarm: WatchAlarm) {
        val now = app.now()
        val rings = intent(alarm.id, alarm, Due(now.boot, now.monoMs + alarm.atWallMs - now.wallMs))
        if (exact) {
            // Of other exact alarms, Android 8 to 11 allow an app one in nine minutes while the phone dozes.
            manager.setAlarmClock(AlarmManager.AlarmClockInfo(alarm.atWallMs, openApp()), rings)
            // If exact alarms are revoked, the system deletes them and tells nobody; this one stays, and checks what is due.
            manager.setAndAllowWhileIdle(AlarmManager.RTC_WAKEUP, alarm.atWallMs + LATE_MS, intent(LATE + alarm.id, null))
        } else {
            manager.setAndAllowWhileIdle(AlarmManager.RTC_WAKEUP, alarm.atWallMs, rings)
        }
        planned[alarm.id] = alarm.atWallMs
    }

    /**
     * The system's alarm went off. If its cast ended meanwhile it doesn't ring, since another may be set by now. If the wall
     * clock was put forward it comes too early, because the system reports that change only afterwards; it is then set again for
     * the time that is left.
     */
    fun wentOff(alarm: WatchAlarm, due: Due?): Unit = synchronized(Alarms) {
        if (!near(planned[alarm.id], alarm.atWallMs)) return
        val now = app.now()
        val leftMs = due?.takeIf { alarm.rod != null && it.boot == now.boot }?.let { it.monoMs - now.monoMs } ?: 0
        if (leftMs > EARLY_MS) plan(alarm.copy(atWallMs = now.wallMs + leftMs)) else ring(alarm)
    }

    private fun cancel(id: String) {
        manager.cancel(intent(id, null))
        manager.cancel(intent(LATE + id, null))
    }

    /** Rings once, although both the system and a check of the log may find that it is due. */
    fun ring(alarm: WatchAlarm): Unit = synchronized(Alarms) {
        // If the check of the log was faster than the system, the system's alarm is still to come.
        cancel(alarm.id)
        planned.drop(alarm.id)
        if (near(rung[alarm.id], alarm.atWallMs)) return
        rung[alarm.id] = alarm.atWallMs
        heard[alarm.id] = app.now().monoMs
        ringing.ring(alarm)
    }

    /** Whether an alarm that nobody has answered was heard long enough. If it is [silent] now, by a call or Do not disturb, the count starts again. */
    fun heardTooLong(id: String, silent: Boolean): Boolean {
        val now = app.now().monoMs
        if (silent) return false.also { heard.drop(id) }
        val since = heard[id] ?: now.also { heard[id] = it }
        return now - since >= LONGEST_MS
    }

    /** Whether an alarm has rung and its cast is not over. */
    fun hasRung(id: String) = id in rung.ids

    /**
     * The phone plays one notification's sound at a time and none during a call, and never goes back to one that it left: an
     * alarm that nobody has answered is looked at again in a minute.
     */
    fun checkInAMinute() = callIn(AGAIN_MS, AGAIN)

    /** What this process sounds ends then, even if the system has frozen the process. */
    fun endLater() = callIn(Sounder.LONGEST_MS, END)

    private fun callIn(ms: Long, action: String) {
        val at = app.now().wallMs + ms
        if (exact) {
            manager.setExactAndAllowWhileIdle(AlarmManager.RTC_WAKEUP, at, intent(action, null))
        } else {
            manager.setAndAllowWhileIdle(AlarmManager.RTC_WAKEUP, at, intent(action, null))
        }
    }

    /** No alarm sounds any more. */
    fun stopChecking() = manager.cancel(intent(AGAIN, null))

    private fun near(one: Long?, other: Long) = one != null && abs(one - other) < SAME_MS

    private fun intent(id: String, alarm: WatchAlarm?, due: Due? = null): PendingIntent {
        val intent = Intent(context, AlarmReceiver::class.java).setAction(id)
        alarm?.let {
            intent.putExtra(TITLE, it.title).putExtra(TEXT, it.text).putExtra(AT, it.atWallMs).putExtra(ROD, it.rod?.toInt() ?: NO_ROD)
            intent.putExtra(KEYS, it.keys.map { key -> key.key.name }.toTypedArray()).putExtra(LABELS, it.keys.map { key -> key.label }.toTypedArray())
        }
        due?.let { intent.putExtra(BOOT, it.boot).putExtra(MONO, it.monoMs) }
        return PendingIntent.getBroadcast(context, 0, intent, PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT)
    }

    internal companion object {
        private const val TITLE = "title"
        private const val TEXT = "text"
        private const val AT = "at"
        private const val ROD = "rod"
        private const val KEYS = "keys"
        private const val LABELS = "labels"
        private const val BOOT = "boot"
        private const val MONO = "mono"
        private const val NO_ROD = -1
        private const val SAME_MS = 2_000L

        /** The system is seldom early by more than the difference of two readings of the clocks. */
        private const val EARLY_MS = 5_000L
        private const val AGAIN_MS = 60_000L

        /** As the phone's own alarm clock does by default (AOSP's DeskClock, "Silence after", from memory). */
        private const val LONGEST_MS = 10 * 60_000L

        /** The actions that no alarm has, since theirs are the core's ids: one, and the beginning of others. */
        const val AGAIN = "again"
        const val END = "end"
        const val LATE = "late-"

        /** This long after its time an alarm has rung, if the system still had it. */
        private const val LATE_MS = 60_000L

        /** When that alarm is due by the clock that nobody sets; `null` for an alarm set by an earlier version. */
        fun due(intent: Intent): Due? = intent.getStringExtra(BOOT)?.let { Due(it, intent.getLongExtra(MONO, 0)) }

        /** The alarm that an intent of [intent] carries. */
        fun read(intent: Intent): WatchAlarm? {
            val rod = intent.getIntExtra(ROD, NO_ROD).takeIf { it != NO_ROD }?.toUByte()
            val names = intent.getStringArrayExtra(KEYS).orEmpty()
            val keys = names.zip(intent.getStringArrayExtra(LABELS).orEmpty()).mapNotNull { (name, label) ->
                val key = Key.entries.find { it.name == name } ?: return@mapNotNull null
                rod?.let { keyAction(key, it) }?.let { WatchKey(key, label, it) }
            }
            val title = intent.getStringExtra(TITLE) ?: return null
            return WatchAlarm(intent.action ?: return null, intent.getLongExtra(AT, 0), title, intent.getStringExtra(TEXT).orEmpty(), rod, keys)
        }
    }
}

/** A moment by the clock that counts from the phone's start and that nobody sets. */
internal class Due(val boot: String, val monoMs: Long)

/** Makes an alarm heard and seen, and stops it. */
internal interface Ringing {
    fun ring(alarm: WatchAlarm)
    fun silence(alarmIds: Set<String>)
}

/** Moments by id, which survive the end of the process. */
private class Kept(context: Context, private val prefix: String) {
    private val store = context.getSharedPreferences(ALARMS, Context.MODE_PRIVATE)
    val ids get() = store.all.keys.filter { it.startsWith(prefix) }.map { it.removePrefix(prefix) }.toSet()

    operator fun get(id: String): Long? = if (store.contains(prefix + id)) store.getLong(prefix + id, 0) else null

    // The receiver's process may end as soon as it returns.
    operator fun set(id: String, at: Long) {
        store.edit().putLong(prefix + id, at).commit()
    }

    fun drop(id: String) {
        store.edit().remove(prefix + id).commit()
    }
}

/** The file of preferences that belongs to the alarms of this phone. */
internal const val ALARMS = "alarms"

/** An alarm is due: it rings without asking the log, which may be busy. */
class AlarmReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        val app = context.applicationContext as RestwaterApplication
        if (intent.action == Alarms.AGAIN) {
            // The running wait said so too.
            if (LockScreen(context).soundAgain()) offMain(context) { core -> core.watch(app.now()) }
            return
        }
        if (intent.action == Alarms.END) return app.sounder.stopAll()
        if (intent.action.orEmpty().startsWith(Alarms.LATE)) {
            return offMain(context) { core -> core.watch(app.now()) }
        }
        val alarm = Alarms.read(intent) ?: return
        val silenced = LockScreen(context).wentOff(alarm, Alarms.due(intent))
        // It has rung by now; what the running wait says of it may wait for the log.
        if (silenced) offMain(context) { core -> core.watch(app.now()) }
    }
}

/**
 * The phone was restarted, its clock, zone or language was set, exact alarms were allowed, or notifications or one of their channels
 * were switched off or on: the alarms are set again, and the running wait says what hinders them.
 */
class StartReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        if (intent.action !in SETS_ALARMS_AGAIN) return
        val app = context.applicationContext as RestwaterApplication
        offMain(context) { core ->
            core.watch(app.now()).also { watch -> if (intent.action in DROPPED) app.lockScreen.showDropped(watch) }
        }
    }

    private companion object {
        /** Sent from Android 9 on, to the app itself. */
        val BLOCKED = setOf(NotificationManager.ACTION_APP_BLOCK_STATE_CHANGED, NotificationManager.ACTION_NOTIFICATION_CHANNEL_BLOCK_STATE_CHANGED)

        val SETS_ALARMS_AGAIN = setOf(
            Intent.ACTION_BOOT_COMPLETED, Intent.ACTION_TIME_CHANGED, Intent.ACTION_TIMEZONE_CHANGED, Intent.ACTION_LOCALE_CHANGED,
            Intent.ACTION_MY_PACKAGE_REPLACED,
            AlarmManager.ACTION_SCHEDULE_EXACT_ALARM_PERMISSION_STATE_CHANGED,
        ) + BLOCKED

        /** The system may have dropped the app's notifications. */
        val DROPPED = setOf(Intent.ACTION_BOOT_COMPLETED, Intent.ACTION_MY_PACKAGE_REPLACED) + BLOCKED
    }
}

/** Do not disturb begins or ends, by hand or by its schedule: the running wait says whether it silences alarms. */
class SilenceReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        val app = context.applicationContext as RestwaterApplication
        offMain(context) { core -> core.watch(app.now()) }
    }
}

/**
 * The running wait was swiped away, which Android 14 and later allow: it comes back while a session is open. So does an
 * alarm, with its keys and without its sound, while its cast is not over. An alarm of the match has no key that would answer
 * it: the swipe does.
 */
class SweptReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        val app = context.applicationContext as RestwaterApplication
        offMain(context) { core ->
            core.watch(app.now()).also { watch -> watch.due.find { it.id == intent.action && it.rod != null }?.let(app.lockScreen::showAgain) }
        }
    }
}
