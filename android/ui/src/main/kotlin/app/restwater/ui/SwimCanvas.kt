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
import androidx.compose.ui.graphics.drawscope.scale
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.text.TextMeasurer
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.drawText
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.unit.Density
import app.restwater.core.FillRole
import app.restwater.core.LabelRole
import app.restwater.core.LineRole
import app.restwater.core.MarkShape
import app.restwater.core.SwimScene

/** The swim as the core packed it: water, hatching, lines, marks, labels, in this order. */
@Composable
fun SwimCanvas(scene: SwimScene, modifier: Modifier = Modifier) {
    val ink = LocalInk.current
    val mm = LocalPxPerMm.current
    val measurer = textMeasurer()
    val density = LocalDensity.current
    Spacer(modifier.picture(listOf(scene, ink, mm, density)) { size -> SwimPicture(size, scene, ink, mm, measurer, density) })
}

private class SwimPicture(
    size: Size, private val scene: SwimScene, private val ink: Ink, private val mm: Float, private val measurer: TextMeasurer, density: Density,
) : Picture {
    private val fit = minOf(size.width / scene.widthPx, size.height / scene.heightPx)

    /** The labels in the scene's own pixels. */
    private val own = scene.labelText.indices.map { label(it, density) }

    override val labels = own.map { Label(it.line, it.em * fit, it.at * fit) }

    override val marks = scene.markShape.indices.map { i ->
        Rect(Offset(scene.markXy[2 * i], scene.markXy[2 * i + 1]) * fit, scene.markSize[i] * fit)
    }

    override val cut = own.indices.filter { own[it].line.size.width > scene.labelBox[4 * it + 2] + 1f }.joinToString(" ") { scene.labelText[it] }

    override fun draw(on: DrawScope) = on.scale(fit, Offset.Zero) { SwimPen(this, scene, ink, mm).draw(own) }

    private fun label(i: Int, density: Density): Label {
        val weight = if (scene.labelRole[i] == LabelRole.RANGE) FontWeight.Medium else FontWeight.Bold
        val colour = if (scene.labelRole[i] == LabelRole.NEXT) ink.paper else ink.ink
        val style = TextStyle(colour, with(density) { scene.labelSize[i].toSp() }, weight, fontFamily = Face.words)
        val line = measurer.measure(scene.labelText[i], style, softWrap = false, maxLines = 1)
        val (x, baseline) = scene.labelAt[2 * i] to scene.labelAt[2 * i + 1]
        return Label(line, scene.labelSize[i], Offset(x - line.size.width / 2f, baseline - line.firstBaseline))
    }
}

/** How much larger than a mark the blank behind it is. */
private const val HALO = 1.35f

private class SwimPen(private val on: DrawScope, private val scene: SwimScene, private val ink: Ink, private val mm: Float) {
    fun draw(labels: List<Label>) {
        parts(scene.fillXy, scene.fillStart) { i, path ->
            on.drawPath(path.apply { close() }, if (scene.fillRole[i] == FillRole.WATER) ink.water else ink.ink)
        }
        for (i in scene.hatchXy.indices.step(4)) {
            val at = scene.hatchXy
            on.drawLine(ink.ink, Offset(at[i], at[i + 1]), Offset(at[i + 2], at[i + 3]), scene.hatchWidth)
        }
        parts(scene.lineXy, scene.lineStart) { i, path -> line(scene.lineRole[i], scene.lineWidth[i], path) }
        // A blank behind each mark, or the hatching would obscure its shape; all blanks come first, so that none covers
        // a neighbour.
        scene.markShape.forEachIndexed { i, shape ->
            val at = Offset(scene.markXy[2 * i], scene.markXy[2 * i + 1])
            if (shape != MarkShape.NEXT_DOT) on.drawCircle(ink.paper, scene.markSize[i] * HALO, at)
        }
        scene.markShape.forEachIndexed { i, shape ->
            mark(shape, scene.markXy[2 * i], scene.markXy[2 * i + 1], scene.markSize[i])
        }
        labels.forEachIndexed { i, words -> label(i, words) }
    }

