package app.restwater.android

import androidx.compose.ui.test.assertContentDescriptionContains
import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

@RunWith(RobolectricTestRunner::class)
@Config(sdk = [35], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class MainActivityTest {
    @get:Rule val rule = createAndroidComposeRule<MainActivity>()

    /** The whole chain on Android's framework: Rust library, generated Kotlin, the shared screens, the activity. */
    @Test fun aCastIsLoggedOnTheRealLog() {
        for (tag in listOf("key-START", "key-START")) {
            rule.waitUntil(10_000) { rule.onAllNodesWithTag(tag).fetchSemanticsNodes().isNotEmpty() }
            rule.onNodeWithTag(tag).performClick()
        }
        rule.waitUntil(10_000) { rule.onAllNodesWithTag("key-CAST").fetchSemanticsNodes().isNotEmpty() }
        rule.onNodeWithTag("key-CAST").performClick()
        rule.waitUntil(10_000) { rule.onAllNodesWithTag("key-BITE").fetchSemanticsNodes().isNotEmpty() }
        rule.onNodeWithTag("clock-1").assertContentDescriptionContains("Rod 1, out", substring = true)
    }
}
