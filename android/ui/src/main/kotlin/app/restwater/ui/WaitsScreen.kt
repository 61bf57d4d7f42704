package app.restwater.ui

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.font.FontWeight
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.ChoiceRow
import app.restwater.core.FiguresView
import app.restwater.core.ForecastView
import app.restwater.core.PadWords
import app.restwater.core.Rect
import app.restwater.core.WaitsView
import app.restwater.core.Which

/** What the record says about waiting: one picture per page, with its message above it. */
@Composable
fun WaitsScreen(
    waits: WaitsView,
    layout: BankLayout,
    words: PadWords,
    notice: String,
    onAct: (Action) -> Unit,
    first: Int = 0,
    onOpen: (Which) -> Unit = { },
    onBack: () -> Unit,
) {
    var open by rememberSaveable { mutableStateOf<String?>(null) }
    val forecast = waits.forecast
    var turned by rememberSaveable { mutableStateOf(first) }
    val opened = LocalOpened.current
    fun fields(rows: List<ChoiceRow>) = rows.map { row ->
        Cell(KeyFace(row.label, row.value, row.spoken), "row-${row.tag}") { opened(); open = row.tag }
    } + listOfNotNull(waits.offer).map { offerCell(it, onOpen) }
    val pages = listing {
        val cells = fields(waits.rows)
        for (chart in waits.charts) {
            addAll(apart(chart.title, cells, chart.says, chart.notes, layout) { figurePx, at -> ChartCanvas(chart, figurePx, Modifier.at(at)) })
        }
        forecast?.let { add(ScreenPage(it.title, fields(listOf(it.left)), listOf(it.left)) { place -> ForecastPage(it, place, layout) }) }
        // The figures behind the verdicts come last.
        waits.figures?.let { addAll(figurePages(it, cells, waits.rows, layout)) }
    }
    val page = if (pages.isEmpty()) 0 else turned % pages.size
    val shown = pages.getOrNull(page)
    val rows = shown?.rows ?: waits.rows
    Ground()
    val rest = PageHead(shown?.title ?: waits.title, notice, layout)
    if (open != null && rows.any { it.tag == open }) {
        Rows(rows, open, { open = it }, rest, layout, onAct)
    } else {
        val cells = shown?.cells ?: fields(waits.rows)
        val keys = gridHeight(cells.size, layout)
        val place = rest.copy(height = rest.height - keys)
        if (shown != null) shown.draw(place) else SpokenText(waits.counts, layout.text.body.toFloat(), LocalInk.current.ink, Modifier.at(place))
        KeyGridPage(cells, rest.copy(top = rest.top + rest.height - keys, height = keys), layout, page)
        Pager(page, pages.size, layout) { turned = it }
    }
    Back(layout, words) { if (open == null) onBack() else open = null }
}

/** One page of a screen that has several: its title, its keys with the rows they open, and what is drawn above them. */
internal class ScreenPage(val title: String, val cells: List<Cell>, val rows: List<ChoiceRow>? = null, val draw: @Composable (Rect) -> Unit)

/** A sentence and its picture: on one page, or, if large text leaves too little room for both, on pages of their own. */
@Composable
internal fun apart(
    title: String, cells: List<Cell>, says: String, notes: List<String>, layout: BankLayout, share: Double = CHART_SHARE,
    picture: @Composable (Float, Rect) -> Unit,
): List<ScreenPage> {
    val rest = layout.page.rest
    val place = rest.copy(height = rest.height - gridHeight(cells.size, layout))
    val body = layout.text.body.toFloat()
    if (!layout.apart || says.isBlank() || sizeOn(place, says, notes, body, share) >= body * WHOLE) {
        return listOf(ScreenPage(title, cells) { Page(it, layout, says, notes, share, picture) })
    }
    // The notes go with the sentence if one page holds both, else with the picture.
    val all = spread(says, notes.filter { it.isNotBlank() }, rest, layout)
    val (words, others) = if (all.size == 1) all to emptyList() else spread(says, emptyList(), rest, layout) to notes
    return words.map { part -> ScreenPage(title, emptyList()) { LeafBlocks(part, it, layout) } } +
        ScreenPage(title, cells) { Page(it, layout, "", others, share, picture) }
}

/** The figures on one page, or on as many as large text needs. */
@Composable
internal fun figurePages(figures: FiguresView, cells: List<Cell>, rows: List<ChoiceRow>?, layout: BankLayout): List<ScreenPage> {
    if (!layout.apart) return listOf(ScreenPage(figures.title, cells, rows) { FiguresPage(figures, it, layout) })
    val rest = layout.page.rest
    val place = rest.copy(height = rest.height - gridHeight(cells.size, layout))
    return spread("", figures.lines, place, layout).map { part ->
        ScreenPage(figures.title, cells, rows) { LeafBlocks(part, it, layout) }
    }
}

/** Intervals, p values and the methods behind them. */
@Composable
internal fun FiguresPage(figures: FiguresView, place: Rect, layout: BankLayout) {
    val text = figures.lines.joinToString("\n")
    Box(Modifier.at(place).tagged("figures").semantics { contentDescription = text }) {
        FitText(text, layout.text.body.toFloat() * 0.85f, LocalInk.current.ink, Modifier.fillMaxSize(), middle = false)
    }
}

