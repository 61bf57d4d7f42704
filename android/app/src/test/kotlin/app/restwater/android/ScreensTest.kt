package app.restwater.android

import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.hasClickAction
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.test.core.app.ActivityScenario
import androidx.test.platform.app.InstrumentationRegistry
import app.restwater.core.Action
import app.restwater.core.Key
import app.restwater.ui.CutOff
import app.restwater.ui.Drawn
import app.restwater.ui.FocusRing
import app.restwater.ui.Showing
import app.restwater.ui.tag
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** What a screen reader and a keyboard find on each screen, at normal text and at twice its size. */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [35], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class ScreensTest {
    @get:Rule val rule = createEmptyComposeRule()

    private fun on(test: (MainActivity) -> Unit) {
        Handset.allow(android.Manifest.permission.POST_NOTIFICATIONS)
        Handset.begin()
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        ActivityScenario.launch(MainActivity::class.java).use { scenario ->
            rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.BITE)), 20_000)
            var activity: MainActivity? = null
            scenario.onActivity { activity = it }
            test(checkNotNull(activity))
        }
    }

    private fun nodes(matcher: SemanticsMatcher) = rule.onAllNodes(matcher, useUnmergedTree = true).fetchSemanticsNodes()

    private fun everyScreen(check: (Showing) -> Unit) = on { activity ->
        for (screen in Showing.entries) {
            rule.runOnUiThread { activity.state?.open(screen) }
            Handset.until({ "nothing on $screen" }) { nodes(hasClickAction()).size >= if (screen == Showing.BANK) 5 else 1 }
            Handset.settle()
            rule.waitForIdle()
            check(screen)
        }
    }

    private fun read(screen: Showing) {
        val panes = nodes(SemanticsMatcher.keyIsDefined(SemanticsProperties.PaneTitle))
        assertEquals("$screen announces itself once", 1, panes.size)
        if (screen !in listOf(Showing.SCREENS, Showing.BANK)) {
            assertTrue("$screen: ${panes.map { it.config }}", panes.single().config[SemanticsProperties.PaneTitle].isNotBlank())
        }
        val said = nodes(SemanticsMatcher.keyIsDefined(SemanticsProperties.LiveRegion))
        assertTrue("$screen says what a tap does", said.isNotEmpty())
        if (screen != Showing.SWIM) assertTrue("$screen", said.any { it.config[SemanticsProperties.LiveRegion] == LiveRegionMode.Assertive })
        for (key in nodes(hasClickAction())) {
            val words = key.config.getOrNull(SemanticsProperties.ContentDescription).orEmpty()
            assertTrue("$screen: a key says nothing: ${key.config}", words.any { it.isNotBlank() })
        }
    }

    @Test fun aReaderHearsEachScreenItsNoticesAndItsKeys() = everyScreen(::read)

    @Config(fontScale = 2f) @Test fun atTwiceTheTextEachScreenIsReadTheSame() = everyScreen { screen ->
        read(screen)
        val cut = nodes(SemanticsMatcher.keyIsDefined(CutOff)).map { it.config[CutOff] }.filter { it.isNotBlank() }
        assertTrue("$screen cuts off: $cut", cut.isEmpty() || screen in CUT_AT_TWICE)
    }

    /** The texts that are drawn and are not part of what is spoken on the same screen. */
    private fun mute(where: String): List<String> {
        val all = nodes(SemanticsMatcher("anything") { true })
        fun plain(text: String) = text.replace(Regex("\\s"), " ")
        val spoken = all.mapNotNull { node ->
            node.config.getOrNull(SemanticsProperties.ContentDescription)?.let { plain(it.joinToString(" ")) }
        }
        // A key says in its own words what it does, and a picture what it shows.
        val apart = all.filter { SemanticsActions.OnClick in it.config || it.config.getOrNull(SemanticsProperties.TestTag) in PICTURES }.map { it.boundsInRoot }
        fun Rect.holds(other: Rect) = other.left >= left - 1 && other.top >= top - 1 && other.right <= right + 1 && other.bottom <= bottom + 1
        val texts = all.filter { SemanticsProperties.ContentDescription !in it.config }.flatMap { node ->
            val place = node.boundsInRoot
            if (place.isEmpty || apart.any { it.holds(place) }) return@flatMap emptyList()
            node.config.getOrNull(Drawn).orEmpty().filter { it.text.isNotBlank() }
                .map { plain(it.text) to it.place.translate(place.topLeft).intersect(place) }
        }
        // The list of screens has nothing but keys where its groups share a grid.
        assertTrue("$where draws nothing", texts.isNotEmpty() || where == "${Showing.SCREENS}")
        // What belongs together is read out as one: the wait and since when, the spot and the rig.
        return texts.filter { (text, _) -> spoken.none { said -> text in said } }.map { (text, at) -> "$where: $text at $at" }
    }

    /** Taps a key, on whichever page of its grid it is. */
    private fun press(tag: String) {
        repeat(4) { if (nodes(hasTestTag(tag)).isEmpty()) rule.onNodeWithTag("next-page").performClick().also { rule.waitForIdle() } }
        rule.onNodeWithTag(tag).performClick()
        Handset.settle()
        rule.waitForIdle()
    }

    @Test fun whatOpensOnAScreenIsHeardToo() {
        Handset.setClock()
        Handset.begin()
        // An end that was not seen is a doubtful entry.
        for (minutes in listOf(1L, 25L, 1L)) {
            Handset.later(60 * minutes)
            Handset.core.act(Action.Cast(1u), Handset.app.now())
        }
        Handset.later(60)
        val mute = mutableListOf<String>()
        Handset.onBank { activity ->
            val state = checkNotNull(activity.state)
            fun go(screen: Showing) {
                rule.runOnUiThread { state.open(screen) }
                Handset.settle()
                Handset.later(2)
            }
            go(Showing.TACKLE)
            press("row-popup")
            mute += mute("a row")
            go(Showing.BANK)
            go(Showing.SWIM)
            press("swim-more")
            press("swim-place")
            mute += mute("the place of the peg")
            go(Showing.BANK)
            go(Showing.FILES)
            for (page in listOf("imports", "backups")) {
                press(page)
                mute += mute(page)
                press("back")
            }
            go(Showing.BANK)
            go(Showing.MEND)
            press("mend-${checkNotNull(state.mend).lines.first().op}")
            mute += mute("a doubtful entry")
            val row = checkNotNull(state.mend?.open).rows.first { it.choices.size > 1 }
            press("row-${row.tag}")
            mute += mute("a row of it")
        }
        assertEquals(emptyList<String>(), mute)
    }

    @Test fun aKeyWithTheFocusShowsIt() = keysInstead {
        val key = rule.onNodeWithTag(tag(Key.BITE))
        val action = key.fetchSemanticsNode().config.getOrNull(SemanticsActions.RequestFocus)
        rule.runOnUiThread { checkNotNull(action?.action) { "can't be focused" }.invoke() }
        rule.waitForIdle()
        assertTrue(key.fetchSemanticsNode().config[FocusRing])
    }

    /** A keyboard or a switch is used instead of touch. */
    private fun keysInstead(test: (MainActivity) -> Unit) {
        val instrumentation = InstrumentationRegistry.getInstrumentation()
        instrumentation.setInTouchMode(false)
        try {
            on(test)
        } finally {
            instrumentation.setInTouchMode(true)
        }
    }

    private companion object {
        /** A long list is shortened at twice the text size; what is cut off is still spoken. */
        val CUT_AT_TWICE = setOf(Showing.SWIM)

        /** What is drawn there is spoken as a whole. */
        val PICTURES = setOf("swim-fan", "fan", "strip")
    }
}
