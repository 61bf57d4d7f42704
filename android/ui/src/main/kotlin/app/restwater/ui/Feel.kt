package app.restwater.ui

/** What a cold thumb feels of a tap. */
interface Feel {
    /** It is in the log. */
    fun accepted()

    /** It is not: it can't be done at this moment, could not be saved, or was a second tap. */
    fun refused()
}

/** A device that can't be felt, as a PC is. */
object NoFeel : Feel {
    override fun accepted() = Unit
    override fun refused() = Unit
}
