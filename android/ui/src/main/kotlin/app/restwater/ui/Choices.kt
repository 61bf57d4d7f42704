package app.restwater.ui

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.text.BasicTextField
import androidx.compose.foundation.text.KeyboardOptions
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.runtime.staticCompositionLocalOf
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.focus.onFocusChanged
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.SolidColor
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.paneTitle
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.semantics.traversalIndex
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.text.input.KeyboardCapitalization
import androidx.compose.ui.unit.Dp
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.ChoiceRow
import app.restwater.core.ScreenGroup
import app.restwater.core.ScreenListView
import app.restwater.core.GridAsk
import app.restwater.core.Key
import app.restwater.core.Keyboard
import app.restwater.core.LeafKey
import app.restwater.core.PadWords
import app.restwater.core.PagePlace
import app.restwater.core.Rect
import app.restwater.core.SetupView
import app.restwater.core.TackleView
import app.restwater.core.TypedField
import app.restwater.core.keyGrid
import app.restwater.core.pagerWords

/** Millimetres on this screen. */
@Composable
private fun mm(value: Float): Dp = with(LocalDensity.current) { (value * LocalPxPerMm.current).toDp() }

/** Setting up a session: everything may be left as it is, and START is always visible. */
@Composable
fun SetupScreen(
    setup: SetupView,
    layout: BankLayout,
    words: PadWords,
    notice: String,
    onAct: (Action) -> Unit,
    onStart: () -> Unit,
    onCautions: () -> Unit = { },
    onBack: () -> Unit,
) {
    var open by rememberSaveable { mutableStateOf<String?>(null) }
    Ground()
    val rest = PageHead(setup.title, notice, layout, layout.setUp)
    if (open == null) {
        setup.fields.forEachIndexed { i, line -> Field(line, layout, part(rest, i), onAct) }
    }
    val taken = if (open == null) part(rest, setup.fields.size).top - rest.top else 0.0
    val place = Rect(rest.left, rest.top + taken, rest.width, rest.height - taken)
    val cautions = with(setup.cautions) { Cell(KeyFace(label, sub, spoken), "open-${Showing.CAUTIONS}", onTap = onCautions) }
    RowsAnd(listOf(cautions), setup.rows.map { it.shown(onAct) }, open, { open = it }, place, layout, onAct, layout.setUpPager, "")
    val face = with(setup.start) { KeyFace(label, sub, spoken, solid = true) }
    PadKey(face, tag(Key.START), layout.text.primary.toFloat(), layout.text.sub.toFloat(), Modifier.at(layout.start), ORDER_START, onStart)
    Back(layout, words) { if (open == null) onBack() else open = null }
}

/** Spot and rig of one rod, changed by taps; in force from its next cast. */
@Composable
fun TackleScreen(
    tackle: TackleView,
    layout: BankLayout,
    words: PadWords,
    notice: String,
    onAct: (Action) -> Unit,
    row: String? = null,
    onBack: () -> Unit,
) {
    RowsScreen(tackle.title, tackle.rows, layout, words, notice, onAct, tackle.caution, tackle.cautionOn, emptyList(), { _, _ -> }, row, onBack)
}

/** A screen of choices and nothing else. [row]: the row that is open at first. */
@Composable
fun RowsScreen(
    title: String,
    rows: List<ChoiceRow>,
    layout: BankLayout,
    words: PadWords,
    notice: String,
    onAct: (Action) -> Unit,
    caution: String,
    cautionOn: List<String>,
    own: List<ShellRow>,
    onOwn: (String, String) -> Unit,
    row: String?,
    onBack: () -> Unit,
) {
    var open by rememberSaveable { mutableStateOf(row) }
    Ground()
    val rest = PageHead(title, notice, layout)
    val said = caution.takeIf { open == null || open in cautionOn }.orEmpty()
    val shown = rows.map { it.shown(onAct) } + own.map { it.shown(onOwn) }
    RowsAnd(emptyList(), shown, open, { open = it }, rest, layout, onAct, layout.pager, said)
    Back(layout, words) { if (open == null) onBack() else open = null }
}

/**
 * The screens that can be opened, with a key for each, as the core lists them. Those of the bank are nearest to the
 * thumb, the others above them under their heading. If both groups don't fit, they are one grid of several pages.
 */
