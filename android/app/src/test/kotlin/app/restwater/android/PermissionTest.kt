package app.restwater.android

import android.Manifest
import android.app.Notification
import android.app.NotificationManager
import android.content.Intent
import android.content.pm.PackageManager
import android.provider.Settings
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import app.restwater.R
import app.restwater.core.Action
import app.restwater.core.Alarm
import app.restwater.core.PhoneTap
import app.restwater.core.shellWords
import kotlinx.coroutines.launch
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
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

/**
 * When the app asks for notifications: once a session is open, whatever else is chosen, and never while a fish is on.
 */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [34], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class PermissionTest {
    @get:Rule val rule = createEmptyComposeRule()

    @Before fun notYetAllowed() {
        Handset.setClock()
        Handset.deny(Manifest.permission.POST_NOTIFICATIONS)
    }

    private fun act(action: Action) {
        Handset.core.act(action, Handset.app.now())
        Handset.later(60)
    }

    private fun on(test: (MainActivity) -> Unit) = Handset.onBank { activity ->
        rule.waitForIdle()
        test(activity)
    }

    private fun asked(activity: MainActivity) = shadowOf(activity).lastRequestedPermission?.requestedPermissions?.toList()

    private fun isAsked(activity: MainActivity) = Handset.until({ "never asked for" }) {
        rule.waitForIdle()
        asked(activity) == notifications
    }

    @Suppress("DEPRECATION") // The system still answers this way; the registry passes it on.
    private fun answer(activity: MainActivity, allowed: Boolean) {
        if (allowed) Handset.allow(Manifest.permission.POST_NOTIFICATIONS)
        val question = shadowOf(activity).lastRequestedPermission
        val answer = if (allowed) PackageManager.PERMISSION_GRANTED else PackageManager.PERMISSION_DENIED
        rule.runOnUiThread { activity.onRequestPermissionsResult(question.requestCode, question.requestedPermissions, intArrayOf(answer)) }
        Handset.settle()
    }

    private fun isSaid(activity: MainActivity) = "Notifications are off" in activity.state?.notice.orEmpty()

    @Test fun allowedNotificationsBringNoWarning() = on { activity ->
        rule.runOnUiThread { activity.state?.act(Action.StartSession(null)) }
        isAsked(activity)
        Handset.settle()
        assertFalse("nothing is said before there is an answer", isSaid(activity))
        answer(activity, allowed = true)
        assertFalse("nothing is said", isSaid(activity))
    }

    @Test fun refusedNotificationsAreWarnedOfAtOnceAndWithEachNewAlarm() = on { activity ->
        rule.runOnUiThread { activity.state?.act(Action.StartSession(null)) }
        isAsked(activity)
        answer(activity, allowed = false)
        Handset.until({ "never said" }) { isSaid(activity) }
        assertTrue("an alarm sounds while the app runs", "only while Restwater is on the screen" in activity.state?.notice.orEmpty())
        Handset.later(60)
        rule.runOnUiThread { activity.state?.act(Action.Phone(PhoneTap.Alarm(Alarm.After(12u)))) }
        Handset.until({ "still said" }) { !isSaid(activity) }
        Handset.later(60)
        rule.runOnUiThread { activity.state?.act(Action.Cast(1u)) }
        Handset.until({ "not said of the alarm" }) { isSaid(activity) }
        Handset.later(60)
        rule.runOnUiThread { activity.state?.act(Action.Liner(1u)) }
        Handset.until({ "still said after a liner" }) { !isSaid(activity) }
    }

    @Test fun allowingThemLaterEndsTheWarning() = on { activity ->
        rule.runOnUiThread { activity.state?.act(Action.StartSession(null)) }
        isAsked(activity)
        answer(activity, allowed = false)
        Handset.until({ "never said" }) { isSaid(activity) }
        Handset.allow(Manifest.permission.POST_NOTIFICATIONS)
        Handset.app.scope.launch { activity.state?.toFront() }
        Handset.until({ "still said" }) { !isSaid(activity) }
    }

    private fun undisturbed(manager: NotificationManager) {
        show()
        val row = Handset.app.choices.rows().find { it.tag == "android-undisturbed" }
        assertEquals("on the Phone screen", Handset.app.getString(R.string.not_allowed), row?.value)
        Handset.app.choices.choose("android-undisturbed", PhoneChoices.OPEN)
        assertEquals(Settings.ACTION_ZEN_MODE_PRIORITY_SETTINGS, shadowOf(Handset.app).nextStartedActivity.action)
        Handset.later(60)
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        assertEquals(shellWords("en-GB").alarmsUndisturbed to true, show()?.let { it.says to it.isNew })
        assertEquals("once for each alarm", false, show()?.isNew)
        manager.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_ALARMS)
        assertNull("alarms may sound", show())
        assertNull(Handset.app.choices.rows().find { it.tag == "android-undisturbed" })
    }

    private fun show() = Handset.app.lockScreen.show(Handset.core.watch(Handset.app.now()))

    private fun withAnAlarm(): NotificationManager {
        Handset.thatMayRing()
        Handset.beginWithAnAlarm()
        Handset.later(60)
        return checkNotNull(Handset.app.getSystemService(NotificationManager::class.java)).also { shadowOf(it).setNotificationPolicyAccessGranted(true) }
    }

    @Test @Config(sdk = [26, 31, 34, 36]) fun totalSilenceIsSaidWithEachAlarm() {
        val manager = withAnAlarm()
        manager.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_NONE)
        undisturbed(manager)
    }

    @Test @Config(sdk = [31, 34, 36]) fun aDoNotDisturbWithoutAlarmsIsSaidWithEachAlarm() {
        val manager = withAnAlarm()
        manager.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_PRIORITY)
        shadowOf(manager).setConsolidatedNotificationPolicy(NotificationManager.Policy(NotificationManager.Policy.PRIORITY_CATEGORY_ALARMS, 0, 0))
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        assertNull("alarms are among the exceptions", show())
        shadowOf(manager).setConsolidatedNotificationPolicy(NotificationManager.Policy(NotificationManager.Policy.PRIORITY_CATEGORY_CALLS, 0, 0))
        undisturbed(manager)
    }

    /** Switched on by its schedule at bedtime, or in the shade over the open Bank, which neither pauses nor stops the activity. */
    @Test fun aDoNotDisturbThatBeginsAfterTheCastIsSaid() {
        val manager = withAnAlarm()
        val words = shellWords("en-GB").alarmsUndisturbed
        on { activity ->
            rule.runOnUiThread { activity.state?.act(Action.Cast(1u)) }
            Handset.settle()
            assertFalse(words in activity.state?.notice.orEmpty())
            manager.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_NONE)
            Handset.app.sendBroadcast(Intent(NotificationManager.ACTION_INTERRUPTION_FILTER_CHANGED))
            Handset.settle()
            Handset.answered()
            assertTrue("on the lock screen", words in Handset.wait()?.extras?.getCharSequence(Notification.EXTRA_BIG_TEXT)?.toString().orEmpty())
            rule.runOnUiThread { activity.onWindowFocusChanged(true) }
            Handset.until({ "not said: ${activity.state?.notice}" }) { words in activity.state?.notice.orEmpty() }
        }
    }

    private fun bigText() = "${Handset.wait()?.extras?.getCharSequence(Notification.EXTRA_BIG_TEXT)}"

    private fun tell(event: String) {
        StartReceiver().onReceive(Handset.app, Intent(event))
        Handset.settle()
        Handset.answered()
    }

    /** A long press on the running wait offers to switch it off, and a cold thumb does that too. */
    @Test @Config(sdk = [26, 31, 34, 36]) fun aRunningWaitThatIsSwitchedOffIsSaidAndHasAKeyToItsSetting() {
        val manager = withAnAlarm()
        assertNull("it is shown", show())
        assertNull(Handset.app.choices.rows().find { it.tag == "android-running-wait" })
        manager.getNotificationChannel(LockScreen.WAIT).importance = NotificationManager.IMPORTANCE_NONE
        assertEquals(shellWords("en-GB").waitHidden, show()?.says)
        assertEquals(Handset.app.getString(R.string.not_allowed), Handset.app.choices.rows().find { it.tag == "android-running-wait" }?.value)
        Handset.app.choices.choose("android-running-wait", PhoneChoices.OPEN)
        val opened = shadowOf(Handset.app).nextStartedActivity
        assertEquals(Settings.ACTION_CHANNEL_NOTIFICATION_SETTINGS, opened.action)
        assertEquals(LockScreen.WAIT, opened.getStringExtra(Settings.EXTRA_CHANNEL_ID))
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        manager.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_NONE)
        assertEquals("an alarm matters more", shellWords("en-GB").alarmsUndisturbed, show()?.says)
    }

    /** The angler switched off the channel of what was not saved. */
    @Test @Config(sdk = [26, 31, 34, 36]) fun anEntryThatWasNotSavedIsSaidWhicheverChannelIsOff() {
        val manager = withAnAlarm()
        show()
        manager.getNotificationChannel(LockScreen.TROUBLE).importance = NotificationManager.IMPORTANCE_NONE
        Handset.app.lockScreen.notSaved("BITE", "the disk is full")
        val said = shadowOf(manager).getNotification("BITE", LockScreen.TROUBLE_ID)
        assertEquals("the channel of the wait whose key it was", LockScreen.WAIT, said.channelId)
    }

    /** In the phone's own settings, while the phone then goes into the pocket. */
    @Test @Config(sdk = [31, 34, 36]) fun alarmsSwitchedOffAfterTheCastAreSaidOnTheLockScreen() {
        val manager = withAnAlarm()
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        assertNull(show())
        manager.getNotificationChannel(LockScreen.ALARM).importance = NotificationManager.IMPORTANCE_NONE
        tell(NotificationManager.ACTION_NOTIFICATION_CHANNEL_BLOCK_STATE_CHANGED)
        assertTrue(bigText(), shellWords("en-GB").alarmsSilent in bigText())
    }

    @Test @Config(sdk = [31, 34, 36]) fun aWaitThatTheSystemDroppedComesBackWithTheNotifications() {
        val manager = withAnAlarm()
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        show()
        shadowOf(manager).setNotificationsEnabled(false)
        manager.cancelAll()
        tell(NotificationManager.ACTION_APP_BLOCK_STATE_CHANGED)
        assertNull("they are off", Handset.wait())
        shadowOf(manager).setNotificationsEnabled(true)
        tell(NotificationManager.ACTION_APP_BLOCK_STATE_CHANGED)
        assertTrue("it is on the lock screen again", Handset.wait() != null)
    }

    /** Asked for and answered in a session that is over by now; the next one is months later. */
    private fun aSessionAgo(allowed: Boolean) {
        on { activity ->
            rule.runOnUiThread { activity.state?.act(Action.StartSession(null)) }
            isAsked(activity)
            answer(activity, allowed)
            Handset.settle()
        }
        Handset.later(60)
        act(Action.EndSession)
        Handset.later(120 * 24 * 3_600)
    }

    /** After months the system takes back what was allowed (developer.android.com/topic/performance/app-hibernation). */
    @Test fun aPermissionThatTheSystemTookBackIsAskedForOnceMore() {
        aSessionAgo(allowed = true)
        Handset.deny(Manifest.permission.POST_NOTIFICATIONS)
        act(Action.StartSession(null))
        on(::isAsked)
        on { activity -> assertNull("once", asked(activity)) }
    }

    @Test fun whoRefusedIsNotAskedAgain() {
        aSessionAgo(allowed = false)
        act(Action.StartSession(null))
        on { activity -> assertNull(asked(activity)) }
    }

    private val notifications = listOf(Manifest.permission.POST_NOTIFICATIONS)

    @Test fun itIsAlsoAskedForIfTheScreenMayGoDark() {
        act(Action.Phone(PhoneTap.Awake(false)))
        act(Action.StartSession(null))
        on(::isAsked)
    }

    @Test fun itIsNotAskedForBeforeASessionIsOpen() = on { activity -> assertNull(asked(activity)) }

    @Test fun itWaitsUntilTheFishIsLanded() {
        act(Action.StartSession(null))
        act(Action.Cast(1u))
        act(Action.Bite(1u))
        on { activity ->
            assertNull("asked for over a fish", asked(activity))
            rule.runOnUiThread { activity.state?.act(Action.Landed(1u, null)) }
            isAsked(activity)
            assertEquals(1, Handset.kinds().count { it == "landed" })
        }
    }
}
