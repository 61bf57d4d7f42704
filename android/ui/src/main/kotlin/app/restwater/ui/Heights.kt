package app.restwater.ui

import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.unit.Density

/** How high texts are when they are drawn: measured with the same turning of lines, never estimated. */
internal class Heights(val measurer: TextMeasurer, val density: Density) {
    /** Height of a text at [em] in [width]; 0 if there is none. */
    fun of(text: String, em: Float, width: Double, weight: FontWeight = FontWeight.Medium): Double =
        if (text.isBlank()) 0.0 else measurer.height(text, em, width, density, weight)

    /** Height of texts below each other. */
    fun of(all: List<String>, em: Float, width: Double, weight: FontWeight = FontWeight.Medium): Double = all.sumOf { of(it, em, width, weight) }
}

@Composable
internal fun heights(): Heights {
    val (measurer, density) = textMeasurer() to LocalDensity.current
    return remember(measurer, density) { Heights(measurer, density) }
}