@Composable
fun ScreenList(list: ScreenListView, layout: BankLayout, words: PadWords, onOpen: (Showing) -> Unit, onBack: () -> Unit) {
    Ground()
    val mm = LocalPxPerMm.current
    val ink = LocalInk.current
    val rest = PageHead("", "", layout)
    fun cells(group: ScreenGroup?) = list.keys.filter { group == null || it.group == group }.map { key ->
        val goal = Showing.of(key.which)
        Cell(KeyFace(key.label, key.sub, key.spoken), "open-$goal") { onOpen(goal) }
    }
    val groups = listOf(list.beforeAndAfter to cells(ScreenGroup.BEFORE_AND_AFTER), list.onTheBank to cells(ScreenGroup.ON_THE_BANK))
    // Large headings become smaller before they are dropped.
    val keys = groups.sumOf { gridHeight(it.second.size, layout) + 2.0 * mm }
    val usual = layout.text.body * 1.3
    val heading = ((rest.height - keys) / groups.size).coerceIn(usual * layout.usualShare(mm), usual)
    if (groups.size * heading + keys > rest.height) {
        val all = cells(ScreenGroup.ON_THE_BANK) + cells(ScreenGroup.BEFORE_AND_AFTER)
        KeyGrid(all, rest, layout, breaks = true)
    } else {
        var bottom = rest.top + rest.height
        for ((i, group) in groups.withIndex().reversed()) {
            val (title, keys) = group
            // A screen reader reads the heading at the thumb and its own keys, then the other group.
            val order = ORDER_GRID + 10 * (groups.lastIndex - i)
            val height = gridHeight(keys.size, layout)
            KeyGrid(keys, rest.copy(top = bottom - height, height = height), layout, order = order)
            bottom -= height + heading
            val place = rest.copy(top = bottom, height = heading)
            Box(Modifier.at(place).semantics { heading(); contentDescription = title; traversalIndex = order - 0.5f }) {
                FitText(title, layout.text.body.toFloat(), ink.ink, Modifier.fillMaxSize(), FontWeight.Bold)
            }
            bottom -= 2.0 * mm
        }
    }
    Back(layout, words, onBack = onBack)
}

@Composable
internal fun Ground() = Box(Modifier.fillMaxSize().background(LocalInk.current.paper))

/** BACK is in the corner of the thumb. The system's own back gesture does the same as the key. */
@Composable
internal fun Back(layout: BankLayout, words: PadWords, at: Rect = layout.back, onBack: () -> Unit) {
    LocalSystemBack.current(onBack)
    PadKey(words.back.face(), "back", layout.text.secondary.toFloat(), 0f, Modifier.at(at), ORDER_BACK, onBack)
}

/** The only pager: MORE, with the page number and how many there are. It appears if there is more than one page. */
@Composable
internal fun Pager(page: Int, pages: Int, layout: BankLayout, at: Rect = layout.pager, onTurn: (Int) -> Unit) {
    if (pages < 2) return
    val px = layout.text.secondary.toFloat()
    PadKey(pagerFace(page, pages), "next-page", px, px * PAGE_OF, Modifier.at(at), ORDER_PAGER) { onTurn((page + 1) % pages) }
}

/** What the pager says on page [page], from 0. */
@Composable
internal fun pagerFace(page: Int, pages: Int): KeyFace {
    val said = remember(page, pages) { pagerWords((page + 1).toUInt(), pages.toUInt(), language()) }
    return KeyFace(said.label, said.of, said.spoken)
}

// The order in which a screen reader reads: the sentences, then the keys of a grid from its first, then MORE and BACK.
private const val ORDER_GRID = 50f
private const val ORDER_START = 80f
private const val ORDER_PAGER = 85f
private const val ORDER_BACK = 90f

/** Size of "2 of 4" relative to the word above it. */
internal const val PAGE_OF = 0.8f

/** How a shell receives the system's back gesture; a window on a PC has none. */
val LocalSystemBack = staticCompositionLocalOf<@Composable (onBack: () -> Unit) -> Unit> { { } }

