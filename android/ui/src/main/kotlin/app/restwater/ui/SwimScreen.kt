package app.restwater.ui

import androidx.compose.foundation.background
import androidx.compose.foundation.gestures.detectTapGestures
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.input.pointer.pointerInput
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.paneTitle
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.font.FontWeight
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.FanGlass
import app.restwater.core.Glass
import app.restwater.core.PadWords
import app.restwater.core.Rect
import app.restwater.core.SwimKey
import app.restwater.core.SwimKeyView
import app.restwater.core.SwimLayout
import app.restwater.core.SwimPadAsk
import app.restwater.core.SwimScene
import app.restwater.core.SwimView
import app.restwater.core.swimLegend

/** What the Swim screen asks for. */
interface SwimTaps {
    fun key(key: SwimKeyView)
    fun act(action: Action)
    fun aim(x: Double, y: Double)
    fun back()
}

/** The drawing area of the map. */
fun largeFan(glass: Glass, place: Rect) = FanGlass(place.width, place.height, glass.pxPerMm, glass.textScale, false)

/** What the layout of the Swim screen depends on. */
fun swimPad(view: SwimView) = SwimPadAsk(view.pad)

/** The map of the swim, where to cast next with the reasons, and the keys for the next cast. */
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
    var more by rememberSaveable { mutableStateOf(false) }
    var open by rememberSaveable { mutableStateOf<String?>(null) }
    val opened = LocalOpened.current
    Ground()
    if (more) {
        More(view, scene, bank, notice, open, { opened(); open = it }, taps)
    } else {
        SwimHead(view, layout, bank) { opened(); more = true; open = LEGEND }
        Fan(view, scene, layout, taps)
        Next(view, notice, layout, bank)
        for (place in layout.keys) SwimPadKey(view, place.key, place.rect, bank, taps)
        layout.more?.let { place ->
            PadKey(words.further.face(), "swim-more", bank.text.secondary.toFloat(), 0f, Modifier.at(place)) { opened(); more = true }
        }
    }
    Back(bank, words, if (more) bank.back else layout.back) {
        when {
            !more -> view.back?.let(taps::act) ?: taps.back()
            // The legend was opened from the map, so it goes back to it.
            open == LEGEND -> { open = null; more = false }
            open != null -> open = null
            else -> more = false
        }
    }
}

@Composable
private fun SwimHead(view: SwimView, layout: SwimLayout, bank: BankLayout, onLegend: () -> Unit) {
    // If there is no second line, the moment shown is beside the title: it must be visible.
    val title = if (layout.area == null) listOf(view.title, view.replay).filter { it.isNotEmpty() }.joinToString("   ") else view.title
    Box(Modifier.at(layout.title).semantics { heading(); contentDescription = title; paneTitle = view.title }) {
        FitText(title, bank.text.headline.toFloat() * 0.85f, LocalInk.current.ink, Modifier.fillMaxSize(), FontWeight.Bold)
    }
    layout.area?.let { place ->
        val second = listOf(view.area, view.replay).filter { it.isNotEmpty() }.joinToString("   ")
        SpokenText(second, bank.text.body.toFloat(), LocalInk.current.ink, Modifier.at(place))
    }
    PadKey(KeyFace(view.legendLabel, null, view.legendLabel), "swim-legend", bank.text.header.toFloat(), 0f, Modifier.at(layout.legend), onTap = onLegend)
}

@Composable
private fun Fan(view: SwimView, scene: SwimScene?, layout: SwimLayout, taps: SwimTaps) {
    val said = listOf(view.headline, view.why, view.cell).filter { it.isNotBlank() }.joinToString(" ")
    Box(
        Modifier.at(layout.canvas).background(LocalInk.current.paper).tagged("swim-fan")
            .semantics { contentDescription = said; liveRegion = LiveRegionMode.Polite }
            .pointerInput(taps) { detectTapGestures { taps.aim(it.x.toDouble(), it.y.toDouble()) } },
    ) {
        if (scene != null) SwimCanvas(scene, Modifier.fillMaxSize())
    }
}

/** Where to cast next and why; the notice about the last tap comes first. What the picture says is not said again. */
@Composable
private fun Next(view: SwimView, notice: String, layout: SwimLayout, bank: BankLayout) {
    val lines = listOf(notice, view.why, view.cell).plus(view.drift).filter { it.isNotEmpty() }
    val body = bank.text.body.toFloat()
    val said = listOf(notice).plus(view.drift).filter { it.isNotBlank() }.joinToString(" ")
    Box(Modifier.at(layout.words).tagged("swim-words").semantics { contentDescription = said; liveRegion = LiveRegionMode.Polite }) {
        Sentences(view.headline, lines, body * 1.25f, body, LocalInk.current.ink, Modifier.fillMaxSize(), bank.usualShare(LocalPxPerMm.current))
    }
}

@Composable
private fun SwimPadKey(view: SwimView, key: SwimKey, place: Rect, bank: BankLayout, taps: SwimTaps) {
    // KEEP and RELEASE share a place: the core says which of the two it is.
    val face = view.keys.find { it.key == key }
        ?: view.keys.find { key == SwimKey.KEEP && it.key == SwimKey.RELEASE } ?: return
    PadKey(
        KeyFace(face.label, null, face.spoken, solid = face.solid && face.enabled, enabled = face.enabled), "swim-${face.key}",
        bank.text.secondary.toFloat(), bank.text.sub.toFloat(), Modifier.at(place),
    ) { taps.key(face) }
}

