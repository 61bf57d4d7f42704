package app.restwater.ui

import app.restwater.core.labelled

/** A choice in a row of this shell. */
data class ShellChoice(val tag: String, val label: String, val chosen: Boolean)

/**
 * A row of the Phone screen that belongs to this shell and not to the core: permissions of the system, keys of the
 * device.
 */
data class ShellRow(val tag: String, val label: String, val value: String, val choices: List<ShellChoice>, val source: String) {
    /** The label with the value, as the core joins them. */
    val spoken get() = labelled(label, value, language())

    /** The label with a choice. */
    fun spoken(of: ShellChoice) = labelled(label, of.label, language())
}

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
