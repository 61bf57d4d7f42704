package app.restwater.android

import androidx.compose.ui.test.assertTextEquals
import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import androidx.compose.ui.test.onNodeWithTag
import app.restwater.core.coreVersion
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

    /** The whole chain on Android's framework: Rust library, generated Kotlin, the activity. */
    @Test fun theActivityShowsTheCoresVersion() {
        rule.onNodeWithTag("about").assertTextEquals("Restwater ${coreVersion()}")
    }
}
