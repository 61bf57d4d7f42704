package app.restwater.desktop

import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertContentDescriptionContains
import androidx.compose.ui.test.down
import androidx.compose.ui.test.moveTo
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performTouchInput
import androidx.compose.ui.test.up
import app.restwater.core.BankState
import app.restwater.core.Glass
import app.restwater.core.Hand
import app.restwater.core.Key
import app.restwater.core.Scheme
import app.restwater.core.Settings
import app.restwater.ui.Showing
import app.restwater.ui.SolidInk
import app.restwater.ui.TickedHead
import app.restwater.ui.tag
import kotlin.math.abs
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertTrue

/** The Bank screen, operated by its keys, with the real library. */
@OptIn(ExperimentalTestApi::class)
class BankScreenTest {
    @Test fun aCastIsOneTapAndTheWaitRuns() = Bankside.on {
        start()
        assertEquals(BankState.READY, bank.state)
        tap(Key.CAST)
        assertEquals(BankState.OUT, bank.state)
        wait(minutes = 21, seconds = 40)
        assertEquals("21:40", bank.rods.single().digits)
        node("clock-1").assertContentDescriptionContains("21 minutes", substring = true)
        val live = node("clock-1").fetchSemanticsNode().config.getOrNull(SemanticsProperties.LiveRegion)
        assertEquals(LiveRegionMode.Polite, live)
    }

    @Test fun aSecondTapIsIgnoredAndThatIsVisible() = Bankside.on {
        start()
        tap(Key.CAST)
        wait(minutes = 5)
        tap(Key.LINER)
        val before = bank.latest
        atOnce()
        tap(Key.LINER)
        assertEquals(before, bank.latest)
        node("notice").assertContentDescriptionContains("ignored", substring = true)
    }

    @Test fun everyKeyHasThePlaceAndSizeOfTheLayout() {
        for (hand in Hand.entries) for ((state, way) in LEADING_TO) Bankside.on {
            if (hand == Hand.LEFT) choose(hand = Hand.LEFT)
            start()
            for (key in way) { tap(key); wait(minutes = 3) }
            assertEquals(state, bank.state)
            val layout = layout()
            for (place in layout.keys) {
                val box = node(tag(place.key)).fetchSemanticsNode().boundsInRoot
                val off = listOf(
                    box.left - place.rect.left, box.top - place.rect.top,
                    box.width - place.rect.width, box.height - place.rect.height,
                ).maxOf { abs(it.toDouble()) }
                assertTrue(off <= 1.5, "${place.key} is $off px off")
                val least = if (place.key in PRIMARY) 20.0 else 15.0
                val smaller = minOf(box.width, box.height) / glass.pxPerMm
                assertTrue(smaller >= least - 1.0 / glass.pxPerMm, "${place.key} is $smaller mm")
            }
            assertTrue(layout.broken.isEmpty(), "${layout.broken}")
        }
    }

    @Test fun atTwiceTheTextNoKeyIsLost() {
        // While a fish is on nothing asks for a tap, so the keys that can wait are not shown.
        val waiting = setOf(Key.LINER, Key.INDICATION, Key.TACKLE, Key.END)
        for ((state, way) in LEADING_TO) Bankside.on(GLASS.copy(textScale = 2.0)) {
            start()
            for (key in way) { tap(key); wait(minutes = 3) }
            val seen = mutableSetOf<Key>()
            for (page in 0 until layout().pages.toInt()) {
                for (place in layout(page).keys) {
                    assertEquals(1, node(tag(place.key)).fetchSemanticsNode().config[SemanticsProperties.ContentDescription].size)
                    seen += place.key
                }
                if (layout().more != null) tapOn("more")
            }
            val named = bank.keys.filter { it.enabled }.map { it.key }.toSet()
            val wanted = if (state == BankState.FISH_ON) named - waiting else named - idle(state)
            assertTrue(seen.containsAll(wanted), "$state: ${wanted - seen} not found")
        }
    }

    /** Keys that have no use while no rod is out. */
    private fun idle(state: BankState) =
        if (state == BankState.READY) setOf(Key.LINER, Key.INDICATION, Key.TWITCH) else emptySet()

