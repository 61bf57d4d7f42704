package app.restwater.android

import android.app.Notification
import android.app.NotificationManager
import android.content.Context
import android.content.Intent
import android.media.AudioManager
import app.restwater.core.Action
import app.restwater.core.MatchTap
import app.restwater.core.RuleTap
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotSame
import org.junit.Assert.assertNull
import org.junit.Assert.assertSame
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config

/**
 * Android plays one notification's sound at a time, none during a call, and never goes back to one that it left: an alarm that
 * nobody has answered is posted again. After a restart or an update, for which Android drops all notifications, it is shown again.
 */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36])
class AgainTest {
    private val lockScreen by lazy { LockScreen(Handset.app) }
    private val audio by lazy { Handset.app.getSystemService(Context.AUDIO_SERVICE) as AudioManager }
    private val manager by lazy { checkNotNull(Handset.app.getSystemService(NotificationManager::class.java)) }

    private fun show() = lockScreen.show(Handset.core.watch(Handset.app.now()))

    private fun act(action: Action) = Handset.act(action, lockScreen)

    private fun titleOf(shown: Notification) = shown.extras.getString(Notification.EXTRA_TITLE).orEmpty().substringBefore(':')

    private fun alarmOf(rod: Int): Notification? = Handset.rung().find { titleOf(it) == "Rod $rod" }

    private fun rings(shown: Notification?) = checkNotNull(shown).flags and Notification.FLAG_INSISTENT != 0

    private fun sweepAll() = manager.activeNotifications.filter { it.notification.channelId == LockScreen.ALARM }.forEach { manager.cancel(it.tag, it.id) }

    @Before fun twoRodsAndAnAlarmAfterTwelveMinutes() = Handset.beginWithTwoRodsAndAnAlarm()

    @After fun everyReceiverHasAnswered() = Handset.answered()

    private fun rodOneRings(): Notification {
        act(Action.Cast(1u))
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        return checkNotNull(alarmOf(1))
    }

    private fun bothRodsRing() {
        act(Action.Cast(1u))
        Handset.later(20)
        act(Action.Cast(2u))
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        assertTrue("both ring", rings(alarmOf(1)) && rings(alarmOf(2)))
    }

    @Test fun anAlarmThatCameDuringACallRingsAfterIt() {
        audio.mode = AudioManager.MODE_IN_CALL
        val first = rodOneRings()
        Handset.later(60)
        Handset.ringDue()
        assertSame("during the call it could only beep", first, alarmOf(1))
        audio.mode = AudioManager.MODE_NORMAL
        Handset.later(60)
        Handset.ringDue()
        assertNotSame("it is posted again", first, alarmOf(1))
        assertTrue("and rings until it is answered", rings(alarmOf(1)))
    }

    /** Another app's sound takes the place of the alarm's, and Restwater does not learn of it. */
    @Test fun anAlarmThatNobodyAnswersIsHeardAgainEachMinuteAndFillsTheScreenOnce() {
        var before = rodOneRings()
        repeat(3) {
            Handset.later(60)
            Handset.ringDue()
            assertNotSame(before, alarmOf(1))
            before = checkNotNull(alarmOf(1))
            assertTrue(rings(before))
            assertEquals("with its keys", 2, before.actions.size)
            assertNull("the screen may be dark in a pocket", before.fullScreenIntent)
        }
    }

    /** A phone in a bag, its session still open, must not ring until its battery is empty. */
    @Test fun anAlarmThatNobodyAnswersFallsSilentAfterTenMinutes() {
        rodOneRings()
        repeat(9) {
            Handset.later(60)
            Handset.ringDue()
            assertTrue("after ${it + 1} minutes", rings(alarmOf(1)))
        }
        Handset.later(60)
        Handset.ringDue()
        assertTrue("silent", !rings(alarmOf(1)))
        assertEquals("with its keys", 2, alarmOf(1)?.actions?.size)
        assertEquals("the phone sleeps", emptyList<Long>(), Handset.agains())
    }

