package app.restwater.ui

import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.SemanticsPropertyKey
import androidx.compose.ui.semantics.SemanticsPropertyReceiver
import androidx.compose.ui.text.TextLayoutResult

/** Whether tests can look at the screens. In a release they can't: the shrinker is told so (proguard-rules.pro). */
internal fun tested() = true

/** A name by which a test finds this. */
internal inline fun Modifier.tagged(tag: String): Modifier = if (tested()) testTag(tag) else this

/** Says something of a drawing that only tests ask for: where its texts lie and what of them does not show. */
internal inline fun SemanticsPropertyReceiver.forTests(say: SemanticsPropertyReceiver.() -> Unit) {
    if (tested()) say()
}

/** Whether a key is drawn in solid ink at this moment. */
val SolidInk = SemanticsPropertyKey<Boolean>("SolidInk")

/** Whether a key is drawn with the ring of the focus. */
val FocusRing = SemanticsPropertyKey<Boolean>("FocusRing")

/** What the labels of a picture must not cover, px in it. */
val Marks = SemanticsPropertyKey<List<Rect>>("Marks")

/** Of drawn text: what of it does not show whole, empty where all of it does. */
val CutOff = SemanticsPropertyKey<String>("CutOff")

/** The texts as they are drawn, labels of pictures among them. */
val Drawn = SemanticsPropertyKey<List<DrawnText>>("Drawn")

/** A text as it is drawn: its size, and the place of its letters in what draws it, px. */
class DrawnText(val text: String, val em: Float, val place: Rect)

/** A text whose lines stand at this point. */
internal fun drawnText(lines: TextLayoutResult, em: Float, at: Offset): DrawnText {
    val rows = 0 until lines.lineCount
    val (left, right) = rows.minOf { lines.getLineLeft(it) } to rows.maxOf { lines.getLineRight(it) }
    // From the height of a capital to the depth of a "g": the lead around the lines may overlap.
    val (top, bottom) = lines.firstBaseline - CAP_OF_EM * em to lines.lastBaseline + DEPTH_OF_EM * em
    return DrawnText(lines.layoutInput.text.text, em, Rect(at.x + left, at.y + top, at.x + right, at.y + bottom))
}

/** How far a "g" reaches below the line, as a share of the em. */
private const val DEPTH_OF_EM = 0.2f
