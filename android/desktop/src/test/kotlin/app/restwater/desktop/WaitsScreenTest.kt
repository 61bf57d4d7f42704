package app.restwater.desktop

import app.restwater.core.DotShape
import app.restwater.core.Glass
import app.restwater.core.Key
import app.restwater.ui.Showing
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertNotEquals
import kotlin.test.assertTrue

/** The Waits screen, operated by its keys, with the real library. The day is invented. */
class WaitsScreenTest {
    /** Two rods in turn, each with its bait; rod 2 has the bites. */
    private fun Bankside.aDay() {
        tap(Key.START)
        tapOn("row-rods")
        tapOn("choice-rods-2")
        wait(seconds = 2)
        tapOn("back")
        tap(Key.START)
        wait(seconds = 30)
        rig(1, "bread", "white")
        rig(2, "maize", "yellow")
        for (minutes in listOf(14, 16, 19, 15)) {
            for (rod in 1..2) {
                tapOn("clock-$rod")
                wait(seconds = 1)
                cast(minutes, bite = rod == 2)
            }
        }
        goTo(Showing.WAITS)
    }

    private val Bankside.waits get() = checkNotNull(state.waits)

    /** The casts drawn in the first picture that shows casts. */
    private fun Bankside.casts() =
        waits.charts.map { chart -> chart.dots.count { it.shape == DotShape.BITE || it.shape == DotShape.WITHOUT_BITE } }.first { it > 0 }

    @Test fun everyPictureSaysItsMessage() = Bankside.on {
        aDay()
        val seen = mutableListOf<String>()
        for (chart in waits.charts) {
            val picture = tags("chart-").single()
            assertTrue(chart.says.length > 10 && chart.says in spoken(picture) && chart.title in spoken(picture), spoken(picture))
            assertEquals(chart.says, spoken("says"))
            seen += picture
            tapOn("next-page")
        }
        assertEquals(seen.size, seen.toSet().size)
        assertTrue(seen.size >= 3, "survival, hazard, leave time: $seen")
        val forecast = checkNotNull(waits.forecast)
        assertEquals(forecast.lines.size, tags("forecast-").size)
        for ((i, line) in forecast.lines.withIndex()) assertEquals("${line.label}: ${line.value}", spoken("forecast-$i"))
        tapOn("next-page")
        assertEquals(checkNotNull(waits.figures).lines.joinToString("\n"), spoken("figures"))
        tapOn("next-page")
        assertEquals(seen.first(), tags("chart-").single(), "after the last page comes the first")
    }

    @Test fun whichCastsCountIsChosenByTaps() = Bankside.on {
        aDay()
        val (all, said) = casts() to spoken("says")
        tapOn("row-rod")
        tapOn("choice-rod-1")
        wait(seconds = 1)
        tapOn("back")
        assertEquals("Rod 1", waits.rows.first { it.tag == "rod" }.value)
        assertTrue("Rod 1" in spoken("row-rod"), spoken("row-rod"))
        assertEquals(4, casts())
        assertTrue(all > 4)
        assertNotEquals(said, spoken("says"), "rod 1 had no bite")
        // Back to all rods, then one bait.
        tapOn("row-rod")
        tapOn("choice-rod-")
        wait(seconds = 1)
        tapOn("back")
        assertEquals(all, casts())
        tapOn("row-bait")
        tapOn("choice-bait-maize")
        wait(seconds = 1)
        tapOn("back")
        assertEquals(4, casts())
        tapOn("back")
        assertEquals(Showing.BANK, state.showing)
    }

    @Test fun theForecastLooksAsFarAheadAsChosen() = Bankside.on {
        aDay()
        repeat(waits.charts.size) { tapOn("next-page") }
        val before = checkNotNull(waits.forecast)
        tapOn("row-left")
        val other = before.left.choices.first { !it.chosen }
        tapOn("choice-left-${other.tag}")
        wait(seconds = 1)
        tapOn("back")
        val after = checkNotNull(waits.forecast)
        assertEquals(other.label, after.left.value)
        assertNotEquals(before.lines.map { it.value }, after.lines.map { it.value })
    }

    @Test fun onItsSideTheForecastIsBesideItsBasis() = Bankside.on(Glass(1334.0, 750.0, 12.84, 1.0, false, 0.0, 0.0)) {
        aDay()
        repeat(waits.charts.size) { tapOn("next-page") }
        fun place(tag: String) = node(tag).fetchSemanticsNode().boundsInRoot
        val lines = tags("forecast-").sorted().map(::place)
        assertEquals(checkNotNull(waits.forecast).lines.size, lines.size)
        for ((above, below) in lines.zipWithNext() + (place("says") to place("notes"))) assertTrue(above.bottom <= below.top + 1, "$above on $below")
        assertTrue(lines.maxOf { it.right } < minOf(place("says").left, place("notes").left))
    }

    @Test fun atTwiceTheTextNothingIsLost() = Bankside.on(GLASS.copy(textScale = 2.0)) {
        aDay()
        val pages = pages()
        repeat(pages) { page ->
            assertNothingCutOff("page ${page + 1} of $pages")
            tapOn("next-page")
        }
        while (!isThere("row-rod")) tapOn("next-page")
        tapOn("row-rod")
        assertNothingCutOff("choices")
    }
}
