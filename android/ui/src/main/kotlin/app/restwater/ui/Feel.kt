package app.restwater.ui

/** What a cold thumb feels after a tap. */
interface Feel {
    /** The tap was logged. */
    fun accepted()

    /** The tap was not logged: it is not possible now, could not be saved, or was an accidental second tap. */
    fun refused()
}

/** A device without vibration, such as a PC. */
object NoFeel : Feel {
    override fun accepted() = Unit
    override fun refused() = Unit
}
