package app.restwater.desktop

import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.SemanticsMatcher
import app.restwater.core.Action
import app.restwater.core.Glass
import app.restwater.core.Hand
import app.restwater.core.KeyTap
import app.restwater.core.readDay
import app.restwater.ui.Drawn
import app.restwater.ui.Showing
import app.restwater.ui.tag
import java.io.File
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** What the smallest screen draws at 200 % text: sentences grow, keys keep their smaller line, pages are filled. */
class LargeTextTest {
    private val small = Glass(750.0, 1334.0, 12.84, 1.0, false, 40.0, 0.0)

    private fun demo(scale: Double, then: Bankside.() -> Unit) = Bankside.on(small.copy(textScale = scale)) {
        live(readDay(File(System.getProperty("restwater.tree"), "tests/days/demo.jsonl").readText()), "05-three-bites-hold")
        then()
    }

    /** The largest size at which each text of the open page is drawn, px; a figure and its unit are bound by another space. */
    private fun Bankside.drawn(): Map<String, Float> =
        nodes(SemanticsMatcher.keyIsDefined(Drawn)).flatMap { it.config[Drawn] }
            .groupBy({ it.text.replace('\u00a0', ' ') }, { it.em }).mapValues { (_, sizes) -> sizes.max() }

    /** The same of all pages. */
    private fun Bankside.allPages(screen: Showing): Map<String, Float> {
        show(screen)
        val found = drawn().toMutableMap()
        repeat(30) {
            if (isThere("next-page")) {
                tapOn("next-page")
                drawn().forEach { (text, em) -> found.merge(text, em, ::maxOf) }
            }
        }
        return found
    }

    @Test fun sentencesGrowOnEveryScreen() {
        val sizes = listOf(1.0, 2.0).map { scale ->
            val found = mutableMapOf<String, Float>()
            demo(scale) {
                val advice = drawn()
                for (text in listOf(bank.advice.detail, bank.spot)) found["Bank: $text"] = advice.getValue(text)
                for (screen in listOf(Showing.WAITS, Showing.CHANGES, Showing.SWIM)) {
                    val pages = allPages(screen)
                    val says = when (screen) {
                        Showing.WAITS -> checkNotNull(state.waits).charts.map { it.says }
                        Showing.CHANGES -> checkNotNull(state.changes).run { listOf(says) + changes.map { it.says } }
                        else -> listOf(checkNotNull(state.swim).headline)
                    }
                    // A page ends with a sentence, so that a long text is on several.
                    val whole = { text: String -> pages[text] ?: pages.filterKeys { it.length > 20 && it in text }.values.minOrNull() ?: 0f }
                    for (text in says.filter { it.isNotBlank() }) found["$screen: $text"] = whole(text)
                }
            }
            found
        }
        val (once, twice) = sizes
        assertTrue(once.size > 5 && once.keys == twice.keys, "$once $twice")
        // On the smallest screen the line of the counts, which also says what was not tried, and the spot, which is as large as
        // that line already, have no second line of the Bank: they keep their size.
        val grows = { text: String ->
            when {
                text.startsWith("Bank") -> 0.999f
                text.startsWith("SWIM") -> 1.25f
                else -> 1.5f
            }
        }
        val least = once.mapValues { (text, em) -> grows(text) * em }
        val short = twice.filter { (text, em) -> em < least.getValue(text) }
        assertEquals(emptyMap(), short, "of $once")
    }

