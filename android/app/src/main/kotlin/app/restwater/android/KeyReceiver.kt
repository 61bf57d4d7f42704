package app.restwater.android

import android.app.PendingIntent
import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent
import app.restwater.core.Action
import app.restwater.core.Key
import app.restwater.core.RestwaterException
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext

/** A key of the lock screen: it logs without opening the app, at the moment it was tapped. */
class KeyReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        val key = Key.entries.find { it.name == intent.getStringExtra(KEY) && it in LockScreen.KEYS } ?: return
        val rod = intent.getIntExtra(ROD, 1).toUByte()
        val app = context.applicationContext as RestwaterApplication
        val at = app.now()
        val done = goAsync()
        CoroutineScope(Dispatchers.Default).launch {
            try {
                tap(app, action(key, rod), at)
            } finally {
                done?.finish()
            }
        }
    }

    private suspend fun tap(app: RestwaterApplication, action: Action, at: app.restwater.core.Moment) {
        val core = app.core.getOrNull() ?: return
        val watch = withContext(app.worker) {
            try {
                core.act(action, at)
            } catch (refused: RestwaterException.Failed) {
                // What can't be logged now (the state changed meanwhile) changes nothing; the keys are shown anew.
            }
            core.watch(app.now())
        }
        LockScreen(app).show(watch)
    }

    internal companion object {
        const val KEY = "key"
        const val ROD = "rod"

        fun intent(context: Context, key: Key, rod: UByte): PendingIntent {
            val intent = Intent(context, KeyReceiver::class.java).setAction("key-${key.name}-$rod").putExtra(KEY, key.name).putExtra(ROD, rod.toInt())
            return PendingIntent.getBroadcast(context, 0, intent, PendingIntent.FLAG_IMMUTABLE or PendingIntent.FLAG_UPDATE_CURRENT)
        }

        fun action(key: Key, rod: UByte): Action = when (key) {
            Key.CAST -> Action.Cast(rod)
            Key.BITE -> Action.Bite(rod)
            Key.WOUND_IN -> Action.WoundIn(rod)
            Key.LANDED -> Action.Landed(rod, null)
            Key.LOST -> Action.Lost(rod)
            Key.MISSED -> Action.Missed(rod)
            else -> Action.Undo
        }
    }
}
