package app.restwater.ui

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.unit.Density
import app.restwater.core.Axis
import app.restwater.core.BankLayout
import app.restwater.core.Leaf
import app.restwater.core.LeafKey
import app.restwater.core.LeafLine
import app.restwater.core.NetView
import app.restwater.core.Rect
import app.restwater.core.clausesOf
import app.restwater.core.sentencesOf

/** One piece of a leaf, with the height it takes. */
internal sealed interface Block {
    val height: Double

    /** What of that keeps it from the next block: the last one of a page doesn't need it. */
    val gap: Double get() = 0.0

    /** The room it needs where nothing follows. */
    val least: Double get() = height - gap

    /** [broken] if its page ends within a sentence. */
    class Words(
        val text: String, val em: Float, val weight: FontWeight, val tag: String, override val height: Double, override val gap: Double, val broken: Boolean = false,
    ) : Block
    class Boxed(val text: String, val em: Float, override val height: Double, override val gap: Double) : Block
    class Figure(val line: LeafLine, val i: Int, val em: Float, override val height: Double, val axis: Axis?) : Block

    /** What the ranges below it are drawn on, with its label in [label]; [low] is the same with a label of the size of 100 %. */
    class Scale(val axis: Axis, val em: Float, val label: Float, override val height: Double, val low: Scale?) : Block
    class Wide(val key: LeafKey, override val height: Double, override val gap: Double) : Block

    /** A keepnet of the Match screen. */
    class Net(val net: NetView, val i: Int, val em: Float, override val height: Double) : Block
}

@Composable
internal fun blocks(leaf: Leaf, layout: BankLayout, width: Double): List<Block> {
    val mm = LocalPxPerMm.current
    val measurer = textMeasurer()
    val density = LocalDensity.current
    val body = layout.text.body.toFloat()
    return remember(leaf, body, width, density) {
        val small = body * SMALL
        listing {
            if (leaf.says.isNotBlank()) {
                add(Block.Words(leaf.says, body, FontWeight.Bold, SAYS, measurer.height(leaf.says, body, width, density, FontWeight.Bold) + BELOW_SAYS_MM * mm, gap(SAYS, mm)))
            }
            if (leaf.caution.isNotBlank()) {
                add(Block.Boxed(leaf.caution, small, measurer.height(leaf.caution, small, width - 4 * mm, density, FontWeight.Medium) + 4.5 * mm, BELOW_BOX_MM * mm))
            }
            leaf.lines.forEachIndexed { i, line -> add(Block.Figure(line, i, body, measurer.lineHeight(line, body, width, density, mm), leaf.axis)) }
            leaf.notes.forEachIndexed { i, note ->
                add(Block.Words(note, small, FontWeight.Medium, "note-$i", measurer.height(note, small, width, density, FontWeight.Medium) + BELOW_NOTE_MM * mm, gap("note-$i", mm)))
            }
        }
    }
}

/** The scale of a leaf with ranges, which each page that has one begins them with. */
internal fun scale(leaf: Leaf, layout: BankLayout, mm: Float): Block.Scale? =
    leaf.axis?.let { axis ->
        val em = layout.text.body.toFloat() * SMALL
        val label = em * layout.usualShare(mm).toFloat()
        Block.Scale(axis, em, em, scaleHeight(em, em, mm), Block.Scale(axis, em, label, scaleHeight(em, label, mm), null))
    }

/** The room that each range needs, with its scale above it; 0 without one. */
internal fun leastForRanges(blocks: List<Block>, scale: Block.Scale?): Double {
    val ranges = blocks.filter { (it as? Block.Figure)?.line?.span != null }
    return (ranges.maxOfOrNull { it.height } ?: return 0.0) + (scale?.low?.height ?: 0.0)
}

/** Height of a key as wide as the screen, with the gap below it: such a key is not used while fishing. */
internal fun wideKey(layout: BankLayout, mm: Float): Double =
    ((layout.text.secondary + layout.text.sub) * 1.3 + 2.0 * mm).coerceAtLeast(11.0 * mm) + BELOW_WIDE_MM * mm

/**
 * Fills the parts from the top: text first, then the wide keys, each part as full as its [room] allows; a [cutter] fills it to its
 * last line. In each part [scale] comes before the first range.
 */
