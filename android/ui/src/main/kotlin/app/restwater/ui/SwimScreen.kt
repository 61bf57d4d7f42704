package app.restwater.ui

import androidx.compose.foundation.background
import androidx.compose.foundation.gestures.detectTapGestures
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.input.pointer.pointerInput
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.font.FontWeight
import app.restwater.core.BankLayout
import app.restwater.core.FanGlass
import app.restwater.core.Glass
import app.restwater.core.PadWords
import app.restwater.core.Rect
import app.restwater.core.SwimKey
import app.restwater.core.SwimLayout
import app.restwater.core.SwimScene
import app.restwater.core.SwimView

/** What the Swim screen asks for. */
interface SwimTaps {
    fun key(key: SwimKey)
    fun choose(field: String, value: String)
    fun aim(x: Double, y: Double)
    fun mark(name: String)
    fun back()
}

/** The glass of the large fan. */
fun largeFan(glass: Glass, place: Rect) = FanGlass(place.width, place.height, glass.pxPerMm, glass.textScale, false)

/** The swim as a fan, where next with its reasons, and the keys that move the ring. */
@Composable
fun SwimScreen(
    view: SwimView,
    scene: SwimScene?,
    layout: SwimLayout,
    bank: BankLayout,
    words: PadWords,
    notice: String,
    taps: SwimTaps,
) {
    var more by remember { mutableStateOf(false) }
    val open = remember { mutableStateOf<String?>(null) }
    Ground()
    Head(view, layout, bank)
    if (more) {
        More(view, layout, bank, words, notice, open, taps)
    } else {
        Fan(view, scene, layout, taps)
        Next(view, notice, layout, bank)
        for (place in layout.keys) SwimPadKey(view, place.key, place.rect, bank, taps)
        PadKey(words.more.face(), "swim-more", bank.text.secondary.toFloat(), 0f, Modifier.at(layout.more)) { more = true }
    }
    PadKey(words.back.face(), "back", bank.text.secondary.toFloat(), 0f, Modifier.at(layout.back)) {
        when {
            !more -> taps.back()
            open.value != null -> open.value = null
            else -> more = false
        }
    }
}

@Composable
private fun Head(view: SwimView, layout: SwimLayout, bank: BankLayout) {
    val half = layout.head.height * 0.58
    Box(Modifier.at(layout.head.copy(height = half)).semantics { heading() }) {
        FitText(view.title, bank.text.headline.toFloat() * 0.85f, LocalInk.current.ink, Modifier.fillMaxSize(), FontWeight.Bold)
    }
    val below = layout.head.copy(top = layout.head.top + half, height = layout.head.height - half)
    val second = listOf(view.area, view.replay).filter { it.isNotEmpty() }.joinToString("   ")
    FitText(second, bank.text.body.toFloat(), LocalInk.current.ink, Modifier.at(below))
}

@Composable
private fun Fan(view: SwimView, scene: SwimScene?, layout: SwimLayout, taps: SwimTaps) {
    val said = listOf(view.headline, view.cell).plus(view.reasons).joinToString(" ")
    Box(
        Modifier.at(layout.canvas).background(LocalInk.current.paper).testTag("swim-fan")
            .semantics { contentDescription = said }
            .pointerInput(taps) { detectTapGestures { taps.aim(it.x.toDouble(), it.y.toDouble()) } },
    ) {
        if (scene != null) SwimCanvas(scene, Modifier.fillMaxSize())
    }
}

/** Where next and why; what was said of the last tap comes first. */
@Composable
private fun Next(view: SwimView, notice: String, layout: SwimLayout, bank: BankLayout) {
    val reasons = view.reasons.joinToString("; ")
    val lines = listOf(notice, reasons, view.cell).plus(view.drift).filter { it.isNotEmpty() }
    val body = bank.text.body.toFloat()
    Box(Modifier.at(layout.words).testTag("swim-words")) {
        Sentences(view.headline, lines, body * 1.25f, body, LocalInk.current.ink, Modifier.fillMaxSize())
    }
}

@Composable
private fun SwimPadKey(view: SwimView, key: SwimKey, place: Rect, bank: BankLayout, taps: SwimTaps) {
    // KEEP and RELEASE share a place: which of the two it is, the core says.
    val face = view.keys.find { it.key == key }
        ?: view.keys.find { key == SwimKey.KEEP && it.key == SwimKey.RELEASE } ?: return
    PadKey(
        KeyFace(face.label, null, face.spoken, solid = face.solid && face.enabled, enabled = face.enabled), "swim-${face.key}",
        bank.text.secondary.toFloat(), bank.text.sub.toFloat(), Modifier.at(place),
    ) { taps.key(face.key) }
}

/** Marks, the replay, boundaries, bands, features, hazards. */
@Composable
private fun More(
    view: SwimView, layout: SwimLayout, bank: BankLayout, words: PadWords, notice: String,
    open: androidx.compose.runtime.MutableState<String?>, taps: SwimTaps,
) {
    val mm = LocalPxPerMm.current
    val top = layout.head.top + layout.head.height
    val line = 4.5 * mm
    FitText(notice, bank.text.body.toFloat(), LocalInk.current.ink, Modifier.at(layout.head.copy(top = top, height = line)).testTag("notice"))
    val rest = Rect(layout.head.left, top + line, layout.head.width, layout.back.top - top - line - 3.0 * mm)
    if (open.value != null) {
        Rows(view.rows, open, rest, bank, words, taps::choose)
        return
    }
    val keys = setOf(SwimKey.MARK_HERE, SwimKey.EARLIER, SwimKey.LATER, SwimKey.NOW)
    val own = view.keys.filter { it.key in keys }.map { key ->
        val face = KeyFace(key.label, null, key.spoken, enabled = key.enabled)
        Cell(face, "swim-${key.key}") { if (key.key == SwimKey.MARK_HERE) taps.mark("") else taps.key(key.key) }
    }
    val rows = view.rows.map { row ->
        Cell(KeyFace(row.label, row.value, "${row.label}: ${row.value}"), "row-${row.field}") { open.value = row.field }
    }
    KeyGrid(own + rows, rest, bank, words)
}