    @Test fun theLeftHandMirrorsTheKeysAndStaysChosen() = Bankside.on {
        start()
        tap(Key.CAST)
        val right = node(tag(Key.BITE)).fetchSemanticsNode().boundsInRoot
        choose(hand = Hand.LEFT)
        assertEquals(Hand.LEFT, state.settings.hand)
        val left = node(tag(Key.BITE)).fetchSemanticsNode().boundsInRoot
        assertTrue(abs(right.left - (glass.widthPx - left.right)) <= 1.5)
        assertEquals(right.top, left.top)
    }

    @Test fun handAndSchemeAreChosenOnThePhoneScreen() = Bankside.on {
        goTo(Showing.PHONE)
        wait(seconds = 1)
        for ((row, choice) in listOf("scheme" to "night", "hand" to "left")) {
            tapOn("row-$row")
            tapOn("choice-$row-$choice")
            wait(seconds = 1)
            tapOn("back")
        }
        assertEquals(Settings(Hand.LEFT, Scheme.NIGHT), state.settings)
        tapOn("row-scheme")
        tapOn("choice-scheme-dusk")
        wait(seconds = 1)
        assertEquals(Scheme.DAY, state.settings.scheme, "it is morning")
    }

    @Test fun theSwimAndTheFishAreOneTapAwayAndBackIsAtTheThumb() {
        for (hand in Hand.entries) Bankside.on {
            choose(hand = hand)
            assertFalse(isThere("open-SWIM"), "there is no swim yet")
            start()
            tap(Key.CAST)
            for (goal in listOf(Showing.SWIM, Showing.FISH)) {
                wait(minutes = 1)
                tapOn("open-$goal")
                assertEquals(goal, state.showing)
                wait(seconds = 1)
                val box = node("back").fetchSemanticsNode().boundsInRoot
                val across = if (hand == Hand.LEFT) box.left.toDouble() else glass.widthPx - box.right
                assertTrue(across <= 2.1 * glass.pxPerMm, "$goal: BACK is ${across / glass.pxPerMm} mm from the edge")
                tapOn("back")
                assertEquals(Showing.BANK, state.showing)
            }
        }
    }

    @Test fun withNothingOutTheSwimOpensAtTheThumb() = Bankside.on {
        start()
        tap(Key.SWIM)
        assertEquals(Showing.SWIM, state.showing)
        wait(seconds = 1)
        tapOn("back")
        wait(seconds = 1)
        tap(Key.CAST)
        assertFalse(isThere(tag(Key.SWIM)), "BITE has its place while a rod is out")
    }

    @Test fun aSecondTapOfBackCastsNothing() = Bankside.on {
        start()
        goTo(Showing.WAITS)
        wait(seconds = 5)
        node("back").performClick()
        atOnce()
        tap(Key.CAST)
        assertEquals(BankState.READY, bank.state)
        node("notice").assertContentDescriptionContains("ignored", substring = true)
    }

    /** Another screen closes, and a cold thumb taps once more: CAST has come under it. */
    private fun Bankside.tapsCastAtOnceAfter(tag: String) {
        node(tag).performClick()
        assertEquals(Showing.BANK, state.showing)
        atOnce()
        tap(Key.CAST)
        assertFalse(bank.state == BankState.OUT, "a second tap of $tag cast")
        node("notice").assertContentDescriptionContains("ignored", substring = true)
        wait(seconds = 2)
    }

    @Test fun aSecondTapOfBackCastsNothingOnAnyScreen() = Bankside.on {
        start()
        for (screen in listOf(Showing.FEED, Showing.FEED_WEIGHT, Showing.SEEN, Showing.FISH, Showing.WEIGHT, Showing.WAITS)) {
            show(screen)
            tapsCastAtOnceAfter("back")
        }
    }

    @Test fun aSecondTapOfAKeyThatCompletesAnEntryCastsNothing() = Bankside.on {
        start()
        for (key in listOf(Key.CAST, Key.BITE, Key.LANDED)) { tap(key); wait(minutes = 3) }
        aim()
        for ((screen, key) in listOf(Showing.FEED to "handful", Showing.SEEN to "bubbles", Showing.SEEN to "neighbour-left")) {
            show(screen)
            tapsCastAtOnceAfter(key)
        }
        for ((screen, key) in listOf(Showing.WEIGHT to "weighed", Showing.WEIGHT to "guess", Showing.FEED_WEIGHT to "weighed")) {
            show(screen)
            tapOn("digit-6")
            wait(seconds = 1)
            tapsCastAtOnceAfter(key)
        }
        // Only a fish that has a weight can lose it.
        show(Showing.FISH)
        tapsCastAtOnceAfter("no-weight")
    }

