package app.restwater.android

import android.app.KeyguardManager
import android.content.Intent
import android.content.pm.ActivityInfo
import android.os.Build
import android.view.WindowManager
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.lifecycle.Lifecycle
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** Only an alarm is shown over the lock screen, until it is left, and the screen of a locked phone goes dark. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class OverLockTest {
    @get:Rule val rule = createEmptyComposeRule()

    private val keyguard get() = shadowOf(checkNotNull(Handset.app.getSystemService(KeyguardManager::class.java)))

    @Before fun aRodIsOut() {
        Handset.thatMayRing()
        Handset.beginWithAnAlarm()
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        Handset.later(60)
    }

    @After fun everyReceiverHasAnswered() {
        Handset.settle()
        Handset.answered()
    }

    /** What the alarm's notification opens once it has rung. */
    private fun alarm(): Intent {
        Handset.app.lockScreen.show(Handset.core.watch(Handset.app.now()))
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        return MainActivity.bank(Handset.app, Handset.core.watch(Handset.app.now()).due.single())
    }

    private fun on(intent: Intent, test: (ActivityScenario<MainActivity>, MainActivity) -> Unit) = ActivityScenario.launch<MainActivity>(intent).use { scenario ->
        var launched: MainActivity? = null
        scenario.onActivity { launched = it }
        val activity = checkNotNull(launched)
        Handset.until({ "no screen" }) { rule.waitForIdle(); activity.state?.keepAwake == true }
        Handset.settle()
        test(scenario, activity)
    }

    private fun staysOn(activity: MainActivity) = has(activity, WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON)

    private fun has(activity: MainActivity, flag: Int): Boolean {
        rule.waitForIdle()
        return activity.window.attributes.flags and flag != 0
    }

    /** Whether the activity is shown over the lock screen, and whether it wakes the phone. */
    @Suppress("DEPRECATION") // Android 8.0 knows no other way.
    private fun over(activity: MainActivity): Pair<Boolean, Boolean> =
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.O_MR1) {
            has(activity, WindowManager.LayoutParams.FLAG_SHOW_WHEN_LOCKED) to has(activity, WindowManager.LayoutParams.FLAG_TURN_SCREEN_ON)
        } else {
            shadowOf(activity).showWhenLocked to shadowOf(activity).turnScreenOn
        }

    @Test fun inTheHandTheScreenStaysOnAndTheLockScreenStaysInFront() = on(Intent(Handset.app, MainActivity::class.java).setAction(Intent.ACTION_MAIN)) { _, activity ->
        assertEquals(true, staysOn(activity))
        assertEquals(false to false, over(activity))
    }

    @Test fun whatTheRunningWaitOpensStaysBehindTheLockScreen() = on(MainActivity.bank(Handset.app)) { _, activity ->
        assertEquals(false to false, over(activity))
    }

    /** The activity is open to every app. */
    @Test fun whatAnotherAppCallsAnAlarmStaysBehindTheLockScreen() {
        keyguard.setKeyguardLocked(true)
        on(MainActivity.bank(Handset.app, Handset.core.watch(Handset.app.now()).alarms.single())) { _, activity ->
            assertEquals("it has not rung", false to false, over(activity))
            assertEquals("", activity.state?.notice)
        }
    }

    @Test fun anAlarmInThePocketLetsTheScreenGoDark() {
        keyguard.setKeyguardLocked(true)
        on(alarm()) { _, activity ->
            assertEquals("its keys can be used", true to true, over(activity))
            assertEquals("the screen stays on in the pocket", false, staysOn(activity))
            keyguard.setKeyguardLocked(false)
            Handset.app.sendBroadcast(Intent(Intent.ACTION_USER_PRESENT))
            Handset.settle()
            assertEquals("unlocked over the Bank", true, staysOn(activity))
        }
    }

    @Test fun onceTheScreenIsDarkTheLockScreenIsInFrontAgain() {
        keyguard.setKeyguardLocked(true)
        on(alarm()) { scenario, activity ->
            scenario.moveToState(Lifecycle.State.CREATED)
            assertEquals(false to false, over(activity))
            scenario.moveToState(Lifecycle.State.RESUMED)
            assertEquals(false to false, over(activity))
        }
    }

    @Test fun anAlarmStaysOverTheLockScreenWhenThePhoneIsTurned() {
        keyguard.setKeyguardLocked(true)
        on(alarm()) { scenario, _ ->
            scenario.recreate()
            scenario.onActivity { opened -> assertEquals(true to true, over(opened)) }
        }
    }

    /** Some phones stop the activity once while they wake, before anybody can have seen it. */
    @Test fun anAlarmThatIsStoppedBeforeItIsSeenIsStillShown() {
        val waking = Robolectric.buildActivity(MainActivity::class.java, alarm()).create().start().resume().pause().stop()
        assertEquals(true to true, over(waking.get()))
        waking.restart().resume().visible().windowFocusChanged(true).pause().stop()
        assertEquals(false to false, over(waking.get()))
        waking.destroy()
    }

    @Test @Config(sdk = [31, 34, 36]) fun theManifestPutsNoPageOverTheLockScreen() {
        val flags = Handset.app.packageManager.getActivityInfo(Intent(Handset.app, MainActivity::class.java).component!!, 0).flags
        // Hidden constants of the framework.
        for (name in listOf("FLAG_SHOW_WHEN_LOCKED", "FLAG_TURN_SCREEN_ON")) {
            assertEquals(name, 0, flags and ActivityInfo::class.java.getField(name).getInt(null))
        }
    }

    private companion object {
        const val TWELVE_MIN = 720L
    }
}
