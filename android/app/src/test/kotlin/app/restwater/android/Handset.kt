package app.restwater.android

import android.Manifest
import android.app.AlarmManager
import android.app.Notification
import android.app.NotificationManager
import android.content.Context
import androidx.test.core.app.ActivityScenario
import androidx.test.core.app.ApplicationProvider
import app.restwater.core.Action
import app.restwater.core.Alarm
import app.restwater.core.Moment
import app.restwater.core.PhoneTap
import app.restwater.core.Restwater
import app.restwater.core.Screen
import app.restwater.core.SetupTap
import app.restwater.core.Which
import app.restwater.core.Work
import java.io.File
import java.util.concurrent.TimeUnit
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.Job
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.runBlocking
import org.robolectric.Shadows.shadowOf
import org.robolectric.shadows.ShadowAlarmManager
import org.robolectric.shadows.ShadowLooper

/** The phone of a test: its app, its lock screen, its alarms, its log. */
object Handset {
    val app: RestwaterApplication get() = ApplicationProvider.getApplicationContext()

    val core get() = app.core.getOrThrow()

    fun allow(permission: String) = shadowOf(app).grantPermissions(permission)

    fun deny(permission: String) = shadowOf(app).denyPermissions(permission)

    private val notifications get() = shadowOf(checkNotNull(app.getSystemService(NotificationManager::class.java)))

    fun wait(): Notification? = notifications.getNotification(LockScreen.WAIT_ID)

    fun rung(): List<Notification> = notifications.allNotifications.filter { it.channelId == LockScreen.ALARM }

    /** The alarms of casts and of the match. */
    fun alarms(): List<Long> = set { it != Alarms.AGAIN && it != Alarms.END && !it.orEmpty().startsWith(Alarms.LATE) }

    /** What makes an unanswered alarm heard again. */
    fun agains(): List<Long> = set { it == Alarms.AGAIN }

    private fun set(which: (String?) -> Boolean) =
        manager.scheduledAlarms.filter { which(shadowOf(checkNotNull(it.operation)).savedIntent.action) }.map { it.triggerAtMs }

    /** The notification that a key tapped outside the app was not saved. */
    fun trouble(): Notification? = notifications.allNotifications.find { it.channelId == LockScreen.TROUBLE }

    /** The user swipes the running wait away. */
    fun sweep() = checkNotNull(app.getSystemService(NotificationManager::class.java)).cancel(LockScreen.WAIT_ID)

    /** Lets the work on and off the main thread finish. */
    fun settle() = repeat(10) {
        ShadowLooper.idleMainLooper(50, TimeUnit.MILLISECONDS)
        Thread.sleep(20)
    }

    /** A second passes on the phone's own clock: the next tap is not an accidental second tap of a cold thumb. */
    fun aSecondLater() = ShadowLooper.idleMainLooper(1, TimeUnit.SECONDS)

    /** A phone whose clock runs, on which notifications and exact alarms are allowed. */
    fun thatMayRing() {
        setClock()
        allow(Manifest.permission.POST_NOTIFICATIONS)
        ShadowAlarmManager.setCanScheduleExactAlarms(true)
    }

    /** A session begins, with an alarm after twelve minutes. */
    fun beginWithAnAlarm() {
        begin()
        core.act(Action.Phone(PhoneTap.Alarm(Alarm.After(12u))), app.now())
    }

    /** The same on two rods, a minute ago. */
    fun beginWithTwoRodsAndAnAlarm() {
        thatMayRing()
        core.act(Action.Setup(SetupTap.Rods(2u)), app.now())
        beginWithAnAlarm()
        later(60)
    }

    /** A key of the app: what [lockScreen] shows follows it. */
    fun act(action: Action, lockScreen: LockScreen) {
        core.act(action, app.now())
        lockScreen.show(core.watch(app.now()))
    }

    /** A session begins, a second ago: a tap within the time of a double tap after START would count as one. */
    fun begin() {
        core.act(Action.StartSession(null), aSecondAgo())
    }

    private fun aSecondAgo() = app.now().let { it.copy(wallMs = it.wallMs - 1_000, monoMs = it.monoMs - 1_000) }

    /** The app, once its Bank is read. */
    fun onBank(test: (MainActivity) -> Unit) = ActivityScenario.launch(MainActivity::class.java).use { scenario ->
        var launched: MainActivity? = null
        scenario.onActivity { launched = it }
        val activity = checkNotNull(launched)
        until({ "no screen" }) { activity.state?.bank != null }
        settle()
        test(activity)
    }

