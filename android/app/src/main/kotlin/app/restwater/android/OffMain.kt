package app.restwater.android

import android.content.BroadcastReceiver
import android.content.Context
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.screen.WatchView
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext

/** Does a receiver's work with the core where all its calls are made, and shows on the lock screen what comes of it. */
internal fun BroadcastReceiver.offMain(
    context: Context,
    failed: (RestwaterException.Failed) -> Unit = {},
    task: (Restwater) -> WatchView,
) {
    val app = context.applicationContext as RestwaterApplication
    val done = goAsync()
    CoroutineScope(Dispatchers.Default).launch {
        try {
            app.lockScreen.show(withContext(app.worker) { task(app.core.getOrThrow()) })
        } catch (refused: RestwaterException.Failed) {
            failed(refused)
        } finally {
            done?.finish()
        }
    }
}
