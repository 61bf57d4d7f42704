package app.restwater.ui

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.ui.unit.Density
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.foundation.layout.Spacer
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.drawText
import androidx.compose.ui.text.font.FontWeight
import app.restwater.core.Action
import app.restwater.core.AlternationView
import app.restwater.core.BankLayout
import app.restwater.core.ChangeView
import app.restwater.core.ChangesView
import app.restwater.core.PadWords
import app.restwater.core.Rect
import androidx.compose.ui.geometry.Rect as InkRect
import app.restwater.core.StepState
import app.restwater.core.VerdictTone
import app.restwater.core.Which

/** "Did it matter?": a running test first, then a forest plot of the changes and a page for each. */
@Composable
fun ChangesScreen(
    changes: ChangesView,
    layout: BankLayout,
    words: PadWords,
    notice: String,
    onAct: (Action) -> Unit,
    first: Int = 0,
    onOpen: (Which) -> Unit = { },
    onBack: () -> Unit,
) {
    var turned by rememberSaveable { mutableStateOf(first) }
    val offered = listOfNotNull(changes.offer).map { offerCell(it, onOpen) }
    val pages = listing {
        changes.test?.let { test ->
            val cells = cells(test, null) { action ->
                // A test that begins or ends is shown first.
                if (action != test.set) turned = 0
                onAct(action)
            }
            addAll(apart(test.title, cells + offered, test.says, test.notes, layout) { px, slot -> Steps(test, px, slot) })
        }
        for (plot in changes.changes.chunked(if (layout.apart) LARGE_PLOT_ROWS else PLOT_ROWS)) {
            val says = if (plot.first() === changes.changes.first() || !layout.apart) changes.says else ""
            val warning = listOf(changes.warning).filter { says.isNotEmpty() }
            addAll(apart(changes.title, offered, says, warning, layout, FOREST_SHARE) { px, at -> Forest(changes, plot, px, at, layout.apart) })
        }
        for (change in changes.changes) {
            val cells = cells(null, change) { action ->
                turned = 0
                onAct(action)
            }
            addAll(changePages(change, cells + offered, layout))
        }
        // The figures behind the verdicts come last.
        changes.figures?.let { addAll(figurePages(it, offered, null, layout)) }
    }
    val page = if (pages.isEmpty()) 0 else turned % pages.size
    val shown = pages.getOrNull(page)
    Ground()
    val rest = PageHead(shown?.title ?: changes.title, notice, layout)
    val cells = shown?.cells ?: offered
    val keys = gridHeight(cells.size, layout)
    val place = rest.copy(height = rest.height - keys)
    if (shown != null) shown.draw(place) else SpokenText(changes.says, layout.text.body.toFloat(), LocalInk.current.ink, Modifier.at(place))
    KeyGridPage(cells, rest.copy(top = rest.top + rest.height - keys, height = keys), layout, page)
    Pager(page, pages.size, layout) { turned = it }
    Back(layout, words, onBack = onBack)
}

/** The running test, the pages of the plot, a page for each change, and the figures. */
fun pagesOf(changes: ChangesView): Int {
    val tests = if (changes.test == null) 0 else 1
    val figures = if (changes.figures == null) 0 else 1
    return (tests + (changes.changes.size + PLOT_ROWS - 1) / PLOT_ROWS + changes.changes.size + figures).coerceAtLeast(1)
}

private fun cells(test: AlternationView?, change: ChangeView?, onAct: (Action) -> Unit): List<Cell> = listing {
    change?.start?.let { start ->
        add(Cell(KeyFace(start.label, start.sub, start.spoken), "start-test") { onAct(start.action) })
    }
    if (test != null) {
        test.setSub?.let { sub -> add(Cell(KeyFace(test.setLabel, sub, test.setSpoken, solid = true), "set-step") { onAct(test.set) }) }
        add(Cell(KeyFace(test.endLabel, test.endSub, test.endSpoken), "end-test") { onAct(test.end) })
    }
}

/** What is shown below the verdict: what it rests on, why no more can be said, and how to find out. */
private fun reasons(change: ChangeView) = (listOf(change.counts, change.probability) + change.reasons + change.findOut + change.more).filter { it.isNotBlank() }

/** One change on one page, or at its own size on as many as large text needs. */
@Composable
private fun changePages(change: ChangeView, cells: List<Cell>, layout: BankLayout): List<ScreenPage> {
    if (!layout.apart) return listOf(ScreenPage(change.title, cells) { ChangePage(change, it, layout) })
    val rest = layout.page.rest
    val place = rest.copy(height = rest.height - gridHeight(cells.size, layout))
    return spread(change.says, reasons(change), place, layout).map { part -> ScreenPage(change.title, cells) { LeafBlocks(part, it, layout) } }
}

