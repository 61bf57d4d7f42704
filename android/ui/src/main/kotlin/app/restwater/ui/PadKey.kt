package app.restwater.ui

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.clickable
import androidx.compose.foundation.interaction.MutableInteractionSource
import androidx.compose.foundation.interaction.collectIsFocusedAsState
import androidx.compose.foundation.interaction.collectIsPressedAsState
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Spacer
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.padding
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.CornerRadius
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.PathEffect
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.disabled
import androidx.compose.ui.semantics.role
import androidx.compose.ui.semantics.selected
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.semantics.traversalIndex
import androidx.compose.ui.unit.dp
import app.restwater.core.KeyWeight
import app.restwater.core.Rect
import app.restwater.core.Said

/** What a key looks like and says. */
data class KeyFace(
    val label: String,
    val sub: String?,
    val spoken: String,
    val solid: Boolean = false,
    val enabled: Boolean = true,
    /** Of a choice, whether it is in force: drawn with a head of ink and a tick in it, and told to a screen reader. */
    val chosen: Boolean? = null,
)

/** Whether a key is chosen, if it is; a key that can't be chosen says nothing of that. */
internal fun chosenOrNot(weight: KeyWeight) = if (weight == KeyWeight.CHOSEN) true else null

/** An outlined key of one word. */
fun Said.face() = KeyFace(label, null, spoken)

/**
 * A key of the pad. While a thumb is on it, the whole key swaps ink and paper, so that with numb fingers one still sees
 * that it was touched. It acts when the thumb lifts.
 */
@Composable
fun PadKey(
    face: KeyFace,
    tag: String,
    labelPx: Float,
    subPx: Float,
    modifier: Modifier = Modifier,
    order: Float = 0f,
    onTap: () -> Unit,
) {
    val touch = remember { MutableInteractionSource() }
    val pressed by touch.collectIsPressedAsState()
    val focused by touch.collectIsFocusedAsState()
    val solid = face.solid != pressed
    val colours = LocalInk.current
    val mm = LocalPxPerMm.current
    val text = if (solid) colours.paper else if (face.enabled) colours.ink else colours.soft
    Box(
        modifier
            .tagged(tag)
            .clickable(touch, indication = null, enabled = face.enabled, role = Role.Button, onClick = onTap)
            .semantics(mergeDescendants = true) {
                contentDescription = face.spoken
                role = Role.Button
                traversalIndex = order
                face.chosen?.let { selected = it }
                forTests {
                    this[SolidInk] = solid
                    this[TickedHead] = face.chosen == true
                    this[FocusRing] = focused
                }
                if (!face.enabled) disabled()
            },
    ) {
        Canvas(Modifier.fillMaxSize()) {
            val edge = (if (pressed) 0.9f else 0.5f) * mm
            val corner = CornerRadius(2f * mm)
            val inset = Offset(edge / 2, edge / 2)
            val inner = Size(size.width - edge, size.height - edge)
            if (solid) drawRoundRect(colours.ink, cornerRadius = corner)
            val dashes = if (face.enabled) null else PathEffect.dashPathEffect(floatArrayOf(1.2f * mm, 1.2f * mm))
            drawRoundRect(
                if (face.enabled) colours.ink else colours.soft, inset, inner, corner,
                Stroke(if (face.enabled) edge else 0.3f * mm, pathEffect = dashes),
            )
            if (face.chosen == true) tickedHead(text, if (solid) colours.ink else colours.paper, mm)
            if (focused) focusRing(colours, solid, mm)
        }
        val density = LocalDensity.current
        val side = with(density) { (KEY_EDGE_MM * mm).toDp() }
        val measurer = textMeasurer()
        val sub = face.sub?.takeIf { it.isNotBlank() }
        val words = listOfNotNull(face.label, sub)
        Spacer(
            Modifier.fillMaxSize().padding(side).padding(top = if (face.chosen == true) with(density) { (HEAD_MM * mm).toDp() } else 0.dp).keyWords(words + listOf(labelPx, subPx, density, mm), text, words.joinToString(" ")) { width, height ->
                measurer.onKey(face.label, sub, labelPx, subPx, width, height, density, mm)
            },
        )
    }
}

/**
 * The focus of a keyboard or a switch: a ring inside the edge, in the paper colour on a solid key, so that it is
 * visible on both kinds.
 */
private fun DrawScope.focusRing(colours: Ink, solid: Boolean, mm: Float) {
    val inset = 1.1f * mm
    drawRoundRect(
        if (solid) colours.paper else colours.accent, Offset(inset, inset), Size(size.width - 2 * inset, size.height - 2 * inset),
        CornerRadius(1.2f * mm), Stroke(0.7f * mm),
    )
}

/**
 * The head of a key that is chosen: a bar at its upper edge with a tick in it. A key in solid ink is the one to press next, so
 * that what is in force has to look different.
 */
private fun DrawScope.tickedHead(bar: Color, tick: Color, mm: Float) {
    val (edge, high) = Pair(0.5f * mm, (HEAD_MM + 0.4f) * mm)
    drawRoundRect(bar, Offset(0f, 0f), Size(size.width, high), CornerRadius(2f * mm))
    drawRect(bar, Offset(0f, high / 2), Size(size.width, high / 2))
    val middle = Offset(size.width / 2, high / 2)
    val path = Path().apply {
        moveTo(middle.x - 1.3f * mm, middle.y)
        lineTo(middle.x - 0.4f * mm, middle.y + 0.8f * mm)
        lineTo(middle.x + 1.4f * mm, middle.y - 0.8f * mm)
    }
    drawPath(path, tick, style = Stroke(edge))
}

/** The part of a key that its label may fill, from the key's corner. */
fun labelPlace(key: Rect, hasSub: Boolean, pxPerMm: Float): Rect {
    val edge = 2.0 * KEY_EDGE_MM * pxPerMm
    val height = (key.height - edge) * if (hasSub) LABEL_SHARE.toDouble() else 1.0
    return Rect(0.0, 0.0, key.width - edge, height)
}

/** Between the edge of a key and its words, mm. */
private const val KEY_EDGE_MM = 1f

/** By how much the words of a chosen key are lower, below its head, mm. */
private const val HEAD_MM = 2f

