package app.restwater.desktop

import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertContentDescriptionContains
import androidx.compose.ui.test.assertIsEnabled
import androidx.compose.ui.test.isFocusable
import androidx.compose.ui.test.performTextInput
import androidx.compose.ui.test.performTextReplacement
import app.restwater.core.BankState
import app.restwater.core.Key
import app.restwater.core.KeyTap
import app.restwater.core.Leaf
import app.restwater.core.LeavesView
import app.restwater.ui.Showing
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNotNull
import kotlin.test.assertTrue

/**
 * Bench, Book, Conditions, Cautions, the list of screens and the set-up, operated by their keys, with the real library.
 */
@OptIn(ExperimentalTestApi::class)
class LeavesScreensTest {
    private fun Bankside.open(showing: Showing) {
        tapOn("screens")
        tapOn("open-$showing")
        wait(seconds = 1)
    }

    private fun LeavesView?.leaf(id: String): Leaf = checkNotNull(this?.leaves?.find { it.id == id }) { "no leaf $id" }

    private fun Bankside.choose(row: String, value: String) {
        tapOn("row-$row")
        tapOn("choice-$row-$value")
        wait(seconds = 1)
        tapOn("back")
    }

    @Test fun theListOpensEveryScreenAndBackReturnsToTheBank() = Bankside.on {
        start()
        tapOn("screens")
        val screens = checkNotNull(state.screenList).keys.map { Showing.of(it.which) }
        assertTrue(screens.containsAll(listOf(Showing.BENCH, Showing.BOOK, Showing.CONDITIONS, Showing.CAUTIONS)), "$screens")
        assertFalse(Showing.BANK in screens, "a screen the shell doesn't know: $screens")
        tapOn("back")
        for (goal in screens) {
            open(goal)
            assertEquals(goal, state.showing)
            tapOn("back")
            assertEquals(Showing.BANK, state.showing)
        }
    }

    @Test fun anEveningAtTheBench() = Bankside.on {
        open(Showing.BENCH)
        tapOn("key-leaf-hooklengths")
        tapOn("key-tied-5")
        wait(seconds = 1)
        tapOn("key-want-more")
        wait(seconds = 1)
        choose("length", "4572")
        tapOn("key-want-more")
        wait(seconds = 1)
        tapOn("key-want-more")
        wait(seconds = 1)
        assertEquals(listOf("0 tied, 2 to carry", "5 tied, 1 to carry"), state.bench.leaf("hooklengths").lines.map { it.value })
        tapOn("back")
        tapOn("key-leaf-cut-down")
        node("says").assertContentDescriptionContains("2 to cut down", substring = true)
        tapOn("key-cut_all-")
        wait(seconds = 1)
        assertEquals("Nothing to cut down: no spare tie is long enough for one that is missing.", state.bench.leaf("cut-down").says)
        tapOn("back")
        tapOn("back")
        assertEquals(Showing.BANK, state.showing)
        tap(Key.UNDO)
        assertEquals(2, state.bench.leaf("hooklengths").lines.size)
    }

    @Test fun aRefusalIsShownAndNothingChanges() = Bankside.on {
        open(Showing.BENCH)
        tapOn("key-leaf-fall")
        tapOn("key-splash-")
        tapOn("key-bottom-")
        node("notice").assertContentDescriptionContains("has no depth", substring = true)
        wait(seconds = 3)
        tapOn("key-bottom-")
        wait(seconds = 1)
        tapOn("key-calibrate-")
        wait(seconds = 1)
        node("says").assertContentDescriptionContains("3 m deep", substring = true)
    }

    @Test fun theLeadCautionIsShownByTheWeightAndForbidsNothing() = Bankside.on {
        start()
        tap(Key.TACKLE)
        choose("lead", "20000")
        node("caution").assertContentDescriptionContains("Lead of this weight", substring = true)
        choose("material", "non_toxic")
        assertEquals("", state.tackle?.caution)
        choose("material", "lead")
        node("caution").assertContentDescriptionContains("not to be used", substring = true)
        tapOn("back")
        tap(Key.CAST)
        assertEquals(BankState.OUT, bank.state)
    }

