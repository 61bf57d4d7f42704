package app.restwater.ui

import app.restwater.core.ChoiceRow

/** Rows of the Phone screen that belong to one shell: what its system allows, and keys of its own. */
interface PhoneRows {
    fun rows(): List<ChoiceRow>

    /** A choice of one of them. */
    fun choose(field: String, value: String)
}

/** A shell without rows of its own. */
object NoPhoneRows : PhoneRows {
    override fun rows(): List<ChoiceRow> = emptyList()
    override fun choose(field: String, value: String) = Unit
}
