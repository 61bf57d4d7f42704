package app.restwater.ui

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.font.FontWeight
import app.restwater.core.BankLayout
import app.restwater.core.Rect

/** One line of a list: its text and details below, its key, and what a screen reader says of either. */
internal class ListLine(
    val says: String, val more: String, val spoken: String, val key: String, val keySpoken: String, val tag: String, val onTap: () -> Unit,
)

/**
 * A list of lines, each with a key of 15 mm on the side of the thumb; the pager turns pages if they don't all fit. Lines of large
 * text share out the height of their page.
 */
@Composable
internal fun Lines(lines: List<ListLine>, place: Rect, layout: BankLayout, leftHanded: Boolean) {
    val mm = LocalPxPerMm.current
    val (height, gap) = 15.0 * mm to 3.0 * mm
    val perPage = ((place.height + gap) / (height + gap)).toInt().coerceAtLeast(1)
    val pages = (lines.size + perPage - 1) / perPage
    var turned by rememberSaveable(lines.size, perPage) { mutableStateOf(0) }
    val page = if (pages == 0) 0 else turned % pages
    val shown = lines.drop(page * perPage).take(perPage)
    val high = if (layout.apart && shown.isNotEmpty()) ((place.height + gap) / shown.size - gap).coerceIn(height, HIGHEST_MM * mm) else height
    shown.forEachIndexed { i, line -> LineAt(line, place.copy(top = place.top + i * (high + gap), height = high), layout, leftHanded) }
    Pager(page, pages, layout) { turned = it }
}

@Composable
private fun LineAt(line: ListLine, place: Rect, layout: BankLayout, leftHanded: Boolean) {
    val mm = LocalPxPerMm.current
    val ink = LocalInk.current
    val key = keyPlace(place, mm, leftHanded)
    val text = place.copy(left = if (leftHanded) key.left + key.width + 2 * mm else place.left, width = place.width - key.width - 2 * mm)
    val body = layout.text.body.toFloat()
    Box(Modifier.at(text).tagged("says-${line.tag}").semantics { contentDescription = line.spoken }) {
        val heights = heights()
        val (says, more) = heights.of(line.says, body, text.width, FontWeight.Bold) to heights.of(line.more, body * 0.9f, text.width)
        val least = 15.0 * mm
        // Neither has less than at 100 %; beyond that each has its share of the lines.
        val first = if (line.more.isEmpty()) text.height else (text.height * says / (says + more)).coerceIn(least * 0.42, text.height - least * 0.58)
        FitText(line.says, body, ink.ink, Modifier.at(Rect(0.0, 0.0, text.width, first)), FontWeight.Bold)
        if (line.more.isNotEmpty()) FitText(line.more, body * 0.9f, ink.ink, Modifier.at(Rect(0.0, first, text.width, text.height - first)))
    }
    val face = KeyFace(line.key, null, line.keySpoken)
    PadKey(face, line.tag, layout.text.secondary.toFloat() * 0.9f, 0f, Modifier.at(key), onTap = line.onTap)
}

private fun keyPlace(place: Rect, mm: Float, leftHanded: Boolean): Rect {
    val width = KEY_MM * mm
    return place.copy(left = if (leftHanded) place.left else place.left + place.width - width, width = width)
}

/** Sentences one below the other, each with as much room as it needs. */
@Composable
internal fun Sentences(sentences: List<String>, place: Rect, layout: BankLayout, tag: String) {
    val all = sentences.joinToString("\n")
    Box(Modifier.at(place).tagged(tag).semantics { contentDescription = all }) {
        FitText(all, layout.text.body.toFloat(), LocalInk.current.ink, Modifier.fillMaxSize(), middle = false)
    }
}

private const val KEY_MM = 21.0

/** A line of large text is at most so high. */
private const val HIGHEST_MM = 26.0
