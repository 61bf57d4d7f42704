package app.restwater.android

import android.os.Bundle
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import app.restwater.core.Action
import app.restwater.ui.Drawn
import app.restwater.ui.Showing
import java.util.Locale
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.android.controller.ActivityController
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/**
 * The phone's settings or its window change while a screen is open, or the system ends the process behind another app: each screen
 * is then as if it had been opened after that.
 */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [35], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class ChangedTest {
    @get:Rule val rule = createEmptyComposeRule()

    private val before = Locale.getDefault()

    @Before fun aFishIsLandedAndABaitIsOut() {
        Handset.thatMayRing()
        Handset.begin()
        for (action in listOf(Action.Cast(1u), Action.Bite(1u), Action.Landed(1u, null), Action.Cast(1u))) {
            Handset.later(60)
            Handset.core.act(action, Handset.app.now())
        }
        Handset.later(130)
    }

    @After fun theLanguageIsRestored() {
        Handset.answered()
        Locale.setDefault(before)
    }

    private fun launch(kept: Bundle? = null): ActivityController<MainActivity> {
        val controller = Robolectric.buildActivity(MainActivity::class.java)
        if (kept == null) controller.setup() else controller.setup(kept)
        Handset.until({ "no screen" }) { rule.waitForIdle(); controller.get().state?.bank != null }
        Handset.settle()
        return controller
    }

    private fun open(controller: ActivityController<MainActivity>, screen: Showing) {
        rule.runOnUiThread { controller.get().state?.open(screen) }
        Handset.until({ "$screen does not open" }) { controller.get().state?.showing == screen }
        settle()
    }

    private fun settle() {
        Handset.settle()
        rule.waitForIdle()
    }

    /** What is on the screen, and where; without what is drawn on Swim and Bank, whose picture is made off the main thread. */
    private fun seen(on: Showing): List<String> = rule.onAllNodes(SemanticsMatcher("anything") { true }, useUnmergedTree = true).fetchSemanticsNodes().mapNotNull { node ->
        val (tag, says) = node.config.getOrNull(SemanticsProperties.TestTag) to node.config.getOrNull(SemanticsProperties.ContentDescription)
        if ((on == Showing.SWIM || on == Showing.BANK) && tag == null && says == null) return@mapNotNull null
        "$tag ${node.boundsInRoot} $says ${node.config.getOrNull(Drawn).orEmpty().map { it.text }}"
    }

    private fun leave(controller: ActivityController<MainActivity>) {
        controller.pause().stop().destroy()
        Handset.settle()
    }

    /** The activity is made anew in the new configuration, as the system does it. */
    private fun made(old: ActivityController<MainActivity>): ActivityController<MainActivity> = old.recreate().also { settle() }

    private fun sameAfter(set: () -> Unit, unset: () -> Unit, after: (ActivityController<MainActivity>) -> ActivityController<MainActivity>) {
        val changed = mutableMapOf<Showing, List<String>>()
        for (screen in Showing.entries) {
            unset()
            var controller = launch()
            open(controller, screen)
            set()
            controller = after(controller)
            assertEquals(screen, controller.get().state?.showing)
            changed[screen] = seen(screen)
            leave(controller)
        }
        val controller = launch()
        for (screen in Showing.entries) {
            open(controller, screen)
            val (had, fresh) = changed[screen].orEmpty() to seen(screen)
            assertEquals("$screen: ${had - fresh.toSet()}, not ${fresh - had.toSet()}", fresh, had)
        }
        leave(controller)
    }

    private fun phone(language: String, text: Float, window: String) {
        Locale.setDefault(Locale.forLanguageTag(language))
        RuntimeEnvironment.setFontScale(text)
        RuntimeEnvironment.setQualifiers("+${language.replace("-", "-r")}-$window")
        Handset.app.onConfigurationChanged(Handset.app.resources.configuration)
        Handset.answered()
    }

    /** Another language, larger text and half of a split screen, all at once. */
    @Test fun afterOtherSettingsEachScreenIsAsIfOpenedThen() =
        sameAfter({ phone("de-DE", 1.5f, "w411dp-h640dp") }, { phone("en-GB", 1f, "w411dp-h891dp") }, ::made)

    @Test fun inAnotherProcessEachScreenIsAsItWas() = sameAfter({}, {}) { controller ->
        val kept = Bundle()
        controller.pause().stop().saveInstanceState(kept).destroy()
        Handset.settle()
        Handset.newProcess()
        launch(kept)
    }
}
