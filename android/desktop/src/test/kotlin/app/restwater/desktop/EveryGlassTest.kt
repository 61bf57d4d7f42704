package app.restwater.desktop

import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import app.restwater.core.Glass
import app.restwater.core.readDay
import app.restwater.core.Hand
import app.restwater.core.Key
import app.restwater.ui.CutOff
import app.restwater.ui.Drawn
import app.restwater.ui.Marks
import app.restwater.ui.Showing
import java.io.File
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/**
 * Every screen at moments of five days, upright and on its side, at 100 % and 200 % text, for either hand: no word is
 * cut off, no two keys overlap or leave the screen, no text covers another or a symbol of a picture, and no text at
 * 200 % is smaller than the same text at 100 %. This includes the labels inside pictures.
 */
class EveryGlassTest {
    private val days = mapOf(
        "demo" to listOf("02-first-cast-out", "05-three-bites-hold", "11-all-out"),
        "feeder" to listOf(null),
        "match" to listOf("05-near-the-limit", "10-weigh-in"),
        "section" to listOf(null),
        "neighbours" to listOf("01-both-out", "05-away"),
        "plan" to listOf("02-before-the-first-cast", "05-the-hour"),
    )

    @Test fun smallUpright() = everyScreen(Glass(750.0, 1334.0, 12.84, 1.0, false, 40.0, 0.0))

    @Test fun largeUpright() = everyScreen(Glass(1290.0, 2796.0, 18.11, 1.0, false, 177.0, 102.0))

    @Test fun smallOnItsSide() = everyScreen(Glass(1334.0, 750.0, 12.84, 1.0, false, 40.0, 0.0))

    @Test fun smallUprightInGerman() = inAnotherLanguage("de-AT", undo = "STORNO")

    @Test fun smallUprightInFrench() = inAnotherLanguage("fr-FR", undo = "ANNULER")

    /**
     * The rows of Tackle and of the phone, each opened, on a phone of another region than England: there every weight has a
     * caution, and the row of the weight has a typed field and its choices below it.
     */
    @Test fun everyOpenRow() {
        val faults = mutableListOf<String>()
        for (language in listOf("fr-FR", "de-AT", "en-US")) {
            for (glass in listOf(Glass(1334.0, 750.0, 12.84, 1.0, false, 40.0, 0.0), Glass(750.0, 1334.0, 12.84, 1.0, false, 40.0, 0.0))) {
                val once = mutableMapOf<String, Float>()
                for (scale in listOf(1.0, 2.0)) {
                    Bankside.on(glass.copy(textScale = scale), language) {
                        live(readDay(File(System.getProperty("restwater.tree"), "tests/days/demo.jsonl").readText()), "05-three-bites-hold")
                        for (screen in listOf(Showing.TACKLE, Showing.PHONE)) {
                            show(screen)
                            for (row in rows()) {
                                show(Showing.BANK)
                                show(screen)
                                while (!isThere(row)) tapOn("next-page")
                                tapOn(row)
                                val where = "$screen $row in $language on ${glass.widthPx.toInt()} px at ${(100 * scale).toInt()} %"
                                faults += look(where)
                                val drawn = drawn()
                                faults += drawn.filter { (_, em) -> em < LEAST_MM * glass.pxPerMm }
                                    .map { (text, em) -> "$where: '$text' is drawn ${"%.2f".format(em / glass.pxPerMm)} mm high" }
                                if (scale == 1.0) drawn.forEach { (text, em) -> once["$screen $row $text"] = em }
                                else faults += drawn.filter { (text, em) -> em < 0.999f * (once["$screen $row $text"] ?: 0f) }
                                    .map { (text, em) -> "$where: '$text' is drawn at $em px, at 100 % at ${once["$screen $row $text"]} px" }
                            }
                        }
                    }
                }
            }
        }
        assertEquals(emptyList(), faults.distinct(), "${faults.distinct().size} faults:\n${faults.distinct().joinToString("\n")}\n")
    }

    /** The tags of the rows of the screen that is open, on all its pages. */
    private fun Bankside.rows(): List<String> {
        val found = linkedSetOf<String>()
        while (true) {
            val tags = nodes(SemanticsMatcher.keyIsDefined(SemanticsProperties.TestTag)).mapNotNull { it.name }.filter { it.startsWith("row-") }
            if (!found.addAll(tags) || !isThere("next-page")) return found.toList()
            tapOn("next-page")
        }
    }

    /** The demo day in a language whose words are longer. */
    private fun inAnotherLanguage(language: String, undo: String) =
        everyScreen(Glass(750.0, 1334.0, 12.84, 1.0, false, 40.0, 0.0), language, undo, days.filterKeys { it == "demo" })

