package app.restwater.ui

import androidx.compose.runtime.Composable
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.LeavesView
import app.restwater.core.PadWords
import app.restwater.core.Rect

/** What can hurt an angler, a fish or a licence: a list, a card each, put away for the peg in one tap. */
@Composable
fun CautionsScreen(
    cautions: LeavesView,
    layout: BankLayout,
    back: Rect,
    words: PadWords,
    notice: String,
    onAct: (Action) -> Unit,
    first: String? = null,
    onBack: () -> Unit,
) = LeavesScreen(cautions, layout, back, words, notice, { field, value -> onAct(Action.ChooseCautions(field, value)) }, first, onBack = onBack)
