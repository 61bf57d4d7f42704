package app.restwater.android

import android.view.HapticFeedbackConstants
import android.view.KeyEvent
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createAndroidComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import app.restwater.core.Action
import app.restwater.core.BankState
import app.restwater.core.Key
import app.restwater.ui.tag
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** For cold hands: the pulse after a tap, and the volume keys if the user chose them. */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 36], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class HandTest {
    @get:Rule val rule = createAndroidComposeRule<MainActivity>()

    private fun aSessionIsOpen() {
        Handset.allow(android.Manifest.permission.POST_NOTIFICATIONS)
        Handset.setClock()
        Handset.begin()
        Handset.later(60)
        rule.runOnUiThread { rule.activity.state?.open(app.restwater.ui.Showing.BANK) }
        rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.CAST)), 20_000)
    }

    private fun felt() = shadowOf(rule.activity.window.decorView).lastHapticFeedbackPerformed()

    private val newer get() = android.os.Build.VERSION.SDK_INT >= 30

    @Test fun anAcceptedTapAndARefusedOneFeelDifferent() {
        aSessionIsOpen()
        rule.onNodeWithTag(tag(Key.CAST)).performClick()
        val accepted = if (newer) HapticFeedbackConstants.CONFIRM else HapticFeedbackConstants.VIRTUAL_KEY
        Handset.until({ "nothing is felt: ${felt()}" }) { felt() == accepted }
        rule.onNodeWithTag(tag(Key.CAST)).performClick()
        val refused = if (newer) HapticFeedbackConstants.REJECT else HapticFeedbackConstants.LONG_PRESS
        Handset.until({ "a second tap feels like the first" }) { felt() == refused }
        assertEquals(1, Handset.kinds().count { it == "cast" })
    }

    private fun hold(code: Int, ms: Long) {
        val down = 1_000L
        rule.runOnUiThread {
            rule.activity.dispatchKeyEvent(KeyEvent(down, down, KeyEvent.ACTION_DOWN, code, 0))
            for (repeat in 1..(ms / 100).toInt()) rule.activity.dispatchKeyEvent(KeyEvent(down, down + repeat * 100, KeyEvent.ACTION_DOWN, code, repeat))
            rule.activity.dispatchKeyEvent(KeyEvent(down, down + ms, KeyEvent.ACTION_UP, code, 0))
        }
        Handset.settle()
    }

    @Test fun aVolumeKeyLogsOnlyForThoseWhoChoseItAndOnlyWhenHeld() {
        aSessionIsOpen()
        hold(KeyEvent.KEYCODE_VOLUME_UP, 1_000)
        assertTrue("not chosen", "cast" !in Handset.kinds())
        rule.runOnUiThread { Handset.app.choices.choose(PhoneChoices.VOLUME, PhoneChoices.ON) }
        hold(KeyEvent.KEYCODE_VOLUME_UP, 200)
        assertTrue("a short press", "cast" !in Handset.kinds())
        hold(KeyEvent.KEYCODE_VOLUME_UP, 1_000)
        Handset.until({ "no cast" }) { "cast" in Handset.kinds() }
        Handset.later(60)
        hold(KeyEvent.KEYCODE_VOLUME_DOWN, 1_000)
        Handset.until({ "not wound in" }) { "wound_in" in Handset.kinds() }
        assertEquals("once for each", listOf("session_started", "cast", "wound_in"), Handset.kinds())
    }

    @Test fun aHeldVolumeKeyCastsNothingOverAFishThatIsOn() {
        aSessionIsOpen()
        rule.runOnUiThread { Handset.app.choices.choose(PhoneChoices.VOLUME, PhoneChoices.ON) }
        for (action in listOf(Action.Cast(1u), Action.Bite(1u))) {
            Handset.core.act(action, Handset.app.now())
            Handset.later(60)
        }
        Handset.until({ "no fish is on" }) { rule.activity.state?.bank?.state == BankState.FISH_ON }
        hold(KeyEvent.KEYCODE_VOLUME_UP, 1_000)
        assertEquals(listOf("session_started", "cast", "bite"), Handset.kinds())
        assertEquals(if (newer) HapticFeedbackConstants.REJECT else HapticFeedbackConstants.LONG_PRESS, felt())
    }
}
