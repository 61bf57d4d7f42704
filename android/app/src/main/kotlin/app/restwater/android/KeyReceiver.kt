package app.restwater.android

import android.app.PendingIntent
import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.keyAction
import app.restwater.core.log.Moment
import app.restwater.core.screen.Key
import app.restwater.core.screen.WatchView

/** A key of the lock screen: it logs without opening the app, at the moment it was tapped. */
class KeyReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        val key = Key.entries.find { it.name == intent.getStringExtra(KEY) } ?: return
        val rod = intent.getIntExtra(ROD, 1).toUByte()
        val at = (context.applicationContext as RestwaterApplication).now()
        offMain(context) { core -> tap(core, key, rod, at) }
    }

    /** Only a key that the core has on the lock screen at that moment is logged from there. */
    private fun tap(core: Restwater, key: Key, rod: UByte, at: Moment): WatchView {
        val watch = core.watch(at)
        val action = keyAction(key, rod)?.takeIf { watch.keys.any { shown -> shown.key == key } } ?: return watch
        try {
            core.act(action, at)
        } catch (refused: RestwaterException.Failed) {
            // What can't be logged now changes nothing; the keys are shown anew.
        }
        return core.watch(at)
    }

    internal companion object {
        const val KEY = "key"
        const val ROD = "rod"

        fun intent(context: Context, key: Key, rod: UByte): PendingIntent {
            val intent = Intent(context, KeyReceiver::class.java).setAction("key-${key.name}-$rod").putExtra(KEY, key.name).putExtra(ROD, rod.toInt())
            return PendingIntent.getBroadcast(context, 0, intent, PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT)
        }
    }
}
