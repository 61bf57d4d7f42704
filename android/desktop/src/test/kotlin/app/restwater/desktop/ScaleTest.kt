package app.restwater.desktop

import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.test.hasTestTag
import app.restwater.core.Glass
import app.restwater.core.Key
import app.restwater.core.Leaf
import app.restwater.ui.Marks
import app.restwater.ui.Showing
import kotlin.math.abs
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** Ranges are drawn on a scale that can be read: its figures are on each page that has ranges, at the same places. */
class ScaleTest {
    private fun Bankside.days(count: Int) = repeat(count) { day ->
        start()
        repeat(2) {
            tap(Key.CAST)
            wait(minutes = 20 + 7 * day)
            tap(if (it <= day % 2) Key.BITE else Key.WOUND_IN)
            wait(minutes = 2)
            if (it <= day % 2) tap(Key.LOST)
            wait(minutes = 1)
        }
        while (layout().keys.none { it.key == Key.END }) tapOn("more")
        tap(Key.END)
        tapOn("back")
        wait(minutes = 60)
    }

    /** Left and right end of each mark, on the screen. */
    private fun SemanticsNode.marks() = config[Marks].map { boundsInRoot.left + it.left to boundsInRoot.left + it.right }

    private fun Bankside.readPages(leaf: Leaf): Int {
        val axis = checkNotNull(leaf.axis)
        var ranges = 0
        repeat(if (isThere("next-page")) pages() else 1) {
            val drawn = nodes(hasTestTag("range"))
            val scales = nodes(hasTestTag("scale"))
            assertEquals(if (drawn.isEmpty()) 0 else 1, scales.size, "page $it")
            ranges += drawn.size
            if (drawn.isNotEmpty()) {
                val ticks = scales.single().marks().map { (x, _) -> x }
                assertEquals(axis.ticks.size, ticks.size)
                fun x(at: Double) = ticks.first() + (ticks.last() - ticks.first()) * ((at - axis.ticks.first().at) / (axis.ticks.last().at - axis.ticks.first().at)).toFloat()
                val ends = leaf.lines.mapNotNull { line -> line.span?.let { span -> x(span.low) to x(span.high) } }
                for (range in drawn.flatMap { node -> node.marks() }) {
                    assertTrue(ends.any { abs(it.first - range.first) < PX && abs(it.second - range.second) < PX }, "$range is not on the scale: $ends")
                }
                val top = scales.single().boundsInRoot
                assertTrue(drawn.all { node -> node.boundsInRoot.top >= top.bottom }, "the scale comes first")
            }
            if (isThere("next-page")) tapOn("next-page")
        }
        return ranges
    }

    private fun rangesAt(glass: Glass) = Bankside.on(glass) {
        days(6)
        show(Showing.BOOK)
        while (!isThere("key-leaf-rates")) tapOn("next-page")
        tapOn("key-leaf-rates")
        val leaf = checkNotNull(state.book).leaves.first { it.id == "rates" }
        assertEquals(leaf.lines.count { it.span != null }, readPages(leaf))
    }

    @Test fun everyPageWithARangeHasOneScaleOnWhichItCanBeRead() = rangesAt(GLASS)

    @Test fun atTwiceTheTextToo() = rangesAt(GLASS.copy(textScale = 2.0))

    private companion object {
        /** The edges of a node are whole pixels. */
        const val PX = 1.5f
    }
}
