package app.restwater.android

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import app.restwater.core.Key
import app.restwater.ui.tag
import org.junit.Assert.assertEquals
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [35], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class MainActivityTest {
    @get:Rule val rule = createAndroidComposeRule<MainActivity>()

    private fun tap(key: Key) {
        rule.waitUntilExactlyOneExists(hasTestTag(tag(key)), WITHIN_MS)
        rule.onNodeWithTag(tag(key)).performClick()
    }

    /** The whole chain on Android's framework: key, Rust library, log on disk, screen; then the activity is recreated. */
    @Test fun aCastIsStillOutAfterTheActivityIsMadeAnew() {
        // An empty log is greeted first.
        rule.waitUntilExactlyOneExists(hasTestTag("key-skip-"), WITHIN_MS)
        rule.onNodeWithTag("key-skip-").performClick()
        tap(Key.START)
        // The Bank has a START too, and stays until the set-up has been read.
        rule.waitUntilExactlyOneExists(hasTestTag("back"), WITHIN_MS)
        for (key in listOf(Key.START, Key.CAST)) {
            // Not as a cold thumb taps twice.
            Handset.aSecondLater()
            tap(key)
        }
        rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.BITE)), WITHIN_MS)
        rule.activityRule.scenario.recreate()
        rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.BITE)), WITHIN_MS)
    }

    @Test fun aGlassThatStatesAWrongSizeIsMeasuredByItsDensityClass() {
        val display = rule.activity.resources.displayMetrics
        display.xdpi = display.densityDpi * 3f
        display.ydpi = display.densityDpi * 3f
        assertEquals(display.densityDpi / 25.4, pxPerMm(display), 1e-9)
        display.xdpi = display.densityDpi * 1.1f
        display.ydpi = display.densityDpi * 1.1f
        assertEquals(display.densityDpi * 1.1 / 25.4, pxPerMm(display), 1e-4)
    }

    private companion object {
        const val WITHIN_MS = 20_000L
    }
}
