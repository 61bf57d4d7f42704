package app.restwater.android

import android.Manifest
import android.app.Notification
import android.app.NotificationManager
import android.content.Intent
import app.restwater.core.Action
import app.restwater.core.Key
import app.restwater.core.shellWords
import app.restwater.ui.FilesDesk
import app.restwater.ui.RestwaterState
import kotlinx.coroutines.launch
import kotlinx.coroutines.runBlocking
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.shadows.ShadowAlarmManager

/** The running wait, its keys and the alarm, on Android's framework and without the app being open. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36])
class LockScreenTest {
    private val lockScreen by lazy { LockScreen(Handset.app) }

    private fun show() = lockScreen.show(Handset.core.watch(Handset.app.now()))

    private fun tap(label: String) {
        val actions = checkNotNull(Handset.wait()).actions
        val action = checkNotNull(actions.find { it.title.toString() == label }) { "no $label in ${actions.map { it.title }}" }
        action.actionIntent.send()
        Handset.answered()
        Handset.later(60)
    }

    @Before fun aSessionIsOpen() {
        Handset.thatMayRing()
        Handset.beginWithAnAlarm()
        Handset.later(60)
    }

    @After fun everyKeyIsAnswered() = Handset.answered()

    @Test fun twoKeysInQuickSuccessionLeaveTheSecondOnesAnswer() {
        show()
        repeat(20) {
            for (key in listOf(Key.CAST, Key.WOUND_IN)) {
                KeyReceiver().onReceive(Handset.app, Intent().putExtra(KeyReceiver.KEY, key.name).putExtra(KeyReceiver.ROD, 1))
                Handset.later(60)
            }
            Handset.answered()
            assertEquals(listOf("CAST", "UNDO"), checkNotNull(Handset.wait()).actions.map { action -> action.title.toString() })
        }
    }

    @Test fun theWaitIsShownWithAClockThatTheSystemDraws() {
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        assertNull(show())
        val wait = checkNotNull(Handset.wait())
        assertTrue(wait.extras.getBoolean(Notification.EXTRA_SHOW_CHRONOMETER))
        assertTrue(wait.flags and Notification.FLAG_ONGOING_EVENT != 0)
        assertEquals(listOf("BITE", "WOUND IN", "CAST"), wait.actions.map { it.title.toString() })
    }

    @Test fun itsKeysLogWithoutOpeningTheApp() {
        show()
        tap("CAST")
        tap("BITE")
        tap("LANDED")
        assertEquals(listOf("session_started", "cast", "bite", "landed"), Handset.kinds())
        assertEquals(listOf("CAST", "UNDO"), checkNotNull(Handset.wait()).actions.map { it.title.toString() })
    }

    /** The screens had read the wait before the key was tapped and shown it afterwards, with the alarms of before. */
    @Test fun aKeyOnTheLockScreenIsNotUndoneByAnOlderReadingOfTheScreens() {
        show()
        val app = Handset.app
        val state = with(app) {
            val desk = FilesDesk(Handset.core, { now() }, scope, files)
            RestwaterState(Handset.core, { now() }, scope, worker, files, lockScreen, receiver, choices, feel, Handset.core.settings(now()), desk)
        }
        Handset.answered()
        app.scope.launch { state.lookOut() }
        KeyReceiver().onReceive(app, Intent().putExtra(KeyReceiver.KEY, Key.CAST.name).putExtra(KeyReceiver.ROD, 1))
        // The worker has done both before the main thread goes on.
        runBlocking(app.worker) {}
        Handset.answered()
        assertEquals(listOf("BITE", "WOUND IN", "CAST"), checkNotNull(Handset.wait()).actions.map { it.title.toString() })
        assertEquals("the alarm of the cast is set", 1, Handset.alarms().size)
    }

    @Test fun aKeyOfAnotherAppOrAnUnknownKeyLogsNothing() {
        show()
        KeyReceiver().onReceive(Handset.app, Intent().putExtra(KeyReceiver.KEY, Key.END.name))
        KeyReceiver().onReceive(Handset.app, Intent().putExtra(KeyReceiver.KEY, "SING"))
        Handset.answered()
        tap("CAST")
        assertEquals("calls are answered in turn", listOf("session_started", "cast"), Handset.kinds())
    }

    // Before Android 14 nobody can forbid an alarm the full screen; AlarmTest covers the case where they did.
    @Test @Config(sdk = [31]) fun theAlarmIsSetFromTheSplashRingsAndIsTakenBackWithTheCast() {
        val splash = Handset.app.now()
        Handset.core.act(Action.Cast(1u), splash)
        show()
        // A duration comes from the monotonic clock, the alarm from the wall clock: two readings differ slightly.
        Handset.later(60)
        assertEquals((splash.wallMs + 12 * 60_000).toDouble(), Handset.alarms().single().toDouble(), 1_000.0)
        val manager = shadowOf(checkNotNull(Handset.app.getSystemService(android.app.AlarmManager::class.java)))
        // The system forgets an alarm when it fires.
        val alarm = checkNotNull(manager.nextScheduledAlarm)
        assertNotNull("it wakes the phone out of doze however soon it follows another", alarm.alarmClockInfo)
        Handset.later(11 * 60)
        AlarmReceiver().onReceive(Handset.app, shadowOf(alarm.operation).savedIntent)
        val rung = Handset.rung().single()
        assertNotNull("full screen on a locked phone", rung.fullScreenIntent)
        assertTrue(rung.extras.getString(Notification.EXTRA_TITLE).orEmpty().contains("12 min out"))
        val channel = checkNotNull(Handset.app.getSystemService(NotificationManager::class.java)).getNotificationChannel(LockScreen.ALARM)
        assertTrue(channel.shouldVibrate() && channel.sound != null)

        Handset.core.act(Action.WoundIn(1u), Handset.app.now())
        show()
        assertEquals("${Handset.core.watch(Handset.app.now())}", emptyList<Long>(), Handset.alarms())
        assertEquals(emptyList<Notification>(), Handset.rung())
    }

    @Test fun afterARestartOfThePhoneTheAlarmIsSetAgain() {
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        StartReceiver().onReceive(Handset.app, Intent(Intent.ACTION_BOOT_COMPLETED))
        Handset.until({ "no alarm" }) { Handset.alarms().isNotEmpty() }
    }

    // Exact alarms are a permission since Android 12, notifications since Android 13.
    @Test @Config(sdk = [34, 36]) fun whatIsNotAllowedIsReported() {
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        ShadowAlarmManager.setCanScheduleExactAlarms(false)
        assertEquals(shellWords("en-GB").lateAlarms, show()?.says)
        assertEquals("it is set even so", 1, Handset.alarms().size)
        Handset.deny(Manifest.permission.POST_NOTIFICATIONS)
        assertNull("not before the question is answered", show())
        Question.answered(Handset.app)
        assertEquals(shellWords("en-GB").noNotifications, show()?.says)
    }

    @Test fun whenTheSessionEndsTheLockScreenIsEmpty() {
        show()
        assertNotNull(Handset.wait())
        Handset.core.act(Action.EndSession, Handset.app.now())
        show()
        assertNull(Handset.wait())
    }
}
