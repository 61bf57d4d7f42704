package app.restwater.desktop

import app.restwater.core.StepState
import app.restwater.ui.Showing
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertNotNull
import kotlin.test.assertNull
import kotlin.test.assertTrue

/** "Did it matter?", operated by its keys, with the real library. The day is invented. */
class ChangesScreenTest {
    /** Alternates between white and pink; pink has the bites. */
    private fun Bankside.aDay() {
        start()
        for ((i, colour) in listOf("white", "pink", "pink", "white", "white", "pink").withIndex()) {
            rig(1, "bread", colour)
            cast(15 + i, bite = colour == "pink")
        }
        goTo(Showing.CHANGES)
    }

    private val Bankside.changes get() = checkNotNull(state.changes)

    @Test fun changesAreFoundInTheLogAndShownInThePicture() = Bankside.on {
        aDay()
        val change = changes.changes.single()
        assertEquals("pink", change.new.value)
        assertTrue("3 bites in 3 casts" in change.new.counts && "no bites in 3 casts" in change.old.counts)
        val picture = spoken("forest")
        assertTrue(change.title in picture && change.verdict in picture && change.ratio in picture, picture)
        assertEquals(changes.says, spoken("says"))
        tapOn("next-page")
        assertEquals(change.says, spoken("verdict"))
        assertTrue(change.counts in spoken("reasons") && change.p !in spoken("reasons"), spoken("reasons"))
        // Six casts are never enough to settle it, and it says why.
        assertTrue("clearly" !in change.verdict, change.verdict)
        assertTrue("Changed too few times" in change.probability && change.probability in spoken("reasons"), spoken("reasons"))
        assertTrue(change.reasons.all { it in spoken("reasons") }, spoken("reasons"))
    }

    @Test fun anAlternatingTestIsBegunFollowedAndEndedByKeys() = Bankside.on {
        aDay()
        tapOn("next-page")
        tapOn("start-test")
        wait(seconds = 2)
        val test = assertNotNull(changes.test, state.notice)
        assertTrue(test.steps.size >= 8 && test.steps.size % 4 == 0)
        assertEquals(test.steps.size, tags("step-").size, "the test is shown at once, every cast of it")
        assertTrue(changes.changes.all { it.start == null }, "one test at a time")
        // Pink was fished last, so white comes first; the key sets it.
        assertTrue("white" in test.steps.first().label, test.steps.first().label)
        assertTrue("white" in spoken("set-step"), spoken("set-step"))
        tapOn("set-step")
        wait(seconds = 2)
        assertEquals(emptyList(), tags("set-step"), "set already")
        tapOn("back")
        wait(seconds = 2)
        assertTrue("white" in bank.rig, bank.rig)
        cast(16, bite = false)
        goTo(Showing.CHANGES)
        assertEquals(listOf(StepState.DONE, StepState.NEXT), checkNotNull(changes.test).steps.take(2).map { it.state })
        assertTrue(spoken("step-1").endsWith(", done"), spoken("step-1"))
        assertTrue(spoken("step-2").endsWith(", next"), spoken("step-2"))
        assertTrue("pink" in spoken("set-step"), spoken("set-step"))
        tapOn("end-test")
        wait(seconds = 2)
        assertNull(changes.test)
        assertTrue(tags("forest").isNotEmpty(), "the plot again")
    }

    @Test fun atTwiceTheTextNothingIsLost() = Bankside.on(GLASS.copy(textScale = 2.0)) {
        aDay()
        assertNothingCutOff("plot")
        tapOn("next-page")
        assertNothingCutOff("change")
        tapOn("start-test")
        wait(seconds = 2)
        assertNothingCutOff("test")
    }

    @Test fun withoutAChangeItSaysSo() = Bankside.on {
        start()
        cast(15, bite = true)
        goTo(Showing.CHANGES)
        assertTrue(changes.changes.isEmpty() && "Nothing has been changed" in changes.says, changes.says)
        assertTrue(tags("forest").isEmpty() && tags("start-test").isEmpty())
        assertNothingCutOff("empty")
    }
}