    /** Hands out each polyline or polygon of a packed pair of arrays. */
    private fun parts(xy: List<Float>, start: List<UInt>, each: (Int, Path) -> Unit) {
        for (part in 0 until start.size - 1) {
            val path = Path()
            for (point in start[part].toInt() until start[part + 1].toInt()) {
                val (x, y) = xy[2 * point] to xy[2 * point + 1]
                if (point == start[part].toInt()) path.moveTo(x, y) else path.lineTo(x, y)
            }
            each(part, path)
        }
    }

    private fun line(role: LineRole, width: Float, path: Path) {
        val colour = when (role) {
            LineRole.BAND, LineRole.RAY -> ink.soft
            LineRole.NEXT_RING -> ink.accent
            LineRole.HALO, LineRole.KEPT_BACK_INNER -> ink.paper
            else -> ink.ink
        }
        val dashes = when (role) {
            LineRole.RAY -> floatArrayOf(0.4f * mm, 0.8f * mm)
            LineRole.HAZARD_CLEAR -> floatArrayOf(1.2f * mm, 0.8f * mm)
            else -> null
        }
        val effect = dashes?.let { PathEffect.dashPathEffect(it) }
        on.drawPath(path, colour, style = Stroke(width, cap = StrokeCap.Round, pathEffect = effect))
    }

    private fun mark(shape: MarkShape, x: Float, y: Float, half: Float) {
        val edge = (half * 0.35f).coerceAtLeast(0.2f * mm)
        fun ring(vararg at: Float, close: Boolean = true) = Path().apply {
            moveTo(at[0], at[1])
            for (i in 2 until at.size step 2) lineTo(at[i], at[i + 1])
            if (close) close()
        }
        val diamond = ring(x, y - half, x + half, y, x, y + half, x - half, y)
        val square = ring(x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half)
        val cross = ring(x - half, y - half, x + half, y + half, close = false)
            .apply { moveTo(x + half, y - half); lineTo(x - half, y + half) }
        when (shape) {
            MarkShape.BITE_DIAMOND -> on.drawPath(diamond, ink.ink)
            MarkShape.LINER_TRIANGLE -> open(ring(x, y - half, x + half, y + half, x - half, y + half), edge)
            MarkShape.LOST_CROSS -> on.drawPath(cross, ink.ink, style = Stroke(edge * 1.3f))
            MarkShape.FEATURE_SQUARE -> open(square, edge)
            MarkShape.HAZARD_CROSS -> {
                open(diamond, edge)
                on.drawLine(ink.ink, Offset(x - half / 2, y), Offset(x + half / 2, y), edge)
                on.drawLine(ink.ink, Offset(x, y - half / 2), Offset(x, y + half / 2), edge)
            }
            MarkShape.NEXT_DOT -> on.drawCircle(ink.accent, half, Offset(x, y))
            MarkShape.OUT_NOW -> on.drawCircle(ink.ink, half, Offset(x, y))
            MarkShape.FED_GRAINS -> listOf(0f to -0.6f, -0.62f to 0.5f, 0.62f to 0.5f).forEach { (across, down) ->
                on.drawCircle(ink.ink, 0.38f * half, Offset(x + across * half, y + down * half))
            }
            MarkShape.SHOWN_RINGS -> listOf(0.95f, 0.4f).forEach { part ->
                on.drawCircle(ink.ink, part * half, Offset(x, y), style = Stroke(0.6f * edge))
            }
        }
    }

    private fun open(path: Path, edge: Float) {
        on.drawPath(path, ink.paper)
        on.drawPath(path, ink.ink, style = Stroke(edge))
    }

    private fun label(i: Int, words: Label) {
        val (left, top, width, height) = scene.labelBox.subList(4 * i, 4 * i + 4)
        val next = scene.labelRole[i] == LabelRole.NEXT
        // Numbers have a blank behind them too, or the hatching would run through them.
        val paper = scene.labelBoxed[i] || scene.labelRole[i] == LabelRole.COUNT || scene.labelRole[i] == LabelRole.RANGE
        if (paper) on.drawRect(if (next) ink.accent else ink.paper, Offset(left, top), Size(width, height))
        if (scene.labelBoxed[i] && !next) {
            on.drawRect(ink.ink, Offset(left, top), Size(width, height), style = Stroke(0.2f * mm))
        }
        on.drawText(words.line, topLeft = words.at)
    }
}
