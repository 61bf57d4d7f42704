package app.restwater.ui

import androidx.compose.runtime.Composable
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.LeavesView
import app.restwater.core.PadWords
import app.restwater.core.Rect

/** The evening before: hooklengths, spools, the pop-up and its shot, fall times, heights. The first leaf lists the parts. */
@Composable
fun BenchScreen(
    bench: LeavesView,
    layout: BankLayout,
    back: Rect,
    words: PadWords,
    notice: String,
    onAct: (Action) -> Unit,
    first: String? = null,
    onBack: () -> Unit,
) = LeavesScreen(bench, layout, back, words, notice, { field, value -> onAct(Action.ChooseBench(field, value)) }, first, onBack = onBack)
