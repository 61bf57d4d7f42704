package app.restwater.ui

import androidx.compose.foundation.Canvas
import androidx.compose.foundation.background
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.ui.Modifier
import androidx.compose.ui.geometry.CornerRadius
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.graphics.Color
import androidx.compose.ui.graphics.Path
import androidx.compose.ui.graphics.drawscope.Stroke
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.clearAndSetSemantics
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.isTraversalGroup
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.onClick
import androidx.compose.ui.semantics.paneTitle
import androidx.compose.ui.semantics.role
import androidx.compose.ui.semantics.selected
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.semantics.traversalIndex
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.style.TextAlign
import app.restwater.core.BankLayout
import app.restwater.core.BankView
import app.restwater.core.Key
import app.restwater.core.KeyPlace
import app.restwater.core.KeyView
import app.restwater.core.KeyWeight
import app.restwater.core.PadWords
import app.restwater.core.PagePlace
import app.restwater.core.Rect
import app.restwater.core.RodPlace
import app.restwater.core.RodView
import app.restwater.core.Which

/** What can be tapped on the Bank screen. */
interface BankTaps {
    fun key(key: KeyView)
    fun more()
    fun back()
    fun rod(rod: RodView)
    fun screens()
    fun open(which: Which)
}

/**
 * The Bank screen: [view] says what is shown, [layout] where, and [seconds] what changes each second; nothing is
 * decided here.
 */
@Composable
fun BankScreen(
    view: BankView,
    layout: BankLayout,
    words: PadWords,
    page: Int,
    notice: String,
    taps: BankTaps,
    swim: (@Composable () -> Unit)? = null,
    seconds: SecondsOf = { view },
) {
    layout.sheet?.let { return MoreKeys(view, layout.ofPages(), it, words, page, notice, taps) }
    Box(Modifier.fillMaxSize().background(LocalInk.current.paper).semantics { isTraversalGroup = true; paneTitle = view.header.place }) {
        Top(view, layout, words, taps)
        // Without a picture of the swim, the clock takes the fan's place too.
        Clocks(view, if (swim == null) layout.withoutFan() else layout, taps, seconds)
        Words(view, layout, notice)
        // A tap on the strip explains its symbols.
        WaitStrip(view.strip, layout.text.figures.toFloat(), Modifier.at(layout.strip).clickable { taps.open(Which.LEGEND) }, ORDER_STRIP) { seconds().strip }
        if (swim != null) layout.fan?.let { fan -> Fan(fan, words, taps, swim) }
        Pad(view, layout, words, taps, seconds)
        Notice(notice, layout)
    }
}

@Composable
private fun Top(view: BankView, layout: BankLayout, words: PadWords, taps: BankTaps) {
    val header = view.header
    val ink = LocalInk.current
    val px = layout.text.header.toFloat()
    Box(Modifier.at(layout.header).tagged("header").semantics { contentDescription = header.spoken; traversalIndex = 0f }) {
        val full = local(layout.header)
        val half = full.copy(height = full.height / 2)
        FitText("${header.place}  ${header.clock}", px, ink.ink, Modifier.at(half), FontWeight.Bold, oneLine = true)
        FitText(header.length, px * 0.9f, ink.ink, Modifier.at(half.copy(top = full.height / 2)), oneLine = true)
    }
    val mm = LocalPxPerMm.current
    val screenKeys = layout.screenKeys.mapNotNull { place -> view.screenKeys.find { it.which == place.which }?.let { it to place.rect } }
    val labels = listOf(words.screens.label to layout.screens) + screenKeys.map { (key, place) -> key.label to place }
    val text = commonEm(labels.map { (label, place) -> label to labelPlace(place, false, mm) }, px)
    PadKey(words.screens.face(), "screens", text, 0f, Modifier.at(layout.screens), 1f, taps::screens)
    screenKeys.forEachIndexed { i, (key, place) ->
        PadKey(KeyFace(key.label, null, key.spoken), "open-${key.which}", text, 0f, Modifier.at(place), 2f + i) { taps.open(key.which) }
    }
}

