package app.restwater.android

import android.app.AlarmManager
import android.app.PendingIntent
import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import android.os.Build
import app.restwater.core.screen.WatchAlarm

/** The system's alarms: they wake the phone out of doze. One for each bait that is out, told apart by its id. */
class Alarms(private val context: Context) {
    private val manager = checkNotNull(context.getSystemService(AlarmManager::class.java))
    private val kept = context.getSharedPreferences("alarms", Context.MODE_PRIVATE)

    /** Sets these and no others; whether they may ring late, since the phone allows no exact ones. */
    fun set(alarms: List<WatchAlarm>): Boolean {
        val before = kept.getStringSet(IDS, emptySet()).orEmpty()
        val now = alarms.map { it.id }.toSet()
        (before - now).forEach {
            manager.cancel(intent(it, null))
            LockScreen(context).hush(it)
        }
        kept.edit().putStringSet(IDS, now).apply()
        val exact = Build.VERSION.SDK_INT < Build.VERSION_CODES.S || manager.canScheduleExactAlarms()
        for (alarm in alarms) {
            val rings = intent(alarm.id, alarm)
            if (exact) {
                manager.setExactAndAllowWhileIdle(AlarmManager.RTC_WAKEUP, alarm.atWallMs, rings)
            } else {
                manager.setAndAllowWhileIdle(AlarmManager.RTC_WAKEUP, alarm.atWallMs, rings)
            }
        }
        return alarms.isNotEmpty() && !exact
    }

    private fun intent(id: String, alarm: WatchAlarm?): PendingIntent {
        val intent = Intent(context, AlarmReceiver::class.java).setAction(id)
        alarm?.let { intent.putExtra(TITLE, it.title).putExtra(TEXT, it.text).putExtra(AT, it.atWallMs) }
        return PendingIntent.getBroadcast(context, 0, intent, PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT)
    }

    internal companion object {
        const val IDS = "ids"
        const val TITLE = "title"
        const val TEXT = "text"
        const val AT = "at"
    }
}

/** An alarm is due: it rings, without asking the log, which may be busy. */
class AlarmReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        val id = intent.action ?: return
        val title = intent.getStringExtra(Alarms.TITLE) ?: return
        LockScreen(context).ring(WatchAlarm(id, intent.getLongExtra(Alarms.AT, 0), title, intent.getStringExtra(Alarms.TEXT).orEmpty()))
    }
}

/** The phone was started anew, or its clock or zone set: alarms are the system's and have to be set again. */
class StartReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        if (intent.action !in AGAIN) return
        offMain(context) { core -> core.watch((context.applicationContext as RestwaterApplication).now()) }
    }

    private companion object {
        val AGAIN = setOf(Intent.ACTION_BOOT_COMPLETED, Intent.ACTION_TIME_CHANGED, Intent.ACTION_TIMEZONE_CHANGED, Intent.ACTION_MY_PACKAGE_REPLACED)
    }
}
