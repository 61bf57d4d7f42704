package app.restwater.ui

import androidx.compose.runtime.Composable
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.LeavesView
import app.restwater.core.PadWords
import app.restwater.core.Rect

/** Air and water, wind, cloud and colour: a question after the other, a tap each. */
@Composable
fun ConditionsScreen(
    conditions: LeavesView,
    layout: BankLayout,
    back: Rect,
    words: PadWords,
    notice: String,
    onAct: (Action) -> Unit,
    first: String? = null,
    onBack: () -> Unit,
) = LeavesScreen(conditions, layout, back, words, notice, { field, value -> onAct(Action.ChooseConditions(field, value)) }, first, onBack = onBack)
