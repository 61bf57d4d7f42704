package app.restwater.ui

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.CornerRadius
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Density
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.KeyTap
import app.restwater.core.Leaf
import app.restwater.core.LeafKey
import app.restwater.core.LeafLine
import app.restwater.core.LeafSpan
import app.restwater.core.LeavesView
import app.restwater.core.PadWords
import app.restwater.core.Rect
import app.restwater.core.Which

/**
 * Screens made of leaves: sentences and figures above, keys below. What does not fit at this text size goes on the next
 * page: nothing scrolls and nothing becomes too small to read. BACK goes from a choice to its leaf, from a leaf to the
 * first one, and from there to the bank.
 */
@Composable
fun LeavesScreen(
    view: LeavesView,
    layout: BankLayout,
    words: PadWords,
    notice: String,
    onAct: (Action) -> Unit,
    first: String? = null,
    firstPart: Int = 0,
    onOpen: (Which) -> Unit = { },
    onShare: (String) -> Unit = { },
    onBack: () -> Unit,
) {
    var open by rememberSaveable { mutableStateOf<String?>(null) }
    var id by rememberSaveable { mutableStateOf(first) }
    val leaf = view.leaves.find { it.id == id } ?: view.leaves.firstOrNull() ?: return
    // A key may remove its own leaf, as closing a session does: then the first leaf is shown.
    val isFirst = leaf === view.leaves.first()
    var part by rememberSaveable(leaf.id) { mutableStateOf(firstPart) }
    Ground()
    val rest = PageHead(leaf.title, notice, layout)
    fun tap(key: LeafKey) {
        when (val tap = key.tap) {
            is KeyTap.Leaf -> { id = tap.id; part = 0 }
            is KeyTap.Open -> onOpen(tap.which)
            is KeyTap.Send -> onAct(tap.action)
            is KeyTap.Share -> onShare(tap.text)
            // No leaf has a key for the satellite receiver.
            KeyTap.AskReceiver -> Unit
        }
    }
    if (open != null && leaf.rows.any { it.tag == open }) {
        Rows(leaf.rows, open, { open = it }, rest, layout, onAct)
    } else {
        LeafPage(leaf, rest, layout, part, { part = it }, { open = it }, ::tap)
    }
    Back(layout, words) {
        when {
            open != null -> open = null
            !isFirst -> id = view.leaves.first().id
            else -> onBack()
        }
    }
}

@Composable
private fun LeafPage(
    leaf: Leaf, rest: Rect, layout: BankLayout, part: Int,
    turn: (Int) -> Unit, onRow: (String) -> Unit, onKey: (LeafKey) -> Unit,
) {
    val mm = LocalPxPerMm.current
    val cells = leaf.keys.map { key -> Cell(face(key), "key-${key.tag}") { onKey(key) } } +
        leaf.rows.map { row -> Cell(KeyFace(row.label, row.value, "${row.label}: ${row.value}"), "row-${row.tag}") { onRow(row.tag) } }
    val typing = leaf.typing
    val field = if (typing == null) 0.0 else 11.0 * mm
    val wide = wideKey(layout, mm)
    // What the screen was opened for stays at the top: a few lines, or the sentence and a key of the list.
    val least = if (leaf.list.isEmpty()) 3 * layout.text.body * LINE_HEIGHT else 2 * layout.text.body * LINE_HEIGHT + wide
    val most = rest.height - field - least
    // The keys keep the lower part; at large text sizes some of them move to a later page so that a sentence stays
    // above.
    val keys = gridHeight(cells.size, layout).coerceAtMost(18.0 * mm * (most / (18.0 * mm)).toInt().coerceAtLeast(1))
    val room = rest.copy(height = rest.height - keys - field)
    val parts = parts(blocks(leaf, layout, room.width), leaf.list, room.height, wide)
    val place = rest.copy(top = rest.top + rest.height - keys, height = keys)
    // Sentences and keys turn their pages together; the shorter of the two stays on its last page.
    val pages = maxOf(parts.size, gridPages(cells.size, place, layout))
    val page = part % pages
    LeafBlocks(parts[page.coerceAtMost(parts.size - 1)], room, layout, onKey)
    if (typing != null) TypedLine(leaf.id, typing, layout, rest.copy(top = place.top - field, height = field))
    KeyGridPage(cells, place, layout, page)
    Pager(page, pages, layout, onTurn = turn)
}

