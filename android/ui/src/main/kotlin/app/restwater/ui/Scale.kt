package app.restwater.ui

import androidx.compose.foundation.layout.Spacer
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.CornerRadius
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.drawText
import app.restwater.core.Axis
import app.restwater.core.LeafSpan
import app.restwater.core.Rect
import androidx.compose.ui.geometry.Rect as InkRect

/** Height of a scale: what it counts in letters of [label], its figures in those of [em], and the strokes below them. */
internal fun scaleHeight(em: Float, label: Float, mm: Float): Double = 1.3 * (label + em) + 2.2 * mm

/** The axis that the ranges below it are drawn on: what it counts, its figures, and a stroke for each. */
@Composable
internal fun LeafScale(axis: Axis, em: Float, label: Float, place: Rect) {
    val (ink, mm) = LocalInk.current to LocalPxPerMm.current
    val (measurer, density) = textMeasurer() to LocalDensity.current
    Spacer(
        Modifier.at(place).tagged("scale").semantics { contentDescription = axis.label }.picture(listOf(axis, em, label, ink, mm, density)) { size ->
            fun letters(em: Float) = Lettering(measurer, density, ink, em, size.width)
            ScalePicture(axis, size, ink, mm, letters(label), letters(em))
        },
    )
}

/** A range with its ends and its middle on that axis. */
@Composable
internal fun LeafRange(span: LeafSpan, axis: Axis, place: Rect) {
    val (ink, mm) = LocalInk.current to LocalPxPerMm.current
    Spacer(Modifier.at(place).tagged("range").picture(listOf(span, axis, ink, mm)) { size -> RangePicture(span, axis, size, ink, mm) })
}

/** The horizontal position of a value of the axis on a page of this width. */
private fun Axis.x(at: Double, width: Float, mm: Float): Float {
    val (left, right) = 0.3f * mm to width - 2.2f * mm
    return left + (right - left) * ((at - from) / (to - from)).coerceIn(0.0, 1.0).toFloat()
}

private class ScalePicture(
    private val axis: Axis, private val size: Size, private val ink: Ink, private val mm: Float, name: Lettering, letters: Lettering,
) : Picture {
    private val wide = size.width

    override val labels: List<Label> = listing {
        add(name.of(axis.label).at(0f, 0f))
        var free = 0f
        for (tick in axis.ticks) {
            val figure = letters.of(tick.label)
            val from = (axis.x(tick.at, wide, mm) - figure.width / 2f).coerceIn(0f, (wide - figure.width).coerceAtLeast(0f))
            if (from < free) continue
            add(figure.at(from, 1.3f * name.px))
            free = from + figure.width + mm
        }
    }

    override val marks = axis.ticks.map { tick -> axis.x(tick.at, size.width, mm).let { x -> InkRect(x, size.height - 1.6f * mm, x, size.height) } }

    override fun draw(on: DrawScope) = with(on) {
        for (label in labels) drawText(label.line, ink.ink, label.at)
        for (mark in marks) drawLine(ink.soft, mark.topLeft, mark.bottomRight, 0.3f * mm)
    }
}

private class RangePicture(private val span: LeafSpan, private val axis: Axis, private val size: Size, private val ink: Ink, private val mm: Float) : Picture {
    override val labels get() = emptyList<Label>()
    private val y = size.height / 2
    private val low = axis.x(span.low, size.width, mm)
    private val high = axis.x(span.high, size.width, mm)

    override val marks = listOf(InkRect(low, y - mm, high, y + mm))

    override fun draw(on: DrawScope): Unit = with(on) {
        for (tick in axis.ticks) {
            val x = axis.x(tick.at, size.width, mm)
            drawLine(ink.soft, Offset(x, y - 1.4f * mm), Offset(x, y + 1.4f * mm), (if (tick.at == axis.from) 0.3f else 0.12f) * mm)
        }
        fun stroke(from: Offset, to: Offset) = drawLine(ink.ink, from, to, 0.5f * mm)
        stroke(Offset(low, y), Offset(high, y))
        stroke(Offset(low, y - mm), Offset(low, y + mm))
        if (span.beyond) {
            val tip = Offset(high + 1.6f * mm, y)
            stroke(Offset(high, y), tip)
            stroke(tip, Offset(high + 0.4f * mm, y - mm))
            stroke(tip, Offset(high + 0.4f * mm, y + mm))
        } else {
            stroke(Offset(high, y - mm), Offset(high, y + mm))
        }
        val at = span.at ?: return@with
        val side = 1.9f * mm
        drawRoundRect(ink.ink, Offset(axis.x(at, size.width, mm) - side / 2, y - side / 2), Size(side, side), CornerRadius(0.3f * mm))
    }
}