/** Title and notice of a page; returns the rest of it. */
@Composable
internal fun PageHead(title: String, notice: String, layout: BankLayout, page: PagePlace = layout.page): Rect {
    val ink = LocalInk.current
    Box(Modifier.at(page.title.copy(width = 1.0, height = 1.0)).semantics { paneTitle = title })
    // Large text has the line of the notice too while there is none.
    val both = layout.apart && notice.isBlank() && page.title != page.notice
    val place = if (both) page.title.copy(height = page.notice.top + page.notice.height - page.title.top) else page.title
    Box(Modifier.at(place).semantics { heading(); contentDescription = title }) {
        // If they share a place, the notice is shown instead of the title.
        if (page.title != page.notice || notice.isBlank()) FitText(title, layout.text.headline.toFloat(), ink.ink, Modifier.fillMaxSize(), FontWeight.Bold)
    }
    Box(Modifier.at(page.notice).tagged("notice").semantics { contentDescription = notice; liveRegion = LiveRegionMode.Assertive }) {
        FitText(notice, layout.text.body.toFloat(), ink.ink, Modifier.fillMaxSize())
    }
    return page.rest
}

/** The fields as keys; the open one as the keys of its choices. Nothing scrolls. */
@Composable
internal fun Rows(
    rows: List<ChoiceRow>, open: String?, onOpen: (String?) -> Unit, place: Rect, layout: BankLayout, onAct: (Action) -> Unit,
) = RowsAnd(emptyList(), rows.map { it.shown(onAct) }, open, onOpen, place, layout, onAct, layout.pager, "")

/** A row as it is drawn: one of the core's, or one of this shell. */
private class ShownRow(
    val tag: String, val label: String, val value: String, val spoken: String, val source: String, val typing: TypedField?, val choices: List<Cell>,
    val reads: Boolean = false,
)

private fun choice(row: String, tag: String, label: String, spoken: String, chosen: Boolean, onTap: () -> Unit) =
    Cell(KeyFace(label, null, spoken, chosen = chosen), "choice-$row-$tag", reads = true, onTap)

private fun ChoiceRow.shown(onAct: (Action) -> Unit) =
    ShownRow(tag, label, value, spoken, source, typing, choices.map { choice(tag, it.tag, it.label, it.spoken, it.chosen) { onAct(it.action) } }, reads)

private fun ShellRow.shown(onChoose: (String, String) -> Unit) =
    ShownRow(tag, label, value, spoken, source, null, choices.map { choice(tag, it.tag, it.label, spoken(it), it.chosen) { onChoose(tag, it.tag) } })

/** The same, with a caution above and other keys after the fields. */
@Composable
private fun RowsAnd(
    more: List<Cell>, rows: List<ShownRow>, open: String?, onOpen: (String?) -> Unit, place: Rect, layout: BankLayout,
    onAct: (Action) -> Unit, pager: Rect, caution: String,
) {
    val row = rows.find { it.tag == open }
    val body = layout.text.body.toFloat()
    val keys = row?.choices?.size ?: (rows.size + more.size)
    val parts = rowParts(row?.spoken, row?.source.orEmpty(), 1f to SOURCE_EM, keys, place, layout, row?.typing != null, caution)
    if (parts.caution.height > 0) Caution(caution, body * CAUTION_EM, parts.caution)
    if (row == null) {
        val opened = LocalOpened.current
        val fields = rows.map { field ->
            Cell(KeyFace(field.label, field.value, field.spoken), "row-${field.tag}", field.reads) { opened(); onOpen(field.tag) }
        }
        KeyGrid(fields + more, parts.keys, layout, pager = pager, breaks = true)
        return
    }
    val ink = LocalInk.current
    SpokenText(row.spoken, body, ink.ink, Modifier.at(parts.says), FontWeight.Bold)
    if (parts.source.height > 0) SpokenText(row.source, body * SOURCE_EM, ink.soft, Modifier.at(parts.source))
    row.typing?.let { TypedLine(it, layout, parts.field) }
    KeyGrid(row.choices, parts.keys, layout, pager = pager)
}

/** Height of a grid of this number of keys, including the gap above it. */
@Composable
internal fun gridHeight(keys: Int, layout: BankLayout): Double = rowsOf(keys, layout) * 18.0 * LocalPxPerMm.current

/**
 * The same below a sentence, of which at least three lines are visible; the pager leads to the rows for which there is
 * no room.
 */
@Composable
internal fun keysBelow(sentence: String, keys: Int, place: Rect, layout: BankLayout): Double {
    val row = 18.0 * LocalPxPerMm.current
    val body = layout.text.body.toFloat()
    val words = heights().of(sentence, body, place.width).coerceAtMost(place.height / 3)
    return gridHeight(keys, layout).coerceAtMost(row * ((place.height - words) / row).toInt().coerceAtLeast(1))
}

