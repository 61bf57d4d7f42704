package app.restwater.desktop

import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.assertContentDescriptionContains
import app.restwater.core.BankState
import app.restwater.core.Hand
import app.restwater.core.Key
import app.restwater.core.matchLayout
import app.restwater.ui.Showing
import kotlin.math.abs
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** Fish on the bank, operated by its keys, with no match set, with the real library. */
class FishScreenTest {
    private fun Bankside.land() {
        tap(Key.CAST)
        wait(minutes = 10)
        tap(Key.BITE)
        wait(minutes = 1)
        tap(Key.LANDED)
        wait(seconds = 20)
    }

    private fun Bankside.label(key: Key) = bank.keys.first { it.key == key }.label

    @Test fun aFishSlippedBackIsOneTapAndTheRowGoesWithTheNextCast() = Bankside.on {
        start()
        land()
        assertEquals(BankState.LANDED, bank.state)
        tap(Key.PUT_BACK)
        assertEquals("PUT BACK", label(Key.PUT_BACK))
        wait(seconds = 5)
        tap(Key.CAST)
        assertTrue(bank.keys.none { it.key == Key.PUT_BACK })
    }

    @Test fun aClassIsPickedOnceAndOfferedAfterThat() = Bankside.on {
        start()
        land()
        tap(Key.FISH_CLASS)
        assertEquals(Showing.FISH, state.showing)
        tapOn("class-ROACH")
        assertEquals(Showing.BANK, state.showing)
        assertEquals("ROACH", label(Key.FISH_CLASS))
        wait(minutes = 2)
        land()
        tap(Key.FISH_CLASS)
        assertEquals(Showing.BANK, state.showing)
        wait(seconds = 1)
        tap(Key.FISH)
        node("fish-says").assertContentDescriptionContains("Roach", substring = true)
        tapOn("earlier")
        val heading = nodes(SemanticsMatcher.keyIsDefined(SemanticsProperties.Heading)).single()
        assertTrue(heading.config[SemanticsProperties.ContentDescription].single().startsWith("Fish 1"))
    }

    /** The screen of the last time was about another fish, and its keys would go on being about it. */
    @Test fun whileTheCoreIsBusyNoScreenOfAnotherFishComesUp() = Bankside.on {
        start()
        land()
        goTo(Showing.FISH)
        tapOn("back")
        land()
        worker.hold()
        tapOn("screens")
        assertEquals(Showing.BANK, state.showing)
        worker.release()
        worker.hold()
        tapOn("open-${Showing.FISH}")
        assertEquals(Showing.SCREENS, state.showing)
        worker.release()
        assertEquals(Showing.FISH, state.showing)
        val heading = nodes(SemanticsMatcher.keyIsDefined(SemanticsProperties.Heading)).single()
        assertTrue(heading.config[SemanticsProperties.ContentDescription].single().startsWith("Fish 2"))
    }

    @Test fun aScreenThatWasAskedForDoesNotComeUpAfterBack() = Bankside.on {
        start()
        land()
        tapOn("screens")
        worker.hold()
        tapOn("open-${Showing.SWIM}")
        tapOn("back")
        worker.release()
        assertEquals(Showing.BANK, state.showing)
    }

    @Test fun sixPoundsTwelveIsTypedWithSixTaps() = Bankside.on {
        start()
        land()
        tap(Key.WEIGH)
        for (tag in listOf("digit-6", "unit", "digit-1", "digit-2")) {
            tapOn(tag)
            wait(seconds = 1)
        }
        node("figure").assertContentDescriptionContains("6 lb 12 oz")
        tapOn("weighed")
        assertEquals(Showing.BANK, state.showing)
        assertEquals("6 lb\u00a012 oz", label(Key.WEIGH))
    }

    @Test fun thePadIsDrawnWhereTheLayoutSaysForEitherHandAndAtTwiceTheText() {
        for (left in listOf(false, true)) for (scale in listOf(1.0, 2.0)) Bankside.on(GLASS.copy(textScale = scale)) {
            if (left) choose(hand = Hand.LEFT)
            start()
            land()
            tap(Key.WEIGH)
            val layout = matchLayout(glass.copy(leftHanded = left))
            for ((key, place) in checkNotNull(state.weight).pad.zip(layout.pad)) {
                val box = node(key.tag).fetchSemanticsNode().boundsInRoot
                assertTrue(abs(box.left - place.left) < 1.5 && abs(box.top - place.top) < 1.5, "$box $place")
                assertTrue(box.width >= 15 * glass.pxPerMm - 1.5 && box.height >= 15 * glass.pxPerMm - 1.5, "$box")
            }
        }
    }
}
