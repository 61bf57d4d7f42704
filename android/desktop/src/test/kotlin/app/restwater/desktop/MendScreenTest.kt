package app.restwater.desktop

import androidx.compose.ui.test.assertContentDescriptionContains
import app.restwater.core.Key
import app.restwater.ui.Showing
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertNull

/** Doubtful entries, corrected by their keys. */
class MendScreenTest {
    private fun Bankside.anEndNotSeen() {
        start()
        tap(Key.CAST)
        wait(minutes = 25)
        tap(Key.CAST)
        wait(minutes = 1)
        goTo(Showing.MEND)
    }

    @Test fun anEndThatWasNotSeenIsEnteredInAFewTaps() = Bankside.on {
        anEndNotSeen()
        val mend = checkNotNull(state.mend)
        assertEquals("1 entry to look at.", mend.says)
        tapOn("mend-${mend.lines.single().op}")
        node("mend-why").assertContentDescriptionContains("Its end was not seen", substring = true)
        tapOn("row-end")
        tapOn("choice-end-missed")
        wait(seconds = 2)
        tapOn("row-after")
        tapOn("choice-after-14")
        val open = checkNotNull(state.mend?.open)
        assertEquals(listOf("missed", "14 min"), open.rows.map { it.value })
        tapOn("back")
        assertNull(state.mend?.open)
        assertEquals("Nothing doubtful in this session.", state.mend?.says)
    }

    @Test fun aCorrectEntryNeedsOneTapAndUndoRestoresTheDoubt() = Bankside.on {
        anEndNotSeen()
        val op = checkNotNull(state.mend).lines.single().op
        tapOn("mend-$op")
        tapOn("row-keep")
        assertEquals(emptyList(), state.mend?.lines)
        tapOn("back")
        wait(seconds = 2)
        tap(Key.UNDO)
        goTo(Showing.MEND)
        assertEquals(op, state.mend?.lines?.single()?.op)
    }
}
