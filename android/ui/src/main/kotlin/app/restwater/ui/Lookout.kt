package app.restwater.ui

import app.restwater.core.WatchView

/** What the system shows and sounds while the app is not in front: the lock screen and alarms. */
fun interface Lookout {
    /** Shows it and sets the alarms; returns what the system doesn't allow of that. Called on the worker that calls the core. */
    fun show(watch: WatchView): Refused?
}

/** What the system doesn't allow, in words; [isNew] says whether it concerns an alarm that was set just now. */
class Refused(val says: String, val isNew: Boolean)

/** A shell without a lock screen. */
object NoLookout : Lookout {
    override fun show(watch: WatchView): Refused? = null
}