internal fun rowsOf(keys: Int, layout: BankLayout): Int = (keys + layout.columns.toInt() - 1) / layout.columns.toInt()

/** One key of a grid; whether it is read from left to right by either hand with those beside it that are too. */
internal class Cell(val face: KeyFace, val tag: String, val reads: Boolean = false, val onTap: () -> Unit)

/** One page of a grid of this number of keys, as the core places them. */
private fun gridAsk(keys: Int, place: Rect, layout: BankLayout, mm: Float, page: Int, widest: Double, reads: List<Boolean>, breaks: Boolean) =
    GridAsk(place, keys.toUInt(), page.toUInt(), layout.columns, mm.toDouble(), layout.leftHanded, layout.apart, widest, breaks, reads)

/** Pages of a grid of this number of keys in a place, with labels, or words if labels may be broken, up to [widest] px. */
internal fun gridPages(keys: Int, place: Rect, layout: BankLayout, mm: Float, widest: Double = 0.0, breaks: Boolean = false): Int =
    keyGrid(gridAsk(keys, place, layout, mm, 0, widest, emptyList(), breaks)).pages.toInt()

/** Width of the widest label of large text at the size that is asked for, or of its widest word; 0 for other text. */
@Composable
internal fun widestLabel(cells: List<Cell>, layout: BankLayout, breaks: Boolean = false): Double {
    val (measurer, density) = textMeasurer() to LocalDensity.current
    val (labels, em) = cells.map { it.face.label } to gridLabel(layout)
    return remember(labels, em, density, layout.apart, breaks) {
        if (!layout.apart) return@remember 0.0
        val parts = if (breaks) labels.flatMap { it.split(' ') } else labels
        parts.maxOfOrNull { measurer.width(it, em, density, FontWeight.Bold) } ?: 0.0
    }
}

/** Size of a label of a grid. */
private fun gridLabel(layout: BankLayout) = layout.text.secondary.toFloat() * 0.9f

/** Keys 15 mm high in columns; if they don't all fit, the pager turns their pages. */
@Composable
internal fun KeyGrid(
    cells: List<Cell>, place: Rect, layout: BankLayout, pager: Rect = layout.pager, order: Float = ORDER_GRID, breaks: Boolean = false,
) {
    val widest = if (breaks) widestLabel(cells, layout, breaks) else 0.0
    val pages = gridPages(cells.size, place, layout, LocalPxPerMm.current, widest, breaks)
    var page by rememberSaveable(cells.size, pages) { mutableStateOf(0) }
    KeyGridPage(cells, place, layout, page, order, widest, breaks)
    Pager(page, pages, layout, pager) { page = it }
}

/** One page of such keys, on a screen that turns them with its own pages; beyond the end, the last page. */
@Composable
internal fun KeyGridPage(
    cells: List<Cell>, place: Rect, layout: BankLayout, page: Int, order: Float = ORDER_GRID, widest: Double = 0.0, breaks: Boolean = false,
) {
    val mm = LocalPxPerMm.current
    val ask = gridAsk(cells.size, place, layout, mm, page, widest, cells.map { it.reads }, breaks)
    val grid = remember(ask) { keyGrid(ask) }
    val shown = cells.drop(grid.first.toInt()).take(grid.places.size)
    val labels = shown.mapIndexed { i, cell -> cell.face.label to labelPlace(grid.places[i], cell.face.sub != null, mm) }
    val px = commonEm(labels, gridLabel(layout))
    shown.forEachIndexed { i, cell ->
        PadKey(cell.face, cell.tag, px, layout.text.sub.toFloat(), Modifier.at(grid.places[i]), order + i / 100f, cell.onTap)
    }
}

/** Line number [i] of the typed fields. */
@Composable
internal fun part(place: Rect, i: Int): Rect {
    val height = 9.0 * LocalPxPerMm.current
    return place.copy(top = place.top + i * height, height = height)
}

/** A line that is typed into a field of the core, and passed on when it has changed. */
@Composable
internal fun Field(line: TypedField, layout: BankLayout, place: Rect, onAct: (Action) -> Unit) =
    Field(line.tag, line.label, line.value, layout, place, line.keyboard) { onAct(Action.Typed(line.into, it)) }