/** The same rectangle in coordinates from its own corner. */
private fun local(rect: Rect) = Rect(0.0, 0.0, rect.width, rect.height)

private fun BankLayout.withoutFan(): BankLayout {
    val fan = fan?.takeIf { rods.size == 1 } ?: return this
    fun Rect.and(other: Rect): Rect {
        val left = minOf(left, other.left)
        return copy(left = left, width = maxOf(this.left + width, other.left + other.width) - left)
    }
    return copy(rods = rods.map { it.copy(target = it.target.and(fan), digits = it.digits.and(fan)) })
}

@Composable
private fun Clocks(view: BankView, layout: BankLayout, taps: BankTaps, seconds: SecondsOf) {
    val one = layout.rods.size == 1
    for (place in layout.rods) {
        val rod = view.rods.find { it.rod == place.rod } ?: continue
        if (one) OneClock(rod, place, layout, seconds) else RodCell(rod, place, layout, taps, seconds)
    }
    val chosen = view.rods.find { it.chosen }
    val since = chosen?.since.orEmpty()
    layout.since?.let {
        val px = layout.text.body.toFloat()
        FitText(since, px, LocalInk.current.ink, Modifier.at(it))
    }
}

@Composable
private fun OneClock(rod: RodView, place: RodPlace, layout: BankLayout, seconds: SecondsOf) {
    Box(Modifier.at(place.target).tagged("clock-${rod.rod}").wait(rod)) {
        if (rod.word.isEmpty()) Digits({ seconds().rod(rod.rod)?.digits.orEmpty() }, LocalInk.current.ink, Modifier.fillMaxSize())
        else ClockWord(rod.word, local(place.target), layout, LocalInk.current.ink)
    }
}

/** A word in the place of digits. */
@Composable
private fun ClockWord(word: String, place: Rect, layout: BankLayout, color: Color) =
    FitText(word, minOf(place.height, layout.text.clockWord).toFloat(), color, Modifier.at(place), FontWeight.Bold, oneLine = true)

/** The wait for a screen reader: in minutes, announced when the minute changes. */
private fun Modifier.wait(rod: RodView) = semantics {
    contentDescription = rod.spokenSince
    liveRegion = LiveRegionMode.Polite
    traversalIndex = ORDER_CLOCK + rod.rod.toFloat() / 10
}

@Composable
private fun RodCell(rod: RodView, place: RodPlace, layout: BankLayout, taps: BankTaps, seconds: SecondsOf) {
    val ink = LocalInk.current
    val mm = LocalPxPerMm.current
    val text = if (rod.chosen) ink.paper else ink.ink
    Box(
        Modifier.at(place.target).tagged("clock-${rod.rod}").wait(rod)
            .semantics { selected = rod.chosen; role = Role.Tab }
            .clickable { taps.rod(rod) },
    ) {
        Canvas(Modifier.fillMaxSize()) {
            val edge = 0.35f * mm
            if (rod.chosen) drawRoundRect(ink.ink, cornerRadius = CornerRadius(1f * mm))
            else drawRoundRect(
                ink.ink, Offset(edge / 2, edge / 2), Size(size.width - edge, size.height - edge), CornerRadius(1f * mm), Stroke(edge),
            )
            // Due first: a triangle below the number, or beside it.
            place.first?.takeIf { rod.first }?.let { at ->
                val (left, top) = (at.left - place.target.left).toFloat() to (at.top - place.target.top).toFloat()
                val (wide, high) = at.width.toFloat() to at.height.toFloat()
                val path = Path().apply {
                    moveTo(left + wide / 2, top)
                    lineTo(left + wide, top + high)
                    lineTo(left, top + high)
                    close()
                }
                drawPath(path, text)
            }
        }
    }
    val word = place.word?.takeIf { rod.alert.isNotEmpty() }
    if (word != null) {
        FitText(rod.alert, word.height.toFloat(), text, Modifier.at(word), FontWeight.Bold, TextAlign.Center)
    } else if (rod.word.isNotEmpty()) {
        ClockWord(rod.word, place.digits, layout, text)
    } else {
        // The digits of several rods have one form, whether they are few or many: they are compared.
        Digits({ seconds().rod(rod.rod)?.digits.orEmpty() }, text, Modifier.at(place.digits), several = true)
    }
    place.name?.let { FitText(rod.label, layout.text.body.toFloat(), text, Modifier.at(it), FontWeight.Bold) }
    place.number?.let { FitText(rod.number, it.width.toFloat() * NUMBER_EM, text, Modifier.at(it), FontWeight.Bold, TextAlign.Center) }
}

