package app.restwater.ui

import app.restwater.core.WatchView

/** What the system shows and sounds while the app is not in front: the lock screen and alarms. */
fun interface Lookout {
    /** Shows it and sets the alarms; returns what to tell the user if the system doesn't allow that. */
    fun show(watch: WatchView): String?
}

/** A shell without a lock screen. */
object NoLookout : Lookout {
    override fun show(watch: WatchView): String? = null
}
