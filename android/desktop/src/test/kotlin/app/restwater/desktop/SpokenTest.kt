package app.restwater.desktop

import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import app.restwater.core.Key
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** What a screen reader hears of a choice. */
class SpokenTest {
    @Test fun theChoiceInForceIsSaidToBeChosen() = Bankside.on {
        start()
        tap(Key.TACKLE)
        var told = 0
        for (row in checkNotNull(state.tackle).rows.filter { it.choices.size > 1 }) {
            if (!isThere("row-${row.tag}")) continue
            tapOn("row-${row.tag}")
            for (choice in row.choices) {
                val tag = "choice-${row.tag}-${choice.tag}"
                if (!isThere(tag)) continue
                assertEquals(choice.chosen, node(tag).fetchSemanticsNode().config.getOrNull(SemanticsProperties.Selected), tag)
                if (choice.chosen) told++
            }
            tapOn("back")
        }
        assertTrue(told > 0)
    }
}
