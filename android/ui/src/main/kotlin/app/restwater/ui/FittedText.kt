package app.restwater.ui

import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.drawscope.DrawScope
import androidx.compose.ui.text.drawText

/**
 * Draws texts below each other, fitted into their place: [fit] is called once the place is measured, and again when
 * [key] or the place has changed. Nothing is composed for it. [cut] names the texts that are cut off.
 */
internal fun Modifier.fitted(
    key: List<Any>, color: Color, middle: Boolean, cut: (List<Fitted>) -> String, fit: (width: Int, height: Int) -> List<Fitted>,
): Modifier = picture(key + listOf(color, middle)) { size ->
    val texts = fit(size.width.toInt(), size.height.toInt())
    FittedTexts(texts, color, if (middle) size.height else 0f, cut)
}

/** Texts below each other, centred in a place [high] px high if that is higher than they are. */
private class FittedTexts(
    private val texts: List<Fitted>, private val color: Color, high: Float, private val cutOf: (List<Fitted>) -> String,
) : Picture {
    override val labels: List<Label>
    override val marks: List<Rect> get() = emptyList()
    override val cut get() = if (texts.isEmpty()) "" else cutOf(texts)

    init {
        var top = ((high - texts.sumOf { it.lines.size.height }) / 2f).coerceAtLeast(0f)
        labels = texts.map { text -> Label(text.lines, text.em, Offset(0f, top)).also { top += text.lines.size.height } }
    }

    override fun draw(on: DrawScope) = labels.forEach { on.drawText(it.line, color, it.at) }
}
