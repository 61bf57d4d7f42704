package app.restwater.desktop

import app.restwater.core.Key
import app.restwater.ui.Showing
import app.restwater.ui.tag
import java.io.File
import kotlin.test.Test
import kotlin.test.assertEquals

/** The taps that a day takes, counted on the real screens: the second table of `docs/first-cast.md`. */
class TapsTest {
    private val promised = File("../../docs/first-cast.md").readLines().map { row -> row.trim('|').split('|').map { it.trim() } }
        .filter { it.size == 3 && it[1].toIntOrNull() != null }.associate { (what, taps) -> what to taps.toInt() }

    private var taps = 0

    private fun Bankside.counted(what: String, taps: Bankside.() -> Unit) {
        this@TapsTest.taps = 0
        taps()
        assertEquals(Showing.BANK, state.showing, what)
        assertEquals(promised.getValue(what), this@TapsTest.taps, what)
        wait(minutes = 2)
    }

    private fun Bankside.count(tag: String) {
        tapOn(tag)
        taps++
        wait(seconds = 1)
    }

    /** Taps a key, behind MORE if it is not on the pad. */
    private fun Bankside.count(key: Key) {
        while (!isThere(tag(key))) count("more")
        count(tag(key))
    }

    private fun Bankside.cast() {
        tap(Key.CAST)
        wait(minutes = 5)
    }

    @Test fun eachThingOfADayTakesTheTapsThatThePagePromises() = Bankside.on {
        assertEquals(5, promised.size, "$promised")
        start()
        cast()
        counted("a bite with both hands full, landed and slipped back") {
            count(Key.LANDED_LATE)
            count(Key.PUT_BACK)
        }
        cast()
        counted("the first feed of the day") {
            count(Key.FEED)
            count("handful")
        }
        cast()
        counted("the same feed again") { count(Key.FEED) }
        cast()
        for (side in listOf(Key.NEIGHBOUR_LEFT, Key.NEIGHBOUR_RIGHT, Key.NEIGHBOUR_ACROSS)) {
            counted("a neighbour's fish") { count(side) }
            cast()
        }
        tap(Key.LANDED_LATE)
        wait(seconds = 20)
        counted("a weight of 6 lb 12 oz") {
            count(Key.WEIGH)
            for (tag in listOf("digit-6", "unit", "digit-1", "digit-2", "weighed")) count(tag)
        }
        assertEquals("6 lb\u00a012 oz", bank.keys.first { it.key == Key.WEIGH }.label)
    }
}
