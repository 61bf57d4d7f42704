package app.restwater.ui

import androidx.compose.foundation.Canvas
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.PathEffect
import androidx.compose.ui.graphics.StrokeCap
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.graphics.drawscope.clipRect
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.testTag
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
 * A picture of the core's numbers. Bands are tinted, lines differ by dashes, points by shape, stretches stand as
 * brackets above the picture: nothing needs colour. A screen reader is told what the picture says.
 */
@Composable
fun ChartCanvas(chart: ChartView, figurePx: Float, modifier: Modifier = Modifier) {
    val ink = LocalInk.current
    val mm = LocalPxPerMm.current
    val measurer = textMeasurer()
    val density = LocalDensity.current
    Canvas(modifier.testTag("chart-${chart.kind}").semantics { contentDescription = "${chart.title}. ${chart.says}" }) {
        // However large the text, the picture keeps the greater part of its place.
        val px = figurePx.coerceAtMost(size.height / 15f)
        ChartDrawing(this, chart, ink, mm, Lettering(measurer, density, ink, px, size.width)).draw()
    }
}

/** Small text on a picture, made smaller only where one line would be wider than the picture. */
internal class Lettering(
    private val measurer: TextMeasurer, private val density: Density, private val ink: Ink, val px: Float, private val widest: Float,
) {
    fun of(text: String, weight: FontWeight = FontWeight.Medium): TextLayoutResult {
        val laid = at(px, text, weight)
        return if (laid.size.width <= widest) laid else at(px * widest / laid.size.width * 0.98f, text, weight)
    }

    private fun at(em: Float, text: String, weight: FontWeight) = measurer.measure(
        text, TextStyle(ink.ink, with(density) { em.toSp() }, weight, fontFamily = Face.words), softWrap = false, maxLines = 1,
    )
}

/** Dashes of a style, told apart at arm's length. */
internal fun dashes(style: LineStyle, mm: Float): PathEffect? = when (style) {
    LineStyle.SOLID -> null
    LineStyle.DASHED -> PathEffect.dashPathEffect(floatArrayOf(1.8f * mm, 1.0f * mm))
    LineStyle.DOTTED -> PathEffect.dashPathEffect(floatArrayOf(0.05f * mm, 0.85f * mm))
}

internal fun width(style: LineStyle, mm: Float): Float = if (style == LineStyle.SOLID) 0.55f * mm else 0.4f * mm

