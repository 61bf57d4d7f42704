package app.restwater.desktop

import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import app.restwater.core.Hand
import app.restwater.ui.Showing
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** Where keys are and in which order a screen reader reads them, for either hand. */
class OrderTest {
    private fun Bankside.place(tag: String) = node(tag).fetchSemanticsNode().boundsInRoot

    /** Whether the second is to the right of the first, or in a row below it. */
    private fun Bankside.isRead(first: String, second: String, hand: Hand) {
        val (a, b) = place(first) to place(second)
        assertTrue(a.top < b.top || (a.top == b.top && a.right < b.left), "$hand: $first $a, $second $b")
    }

    @Test fun keysThatNameSidesOrMomentsKeepTheirOrderForEitherHand() = Bankside.on {
        start()
        for (hand in Hand.entries) {
            choose(hand = hand)
            wait(seconds = 1)
            show(Showing.SEEN)
            isRead("neighbour-left", "neighbour-right", hand)
            isRead("neighbour-right", "neighbour-across", hand)
            show(Showing.SWIM)
            tapOn("swim-more")
            for ((first, second) in listOf("swim-EARLIER" to "swim-LATER", "swim-LATER" to "swim-NOW", "row-left" to "row-right", "row-right" to "row-far")) {
                if (isThere(first) && isThere(second)) isRead(first, second, hand)
            }
            assertTrue(isThere("row-left") && isThere("row-right") && isThere("swim-EARLIER"))
            tapOn("back")
            show(Showing.BANK)
        }
        // Other keys are counted from the thumb.
        val mark = Hand.entries.associateWith { hand ->
            choose(hand = hand)
            show(Showing.SWIM)
            tapOn("swim-more")
            place("swim-MARK_HERE").left.also { tapOn("back"); show(Showing.BANK) }
        }
        assertTrue(mark.getValue(Hand.RIGHT) > mark.getValue(Hand.LEFT), "$mark")
        assertEquals(2, mark.size)
    }

    @Test fun aReaderWalksAGridFromItsFirstKeyForEitherHandAndBackComesLast() = Bankside.on {
        start()
        for (hand in Hand.entries) {
            choose(hand = hand)
            show(Showing.SWIM)
            tapOn("swim-more")
            val swim = checkNotNull(state.swim)
            val tags = listOf("swim-MARK_HERE", "swim-EARLIER", "swim-LATER", "swim-NOW", "swim-list") + swim.rows.map { "row-${it.tag}" }
            fun order(tag: String) = node(tag).fetchSemanticsNode().config.getOrNull(SemanticsProperties.TraversalIndex) ?: 0f
            val walked = tags.filter(::isThere).map(::order)
            assertTrue(walked.size > 5 && walked.zipWithNext().all { (a, b) -> a < b }, "$hand: $walked")
            assertTrue(order("back") > walked.last() && (!isThere("next-page") || order("next-page") in walked.last()..order("back")))
            val groups = nodes(SemanticsMatcher.expectValue(SemanticsProperties.IsTraversalGroup, true))
            assertTrue(groups.any { it.boundsInRoot.contains(place("swim-list").center) }, "the page is walked as one")
            tapOn("back")
            show(Showing.BANK)
        }
    }
}
