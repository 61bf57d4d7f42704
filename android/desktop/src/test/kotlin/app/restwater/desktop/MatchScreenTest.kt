package app.restwater.desktop

import androidx.compose.ui.test.assertContentDescriptionContains
import app.restwater.core.BankState
import app.restwater.core.Hand
import app.restwater.core.Key
import app.restwater.core.MatchPhase
import app.restwater.core.NetWarning
import app.restwater.core.matchLayout
import app.restwater.ui.Showing
import kotlin.math.abs
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertNotNull
import kotlin.test.assertTrue

/** A match, operated by its keys, with the real library. */
class MatchScreenTest {
    private val Bankside.match get() = checkNotNull(state.match)

    private fun Bankside.openMatch() {
        tapOn("screens")
        tapOn("open-MATCH")
    }

    /** A session at 9:00, all-in at 9:30, all-out at 14:30, two nets of 20 lb; the Match screen is open. */
    private fun Bankside.setMatch() {
        start()
        openMatch()
        tapOn("match-begin")
        wait(seconds = 1)
        tapOn("match-rules")
        for ((field, value) in listOf("nets" to "2", "limit-1" to "5120", "limit-2" to "5120")) {
            tapOn("row-$field")
            tapOn("choice-$field-$value")
            wait(seconds = 1)
            tapOn("back")
        }
        tapOn("back")
    }

    private fun Bankside.land() {
        tap(Key.CAST)
        wait(minutes = 10)
        tap(Key.BITE)
        wait(minutes = 1)
        tap(Key.LANDED)
        wait(seconds = 20)
    }

    @Test fun aMatchIsSetByTapsAndItsTimeIsOnTheBank() = Bankside.on {
        setMatch()
        assertEquals(MatchPhase.BEFORE, match.phase)
        assertEquals(listOf("Net 1", "Net 2"), match.nets.map { it.name })
        assertTrue(match.nets.all { it.limit == "of 20 lb" }, "${match.nets}")
        tapOn("back")
        assertTrue(bank.header.length.endsWith("to all-in"), bank.header.length)
        wait(minutes = 31)
        assertTrue(bank.header.length.startsWith("4 h 5") && bank.header.length.endsWith("to all-out"), bank.header.length)
        openMatch()
        node("match-clock").assertContentDescriptionContains("to all-out at 14:30", substring = true)
        node("match-line-0").assertContentDescriptionContains("Casts left", substring = true)
    }

    @Test fun theFishOfAMatchIsReachedFromItsScreenAndGoesIntoANet() = Bankside.on {
        setMatch()
        tapOn("back")
        wait(minutes = 31)
        land()
        openMatch()
        assertTrue(match.fishWaits)
        tapOn("match-fish")
        tapOn("class-CARP")
        assertEquals(Showing.BANK, state.showing)
        openMatch()
        assertEquals("1 fish, about 5 lb", match.nets[0].holds)
        tapOn("match-fish")
        node("fish-says").assertContentDescriptionContains("Into Net 1", substring = true)
        tapOn("fish-net")
        tapOn("back")
        openMatch()
        assertTrue(match.nets[1].inUse)
        tapOn("match-fish")
        tapOn("put-back")
        tapOn("back")
        openMatch()
        assertEquals("empty", match.nets[1].holds)
    }

    @Test fun aNetNearItsLimitWarnsInWordsAndTheWeighInIsComparedWithTheCount() = Bankside.on {
        setMatch()
        tapOn("back")
        wait(minutes = 31)
        repeat(3) {
            land()
            tap(Key.FISH)
            tapOn("class-CARP")
            wait(minutes = 2)
        }
        openMatch()
        assertEquals(NetWarning.AT_LIMIT, match.nets[0].warning)
        node("match-net-0").assertContentDescriptionContains("limit", substring = true)
        wait(minutes = 300)
        assertEquals(MatchPhase.OVER, match.phase)
        tapOn("match-scales")
        for (key in listOf("digit-1", "digit-6")) { tapOn(key); wait(seconds = 1) }
        tapOn("take-weight")
        node("weighed-0").assertContentDescriptionContains("Net 1: 16 lb", substring = true)
        assertEquals(1, match.weighIn?.lines?.count { "own count" in it.value && "over" in it.value })
    }

    @Test fun anImpossibleChangeIsRefusedAndNothingChanges() = Bankside.on {
        setMatch()
        tapOn("match-scales")
        tapOn("digit-9")
        wait(seconds = 1)
        // Before all-in the key does not exist; all-out before all-in is refused with a message.
        tapOn("back")
        tapOn("match-rules")
        val before = match.rows.first { it.tag == "all-out" }.value
        tapOn("row-all-out")
        repeat(5) { tapOn("choice-all-out--60"); wait(seconds = 1) }
        node("notice").assertContentDescriptionContains("check both times", substring = true)
        assertEquals("14:30", before)
        assertEquals("10:30", match.rows.first { it.tag == "all-out" }.value)
    }

    @Test fun theKeysAreDrawnWhereTheLayoutSaysForEitherHandAndAtTwiceTheText() {
        for (left in listOf(false, true)) for (scale in listOf(1.0, 2.0)) Bankside.on(GLASS.copy(textScale = scale)) {
            if (left) choose(hand = Hand.LEFT)
            setMatch()
            tapOn("back")
            wait(minutes = 31)
            land()
            tap(Key.FISH)
            val layout = matchLayout(glass.copy(leftHanded = left))
            val classes = checkNotNull(state.fish).classes
            for ((i, place) in layout.classes.withIndex()) {
                val box = node(classes[i].tag).fetchSemanticsNode().boundsInRoot
                assertTrue(abs(box.left - place.left) < 1.5 && abs(box.height - place.height) < 1.5, "$box $place")
                assertTrue(box.width >= 20 * glass.pxPerMm - 1.5 && box.height >= 20 * glass.pxPerMm - 1.5, "$box")
            }
            tapOn("weigh")
            for (key in checkNotNull(state.weight).pad) assertNotNull(node(key.tag).fetchSemanticsNode())
        }
    }

    @Test fun nothingIsAskedWhileAFishIsOn() = Bankside.on {
        setMatch()
        tapOn("back")
        wait(minutes = 31)
        tap(Key.CAST)
        wait(minutes = 10)
        tap(Key.BITE)
        assertEquals(BankState.FISH_ON, bank.state)
        openMatch()
        assertEquals(false, match.fishWaits)
        node("match-clock").assertContentDescriptionContains("to all-out", substring = true)
    }
}