private class ChartDrawing(
    private val on: DrawScope,
    private val chart: ChartView,
    private val ink: Ink,
    private val mm: Float,
    private val letters: Lettering,
) {
    private val upLabels = chart.y.ticks.map { it.at to letters.of(it.label) }
    private val legend = legend()
    private val line = letters.px * 1.25f
    private val left = (upLabels.maxOfOrNull { it.second.size.width } ?: 0) + 1.4f * mm
    private val right = on.size.width - 1.0f * mm
    private val top = line + if (chart.spans.isEmpty()) line * 0.6f else line + 1.6f * mm
    private val legendRows = rows(legend)
    private val bottom = on.size.height - 2.1f * line - 1.2f * mm - legendRows.size * line * 1.1f

    private fun x(value: Double) = left + (right - left) * ((value - chart.x.from) / (chart.x.to - chart.x.from)).coerceIn(0.0, 1.0).toFloat()

    private fun y(value: Double) =
        bottom - (bottom - top) * ((value - chart.y.from) / (chart.y.to - chart.y.from)).coerceIn(0.0, 1.0).toFloat()

    fun draw() {
        axes()
        on.clipRect(left - 1f, top - 1f, right + 1f, bottom + 1f) {
            chart.bands.forEach(::band)
            bars()
            chart.lines.forEach(::line)
        }
        spans()
        chart.dots.forEach(::dot)
        key()
    }

    private fun axes() {
        val thin = 0.25f * mm
        on.drawText(letters.of(chart.y.label, FontWeight.Bold), ink.ink, Offset(0f, 0f))
        for ((at, laid) in upLabels) {
            val y = y(at)
            on.drawLine(ink.soft, Offset(left, y), Offset(right, y), thin * 0.5f)
            on.drawText(laid, ink.ink, Offset(left - 0.9f * mm - laid.size.width, y - laid.size.height / 2f))
        }
        on.drawLine(ink.ink, Offset(left, top), Offset(left, bottom), thin)
        on.drawLine(ink.ink, Offset(left, bottom), Offset(right, bottom), thin)
        var free = 0f
        for (tick in chart.x.ticks) {
            val x = x(tick.at)
            val laid = letters.of(tick.label)
            on.drawLine(ink.ink, Offset(x, bottom), Offset(x, bottom + 0.9f * mm), thin)
            val from = (x - laid.size.width / 2f).coerceIn(0f, on.size.width - laid.size.width)
            // Figures that would touch at a large text are left out; their ticks stay.
            if (from < free) continue
            on.drawText(laid, ink.ink, Offset(from, bottom + 1.0f * mm))
            free = from + laid.size.width + 1.2f * mm
        }
        val label = letters.of(chart.x.label, FontWeight.Bold)
        on.drawText(label, ink.ink, Offset((right - label.size.width).coerceAtLeast(0f), bottom + 1.0f * mm + line))
    }

    private fun band(band: ChartBand) {
        val path = Path().apply {
            band.x.forEachIndexed { i, x -> if (i == 0) moveTo(x(x), y(band.high[0])) else lineTo(x(x), y(band.high[i])) }
            for (i in band.x.indices.reversed()) lineTo(x(band.x[i]), y(band.low[i]))
            close()
        }
        on.drawPath(path, ink.water)
        on.drawPath(path, ink.soft, style = Stroke(0.2f * mm))
    }

    private fun bars() {
        for (bar in chart.bars) {
            val from = x(bar.from)
            val to = x(bar.to)
            val high = y(bar.height)
            on.drawRect(ink.ink, Offset(from, high), Size(to - from, bottom - high), style = Stroke(0.3f * mm))
            // A bar higher than the picture is open at the top, with an arrow.
            if (bar.height > chart.y.to) arrow((from + to) / 2, top + 0.2f * mm)
        }
    }

    private fun arrow(x: Float, y: Float) {
        val path = Path().apply { moveTo(x, y); lineTo(x + 0.9f * mm, y + 1.4f * mm); lineTo(x - 0.9f * mm, y + 1.4f * mm); close() }
        on.drawPath(path, ink.ink)
    }

    private fun line(line: ChartLine) {
        val path = Path()
        line.x.forEachIndexed { i, x -> if (i == 0) path.moveTo(x(x), y(line.y[0])) else path.lineTo(x(x), y(line.y[i])) }
        val cap = if (line.style == LineStyle.DOTTED) StrokeCap.Round else StrokeCap.Butt
        on.drawPath(path, ink.ink, style = Stroke(width(line.style, mm), cap = cap, pathEffect = dashes(line.style, mm)))
    }

    /** Brackets above the picture, each with its words. */
    private fun spans() {
        for (span in chart.spans) {
            val (from, to) = x(span.from) to x(span.to)
            val y = top - 0.5f * mm
            on.drawLine(ink.ink, Offset(from, y - 0.8f * mm), Offset(to, y - 0.8f * mm), 0.45f * mm)
            for (end in listOf(from, to)) {
                on.drawLine(ink.ink, Offset(end, y - 0.8f * mm), Offset(end, y + 0.8f * mm), 0.45f * mm)
                on.drawLine(ink.soft, Offset(end, y), Offset(end, bottom), 0.2f * mm, pathEffect = dashes(LineStyle.DOTTED, mm))
            }
            val laid = letters.of(span.label, FontWeight.Bold)
            val at = ((from + to - laid.size.width) / 2).coerceIn(0f, (on.size.width - laid.size.width).coerceAtLeast(0f))
            on.drawText(laid, ink.ink, Offset(at, y - 1.2f * mm - laid.size.height))
        }
    }

    private fun dot(dot: ChartDot) {
        val x = x(dot.x)
        val y = y(dot.y)
        val r = 0.95f * mm
        when (dot.shape) {
            // The same signs as on the strip and the map: a diamond is a bite, a stroke a cast wound in without one, an
            // accent dot what the record suggests.
            DotShape.BITE -> {
                val path = Path().apply { moveTo(x, y - 1.2f * r); lineTo(x + 1.2f * r, y); lineTo(x, y + 1.2f * r); lineTo(x - 1.2f * r, y); close() }
                on.drawPath(path, ink.paper, style = Stroke(0.5f * mm))
                on.drawPath(path, ink.ink)
            }
            DotShape.WITHOUT_BITE -> upright(x, y, r)
            DotShape.BEST -> {
                on.drawCircle(ink.paper, 1.5f * r, Offset(x, y))
                on.drawCircle(ink.accent, 1.2f * r, Offset(x, y))
            }
            DotShape.HABIT -> upright(x, y, 1.6f * r)
        }
    }

    /** A stroke with an edge of paper. */
    private fun upright(x: Float, y: Float, half: Float) {
        for ((colour, width) in listOf(ink.paper to 1.1f * mm, ink.ink to 0.5f * mm)) on.drawLine(colour, Offset(x, y - half), Offset(x, y + half), width)
    }

    private fun legend(): List<Pair<LineStyle?, TextLayoutResult>> =
        chart.lines.filter { it.label.isNotEmpty() }.flatMap { line ->
            val own = listOf(line.style to letters.of(line.label))
            // The band is the first line's: it stands beside it.
            if (line === chart.lines.first()) own + chart.bands.map { null to letters.of(it.label) } else own
        }

    /** Samples and their words, as many in a row as fit. */
    private fun rows(entries: List<Pair<LineStyle?, TextLayoutResult>>): List<List<Pair<LineStyle?, TextLayoutResult>>> {
        val rows = mutableListOf<MutableList<Pair<LineStyle?, TextLayoutResult>>>()
        var taken = 0f
        for (entry in entries) {
            val width = SAMPLE * mm + entry.second.size.width + 3f * mm
            if (rows.isEmpty() || taken + width > on.size.width) {
                rows += mutableListOf<Pair<LineStyle?, TextLayoutResult>>()
                taken = 0f
            }
            rows.last() += entry
            taken += width
        }
        return rows
    }

    private fun key() {
        var y = on.size.height - legendRows.size * line * 1.1f
        for (row in legendRows) {
            var x = 0f
            for ((style, laid) in row) {
                val middle = y + laid.size.height / 2f
                if (style == null) tint(x, middle) else {
                    val cap = if (style == LineStyle.DOTTED) StrokeCap.Round else StrokeCap.Butt
                    on.drawLine(ink.ink, Offset(x, middle), Offset(x + (SAMPLE - 1f) * mm, middle), width(style, mm), cap, dashes(style, mm))
                }
                on.drawText(laid, ink.ink, Offset(x + SAMPLE * mm, y))
                x += SAMPLE * mm + laid.size.width + 3f * mm
            }
            y += line * 1.1f
        }
    }

    private fun tint(x: Float, middle: Float) {
        val (w, h) = (SAMPLE - 1f) * mm to 2f * mm
        on.drawRect(ink.water, Offset(x, middle - h / 2), Size(w, h))
        on.drawRect(ink.soft, Offset(x, middle - h / 2), Size(w, h), style = Stroke(0.2f * mm))
    }
}

/** Width of a sample in the key, with its gap, in millimetres. */
private const val SAMPLE = 6.5f
