package app.restwater.ui

import androidx.compose.foundation.layout.Spacer
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.PathEffect
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.graphics.graphicsLayer
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.semantics.traversalIndex
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.drawText
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.unit.Density
import app.restwater.core.StripMark
import app.restwater.core.StripMarkShape
import app.restwater.core.StripView

/**
 * The wait strip: a tape of minutes from the splash. The time so far is solid; bites of this session are diamonds,
 * waits that ended without one are strokes, liners of the running cast are triangles; the near-best band has a bracket,
 * dashed where no cast was out so long; the present minute is a line with a flag in the accent colour; beyond what is known
 * the tape is dotted. [now] is read while it is drawn into a layer of its own.
 */
@Composable
fun WaitStrip(strip: StripView, figurePx: Float, modifier: Modifier = Modifier, order: Float = 0f, now: () -> StripView = { strip }) {
    val ink = LocalInk.current
    val mm = LocalPxPerMm.current
    val measurer = textMeasurer()
    val density = LocalDensity.current
    Spacer(
        modifier.tagged("strip").semantics {
            contentDescription = strip.spoken
            traversalIndex = order
        }.graphicsLayer().picture(listOf(strip, figurePx, ink, mm, density)) { size ->
            object : Picture {
                private val still = Tape(size, strip, ink, mm, figurePx)
                override val labels = still.figures(measurer, density)
                override val marks get() = emptyList<Rect>()
                override fun draw(on: DrawScope) = Tape(size, now(), ink, mm, figurePx).draw(on, measurer, density)
            }
        },
    )
}

