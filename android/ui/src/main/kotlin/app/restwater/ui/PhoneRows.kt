package app.restwater.ui

/** A choice in a row of this shell. */
data class ShellChoice(val tag: String, val label: String, val chosen: Boolean)

/**
 * A row of the Phone screen that belongs to this shell and not to the core: permissions of the system, keys of the
 * device.
 */
data class ShellRow(val tag: String, val label: String, val value: String, val choices: List<ShellChoice>, val source: String)

/** Rows of the Phone screen that belong to the shell, since only its system knows them. */
interface PhoneRows {
    fun rows(): List<ShellRow>

    /** A choice of one of them. */
    fun choose(row: String, choice: String)
}

/** A shell without rows of its own. */
object NoPhoneRows : PhoneRows {
    override fun rows(): List<ShellRow> = emptyList()
    override fun choose(row: String, choice: String) = Unit
}
