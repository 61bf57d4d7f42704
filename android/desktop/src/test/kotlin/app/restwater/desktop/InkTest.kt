package app.restwater.desktop

import androidx.compose.ui.graphics.Color
import app.restwater.ui.Ink
import app.restwater.ui.contrast
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

class InkTest {
    /** WCAG 2.2: black on white is 21:1; its technique G18 and many tools print 4.54:1 for #767676 on white. */
    @Test fun contrastIsThatOfWcag() {
        assertEquals(21.0, contrast(Color.Black, Color.White), 1e-9)
        assertEquals(21.0, contrast(Color.White, Color.Black), 1e-9)
        assertEquals(4.54, contrast(Color(0xFF767676), Color.White), 0.005)
        assertEquals(1.0, contrast(Color.Red, Color.Red), 1e-9)
    }

    @Test fun everyPairOfBothSchemesHasEnoughContrast() {
        for ((name, ink) in listOf("day" to Ink.Day, "night" to Ink.Night)) {
            for ((what, colours, least) in ink.pairs) {
                val found = contrast(colours.first, colours.second)
                assertTrue(found >= least, "$what by $name: %.2f, at least %.1f".format(found, least))
            }
        }
    }
}