internal fun parts(
    blocks: List<Block>, list: List<LeafKey>, key: Double, gap: Double, cutter: Cutter?, scale: Block.Scale? = null, room: (part: Int) -> Double,
): List<List<Block>> {
    // A caution is on the first part, before the sentence if both don't fit.
    val said = blocks.takeWhile { it is Block.Words || it is Block.Boxed }
    val boxed = said.filterIsInstance<Block.Boxed>()
    if (boxed.isNotEmpty() && said.first() !is Block.Boxed && said.sumOf { it.height } - said.last().gap > room(0)) {
        return parts(boxed + (blocks - boxed.toSet()), list, key, gap, cutter, scale, room)
    }
    // Sentences after the lines come after the list, since a list screen is opened for its list.
    val (before, after) = if (list.isEmpty()) blocks to emptyList() else blocks.partition { it !is Block.Words || it.tag == SAYS }
    val all = before + list.map { Block.Wide(it, key, gap) } + after
    val parts = mutableListOf(mutableListOf<Block>())
    var left = room(0)
    val queue = ArrayDeque(all)
    while (queue.isNotEmpty()) {
        var block = queue.removeFirst()
        // Where there is little room the scale has a smaller label: so the line below stays on this page, at its size.
        fun above() = scale?.takeIf { (block as? Block.Figure)?.line?.span != null && parts.last().none { it is Block.Scale } }
            ?.let { high -> high.low?.takeIf { high.height + block.least > left } ?: high }
        fun free() = left - (above()?.height ?: 0.0)
        val two = if (block.least > free()) cutter?.cut(block, free(), alone = parts.last().isEmpty()) else null
        if (two != null) {
            block = two.first
            queue.addFirst(two.second)
        } else if (block.least > free() && parts.last().isNotEmpty()) {
            // A heading stays with what it introduces.
            val last = parts.last().lastOrNull()?.takeIf { it is Block.Figure && it.line.heads && parts.last().size > 1 }
            if (last != null) parts.last().removeAt(parts.last().lastIndex)
            parts += listOfNotNull(last).toMutableList()
            left = room(parts.lastIndex) - (last?.height ?: 0.0)
            // What is higher than a page is divided as well.
            cutter?.takeIf { block.least > free() }?.cut(block, free(), alone = true)?.let {
                block = it.first
                queue.addFirst(it.second)
            }
        }
        above()?.let {
            parts.last() += it
            left -= it.height
        }
        parts.last() += block
        left -= block.height
    }
    return parts
}

@Composable
internal fun LeafBlocks(blocks: List<Block>, place: Rect, layout: BankLayout, onKey: (LeafKey) -> Unit = { }) {
    val mm = LocalPxPerMm.current
    val ink = LocalInk.current
    var top = place.top
    blocks.forEach { block ->
        // A block higher than its part is made smaller as a whole, as happens at 200 % on the smallest screen.
        val high = if (block is Block.Words) block.height else block.least
        val at = place.copy(top = top, height = high.coerceAtMost(place.top + place.height - top))
        top += block.height
        when (block) {
            is Block.Words -> Box(Modifier.at(at).tagged(block.tag).semantics { contentDescription = block.text }) {
                FitText(block.text, block.em, if (block.weight == FontWeight.Bold) ink.ink else ink.soft, Modifier.fillMaxSize(), block.weight, middle = false)
            }
            is Block.Boxed -> Caution(block.text, block.em, at)
            is Block.Figure -> LeafFigure(block.line, block.i, block.em, at, block.axis)
            is Block.Scale -> LeafScale(block.axis, block.em, block.label, at)
            is Block.Net -> NetBar(block.net, "match-net-${block.i}", at, block.em)
            is Block.Wide -> {
                val key = block.key
                val size = layout.text.secondary.toFloat()
                PadKey(face(key), "key-${key.tag}", size, layout.text.sub.toFloat(), Modifier.at(at)) { onKey(key) }
            }
        }
    }
}

/** Cuts a text between two sentences, so that a page is full. */
internal class Cutter(private val measurer: TextMeasurer, private val density: Density, private val width: Double, private val mm: Float) {
    /**
     * [alone] if nothing is above it on the page: then a sentence that is higher than the page is cut between two clauses, and a
     * figure above its details. Otherwise a figure has at least the first sentence of its details below it, or the first clause if it
     * is nothing but a label for them; if there is no room for that it goes to the next page with all of them.
     */
    fun cut(block: Block, room: Double, alone: Boolean): Pair<Block, Block>? = when (block) {
        is Block.Words -> between(sentencesOf(block.text), block, room)
            ?: if (alone) between(clausesOf(block.text), block, room, broken = true) ?: byLine(block, room) else null
        is Block.Figure -> withDetails(sentencesOf(block.line.detail), block, room)
            ?: (if (block.line.value.isBlank()) withDetails(clausesOf(block.line.detail), block, room) else null)
            ?: if (alone) figure(block, room) else null
        is Block.Boxed, is Block.Wide, is Block.Scale, is Block.Net -> null
    }

