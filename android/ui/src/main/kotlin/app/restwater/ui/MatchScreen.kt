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
import androidx.compose.ui.text.font.FontWeight
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.KeyTap
import app.restwater.core.MatchKey
import app.restwater.core.MatchLayout
import app.restwater.core.MatchLine
import app.restwater.core.MatchTap
import app.restwater.core.MatchView
import app.restwater.core.PadWords
import app.restwater.core.PageKey
import app.restwater.core.Rect
import app.restwater.core.WeighInPage
import app.restwater.core.Which

/** The pages of the Match screen. */
enum class MatchPage { NOW, COMING, WEIGH_IN, RULES }

/** What every page needs to draw itself. */
private class Sheet(
    val view: MatchView, val keys: MatchLayout, val layout: BankLayout, val words: PadWords, val notice: String, val onTap: (MatchTap) -> Unit,
    val turn: (MatchPage) -> Unit, val open: (Which) -> Unit,
)

/** Time left, the nets, the fish, the weigh-in and the rules of the day, one page each; nothing scrolls. */
@Composable
fun MatchScreen(
    view: MatchView,
    keys: MatchLayout,
    layout: BankLayout,
    words: PadWords,
    notice: String,
    onAct: (Action) -> Unit,
    first: MatchPage = MatchPage.NOW,
    onOpen: (Which) -> Unit = { },
    onBack: () -> Unit,
) {
    var page by rememberSaveable { mutableStateOf(first) }
    var open by rememberSaveable { mutableStateOf<String?>(null) }
    val opened = LocalOpened.current
    val sheet = Sheet(view, keys, layout, words, notice, { onAct(Action.Match(it)) }, { opened(); page = it }, onOpen)
    Ground()
    val (weighIn, rules) = view.weighIn to view.toRules
    when {
        page == MatchPage.RULES && rules != null -> Rows(view.rows, open, { open = it }, PageHead(rules.label, notice, layout), layout, onAct)
        page == MatchPage.COMING -> Coming(sheet)
        page == MatchPage.WEIGH_IN && weighIn != null -> WeighIn(sheet, weighIn)
        else -> Now(sheet)
    }
    Back(layout, words) {
        when {
            open != null -> open = null
            page == MatchPage.NOW -> onBack()
            else -> page = MatchPage.NOW
        }
    }
}

@Composable
private fun Now(sheet: Sheet) = with(sheet) {
    val mm = LocalPxPerMm.current
    val place = PageHead(view.title, notice, layout, keys.now)
    val clock = if (view.digits.isEmpty()) 0.0 else CLOCK_MM * mm
    if (clock > 0) Digits({ view.digits }, LocalInk.current.ink, Modifier.at(place.copy(height = clock)))
    Box(Modifier.at(place.copy(height = clock.coerceAtLeast(mm * 1.0))).tagged("match-clock").semantics {
        contentDescription = view.spoken
        liveRegion = LiveRegionMode.Polite
    })
    val top = place.top + clock + if (clock > 0) 1.5 * mm else 0.0
    NowBody(sheet, place.copy(top = top, height = place.top + place.height - top))
    val (begin, weighIn, offer) = Triple(view.begin, view.weighIn, view.offer)
    when {
        weighIn != null -> {
            PageKeyAt(view.toFish, "match-fish", keys.wide, sheet, solid = view.fishWaits, large = true) { open(Which.FISH) }
            val small = listOfNotNull(
                Triple(view.toComing, "match-coming", MatchPage.COMING), Triple(view.toWeighIn, "match-scales", MatchPage.WEIGH_IN),
                view.toRules?.let { Triple(it, "match-rules", MatchPage.RULES) },
            )
            small.forEachIndexed { i, (key, tag, goal) -> PageKeyAt(key, tag, keys.small[i], sheet) { turn(goal) } }
        }
        begin != null -> {
            KeyAt(begin, begin.tag, keys.wide, sheet, large = true)
            view.toRules?.let { PageKeyAt(it, "match-rules", keys.small[0], sheet) { turn(MatchPage.RULES) } }
        }
        offer != null -> {
            val goal = (offer.tap as? KeyTap.Open)?.which
            PadKey(face(offer), "key-${offer.tag}", layout.text.primary.toFloat(), layout.text.sub.toFloat(), Modifier.at(keys.wide)) { goal?.let(open) }
        }
    }
}

