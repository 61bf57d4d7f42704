package app.restwater.android

import android.Manifest
import android.app.AlarmManager
import android.app.Notification
import android.app.NotificationManager
import android.content.Context
import android.content.Intent
import android.media.AudioAttributes
import android.media.Ringtone
import android.media.RingtoneManager
import android.net.Uri
import android.os.VibrationAttributes
import android.os.Vibrator
import android.provider.Settings
import app.restwater.R
import app.restwater.core.Action
import app.restwater.core.Alarm
import app.restwater.core.PhoneTap
import app.restwater.core.shellWords
import java.util.concurrent.TimeUnit
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
import org.robolectric.annotation.Implementation
import org.robolectric.annotation.Implements
import org.robolectric.shadows.ShadowAlarmManager
import org.robolectric.shadows.ShadowLooper

/** An alarm rings until its own cast has ended or one of its keys is tapped; nothing else silences it. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36])
class AlarmTest {
    private val lockScreen by lazy { LockScreen(Handset.app) }

    private fun show() = lockScreen.show(Handset.core.watch(Handset.app.now()))

    private fun act(action: Action) = Handset.act(action, lockScreen)

    private fun titles() = Handset.rung().map { it.extras.getString(Notification.EXTRA_TITLE).orEmpty().substringBefore(':') }.sorted()

    @Before fun twoRodsAndAnAlarmAfterTwelveMinutes() = Handset.beginWithTwoRodsAndAnAlarm()

    @After fun everyReceiverHasAnswered() = Handset.answered()

    /** Twelve minutes after the splash: the system's alarm goes off. */
    private fun rodOneRings() {
        act(Action.Cast(1u))
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        assertEquals(listOf("Rod 1"), titles())
    }

    @Test fun aRingingAlarmKeepsRingingWhenTheAppComesToTheFront() {
        rodOneRings()
        Handset.later(2)
        show()
        assertEquals(listOf("Rod 1"), titles())
    }

    /** The system had sent the alarm when the rod was cast again: it rings for neither cast, and the new one's alarm stays. */
    @Test fun anAlarmOnItsWayDoesNotRingForTheNextCast() {
        act(Action.Cast(1u))
        val manager = shadowOf(checkNotNull(Handset.app.getSystemService(AlarmManager::class.java)))
        // As it was when it was sent: the next plan changes the extras of the one that is kept.
        val old = Intent(shadowOf(manager.scheduledAlarms.single { it.alarmClockInfo != null }.operation).savedIntent)
        Handset.later(TWELVE_MIN)
        act(Action.Cast(1u))
        AlarmReceiver().onReceive(Handset.app, old)
        assertEquals(emptyList<String>(), titles())
        assertEquals("the new cast's alarm", 1, Handset.alarms().size)
    }

    /** The network puts a slow clock forward: the system delivers at once what is past by it, before the app hears of the change. */
    @Test fun aClockThatIsPutForwardRingsNothing() {
        act(Action.Cast(1u))
        Handset.later(120)
        val clock = Handset.app.now
        Handset.app.now = { clock().let { it.copy(wallMs = it.wallMs + 20 * 60_000) } }
        Handset.ringDue()
        assertEquals(emptyList<String>(), titles())
        val left = Handset.alarms().single() - Handset.app.now().wallMs
        assertEquals("what is left of the twelve minutes", (TWELVE_MIN - 120) * 1_000.0, left.toDouble(), 2_000.0)
        StartReceiver().onReceive(Handset.app, Intent(Intent.ACTION_TIME_CHANGED))
        Handset.answered()
        assertEquals(emptyList<String>(), titles())
        Handset.later(TWELVE_MIN - 120 + 1)
        Handset.ringDue()
        assertEquals(listOf("Rod 1"), titles())
    }

    /** The angler chose no tone for the channel: in a bag nothing would be heard. */
    @Test fun aChannelWithoutAToneIsSaid() {
        val manager = checkNotNull(Handset.app.getSystemService(NotificationManager::class.java))
        lockScreen
        manager.getNotificationChannel(LockScreen.ALARM).setSound(null, null)
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        assertEquals(shellWords("en-GB").alarmsSilent, show()?.says)
        val row = Handset.app.choices.rows().find { it.tag == PhoneChoices.NOTIFICATIONS }
        assertEquals(Handset.app.getString(R.string.not_allowed), row?.value)
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        assertEquals("it is shown and shakes", listOf("Rod 1"), titles())
    }

    /** The channel follows the phone's own alarm sound, which can be none too. */
    @Test fun aPhoneWhoseAlarmSoundIsNoneIsSaid() {
        Settings.System.putString(Handset.app.contentResolver, Settings.System.ALARM_ALERT, null)
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        assertEquals(shellWords("en-GB").alarmsSilent, show()?.says)
        Settings.System.putString(Handset.app.contentResolver, Settings.System.ALARM_ALERT, "content://media/internal/audio/media/1")
        assertNull(show()?.says)
    }

    /** If the angler revokes exact alarms, the system deletes those that are set and tells nobody. */
    @Test @Config(sdk = [31, 34, 36]) fun anAlarmRingsThoughExactAlarmsWereRevoked() {
        act(Action.Cast(1u))
        ShadowAlarmManager.setCanScheduleExactAlarms(false)
        val manager = checkNotNull(Handset.app.getSystemService(AlarmManager::class.java))
        shadowOf(manager).scheduledAlarms.filter { it.alarmClockInfo != null }.forEach { manager.cancel(checkNotNull(it.operation)) }
        Handset.later(TWELVE_MIN + 120)
        Handset.ringDue()
        Handset.answered()
        assertEquals(listOf("Rod 1"), titles())
        Handset.later(5)
        act(Action.WoundIn(1u))
        assertEquals(emptyList<String>(), titles())
        assertEquals("nothing is left of it", 0, shadowOf(manager).scheduledAlarms.size)
    }

    @Test fun anotherRodsKeyDoesNotSilenceIt() {
        rodOneRings()
        Handset.later(5)
        act(Action.Cast(2u))
        Handset.later(5)
        act(Action.Liner(2u))
        Handset.later(5)
        act(Action.WoundIn(2u))
        assertEquals(listOf("Rod 1"), titles())
    }

    @Test fun twoRodsRingAndEachIsSilencedByItsOwnKey() {
        act(Action.Cast(1u))
        Handset.later(60)
        act(Action.Cast(2u))
        assertEquals(2, Handset.alarms().size)
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        assertEquals(listOf("Rod 1", "Rod 2"), titles())
        act(Action.WoundIn(1u))
        assertEquals(listOf("Rod 2"), titles())
        Handset.later(5)
        act(Action.WoundIn(2u))
        assertEquals(emptyList<String>(), titles())
    }

    /** Nothing asks for a tap while a fish is on, on whichever rod. */
    @Test fun anAlarmThatRingsWaitsWhileAFishIsOnAnotherRod() {
        act(Action.Cast(1u))
        Handset.later(60)
        act(Action.Cast(2u))
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        assertEquals(listOf("Rod 1", "Rod 2"), titles())
        act(Action.Bite(1u))
        assertEquals(emptyList<String>(), titles())
        assertEquals(0, Handset.alarms().size)
        Handset.later(90)
        act(Action.Landed(1u, null))
        assertEquals(1, Handset.alarms().size)
        Handset.later(10)
        Handset.ringDue()
        assertEquals(listOf("Rod 2"), titles())
    }

    @Test fun theNextCastOfTheSameRodSilencesItAndRingsInItsTurn() {
        rodOneRings()
        Handset.later(5)
        act(Action.Cast(1u))
        assertEquals(emptyList<String>(), titles())
        assertEquals(1, Handset.alarms().size)
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        assertEquals(listOf("Rod 1"), titles())
    }

    @Test fun itsKeysLogForItsOwnRod() {
        act(Action.Cast(1u))
        Handset.later(60)
        act(Action.Cast(2u))
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        val rung = Handset.rung().single { it.extras.getString(Notification.EXTRA_TITLE).orEmpty().startsWith("Rod 1") }
        assertEquals(listOf("WOUND IN", "CAST"), rung.actions.orEmpty().map { it.title.toString() })
        rung.actions.first().actionIntent.send()
        Handset.until({ "rod 1 still rings: ${titles()}" }) { titles() == listOf("Rod 2") }
        assertEquals("wound_in", Handset.kinds().last())
        val ready = Handset.core.watch(Handset.app.now()).due.map { it.id }
        assertEquals("rod 1 is in, rod 2 still out", listOf("rod-2"), ready)
    }

    @Test fun itRingsUntilItIsAnswered() {
        rodOneRings()
        assertTrue("the sound goes on", Handset.rung().single().flags and Notification.FLAG_INSISTENT != 0)
        lockScreen.quieten()
        val quiet = Handset.rung().single()
        assertTrue("a volume key ends the sound", quiet.flags and Notification.FLAG_INSISTENT == 0)
        assertEquals("and leaves the keys", 2, quiet.actions.size)
    }

    @Test fun anAlarmDueWhileThePhoneWasOffRingsOnce() {
        act(Action.Cast(1u))
        Handset.later(TWELVE_MIN + 60)
        StartReceiver().onReceive(Handset.app, Intent(Intent.ACTION_BOOT_COMPLETED))
        Handset.until({ "nothing rings" }) { titles() == listOf("Rod 1") }
        assertEquals("the system's own alarm does not ring it again", emptyList<Long>(), Handset.alarms())
    }

    @Test fun anAlarmChosenAfterItsMinuteDoesNotRing() {
        Handset.core.act(Action.Phone(PhoneTap.Alarm(Alarm.Off)), Handset.app.now())
        act(Action.Cast(1u))
        Handset.later(TWELVE_MIN + 60)
        act(Action.Phone(PhoneTap.Alarm(Alarm.After(12u))))
        assertEquals(emptyList<String>(), titles())
    }

    @Test fun everyEventThatRemovesAlarmsSetsThemAgain() {
        act(Action.Cast(1u))
        val events = listOf(
            Intent.ACTION_BOOT_COMPLETED, Intent.ACTION_TIME_CHANGED, Intent.ACTION_TIMEZONE_CHANGED, Intent.ACTION_LOCALE_CHANGED, Intent.ACTION_MY_PACKAGE_REPLACED,
            AlarmManager.ACTION_SCHEDULE_EXACT_ALARM_PERMISSION_STATE_CHANGED,
            NotificationManager.ACTION_APP_BLOCK_STATE_CHANGED, NotificationManager.ACTION_NOTIFICATION_CHANNEL_BLOCK_STATE_CHANGED,
        )
        for (event in events) {
            val heard = Handset.app.packageManager.queryBroadcastReceivers(Intent(event).setPackage(Handset.app.packageName), 0)
            assertEquals("$event is not declared", 1, heard.size)
            Handset.forgetAlarms()
            StartReceiver().onReceive(Handset.app, Intent(event))
            Handset.until({ "no alarm after $event" }) { Handset.alarms().isNotEmpty() }
        }
    }

    @Test @Config(sdk = [31, 34, 36]) fun anInexactAlarmIsReportedAsUpToAnHourLateEachTime() {
        ShadowAlarmManager.setCanScheduleExactAlarms(false)
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        val said = checkNotNull(show())
        assertTrue(said.says, "up to an hour late" in said.says && said.isNew)
        assertEquals("the same alarm is not reported twice", false, show()?.isNew)
        Handset.later(60)
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        assertEquals(shellWords("en-GB").lateAlarms to true, show()?.let { it.says to it.isNew })
        assertTrue("on the lock screen too", "hour late" in checkNotNull(Handset.wait()).extras.getCharSequence(Notification.EXTRA_BIG_TEXT, ""))
    }

    @Test @Config(sdk = [34, 36]) fun fullScreenIsAskedForOnlyWhereTheSystemAllowsIt() {
        Handset.deny(Manifest.permission.USE_FULL_SCREEN_INTENT)
        rodOneRings()
        assertNull(Handset.rung().single().fullScreenIntent)
    }

    @Test @Config(sdk = [34, 36], shadows = [TonesAsked::class]) fun withoutNotificationsAnAlarmSoundsAllTheSame() {
        Handset.deny(Manifest.permission.POST_NOTIFICATIONS)
        val vibrator = shadowOf(Handset.app.getSystemService(Vibrator::class.java))
        act(Action.Cast(1u))
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        assertEquals("the alarm's tone is asked for", RingtoneManager.getDefaultUri(RingtoneManager.TYPE_ALARM), TonesAsked.last)
        assertTrue("it shakes", vibrator.isVibrating)
        act(Action.WoundIn(1u))
        assertTrue("its own key silences it", !vibrator.isVibrating)
    }

    /** From Android 14 on the system freezes the process that sounds: what ends the sound comes from the system too. */
    @Test @Config(sdk = [34, 36], shadows = [TonesAsked::class]) fun aSoundWithoutNotificationsIsEndedByTheSystem() {
        Handset.deny(Manifest.permission.POST_NOTIFICATIONS)
        val vibrator = shadowOf(Handset.app.getSystemService(Vibrator::class.java))
        act(Action.Cast(1u))
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        assertTrue("it shakes", vibrator.isVibrating)
        assertEquals("the vibration ends by itself", -1, vibrator.repeat)
        Handset.later(121)
        Handset.ringDue()
        Handset.answered()
        assertTrue("nobody is there", !vibrator.isVibrating)
    }

    /** A cast whose alarm is due while its channel has an importance: that it makes no sound is announced, and the phone sounds. */
    private fun soundsWithItsChannelAt(importance: Int) {
        show()
        val manager = checkNotNull(Handset.app.getSystemService(NotificationManager::class.java))
        manager.getNotificationChannel(LockScreen.ALARM).importance = importance
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        assertEquals("it is announced", shellWords("en-GB").alarmsSilent, show()?.says)
        val row = Handset.app.choices.rows().first { it.tag == PhoneChoices.NOTIFICATIONS }
        assertEquals("and on the Phone screen", Handset.app.getString(R.string.not_allowed), row.value)
        TonesAsked.last = null
        Handset.later(TWELVE_MIN)
        Handset.ringDue()
        assertEquals("the alarm's tone is asked for", RingtoneManager.getDefaultUri(RingtoneManager.TYPE_ALARM), TonesAsked.last)
    }

    @Test @Config(shadows = [TonesAsked::class]) fun withItsChannelSwitchedOffAnAlarmSoundsAllTheSame() {
        soundsWithItsChannelAt(NotificationManager.IMPORTANCE_NONE)
        assertTrue("it shakes", shadowOf(Handset.app.getSystemService(Vibrator::class.java)).isVibrating)
        assertNotNull("the wait is shown even so", Handset.wait())
    }

    /** Android's "Silent" for a channel is a low importance: it is shown, and makes no sound. */
    @Test @Config(shadows = [TonesAsked::class]) fun withItsChannelSetToSilentAnAlarmSoundsAllTheSameAndIsShown() {
        soundsWithItsChannelAt(NotificationManager.IMPORTANCE_LOW)
        assertEquals("it is shown with its keys", listOf("Rod 1"), titles())
        act(Action.WoundIn(1u))
        assertEquals(emptyList<String>(), titles())
    }

    @Test fun theKeyForAlarmsOpensTheirOwnSetting() {
        show()
        val manager = checkNotNull(Handset.app.getSystemService(NotificationManager::class.java))
        manager.getNotificationChannel(LockScreen.ALARM).importance = NotificationManager.IMPORTANCE_LOW
        Handset.app.choices.choose(PhoneChoices.NOTIFICATIONS, PhoneChoices.OPEN)
        val opened = shadowOf(Handset.app).nextStartedActivity
        assertEquals(Settings.ACTION_CHANNEL_NOTIFICATION_SETTINGS, opened.action)
        assertEquals(LockScreen.ALARM, opened.getStringExtra(Settings.EXTRA_CHANNEL_ID))
        assertEquals(Handset.app.packageName, opened.getStringExtra(Settings.EXTRA_APP_PACKAGE))
    }

    /** Only a channel of high importance may fill the screen. */
    @Test @Config(sdk = [26, 31]) fun aChannelThatMayNotPopUpFillsNoScreen() {
        show()
        assertTrue(lockScreen.fullScreen)
        val manager = checkNotNull(Handset.app.getSystemService(NotificationManager::class.java))
        manager.getNotificationChannel(LockScreen.ALARM).importance = NotificationManager.IMPORTANCE_DEFAULT
        assertTrue("it may still sound", lockScreen.alarmsAllowed)
        assertTrue("it fills no screen", !lockScreen.fullScreen)
        Handset.app.choices.choose(PhoneChoices.FULL_SCREEN, PhoneChoices.OPEN)
        assertEquals(Settings.ACTION_CHANNEL_NOTIFICATION_SETTINGS, shadowOf(Handset.app).nextStartedActivity.action)
    }

    @Test @Config(sdk = [31, 34, 36], shadows = [TonesAsked::class]) fun withoutNotificationsItShakesAsAnAlarmDoes() {
        val vibrator = shadowOf(Handset.app.getSystemService(Vibrator::class.java))
        Handset.app.sounder.sound("rod-1")
        // A vibration of no stated use is dropped while the app is in the background. The framework of Android 12 turns the one
        // kind of attributes into the other.
        val asVibration = (vibrator.vibrationAttributesFromLastVibration as? VibrationAttributes)?.usage
        val asSound = vibrator.audioAttributesFromLastVibration?.usage
        assertTrue("$asVibration, $asSound", asVibration == VibrationAttributes.USAGE_ALARM || asSound == AudioAttributes.USAGE_ALARM)
    }

    @Test @Config(shadows = [TonesAsked::class]) fun anAlarmThatSoundsAgainIsNotCutShortByItsFirstTime() {
        val vibrator = shadowOf(Handset.app.getSystemService(Vibrator::class.java))
        Handset.app.sounder.sound("rod-1")
        ShadowLooper.idleMainLooper(100, TimeUnit.SECONDS)
        Handset.app.sounder.sound("rod-1")
        ShadowLooper.idleMainLooper(60, TimeUnit.SECONDS)
        assertTrue("it shakes for two minutes", vibrator.isVibrating)
        ShadowLooper.idleMainLooper(61, TimeUnit.SECONDS)
        assertTrue("and no longer", !vibrator.isVibrating)
    }

    private fun sweepTheAlarm() {
        val swept = checkNotNull(Handset.rung().single().deleteIntent) { "nobody hears of it" }
        val manager = checkNotNull(Handset.app.getSystemService(NotificationManager::class.java))
        manager.activeNotifications.filter { it.notification.channelId == LockScreen.ALARM }.forEach { manager.cancel(it.tag, it.id) }
        assertEquals(emptyList<String>(), titles())
        swept.send()
    }

    @Test fun anAlarmThatIsSweptAwayComesBackSilentlyWithItsKeys() {
        rodOneRings()
        sweepTheAlarm()
        Handset.until({ "it is gone" }) { titles() == listOf("Rod 1") }
        val back = Handset.rung().single()
        assertTrue("it is shown without its sound", back.flags and Notification.FLAG_INSISTENT == 0)
        assertEquals(listOf("WOUND IN", "CAST"), back.actions.orEmpty().map { it.title.toString() })
        act(Action.WoundIn(1u))
        assertEquals("its cast ends it", emptyList<String>(), titles())
    }

    @Test fun anAlarmThatIsSweptAwayAfterItsCastHasEndedStaysAway() {
        rodOneRings()
        Handset.core.act(Action.WoundIn(1u), Handset.app.now())
        sweepTheAlarm()
        Handset.answered()
        assertEquals(emptyList<String>(), titles())
    }

    private companion object {
        const val TWELVE_MIN = 720L
    }
}

/** Records which tones were requested: Robolectric can't play one. */
@Implements(RingtoneManager::class)
class TonesAsked {
    companion object {
        var last: Uri? = null

        @Implementation
        @JvmStatic
        @Suppress("unused", "UNUSED_PARAMETER")
        fun getRingtone(context: Context, uri: Uri): Ringtone? {
            last = uri
            return null
        }
    }
}
