package app.restwater.ui

import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.graphics.Color
import kotlin.math.pow

/** The colours by purpose. Shapes and words carry the meaning; colours only make them readable. */
data class Ink(
    /** The background of the screen. */
    val paper: Color,
    /** Text, lines, solid keys. */
    val ink: Color,
    /** Thin lines and less important things; still readable as text. */
    val soft: Color,
    /** The water of the swim. */
    val water: Color,
    /** The present minute and the next spot. */
    val accent: Color,
) {
    /** Every pair of colours drawn on each other, with its minimum contrast. */
    val pairs: List<Triple<String, Pair<Color, Color>, Double>>
        get() = listOf(
            Triple("digits and text on paper", ink to paper, DIGITS),
            Triple("digits and text on a solid key", paper to ink, DIGITS),
            Triple("lesser text on paper", soft to paper, TEXT),
            Triple("text on water", ink to water, TEXT),
            Triple("lines on water", soft to water, LINES),
            Triple("text on accent, accent on paper", accent to paper, TEXT),
            Triple("accent on water", accent to water, TEXT),
        )

    companion object {
        /** Minimum contrast of digits. */
        const val DIGITS = 10.0

        /** Minimum contrast of text. */
        const val TEXT = 7.0

        /** Minimum contrast of lines and marks, which are not text (WCAG 2.2, 1.4.11, requires 3). */
        const val LINES = 4.5

        /** Ink on paper: daylight. */
        val Day = Ink(Color(0xFFFBF8F1), Color(0xFF14181C), Color(0xFF454C53), Color(0xFFE9EEF0), Color(0xFF8F2C00))

        /** Chalk on ink: night. */
        val Night = Ink(Color(0xFF10151A), Color(0xFFF3EFE4), Color(0xFFB9C0C6), Color(0xFF1A242C), Color(0xFFFF9D5C))
    }
}

/** Contrast of two colours as WCAG 2.2 defines it: (lighter + 0.05) / (darker + 0.05) in relative luminance. */
fun contrast(a: Color, b: Color): Double {
    val (dark, light) = listOf(luminance(a), luminance(b)).sorted()
    return (light + 0.05) / (dark + 0.05)
}

/** Relative luminance as WCAG 2.2 defines it, from sRGB. */
private fun luminance(c: Color): Double {
    fun linear(v: Float) = if (v <= 0.04045f) v / 12.92 else ((v + 0.055) / 1.055).pow(2.4)
    return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue)
}

/** The colours in force. */
val LocalInk = staticCompositionLocalOf { Ink.Day }

/** Pixels per millimetre of this screen, for the weight of lines. */
val LocalPxPerMm = staticCompositionLocalOf { 6.3f }