@Composable
private fun Words(view: BankView, layout: BankLayout, notice: String) {
    val ink = LocalInk.current
    val body = layout.text.body.toFloat()
    val advice = view.advice
    // Sentences for which there is no line are still spoken.
    val spoken = (listOf(advice.headline, advice.detail) + advice.more).filter { it.isNotBlank() }.joinToString(" ")
    Box(
        Modifier.at(layout.advice).tagged("advice").semantics { contentDescription = spoken; traversalIndex = ORDER_ADVICE },
    ) {
        val below = if (layout.further == null) advice.more else advice.more.drop(1)
        Sentences(
            advice.headline, if (layout.detail == null) listOf(advice.detail) + below else below, layout.text.headline.toFloat(), body, ink.ink, Modifier.fillMaxSize(),
            layout.usualShare(LocalPxPerMm.current), optional = layout.detail != null, verdictFirst = true,
        )
    }
    // The notice and these sentences share a place.
    if (notice.isBlank()) {
        layout.detail?.let { FitText(advice.detail, body, ink.ink, Modifier.at(it)) }
        layout.further?.let { FitText(advice.more.firstOrNull().orEmpty(), body, ink.ink, Modifier.at(it)) }
    }
    layout.spot?.let { FitText(view.spot, body, ink.ink, Modifier.at(it), FontWeight.Bold) }
    layout.rig?.let { FitText(view.rig, body, ink.ink, Modifier.at(it)) }
    layout.latest?.let { place ->
        SpokenText(view.logged, body, ink.ink, Modifier.at(place).semantics { traversalIndex = ORDER_LATEST })
    }
    Box(
        Modifier.at(layout.spot ?: layout.notice).tagged("spot").semantics {
            contentDescription = view.spotSpoken
            traversalIndex = ORDER_SPOT
        },
    )
}

@Composable
private fun Fan(place: Rect, words: PadWords, taps: BankTaps, swim: @Composable () -> Unit) {
    Box(
        Modifier.at(place).tagged("fan").clearAndSetSemantics {
            contentDescription = words.swim.spoken
            role = Role.Button
            traversalIndex = ORDER_FAN
            onClick { taps.open(Which.SWIM); true }
        }.clickable { taps.open(Which.SWIM) },
    ) { swim() }
}

@Composable
private fun Pad(view: BankView, layout: BankLayout, words: PadWords, taps: BankTaps, seconds: SecondsOf) {
    val mm = LocalPxPerMm.current
    val faces = view.keys.associateBy { it.key }
    val shown = layout.keys.mapNotNull { place -> faces[place.key]?.let { place to it.face() } }
    val chosen = view.rods.indexOfFirst { it.chosen }
    val nextRod = view.rods.getOrNull((chosen + 1) % view.rods.size.coerceAtLeast(1))
    val nextFace = nextRod?.let { KeyFace(it.name, it.alert.ifEmpty { it.digits }, it.spoken) }
    val more = words.more.face()
    // Keys of one kind have the same text size.
    val (large, small) = shown.partition { it.first.key in LARGE }
    fun labels(keys: List<Pair<KeyPlace, KeyFace>>) =
        keys.map { (place, face) -> face.label to labelPlace(place.rect, face.sub != null, mm) }
    val others = listOfNotNull(
        layout.more?.let { more.label to labelPlace(it, false, mm) },
        layout.nextRod?.let { place -> nextFace?.let { it.label to labelPlace(place, it.sub != null, mm) } },
    )
    val largePx = commonEm(labels(large), layout.text.primary.toFloat())
    val smallPx = commonEm(labels(small) + others, layout.text.secondary.toFloat())
    val sub = layout.text.sub.toFloat()
    for ((place, face) in shown) {
        val order = ORDER_KEYS + view.keys.indexOfFirst { it.key == place.key } / 100f
        val px = if (place.key in LARGE) largePx else smallPx
        PadKey(face, tag(place.key), px, sub, Modifier.at(place.rect), order) { faces[place.key]?.let(taps::key) }
    }
    layout.more?.let { PadKey(more, "more", smallPx, 0f, Modifier.at(it), ORDER_MORE, taps::more) }
    layout.nextRod?.let { place ->
        if (nextFace != null) NextRod(nextFace, nextRod, smallPx, sub, place, taps, seconds)
    }
}

