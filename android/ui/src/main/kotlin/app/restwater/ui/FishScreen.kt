package app.restwater.ui

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.semantics
import app.restwater.core.BankLayout
import app.restwater.core.FishKey
import app.restwater.core.FishView
import app.restwater.core.KeyWeight
import app.restwater.core.MatchLayout
import app.restwater.core.PadWords
import app.restwater.core.Rect
import app.restwater.core.WeightView

/** What can be entered about a landed fish: its class, its net, whether it went back. */
@Composable
fun FishScreen(
    view: FishView, keys: MatchLayout, layout: BankLayout, words: PadWords, notice: String, onKey: (FishKey) -> Unit, onBack: () -> Unit,
) {
    val mm = LocalPxPerMm.current
    val slots = keys.classes.size
    var turned by rememberSaveable { mutableStateOf(0) }
    val perPage = if (view.classes.size <= slots) slots else slots - 1
    val pages = ((view.classes.size + perPage - 1) / perPage).coerceAtLeast(1)
    val shown = view.classes.drop(turned % pages * perPage).take(perPage)
    Ground()
    Sentenced(view.says, PageHead(view.title, notice, layout, keys.fish), layout)
    val labels = shown.mapIndexed { i, key -> key.label to labelPlace(keys.classes[i], true, mm) }
    val px = commonEm(labels, layout.text.primary.toFloat())
    shown.forEachIndexed { i, key -> KeyAt(key, keys.classes[i], layout, px, onKey) }
    // The wide key takes the pager's place here, so the pager takes the place of the last class.
    Pager(turned % pages, pages, layout, keys.classes[slots - 1]) { turned = it }
    val small = if (view.reads) keys.aboveClassesRead else keys.aboveClasses
    view.small.forEachIndexed { i, key -> KeyAt(key, small[i], layout, layout.text.secondary.toFloat(), onKey) }
    KeyAt(view.weigh, keys.wide, layout, layout.text.primary.toFloat(), onKey)
    Back(layout, words, onBack = onBack)
}

/** The number pad for the weight of a landed fish. */
@Composable
fun WeightScreen(
    view: WeightView, keys: MatchLayout, layout: BankLayout, words: PadWords, notice: String, onKey: (FishKey) -> Unit, onBack: () -> Unit,
) {
    val mm = LocalPxPerMm.current
    Ground()
    Figure(view.figure, listOf(view.says), emptyList(), PageHead(view.title, notice, layout, keys.typing), keys.figure, layout)
    val labels = view.pad.mapIndexed { i, key -> key.label to labelPlace(keys.pad[i], key.sub.isNotBlank(), mm) }
    val px = padEms(labels, layout.text.primary.toFloat())
    view.pad.forEachIndexed { i, key -> KeyAt(key, keys.pad[i], layout, px[i], onKey) }
    val guess = view.guess
    if (guess == null) {
        KeyAt(view.weighed, keys.wide, layout, layout.text.primary.toFloat(), onKey)
        return Back(layout, words, onBack = onBack)
    }
    val takes = listOf(guess, view.weighed).zip(keys.padTakes)
    val em = commonEm(takes.map { (key, at) -> key.label to labelPlace(at, key.sub.isNotBlank(), mm) }, layout.text.primary.toFloat())
    for ((key, at) in takes) KeyAt(key, at, layout, em, onKey)
    Back(layout, words, keys.padBack, onBack)
}

@Composable
private fun KeyAt(key: FishKey, place: Rect, layout: BankLayout, px: Float, onKey: (FishKey) -> Unit) {
    val sub = key.sub.takeIf { it.isNotBlank() }
    val face = KeyFace(key.label, sub, key.spoken, key.weight == KeyWeight.SOLID && key.enabled, key.enabled, chosenOrNot(key.weight))
    PadKey(face, key.tag, px, layout.text.sub.toFloat(), Modifier.at(place)) { onKey(key) }
}

/** The first sentence large, the others below it; a screen reader hears all of them, and the title from the heading. */
@Composable
private fun Sentenced(says: List<String>, place: Rect, layout: BankLayout) {
    val body = layout.text.body.toFloat()
    val spoken = says.joinToString(" ")
    Box(Modifier.at(place).tagged("fish-says").semantics { contentDescription = spoken; liveRegion = LiveRegionMode.Polite }) {
        val usual = layout.usualShare(LocalPxPerMm.current)
        Sentences(says.firstOrNull().orEmpty(), says.drop(1), body * 1.35f, body * 1.1f, LocalInk.current.ink, Modifier.fillMaxSize(), usual)
    }
}