    @Test fun everyKeyKeepsItsSmallerLine() {
        for ((state, way) in LEADING_TO) {
            val sizes = listOf(1.0, 2.0).map { scale ->
                val found = mutableMapOf<String, Float>()
                Bankside.on(small.copy(textScale = scale)) {
                    start()
                    for (key in way) { tap(key); wait(minutes = 3) }
                    val faces = bank.keys.associateBy { it.key }
                    repeat(layout().pages.toInt()) {
                        for (place in layout().keys) {
                            val face = faces[place.key] ?: continue
                            val drawn = node(tag(place.key)).fetchSemanticsNode().let { key -> nodes(SemanticsMatcher.keyIsDefined(Drawn)).filter { it.boundsInRoot.overlaps(key.boundsInRoot.deflate(3f)) } }
                            for (text in listOfNotNull(face.label, face.sub).filter { it.isNotBlank() }) {
                                val em = drawn.flatMap { it.config[Drawn] }.filter { it.text.replace('\u00a0', ' ') == text }.maxOfOrNull { it.em }
                                found["${place.key}: $text"] = em ?: 0f
                            }
                        }
                        if (layout().more != null) tapOn("more")
                    }
                }
                found
            }
            val (once, twice) = sizes
            assertTrue(once.size > 3 && once.values.all { it > 0f }, "$state: $once")
            assertEquals(emptyMap(), twice.filter { (text, em) -> em < 0.999f * once.getValue(text) }, "$state: of $once")
        }
    }

    @Test fun aFishOnAnotherRodIsNamedInItsCellAndOnTheKeyThatLeadsToIt() {
        for (rods in 2..3) for (scale in listOf(1.0, 2.0)) Bankside.on(small.copy(textScale = scale)) {
            tap(app.restwater.core.Key.START)
            tapOn("row-rods")
            tapOn("choice-rods-$rods")
            tapOn("back")
            tap(app.restwater.core.Key.START)
            wait(seconds = 30)
            for (rod in 1..rods) {
                state.act(Action.Cast(rod.toUByte()))
                wait(minutes = 3)
            }
            state.act(Action.Bite(2u))
            state.act(Action.ChooseRod(1u))
            wait(seconds = 10)
            assertEquals("FISH ON", bank.rods[1].alert)
            val drawn = nodes(SemanticsMatcher.keyIsDefined(Drawn)).flatMap { node -> node.config[Drawn].map { it to node.positionInRoot } }
            val places = drawn.filter { (text, _) -> "FISH ON" in text.text.replace('\u00a0', ' ') }.map { (text, at) -> text.place.translate(at) }
            val cell = layout().rods[1].target
            val key = checkNotNull(layout().nextRod)
            for ((name, place) in listOf("cell" to cell, "key" to key)) {
                val inside = places.any { it.center.x > place.left && it.center.x < place.left + place.width && it.center.y > place.top && it.center.y < place.top + place.height }
                assertTrue(inside, "$rods rods at $scale: the $name does not say FISH ON: $places")
            }
        }
    }

    /** After the page with its keys a leaf has the whole page for its lines, and fills it before it turns. */
    @Test fun pagesOfLeavesAreFilled() = Bankside.on(small.copy(textScale = 2.0)) {
        live(readDay(File(System.getProperty("restwater.tree"), "tests/days/demo.jsonl").readText()), "11-all-out")
        show(Showing.DAY)
        assertTrue(pages() <= 3, "${pages()} pages of the day's card: there were four when each began with a nearly empty page")
        show(Showing.BOOK)
        val key = checkNotNull(state.book).leaves.first().list.last().tag
        while (!isThere("key-$key")) tapOn("next-page")
        tapOn("key-$key")
        val rest = layout().page.rest
        val filled = (2 until pages()).map {
            tapOn("next-page")
            val texts = nodes(SemanticsMatcher.keyIsDefined(Drawn)).flatMap { node -> node.config[Drawn].map { it.place.translate(node.positionInRoot) } }
            (texts.filter { it.bottom <= rest.top + rest.height + 1 }.maxOf { it.bottom } - rest.top) / rest.height
        }
        assertTrue(filled.isNotEmpty() && filled.all { it > 0.65 }, "$filled")
    }