    private fun everyScreen(glass: Glass, language: String = "en-GB", undo: String = "UNDO", days: Map<String, List<String?>> = this.days) {
        val faults = mutableListOf<String>()
        for ((day, moments) in days) {
            val sizes = mutableMapOf<String, Map<String, Float>>()
            for (scale in listOf(1.0, 2.0)) {
                for (moment in moments) {
                    Bankside.on(glass.copy(textScale = scale), language) {
                        live(readDay(File(System.getProperty("restwater.tree"), "tests/days/$day.jsonl").readText()), moment)
                        assertEquals(undo, bank.keys.first { it.key == Key.UNDO }.label)
                        // The left hand's mirror image is a law of the layout: here it is looked at where room is short.
                        for (hand in if (scale == 1.0) listOf(Hand.RIGHT) else Hand.entries) {
                            choose(hand)
                            for ((screen, page) in Showing.entries.flatMap { screen -> pages(screen, scale).map { screen to it } }) {
                                if (page == 1) show(screen) else if (isThere("next-page")) tapOn("next-page") else continue
                                val where = "$day ${moment.orEmpty()} $screen $page at ${(100 * scale).toInt()} %, $hand"
                                faults += look(where)
                                if (hand == Hand.LEFT) continue
                                val drawn = drawn()
                                faults += drawn.filter { (_, em) -> em < LEAST_MM * glass.pxPerMm }
                                    .map { (text, em) -> "$where: '$text' is drawn ${"%.2f".format(em / glass.pxPerMm)} mm high" }
                                // Large text needs more pages: a text is compared wherever it is.
                                val once = sizes["$moment $screen"].orEmpty()
                                if (scale == 1.0) sizes["$moment $screen"] = (once.keys + drawn.keys).associateWith { text -> minOf(once[text] ?: Float.MAX_VALUE, drawn[text] ?: Float.MAX_VALUE) }
                                else faults += drawn.filter { (text, em) -> em < 0.999f * (once[text] ?: 0f) }
                                    .map { (text, em) -> "$where: '$text' is drawn at $em px, at 100 % at ${once[text]} px" }
                            }
                        }
                    }
                }
            }
        }
        assertEquals(emptyList(), faults.distinct(), "${faults.distinct().size} faults:\n${faults.distinct().joinToString("\n")}\n")
    }

    /** Pages of a screen that are checked: every picture of the screens that have several, and what large text adds to leaves. */
    private fun pages(screen: Showing, scale: Double) = when (screen) {
        Showing.WAITS, Showing.CHANGES -> if (scale == 1.0) 1..4 else 1..8
        Showing.BOOK, Showing.DAY, Showing.BENCH -> if (scale == 1.0) 1..1 else 1..2
        else -> 1..1
    }

    private companion object {
        /** Smaller text than this em can't be read at arm's length, in mm: a guess. */
        const val LEAST_MM = 1.3

        /** Rounding, px. */
        const val TOUCH = 1.5f
    }

    /** The smallest size at which each text of the screen is drawn, px. */
    private fun Bankside.drawn(): Map<String, Float> =
        nodes(SemanticsMatcher.keyIsDefined(Drawn)).flatMap { it.config[Drawn] }
            .groupBy({ it.text }, { it.em }).mapValues { (_, sizes) -> sizes.min() }

    private fun Bankside.look(where: String): List<String> {
        val words = nodes(SemanticsMatcher.keyIsDefined(CutOff)).map { it.config[CutOff] }
        val cut = words.filter { it.isNotEmpty() }.map { "$where: cut off: '$it'" }
        val keys = nodes(SemanticsMatcher.keyIsDefined(SemanticsActions.OnClick)).filter { it.config.getOrNull(SemanticsProperties.TestTag) != null }
        val screen = Rect(0f, 0f, glass.widthPx.toFloat(), glass.heightPx.toFloat()).inflate(1f)
        val outside = keys.filter { !screen.contains(it.boundsInRoot.topLeft) || !screen.contains(it.boundsInRoot.bottomRight) }
            .map { "$where: ${it.name} leaves the screen" }
        val over = keys.flatMapIndexed { i, key -> keys.drop(i + 1).filter { key.overlaps(it) }.map { "$where: ${key.name} overlaps ${it.name}" } }
        assertTrue(keys.isNotEmpty() || words.isEmpty(), "$where: a screen without a key")
        return cut + outside + over + covered(where)
    }

    /** Texts that overlap, leave the screen, or cover a symbol of the picture they belong to. */
    private fun Bankside.covered(where: String): List<String> {
        val screen = Rect(0f, 0f, glass.widthPx.toFloat(), glass.heightPx.toFloat()).inflate(1f)
        val nodes = nodes(SemanticsMatcher.keyIsDefined(Drawn))
        val texts = nodes.flatMap { node -> node.config[Drawn].filter { it.text.isNotBlank() }.map { it to it.place.translate(node.positionInRoot) } }
        val outside = texts.filter { (_, at) -> !screen.contains(at.topLeft) || !screen.contains(at.bottomRight) }
            .map { (text, _) -> "$where: '${text.text}' leaves the screen" }
        val over = texts.flatMapIndexed { i, (text, at) ->
            texts.drop(i + 1).filter { (_, other) -> at.touches(other) }.map { (other, _) -> "$where: '${text.text}' overlaps '${other.text}'" }
        }
        val marks = nodes.flatMap { node ->
            val signs = node.config.getOrNull(Marks).orEmpty()
            node.config[Drawn].filter { text -> signs.any { text.place.touches(it) } }.map { "$where: '${it.text}' covers a sign" }
        }
        return outside + over + marks
    }

    /** Whether they overlap by more than rounding to pixels and the edge of a symbol explain. */
    private fun Rect.touches(other: Rect) = deflate(TOUCH).overlaps(other.deflate(TOUCH))

    private val SemanticsNode.name get() = config[SemanticsProperties.TestTag]

    private fun SemanticsNode.overlaps(other: SemanticsNode) =
        boundsInRoot.deflate(1f).overlaps(other.boundsInRoot) && generateSequence(other) { it.parent }.none { it === this } &&
            generateSequence(this) { it.parent }.none { it === other }
}
