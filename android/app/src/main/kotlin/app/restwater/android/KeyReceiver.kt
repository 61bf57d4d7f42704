package app.restwater.android

import android.app.PendingIntent
import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import app.restwater.core.Action
import app.restwater.core.ErrorKind
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
        val rod = intent.getIntExtra(ROD, 1).toUByte()
        val failed = { why: RestwaterException.Failed -> app.lockScreen.notSaved(intent.getStringExtra(LABEL) ?: key.name, why.text) }
        offMain(context, failed) { core -> tap(core, key, rod, at, failed) }
    }

    /** Logs only a key that the core offers on the lock screen for that rod at that moment. */
    private fun tap(core: Restwater, key: Key, rod: UByte, at: Moment, failed: (RestwaterException.Failed) -> Unit): WatchView {
        val watch = core.watch(at)
        val action = watch.action(key, rod) ?: return watch
        try {
            core.act(action, at)
        } catch (refused: RestwaterException.Failed) {
            // A key that can't be used at this moment changes nothing and the keys are shown again; any other failure
            // is shown.
            if (refused.kind != ErrorKind.NOT_NOW) failed(refused)
        }
        return core.watch(at)
    }

    private fun WatchView.action(key: Key, rod: UByte): Action? {
        val shown = keys.takeIf { rod == this.rod }.orEmpty() + due.filter { it.rod == rod }.flatMap { it.keys }
        return shown.find { it.key == key }?.action
    }

    internal companion object {
        const val KEY = "key"
        const val ROD = "rod"
        const val LABEL = "label"

        fun intent(context: Context, key: Key, rod: UByte, label: String): PendingIntent {
            val intent = Intent(context, KeyReceiver::class.java).setAction("key-${key.name}-$rod")
                .putExtra(KEY, key.name).putExtra(ROD, rod.toInt()).putExtra(LABEL, label)
            return PendingIntent.getBroadcast(context, 0, intent, PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT)
        }
    }
}