/** One change: the verdict, and what is shown below it. */
@Composable
private fun ChangePage(change: ChangeView, place: Rect, layout: BankLayout) {
    val text = reasons(change).joinToString("\n")
    val gap = 1.5 * LocalPxPerMm.current
    val heights = heights()
    fun verdict(em: Float) = heights.of(change.says, em * HEAD, place.width, FontWeight.Bold)
    fun reasons(em: Float) = heights.of(text, em, place.width)
    // Verdict and reasons keep their proportion, however large the text.
    val usual = layout.text.body.toFloat()
    val body = remember(change, usual, place, gap, heights) { largestThatFits(usual) { em -> verdict(em) + gap + reasons(em) <= place.height } }
    val says = verdict(body).coerceAtMost(place.height * 0.4)
    Box(Modifier.at(place.copy(height = says)).tagged("verdict").semantics { contentDescription = change.says }) {
        FitText(change.says, body * HEAD, LocalInk.current.ink, Modifier.fillMaxSize(), FontWeight.Bold, middle = false)
    }
    val top = says + gap
    Box(Modifier.at(place.copy(top = place.top + top, height = place.height - top)).tagged("reasons").semantics { contentDescription = text }) {
        FitText(text, body, LocalInk.current.ink, Modifier.fillMaxSize(), middle = false)
    }
}

/** Size of a verdict relative to plain text. */
private const val HEAD = 1.25f

/** The casts of a test: a tick for those done, an arrow for the next. */
@Composable
private fun Steps(test: AlternationView, px: Float, slot: Rect) {
    val ink = LocalInk.current
    val mm = LocalPxPerMm.current
    val columns = if (test.steps.size > 12) 2 else 1
    val down = (test.steps.size + columns - 1) / columns
    val (w, h) = slot.width / columns to slot.height / down
    test.steps.forEachIndexed { i, step ->
        val at = Rect(slot.left + (i / down) * w, slot.top + (i % down) * h, w, h)
        val bold = step.state == StepState.NEXT || step.state == StepState.OUT
        Canvas(Modifier.at(at.copy(width = 6.0 * mm))) { stepMark(step.state, ink, mm) }
        val words = Modifier.at(at.copy(left = at.left + 6.5 * mm, width = at.width - 7.0 * mm))
        Box(words.tagged("step-${i + 1}").semantics { contentDescription = step.spoken }) {
            FitText(step.label, px * 1.15f, ink.ink, Modifier.fillMaxSize(), if (bold) FontWeight.Bold else FontWeight.Medium)
        }
    }
}

private fun DrawScope.stepMark(state: StepState, ink: Ink, mm: Float) {
    val (x, y, r) = Triple(2.6f * mm, size.height / 2, (size.height * 0.3f).coerceAtMost(1.3f * mm))
    when (state) {
        StepState.DONE -> {
            drawLine(ink.ink, Offset(x - r, y), Offset(x - r * 0.3f, y + r * 0.8f), 0.5f * mm)
            drawLine(ink.ink, Offset(x - r * 0.3f, y + r * 0.8f), Offset(x + r, y - r), 0.5f * mm)
        }
        StepState.OUT -> drawCircle(ink.ink, r, Offset(x, y))
        StepState.NEXT -> {
            val path = Path().apply { moveTo(x - r, y - r); lineTo(x + r, y); lineTo(x - r, y + r); close() }
            drawPath(path, ink.accent)
        }
        StepState.LATER -> drawCircle(ink.soft, r, Offset(x, y), style = Stroke(0.3f * mm))
    }
}

/**
 * Draws each change as a line between its 95 % limits with a ring at its ratio. The filling of the ring shows the
 * verdict, which is also given in words.
 */
@Composable
private fun Forest(changes: ChangesView, rows: List<ChangeView>, figurePx: Float, place: Rect, large: Boolean) {
    val ink = LocalInk.current
    val mm = LocalPxPerMm.current
    val measurer = textMeasurer()
    val density = LocalDensity.current
    val spoken = rows.joinToString(" ") { it.spoken }
    Spacer(
        Modifier.at(place).tagged("forest").semantics { contentDescription = spoken }
            .picture(listOf(changes, rows, figurePx, ink, mm, density, large)) { size -> forestDrawing(changes, rows, figurePx, size, ink, mm, measurer, density, large) },
    )
}

/** The plot at the largest text size up to [figurePx] at which every title fits above its line. */
private fun forestDrawing(
    changes: ChangesView, rows: List<ChangeView>, figurePx: Float, size: Size, ink: Ink, mm: Float, measurer: TextMeasurer, density: Density, large: Boolean,
): ForestDrawing {
    var px = figurePx
    while (true) {
        val drawing = ForestDrawing(changes, rows, size, ink, mm, large, Lettering(measurer, density, ink, px, size.width)) { text, weight, most ->
            measurer.fit(text, px, size.width.toInt(), (px * 1.25f * most).toInt(), density, weight, mostLines = most)
        }
        if (drawing.roomy || px <= figurePx * SMALLEST) return drawing
        px *= SMALLER
    }
}