/** A line that is typed, and passed on when it has changed. */
@Composable
internal fun Field(
    tag: String, label: String, value: String, layout: BankLayout, place: Rect, keyboard: Keyboard = Keyboard.NAME, onTyped: (String) -> Unit,
) {
    val ink = LocalInk.current
    var typed by rememberSaveable { mutableStateOf(value) }
    var typing by remember { mutableStateOf(false) }
    // What was typed and not answered yet. The core's answer to a letter must not overtake the next letter, but what
    // comes from elsewhere, such as the phone's position, is shown even while the field has the focus.
    val sent = remember { mutableListOf<String>() }
    LaunchedEffect(value, typing) {
        val answered = sent.indexOf(value)
        if (typing && answered >= 0) {
            sent.subList(0, answered + 1).clear()
        } else {
            sent.clear()
            typed = value
        }
    }
    val em = layout.text.body.toFloat()
    val style = TextStyle(ink.ink, with(LocalDensity.current) { (em * 1.2f).toSp() }, FontWeight.Bold, fontFamily = Face.words)
    Row(Modifier.at(place), verticalAlignment = Alignment.CenterVertically) {
        FitText(label, em, ink.ink, Modifier.width(mm(14f)).height(mm(6f)))
        BasicTextField(
            typed, { typed = it; sent += it; onTyped(it) },
            Modifier.weight(1f).padding(vertical = mm(2f)).tagged("field-$tag").onFocusChanged { typing = it.isFocused }
                .semantics { contentDescription = label }
                .drawBehind { drawLine(ink.ink, Offset(0f, size.height), Offset(size.width, size.height), 3f) },
            textStyle = style, singleLine = true, cursorBrush = SolidColor(ink.accent), keyboardOptions = options(keyboard),
        )
    }
}

/** A name and a sentence begin with a capital; numbers and degrees don't need one. */
private fun options(keyboard: Keyboard) = KeyboardOptions(
    capitalization = when (keyboard) {
        Keyboard.NAME -> KeyboardCapitalization.Words
        Keyboard.TEXT -> KeyboardCapitalization.Sentences
        Keyboard.FIGURE, Keyboard.DEGREES -> KeyboardCapitalization.None
    },
)

/** What a key calls when it has opened a row, a leaf or a page of its own, so that a second tap of a cold thumb hits nothing there. */
internal val LocalOpened = staticCompositionLocalOf<() -> Unit> { {} }

/** How a typed text is passed to the core, and what is done when it was accepted. */
internal val LocalSend = staticCompositionLocalOf<(action: Action, then: () -> Unit) -> Unit> { { _, _ -> } }

/** A text that is typed and entered by its key; with cold hands nobody has to. */
@Composable
internal fun TypedLine(typing: TypedField, layout: BankLayout, place: Rect) {
    val send = LocalSend.current
    val ink = LocalInk.current
    val mm = LocalPxPerMm.current
    val (drafts, showing) = LocalDrafts.current ?: remember { Drafts() to { Showing.BANK } }
    val about = drafts.place(showing(), typing.tag)
    val text = drafts[about]
    val em = layout.text.body.toFloat()
    val style = TextStyle(ink.ink, with(LocalDensity.current) { em.toSp() }, FontWeight.Medium, fontFamily = Face.words)
    val width = 15.0 * mm
    Box(Modifier.at(place.copy(width = place.width - width - 2.0 * mm)), contentAlignment = Alignment.CenterStart) {
        BasicTextField(
            text, { drafts[about] = it },
            Modifier.fillMaxWidth().tagged("typed-${typing.tag}").semantics { contentDescription = typing.label }
                .drawBehind { drawLine(ink.ink, Offset(0f, size.height), Offset(size.width, size.height), 3f) },
            textStyle = style, singleLine = true, cursorBrush = SolidColor(ink.accent), keyboardOptions = options(typing.keyboard),
            decorationBox = { inner ->
                if (text.isEmpty()) FitText(typing.label, em, ink.soft, Modifier.fillMaxWidth().height(mm(6f)))
                inner()
            },
        )
    }
    val key = place.copy(left = place.left + place.width - width, width = width, height = place.height - 1.0 * mm)
    PadKey(KeyFace(typing.send, null, typing.sendSpoken, enabled = text.isNotBlank()), "send-${typing.tag}", em, em, Modifier.at(key)) {
        // A text that the core refuses stays, so that it can be corrected.
        send(Action.Typed(typing.into, text)) { drafts[about] = "" }
    }
}
