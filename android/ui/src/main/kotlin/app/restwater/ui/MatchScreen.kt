package app.restwater.ui

import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
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
import app.restwater.core.LeafLine
import app.restwater.core.MatchKey
import app.restwater.core.MatchLayout
import app.restwater.core.MatchLine
import app.restwater.core.MatchTap
import app.restwater.core.MatchView
import app.restwater.core.NetView
import app.restwater.core.NetWarning
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
    val top = place.top + clock + if (clock > 0) 1.5 * mm else 0.0
    val below = place.copy(top = top, height = place.top + place.height - top)
    // Where it doesn't fit at its size it has as many pages as it needs; the digits are on the first, and the rest of the others is
    // free for words.
    val parts = nowParts(sheet, below, place)
    var turned by rememberSaveable { mutableStateOf(0) }
    val page = if (parts.isEmpty()) 0 else turned % parts.size
    if (clock > 0 && page == 0) Digits({ view.digits }, LocalInk.current.ink, Modifier.at(place.copy(height = clock)))
    Box(Modifier.at(place.copy(height = clock.coerceAtLeast(mm * 1.0))).tagged("match-clock").semantics {
        contentDescription = view.spoken
        liveRegion = LiveRegionMode.Polite
    })
    if (parts.isEmpty()) NowBody(sheet, below) else LeafBlocks(parts[page], if (page == 0) below else place, layout)
    NowKeys(sheet, page, parts.size)
    Pager(page, parts.size, layout, keys.small.last()) { turned = it }
}