/** A sentence, a picture below it, and the method below that; on a low page the words are beside the picture. */
@Composable
internal fun Page(
    place: Rect, layout: BankLayout, says: String, notes: List<String>, share: Double = CHART_SHARE, picture: @Composable (Float, Rect) -> Unit,
) {
    val mm = LocalPxPerMm.current
    val ink = LocalInk.current
    val low = place.isLow
    val gap = WORDS_GAP_MM * mm
    val words = place.besidePicture()
    val heights = heights()
    val text = notes.filter { it.isNotBlank() }.joinToString(" ")
    fun said(em: Float) = heights.of(says, em, words.width, FontWeight.Bold)
    fun noted(em: Float) = heights.of(text, 0.85f * em, words.width)
    val usual = layout.text.body.toFloat()
    val body = sizeOn(place, says, notes, usual, share)
    val small = body * 0.85f
    val least = if (low) LOW_FIGURES else if (says.isEmpty() && notes.isEmpty()) ALONE_FIGURES else FIGURES
    val figure = (usual * 0.85f).coerceAtMost((place.height / least).toFloat())
    val sentence = if (low) said(body) * ((place.height - gap) / (said(body) + noted(body))).coerceAtMost(1.0) else said(body)
    val below = if (low) place.height - sentence - gap else noted(body)
    Box(Modifier.at(words.copy(height = sentence)).tagged("says").semantics { contentDescription = says }) {
        if (says.isNotBlank()) FitText(says, body, ink.ink, Modifier.fillMaxSize(), FontWeight.Bold, middle = false)
    }
    if (low) picture(figure, place.copy(width = place.width * PICTURE - 2 * gap))
    else picture(figure, place.copy(top = place.top + sentence + gap, height = place.height - sentence - below - 2.5 * gap))
    val last = if (low) words.copy(top = words.top + sentence + gap, height = below) else words.copy(top = place.top + place.height - below - gap, height = below)
    Box(Modifier.at(last).tagged("notes").semantics { contentDescription = text }) {
        if (text.isNotBlank()) FitText(text, small, ink.ink, Modifier.fillMaxSize(), middle = false)
    }
}

/** The size of the words of a page whose picture keeps its share of it, however large the text is. */
@Composable
private fun sizeOn(place: Rect, says: String, notes: List<String>, usual: Float, share: Double): Float {
    val gap = WORDS_GAP_MM * LocalPxPerMm.current
    val width = place.besidePicture().width
    val heights = heights()
    val text = notes.filter { it.isNotBlank() }.joinToString(" ")
    fun height(em: Float) = heights.of(says, em, width, FontWeight.Bold) + heights.of(text, 0.85f * em, width)
    return remember(says, text, place, usual, share, gap, heights) {
        if (place.isLow) return@remember largestDrawn(usual) { em -> (place.height - gap) / height(em).coerceAtLeast(1.0) }
        val room = place.height * (1 - share) - 2.5 * gap
        largestThatFits(usual) { em -> height(em) <= room }
    }
}

private val Rect.isLow get() = width > LOW_PAGE * height

/** Where the words of a page are: beside the picture if the page is low. */
private fun Rect.besidePicture() = if (isLow) copy(left = left + width * PICTURE, width = width * (1 - PICTURE)) else this

/** Between the words and the picture of a page, mm. */
private const val WORDS_GAP_MM = 1.5

/** Rounding: a text at this share of its size is whole. */
private const val WHOLE = 0.999f

/**
 * A page more than this many times as wide as high has its words beside the picture, which takes this share of the
 * width.
 */
private const val LOW_PAGE = 2.0
private const val PICTURE = 0.52

/** The smallest share of a page for a chart. */
internal const val CHART_SHARE = 0.62

/** A page is at least this many lines of small text high: with the words beside the picture, below it, and on pages of their own. */
private const val LOW_FIGURES = 15.0
private const val FIGURES = 24.0
private const val ALONE_FIGURES = 18.0

@Composable
private fun ForecastPage(forecast: ForecastView, place: Rect, layout: BankLayout) {
    val ink = LocalInk.current
    val body = layout.text.body.toFloat()
    Page(place, layout, forecast.says, forecast.notes) { _, slot ->
        val each = (slot.height / forecast.lines.size.coerceAtLeast(1)).coerceAtMost(MOST_OF_EM * body)
        forecast.lines.forEachIndexed { i, line ->
            val at = slot.copy(top = slot.top + i * each, height = each)
            Box(Modifier.at(at).tagged("forecast-$i").semantics { contentDescription = line.spoken }) {
                FitText(line.label, body * 0.85f, ink.ink, Modifier.at(Rect(0.0, 0.0, at.width, each * 0.42)))
                FitText(line.value, body * 1.1f, ink.ink, Modifier.at(Rect(0.0, each * 0.42, at.width, each * 0.5)), FontWeight.Bold)
            }
        }
    }
}

/** Lines of a forecast are no further apart than this many times the size of plain text. */
private const val MOST_OF_EM = 3.4
