package app.restwater.ui

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.ExperimentalLayoutApi
import androidx.compose.foundation.layout.FlowRow
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.height
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.size
import androidx.compose.foundation.layout.width
import androidx.compose.foundation.rememberScrollState
import androidx.compose.foundation.text.BasicTextField
import androidx.compose.foundation.verticalScroll
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.draw.drawBehind
import androidx.compose.ui.focus.onFocusChanged
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.SolidColor
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.heading
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.text.TextStyle
import androidx.compose.ui.text.font.FontWeight
import androidx.compose.ui.unit.Dp
import app.restwater.core.BankLayout
import app.restwater.core.BankView
import app.restwater.core.ChoiceRow
import app.restwater.core.Key
import app.restwater.core.PadWords
import app.restwater.core.Rect
import app.restwater.core.SetupView
import app.restwater.core.TackleView

/** Millimetres of this glass. */
@Composable
private fun mm(value: Float): Dp = with(LocalDensity.current) { (value * LocalPxPerMm.current).toDp() }

/** Everything from the top of the keys that stay up to the top of the glass. */
private fun above(layout: BankLayout, below: Rect) =
    Rect(layout.header.left, layout.header.top, layout.notice.width, below.top - layout.header.top - layout.header.height * 0.3)

/** Setting up a session: everything may be left as it stands, and START is always in sight. */
@Composable
fun SetupScreen(
    setup: SetupView,
    layout: BankLayout,
    words: PadWords,
    notice: String,
    onChoose: (String, String) -> Unit,
    onStart: () -> Unit,
    onBack: () -> Unit,
) {
    val start = layout.keys.first { it.key == Key.START }.rect
    val undo = layout.keys.first { it.key == Key.UNDO }.rect
    Page(above(layout, undo), setup.title, notice, layout) {
        Field("peg", setup.pegLabel, setup.peg, layout, onChoose)
        Field("water", setup.waterLabel, setup.water, layout, onChoose)
        setup.rows.forEach { Choices(it, layout, onChoose) }
    }
    val face = with(setup.start) { KeyFace(label, sub.takeIf { layout.showSubs }, spoken, solid = true) }
    PadKey(face, tag(Key.START), layout.text.primary.toFloat(), layout.text.sub.toFloat(), Modifier.at(start), onTap = onStart)
    PadKey(words.back.face(), "back", layout.text.secondary.toFloat(), 0f, Modifier.at(undo), onTap = onBack)
}

/** Spot and rig of one rod, changed by taps; in force from its next cast. */
@Composable
fun TackleScreen(
    tackle: TackleView,
    layout: BankLayout,
    words: PadWords,
    notice: String,
    onChoose: (String, String) -> Unit,
    onBack: () -> Unit,
) {
    // BACK lies where MORE was: a second tap of a cold thumb turns a page of small keys at most.
    val back = layout.more ?: layout.keys.first { it.key == Key.UNDO }.rect
    Page(above(layout, back), tackle.title, notice, layout) {
        tackle.rows.forEach { Choices(it, layout, onChoose) }
    }
    PadKey(words.back.face(), "back", layout.text.secondary.toFloat(), 0f, Modifier.at(back), onTap = onBack)
}

/** The screens there are, a line each. */
@Composable
fun ScreenList(view: BankView, layout: BankLayout, words: PadWords, onOpen: (Showing) -> Unit) {
    val place = layout.strip
    val text = layout.text.primary.toFloat()
    Box(Modifier.fillMaxSize().background(LocalInk.current.paper)) {
        val line = Rect(place.left, layout.header.top, place.width, 15.0 * LocalPxPerMm.current)
        PadKey(words.back.face(), "back", text, 0f, Modifier.at(line), onTap = { onOpen(Showing.BANK) })
        val next = line.copy(top = line.top + line.height * 1.2)
        view.keys.find { it.key == Key.TACKLE || it.key == Key.START }?.let { key ->
            val goal = if (key.key == Key.START) Showing.SETUP else Showing.TACKLE
            PadKey(KeyFace(key.label, key.sub, key.spoken), "open-$goal", text, layout.text.sub.toFloat(), Modifier.at(next)) { onOpen(goal) }
        }
    }
}

