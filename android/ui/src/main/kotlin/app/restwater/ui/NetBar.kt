package app.restwater.ui

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.font.FontWeight
import app.restwater.core.NetView
import app.restwater.core.NetWarning
import app.restwater.core.Rect

/** Heights of the parts of a net, px: its name and weight, its bar if it has a limit, the limit, the warning. */
internal class NetShape(val heading: Double, val bar: Double, val limit: Double, val says: Double) {
    val height get() = heading + bar + limit + says
}

internal fun Heights.net(net: NetView, body: Float, width: Double, mm: Float): NetShape {
    val gap = body * NET_GAP
    fun part(text: String, em: Float, wide: Double, weight: FontWeight) = of(text, em, wide, weight).let { if (it > 0.0) it + gap else 0.0 }
    val beside = width - SIGN_MM * mm
    val bar = if (net.shares.isEmpty()) 0.0 else body * BAR
    return NetShape(
        part(net.heading, body * HEADING, beside, FontWeight.Bold), bar, part(net.limit, body * LIMIT, width, FontWeight.Medium),
        part(net.says, body, beside, FontWeight.Bold),
    )
}

/** A keepnet: its weight in words, and as a bar up to its limit, with the uncertain range below it. */
@Composable
fun NetBar(net: NetView, tag: String, place: Rect, body: Float) {
    val ink = LocalInk.current
    val mm = LocalPxPerMm.current
    val shape = heights().net(net, body, place.width, mm)
    // All parts change their height together with the place.
    val share = place.height / shape.height
    val (heading, bar) = shape.heading * share to shape.bar * share
    val (limit, warned) = shape.limit * share to shape.says * share
    Box(Modifier.at(place).tagged(tag).semantics { contentDescription = net.spoken }) {
        val sign = SIGN_MM * mm.toDouble()
        Canvas(Modifier.at(Rect(0.0, 0.0, sign, heading))) { if (net.inUse) arrow(ink, mm) }
        FitText(net.heading, body * HEADING, ink.ink, Modifier.at(Rect(sign, 0.0, place.width - sign, heading)), FontWeight.Bold)
        if (net.shares.size == 3) {
            Canvas(Modifier.at(Rect(0.0, heading, place.width, bar))) { bar(net, ink, mm) }
        }
        if (limit > 0) FitText(net.limit, body * LIMIT, ink.ink, Modifier.at(Rect(0.0, heading + bar, place.width, limit)))
        if (warned > 0) {
            val low = Rect(0.0, place.height - warned, place.width, warned)
            Canvas(Modifier.at(low.copy(width = sign))) { warning(net.warning, ink, mm) }
            FitText(net.says, body, ink.ink, Modifier.at(low.copy(left = sign, width = low.width - sign)), FontWeight.Bold)
        }
    }
}

/** The next fish goes here. */
private fun DrawScope.arrow(ink: Ink, mm: Float) {
    val (y, r) = size.height / 2 to 1.1f * mm
    drawPath(Path().apply { moveTo(0f, y - r); lineTo(2f * r, y); lineTo(0f, y + r); close() }, ink.accent)
}

/** An open triangle near the limit, a solid one at the limit. */
private fun DrawScope.warning(warning: NetWarning, ink: Ink, mm: Float) {
    val (x, y, r) = Triple(1.4f * mm, size.height / 2, 1.2f * mm)
    val path = Path().apply { moveTo(x - r, y + r); lineTo(x, y - r); lineTo(x + r, y + r); close() }
    if (warning == NetWarning.AT_LIMIT) drawPath(path, ink.ink) else drawPath(path, ink.ink, style = Stroke(0.35f * mm))
}

/** From 0 to a tenth beyond the limit; a stroke at the limit and at 80 % of it. */
private fun DrawScope.bar(net: NetView, ink: Ink, mm: Float) {
    val (top, height) = size.height * 0.06f to size.height * 0.52f
    val edge = 0.3f * mm
    fun x(share: Double) = (share.coerceIn(0.0, END) / END).toFloat() * (size.width - edge) + edge / 2
    drawRect(ink.water, Offset(0f, top), Size(x(1.0), height))
    drawRect(ink.ink, Offset(0f, top + height * 0.18f), Size(x(net.shares[1]), height * 0.64f))
    drawRect(ink.ink, Offset(edge / 2, top), Size(x(1.0) - edge / 2, height), style = Stroke(edge))
    drawLine(ink.soft, Offset(x(NEAR), top - height * 0.15f), Offset(x(NEAR), top + height * 1.15f), edge)
    drawLine(ink.ink, Offset(x(1.0), 0f), Offset(x(1.0), size.height * 0.68f), 2 * edge)
    val (low, high) = x(net.shares[0]) to x(net.shares[2])
    if (high - low < mm) return
    // The range is drawn below the bar, where ink can be seen.
    val y = size.height * 0.83f
    drawLine(ink.ink, Offset(low, y), Offset(high, y), 0.45f * mm)
    for (end in listOf(low, high)) drawLine(ink.ink, Offset(end, y - size.height * 0.14f), Offset(end, y + size.height * 0.14f), 0.45f * mm)
}

/** Width of the sign before a text, mm. */
private const val SIGN_MM = 3.5f

/** Of the plain text's size: the heading, the limit, the height of the bar, and what is between two parts. */
private const val HEADING = 1.05f
private const val LIMIT = 0.9f
private const val BAR = 1.3
private const val NET_GAP = 0.25

private const val NEAR = 0.8
private const val END = 1.1
