package app.restwater.android

import android.os.Build
import android.os.SystemClock
import android.view.HapticFeedbackConstants
import android.view.InputDevice
import android.view.MotionEvent
import android.view.MotionEvent.PointerCoords
import android.view.MotionEvent.PointerProperties
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import app.restwater.core.Key
import app.restwater.core.palmMm
import app.restwater.ui.tag
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config

/** A palm on a key logs nothing; a thumb on the same key does. */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [35], qualifiers = "w411dp-h891dp-xhdpi")
class PalmTest {
    @get:Rule val rule = createEmptyComposeRule()

    @Test fun aPalmOnAKeyLogsNothingAndAThumbDoes() {
        Handset.setClock()
        Handset.begin()
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        ActivityScenario.launch(MainActivity::class.java).use { scenario ->
            rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.BITE)), WITHIN_MS)
            val before = Handset.kinds()
            Handset.later(60)
            touch(scenario, widthMm = palmMm() + 1)
            assertEquals(before, Handset.kinds())
            scenario.onActivity { activity ->
                assertEquals("shown once", 1, activity.state?.rejectedTaps)
                val refused = if (Build.VERSION.SDK_INT >= 30) HapticFeedbackConstants.REJECT else HapticFeedbackConstants.LONG_PRESS
                assertEquals("felt", refused, shadowOf(activity.window.decorView).lastHapticFeedbackPerformed())
            }
            touch(scenario, widthMm = 14.0)
            rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.LANDED)), WITHIN_MS)
            assertEquals(before + "bite", Handset.kinds())
        }
    }

    @Test fun aTouchInProgressIsCancelledByAPalm() {
        var rejected = 0
        val palm = Palm(widestPx = 100.0) { rejected++ }
        val seen = mutableListOf<Int>()
        fun send(action: Int, width: Double) = event(action, 5f, 5f, width).let { event -> palm.filter(event) { seen.add(it.actionMasked) } }
        send(MotionEvent.ACTION_DOWN, 30.0)
        send(MotionEvent.ACTION_MOVE, 120.0)
        send(MotionEvent.ACTION_MOVE, 40.0)
        send(MotionEvent.ACTION_UP, 40.0)
        send(MotionEvent.ACTION_DOWN, 30.0)
        assertEquals(listOf(MotionEvent.ACTION_DOWN, MotionEvent.ACTION_CANCEL, MotionEvent.ACTION_DOWN), seen)
        assertEquals("once for the whole set", 1, rejected)
    }

    /** Down and up on BITE, as the window hands them to the activity. */
    private fun touch(scenario: ActivityScenario<MainActivity>, widthMm: Double) {
        val at = rule.onNodeWithTag(tag(Key.BITE)).fetchSemanticsNode().boundsInWindow.center
        for (action in listOf(MotionEvent.ACTION_DOWN, MotionEvent.ACTION_UP)) {
            scenario.onActivity {
                val width = widthMm * pxPerMm(it.resources.displayMetrics)
                assertTrue("the touch is taken", it.dispatchTouchEvent(event(action, at.x, at.y, width)))
            }
            rule.waitForIdle()
        }
    }

    private fun event(action: Int, x: Float, y: Float, widthPx: Double): MotionEvent {
        val finger = PointerProperties().apply { id = 0; toolType = MotionEvent.TOOL_TYPE_FINGER }
        val place = PointerCoords().apply { this.x = x; this.y = y; touchMajor = widthPx.toFloat(); touchMinor = touchMajor; pressure = 1f }
        val now = SystemClock.uptimeMillis()
        return MotionEvent.obtain(now, now, action, 1, arrayOf(finger), arrayOf(place), 0, 0, 1f, 1f, 0, 0, InputDevice.SOURCE_TOUCHSCREEN, 0)
    }

    private companion object {
        const val WITHIN_MS = 20_000L
    }
}
