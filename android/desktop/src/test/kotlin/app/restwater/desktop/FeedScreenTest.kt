package app.restwater.desktop

import androidx.compose.ui.test.assertContentDescriptionContains
import app.restwater.core.Key
import app.restwater.core.readDay
import app.restwater.ui.Showing
import app.restwater.ui.tag
import java.io.File
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** Feed and showing fish, operated by their keys, with the real library. */
class FeedScreenTest {
    /** Taps a key, behind MORE if it is not on the pad. */
    private fun Bankside.turnTo(key: Key) {
        while (!isThere(tag(key))) tapOn("more")
        tap(key)
    }

    private fun Bankside.sub(key: Key) = bank.keys.first { it.key == key }.sub

    @Test fun theFirstFeedIsChosenAndTheNextIsOneTap() = Bankside.on {
        start()
        turnTo(Key.FEED)
        assertEquals(Showing.FEED, state.showing)
        tapOn("handful")
        assertEquals(Showing.BANK, state.showing)
        assertEquals("a handful, loose", sub(Key.FEED))
        wait(minutes = 5)
        turnTo(Key.FEED)
        assertEquals(Showing.BANK, state.showing)
        turnTo(Key.FEED_OTHER)
        assertEquals(Showing.FEED, state.showing)
        node("fish-says").assertContentDescriptionContains("Fed just now, 2 oz here this session.", substring = true)
    }

    @Test fun feedByWeightIsTypedOnThePad() = Bankside.on {
        start()
        turnTo(Key.FEED)
        tapOn("by-weight")
        assertEquals(Showing.FEED_WEIGHT, state.showing)
        for (tag in listOf("digit-1", "digit-2")) {
            tapOn(tag)
            wait(seconds = 1)
        }
        node("figure").assertContentDescriptionContains("12 oz")
        tapOn("weighed")
        assertEquals(Showing.BANK, state.showing)
        assertEquals("12 oz, loose", sub(Key.FEED))
    }

    @Test fun showingFishTakeTwoTapsAndAreOnTheMap() = Bankside.on {
        start()
        aim()
        turnTo(Key.SEEN)
        assertEquals(Showing.SEEN, state.showing)
        tapOn("bubbles")
        assertEquals(Showing.BANK, state.showing)
        turnTo(Key.FEED)
        tapOn("cup")
        tapOn("screens")
        tapOn("open-${Showing.SWIM}")
        assertTrue(checkNotNull(state.swim).cell.contains("Fish showed just now."))
    }

    @Test fun aDayOfTwoRodsWithFeedABreakAndNeighboursIsPlayedThroughTheScreens() = Bankside.on {
        live(readDay(File("../../tests/days/neighbours.jsonl").readText()), "08-before-the-end")
        assertEquals("RIGHT PEG", bank.keys.first { it.key == Key.NEIGHBOUR_RIGHT }.label)
        assertEquals("a handful, loose", sub(Key.FEED))
        turnTo(Key.SEEN)
        assertEquals(Showing.SEEN, state.showing)
        node("fish-says").assertContentDescriptionContains("you landed 1 and saw 2 neighbours land 13.", substring = true)
        tapOn("neighbour-across")
        assertEquals(Showing.BANK, state.showing)
        wait(seconds = 1)
        turnTo(Key.END)
        assertEquals(Showing.DAY, state.showing)
        assertTrue(checkNotNull(state.day).leaves.single().lines.any { "saw 2 neighbours land 14." in it.detail })
    }
}