    @Test fun conditionsAreAskedOneAfterTheOther() = Bankside.on {
        start()
        open(Showing.CONDITIONS)
        repeat(6) {
            val key = state.conditions.leaf("now").keys.first()
            if (key.tag != "again-") {
                tapOn("key-${key.tag}")
                wait(seconds = 1)
            }
        }
        val leaf = state.conditions.leaf("now")
        assertEquals("again-", leaf.keys.single().tag)
        assertTrue(leaf.lines.size >= 5)
    }

    @Test fun cautionsAreAskedOncePerPegAndNeverInFrontOfALoggingKey() = Bankside.on {
        tap(Key.START)
        tapOn("open-CAUTIONS")
        wait(seconds = 1)
        val first = checkNotNull(state.cautions).leaves[1]
        tapOn("key-leaf-${first.id}")
        node("note-0").assertContentDescriptionContains("Authority", substring = true)
        tapOn("back")
        tapOn("back")
        start()
        assertEquals(BankState.READY, bank.state)
        node("key-CAST").assertIsEnabled()
        node("notice").assertContentDescriptionContains("", substring = true)
        open(Showing.CAUTIONS)
        tapOn("key-seen-all")
        wait(seconds = 1)
        node("says").assertContentDescriptionContains("All read", substring = true)
        assertTrue(state.cautions.leaf("list").keys.isEmpty())
    }

    @Test fun aPegIsDrawnTheLastSetUpTakenOverAndTheListPacked() = Bankside.on {
        tap(Key.START)
        tapOn("row-draw")
        for (digit in listOf("1", "4")) {
            tapOn("choice-draw-$digit")
            wait(seconds = 1)
        }
        tapOn("back")
        assertEquals("14", state.setup?.fields?.first { it.tag == "peg" }?.value)
        tap(Key.START)
        wait(seconds = 2)
        tap(Key.TACKLE)
        choose("bait", "bread")
        tapOn("back")
        while (layout().keys.none { it.key == Key.END }) tapOn("more")
        tap(Key.END)
        tapOn("back")
        wait(minutes = 60)
        tap(Key.START)
        choose("copy", "last")
        tapOn("row-pack")
        val pack = checkNotNull(state.setup).rows.first { it.tag == "pack" }
        assertTrue(pack.choices.any { it.label == "bread" }, "${pack.choices}")
        tapOn("choice-pack-${pack.choices.first().tag}")
        wait(seconds = 1)
        assertTrue(checkNotNull(state.setup).rows.first { it.tag == "pack" }.choices.first().chosen)
        tapOn("back")
        tap(Key.START)
        assertEquals("bread", bank.rig)
    }

    @Test fun theBookOpensASessionTakesANoteAndComparesSets() = Bankside.on {
        repeat(2) { day ->
            tap(Key.START)
            tap(Key.START)
            wait(seconds = 2)
            repeat(2) {
                tap(Key.CAST)
                wait(minutes = 14)
                if (day == 0) { tap(Key.BITE); wait(minutes = 1); tap(Key.LANDED) } else tap(Key.WOUND_IN)
                wait(minutes = 2)
            }
            while (layout().keys.none { it.key == Key.END }) tapOn("more")
            tap(Key.END)
            tapOn("back")
            wait(minutes = 24 * 60)
        }
        open(Showing.BOOK)
        val sessions = state.book.leaf("sessions")
        assertEquals(2, sessions.list.size)
        tapOn("key-${sessions.list.last().tag}")
        wait(seconds = 1)
        tapOn("key-leaf-session")
        node("says").assertContentDescriptionContains("2 bites in 2 casts", substring = true)
        node("typed-note").performTextInput("mist till ten")
        tapOn("send-note")
        wait(seconds = 1)
        assertTrue(state.book.leaf("session").lines.any { it.value == "mist till ten" })
        tapOn("back")
        tapOn("key-leaf-rates")
        node("says").assertContentDescriptionContains("Can't tell yet", substring = true)
        tapOn("back")
        tapOn("key-leaf-sets")
        node("says").assertContentDescriptionContains("in both sets", substring = true)
        tapOn("back")
        tapOn("key-leaf-next")
        assertTrue(state.book.leaf("next").lines.isNotEmpty())
        assertNotNull(state.book.leaf("light").rows.find { it.tag == "lat" })
    }