    @Test fun theWholeKeyIsInvertedWhileTheThumbIsOnIt() = Bankside.on {
        start()
        val cast = node(tag(Key.CAST))
        fun solid() = cast.fetchSemanticsNode().config[SolidInk]
        assertEquals(true, solid())
        cast.performTouchInput { down(center) }
        assertEquals(false, solid())
        assertEquals(BankState.READY, bank.state, "it acts when the thumb lifts")
        cast.performTouchInput { up() }
        assertEquals(BankState.OUT, bank.state)
    }

    /** What is chosen of several has a head with a tick and is said to be selected; only the key to press next is solid. */
    @Test fun whatIsChosenIsNotDrawnAsTheKeyToPressNext() = Bankside.on {
        start()
        for (key in listOf(Key.CAST, Key.BITE, Key.LANDED)) {
            tap(key)
            wait(minutes = 1)
        }
        tap(Key.PUT_BACK)
        wait(minutes = 1)
        val (chosen, next) = node(tag(Key.PUT_BACK)).fetchSemanticsNode().config to node(tag(Key.CAST)).fetchSemanticsNode().config
        assertEquals(listOf(false, true, true), listOf(chosen[SolidInk], chosen[TickedHead], chosen[SemanticsProperties.Selected]))
        assertEquals(listOf(true, false, null), listOf(next[SolidInk], next[TickedHead], next.getOrNull(SemanticsProperties.Selected)))
    }

    @Test fun aThumbThatSlidesOffLogsNothing() = Bankside.on {
        start()
        node(tag(Key.CAST)).performTouchInput {
            down(center)
            moveTo(center - Offset(0f, 900f))
            up()
        }
        assertEquals(BankState.READY, bank.state)
    }

    @Test fun twoContactsAtOnceLogNothing() = Bankside.on {
        start()
        node(tag(Key.CAST)).performTouchInput {
            down(0, center)
            down(1, center + Offset(200f, 0f))
            move()
            up(1)
            up(0)
        }
        assertEquals(BankState.READY, bank.state)
        assertEquals(1, state.rejectedTaps, "once for the whole set")
        assertTrue(isThere("rejected"), "a frame shows it")
        passes(ms = 700)
        assertFalse(isThere("rejected"))
        node(tag(Key.CAST)).performClick()
        assertEquals(BankState.OUT, bank.state)
        assertEquals(1, state.rejectedTaps)
    }

    @Test fun twoContactsAtOnceLogNothingOnAnotherScreenEither() = Bankside.on {
        start()
        for (key in listOf(Key.CAST, Key.BITE, Key.LANDED)) { tap(key); wait(minutes = 3) }
        show(Showing.FISH)
        node("class-ROACH").performTouchInput {
            down(0, center)
            down(1, center + Offset(200f, 0f))
            up(1)
            up(0)
        }
        assertEquals(Showing.FISH, state.showing)
        node("class-ROACH").performClick()
        assertEquals(Showing.BANK, state.showing)
        assertEquals("ROACH", bank.keys.first { it.key == Key.FISH_CLASS }.label)
    }

    @Test fun undoNamesWhatItUndoesAndRedoRestoresIt() = Bankside.on {
        start()
        tap(Key.CAST)
        wait(minutes = 4)
        node(tag(Key.UNDO)).assertContentDescriptionContains("cast 09:00", substring = true)
        tap(Key.UNDO)
        assertEquals(BankState.READY, bank.state)
        wait(seconds = 2)
        while (!isThere(tag(Key.REDO))) tapOn("more")
        tap(Key.REDO)
        assertEquals(BankState.OUT, bank.state)
        assertEquals("4:03", bank.rods.single().digits)
    }

    @Test fun moreHasEveryFurtherKeyAtOnceAndBack() {
        for ((state, way) in LEADING_TO.filter { it.key != BankState.NO_SESSION }) Bankside.on {
            start()
            for (key in way) { tap(key); wait(minutes = 3) }
            val pad = layout().keys.map { it.key }.toSet()
            tapOn("more")
            val more = layout()
            assertEquals(null, more.more, "$state: one page")
            assertEquals(1, this.state.page)
            assertFalse(isThere("advice") || isThere("next-rod"), "nothing else of the Bank shows")
            for (place in more.keys) {
                assertTrue(place.key !in pad, "$state: ${place.key}")
                val box = node(tag(place.key)).fetchSemanticsNode().boundsInRoot
                assertTrue(minOf(box.width, box.height) >= 15 * glass.pxPerMm - 1.5, "${place.key}: $box")
            }
            tapOn("back")
            assertEquals(0, this.state.page)
            assertEquals(Showing.BANK, this.state.showing)
            assertTrue(isThere("advice") && isThere(tag(Key.UNDO)))
        }
    }

