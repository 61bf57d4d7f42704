package app.restwater.android

import android.app.Application
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.log.Moment
import app.restwater.core.salvage
import java.io.File
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.SupervisorJob

/** Holds the one core of the process, over the log in the app's own folder. */
class RestwaterApplication : Application() {
    private val folder: File get() = filesDir.resolve("log").apply { mkdirs() }

    /** The phone's clocks; a test sets its own. */
    var now: () -> Moment = { present(this) }

    private var opened: Result<Restwater>? = null

    /** Opened at first use; what the core said where it could not be. */
    @get:Synchronized
    val core: Result<Restwater>
        get() = opened?.takeIf { it.isSuccess } ?: runCatching { Restwater.open(folder.path, now()) }.also { opened = it }

    /** Where all calls to the core are made, one after another: from the screens, the lock screen and the alarm. */
    val worker = Dispatchers.IO.limitedParallelism(1)

    /** For what goes on when no screen is there. */
    val scope = CoroutineScope(SupervisorJob() + Dispatchers.Main)

    /** Sets a damaged log aside and saves of it what can be saved; what came of it, in words. */
    @Synchronized
    fun salvage(): String =
        try {
            salvage(folder.path, now()).also { opened = null }
        } catch (refused: RestwaterException.Failed) {
            refused.text
        }
}