/** A key that offers something to do on a screen with nothing to show yet. */
internal fun offerCell(key: LeafKey, onOpen: (Which) -> Unit) =
    Cell(face(key), "key-${key.tag}") { (key.tap as? KeyTap.Open)?.let { onOpen(it.which) } }

internal fun face(key: LeafKey) =
    KeyFace(key.label, key.sub.ifBlank { null }, if (key.sub.isBlank()) key.label else "${key.label}: ${key.sub}", key.solid, key.enabled)

/** One piece of a leaf, with the height it takes. */
private sealed interface Block {
    val height: Double

    class Words(val text: String, val em: Float, val weight: FontWeight, val tag: String, override val height: Double) : Block
    class Boxed(val text: String, val em: Float, override val height: Double) : Block
    class Figure(val line: LeafLine, val i: Int, val em: Float, override val height: Double) : Block
    class Wide(val key: LeafKey, override val height: Double) : Block
}

@Composable
private fun blocks(leaf: Leaf, layout: BankLayout, width: Double): List<Block> {
    val mm = LocalPxPerMm.current
    val measurer = textMeasurer()
    val density = LocalDensity.current
    val body = layout.text.body.toFloat()
    return remember(leaf, body, width, density) {
        val small = body * 0.85f
        listing {
            if (leaf.says.isNotBlank()) {
                add(Block.Words(leaf.says, body, FontWeight.Bold, "says", measurer.height(leaf.says, body, width, density, FontWeight.Bold) + 1.5 * mm))
            }
            if (leaf.caution.isNotBlank()) {
                add(Block.Boxed(leaf.caution, small, measurer.height(leaf.caution, small, width - 4 * mm, density, FontWeight.Medium) + 4.5 * mm))
            }
            leaf.lines.forEachIndexed { i, line -> add(Block.Figure(line, i, body, measurer.lineHeight(line, body, width, density, mm))) }
            leaf.notes.forEachIndexed { i, note ->
                add(Block.Words(note, small, FontWeight.Medium, "note-$i", measurer.height(note, small, width, density, FontWeight.Medium) + 1.0 * mm))
            }
        }
    }
}

/** Height of a key as wide as the screen, with the gap below it: such a key is not used while fishing. */
private fun wideKey(layout: BankLayout, mm: Float): Double =
    ((layout.text.secondary + layout.text.sub) * 1.3 + 2.0 * mm).coerceAtLeast(11.0 * mm) + 2.5 * mm

/** Fills the parts from the top: text first, then the wide keys, each part as full as possible. */
private fun parts(blocks: List<Block>, list: List<LeafKey>, room: Double, key: Double): List<List<Block>> {
    // A caution is on the first part, before the sentence if both don't fit.
    val said = blocks.takeWhile { it is Block.Words || it is Block.Boxed }
    val boxed = said.filterIsInstance<Block.Boxed>()
    if (boxed.isNotEmpty() && said.first() !is Block.Boxed && said.sumOf { it.height } > room) {
        return parts(boxed + (blocks - boxed.toSet()), list, room, key)
    }
    // Sentences after the lines come after the list, since a list screen is opened for its list.
    val (before, after) = if (list.isEmpty()) blocks to emptyList() else blocks.partition { it !is Block.Words || it.tag == "says" }
    val all = before + list.map { Block.Wide(it, key) } + after
    val parts = mutableListOf(mutableListOf<Block>())
    var left = room
    for (block in all) {
        if (block.height > left && parts.last().isNotEmpty()) {
            // A heading stays with what it introduces.
            val last = parts.last().lastOrNull()?.takeIf { it is Block.Figure && it.line.heads && parts.last().size > 1 }
            if (last != null) parts.last().removeAt(parts.last().lastIndex)
            parts += listOfNotNull(last).toMutableList()
            left = room - (last?.height ?: 0.0)
        }
        parts.last() += block
        left -= block.height
    }
    return parts
}