    @Test fun anAcceptedTapClosesTheSheetAndARefusedOneDoesNot() = Bankside.on {
        start()
        tap(Key.CAST)
        wait(minutes = 2)
        tapOn("more")
        tap(Key.TIME_BACK_FIVE)
        assertEquals(1, state.page, "refused: the session has not run so long")
        node("notice").assertContentDescriptionContains(state.notice)
        assertTrue(state.notice.isNotBlank())
        wait(seconds = 2)
        tap(Key.TWITCH)
        assertEquals(0, state.page)
        assertTrue(bank.latest.first().startsWith("twitch"), "${bank.latest}")
        // What opens another screen leaves the pad behind it.
        wait(seconds = 1)
        tapOn("more")
        tap(Key.SEEN)
        tapOn("back")
        assertTrue(isThere(tag(Key.BITE)))
    }

    @Test fun aColdThumbThatTapsTwiceBehindMoreLogsOnceAndUndoesNothing() = Bankside.on(GLASS.copy(textScale = 2.0)) {
        start()
        tap(Key.CAST)
        wait(minutes = 5)
        val before = entries()
        twice("more")
        assertEquals(before, entries(), "nothing that came under the thumb was logged")
        assertEquals(Showing.BANK to 1, state.showing to state.page)
        tapOn("back")
        for (key in listOf(Key.NEIGHBOUR_LEFT, Key.TWITCH, Key.TIME_BACK, Key.INDICATION)) {
            wait(minutes = 3)
            val logged = entries()
            if (!isThere(tag(key))) tapOn("more")
            assertTrue(isThere(tag(key)), "$key: ${layout().keys.map { it.key }} ${state.page} ${bank.state}")
            twice(tag(key))
            assertEquals(logged + 1, entries(), "$key")
            assertEquals(0, state.page, "$key")
            assertEquals(BankState.OUT, bank.state, "$key")
        }
    }

    @Test fun aFishThatIsLoggedOutsideTheAppBringsThePadBack() = Bankside.on {
        start()
        tap(Key.CAST)
        wait(minutes = 5)
        tapOn("more")
        state.act(app.restwater.core.Action.Bite(1u))
        wait(seconds = 1)
        assertEquals(BankState.FISH_ON, bank.state)
        assertTrue(isThere(tag(Key.LANDED)), "LANDED is on the pad")
        // The few keys of that state have a sheet of their own.
        tapOn("more")
        assertTrue(isThere(tag(Key.TIME_BACK_FIVE)) && isThere(tag(Key.REDO)))
    }

    @Test fun withLargeTextTheSheetTurnsRoundAndGoesBack() = Bankside.on(Glass(750.0, 1334.0, 12.84, 2.0, false, 40.0, 0.0)) {
        start()
        tap(Key.CAST)
        wait(minutes = 5)
        tapOn("more")
        val first = layout().keys.map { it.key }
        node("more").assertContentDescriptionContains("1 of 2", substring = true)
        tapOn("more")
        assertTrue(layout().keys.none { it.key in first })
        node("more").assertContentDescriptionContains("2 of 2", substring = true)
        tapOn("more")
        assertEquals(first, layout().keys.map { it.key }, "it can be turned back")
        tapOn("back")
        assertTrue(isThere(tag(Key.BITE)))
    }

    @Test fun whatTheCoreRefusesIsShownInItsWords() = Bankside.on {
        start()
        tap(Key.UNDO)
        wait(seconds = 2)
        assertEquals(BankState.NO_SESSION, bank.state)
        state.act(app.restwater.core.Action.Bite(1u))
        wait()
        assertTrue("Start one first" in state.notice, state.notice)
    }

    private companion object {
        val PRIMARY = setOf(Key.CAST, Key.BITE, Key.WOUND_IN, Key.LANDED, Key.LOST, Key.MISSED, Key.START)
    }
}
