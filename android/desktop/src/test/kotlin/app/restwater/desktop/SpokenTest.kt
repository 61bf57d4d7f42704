package app.restwater.desktop

import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import app.restwater.core.Key
import app.restwater.ui.Showing
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** What a screen reader hears of a choice, and how often it hears a sentence. */
class SpokenTest {
    @Test fun theCurrentChoiceIsReadAsSelected() = Bankside.on {
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

    @Test fun inFrenchARowItsChoicesAndALineHaveANoBreakSpaceBeforeTheColon() = Bankside.on(language = "fr-FR") {
        start()
        tap(Key.TACKLE)
        val rows = checkNotNull(state.tackle).rows.filter { isThere("row-${it.tag}") }
        for (row in rows) assertEquals("${row.label}\u00A0: ${row.value}", spoken("row-${row.tag}"))
        val (open, choices) = rows.first { it.choices.size > 1 }.let { it.tag to it.choices }
        tapOn("row-$open")
        for (choice in choices.filter { isThere("choice-$open-${it.tag}") }) {
            assertEquals("${rows.first { it.tag == open }.label}\u00A0: ${choice.label}", spoken("choice-$open-${choice.tag}"))
        }
        tapOn("back")
        tapOn("back")
        goTo(Showing.MATCH)
        assertEquals(checkNotNull(state.match).lines.first().let { "${it.label}\u00A0: ${it.value}" }, spoken("match-line-0"))
    }

    @Test fun everySentenceOfTheSwimIsReadOnce() = Bankside.on {
        start()
        tapOn("screens")
        tapOn("open-${Showing.SWIM}")
        wait(seconds = 1)
        val swim = checkNotNull(state.swim)
        assertSaidOnce((listOf(swim.headline, swim.why, swim.cell) + swim.drift).filter { it.isNotBlank() })
    }

    @Test fun everySentenceAboutAFishIsReadOnce() = Bankside.on {
        start()
        cast(minutes = 10, bite = true)
        tap(Key.FISH)
        assertEquals(Showing.FISH, state.showing)
        val fish = checkNotNull(state.fish)
        assertSaidOnce(listOf(fish.title) + fish.says)
    }

    private fun Bankside.assertSaidOnce(sentences: List<String>) {
        val said = nodes(SemanticsMatcher.keyIsDefined(SemanticsProperties.ContentDescription))
            // A key says what it does: the name of a fish among others.
            .filter { SemanticsActions.OnClick !in it.config }
            .flatMap { it.config[SemanticsProperties.ContentDescription] }
        assertTrue(sentences.size > 1, "$sentences")
        for (sentence in sentences) assertEquals(1, said.count { sentence in it }, sentence)
    }
}
