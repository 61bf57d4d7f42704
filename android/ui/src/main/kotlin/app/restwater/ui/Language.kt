package app.restwater.ui

import java.util.Locale

/** The language of the phone, as a tag of BCP 47: what everything is said in, where the core has it. */
fun language(): String = Locale.getDefault().toLanguageTag()