/** Names and marks, the replay, boundaries, bands, features, hazards, the full list, the peg on the map. */
@Composable
private fun More(
    view: SwimView, scene: SwimScene?, bank: BankLayout, notice: String, open: String?, onOpen: (String?) -> Unit, taps: SwimTaps,
) {
    val rest = PageHead(listOf(view.title, view.replay).filter { it.isNotEmpty() }.joinToString("   "), notice, bank)
    when (open) {
        null -> MoreKeys(view, rest, bank, onOpen, taps)
        LIST -> Listed(view, scene, rest, bank)
        LEGEND -> Legend(view, rest, bank)
        PLACE -> Place(view, rest, bank, taps)
        else -> Rows(view.rows, open, onOpen, rest, bank, taps::act)
    }
}

@Composable
private fun MoreKeys(view: SwimView, rest: Rect, bank: BankLayout, onOpen: (String?) -> Unit, taps: SwimTaps) {
    val keys = setOf(SwimKey.MARK_HERE, SwimKey.EARLIER, SwimKey.LATER, SwimKey.NOW)
    val own = view.keys.filter { it.key in keys }.map { key ->
        val face = KeyFace(key.label, null, key.spoken, enabled = key.enabled)
        Cell(face, "swim-${key.key}", key.reads) { taps.key(key) }
    }
    val list = Cell(KeyFace(view.listLabel, null, view.listLabel), "swim-list") { onOpen(LIST) }
    val place = with(view.place) { Cell(KeyFace(label, value, spoken), "swim-place") { onOpen(PLACE) } }
    val rows = view.rows.map { row ->
        Cell(KeyFace(row.label, row.value.ifEmpty { null }, row.spoken), "row-${row.tag}", row.reads) { onOpen(row.tag) }
    }
    Field(view.name, bank, part(rest, 0), taps::act)
    val below = part(rest, 1).top
    KeyGrid(own + list + rows + place, rest.copy(top = below, height = rest.top + rest.height - below), bank)
}

/** Each symbol of the map and what it means beside it; the symbols are drawn by the same code as the map. */
@Composable
private fun Legend(view: SwimView, rest: Rect, bank: BankLayout) {
    val mm = LocalPxPerMm.current
    val column = rest.copy(width = LEGEND_MM * mm)
    val scene = remember(column) { swimLegend(FanGlass(column.width, column.height, mm.toDouble(), 1.0, false), language()) }
    Box(Modifier.at(column)) { SwimCanvas(scene, Modifier.fillMaxSize()) }
    val row = rest.height / view.legend.size
    val texts = view.legend.mapIndexed { i, text ->
        val left = column.left + column.width + 2 * mm
        text to Rect(left, rest.top + i * row, rest.left + rest.width - left, row)
    }
    // All lines have the same size: they are one list.
    val em = commonEm(texts, bank.text.body.toFloat() * 1.1f, FontWeight.Medium)
    for ((i, line) in texts.withIndex()) {
        Box(Modifier.at(line.second).tagged("legend-$i").semantics { contentDescription = line.first }) {
            FitText(line.first, em, LocalInk.current.ink, Modifier.fillMaxSize())
        }
    }
}

/** Everything that the picture is based on, with the meaning of its numbers; nothing is cut off. */
@Composable
private fun Listed(view: SwimView, scene: SwimScene?, rest: Rect, bank: BankLayout) {
    val key = scene?.key.orEmpty().map { it.spoken }
    val text = (view.list + key).joinToString("\n")
    Box(Modifier.at(rest).tagged("swim-list-text").semantics { contentDescription = text }) {
        FitText(text, bank.text.body.toFloat() * 1.1f, LocalInk.current.ink, Modifier.fillMaxSize(), middle = false)
    }
}

/** Where the peg is on the earth: three lines to type, the key that asks the phone, and the key that sets it. */
@Composable
private fun Place(view: SwimView, rest: Rect, bank: BankLayout, taps: SwimTaps) {
    view.place.fields.forEachIndexed { i, line -> Field(line, bank, part(rest, i), taps::act) }
    SpokenText(view.place.note, bank.text.body.toFloat(), LocalInk.current.soft, Modifier.at(part(rest, view.place.fields.size)))
    val set = view.keys.filter { it.key == SwimKey.USE_PHONE || it.key == SwimKey.PLACE_PEG }.map { key ->
        val solid = key.enabled && key.key == SwimKey.PLACE_PEG
        Cell(KeyFace(key.label, null, key.spoken, solid, key.enabled), "swim-${key.key}") { taps.key(key) }
    }
    val below = part(rest, view.place.fields.size + 1).top
    KeyGrid(set, rest.copy(top = below, height = rest.top + rest.height - below), bank)
}

/** Pages behind WATER that are not a row of choices. */
private const val LIST = "list"
private const val PLACE = "place"
private const val LEGEND = "legend"

/** Width of the symbols on the legend. */
private const val LEGEND_MM = 14.0
