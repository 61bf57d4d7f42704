package app.restwater.android

import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performTextInput
import androidx.core.graphics.Insets
import androidx.core.view.ViewCompat
import androidx.core.view.WindowInsetsCompat
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Key
import app.restwater.ui.tag
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** The keyboard covers the screen and does not resize it: typed text stays where it is, on every size of screen. */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36])
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class KeyboardTest {
    @get:Rule val rule = createEmptyComposeRule()

    @Config(qualifiers = "w360dp-h640dp-xhdpi") @Test fun smallPhone() = typesUnderTheKeyboard()

    @Config(qualifiers = "w411dp-h731dp-xxhdpi") @Test fun shortPhone() = typesUnderTheKeyboard()

    @Config(qualifiers = "w411dp-h891dp-xhdpi", fontScale = 2f) @Test fun commonPhoneAtTwiceTheText() = typesUnderTheKeyboard()

    @Config(qualifiers = "w640dp-h360dp-land-xhdpi") @Test fun smallPhoneOnItsSide() = typesUnderTheKeyboard()

    private fun typesUnderTheKeyboard() = ActivityScenario.launch(MainActivity::class.java).use { scenario ->
        // An empty log shows the welcome first.
        rule.waitUntilExactlyOneExists(hasTestTag("key-skip-"), 20_000)
        rule.onNodeWithTag("key-skip-").performClick()
        rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.START)), 20_000)
        rule.onNodeWithTag(tag(Key.START)).performClick()
        rule.waitUntilExactlyOneExists(hasTestTag("field-peg"), 20_000)
        val before = rule.onNodeWithTag("field-peg").fetchSemanticsNode().boundsInRoot
        rule.onNodeWithTag("field-peg").performClick()
        rule.onNodeWithTag("field-peg").performTextInput("1")
        scenario.onActivity { activity ->
            val view = activity.window.decorView
            val keyboard = Insets.of(0, 0, 0, view.height / 2)
            val insets = WindowInsetsCompat.Builder().setInsets(WindowInsetsCompat.Type.ime(), keyboard).setVisible(WindowInsetsCompat.Type.ime(), true)
                .setInsets(WindowInsetsCompat.Type.navigationBars(), Insets.of(0, 0, 0, 48)).build()
            ViewCompat.dispatchApplyWindowInsets(view, insets)
        }
        rule.waitForIdle()
        assertTrue("the screen stays", rule.onAllNodesWithTag("field-peg").fetchSemanticsNodes().isNotEmpty())
        rule.onNodeWithTag("field-peg").performTextInput("4")
        rule.waitForIdle()
        val node = rule.onNodeWithTag("field-peg").fetchSemanticsNode()
        assertEquals("14", node.config[SemanticsProperties.EditableText].text)
        assertEquals("the keyboard moves nothing", before.top, node.boundsInRoot.top, 1f)
    }
}