@Composable
private fun LeafBlocks(blocks: List<Block>, place: Rect, layout: BankLayout, onKey: (LeafKey) -> Unit) {
    val mm = LocalPxPerMm.current
    val ink = LocalInk.current
    var top = place.top
    blocks.forEach { block ->
        // A block higher than its part is made smaller as a whole, as happens at 200 % on the smallest screen.
        val height = block.height.coerceAtMost(place.top + place.height - top)
        val at = place.copy(top = top, height = height)
        top += height
        when (block) {
            is Block.Words -> Box(Modifier.at(at).tagged(block.tag).semantics { contentDescription = block.text }) {
                FitText(block.text, block.em, if (block.weight == FontWeight.Bold) ink.ink else ink.soft, Modifier.fillMaxSize(), block.weight, middle = false)
            }
            is Block.Boxed -> Caution(block.text, block.em, at.copy(height = height - 1.5 * mm))
            is Block.Figure -> LeafFigure(block.line, block.i, block.em, at)
            is Block.Wide -> {
                val key = block.key
                val size = layout.text.secondary.toFloat()
                PadKey(face(key), "key-${key.tag}", size, layout.text.sub.toFloat(), Modifier.at(at.copy(height = height - 2.5 * mm))) { onKey(key) }
            }
        }
    }
}

/** Height of a caution at its size. */
@Composable
internal fun cautionHeight(text: String, em: Float, width: Double): Double {
    val mm = LocalPxPerMm.current
    return textMeasurer().height(text, em, width - 4 * mm, LocalDensity.current, FontWeight.Medium) + 4.5 * mm
}

/** A caution in a frame with a bar at its side: it informs, and forbids nothing. */
@Composable
internal fun Caution(text: String, em: Float, place: Rect) {
    val mm = LocalPxPerMm.current
    val ink = LocalInk.current
    Box(Modifier.at(place).tagged("caution").semantics { contentDescription = text }) {
        Canvas(Modifier.fillMaxSize()) {
            drawRect(ink.ink, Offset.Zero, Size(1.2f * mm, size.height))
            drawRect(ink.ink, style = Stroke(0.3f * mm))
        }
        FitText(text, em, ink.ink, Modifier.at(Rect(2.5 * mm, 1.0 * mm, place.width - 4.0 * mm, place.height - 2.0 * mm)), middle = false)
    }
}

/** The label on the left, the value on the right, details below; the range as a line on its scale. */
@Composable
private fun LeafFigure(line: LeafLine, i: Int, asked: Float, place: Rect) {
    val mm = LocalPxPerMm.current
    val ink = LocalInk.current
    val spoken = listOf(line.label, line.value, line.detail).filter { it.isNotBlank() }.joinToString(", ")
    val measurer = textMeasurer()
    val density = LocalDensity.current
    // A figure higher than its part is made smaller as a whole.
    val em = remember(line, asked, place.width, place.height, density) {
        largestThatFits(asked) { measurer.lineHeight(line, it, place.width, density, mm) <= place.height + 1 }
    }
    val small = em * 0.85f
    val shape = remember(line, em, place.width, density) { measurer.shape(line, em, place.width, density) }
    Box(Modifier.at(place).tagged("line-$i").semantics { contentDescription = spoken }) {
        Canvas(Modifier.fillMaxSize()) {
            drawLine(ink.soft, Offset(0f, 0f), Offset(size.width, 0f), 0.12f * mm)
        }
        val width = place.width
        var y = LINE_GAP_MM * mm / 2
        if (shape.beside) {
            val labelWidth = width - shape.valueWidth - em * BESIDE
            val weight = if (line.heads) FontWeight.Bold else FontWeight.Medium
            FitText(line.label, em, ink.ink, Modifier.at(Rect(0.0, y, labelWidth, shape.label)), weight, middle = false)
            FitText(line.value, em, ink.ink, Modifier.at(Rect(width - shape.valueWidth, y, shape.valueWidth, shape.label)), FontWeight.Bold, TextAlign.End, middle = false)
            y += shape.label
        } else {
            FitText(line.label, em, ink.ink, Modifier.at(Rect(0.0, y, width, shape.label)), middle = false)
            y += shape.label
            FitText(line.value, em, ink.ink, Modifier.at(Rect(0.0, y, width, shape.value)), FontWeight.Bold, middle = false)
            y += shape.value
        }
        if (line.detail.isNotBlank()) {
            FitText(line.detail, small, ink.soft, Modifier.at(Rect(0.0, y, width, shape.detail)), middle = false)
            y += shape.detail
        }
        line.span?.let { span ->
            Canvas(Modifier.at(Rect(0.0, y, width, SPAN_MM * mm.toDouble()))) { spanLine(span, ink, mm) }
        }
    }
}