/** The keys below a page of the running match. A pager has the last small place; the rules are then on the pages after the first. */
@Composable
private fun NowKeys(sheet: Sheet, page: Int, pages: Int) = with(sheet) {
    val (begin, weighIn, offer) = Triple(view.begin, view.weighIn, view.offer)
    when {
        weighIn != null -> {
            PageKeyAt(view.toFish, "match-fish", keys.wide, sheet, solid = view.fishWaits, large = true) { open(Which.FISH) }
            val (coming, scales) = Triple(view.toComing, "match-coming", MatchPage.COMING) to Triple(view.toWeighIn, "match-scales", MatchPage.WEIGH_IN)
            val rules = view.toRules?.let { Triple(it, "match-rules", MatchPage.RULES) }
            val small = if (pages < 2) listOfNotNull(coming, scales, rules) else listOf(coming, if (page == 0) scales else rules ?: scales)
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

/** The pages, each at the size the phone is set to; none if one page has room for all of it. */
@Composable
private fun nowParts(sheet: Sheet, first: Rect, others: Rect): List<List<Block>> = with(sheet) {
    val mm = LocalPxPerMm.current
    val heights = heights()
    val cutter = cutter(layout, first.width)
    val body = layout.text.body.toFloat()
    remember(view.says, view.limitSays, view.lines, view.nets, view.notes, layout, first, others, heights, cutter) {
        if (stacked(heights, view, first, body, mm) != null) return@remember emptyList()
        val blocks = listing {
            add(Block.Words(view.says, body, FontWeight.Bold, "match-says", heights.of(view.says, body, first.width, FontWeight.Bold) + BELOW_MM * mm, 0.0))
            if (view.limitSays.isNotBlank()) {
                val high = heights.of(view.limitSays, body, first.width, FontWeight.Bold) + BELOW_MM * mm
                add(Block.Words(view.limitSays, body, FontWeight.Bold, "match-limit", high, 0.0))
            }
            // A net near its limit stays beside the sentence about it.
            val (near, clear) = view.nets.withIndex().partition { (_, net) -> net.warning != NetWarning.CLEAR }
            fun nets(of: List<IndexedValue<NetView>>) =
                of.forEach { (i, net) -> add(Block.Net(net, i, body, heights.net(net, body, first.width, mm).height + BELOW_MM * mm)) }
            nets(near)
            view.lines.forEachIndexed { i, line ->
                val leaf = line.ofLeaf()
                add(Block.Figure(leaf, i, body, heights.measurer.lineHeight(leaf, body, first.width, heights.density, mm), null))
            }
            nets(clear)
            view.notes.forEachIndexed { i, note ->
                val em = body * NOTE
                add(Block.Words(note, em, FontWeight.Medium, "match-note-$i", heights.of(note, em, first.width) + BELOW_MM * mm, 0.0))
            }
        }
        parts(blocks, emptyList(), 0.0, 0.0, cutter) { part -> if (part == 0) first.height else others.height }
    }
}

private fun MatchLine.ofLeaf() = LeafLine(label, value, "", spoken, spoken, null, false)

/** Heights of what is below the digits, at one size of text; [tight] if labels are beside their values. */
private class Stacked(heights: Heights, view: MatchView, width: Double, body: Float, mm: Float, val tight: Boolean) {
    val says = heights.texts(listOf(view.says), body * SAYS, width, FontWeight.Bold)
    val limit = heights.texts(listOf(view.limitSays), body, width, FontWeight.Bold)
    val lines = view.lines.map { if (tight) heights.texts(listOf(it.spoken), body, width, FontWeight.Bold) else heights.line(it, body, width) }
    val nets = view.nets.map { heights.net(it, body, width, mm).height }
    val notes = heights.texts(view.notes, body * NOTE, width)
    val height = says + limit + lines.sum() + nets.sum() + notes
}

/** All of it on one page at its size, with labels beside their values if they don't fit above them; none if it needs more pages. */
private fun stacked(heights: Heights, view: MatchView, place: Rect, body: Float, mm: Float): Stacked? =
    listOf(false, true).map { Stacked(heights, view, place.width, body, mm, it) }.find { it.height <= place.height }

/** What the digits count, casts left, the nets and what they are based on, where one page has room for it. */
@Composable
private fun NowBody(sheet: Sheet, place: Rect) = with(sheet) {
    val mm = LocalPxPerMm.current
    val heights = heights()
    val body = layout.text.body.toFloat()
    val all = stacked(heights, view, place, body, mm) ?: return@with
    val stack = Stack(place, all.height)
    FitText(view.says, body * SAYS, LocalInk.current.ink, Modifier.at(stack.next(all.says)), FontWeight.Bold)
    Said(view.limitSays, "match-limit", stack.next(all.limit), body, FontWeight.Bold)
    view.lines.forEachIndexed { i, line -> MatchFigure(line, "match-line-$i", stack.next(all.lines[i]), body, all.tight) }
    view.nets.forEachIndexed { i, net -> NetBar(net, "match-net-$i", stack.next(all.nets[i]), body) }
    Said(view.notes.joinToString("\n"), "match-notes", stack.next(all.notes), body * NOTE)
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
    var turned by rememberSaveable { mutableStateOf(0) }
    val pages = comingPages(sheet)
    val page = turned % pages.size
    pages[page].draw(PageHead(pages[page].title, notice, layout))
    Pager(page, pages.size, layout) { turned = it }
}

/** What is to come, and how it was obtained; each on one page, or on as many as large text needs at its size. */
@Composable
private fun comingPages(sheet: Sheet): List<ScreenPage> = with(sheet) {
    val (rest, label) = layout.page.rest to view.toComing.label
    val figures = if (view.comingFigures.lines.isEmpty()) emptyList() else figurePages(view.comingFigures, emptyList(), null, layout)
    if (!layout.apart) return listOf(ScreenPage(label, emptyList()) { ComingPage(sheet, it) }) + figures
    val parts = spread(view.comingSays, emptyList(), rest, layout, remember(view.coming) { view.coming.map { it.ofLeaf() } })
    return parts.map { part -> ScreenPage(label, emptyList()) { LeafBlocks(part, it, layout) } } + figures
}

@Composable
private fun ComingPage(sheet: Sheet, place: Rect) = with(sheet) {
    val body = layout.text.body.toFloat()
    val says = heights().texts(listOf(view.comingSays), body, place.width, FontWeight.Bold)
    Box(Modifier.at(place.copy(height = says)).tagged("coming-says").semantics { contentDescription = view.comingSays }) {
        FitText(view.comingSays, body, LocalInk.current.ink, Modifier.fillMaxSize(), FontWeight.Bold, middle = false)
    }
    val top = says + 2 * LocalPxPerMm.current
    Lines(view.coming, "coming", place.copy(top = place.top + top, height = place.height - top), body)
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
    val measured = heights()
    val heights = lines.map { measured.line(it, body, place.width) }
    val said = measured.texts(says, body, place.width)
    val stack = Stack(place, heights.sum() + said)
    lines.forEachIndexed { i, line -> MatchFigure(line, "weighed-$i", stack.next(heights[i]), body, stack.tight) }
    Said(says.joinToString(" "), "figure-says", stack.next(said), body)
}

/** Sizes of the labels of a number pad: one for its figures, and one for its words, which are wider. */
@Composable
internal fun padEms(labels: List<Pair<String, Rect>>, emPx: Float): List<Float> {
    val (figures, words) = labels.partition { it.first.length == 1 }
    val (ofFigures, ofWords) = commonEm(figures, emPx) to commonEm(words, emPx)
    return labels.map { if (it.first.length == 1) ofFigures else ofWords }
}

@Composable
private fun Pad(page: WeighInPage, sheet: Sheet) = with(sheet) {
    val mm = LocalPxPerMm.current
    val labels = page.pad.mapIndexed { i, key -> key.label to labelPlace(keys.pad[i], key.sub.isNotBlank(), mm) }
    val px = padEms(labels, layout.text.primary.toFloat())
    page.pad.forEachIndexed { i, key -> KeyAt(key, key.tag, keys.pad[i], sheet, px = px[i]) }
    KeyAt(page.weighed, page.weighed.tag, keys.wide, sheet, large = true)
}

/** Labels with their values below them. */
@Composable
private fun Lines(lines: List<MatchLine>, tag: String, place: Rect, body: Float) {
    val measured = heights()
    val heights = lines.map { measured.line(it, body, place.width) }
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
    val heights = heights()
    val share = heights.texts(listOf(line.label), body * LABEL, place.width) / heights.line(line, body, place.width)
    Box(Modifier.at(place).tagged(tag).semantics { contentDescription = line.spoken }) {
        FitText(line.label, body * LABEL, ink.ink, Modifier.at(Rect(0.0, 0.0, place.width, place.height * share)), middle = false)
        FitText(
            line.value, body * VALUE, ink.ink, Modifier.at(Rect(0.0, place.height * share, place.width, place.height * (0.97 - share))),
            FontWeight.Bold, middle = false,
        )
    }
}

/** Height of a label and its value at their own size, px. */
private fun Heights.line(line: MatchLine, body: Float, width: Double) =
    texts(listOf(line.label), body * LABEL, width) + texts(listOf(line.value), body * VALUE, width, FontWeight.Bold) + body * 0.3

/** Height of texts below each other with a little room between them, px. */
private fun Heights.texts(all: List<String>, em: Float, width: Double, weight: FontWeight = FontWeight.Medium) = of(all, em, width, weight) * LOOSE

@Composable
private fun Said(text: String, tag: String, place: Rect, px: Float, weight: FontWeight = FontWeight.Medium) {
    if (text.isBlank()) return
    Box(Modifier.at(place).tagged(tag).semantics { contentDescription = text }) {
        FitText(text, px, LocalInk.current.ink, Modifier.fillMaxSize(), weight, middle = false)
    }
}

@Composable
private fun KeyAt(key: MatchKey, tag: String, place: Rect, sheet: Sheet, large: Boolean = false, px: Float? = null) {
    val layout = sheet.layout
    val face = KeyFace(key.label, key.sub, key.spoken, solid = key.solid && key.enabled, enabled = key.enabled)
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

/** Size of what the digits count and of the notes relative to other text. */
private const val SAYS = 1.1f
private const val NOTE = 0.9f

/** How much higher a place is than the lines in it. */
private const val LOOSE = 1.04

/** Below a block of large text, mm. */
private const val BELOW_MM = 1.5

/** Below this share of the height they need, labels are beside their values. */
private const val TIGHT = 0.8

/** How much looser the spacing is if there is room. */
private const val ROOMY = 1.3
