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

/** Texts below each other, centred in a place [high] px high if there is room left over. */
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

/** The words of a key. The smaller line is drawn in the lower part of the key if it fits there, otherwise right below the label. */
internal fun Modifier.keyWords(key: List<Any>, color: Color, cut: String, fit: (width: Int, height: Int) -> List<Fitted>): Modifier =
    picture(key + listOf(color)) { size ->
        val (width, height) = size.width.toInt() to size.height.toInt()
        KeyWords(fit(width, height), color, size.height, cut)
    }

private class KeyWords(words: List<Fitted>, private val color: Color, high: Float, text: String) : Picture {
    override val labels: List<Label>
    override val marks: List<Rect> get() = emptyList()
    override val cut = if (words.all { it.whole }) "" else text

    init {
        val label = words.first().lines.size.height
        val sub = words.getOrNull(1)
        val share = if (sub == null) high else (high * LABEL_SHARE).coerceAtMost(high - sub.lines.size.height)
        val tops = listOf(((share - label) / 2f).coerceAtLeast(0f), share.coerceAtLeast(label.toFloat()))
        labels = words.mapIndexed { i, text -> Label(text.lines, text.em, Offset(0f, tops[i])) }
    }

    override fun draw(on: DrawScope) = labels.forEach { on.drawText(it.line, color, it.at) }
}
