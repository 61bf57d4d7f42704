package app.restwater.ui

import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.drawscope.ContentDrawScope
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.layout.Measurable
import androidx.compose.ui.layout.MeasureResult
import androidx.compose.ui.layout.MeasureScope
import androidx.compose.ui.node.DrawModifierNode
import androidx.compose.ui.node.LayoutModifierNode
import androidx.compose.ui.node.ModifierNodeElement
import androidx.compose.ui.node.SemanticsModifierNode
import androidx.compose.ui.node.invalidateDraw
import androidx.compose.ui.node.invalidateMeasurement
import androidx.compose.ui.node.invalidateSemantics
import androidx.compose.ui.platform.InspectorInfo
import androidx.compose.ui.semantics.SemanticsPropertyReceiver
import androidx.compose.ui.text.TextLayoutResult
import androidx.compose.ui.unit.Constraints

/** A line of text in a picture, its size, and its upper left corner. */
internal class Label(val line: TextLayoutResult, val em: Float, val at: Offset)

/** A drawing whose labels are placed before it is drawn. */
internal interface Picture {
    val labels: List<Label>

    /** Symbols that a label must not cover. */
    val marks: List<Rect>

    /** The labels that are cut off. */
    val cut: String get() = ""

    fun draw(on: DrawScope)
}

/** Draws a picture made for its place; it is made again when [key] or the place has changed. */
internal fun Modifier.picture(key: List<Any>, make: (Size) -> Picture): Modifier = this then PictureElement(key, make)

private class PictureElement(val key: List<Any>, val make: (Size) -> Picture) : ModifierNodeElement<PictureNode>() {
    override fun create() = PictureNode(this)

    override fun update(node: PictureNode) {
        node.what = this
        node.invalidateMeasurement()
        node.invalidateDraw()
    }

    // The key determines how it is made.
    override fun equals(other: Any?) = other is PictureElement && other.key == key

    override fun hashCode() = key.hashCode()

    override fun InspectorInfo.inspectableProperties() {
        name = "picture"
    }
}

private class PictureNode(var what: PictureElement) : Modifier.Node(), LayoutModifierNode, DrawModifierNode, SemanticsModifierNode {
    private var madeFor: Pair<List<Any>, Size>? = null
    private var picture: Picture? = null

    override fun MeasureScope.measure(measurable: Measurable, constraints: Constraints): MeasureResult {
        val (width, height) = constraints.maxWidth to constraints.maxHeight
        val place = what.key to Size(width.toFloat(), height.toFloat())
        if (place != madeFor) {
            madeFor = place
            picture = what.make(place.second)
            invalidateSemantics()
        }
        val placed = measurable.measure(Constraints.fixed(width, height))
        return layout(width, height) { placed.place(0, 0) }
    }

    override fun ContentDrawScope.draw() {
        picture?.draw(this)
        drawContent()
    }

    override fun SemanticsPropertyReceiver.applySemantics() = forTests {
        val picture = picture ?: return@forTests
        this[CutOff] = picture.cut
        this[Drawn] = picture.labels.map { drawnText(it.line, it.em, it.at) }
        this[Marks] = picture.marks
    }
}