    /** As many of these parts as there is room for, and the others. */
    private fun between(all: List<String>, block: Block.Words, room: Double, broken: Boolean = false): Pair<Block, Block>? {
        val fit = (all.size - 1 downTo 1).firstOrNull { words(all.take(it).joinToString(" "), block).least <= room } ?: return null
        return words(all.take(fit).joinToString(" "), block, broken) to words(all.drop(fit).joinToString(" "), block)
    }

    private fun byLine(block: Block.Words, room: Double): Pair<Block, Block>? =
        measurer.split(block.text, block.em, width, density, block.weight, room - BELOW_LAST_MM * mm)
            ?.let { (first, rest) -> words(first, block, broken = true) to words(rest, block) }

    private fun words(text: String, of: Block.Words, broken: Boolean = false) =
        Block.Words(text, of.em, of.weight, of.tag, measurer.height(text, of.em, width, density, of.weight) + below(of.tag) * mm, gap(of.tag, mm), broken)

    /** The figure with as many of these parts of its details as there is room for, and the others. */
    private fun withDetails(all: List<String>, block: Block.Figure, room: Double): Pair<Block, Block>? =
        (all.size - 1 downTo 1).firstNotNullOfOrNull { fit ->
            // A screen reader hears all of them with the figure.
            val line = block.line.copy(detail = all.take(fit).joinToString(" "))
            val high = measurer.lineHeight(line, block.em, width, density, mm)
            if (high > room) null else Block.Figure(line, block.i, block.em, high, block.axis) to details(block, all.drop(fit).joinToString(" "))
        }

    private fun details(of: Block.Figure, text: String) =
        words(text, Block.Words("", of.em * SMALL, FontWeight.Medium, "line-${of.i}-more", 0.0, 0.0))

    private fun figure(block: Block.Figure, room: Double): Pair<Block, Block>? {
        val line = block.line
        if (line.detail.isBlank()) return null
        val alone = line.copy(detail = "", spoken = line.figureSpoken)
        val high = measurer.lineHeight(alone, block.em, width, density, mm)
        if (high > room) return null
        return Block.Figure(alone, block.i, block.em, high, block.axis) to details(block, line.detail)
    }
}

/** For text so large that its pages are filled to the last line; none for other text. */
@Composable
internal fun cutter(layout: BankLayout, width: Double): Cutter? {
    val (measurer, density, mm) = Triple(textMeasurer(), LocalDensity.current, LocalPxPerMm.current)
    return remember(layout.apart, measurer, density, width, mm) { if (layout.apart) Cutter(measurer, density, width, mm) else null }
}

/** Sentences at their own size, on as many pages as they need. */
@Composable
internal fun spread(says: String, notes: List<String>, place: Rect, layout: BankLayout, lines: List<LeafLine> = emptyList()): List<List<Block>> {
    val leaf = remember(says, notes, lines) { Leaf("", "", says, "", lines, null, notes, emptyList(), null, emptyList(), emptyList(), false) }
    return parts(blocks(leaf, layout, place.width), emptyList(), 0.0, 0.0, cutter(layout, place.width)) { place.height }
}

private const val SAYS = "says"

/** Size of small text relative to plain text. */
private const val SMALL = 0.85f

/** Below a sentence and below a note, mm. */
private const val BELOW_SAYS_MM = 1.5
private const val BELOW_NOTE_MM = 1.0

/** Below the last sentence of a page, mm: text measured to the pixel must not become smaller for one. */
private const val BELOW_LAST_MM = 0.3

/** Below a caution and below a key as wide as the screen, mm. */
private const val BELOW_BOX_MM = 1.5
internal const val BELOW_WIDE_MM = 2.5

private fun below(tag: String) = if (tag == SAYS) BELOW_SAYS_MM else BELOW_NOTE_MM

/** What of that the last sentence of a page doesn't need. */
private fun gap(tag: String, mm: Float) = (below(tag) - BELOW_LAST_MM) * mm
