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
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.style.TextAlign
import androidx.compose.ui.unit.Density
import app.restwater.core.Action
import app.restwater.core.Axis
import app.restwater.core.BankLayout
import app.restwater.core.KeyTap
import app.restwater.core.Leaf
import app.restwater.core.LeafKey
import app.restwater.core.LeafLine
import app.restwater.core.LeavesView
import app.restwater.core.PadWords
import app.restwater.core.Rect
import app.restwater.core.Which
import kotlin.math.roundToInt

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
    // A key may remove its own leaf, as closing a session does; then the first leaf is shown.
    val isFirst = leaf === view.leaves.first()
    var part by rememberSaveable(leaf.id) { mutableStateOf(firstPart) }
    Ground()
    val rest = PageHead(leaf.title, notice, layout)
    val opened = LocalOpened.current
    fun tap(key: LeafKey) {
        when (val tap = key.tap) {
            is KeyTap.Leaf -> { opened(); id = tap.id; part = 0 }
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
        LeafPage(leaf, rest, layout, part, { part = it }, { opened(); open = it }, ::tap)
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
        leaf.rows.map { row -> Cell(KeyFace(row.label, row.value, row.spoken), "row-${row.tag}") { onRow(row.tag) } }
    val typing = leaf.typing
    val field = if (typing == null) 0.0 else 11.0 * mm
    val wide = wideKey(layout, mm)
    val blocks = blocks(leaf, layout, rest.width)
    // What can be typed is on the first page only, which leaves the others more room for what there is to read.
    // The most important part always has room at the top: a few lines, a range, or the sentence and one key of the list.
    val few = if (leaf.list.isEmpty()) 3 * layout.text.body * LINE_HEIGHT else 2 * layout.text.body * LINE_HEIGHT + wide
    val all = blocks.sumOf { it.height } + leaf.list.size * wide
    val least = maxOf(few.coerceAtMost(all), leastForRanges(blocks, scale(leaf, layout, mm)))
    val most = rest.height - field - least
    // The keys take the lower part; at large text sizes some of them move to a later page, so that a sentence fits above. Where
    // there is room, each of them has the whole width for its words.
    val row = 18.0 * mm
    val wanted = if (layout.apart) cells.size * row else gridHeight(cells.size, layout)
    val rows = (wanted.coerceAtMost(row * (most / row).toInt().coerceAtLeast(1)) / row).roundToInt()
    val (cutter, widest) = cutter(layout, rest.width) to widestLabel(cells, layout)
    val divided = remember(blocks, cutter, rows, rest, field, wide, widest) {
        // If the text needs more pages than the keys, or has no room for a whole sentence, fewer rows of keys leave it more room on
        // each page.
        val tried = if (rows > 1) (rows downTo 1).toList() else listOf(rows)
        tried.map { high ->
            val keys = high * row
            val place = rest.copy(top = rest.top + rest.height - keys, height = keys)
            val grids = gridPages(cells.size, place, layout, mm, widest)
            fun text(below: (Int) -> Double) =
                parts(blocks, leaf.list, wide, BELOW_WIDE_MM * mm, cutter, scale(leaf, layout, mm)) { rest.height - below(it) }
            if (leaf.keysLast) return@map keysLast(place, grids, ::text)
            // On pages after the last keys, the text has the whole page. What can be typed is on the first page only.
            val below = { part: Int -> if (part >= grids) 0.0 else keys + if (part == 0) field else 0.0 }
            val parts = text(below)
            Divided(parts, place, 0, maxOf(parts.size, grids), below)
        }.minWith(compareBy({ it.broken }, { it.pages }))
    }
    val page = part % divided.pages
    val place = divided.place
    val below = divided.below(page)
    LeafBlocks(divided.parts[page.coerceAtMost(divided.parts.size - 1)], rest.copy(height = rest.height - below), layout, onKey)
    if (below > 0.0) {
        if (typing != null && page == 0) TypedLine(typing, layout, rest.copy(top = place.top - field, height = field))
        KeyGridPage(cells, place, layout, page - divided.firstKeys, widest = widest)
    }
    Pager(page, divided.pages, layout, onTurn = turn)
}

/** A leaf whose keys are where its text ends, on as few pages as that takes. */
private fun keysLast(place: Rect, grids: Int, text: (below: (Int) -> Double) -> List<List<Block>>): Divided {
    var last = 0
    while (true) {
        val first = last
        val below = { part: Int -> if (part < first) 0.0 else place.height }
        val parts = text(below)
        if (parts.size <= last + 1) return Divided(toTheKeys(parts, last + 1), place, last, last + grids.coerceAtLeast(1), below)
        last += 1
    }
}

/** If the text just fills the pages before that of the keys, its last block goes with them. */
private fun toTheKeys(parts: List<List<Block>>, pages: Int): List<List<Block>> = when {
    parts.size == pages -> parts
    parts.last().size > 1 -> parts.dropLast(1) + listOf(parts.last().dropLast(1), parts.last().takeLast(1))
    else -> parts + listOf(emptyList())
}

/**
 * A leaf on its pages: the parts of its texts, the place of its keys, the first page with any, and the height below the text of a page.
 * Sentences and keys turn their pages together; the shorter of the two stays on its last page.
 */
private class Divided(val parts: List<List<Block>>, val place: Rect, val firstKeys: Int, val pages: Int, val below: (page: Int) -> Double) {
    /** Pages that end within a sentence. */
    val broken = parts.sumOf { part -> part.count { it is Block.Words && it.broken } }
}

/** A key that offers something to do on a screen with nothing to show yet. */
internal fun offerCell(key: LeafKey, onOpen: (Which) -> Unit) =
    Cell(face(key), "key-${key.tag}") { (key.tap as? KeyTap.Open)?.let { onOpen(it.which) } }

internal fun face(key: LeafKey) =
    KeyFace(key.label, key.sub.ifBlank { null }, key.spoken, key.solid, key.enabled)

/** Height of a caution at its size. */
@Composable
internal fun cautionHeight(text: String, em: Float, width: Double): Double {
    val mm = LocalPxPerMm.current
    return textMeasurer().height(text, em, width - 4 * mm, LocalDensity.current, FontWeight.Medium) + 4.5 * mm
}

/** A caution in a frame with a bar at its side; it informs but forbids nothing. */
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

/** A line of a leaf: the label on the left, the value on the right, details below, and the range on the leaf's axis. */
@Composable
internal fun LeafFigure(line: LeafLine, i: Int, asked: Float, place: Rect, axis: Axis?) {
    val mm = LocalPxPerMm.current
    val ink = LocalInk.current
    val measurer = textMeasurer()
    val density = LocalDensity.current
    // A figure higher than its part is made smaller as a whole.
    val em = remember(line, asked, place.width, place.height, density) {
        largestThatFits(asked) { measurer.lineHeight(line, it, place.width, density, mm) <= place.height + 1 }
    }
    val small = em * 0.85f
    val shape = remember(line, em, place.width, density) { measurer.shape(line, em, place.width, density) }
    Box(Modifier.at(place).tagged("line-$i").semantics { contentDescription = line.spoken }) {
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
        val span = line.span
        if (span != null && axis != null) LeafRange(span, axis, Rect(0.0, y, width, SPAN_MM * mm.toDouble()))
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

internal fun TextMeasurer.lineHeight(line: LeafLine, em: Float, width: Double, density: Density, mm: Float): Double {
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