/** The range with its ends and its middle, on a scale from 0 at the left edge to its end at the right. */
private fun DrawScope.spanLine(span: LeafSpan, ink: Ink, mm: Float) {
    val y = size.height / 2
    val (left, right) = 0.3f * mm to size.width - 2.2f * mm
    fun x(at: Double) = left + (right - left) * (at / span.scale).coerceIn(0.0, 1.0).toFloat()
    drawLine(ink.soft, Offset(left, y - 1.4f * mm), Offset(left, y + 1.4f * mm), 0.3f * mm)
    drawLine(ink.ink, Offset(x(span.low), y), Offset(x(span.high), y), 0.5f * mm)
    drawLine(ink.ink, Offset(x(span.low), y - mm), Offset(x(span.low), y + mm), 0.5f * mm)
    val high = x(span.high)
    if (span.beyond) {
        drawLine(ink.ink, Offset(high, y), Offset(high + 1.6f * mm, y), 0.5f * mm)
        drawLine(ink.ink, Offset(high + 1.6f * mm, y), Offset(high + 0.4f * mm, y - mm), 0.5f * mm)
        drawLine(ink.ink, Offset(high + 1.6f * mm, y), Offset(high + 0.4f * mm, y + mm), 0.5f * mm)
    } else {
        drawLine(ink.ink, Offset(high, y - mm), Offset(high, y + mm), 0.5f * mm)
    }
    span.at?.let { at ->
        val side = 1.9f * mm
        drawRoundRect(ink.ink, Offset(x(at) - side / 2, y - side / 2), Size(side, side), CornerRadius(0.3f * mm))
    }
}

/** Heights of the pieces of a line. */
private class LineShape(val beside: Boolean, val label: Double, val value: Double, val valueWidth: Double, val detail: Double)

private fun TextMeasurer.shape(line: LeafLine, em: Float, width: Double, density: Density): LineShape {
    val valueWidth = if (line.value.isBlank()) 0.0 else (width(line.value, em, density, FontWeight.Bold) * 1.03 + 2).coerceAtMost(width)
    val labelWidth = width(line.label, em, density, FontWeight.Medium)
    // Side by side if that takes one line, or if the value is short and the label can wrap beside it.
    val beside = line.value.isBlank() || valueWidth < width * 0.42 || labelWidth + valueWidth < width * 0.94
    val label = height(line.label, em, if (beside) width - valueWidth - em * BESIDE else width, density, FontWeight.Medium)
    val value = if (beside) 0.0 else height(line.value, em, width, density, FontWeight.Bold)
    val detail = if (line.detail.isBlank()) 0.0 else height(line.detail, em * 0.85f, width, density, FontWeight.Medium)
    return LineShape(beside, label, value, valueWidth, detail)
}

private fun TextMeasurer.lineHeight(line: LeafLine, em: Float, width: Double, density: Density, mm: Float): Double {
    val shape = shape(line, em, width, density)
    return shape.label + shape.value + shape.detail + (if (line.span == null) 0.0 else SPAN_MM * mm.toDouble()) + LINE_GAP_MM * mm
}

/** Between a label and the value beside it, in ems. */
private const val BESIDE = 0.8

/** Between two lines, mm. */
private const val LINE_GAP_MM = 1.6

/** Height of a range, mm. */
private const val SPAN_MM = 4.0

/** Height of a line of text relative to its em. */
private const val LINE_HEIGHT = 1.2