    @Test fun theMinutesOfDoNotDisturbAndOfACallDoNotCount() {
        val rung = rodOneRings()
        shadowOf(manager).setNotificationPolicyAccessGranted(true)
        manager.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_NONE)
        repeat(15) { Handset.later(60); Handset.ringDue(); Handset.answered() }
        manager.setInterruptionFilter(NotificationManager.INTERRUPTION_FILTER_ALL)
        audio.mode = AudioManager.MODE_IN_CALL
        repeat(15) { Handset.later(60); Handset.ringDue(); Handset.answered() }
        audio.mode = AudioManager.MODE_NORMAL
        Handset.later(60)
        Handset.ringDue()
        assertNotSame(rung, alarmOf(1))
        assertTrue(rings(alarmOf(1)))
    }

    @Test fun theEndOfItsCastEndsIt() {
        rodOneRings()
        assertEquals(1, Handset.agains().size)
        act(Action.WoundIn(1u))
        assertEquals(emptyList<Long>(), Handset.agains())
        Handset.later(60)
        Handset.ringDue()
        assertNull(alarmOf(1))
    }

    @Test fun aVolumeKeyEndsIt() {
        rodOneRings()
        lockScreen.quieten()
        assertEquals(emptyList<Long>(), Handset.agains())
        val quiet = alarmOf(1)
        Handset.later(60)
        Handset.ringDue()
        assertSame(quiet, alarmOf(1))
    }

    @Test fun aSwipeEndsIt() {
        val swept = checkNotNull(rodOneRings().deleteIntent)
        sweepAll()
        swept.send()
        Handset.until({ "it is gone" }) { alarmOf(1) != null }
        val quiet = alarmOf(1)
        Handset.later(60)
        Handset.ringDue()
        assertSame("it is silent", quiet, alarmOf(1))
        assertEquals(emptyList<Long>(), Handset.agains())
    }

    /** Android stops its one player with the notification that it plays for, and starts no other. */
    @Test fun theAnswerToOneRodsAlarmLetsTheOthersRingOn() {
        bothRodsRing()
        val first = alarmOf(1)
        act(Action.WoundIn(2u))
        assertNotSame("it is posted again", first, alarmOf(1))
        assertTrue(rings(alarmOf(1)))
        assertNull(alarmOf(2))
    }

    @Test fun theAnswerToOneRodsAlarmDoesNotSoundASilencedOneAgain() {
        bothRodsRing()
        lockScreen.quieten()
        val first = alarmOf(1)
        act(Action.WoundIn(2u))
        assertSame("stays silent", first, alarmOf(1))
    }

    private fun restarts(event: String) {
        sweepAll()
        StartReceiver().onReceive(Handset.app, Intent(event))
        Handset.answered()
    }

    @Test fun anAlarmThatHasRungIsShownAgainAfterARestartAndSoundsOnce() {
        for (event in listOf(Intent.ACTION_BOOT_COMPLETED, Intent.ACTION_MY_PACKAGE_REPLACED)) {
            if (alarmOf(1) == null) rodOneRings()
            restarts(event)
            val shown = checkNotNull(alarmOf(1)) { "nothing is shown after $event" }
            assertEquals("with its keys", 2, shown.actions.size)
            assertTrue("heard once", !rings(shown) && shown.group == null)
            StartReceiver().onReceive(Handset.app, Intent(Intent.ACTION_TIME_CHANGED))
            Handset.answered()
            assertSame("and not again", shown, alarmOf(1))
        }
        act(Action.WoundIn(1u))
        restarts(Intent.ACTION_BOOT_COMPLETED)
        assertNull("its cast has ended", alarmOf(1))
    }

    private fun matchAlarms() = Handset.rung().map { it.extras.getString(Notification.EXTRA_TITLE).orEmpty() }

    private fun nextMatchAlarm() {
        val (now, at) = Handset.app.now().wallMs to Handset.core.watch(Handset.app.now()).alarms.first().atWallMs
        Handset.later((at - now) / 1_000 + 1)
        Handset.ringDue()
    }

    /** It has no key that would answer it: the swipe does. */
    @Test fun anAlarmOfTheMatchThatIsSweptAwayStaysAway() {
        act(Action.Match(MatchTap.Rule(RuleTap.Begin)))
        nextMatchAlarm()
        assertEquals(listOf("30 min to all-out."), matchAlarms())
        val swept = checkNotNull(Handset.rung().single().deleteIntent)
        sweepAll()
        swept.send()
        Handset.answered()
        assertEquals(emptyList<String>(), matchAlarms())
        Handset.later(60)
        Handset.ringDue()
        show()
        assertEquals("not by the next tap either", emptyList<String>(), matchAlarms())
        nextMatchAlarm()
        assertEquals(listOf("10 min to all-out."), matchAlarms())
    }

    /** It only informs: no key answers it. */
    @Test fun anAlarmOfTheMatchRingsOnceAndItsTapTakesItAway() {
        act(Action.Match(MatchTap.Rule(RuleTap.Begin)))
        nextMatchAlarm()
        val shown = Handset.rung().single()
        assertTrue("its sound plays once", !rings(shown))
        assertTrue("a tap takes it away", shown.flags and Notification.FLAG_AUTO_CANCEL != 0)
        assertEquals("and nothing sounds it again", emptyList<Long>(), Handset.agains())
        Handset.later(60)
        Handset.ringDue()
        assertSame(shown, Handset.rung().single())
    }

    /** Two rods are out in a match: their alarms go on. */
    @Test fun anAlarmOfTheMatchLeavesTheRodsAlarmsRinging() {
        act(Action.Match(MatchTap.Rule(RuleTap.Begin)))
        // A minute before that of the match: nobody lets it ring for ten.
        val untilMatch = (Handset.alarms().min() - Handset.app.now().wallMs) / 1_000
        Handset.later(untilMatch - TWELVE_MIN - 60)
        rodOneRings()
        nextMatchAlarm()
        assertTrue(rings(alarmOf(1)))
        assertEquals(1, Handset.agains().size)
    }

    private companion object {
        const val TWELVE_MIN = 720L
    }
}
