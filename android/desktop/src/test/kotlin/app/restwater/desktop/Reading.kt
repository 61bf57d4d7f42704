package app.restwater.desktop

import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import app.restwater.core.Action
import app.restwater.core.Key
import app.restwater.core.Rig
import app.restwater.ui.CutOff
import kotlin.test.assertEquals

/** What a screen reader says for this tag. */
fun Bankside.spoken(tag: String): String =
    node(tag).fetchSemanticsNode().config.getOrNull(SemanticsProperties.ContentDescription).orEmpty().joinToString(" ")

/** Tags on the screen that begin with [start]. */
fun Bankside.tags(start: String): List<String> =
    nodes(SemanticsMatcher.keyIsDefined(SemanticsProperties.TestTag)).map { it.config[SemanticsProperties.TestTag] }.filter { it.startsWith(start) }

/** Asserts that every word is drawn completely. */
fun Bankside.assertNothingCutOff(where: String) {
    val drawn = nodes(SemanticsMatcher.keyIsDefined(CutOff)).map { it.config[CutOff] }
    assertEquals(emptyList(), drawn.filter { it.isNotEmpty() }, where)
    check(drawn.size > 3) { "$where: hardly a word on the screen" }
}

/** From now on [rod] fishes this bait in this colour. */
fun Bankside.rig(rod: Int, bait: String, colour: String) {
    state.act(Action.SetRig(rod.toUByte(), Rig(bait, colour, null, null, null, null, null)))
    wait(seconds = 2)
}

/** Makes one cast with the chosen rod, left out for [minutes]. */
fun Bankside.cast(minutes: Int, bite: Boolean) {
    tap(Key.CAST)
    wait(minutes)
    if (bite) {
        tap(Key.BITE)
        wait(minutes = 1)
        tap(Key.LANDED)
    } else {
        tap(Key.WOUND_IN)
    }
    wait(minutes = 2)
}
