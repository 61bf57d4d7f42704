package app.restwater.android

import android.content.Intent
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.lifecycle.Lifecycle
import androidx.test.core.app.ActivityScenario
import app.restwater.ui.Showing
import java.io.File
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/**
 * A file that another app shares opens an activity of its own in that app's task: the first activity still works after
 * it.
 */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class OtherTaskTest {
    @get:Rule val rule = createEmptyComposeRule()

    @Before fun notificationsAreAllowed() = Handset.allow(android.Manifest.permission.POST_NOTIFICATIONS)

    private fun afterAnother(test: (MainActivity) -> Unit) = ActivityScenario.launch(MainActivity::class.java).use { scenario ->
        var first: MainActivity? = null
        scenario.onActivity { first = it }
        val activity = checkNotNull(first)
        Handset.until({ "no screen" }) { activity.state?.bank != null }
        scenario.moveToState(Lifecycle.State.CREATED)
        rule.runOnUiThread {
            val other = Robolectric.buildActivity(MainActivity::class.java, Intent(Intent.ACTION_MAIN)).setup()
            Handset.until({ "no second screen" }) { other.get().state?.bank != null }
            other.pause().stop().destroy()
        }
        scenario.moveToState(Lifecycle.State.RESUMED)
        Handset.settle()
        test(activity)
    }

    @Test fun theFirstActivityStillAsksWhichFileToImport() = afterAnother { activity ->
        rule.runOnUiThread { activity.state?.open(Showing.FILES) }
        rule.waitUntilExactlyOneExists(hasTestTag("take-in"), 20_000)
        rule.onNodeWithTag("take-in").performClick()
        Handset.until({ "no picker; the screen says: ${activity.state?.notice}" }) {
            shadowOf(activity).peekNextStartedActivityForResult() != null
        }
    }

    @Test fun theFirstActivityGetsTheResultOfAFile() = afterAnother { activity ->
        val state = checkNotNull(activity.state)
        rule.runOnUiThread { state.open(Showing.FILES) }
        Handset.until({ "no files" }) { state.files != null }
        val file = File.createTempFile("letter", ".txt").apply { writeText("Dear all") }
        rule.runOnUiThread { state.desk.offer(file.path) }
        Handset.until({ "nothing is said: ${state.notice}" }) { "it is text" in state.notice }
    }
}