private class ForestDrawing(
    changes: ChangesView, private val rows: List<ChangeView>, size: Size, private val ink: Ink, private val mm: Float, large: Boolean,
    letters: Lettering, fit: (text: String, weight: FontWeight, most: Int) -> Fitted,
) : Picture {
    private val px = letters.px
    private val bottom = size.height - px * 2.7f - 1.2f * mm
    private val each = (bottom / rows.size.coerceAtLeast(1)).coerceAtMost(px * if (large) LARGE_ROW else 7f)
    private val titles = rows.map { row ->
        val most = (if (large) (each / px / 1.3f).toInt() - 2 else if (each > 4.6f * px) 2 else 1).coerceAtLeast(1)
        listOf(fit(row.title, FontWeight.Medium, most), fit(row.verdict, FontWeight.Bold, most))
    }
    private val axis = changes.axis
    private val left = 3f * mm
    private val wide = size.width
    private val right = wide - 3f * mm

    /** Whether no title had to be made smaller, and none leaves its line too little room for the symbols on it. */
    val roomy = titles.all { row -> row.all { it.whole && it.em == px } && each - row.sumOf { it.lines.size.height } >= 3f * mm }

    override val cut get() = titles.flatten().filter { !it.whole }.joinToString(" ") { it.lines.layoutInput.text.text }

    private fun x(at: Double) = left + (right - left) * ((at - axis.from) / (axis.to - axis.from)).toFloat()

    /** Height of the line of a change. */
    private fun y(i: Int): Float {
        val top = i * each + titles[i].sumOf { it.lines.size.height }
        return ((top + (i + 1) * each) / 2).coerceAtMost((i + 1) * each - 1.6f * mm)
    }

    private val figures = listing {
        val taken = mutableListOf<ClosedFloatingPointRange<Float>>()
        // "Same" is what the others are read by: it has its place first.
        for (tick in axis.ticks.sortedByDescending { it.at == 0.0 }) {
            val figure = letters.of(tick.label, if (tick.at == 0.0) FontWeight.Bold else FontWeight.Medium)
            val from = (x(tick.at) - figure.width / 2f).coerceIn(0f, wide - figure.width)
            val to = from + figure.width
            if (taken.any { from < it.endInclusive + mm && to > it.start - mm }) continue
            add(figure.at(from, bottom + 0.6f * mm))
            taken += from..to
        }
        add(letters.of(axis.label).at(0f, bottom + 0.8f * mm + px * 1.3f))
    }

    private val words = titles.flatMapIndexed { i, row ->
        var top = i * each
        row.map { Label(it.lines, it.em, Offset(0f, top)).also { label -> top += label.line.size.height } }
    }

    override val labels = words + figures

    override val marks = rows.mapIndexed { i, row ->
        InkRect(x(row.forest.low), y(i) - 1.4f * mm, x(row.forest.high), y(i) + 1.4f * mm)
    }

    override fun draw(on: DrawScope) = with(on) {
        for (tick in axis.ticks) {
            val same = tick.at == 0.0
            drawLine(if (same) ink.ink else ink.soft, Offset(x(tick.at), 0f), Offset(x(tick.at), bottom), (if (same) 0.35f else 0.12f) * mm)
        }
        // A blank behind the words, so that the lines of the axis don't run through them.
        for (label in words) {
            val wide = (0 until label.line.lineCount).maxOf { label.line.getLineRight(it) }
            drawRect(ink.paper, label.at, Size(wide, label.line.size.height.toFloat()))
        }
        for (label in labels) drawText(label.line, ink.ink, label.at)
        rows.forEachIndexed { i, row -> forestLine(row, y(i), ::x, ink, mm) }
    }
}

private fun DrawScope.forestLine(row: ChangeView, y: Float, x: (Double) -> Float, ink: Ink, mm: Float) {
    val (low, high) = x(row.forest.low) to x(row.forest.high)
    drawLine(ink.ink, Offset(low, y), Offset(high, y), 0.45f * mm)
    for ((end, beyond, way) in listOf(Triple(low, row.forest.lowBeyond, -1f), Triple(high, row.forest.highBeyond, 1f))) {
        if (beyond) {
            drawLine(ink.ink, Offset(end + way * 1.4f * mm, y), Offset(end, y - 1.1f * mm), 0.45f * mm)
            drawLine(ink.ink, Offset(end + way * 1.4f * mm, y), Offset(end, y + 1.1f * mm), 0.45f * mm)
            drawLine(ink.ink, Offset(end, y), Offset(end + way * 1.4f * mm, y), 0.45f * mm)
        } else {
            drawLine(ink.ink, Offset(end, y - mm), Offset(end, y + mm), 0.45f * mm)
        }
    }
    val at = row.forest.at ?: return
    val (centre, r) = Offset(x(at), y) to 1.4f * mm
    drawCircle(ink.paper, r, centre)
    when (row.tone) {
        VerdictTone.UNKNOWN -> Unit
        VerdictTone.LEANS -> drawArc(ink.ink, 90f, 180f, true, centre - Offset(r, r), Size(2 * r, 2 * r))
        VerdictTone.CLEAR -> drawCircle(ink.ink, r, centre)
    }
    drawCircle(ink.ink, r, centre, style = Stroke(0.4f * mm))
}

/** The smallest share of a page for the plot: each change has two lines of text above its line. */
private const val FOREST_SHARE = 0.7

/** Changes on one page of the plot; at large text, and the height of one of them in ems at the most. */
private const val PLOT_ROWS = 5
private const val LARGE_PLOT_ROWS = 2
private const val LARGE_ROW = 10f