    /** Who reads a caution page by page reads whole sentences; one that is higher than a page ends with a clause. */
    @Test fun pagesOfCautionsEndWithASentence() = Bankside.on(small.copy(textScale = 2.0)) {
        start()
        show(Showing.CAUTIONS)
        val leaves = checkNotNull(state.cautions).leaves
        val broken = mutableListOf<String>()
        for (key in leaves.first().run { keys + list }.filter { it.tap is KeyTap.Leaf }) {
            while (!isThere("key-${key.tag}")) tapOn("next-page")
            tapOn("key-${key.tag}")
            val leaf = leaves.first { it.id == (key.tap as KeyTap.Leaf).id }
            val whole = (leaf.notes + leaf.says + leaf.caution).map { it.replace('\u00a0', ' ') }
            repeat(if (isThere("next-page")) pages() else 1) {
                val texts = nodes(SemanticsMatcher.keyIsDefined(Drawn)).flatMap { it.config[Drawn] }.map { it.text.replace('\u00a0', ' ') }
                broken += texts.filter { text -> text != leaf.title && text !in whole && whole.any { text in it } && text.last() !in ".!?…" && !(text.last() in ",;:" && text.length > HIGHER_THAN_A_PAGE) }
                if (isThere("next-page")) tapOn("next-page")
            }
            tapOn("back")
        }
        assertEquals(emptyList(), broken)
    }

    /** What the other figures of the axis are read by. */
    @Test fun theAxisOfChangesSaysWhereNothingChanged() {
        for (scale in listOf(1.0, 2.0)) demo(scale) {
            show(Showing.CHANGES)
            val same = checkNotNull(state.changes).axis.ticks.single { it.at == 0.0 }.label
            while (!isThere("forest")) tapOn("next-page")
            assertTrue(same in drawn().keys, "at $scale: ${drawn().keys}")
        }
    }

    /** A leaf with many keys gives up rows of them before it needs a page for every other line. */
    @Test fun smallTextNeedsNoMorePagesThanLargeText() {
        val pages = listOf(1.0, 2.0).map { scale ->
            var count = 0
            Bankside.on(small.copy(textScale = scale)) {
                start()
                show(Showing.BENCH)
                val key = checkNotNull(state.bench).leaves.first().run { keys + list }.first { (it.tap as? KeyTap.Leaf)?.id == "pop-up" }
                while (!isThere("key-${key.tag}")) tapOn("next-page")
                tapOn("key-${key.tag}")
                count = if (isThere("next-page")) pages() else 1
            }
            count
        }
        assertTrue(pages[0] <= pages[1], "${pages[0]} pages at 100 %, ${pages[1]} at 200 %")
    }

    /** Number pads have room for figures twice as large, and the keys of the phone's settings for larger words. */
    @Test fun keysGrowWhereThereIsRoom() {
        val sizes = listOf(1.0, 2.0).map { scale ->
            val found = mutableMapOf<String, Float>()
            Bankside.on(small.copy(textScale = scale)) {
                live(readDay(File(System.getProperty("restwater.tree"), "tests/days/match.jsonl").readText()), "10-weigh-in")
                show(Showing.MATCH)
                tapOn("match-scales")
                drawn().filterKeys { it == "7" }.forEach { (text, em) -> found["pad $text"] = em }
                allPages(Showing.PHONE).filterKeys { text -> checkNotNull(state.phone).rows.any { it.label == text } }.forEach { (text, em) -> found[text] = em }
            }
            found
        }
        val (once, twice) = sizes
        assertTrue(once.size > 8, "$once")
        assertEquals(emptyMap(), twice.filter { (text, em) -> em < 1.2f * once.getValue(text) }, "of $once")
    }

    private companion object {
        /** Letters of a sentence that is higher than a page of the smallest screen at 200 %, less its last clause. */
        const val HIGHER_THAN_A_PAGE = 100
    }

    @Test fun theKeysOfAGridBeginAtEitherThumb() {
        for (hand in Hand.entries) Bankside.on(small) {
            choose(hand = hand)
            start()
            show(Showing.TACKLE)
            val first = node("row-${checkNotNull(state.tackle).rows.first().tag}").fetchSemanticsNode().boundsInRoot
            val across = if (hand == Hand.LEFT) first.left else glass.widthPx.toFloat() - first.right
            assertTrue(across <= 2.2 * glass.pxPerMm, "$hand: ${across / glass.pxPerMm} mm from the edge")
        }
    }
}
