package app.restwater.android

import android.app.PendingIntent
import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import app.restwater.core.Key
import app.restwater.core.Moment
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.WatchView

/** A key of the lock screen or of an alarm: it logs without opening the app, at the moment it was tapped. */
class KeyReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        val app = context.applicationContext as RestwaterApplication
        // This is the moment of the tap, so it is read before anything else.
        val at = app.now()
        val key = Key.entries.find { it.name == intent.getStringExtra(KEY) } ?: return
        // The rod that the key was shown for, whichever is chosen by now.
        val rod = intent.getIntExtra(ROD, NO_ROD).takeIf { it != NO_ROD }?.toUByte()
        val failed = { why: RestwaterException.Failed -> app.lockScreen.notSaved(intent.getStringExtra(LABEL) ?: key.name, why.text) }
        offMain(context, failed) { core -> tap(core, key, rod, at, failed) }
    }

    /** The core logs only a key that it offers for that rod. If it refuses one, a notification says why: no screen is visible. */
    private fun tap(core: Restwater, key: Key, rod: UByte?, at: Moment, failed: (RestwaterException.Failed) -> Unit): WatchView {
        try {
            core.actOutside(key, rod, at)
        } catch (refused: RestwaterException.Failed) {
            failed(refused)
        }
        return core.watch(at)
    }

    internal companion object {
        const val KEY = "key"
        const val ROD = "rod"
        const val LABEL = "label"
        private const val NO_ROD = -1

        fun intent(context: Context, key: Key, rod: UByte, label: String): PendingIntent {
            val intent = Intent(context, KeyReceiver::class.java).setAction("key-${key.name}-$rod")
                .putExtra(KEY, key.name).putExtra(ROD, rod.toInt()).putExtra(LABEL, label)
            return PendingIntent.getBroadcast(context, 0, intent, PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT)
        }
    }
}
