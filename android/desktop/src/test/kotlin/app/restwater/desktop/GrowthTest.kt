package app.restwater.desktop

import androidx.compose.ui.test.SemanticsMatcher
import app.restwater.core.Glass
import app.restwater.core.KeyTap
import app.restwater.core.Leaf
import app.restwater.core.LeavesView
import app.restwater.core.readDay
import app.restwater.ui.Drawn
import app.restwater.ui.Showing
import java.io.File
import kotlin.test.Test
import kotlin.test.assertEquals

/**
 * What every page of every screen draws at 200 % text, compared with 100 %: nothing is smaller, whether it is drawn as at 100 %,
 * joined with its label or divided between pages, and no words are lost. What hardly grows is listed in target/growth.
 */
class GrowthTest {
    private val days = mapOf(
        "demo" to listOf("05-three-bites-hold", "11-all-out"),
        "match" to listOf("05-near-the-limit", "10-weigh-in"),
        "neighbours" to listOf("01-both-out"),
        "plan" to listOf("02-before-the-first-cast"),
    )

    @Test fun smallUpright() = everyPage(Glass(750.0, 1334.0, 12.84, 1.0, false, 40.0, 0.0), "small")

    @Test fun largeUpright() = everyPage(Glass(1290.0, 2796.0, 18.11, 1.0, false, 177.0, 102.0), "large")

    @Test fun smallOnItsSide() = everyPage(Glass(1334.0, 750.0, 12.84, 1.0, false, 40.0, 0.0), "side")

    private fun everyPage(glass: Glass, name: String) {
        val (faults, still) = mutableListOf<String>() to mutableListOf<String>()
        for ((day, moments) in days) for (moment in moments) {
            val (once, twice) = listOf(1.0, 2.0).map { scale -> texts(glass.copy(textScale = scale), day, moment, moment == moments.last()) }
            for ((place, small) in once) {
                val large = twice[place].orEmpty()
                val where = "$day $moment $place"
                for ((text, em) in small) {
                    // Beside the clock of the lowest screens there is room for one text of this size: UNDO says the time too.
                    if (place == "BANK" && " since " in text && glass.heightPx / glass.pxPerMm < LOW_MM) continue
                    lost(text, large.keys)?.let { word -> faults += "$where: lost from '$word' on: '$text'" }
                    val drawn = large.filterKeys { it == text || joined(it, text) }.values.minOrNull() ?: continue
                    if (drawn < 0.999f * em) faults += "$where: '$text' is drawn at $drawn px, at 100 % at $em px"
                    else if (drawn < HARDLY * em) still += "$where: '$text' ${"%.2f".format(drawn / em)}"
                }
            }
        }
        File(System.getProperty("restwater.tree"), "target/growth").apply { mkdirs() }.resolve("$name.txt").writeText(still.joinToString("\n"))
        assertEquals(emptyList(), faults, "${faults.size} faults:\n${faults.joinToString("\n")}\n")
    }

    /** A label with its value, and what is left of a sentence on one page: whatever is long enough to be the same words. */
    private fun joined(one: String, other: String) = minOf(one.length, other.length) >= maxOf(SAME, maxOf(one.length, other.length) / 2) && (one in other || other in one)

    /** The first word of a text that is nowhere, if there is one; large text may divide it between pages. */
    private fun lost(text: String, there: Set<String>): String? {
        // Figures of an axis and labels of the map are thinned out, the map's key says the latter, and the number of pages is another.
        val thinned = text.startsWith("KEPT") || Regex("\\d+ (of \\d+|min)").matches(text)
        if (text.count { it.isLetter() } < 3 || thinned) return null
        var words = text.split(' ')
        while (words.isNotEmpty()) {
            val most = (words.size downTo 1).firstOrNull { n -> words.take(n).joinToString(" ").let { part -> there.any { part in it } } } ?: return words.first()
            words = words.drop(most)
        }
        return null
    }

