package app.restwater.ui

import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.drawscope.ContentDrawScope
import androidx.compose.ui.layout.Measurable
import androidx.compose.ui.layout.MeasureResult
import androidx.compose.ui.layout.MeasureScope
import androidx.compose.ui.node.DrawModifierNode
import androidx.compose.ui.node.LayoutModifierNode
import androidx.compose.ui.node.ModifierNodeElement
import androidx.compose.ui.node.SemanticsModifierNode
import androidx.compose.ui.node.invalidateSemantics
import androidx.compose.ui.platform.InspectorInfo
import androidx.compose.ui.semantics.SemanticsPropertyReceiver
import androidx.compose.ui.text.drawText
import androidx.compose.ui.unit.Constraints

/**
 * Draws texts below each other, fitted into the place they get: [fit] is asked once the place is measured, and again when
 * [key] or the place has changed. Nothing is composed for it. [cut] says what does not show whole.
 */
internal fun Modifier.fitted(
    key: List<Any>, color: Color, middle: Boolean, cut: (List<Fitted>) -> String, fit: (width: Int, height: Int) -> List<Fitted>,
): Modifier = this then FittedElement(key, color, middle, cut, fit)

private class FittedElement(
    val key: List<Any>, val color: Color, val middle: Boolean, val cut: (List<Fitted>) -> String, val fit: (Int, Int) -> List<Fitted>,
) : ModifierNodeElement<FittedNode>() {
    override fun create() = FittedNode(this)

    override fun update(node: FittedNode) {
        node.what = this
    }

    // The two functions follow from the key.
    override fun equals(other: Any?) = other is FittedElement && other.key == key && other.color == color && other.middle == middle

    override fun hashCode() = key.hashCode()

    override fun InspectorInfo.inspectableProperties() {
        name = "fitted"
        properties["key"] = key
    }
}

private class FittedNode(var what: FittedElement) : Modifier.Node(), LayoutModifierNode, DrawModifierNode, SemanticsModifierNode {
    private var fittedTo: Triple<List<Any>, Int, Int>? = null
    private var fitted: List<Fitted> = emptyList()

    override fun MeasureScope.measure(measurable: Measurable, constraints: Constraints): MeasureResult {
        val (width, height) = constraints.maxWidth to constraints.maxHeight
        val place = Triple(what.key, width, height)
        if (place != fittedTo) {
            fittedTo = place
            fitted = what.fit(width, height)
            invalidateSemantics()
        }
        val placed = measurable.measure(Constraints.fixed(width, height))
        return layout(width, height) { placed.place(0, 0) }
    }

    /** Each text with the height at which it begins in a place so high. */
    private fun placed(height: Float): List<Pair<Fitted, Offset>> {
        var top = if (what.middle) ((height - fitted.sumOf { it.lines.size.height }) / 2f).coerceAtLeast(0f) else 0f
        return fitted.map { text -> (text to Offset(0f, top)).also { top += text.lines.size.height } }
    }

    override fun ContentDrawScope.draw() {
        for ((text, at) in placed(size.height)) drawText(text.lines, what.color, at)
    }

    override val shouldClearDescendantSemantics get() = true

    override fun SemanticsPropertyReceiver.applySemantics() {
        this[CutOff] = if (fitted.isEmpty()) "" else what.cut(fitted)
        this[Drawn] = placed(fittedTo?.third?.toFloat() ?: 0f).map { (text, at) -> drawnText(text.lines, text.em, at) }
    }
}
