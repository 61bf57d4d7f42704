package app.restwater.desktop

import app.restwater.ui.withUnits
import kotlin.test.Test
import kotlin.test.assertEquals

/** A figure stays on the line of its unit; `_` and `=` stand for the space and the hyphen at which no line is turned over. */
class UnitsTest {
    @Test
    fun `a figure is bound to its unit or to what it counts and to nothing else`() {
        val cases = listOf(
            "Gate, 38 yd (34.7 m), clipped up" to "Gate, 38_yd (34.7_m), clipped up",
            "Water below 15 °C takes your breath." to "Water below 15_°C takes your breath.",
            "23 lb 6 oz" to "23_lb 6_oz",
            "9 bites in 17 casts" to "9_bites in 17_casts",
            "Net 1 weighed in" to "Net 1 weighed in",
            "Pop-up height" to "Pop=up height",
            "Peg 14" to "Peg 14",
            "14" to "14",
            "" to "",
        )
        for ((text, bound) in cases) assertEquals(bound, text.withUnits().replace('\u00a0', '_').replace('\u2011', '='))
    }
}