    /** Of each page of each screen, the smallest size at which each text is drawn, px. */
    private fun texts(glass: Glass, day: String, moment: String, leaves: Boolean): Map<String, Map<String, Float>> {
        val found = mutableMapOf<String, MutableMap<String, Float>>()
        Bankside.on(glass) {
            live(readDay(File(System.getProperty("restwater.tree"), "tests/days/$day.jsonl").readText()), moment)
            fun read(place: String) = repeat(pagesHere()) {
                for ((text, em) in drawn()) found.getOrPut(place) { mutableMapOf() }.merge(text, em, ::minOf)
                if (isThere("next-page")) tapOn("next-page")
            }
            for (screen in Showing.entries) {
                show(screen)
                read("$screen")
                // On the lowest screens the third sentence has a line of its own, which the second takes with large text.
                if (screen == Showing.BANK && glass.heightPx / glass.pxPerMm < LOW_MM) {
                    found["$screen"]?.keys?.removeAll(bank.advice.more.map(::plain).toSet())
                }
                if (screen == Showing.MATCH) for (page in listOf("match-coming", "match-scales", "match-rules")) {
                    if (!goTo(page)) continue
                    read("$screen $page")
                    tapOn("back")
                }
                if (leaves) leavesOf(screen)?.let { view -> others(view) { id -> read("$screen $id") } }
            }
        }
        return found
    }

    private fun Bankside.pagesHere() = if (isThere("next-page")) pages() else 1

    /** Turns pages until a key is there, and taps on it. */
    private fun Bankside.goTo(tag: String): Boolean {
        repeat(pagesHere()) { if (!isThere(tag) && isThere("next-page")) tapOn("next-page") }
        return isThere(tag).also { if (it) tapOn(tag) }
    }

    /** Opens every leaf but the first, each by its keys from the first. */
    private fun Bankside.others(view: LeavesView, read: (String) -> Unit) {
        val paths = mutableMapOf(view.leaves.first().id to emptyList<String>())
        val queue = ArrayDeque(listOf(view.leaves.first()))
        while (queue.isNotEmpty()) {
            val leaf = queue.removeFirst()
            for ((id, tag) in screenKeysOf(leaf)) {
                val next = view.leaves.find { it.id == id } ?: continue
                if (paths.putIfAbsent(id, paths.getValue(leaf.id) + tag) == null) queue.addLast(next)
            }
        }
        for ((id, path) in paths) {
            if (path.isEmpty() || !path.all { goTo("key-$it") }) continue
            read(id)
            tapOn("back")
        }
    }

    private fun screenKeysOf(leaf: Leaf) = (leaf.keys + leaf.list).mapNotNull { key -> (key.tap as? KeyTap.Leaf)?.let { it.id to key.tag } }

    private fun Bankside.leavesOf(screen: Showing): LeavesView? = when (screen) {
        Showing.BENCH -> state.bench
        Showing.BOOK -> state.book
        Showing.CONDITIONS -> state.conditions
        Showing.CAUTIONS -> state.cautions
        Showing.DAY -> state.day
        else -> null
    }

    /** A figure and its unit are bound by another space, a line may end anywhere, and a label is above its value or joined with it. */
    private fun Bankside.drawn(): Map<String, Float> =
        nodes(SemanticsMatcher.keyIsDefined(Drawn)).flatMap { it.config[Drawn] }
            .groupBy({ plain(it.text) }, { it.em }).filterKeys { it.isNotEmpty() }.mapValues { (_, sizes) -> sizes.min() }

    private fun plain(text: String) = text.replace('\u00a0', ' ').replace('\n', ' ').replace(":", "").trim()

    private companion object {
        /** A text this many times as large has hardly grown. */
        const val HARDLY = 1.15f

        /** A screen as low as this has one place beside the clock, mm. */
        const val LOW_MM = 125.0

        /** Letters of a text that is not by chance a part of another. */
        const val SAME = 14
    }
}