    /** The system ends the process: nobody waits for the answers to its requests any more. */
    fun processEnds() {
        fun clear(holder: Any, field: String) = holder.javaClass.getDeclaredField(field).apply { isAccessible = true }.set(holder, null)
        for (asking in listOf("create", "open", "tree")) {
            val field = app.files.javaClass.getDeclaredField(asking).apply { isAccessible = true }
            clear(checkNotNull(field.get(app.files)), "waiting")
        }
        clear(app.files, "toSave")
    }

    /** The system ends the process and starts another: the log is opened again, and what was only in memory is gone. */
    fun newProcess() {
        processEnds()
        core.close()
        val of = RestwaterApplication::class.java
        of.getDeclaredField("opened").apply { isAccessible = true }.set(app, null)
        @Suppress("UNCHECKED_CAST")
        (of.getDeclaredField("log").apply { isAccessible = true }.get(app) as MutableStateFlow<Opening>).value = Opening.Working
        renew("files", lazy { PhoneFiles(app) })
        renew("keptDrafts", lazy { KeptDrafts(app) })
        renew("scope", CoroutineScope(SupervisorJob() + Dispatchers.Main.immediate))
        renew("receivers", CoroutineScope(SupervisorJob() + app.worker))
    }

    /** What the next process has of its own. */
    private fun renew(name: String, value: Any) {
        val fields = RestwaterApplication::class.java.declaredFields
        fields.single { it.name == name || it.name == "$name\$delegate" }.apply { isAccessible = true }.set(app, value)
    }

    /** A file with two entries from another phone. */
    fun fromAnotherPhone(): File {
        val core = Restwater.open(java.nio.file.Files.createTempDirectory("another").toFile().path, app.now(), "en-GB")
        core.act(Action.StartSession(null), aSecondAgo())
        core.act(Action.Cast(1u), app.now())
        val file = File(runBlocking { core.send(app.now(), Work()) }.path)
        core.close()
        return file
    }

    private val manager get() = shadowOf(app.getSystemService(Context.ALARM_SERVICE) as AlarmManager)

    /** The system's due alarms go off, as they do while the app is not running. */
    fun ringDue() {
        for (alarm in manager.scheduledAlarms.filter { it.triggerAtMs <= app.now().wallMs }.sortedBy { it.triggerAtMs }) {
            val operation = checkNotNull(alarm.operation)
            (app.getSystemService(Context.ALARM_SERVICE) as AlarmManager).cancel(operation)
            AlarmReceiver().onReceive(app, shadowOf(operation).savedIntent)
        }
    }

    /** The system loses its alarms, as it does at a restart of the phone. */
    fun forgetAlarms() {
        val system = app.getSystemService(Context.ALARM_SERVICE) as AlarmManager
        manager.scheduledAlarms.forEach { alarm -> alarm.operation?.let(system::cancel) }
    }

    fun files() = (core.screen(Which.FILES, app.now()) as Screen.Files).v1

    /** The kinds of the log's entries, read as another phone would. */
    fun kinds(): List<String> {
        val file = runBlocking { core.send(app.now(), Work()) }
        return Regex("\"kind\":\"([a-z_]+)\"").findAll(File(file.path).readText()).map { it.groupValues[1] }.toList()
    }

    /** Sets the phone's clocks to a fixed moment, which [later] moves on from. */
    fun setClock() {
        // Well within a minute: the screens show its number.
        val begin = System.currentTimeMillis() / 60_000 * 60_000 + 20_000
        seconds = 0
        app.now = { Moment(begin + seconds * 1_000, 0, "Europe/London", 60_000 + seconds * 1_000, "one boot", 0u) }
    }

    /** Time passes. */
    fun later(by: Long) {
        seconds += by
    }

    private var seconds = 0L

    /**
     * Waits until every receiver has answered. Robolectric's notifications outlive a test, so an answer that came after
     * the end of its test would be on the lock screen of the next one.
     */
    fun answered() {
        ShadowLooper.idleMainLooper()
        until({ "a receiver is still at work" }) { checkNotNull(app.receivers.coroutineContext[Job]).children.none() }
    }

    /** Waits for work off the main thread whose answers come through the main looper. */
    fun until(what: () -> String, there: () -> Boolean) {
        repeat(400) {
            ShadowLooper.idleMainLooper(50, TimeUnit.MILLISECONDS)
            if (there()) return
            Thread.sleep(25)
        }
        throw AssertionError(what())
    }
}
