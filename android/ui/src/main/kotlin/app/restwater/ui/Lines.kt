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
import app.restwater.core.lineSays
import app.restwater.core.listPage

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
    fun page(number: Int) = listPage(place, mm.toDouble(), lines.size.toUInt(), number.toUInt(), layout.apart)
    val pages = page(0).pages.toInt()
    var turned by rememberSaveable(lines.size, pages) { mutableStateOf(0) }
    val open = page(turned)
    open.places.zip(lines.drop(open.first.toInt())) { at, line -> LineAt(line, at, layout, leftHanded) }
    Pager(turned, pages, layout) { turned = it }
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
        val first = if (line.more.isEmpty()) text.height else lineSays(text.height, mm.toDouble(), says, more)
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
