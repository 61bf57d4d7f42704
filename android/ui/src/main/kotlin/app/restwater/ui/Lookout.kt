package app.restwater.ui

import app.restwater.core.WatchView

/** The system's side of what is seen and heard while the app is not looked at: a lock screen, alarms. */
fun interface Lookout {
    /** Shows it and sets the alarms; what to tell the user where the system doesn't allow that. */
    fun show(watch: WatchView): String?
}

/** A shell without a lock screen. */
object NoLookout : Lookout {
    override fun show(watch: WatchView): String? = null
}
