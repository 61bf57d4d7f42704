package app.restwater.desktop

import app.restwater.core.BankState
import app.restwater.core.Key
import app.restwater.ui.Showing
import app.restwater.ui.tag
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertNotEquals
import kotlin.test.assertTrue

/** A cold thumb taps a key that opens something twice: nothing of what has come under the thumb is logged or chosen. */
class TwiceTest {
    @Test fun aDoubleTapOnStartOpensTheSetUpAndSkipsNothing() = Bankside.on {
        twice(tag(Key.START))
        assertEquals(Showing.SETUP, state.showing)
        assertEquals(BankState.NO_SESSION, bank.state)
        twice(tag(Key.START))
        assertEquals(Showing.BANK, state.showing)
        wait(seconds = 1)
        assertEquals(BankState.READY, bank.state, "the session begins, and no cast does")
    }

    @Test fun aDoubleTapOnAKeyOfTheBankLogsNothingOfTheScreenThatItOpens() = Bankside.on {
        start()
        tap(Key.CAST)
        wait(minutes = 5)
        tap(Key.LANDED_LATE)
        wait(seconds = 20)
        val opens = mapOf(
            Key.FISH_CLASS to Showing.FISH, Key.FISH to Showing.FISH, Key.WEIGH to Showing.WEIGHT, Key.FEED to Showing.FEED,
            Key.FEED_OTHER to Showing.FEED, Key.SEEN to Showing.SEEN, Key.TACKLE to Showing.TACKLE,
        )
        val tapped = mutableSetOf<Showing>()
        for ((key, screen) in opens) {
            repeat(layout().pages.toInt()) { if (!isThere(tag(key))) tapOn("more") }
            if (!isThere(tag(key))) continue
            val before = entries()
            val units = state.weight?.figure
            twice(tag(key))
            assertEquals(before, entries(), "$key")
            assertEquals(screen, state.showing, "$key")
            if (screen == Showing.WEIGHT && units != null) assertEquals(units, state.weight?.figure)
            tapped += screen
            while (state.showing != Showing.BANK) tapOn("back")
            wait(seconds = 1)
        }
        assertTrue(tapped.size >= 4, "$tapped")
    }

    @Test fun aDoubleTapOnARowChoosesNothing() = Bankside.on {
        start()
        tap(Key.TACKLE)
        for (row in checkNotNull(state.tackle).rows.map { it.tag }) {
            if (!isThere("row-$row")) continue
            val before = entries()
            twice("row-$row")
            assertEquals(before, entries(), row)
            assertTrue(!isThere("row-$row"), "the row is open: $row")
            tapOn("back")
        }
    }
}
