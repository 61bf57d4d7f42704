package app.restwater.android

import android.app.Notification
import android.app.PendingIntent
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.test.platform.app.InstrumentationRegistry
import app.restwater.core.Action
import app.restwater.core.Alarm
import app.restwater.core.PhoneTap
import app.restwater.core.SetupTap
import app.restwater.ui.Showing
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** What the system shows of the app leads to the Bank, and an alarm to its own rod, whatever page was open last. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class ToTheBankTest {
    @get:Rule val rule = createEmptyComposeRule()

    @Before fun rodTwoIsOutAndRodOneIsChosen() {
        Handset.thatMayRing()
        act(Action.Setup(SetupTap.Rods(2u)))
        act(Action.StartSession(null))
        act(Action.Phone(PhoneTap.Alarm(Alarm.After(12u))))
        act(Action.Cast(2u))
        act(Action.ChooseRod(1u))
    }

    @After fun everyReceiverHasAnswered() = Handset.answered()

    private fun act(action: Action) {
        Handset.core.act(action, Handset.app.now())
        Handset.later(5)
    }

    /** The app with the page of waits open. */
    private fun onWaits(test: (MainActivity) -> Unit) = Handset.onBank { activity ->
        rule.runOnUiThread { activity.state?.open(Showing.WAITS) }
        Handset.settle()
        test(activity)
        assertEquals(activity.state?.notice, Showing.BANK, activity.state?.showing)
    }

    private fun chosen(activity: MainActivity) = activity.state?.bank?.rods?.single { it.chosen }?.rod

    private fun open(activity: MainActivity, from: PendingIntent) {
        val intent = shadowOf(from).savedIntent
        rule.runOnUiThread { InstrumentationRegistry.getInstrumentation().callActivityOnNewIntent(activity, intent) }
    }

    private fun rodTwoRings(): Notification {
        Handset.app.lockScreen.show(Handset.core.watch(Handset.app.now()))
        Handset.later(720)
        Handset.ringDue()
        return Handset.rung().single()
    }

    private fun leadsToRodTwo(from: (Notification) -> PendingIntent) = onWaits { activity ->
        assertEquals(1.toUByte(), chosen(activity))
        val rung = rodTwoRings()
        Handset.settle()
        open(activity, from(rung))
        Handset.until({ "rod ${chosen(activity)} on ${activity.state?.showing}" }) { activity.state?.showing == Showing.BANK && chosen(activity) == 2.toUByte() }
        Handset.settle()
        val title = rung.extras.getString(Notification.EXTRA_TITLE).orEmpty()
        assertTrue("${activity.state?.notice} does not say $title", title in activity.state?.notice.orEmpty())
    }

    @Test fun aTapOnAnAlarmOpensTheBankWithItsRod() = leadsToRodTwo { it.contentIntent }

    // Before Android 14 nobody can forbid an alarm the full screen.
    @Test @Config(sdk = [31]) fun anAlarmsFullScreenIsTheBankWithItsRod() = leadsToRodTwo { it.fullScreenIntent }

    @Test fun aTapOnTheRunningWaitOpensTheBankAndLeavesTheRod() = onWaits { activity ->
        Handset.app.lockScreen.show(Handset.core.watch(Handset.app.now()))
        open(activity, checkNotNull(Handset.wait()).contentIntent)
        Handset.until({ "on ${activity.state?.showing}" }) { activity.state?.showing == Showing.BANK }
        Handset.settle()
        assertEquals(1.toUByte(), chosen(activity))
    }

    // Robolectric binds no tile to the system, so its tap is not run here: this is what it sends.
    @Test fun whatTheTileSendsOpensTheBank() = onWaits { activity ->
        val intent = MainActivity.bank(activity)
        rule.runOnUiThread { InstrumentationRegistry.getInstrumentation().callActivityOnNewIntent(activity, intent) }
        Handset.until({ "on ${activity.state?.showing}" }) { activity.state?.showing == Showing.BANK }
    }
}
