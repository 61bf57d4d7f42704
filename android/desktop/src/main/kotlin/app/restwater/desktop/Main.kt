package app.restwater.desktop

import androidx.compose.ui.window.singleWindowApplication
import app.restwater.core.coreVersion
import app.restwater.ui.About

/** Opens the screens in a window of a phone's size. */
fun main() = singleWindowApplication(title = "Restwater") { About(coreVersion()) }