/**
 * What the digits count, casts left, the nets and what they are based on: each as high as its text needs, all within
 * the place.
 */
@Composable
private fun NowBody(sheet: Sheet, place: Rect) = with(sheet) {
    val body = largestDrawn(layout.text.body.toFloat()) { em ->
        val all = view.lines.sumOf { lineHeight(it, em, place.width) } + view.nets.sumOf { netHeight(it, em) }
        place.height / (all + texts(listOf(view.says), em * 1.1f, place.width) + texts(view.notes, em * 0.9f, place.width))
    }
    val says = texts(listOf(view.says), body * 1.1f, place.width)
    val heights = view.lines.map { lineHeight(it, body, place.width) }
    val nets = view.nets.map { netHeight(it, body) }
    val notes = texts(view.notes, body * 0.9f, place.width)
    val stack = Stack(place, says + heights.sum() + nets.sum() + notes)
    FitText(view.says, body * 1.1f, LocalInk.current.ink, Modifier.at(stack.next(says)), FontWeight.Bold)
    view.lines.forEachIndexed { i, line -> MatchFigure(line, "match-line-$i", stack.next(heights[i]), body, stack.tight) }
    view.nets.forEachIndexed { i, net -> NetBar(net, "match-net-$i", stack.next(nets[i]), body) }
    Said(view.notes.joinToString("\n"), "match-notes", stack.next(notes), body * 0.9f)
}

/**
 * Things below each other: each with the height it needs if there is room, otherwise all reduced by the same factor.
 */
private class Stack(private val place: Rect, asked: Double) {
    private val share = if (asked > 0) (place.height / asked).coerceAtMost(ROOMY) else 1.0
    private var top = place.top

    /** Too low for labels above their values. */
    val tight = share < TIGHT
    fun next(height: Double) = Rect(place.left, top, place.width, height * share).also { top += height * share }
}

@Composable
private fun Coming(sheet: Sheet) = with(sheet) {
    val mm = LocalPxPerMm.current
    val body = layout.text.body.toFloat()
    var turned by rememberSaveable { mutableStateOf(0) }
    val pages = if (view.comingFigures.lines.isEmpty()) 1 else 2
    val page = turned % pages
    if (page == 1) {
        FiguresPage(view.comingFigures, PageHead(view.comingFigures.title, notice, layout), layout)
    } else {
        val place = PageHead(view.toComing.label, notice, layout)
        val says = texts(listOf(view.comingSays), body * BOLD, place.width)
        Box(Modifier.at(place.copy(height = says)).tagged("coming-says").semantics { contentDescription = view.comingSays }) {
            FitText(view.comingSays, body, LocalInk.current.ink, Modifier.fillMaxSize(), FontWeight.Bold, middle = false)
        }
        val top = says + 2 * mm
        Lines(view.coming, "coming", place.copy(top = place.top + top, height = place.height - top), body)
    }
    Pager(page, pages, layout) { turned = it }
}

@Composable
private fun WeighIn(sheet: Sheet, page: WeighInPage) = with(sheet) {
    val place = PageHead(page.title, notice, layout, keys.typing)
    Figure(page.figure, page.notes, page.lines, place, keys.figure, layout)
    Pad(page, sheet)
}

/** A number being typed and, if [place] has room, what is known about it; a screen reader hears both. */
@Composable
internal fun Figure(figure: String, says: List<String>, lines: List<MatchLine>, place: Rect, low: Rect, layout: BankLayout) {
    val ink = LocalInk.current
    val body = layout.text.body.toFloat()
    val alone = place.height <= 0
    val spoken = if (alone) (listOf(figure) + says).joinToString(" ") else figure
    Box(Modifier.at(low).tagged("figure").semantics { contentDescription = spoken; liveRegion = LiveRegionMode.Polite }) {
        FitText(figure, (low.height * 0.8).toFloat(), ink.ink, Modifier.fillMaxSize(), FontWeight.Bold)
    }
    if (alone) return
    val heights = lines.map { lineHeight(it, body, place.width) }
    val said = texts(says, body, place.width)
    val stack = Stack(place, heights.sum() + said)
    lines.forEachIndexed { i, line -> MatchFigure(line, "weighed-$i", stack.next(heights[i]), body, stack.tight) }
    Said(says.joinToString(" "), "figure-says", stack.next(said), body)
}

