package app.restwater.android

import android.app.Application
import app.restwater.core.Restwater

/** Holds the one core of the process, over the log in the app's own folder. */
class RestwaterApplication : Application() {
    /** Opened at first use; what the core said where it could not be. */
    val core: Result<Restwater> by lazy { runCatching { Restwater.open(filesDir.resolve("log").apply { mkdirs() }.path, present(this)) } }
}