@Composable
private fun Page(place: Rect, title: String, notice: String, layout: BankLayout, rows: @Composable () -> Unit) {
    val ink = LocalInk.current
    Box(Modifier.fillMaxSize().background(ink.paper).oneThumbOnly())
    Column(Modifier.at(place).verticalScroll(rememberScrollState()), Arrangement.spacedBy(mm(2f))) {
        Box(Modifier.semantics { heading(); contentDescription = title }) {
            FitText(title, layout.text.headline.toFloat(), ink.ink, Modifier.fillMaxWidth().height(mm(6f)), FontWeight.Bold)
        }
        if (notice.isNotBlank()) {
            Box(Modifier.testTag("notice").semantics { contentDescription = notice }) {
                FitText(notice, layout.text.body.toFloat(), ink.ink, Modifier.fillMaxWidth().height(mm(7f)), FontWeight.Bold)
            }
        }
        rows()
    }
}

/** One thing that can be changed: its name and present value, then what it may become. */
@OptIn(ExperimentalLayoutApi::class)
@Composable
private fun Choices(row: ChoiceRow, layout: BankLayout, onChoose: (String, String) -> Unit) {
    val ink = LocalInk.current
    val body = layout.text.body.toFloat()
    Column(Modifier.fillMaxWidth().testTag("row-${row.field}"), Arrangement.spacedBy(mm(1f))) {
        Row(Modifier.fillMaxWidth().semantics(mergeDescendants = true) { contentDescription = "${row.label}: ${row.value}" }) {
            FitText(row.label, body, ink.ink, Modifier.weight(1f).height(mm(4.5f)))
            FitText(row.value, body, ink.ink, Modifier.weight(1f).height(mm(4.5f)), FontWeight.Bold)
        }
        FlowRow(Modifier.fillMaxWidth(), Arrangement.spacedBy(mm(3f)), Arrangement.spacedBy(mm(3f))) {
            for (choice in row.choices) {
                val face = KeyFace(choice.label, null, "${row.label}: ${choice.label}", solid = choice.chosen)
                PadKey(
                    face, "choice-${row.field}-${choice.value}", layout.text.secondary.toFloat() * 0.9f, 0f,
                    Modifier.size(mm(chipWidth(choice.label)), mm(15f)),
                ) { onChoose(row.field, choice.value) }
            }
        }
        if (row.source.isNotBlank()) {
            FitText(row.source, body * 0.85f, ink.soft, Modifier.fillMaxWidth().height(mm(3.6f)))
        }
    }
}

/** A chip is as wide as its word needs, at least 15 mm. */
private fun chipWidth(label: String): Float = (4f + label.length * 2.1f).coerceIn(15f, 40f)

/** A line that is typed, and handed over when it has changed. */
@Composable
private fun Field(field: String, label: String, value: String, layout: BankLayout, onChoose: (String, String) -> Unit) {
    val ink = LocalInk.current
    var typed by remember { mutableStateOf(value) }
    var typing by remember { mutableStateOf(false) }
    // The core's answer to a letter must not overtake the next letter.
    LaunchedEffect(value, typing) { if (!typing) typed = value }
    val em = layout.text.body.toFloat()
    val style = TextStyle(ink.ink, with(LocalDensity.current) { (em * 1.2f).toSp() }, FontWeight.Bold)
    Row(Modifier.fillMaxWidth().height(mm(12f)), verticalAlignment = Alignment.CenterVertically) {
        FitText(label, em, ink.ink, Modifier.width(mm(14f)).height(mm(6f)))
        BasicTextField(
            typed, { typed = it; onChoose(field, it) },
            Modifier.weight(1f).padding(vertical = mm(2f)).testTag("field-$field").onFocusChanged { typing = it.isFocused }
                .semantics { contentDescription = label }
                .drawBehind { drawLine(ink.ink, Offset(0f, size.height), Offset(size.width, size.height), 3f) },
            textStyle = style, singleLine = true, cursorBrush = SolidColor(ink.accent),
        )
    }
}
