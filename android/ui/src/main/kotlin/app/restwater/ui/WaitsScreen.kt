package app.restwater.ui

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.font.FontWeight
import app.restwater.core.Action
import app.restwater.core.BankLayout
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
    val pages = waits.charts.size + listOfNotNull(forecast, waits.figures).size
    var turned by rememberSaveable { mutableStateOf(first) }
    val page = if (pages == 0) 0 else turned % pages
    val chart = waits.charts.getOrNull(page)
    // The figures behind the verdicts come last.
    val figures = waits.figures?.takeIf { page == pages - 1 }
    Ground()
    val rest = PageHead(chart?.title ?: figures?.title ?: forecast?.takeIf { pages > 0 }?.title ?: waits.title, notice, layout)
    val rows = if (chart == null && figures == null && forecast != null) listOf(forecast.left) else waits.rows
    if (open != null && rows.any { it.tag == open }) {
        Rows(rows, open, { open = it }, rest, layout, onAct)
    } else {
        val cells = rows.map { row ->
            Cell(KeyFace(row.label, row.value, "${row.label}: ${row.value}"), "row-${row.tag}") { open = row.tag }
        } + listOfNotNull(waits.offer).map { offerCell(it, onOpen) }
        val keys = gridHeight(cells.size, layout)
        val place = rest.copy(height = rest.height - keys)
        when {
            chart != null -> Page(place, layout, chart.says, chart.notes) { figurePx, at -> ChartCanvas(chart, figurePx, Modifier.at(at)) }
            figures != null -> FiguresPage(figures, place, layout)
            forecast != null -> ForecastPage(forecast, place, layout)
            else -> FitText(waits.counts, layout.text.body.toFloat(), LocalInk.current.ink, Modifier.at(place))
        }
        KeyGridPage(cells, rest.copy(top = rest.top + rest.height - keys, height = keys), layout, page)
        Pager(page, pages, layout) { turned = it }
    }
    Back(layout, words) { if (open == null) onBack() else open = null }
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
    val low = place.width > LOW_PAGE * place.height
    val gap = 1.5 * mm
    val words = if (low) place.copy(left = place.left + place.width * PICTURE, width = place.width * (1 - PICTURE)) else place
    fun said(em: Float) = em * 1.2 * linesOf(says, em, words.width)
    fun noted(em: Float) = 0.85f * em * 1.2 * notes.sumOf { linesOf(it, 0.85f * em, words.width) }
    val usual = layout.text.body.toFloat()
    // The picture keeps its share of the page however large the text is.
    val room = place.height * (1 - share) - 2.5 * gap
    val body =
        if (low) largestDrawn(usual) { em -> (place.height - gap) / (said(em) + noted(em)) } else largestThatFits(usual) { em -> said(em) + noted(em) <= room }
    val small = body * 0.85f
    val figure = (usual * 0.85f).coerceAtMost((place.height / if (low) LOW_FIGURES else FIGURES).toFloat())
    val sentence = if (low) said(body) * ((place.height - gap) / (said(body) + noted(body))).coerceAtMost(1.0) else said(body)
    val below = if (low) place.height - sentence - gap else noted(body)
    Box(Modifier.at(words.copy(height = sentence)).tagged("says").semantics { contentDescription = says }) {
        FitText(says, body, ink.ink, Modifier.fillMaxSize(), FontWeight.Bold, middle = false)
    }
    if (low) picture(figure, place.copy(width = place.width * PICTURE - 2 * gap))
    else picture(figure, place.copy(top = place.top + sentence + gap, height = place.height - sentence - below - 2.5 * gap))
    val text = notes.joinToString(" ")
    val last = if (low) words.copy(top = words.top + sentence + gap, height = below) else words.copy(top = place.top + place.height - below - gap, height = below)
    Box(Modifier.at(last).tagged("notes").semantics { contentDescription = text }) {
        FitText(text, small, ink.ink, Modifier.fillMaxSize(), middle = false)
    }
}

/**
 * A page more than this many times as wide as high has its words beside the picture, which takes this share of the
 * width.
 */
private const val LOW_PAGE = 2.0
private const val PICTURE = 0.52

/** The smallest share of a page for a chart. */
internal const val CHART_SHARE = 0.62

/** A page is at least this many lines of small text high: with the words beside the picture, and below it. */
private const val LOW_FIGURES = 15.0
private const val FIGURES = 24.0

/** The number of lines a text probably takes: letters are about half as wide as their em. */
internal fun linesOf(text: String, em: Float, width: Double): Int = (text.length * em * 0.54 / width).toInt() + 1

@Composable
private fun ForecastPage(forecast: ForecastView, place: Rect, layout: BankLayout) {
    val ink = LocalInk.current
    val body = layout.text.body.toFloat()
    Page(place, layout, forecast.says, forecast.notes) { _, slot ->
        val each = (slot.height / forecast.lines.size.coerceAtLeast(1)).coerceAtMost(MOST_OF_EM * body)
        forecast.lines.forEachIndexed { i, line ->
            val at = slot.copy(top = slot.top + i * each, height = each)
            Box(Modifier.at(at).tagged("forecast-$i").semantics { contentDescription = "${line.label}: ${line.value}" }) {
                FitText(line.label, body * 0.85f, ink.ink, Modifier.at(Rect(0.0, 0.0, at.width, each * 0.42)))
                FitText(line.value, body * 1.1f, ink.ink, Modifier.at(Rect(0.0, each * 0.42, at.width, each * 0.5)), FontWeight.Bold)
            }
        }
    }
}

/** Lines of a forecast are no further apart than this many times the size of plain text. */
private const val MOST_OF_EM = 3.4