/** One drawing of the strip: where its parts are in the available height. */
private class Tape(
    private val size: Size,
    private val strip: StripView,
    private val ink: Ink,
    private val mm: Float,
    askedPx: Float,
) {
    /** On a small screen, bracket, ticks and numbers shrink before the tape does. */
    private val slim = (size.height / (11f * mm)).coerceIn(0.45f, 1f)
    private val figurePx = askedPx.coerceAtMost(size.height * 0.26f)
    private val bracket = 1.6f * mm * slim
    private val ticks = 1.4f * mm * slim
    private val left = 0.3f * mm
    private val wide = size.width
    private val high = size.height
    private val right = wide - left
    private val top = bracket + 0.3f * mm
    private val bottom = size.height - ticks - figurePx * 0.95f
    private val height = bottom - top
    private val run = height * 0.3f

    private fun x(minute: Double): Float =
        left + (right - left) * (minute / strip.lengthMin).coerceIn(0.0, 1.0).toFloat()

    fun draw(on: DrawScope, measurer: TextMeasurer, density: Density) = with(on) {
        unknown()
        band()
        window()
        strip.elapsedMin?.let { elapsed ->
            drawRect(ink.ink, Offset(left, bottom - run), Size(x(elapsed) - left, run))
        }
        strip.marks.forEach { mark(it) }
        drawRect(ink.ink, Offset(left, top), Size(right - left, height), style = Stroke(0.35f * mm))
        scale()
        for (figure in figures(measurer, density)) drawText(figure.line, ink.ink, figure.at)
        strip.elapsedMin?.let { now(it) }
        Unit
    }

    /** Dots where no cast has been long enough to tell. */
    private fun DrawScope.unknown() {
        notTried(Rect(x(strip.knownToMin ?: return), top, right, bottom), ink, mm)
    }

    /**
     * The near-best band: a bracket above with its ends drawn down, dashed where no cast was out so long; open to the right if
     * there is no time to wind in by. A record that says too little for a band has only the time to recast by.
     */
    private fun DrawScope.band() {
        val hold = strip.holdMin
        val recast = strip.recastMin
        if (hold == null && recast == null) return
        val to = x(recast ?: strip.lengthMin)
        val from = if (hold != null) x(hold) else to
        val edge = 0.4f * mm
        val line = bracket * 0.45f
        val known = (strip.knownToMin?.let { x(it) } ?: to).coerceIn(from, to)
        drawLine(ink.ink, Offset(from, line), Offset(known, line), edge)
        drawLine(ink.ink, Offset(known, line), Offset(to, line), edge, pathEffect = untried(mm))
        if (hold != null) drawLine(ink.ink, Offset(from, 0f), Offset(from, bottom), edge)
        if (recast != null) drawLine(ink.ink, Offset(to, 0f), Offset(to, bottom), edge)
    }

    /** Half of the bites come within this: a bar under the marks. */
    private fun DrawScope.window() {
        val window = strip.windowMin ?: return
        if (window.size != 2) return
        val y = bottom - run - 0.45f * mm
        drawLine(ink.ink, Offset(x(window[0]), y), Offset(x(window[1]), y), 0.5f * mm)
    }

    private fun DrawScope.mark(mark: StripMark) {
        val half = (1.05f * mm).coerceAtMost((height - run) * 0.36f)
        val floor = bottom - run - 0.8f * mm - half
        val y = (floor - mark.stack.toInt() * half * 1.35f).coerceAtLeast(top + half + 0.2f * mm)
        val x = x(mark.minute).coerceIn(left + half, right - half)
        when (mark.shape) {
            StripMarkShape.BITE -> shape(ink.ink, x, y - half, x + half, y, x, y + half, x - half, y)
            StripMarkShape.NO_BITE ->
                drawLine(ink.ink, Offset(x, y - half), Offset(x, y + half), 0.5f * mm)
            StripMarkShape.LINER ->
                shape(ink.ink, x, y - half, x + half, y + half * 0.8f, x - half, y + half * 0.8f, filled = false)
        }
    }

    /** A closed shape with an edge in the paper colour, so that close marks stay distinct. */
    private fun DrawScope.shape(colour: Color, vararg at: Float, filled: Boolean = true) {
        val path = Path().apply {
            moveTo(at[0], at[1])
            for (i in 2 until at.size step 2) lineTo(at[i], at[i + 1])
            close()
        }
        drawPath(path, ink.paper, style = Stroke(0.5f * mm))
        drawPath(path, if (filled) colour else ink.paper)
        if (!filled) drawPath(path, colour, style = Stroke(0.35f * mm))
    }

    private val length = strip.lengthMin.toInt()
    private val every = strip.figureEveryMin.toInt().coerceAtLeast(1)

    private fun DrawScope.scale() {
        val tick = if ((right - left) / length < 0.8f * mm) 5 else 1
        for (minute in 0..length step tick) {
            val x = x(minute.toDouble())
            val reach = if (minute % every == 0) ticks else if (minute % 5 == 0) ticks * 0.75f else ticks * 0.4f
            drawLine(ink.ink, Offset(x, bottom), Offset(x, bottom + reach), 0.25f * mm)
        }
    }

    /** The numbers below the tape; one that would touch the one before is left out, and its tick stays. */
    fun figures(measurer: TextMeasurer, density: Density): List<Label> = listing {
        val style = TextStyle(ink.ink, with(density) { figurePx.toSp() }, FontWeight.Bold, fontFamily = Face.words)
        var free = 0f
        for (minute in 0..length step every) {
            val figure = measurer.measure(minute.toString(), style)
            val at = (x(minute.toDouble()) - figure.size.width / 2f).coerceIn(0f, wide - figure.size.width)
            if (at < free) continue
            add(Label(figure, figurePx, Offset(at, high - figurePx * 0.1f - figure.firstBaseline)))
            free = at + figure.size.width + 0.5f * mm
        }
    }

    /** The present minute, in the accent colour; its flag makes it recognisable without colour. */
    private fun DrawScope.now(elapsed: Double) {
        val x = x(elapsed)
        drawLine(ink.accent, Offset(x, 0f), Offset(x, bottom + ticks), 0.7f * mm)
        val flag = Path().apply {
            moveTo(x - 1.1f * mm, 0f)
            lineTo(x + 1.1f * mm, 0f)
            lineTo(x, 1.6f * mm)
            close()
        }
        drawPath(flag, ink.accent)
        if (elapsed > strip.lengthMin) {
            val dashes = PathEffect.dashPathEffect(floatArrayOf(0.6f * mm, 0.6f * mm))
            drawLine(ink.accent, Offset(x - 2f * mm, top), Offset(x - 2f * mm, bottom), 0.5f * mm, pathEffect = dashes)
        }
    }
}

/** Dots where no cast was out so long, on the strip and behind a chart. */
internal fun DrawScope.notTried(within: Rect, ink: Ink, mm: Float) {
    val step = 1.3f * mm
    var column = 0
    var across = within.left + step
    while (across < within.right) {
        var down = within.top + if (column % 2 == 0) step * 0.5f else step
        while (down < within.bottom - 0.2f * mm) {
            drawCircle(ink.soft, 0.2f * mm, Offset(across, down))
            down += step
        }
        across += step
        column++
    }
}

/** Dashes of a bracket where no cast was out so long. */
internal fun untried(mm: Float): PathEffect = PathEffect.dashPathEffect(floatArrayOf(0.9f * mm, 0.7f * mm))
