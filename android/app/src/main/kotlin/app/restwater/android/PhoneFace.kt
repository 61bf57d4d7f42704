package app.restwater.android

import androidx.compose.ui.text.font.Font
import androidx.compose.ui.text.font.FontFamily
import androidx.compose.ui.text.font.FontWeight
import app.restwater.R
import app.restwater.ui.Face

/** Uses the app's own typeface from now on. */
fun wearFace() = Face.wear(
    FontFamily(Font(R.font.restwater_medium, FontWeight.Medium), Font(R.font.restwater_bold, FontWeight.Bold)),
    listOf(R.font.restwater_clock_100, R.font.restwater_clock_75, R.font.restwater_clock_50, R.font.restwater_clock_25)
        .map { FontFamily(Font(it, FontWeight.Bold)) },
)
