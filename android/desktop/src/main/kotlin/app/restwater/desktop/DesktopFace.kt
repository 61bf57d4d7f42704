package app.restwater.desktop

import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.platform.Font
import app.restwater.ui.Face

/** The cuts of the typeface in the class path. */
private val words = FontFamily(cut("medium", FontWeight.Medium), cut("bold", FontWeight.Bold))
private val clocks = listOf(100, 75, 50, 25).map { FontFamily(cut("clock_$it", FontWeight.Bold)) }

/** Uses the app's own typeface from now on. */
fun wearFace() = Face.wear(words, clocks)

private fun cut(name: String, weight: FontWeight) = Font("font/restwater_$name.ttf", weight)
