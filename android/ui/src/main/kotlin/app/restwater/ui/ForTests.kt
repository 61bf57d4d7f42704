package app.restwater.ui

import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.SemanticsPropertyKey
import androidx.compose.ui.semantics.SemanticsPropertyReceiver
import androidx.compose.ui.text.TextLayoutResult

/** Whether tests can inspect the screens. In a release they can't: the shrinker assumes false (proguard-rules.pro). */
internal fun tested() = true

/** Sets a tag by which a test finds this. */
internal inline fun Modifier.tagged(tag: String): Modifier = if (tested()) testTag(tag) else this

/** Adds information about a drawing for tests only: where its texts are and what is cut off. */
internal inline fun SemanticsPropertyReceiver.forTests(say: SemanticsPropertyReceiver.() -> Unit) {
    if (tested()) say()
}

/** Whether a key is drawn in solid ink now. */
val SolidInk = SemanticsPropertyKey<Boolean>("SolidInk")

/** Whether a key is drawn with the focus ring. */
val FocusRing = SemanticsPropertyKey<Boolean>("FocusRing")

/** Areas that the labels of a picture must not cover, in its pixels. */
val Marks = SemanticsPropertyKey<List<Rect>>("Marks")

/** The part of a drawn text that is cut off, or empty if none is. */
val CutOff = SemanticsPropertyKey<String>("CutOff")

/** The texts as drawn, including labels of pictures. */
val Drawn = SemanticsPropertyKey<List<DrawnText>>("Drawn")

/** A drawn text: its size, and the place of its letters in what draws it, in pixels. */
class DrawnText(val text: String, val em: Float, val place: Rect)

/** A text whose lines begin at this point, with plain hyphens. */
internal fun drawnText(lines: TextLayoutResult, em: Float, at: Offset): DrawnText {
    val rows = 0 until lines.lineCount
    val (left, right) = rows.minOf { lines.getLineLeft(it) } to rows.maxOf { lines.getLineRight(it) }
    // From the top of a capital to the bottom of a "g": the leading around the lines may overlap.
    val (top, bottom) = lines.firstBaseline - CAP_OF_EM * em to lines.lastBaseline + DEPTH_OF_EM * em
    return DrawnText(lines.layoutInput.text.text.replace('\u2011', '-'), em, Rect(at.x + left, at.y + top, at.x + right, at.y + bottom))
}

/** How far a "g" reaches below the line, as a share of the em. */
private const val DEPTH_OF_EM = 0.2f