/** The sheet behind MORE: every key that has no place on the pad, and BACK to it. */
@Composable
private fun MoreKeys(view: BankView, layout: BankLayout, head: PagePlace, words: PadWords, page: Int, notice: String, taps: BankTaps) {
    Ground()
    PageHead(words.more.spoken, notice, layout, head)
    val mm = LocalPxPerMm.current
    val shown = layout.keys.mapNotNull { place -> view.keys.find { it.key == place.key }?.let { place to it } }
    val px = commonEm(shown.map { (place, key) -> key.label to labelPlace(place.rect, key.face().sub != null, mm) }, layout.text.secondary.toFloat())
    val sub = layout.text.sub.toFloat()
    shown.forEachIndexed { i, (place, key) ->
        PadKey(key.face(), tag(place.key), px, sub, Modifier.at(place.rect), ORDER_KEYS + i / 100f) { taps.key(key) }
    }
    // The pad is the first of the pages.
    val pages = layout.pages.toInt() - 1
    layout.more?.let { PadKey(pagerFace((page - 1) % pages, pages), "more", px, px * PAGE_OF, Modifier.at(it), ORDER_MORE, taps::more) }
    Back(layout, words, onBack = taps::back)
}

/** The key of the other rod, with its wait or what can't wait: the only thing that is recomposed each second. */
@Composable
private fun NextRod(face: KeyFace, rod: RodView, px: Float, subPx: Float, place: Rect, taps: BankTaps, seconds: SecondsOf) {
    val sub = if (rod.alert.isEmpty()) seconds().rod(rod.rod)?.digits else face.sub
    PadKey(face.copy(sub = sub), "next-rod", px, subPx, Modifier.at(place), ORDER_MORE + 0.1f) { taps.rod(rod) }
}

private fun KeyView.face() =
    KeyFace(label, sub.takeIf { !it.isNullOrBlank() }, spoken, weight == KeyWeight.SOLID, enabled, chosen = chosenOrNot(weight))

/** The tag by which a test finds a key. */
fun tag(key: Key) = "key-$key"

@Composable
private fun Notice(notice: String, layout: BankLayout) {
    Box(
        Modifier.at(layout.notice).tagged("notice").semantics {
            if (notice.isNotBlank()) contentDescription = notice
            liveRegion = LiveRegionMode.Assertive
        },
    ) {
        if (notice.isNotBlank()) {
            FitText(notice, layout.text.body.toFloat(), LocalInk.current.ink, Modifier.fillMaxSize(), FontWeight.Bold, TextAlign.Center)
        }
    }
}

/** Em of a rod's number relative to the width of its place: a digit is a little more than half an em wide. */
private const val NUMBER_EM = 1.5f

/** The keys with large text. */
private val LARGE = setOf(Key.CAST, Key.BITE, Key.WOUND_IN, Key.LANDED, Key.LOST, Key.MISSED, Key.START)

// The order a screen reader walks in: the wait first, then what it means, then the keys.
private const val ORDER_CLOCK = 10f
private const val ORDER_ADVICE = 20f
private const val ORDER_STRIP = 30f
private const val ORDER_SPOT = 40f
private const val ORDER_LATEST = 45f
private const val ORDER_FAN = 50f
private const val ORDER_KEYS = 60f
private const val ORDER_MORE = 70f