    @Test fun aTypedTextThatIsRefusedStaysInItsLine() = Bankside.on {
        start()
        open(Showing.BOOK)
        tapOn("key-${state.book.leaf("sessions").list.last().tag}")
        wait(seconds = 1)
        tapOn("key-leaf-session")
        fun typed() = node("typed-note").fetchSemanticsNode().config[SemanticsProperties.EditableText].text
        val long = "m".repeat(2_001)
        node("typed-note").performTextInput(long)
        tapOn("send-note")
        node("notice").assertContentDescriptionContains("2000", substring = true)
        assertEquals(long, typed())
        wait(seconds = 1)
        node("typed-note").performTextReplacement("mist till ten")
        tapOn("send-note")
        wait(seconds = 1)
        assertEquals("", typed())
        assertTrue(state.book.leaf("session").lines.any { it.value == "mist till ten" })
    }

    @Test fun aScreenReaderWalksThroughKeysRowByRow() = Bankside.on {
        start()
        for (screen in listOf(Showing.SCREENS, Showing.SETUP, Showing.PHONE)) {
            show(screen)
            // As a screen reader sorts what is not a group of its own: by place, then by the order that is asked for.
            val plain = nodes(isFocusable()).sortedWith(compareBy({ it.boundsInRoot.top }, { it.boundsInRoot.left }))
            val read = plain.sortedBy { it.config.getOrNull(SemanticsProperties.TraversalIndex) ?: 0f }
            fun SemanticsNode.tag() = config.getOrNull(SemanticsProperties.TestTag).orEmpty()
            val keys = read.filter { key -> listOf("open-", "row-").any { key.tag().startsWith(it) } }
            assertTrue(keys.size > 4, "$screen: ${read.map { it.tag() }}")
            // The first key of a row is at the thumb, the right one here.
            fun inOrder(a: Rect, b: Rect) = a.top < b.top || (a.top == b.top && a.left > b.right)
            val leaps = keys.zipWithNext().count { (one, next) -> !inOrder(one.boundsInRoot, next.boundsInRoot) }
            // Where the list of screens has two groups, the one at the thumb comes first, though it is the lower one.
            val groups = screen == Showing.SCREENS && keys.first().boundsInRoot.top > keys.last().boundsInRoot.top
            assertEquals(if (groups) 1 else 0, leaps, "$screen: ${keys.map { it.tag() }}")
            assertEquals("back", read.last().tag(), "$screen")
        }
    }

    @Test fun atTwiceTheTextEveryKeyOfEveryLeafIsReached() = Bankside.on(GLASS.copy(textScale = 2.0)) {
        start()
        for ((showing, read) in listOf<Pair<Showing, () -> LeavesView?>>(Showing.BENCH to { state.bench }, Showing.BOOK to { state.book })) {
            open(showing)
            val first = checkNotNull(read()).leaves.first()
            val opened = (first.list + first.keys).mapNotNull { (it.tap as? KeyTap.Leaf)?.id }
            for (leaf in checkNotNull(read()).leaves.filter { it === first || it.id in opened }) {
                if (leaf.id != read()!!.leaves.first().id) openLeaf(leaf.id)
                val wanted = leaf.keys.map { "key-${it.tag}" } + leaf.rows.map { "row-${it.tag}" }
                val seen = mutableSetOf<String>()
                // The pager turns the text and the keys.
                repeat(12) {
                    seen += wanted.filter { isThere(it) }
                    if (!seen.containsAll(wanted) && isThere("next-page")) tapOn("next-page")
                }
                assertTrue(seen.containsAll(wanted), "$showing ${leaf.id}: ${wanted - seen}")
                if (leaf.id != read()!!.leaves.first().id) tapOn("back")
            }
            tapOn("back")
        }
    }

    /** Taps a key of the first leaf, on whatever part of its list it is. */
    private fun Bankside.openLeaf(id: String) {
        repeat(12) {
            if (!isThere("key-leaf-$id") && isThere("next-page")) tapOn("next-page")
        }
        tapOn("key-leaf-$id")
    }
}