@Composable
private fun Pad(page: WeighInPage, sheet: Sheet) = with(sheet) {
    val mm = LocalPxPerMm.current
    val px = commonEm(page.pad.mapIndexed { i, key -> key.label to labelPlace(keys.pad[i], false, mm) }, layout.text.primary.toFloat())
    page.pad.forEachIndexed { i, key -> KeyAt(key, key.tag, keys.pad[i], sheet, px = px, withSub = false) }
    KeyAt(page.weighed, page.weighed.tag, keys.wide, sheet, large = true)
}

/** Labels with their values below them. */
@Composable
private fun Lines(lines: List<MatchLine>, tag: String, place: Rect, body: Float) {
    val heights = lines.map { lineHeight(it, body, place.width) }
    val stack = Stack(place, heights.sum())
    lines.forEachIndexed { i, line -> MatchFigure(line, "$tag-$i", stack.next(heights[i]), body, stack.tight) }
}

/** A label with its value below it, or beside it if there is little room. */
@Composable
private fun MatchFigure(line: MatchLine, tag: String, place: Rect, body: Float, tight: Boolean) {
    val ink = LocalInk.current
    if (tight) {
        Box(Modifier.at(place).tagged(tag).semantics { contentDescription = line.spoken }) {
            FitText(line.spoken, body, ink.ink, Modifier.fillMaxSize(), FontWeight.Bold)
        }
        return
    }
    val label = texts(listOf(line.label), body * LABEL, place.width)
    val share = label / lineHeight(line, body, place.width)
    Box(Modifier.at(place).tagged(tag).semantics { contentDescription = line.spoken }) {
        FitText(line.label, body * LABEL, ink.ink, Modifier.at(Rect(0.0, 0.0, place.width, place.height * share)), middle = false)
        FitText(
            line.value, body * VALUE, ink.ink, Modifier.at(Rect(0.0, place.height * share, place.width, place.height * (0.97 - share))),
            FontWeight.Bold, middle = false,
        )
    }
}

/** Height of a label and its value at their own size, px. */
private fun lineHeight(line: MatchLine, body: Float, width: Double) =
    texts(listOf(line.label), body * LABEL, width) + texts(listOf(line.value), body * VALUE * BOLD, width) + body * 0.3

/** Height of texts below each other, px. */
private fun texts(all: List<String>, em: Float, width: Double) = all.sumOf { linesOf(it, em, width) } * em * 1.25

@Composable
private fun Said(text: String, tag: String, place: Rect, px: Float) {
    if (text.isBlank()) return
    Box(Modifier.at(place).tagged(tag).semantics { contentDescription = text }) {
        FitText(text, px, LocalInk.current.ink, Modifier.fillMaxSize(), middle = false)
    }
}

@Composable
private fun KeyAt(key: MatchKey, tag: String, place: Rect, sheet: Sheet, large: Boolean = false, px: Float? = null, withSub: Boolean = true) {
    val layout = sheet.layout
    val face = KeyFace(key.label, key.sub.takeIf { withSub }, key.spoken, solid = key.solid && key.enabled, enabled = key.enabled)
    val em = px ?: (if (large) layout.text.primary else layout.text.secondary).toFloat()
    PadKey(face, tag, em, layout.text.sub.toFloat(), Modifier.at(place)) { sheet.onTap(key.tap) }
}

@Composable
private fun PageKeyAt(key: PageKey, tag: String, place: Rect, sheet: Sheet, solid: Boolean = false, large: Boolean = false, onTap: () -> Unit) {
    val layout = sheet.layout
    val face = KeyFace(key.label, key.sub, key.spoken, solid)
    val em = (if (large) layout.text.primary else layout.text.secondary).toFloat()
    PadKey(face, tag, em, layout.text.sub.toFloat(), Modifier.at(place), onTap = onTap)
}

/** Height of the digits, mm. */
private const val CLOCK_MM = 13.0

/** Size of a label and of a value relative to other text. */
private const val LABEL = 0.9f
private const val VALUE = 1.15f

/** How much wider bold letters are. */
private const val BOLD = 1.08f

/** Below this share of the height they need, labels are beside their values. */
private const val TIGHT = 0.8

/** How much looser the spacing is if there is room. */
private const val ROOMY = 1.3
