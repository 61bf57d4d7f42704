package app.restwater.ui

import androidx.compose.foundation.layout.Spacer
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.PathEffect
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.graphics.drawscope.clipRect
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.drawText
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.unit.Density
import app.restwater.core.ChartBand
import app.restwater.core.ChartDot
import app.restwater.core.ChartLine
import app.restwater.core.ChartView
import app.restwater.core.DotShape
import app.restwater.core.LineStyle

/**
 * A picture of the core's numbers. Bands are tinted, lines differ by dashes, points by shape, and stretches are
 * brackets above the picture, so nothing depends on colour. A screen reader reads the picture's description.
 */
@Composable
fun ChartCanvas(chart: ChartView, figurePx: Float, modifier: Modifier = Modifier) {
    val ink = LocalInk.current
    val mm = LocalPxPerMm.current
    val measurer = textMeasurer()
    val density = LocalDensity.current
    Spacer(
        modifier.tagged("chart-${chart.kind}").semantics { contentDescription = chart.spoken }
            .picture(listOf(chart, figurePx, ink, mm, density)) { size ->
                ChartDrawing(size, chart, ink, mm, Lettering(measurer, density, ink, figurePx, size.width))
            },
    )
}

/** Small text on a picture, made smaller only if a line would be wider than the picture. */
internal class Lettering(
    private val measurer: TextMeasurer, private val density: Density, private val ink: Ink, val px: Float, private val widest: Float,
) {
    fun of(text: String, weight: FontWeight = FontWeight.Medium): Lettered {
        var em = px
        while (true) {
            val line = at(em, text, weight)
            if (line.size.width <= widest || em <= px * SMALLEST) return Lettered(line, em)
            em *= SMALLER
        }
    }

    private fun at(em: Float, text: String, weight: FontWeight) = measurer.measure(
        text, TextStyle(ink.ink, with(density) { em.toSp() }, weight, fontFamily = Face.words), softWrap = false, maxLines = 1,
    )
}

/** One line of small text and its size. */
internal class Lettered(val line: TextLayoutResult, val em: Float) {
    val width get() = line.size.width
    val height get() = line.size.height

    fun at(x: Float, y: Float) = Label(line, em, Offset(x, y))
}

/** Dashes of a style, which can be told apart at arm's length. */
internal fun dashes(style: LineStyle, mm: Float): PathEffect? = when (style) {
    LineStyle.SOLID -> null
    LineStyle.DASHED -> PathEffect.dashPathEffect(floatArrayOf(1.8f * mm, 1.0f * mm))
    LineStyle.DOTTED -> PathEffect.dashPathEffect(floatArrayOf(0.05f * mm, 0.85f * mm))
}

internal fun width(style: LineStyle, mm: Float): Float = if (style == LineStyle.SOLID) 0.55f * mm else 0.4f * mm

