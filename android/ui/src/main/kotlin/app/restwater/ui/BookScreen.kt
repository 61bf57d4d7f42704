package app.restwater.ui

import androidx.compose.runtime.Composable
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.LeavesView
import app.restwater.core.PadWords
import app.restwater.core.Rect

/**
 * Sessions and what they say. Notes and the plan for next time can be typed, at home; MEND and FILES open the screens
 * that bear these names.
 */
@Composable
fun BookScreen(
    book: LeavesView,
    layout: BankLayout,
    back: Rect,
    words: PadWords,
    notice: String,
    onAct: (Action) -> Unit,
    first: String? = null,
    onOpen: (Showing) -> Unit = { },
    onBack: () -> Unit,
) = LeavesScreen(
    book, layout, back, words, notice, { field, value -> onAct(Action.ChooseBook(field, value)) }, first,
    onDoor = { name -> Showing.named(name)?.let(onOpen) }, onBack = onBack,
)
