package app.restwater.desktop

import androidx.compose.ui.test.assertContentDescriptionContains
import app.restwater.core.BankState
import app.restwater.core.Key
import app.restwater.core.StripMarkShape
import app.restwater.ui.Showing
import app.restwater.ui.tag
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNotNull
import kotlin.test.assertTrue

/** A day from set-up to its end, tapped key by key, with the real library. */
class WholeDayTest {
    @Test fun aWholeDayByTheKeys() = Bankside.on {
        tap(Key.START)
        tapOn("row-rods")
        tapOn("choice-rods-1")
        wait(seconds = 2)
        tapOn("back")
        tap(Key.START)
        assertEquals(BankState.READY, bank.state)
        wait(minutes = 2)

        // Waits in minutes; true if a bite came. Invented.
        val casts = listOf(12 to false, 17 to true, 15 to false, 19 to true, 25 to false, 18 to true, 22 to true, 20 to false)
        var bites = 0
        for ((i, cast) in casts.withIndex()) {
            val (minutes, bite) = cast
            tap(Key.CAST)
            wait(minutes)
            assertEquals("$minutes:00", bank.rods.single().digits)
            if (bites < 3) assertTrue("Can't tell yet" in bank.advice.headline, bank.advice.headline)
            if (i == 1) { tap(Key.LINER); wait(seconds = 1) }
            if (bite) {
                bites++
                tap(Key.BITE)
                assertEquals(BankState.FISH_ON, bank.state)
                node("advice").assertContentDescriptionContains("No need to tap anything", substring = true)
                wait(minutes = 1)
                tap(if (bites == 2) Key.LOST else Key.LANDED)
            } else {
                tap(Key.WOUND_IN)
            }
            assertEquals(if (bite && bites != 2) BankState.LANDED else BankState.READY, bank.state)
            wait(minutes = 2)
        }

        tap(Key.CAST)
        wait(minutes = 10)
        assertFalse("Can't tell yet" in bank.advice.headline, bank.advice.headline)
        assertTrue("4 bites in 8 casts" in bank.advice.detail, bank.advice.detail)
        assertEquals(4, bank.strip.marks.count { it.shape == StripMarkShape.BITE })
        assertEquals(4, bank.strip.marks.count { it.shape == StripMarkShape.NO_BITE })
        assertNotNull(bank.strip.elapsedMin)
        node("strip").assertContentDescriptionContains("bites so far", substring = true)

        // Moves the last time back by a minute: the wait grows by that.
        while (!isThere(tag(Key.TIME_BACK))) tapOn("more")
        tap(Key.TIME_BACK)
        assertEquals("11:01", bank.rods.single().digits)

        // A forgotten end: the next cast closes it.
        wait(minutes = 10)
        tap(Key.CAST)
        assertEquals("0:00", bank.rods.single().digits)
        wait(minutes = 1)
        while (layout().keys.none { it.key == Key.END }) tapOn("more")
        tap(Key.END)
        assertEquals(BankState.NO_SESSION, bank.state)

        // The card of the day opens by itself and can be shared as text.
        assertEquals(Showing.DAY, state.showing)
        node("says").assertContentDescriptionContains("bites in", substring = true)
        tapOn("key-share-")
        assertTrue(files.texts.single().contains("Try next: "), "${files.texts}")
        tapOn("back")
        assertEquals(Showing.BANK, state.showing)
    }

    @Test fun theFirstOpeningIsThreeCardsThatLeadToStartOrAreSkipped() = Bankside.on {
        greet()
        assertEquals(Showing.WELCOME, state.showing)
        tapOn("key-to-wait")
        tapOn("key-to-where")
        tapOn("key-skip-")
        assertEquals(Showing.BANK, state.showing)
        greet()
        assertEquals(Showing.BANK, state.showing, "they come once")
        goTo(Showing.WELCOME)
        wait(seconds = 1)
        tapOn("key-skip-")
        assertEquals(Showing.BANK, state.showing)
        for (empty in listOf(Showing.WAITS, Showing.CHANGES, Showing.MATCH, Showing.BOOK)) {
            goTo(empty)
            wait(seconds = 1)
            tapOn("key-start-")
            assertEquals(Showing.SETUP, state.showing, "$empty offers START")
            tapOn("back")
        }
    }

    @Test fun twoRodsHaveAClockEachAndTheKeysActOnTheChosenOne() = Bankside.on {
        tap(Key.START)
        tapOn("row-rods")
        tapOn("choice-rods-2")
        wait(seconds = 2)
        tapOn("back")
        tap(Key.START)
        wait(seconds = 10)
        tap(Key.CAST)
        wait(minutes = 3)
        tapOn("next-rod")
        assertEquals(BankState.READY, bank.state)
        tap(Key.CAST)
        wait(minutes = 4)
        assertEquals(listOf("7:00", "4:00"), bank.rods.map { it.digits })
        tapOn("clock-1")
        assertEquals(1u, bank.rods.first { it.chosen }.rod.toUInt())
        tap(Key.WOUND_IN)
        assertEquals(listOf(BankState.READY, BankState.OUT), bank.rods.map { it.state })
    }

    @Test fun spotAndRigAreChangedByTapsAlone() = Bankside.on {
        start()
        tap(Key.TACKLE)
        val rows = checkNotNull(state.tackle).rows
        assertTrue(rows.isNotEmpty())
        for (row in rows) {
            tapOn("row-${row.tag}")
            val choice = row.choices.firstOrNull { !it.chosen }
            if (choice != null) {
                tapOn("choice-${row.tag}-${choice.tag}")
                wait(seconds = 1)
            }
            tapOn("back")
        }
        tapOn("back")
        assertTrue(bank.rig.isNotBlank() && bank.spot.isNotBlank())
    }
}