private class ChartDrawing(
    private val size: Size,
    private val chart: ChartView,
    private val ink: Ink,
    private val mm: Float,
    private val letters: Lettering,
) : Picture {
    private val upLabels = chart.y.ticks.map { it.at to letters.of(it.label) }
    private val legend = legend()
    private val line = letters.px * 1.25f
    private val left = (upLabels.maxOfOrNull { it.second.width } ?: 0) + 1.4f * mm
    private val wide = size.width
    private val right = wide - 1.0f * mm
    private val top = line + if (chart.spans.isEmpty()) line * 0.6f else line + 1.6f * mm
    private val legendRows = rows(legend)
    private val bottom = size.height - 2.1f * line - 1.2f * mm - legendRows.size * line * 1.1f

    private fun x(value: Double) = left + (right - left) * ((value - chart.x.from) / (chart.x.to - chart.x.from)).coerceIn(0.0, 1.0).toFloat()

    private fun y(value: Double) =
        bottom - (bottom - top) * ((value - chart.y.from) / (chart.y.to - chart.y.from)).coerceIn(0.0, 1.0).toFloat()

    override val labels = axisLabels() + spanLabels() + legendLabels()

    override val marks = chart.dots.map { dot -> Rect(Offset(x(dot.x), y(dot.y)), reach(dot.shape)) }

    override fun draw(on: DrawScope) = with(on) {
        axes()
        clipRect(left - 1f, top - 1f, right + 1f, bottom + 1f) {
            chart.bands.forEach { band(it) }
            chart.notTried?.let { notTried(Rect(x(it.from), top, x(it.to), bottom), ink, mm) }
            bars()
            chart.lines.forEach { line(it) }
        }
        spans()
        chart.dots.forEach { dot(it) }
        key()
        for (label in labels) drawText(label.line, ink.ink, label.at)
    }

    private fun axisLabels(): List<Label> = listing {
        val title = letters.of(chart.y.label, FontWeight.Bold)
        add(title.at(0f, 0f))
        for ((at, figure) in upLabels) {
            // A number of this axis shares no line with its title or with the other axis.
            val lowest = (bottom + mm - 0.8f * figure.height).coerceAtLeast(title.height.toFloat())
            add(figure.at(left - 0.9f * mm - figure.width, (y(at) - figure.height / 2f).coerceIn(title.height.toFloat(), lowest)))
        }
        var free = 0f
        for (tick in chart.x.ticks) {
            val figure = letters.of(tick.label)
            val from = (x(tick.at) - figure.width / 2f).coerceIn(0f, wide - figure.width)
            // Numbers that would touch at large text sizes are left out; their ticks stay.
            if (from < free) continue
            add(figure.at(from, bottom + 1.0f * mm))
            free = from + figure.width + 1.2f * mm
        }
        val across = letters.of(chart.x.label, FontWeight.Bold)
        add(across.at((right - across.width).coerceAtLeast(0f), bottom + 1.0f * mm + line))
    }

    private fun DrawScope.axes() {
        val thin = 0.25f * mm
        for ((at, _) in upLabels) drawLine(ink.soft, Offset(left, y(at)), Offset(right, y(at)), thin * 0.5f)
        drawLine(ink.ink, Offset(left, top), Offset(left, bottom), thin)
        drawLine(ink.ink, Offset(left, bottom), Offset(right, bottom), thin)
        for (tick in chart.x.ticks) drawLine(ink.ink, Offset(x(tick.at), bottom), Offset(x(tick.at), bottom + 0.9f * mm), thin)
    }

    private fun DrawScope.band(band: ChartBand) {
        val path = Path().apply {
            band.x.forEachIndexed { i, x -> if (i == 0) moveTo(x(x), y(band.high[0])) else lineTo(x(x), y(band.high[i])) }
            for (i in band.x.indices.reversed()) lineTo(x(band.x[i]), y(band.low[i]))
            close()
        }
        drawPath(path, ink.water)
        drawPath(path, ink.soft, style = Stroke(0.2f * mm))
    }

    private fun DrawScope.bars() {
        for (bar in chart.bars) {
            val from = x(bar.from)
            val to = x(bar.to)
            val high = y(bar.height)
            drawRect(ink.ink, Offset(from, high), Size(to - from, bottom - high), style = Stroke(0.3f * mm))
            // A bar higher than the picture is open at the top, with an arrow.
            if (bar.height > chart.y.to) arrow((from + to) / 2, top + 0.2f * mm)
        }
    }

    private fun DrawScope.arrow(x: Float, y: Float) {
        val path = Path().apply { moveTo(x, y); lineTo(x + 0.9f * mm, y + 1.4f * mm); lineTo(x - 0.9f * mm, y + 1.4f * mm); close() }
        drawPath(path, ink.ink)
    }

    private fun DrawScope.line(line: ChartLine) {
        val path = Path()
        line.x.forEachIndexed { i, x -> if (i == 0) path.moveTo(x(x), y(line.y[0])) else path.lineTo(x(x), y(line.y[i])) }
        val cap = if (line.style == LineStyle.DOTTED) StrokeCap.Round else StrokeCap.Butt
        drawPath(path, ink.ink, style = Stroke(width(line.style, mm), cap = cap, pathEffect = dashes(line.style, mm)))
    }

    /** Height of the brackets above the picture. */
    private val bracket get() = top - 0.5f * mm

    private fun spanLabels(): List<Label> {
        var free = 0f
        return chart.spans.sortedBy { it.from }.map { span ->
            val words = letters.of(span.label, FontWeight.Bold)
            val most = (size.width - words.width).coerceAtLeast(0f)
            val middle = ((x(span.from) + x(span.to) - words.width) / 2).coerceIn(free.coerceAtMost(most), most)
            free = middle + words.width + mm
            words.at(middle, bracket - 1.2f * mm - words.height)
        }
    }

    private fun DrawScope.spans() {
        for (span in chart.spans) {
            val (from, to) = x(span.from) to x(span.to)
            val y = bracket
            val known = (chart.notTried?.let { x(it.from) } ?: to).coerceIn(from, to)
            drawLine(ink.ink, Offset(from, y - 0.8f * mm), Offset(known, y - 0.8f * mm), 0.45f * mm)
            drawLine(ink.ink, Offset(known, y - 0.8f * mm), Offset(to, y - 0.8f * mm), 0.45f * mm, pathEffect = untried(mm))
            for (end in listOf(from, to)) {
                drawLine(ink.ink, Offset(end, y - 0.8f * mm), Offset(end, y + 0.8f * mm), 0.45f * mm)
                drawLine(ink.soft, Offset(end, y), Offset(end, bottom), 0.2f * mm, pathEffect = dashes(LineStyle.DOTTED, mm))
            }
        }
    }

    /** How far a symbol reaches from its centre. */
    private fun reach(shape: DotShape) = when (shape) {
        DotShape.BITE, DotShape.BEST -> 1.2f * DOT * mm
        DotShape.WITHOUT_BITE -> DOT * mm
        DotShape.HABIT -> 1.6f * DOT * mm
    }

    private fun DrawScope.dot(dot: ChartDot) {
        val x = x(dot.x)
        val y = y(dot.y)
        val r = DOT * mm
        when (dot.shape) {
            // The same symbols as on the strip and the map: a diamond is a bite, a stroke a cast wound in without one,
            // and a dot in the accent colour what the record suggests.
            DotShape.BITE -> {
                val path = Path().apply { moveTo(x, y - 1.2f * r); lineTo(x + 1.2f * r, y); lineTo(x, y + 1.2f * r); lineTo(x - 1.2f * r, y); close() }
                drawPath(path, ink.paper, style = Stroke(0.5f * mm))
                drawPath(path, ink.ink)
            }
            DotShape.WITHOUT_BITE -> upright(x, y, r)
            DotShape.BEST -> {
                drawCircle(ink.paper, 1.5f * r, Offset(x, y))
                drawCircle(ink.accent, 1.2f * r, Offset(x, y))
            }
            DotShape.HABIT -> upright(x, y, 1.6f * r)
        }
    }

    /** A stroke with an edge of paper. */
    private fun DrawScope.upright(x: Float, y: Float, half: Float) {
        for ((colour, width) in listOf(ink.paper to 1.1f * mm, ink.ink to 0.5f * mm)) drawLine(colour, Offset(x, y - half), Offset(x, y + half), width)
    }

    /** An entry of the key: a line of a style, a band, or where nothing was tried. */
    private inner class Entry(val words: Lettered, val sample: DrawScope.(Float, Float) -> Unit)

    private fun legend(): List<Entry> {
        val bands = chart.bands.map { Entry(letters.of(it.label)) { x, middle -> tint(x, middle) } }
        val lines = chart.lines.filter { it.label.isNotEmpty() }.flatMap { line ->
            val own = listOf(Entry(letters.of(line.label)) { x, middle -> stroke(line.style, x, middle) })
            // The band belongs to the first line, so its entry is next to it.
            if (line === chart.lines.first()) own + bands else own
        }
        val notTried = chart.notTried?.let { Entry(letters.of(it.label)) { x, middle -> dotted(x, middle) } }
        return lines + listOfNotNull(notTried)
    }

    /** Samples with their words, as many in a row as fit. */
    private fun rows(entries: List<Entry>): List<List<Entry>> {
        val rows = mutableListOf<MutableList<Entry>>()
        var taken = 0f
        for (entry in entries) {
            val width = SAMPLE * mm + entry.words.width + 3f * mm
            if (rows.isEmpty() || taken + width > size.width) {
                rows += mutableListOf<Entry>()
                taken = 0f
            }
            rows.last() += entry
            taken += width
        }
        return rows
    }

    /** Each entry of the key, from the left of its sample. */
    private fun entries(): List<Pair<Entry, Offset>> = legendRows.flatMapIndexed { i, row ->
        var x = 0f
        val y = size.height - (legendRows.size - i) * line * 1.1f
        row.map { entry -> (entry to Offset(x, y)).also { x += SAMPLE * mm + entry.words.width + 3f * mm } }
    }

    private fun legendLabels() = entries().map { (entry, at) -> entry.words.at(at.x + SAMPLE * mm, at.y) }

    private fun DrawScope.key() {
        for ((entry, at) in entries()) entry.sample(this, at.x, at.y + entry.words.height / 2f)
    }

    private fun DrawScope.stroke(style: LineStyle, x: Float, middle: Float) {
        val cap = if (style == LineStyle.DOTTED) StrokeCap.Round else StrokeCap.Butt
        drawLine(ink.ink, Offset(x, middle), Offset(x + (SAMPLE - 1f) * mm, middle), width(style, mm), cap, dashes(style, mm))
    }

    private fun DrawScope.dotted(x: Float, middle: Float) {
        notTried(Rect(x - mm, middle - 1.3f * mm, x + (SAMPLE - 1f) * mm, middle + 1.6f * mm), ink, mm)
    }

    private fun DrawScope.tint(x: Float, middle: Float) {
        val (w, h) = (SAMPLE - 1f) * mm to 2f * mm
        drawRect(ink.water, Offset(x, middle - h / 2), Size(w, h))
        drawRect(ink.soft, Offset(x, middle - h / 2), Size(w, h), style = Stroke(0.2f * mm))
    }
}

/** Half the size of a symbol, in millimetres. */
private const val DOT = 0.95f

/** Width of a sample in the key, with its gap, in millimetres. */
private const val SAMPLE = 6.5f
