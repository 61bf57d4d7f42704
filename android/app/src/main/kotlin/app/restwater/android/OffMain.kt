package app.restwater.android

import android.content.BroadcastReceiver
import android.content.Context
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.WatchView
import kotlinx.coroutines.launch

/**
 * Does a receiver's work with the core on the worker that makes all calls to it, then shows the result on the lock
 * screen. Receivers are handled in the order in which they were called, so that of two quick keys the first is logged
 * first and the answer to the second one stays.
 */
internal fun BroadcastReceiver.offMain(
    context: Context,
    failed: (RestwaterException.Failed) -> Unit = {},
    task: (Restwater) -> WatchView,
) {
    val app = context.applicationContext as RestwaterApplication
    val done = goAsync()
    app.receivers.launch {
        try {
            app.lockScreen.show(task(app.core.getOrThrow()))
        } catch (refused: RestwaterException.Failed) {
            failed(refused)
        } finally {
            done?.finish()
        }
    }
}
