package app.restwater.ui

import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import androidx.compose.ui.text.font.FontWeight
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.MendOpen
import app.restwater.core.MendView
import app.restwater.core.PadWords
import app.restwater.core.Rect

/** Doubtful entries, each corrected in a few taps. */
@Composable
fun MendScreen(
    mend: MendView,
    layout: BankLayout,
    words: PadWords,
    notice: String,
    leftHanded: Boolean,
    onAct: (Action) -> Unit,
    onBack: () -> Unit,
) {
    var row by rememberSaveable(mend.open?.op) { mutableStateOf<String?>(null) }
    Ground()
    val rest = PageHead(mend.title, notice, layout)
    val open = mend.open
    if (open != null) {
        Entry(open, row, { row = it }, rest, layout, onAct)
    } else {
        val line = 5.0 * LocalPxPerMm.current
        Sentences(listOf(mend.says), rest.copy(height = line), layout, "mend-says")
        val lines = mend.lines.map { ListLine(it.what, it.why, it.spoken, words.mend.label, it.keySpoken, "mend-${it.op}") { onAct(it.open) } }
        Lines(lines, rest.copy(top = rest.top + line, height = rest.height - line), layout, leftHanded)
    }
    Back(layout, words) {
        when {
            row != null -> row = null
            open != null -> onAct(open.back)
            else -> onBack()
        }
    }
}

/** One entry: what is doubtful about it, and a key for each possible answer; a single choice takes effect at once. */
@Composable
private fun Entry(
    open: MendOpen, row: String?, onRow: (String?) -> Unit, place: Rect, layout: BankLayout, onAct: (Action) -> Unit,
) {
    val ink = LocalInk.current
    val body = layout.text.body.toFloat()
    val chosen = open.rows.find { it.tag == row }
    val parts = rowParts(open.what, open.why, WHAT_EM to 1f, chosen?.choices?.size ?: open.rows.size, place, layout, false, "")
    SpokenText(open.what, body * WHAT_EM, ink.ink, Modifier.at(parts.says), FontWeight.Bold)
    Sentences(listOf(open.why), parts.source, layout, "mend-why")
    val rest = parts.keys
    if (chosen != null) {
        Rows(open.rows, row, onRow, rest, layout) { onAct(it); onRow(null) }
        return
    }
    val opened = LocalOpened.current
    val cells = open.rows.map { one ->
        val only = one.choices.singleOrNull()
        Cell(KeyFace(one.label, only?.label ?: one.value, only?.spoken ?: one.spoken), "row-${one.tag}") {
            if (only != null && one.value.isEmpty()) {
                onAct(only.action)
            } else {
                opened()
                onRow(one.tag)
            }
        }
    }
    KeyGrid(cells, rest, layout)
}

/** Size of what the entry is, relative to other text. */
private const val WHAT_EM = 1.2f
