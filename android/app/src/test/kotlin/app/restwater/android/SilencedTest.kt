package app.restwater.android

import android.Manifest
import android.app.Notification
import android.app.NotificationManager
import android.os.Vibrator
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import app.restwater.core.Action
import app.restwater.core.shellWords
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** What a newer phone keeps silent in a pocket without telling the app. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class SilencedTest {
    @get:Rule val rule = createEmptyComposeRule()

    private val lockScreen by lazy { LockScreen(Handset.app) }

    @Before fun twoRodsAndAnAlarmAfterTwelveMinutes() = Handset.beginWithTwoRodsAndAnAlarm()

    @After fun everyReceiverHasAnswered() = Handset.answered()

    private fun rodOneRings() {
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        Handset.answered()
    }

    /** The words that are shown when the notification is large. */
    private fun says(shown: Notification?): String {
        val extras = checkNotNull(shown) { "nothing is shown" }.extras
        return if (extras.containsKey(Notification.EXTRA_TEMPLATE)) "${extras.getCharSequence(Notification.EXTRA_BIG_TEXT)}" else ""
    }

    /** From Android 14 on the system tells an app in a pocket of Do not disturb only when it comes to the front. */
    @Test fun anAlarmThatDoNotDisturbSilencesSaysSoUntilItEnds() {
        val words = shellWords("en-GB").alarmsUndisturbed
        val manager = checkNotNull(Handset.app.getSystemService(NotificationManager::class.java))
        shadowOf(manager).setNotificationPolicyAccessGranted(true)
        Handset.act(Action.Cast(1u), lockScreen)
        manager.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_NONE)
        assertFalse("nobody has told the app", words in says(Handset.wait()))
        rodOneRings()
        assertTrue("the alarm: ${says(Handset.rung().single())}", words in says(Handset.rung().single()))
        assertTrue("the running wait: ${says(Handset.wait())}", words in says(Handset.wait()))
        manager.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_ALL)
        Handset.later(61)
        Handset.ringDue()
        Handset.answered()
        assertFalse("it sounds", words in says(Handset.rung().single()))
        assertFalse("the running wait too", words in says(Handset.wait()))
    }

    /** The phone has one player, which the newer of two alarms has: posted with a sound, the older one would take it. */
    @Test fun bothOfTwoAlarmsSayThatTheyAreSilencedAndNeitherDoesAfterwards() {
        val words = shellWords("en-GB").alarmsUndisturbed
        val manager = checkNotNull(Handset.app.getSystemService(NotificationManager::class.java))
        shadowOf(manager).setNotificationPolicyAccessGranted(true)
        Handset.act(Action.Cast(1u), lockScreen)
        Handset.later(20)
        Handset.act(Action.Cast(2u), lockScreen)
        manager.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_NONE)
        rodOneRings()
        assertEquals(listOf(true, true), Handset.rung().map { words in says(it) })
        manager.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_ALL)
        Handset.later(61)
        Handset.ringDue()
        Handset.answered()
        assertEquals(listOf(false, false), Handset.rung().map { words in says(it) })
        assertEquals("one sounds", 1, Handset.rung().count { it.flags and Notification.FLAG_ONLY_ALERT_ONCE == 0 })
        assertEquals("nobody has answered either", 2, Handset.rung().count { it.flags and Notification.FLAG_INSISTENT != 0 })
        for (rod in listOf(1u, 2u)) {
            val sounds = Handset.rung().single { it.flags and Notification.FLAG_ONLY_ALERT_ONCE == 0 }
            val answered = sounds.extras.getString(Notification.EXTRA_TITLE).orEmpty().substringBefore(':').takeLast(1)
            Handset.act(Action.WoundIn(answered.toUByte()), lockScreen)
            assertEquals("after $rod of two answers", if (rod == 1u) 1 else 0, Handset.rung().count { it.flags and Notification.FLAG_ONLY_ALERT_ONCE == 0 })
        }
    }

    /** developer.android.com/about/versions/17/changes/bg-audio: no sound without a visible activity, and no error. */
    @Test @Config(sdk = [36], shadows = [TonesAsked::class]) fun aToneThatAndroid17WouldSwallowBeginsWhenTheBankIsInFront() {
        Handset.deny(Manifest.permission.POST_NOTIFICATIONS)
        Handset.app.sounder.onlyInFront = true
        Handset.act(Action.Cast(1u), lockScreen)
        TonesAsked.last = null
        rodOneRings()
        assertNull("a tone that nobody hears", TonesAsked.last)
        assertTrue("it shakes", shadowOf(Handset.app.getSystemService(Vibrator::class.java)).isVibrating)
        Handset.onBank { assertNotNull("in the foreground it sounds", TonesAsked.last) }
        Handset.app.sounder.stopAll()
        TonesAsked.last = null
        Handset.onBank {
            assertNull("it was answered", TonesAsked.last)
            Handset.app.sounder.sound("rod-2")
            assertNotNull("in the foreground from the beginning", TonesAsked.last)
        }
    }

    private companion object {
        const val TWELVE_MIN = 720L
    }
}
