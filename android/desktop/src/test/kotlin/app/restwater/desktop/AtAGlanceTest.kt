package app.restwater.desktop

import androidx.compose.ui.test.SemanticsMatcher
import app.restwater.core.BankLayout
import app.restwater.core.Glass
import app.restwater.core.Key
import app.restwater.core.KeyTap
import app.restwater.core.matchLayout
import app.restwater.core.readDay
import app.restwater.ui.Drawn
import app.restwater.ui.DrawnText
import app.restwater.ui.Showing
import java.io.File
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** What is on a page when it is opened: nothing smaller than asked for, what matters most on the first page, what belongs together on one. */
class AtAGlanceTest {
    private val small = Glass(750.0, 1334.0, 12.84, 1.0, false, 51.36, 0.0)
    private val large = Glass(1290.0, 2796.0, 18.1, 1.0, false, 72.4, 0.0)

    private fun day(name: String) = readDay(File(System.getProperty("restwater.tree"), "tests/days/$name.jsonl").readText())

    private fun Bankside.drawn(): List<DrawnText> = nodes(SemanticsMatcher.keyIsDefined(Drawn)).flatMap { it.config[Drawn] }

    private fun Bankside.texts() = drawn().map { it.text.replace('\u00a0', ' ') }

    /** The size at which a text of the open page is drawn. */
    private fun Bankside.em(text: String) = drawn().filter { it.text.replace('\u00a0', ' ') == text }.maxOfOrNull { it.em } ?: 0f

    /** Does the same on each page of the open screen. */
    private fun Bankside.onEachPage(look: (page: Int, of: Int) -> Unit) {
        val all = if (isThere("next-page")) pages() else 1
        repeat(all) { page ->
            look(page, all)
            if (all > 1) tapOn("next-page")
        }
    }

    private fun Bankside.pageText(): BankLayout = layout().run { copy(text = pageText) }

    @Test fun theMatchKeepsItsTextSizeAndWarnsOfALimitOnItsFirstPage() {
        for (glass in listOf(small, large)) for (scale in listOf(1.0, 2.0)) Bankside.on(glass.copy(textScale = scale)) {
            live(day("match"), "06-fish-by-weight")
            show(Showing.MATCH)
            val warning = checkNotNull(state.match).limitSays
            assertEquals("Net 1 may be at its limit.", warning)
            val body = pageText().text.body.toFloat()
            assertTrue(em(warning) >= 0.999f * body, "at $scale: ${em(warning)} of $body")
            val below = matchLayout(this.glass).now.rest
            onEachPage { page, _ ->
                val words = nodes(SemanticsMatcher.keyIsDefined(Drawn)).filter { it.boundsInRoot.top >= below.top && it.boundsInRoot.bottom <= below.top + below.height + 1 }
                val least = words.flatMap { it.config[Drawn] }.minOfOrNull { it.em } ?: body
                assertTrue(least >= 0.84f * body, "page $page at $scale: ${words.flatMap { node -> node.config[Drawn].map { it.text to it.em } }}, of $body")
            }
        }
    }

    @Test fun readIsTappedWhereACautionEnds() {
        for (scale in listOf(1.0, 2.0)) Bankside.on(small.copy(textScale = scale)) {
            start()
            show(Showing.CAUTIONS)
            val leaves = checkNotNull(state.cautions).leaves
            var long = 0
            for (leaf in leaves.filter { it.keysLast }) {
                val opener = leaves.first().list.first { (it.tap as? KeyTap.Leaf)?.id == leaf.id }
                while (!isThere("key-${opener.tag}")) tapOn("next-page")
                tapOn("key-${opener.tag}")
                onEachPage { page, of ->
                    if (of > 1) long += 1
                    val isLast = page == of - 1
                    assertEquals(isLast, isThere("key-seen-${leaf.id}"), "${leaf.id}: page ${page + 1} of $of at $scale")
                    // What is read last is on it.
                    if (isLast) assertTrue(leaf.notes.last() in texts(), "${leaf.id} at $scale: ${texts()}")
                }
                tapOn("back")
            }
            assertTrue(scale == 1.0 || long > 0, "no caution is longer than a page at 200 %")
        }
    }

    @Test fun theFigureOfANumberPadGrowsAndItsKeysSayWhatComesNext() {
        val figures = listOf(1.0, 2.0).map { scale ->
            var em = 0f
            for (glass in listOf(large, small)) Bankside.on(glass.copy(textScale = scale)) {
                live(day("match"), "03-fish-to-enter")
                tap(Key.FISH)
                tapOn("weigh")
                val pad = checkNotNull(state.weight)
                for (key in pad.pad.filter { it.sub.isNotBlank() }) {
                    assertTrue(em(key.sub) >= 0.999f * 2.4f * glass.pxPerMm.toFloat(), "${key.sub} at $scale: ${texts()}")
                }
                if (glass === large) em = em(pad.figure)
            }
            em
        }
        assertTrue(figures[1] >= 1.5f * figures[0], "$figures")
    }

    /** Few keys on a page, as of the filter of the Book, have room for words of the size that the phone is set to. */
    @Test fun keysWithRoomHaveLabelsOfTheChosenSize() = Bankside.on(small.copy(textScale = 2.0)) {
        live(day("match"), null)
        val asked = 0.9f * pageText().text.secondary.toFloat()
        show(Showing.BOOK)
        fun open(id: String) {
            while (!isThere("key-leaf-$id")) tapOn("next-page")
            tapOn("key-leaf-$id")
        }
        open("filter")
        val labels = checkNotNull(state.book).leaves.first { it.id == "filter" }.rows.map { it.label }
        val sizes = mutableMapOf<String, Float>()
        onEachPage { _, _ -> labels.filter { it in texts() }.forEach { sizes[it] = em(it) } }
        assertEquals(labels.toSet(), sizes.keys)
        assertTrue(sizes.values.all { it >= 0.999f * asked }, "$sizes of $asked")
        tapOn("back")
        tapOn("back")
        show(Showing.BENCH)
        val parts = checkNotNull(state.bench).leaves.first().keys.map { it.label }
        sizes.clear()
        onEachPage { _, _ -> parts.filter { it in texts() }.forEach { sizes[it] = em(it) } }
        assertEquals(parts.toSet(), sizes.keys)
        assertTrue(sizes.values.all { it >= 0.999f * asked }, "$sizes of $asked")
    }

    @Test fun aHeightIsOnOnePageWithItsDetailsAndUnderAnAxisThatSaysWhatItCounts() {
        for (scale in listOf(1.0, 2.0)) Bankside.on(small.copy(textScale = scale)) {
            live(day("plan"), null)
            show(Showing.BENCH)
            while (!isThere("key-leaf-heights")) tapOn("next-page")
            tapOn("key-leaf-heights")
            val leaf = checkNotNull(state.bench).leaves.first { it.id == "heights" }
            val axis = checkNotNull(leaf.axis)
            var ranges = 0
            onEachPage { page, _ ->
                for (line in leaf.lines.filter { it.span != null && it.value in texts() }) {
                    ranges += 1
                    assertTrue(line.detail in texts() && axis.label in texts(), "page $page at $scale: ${texts()}")
                }
            }
            assertTrue(ranges > 0)
        }
    }
}
