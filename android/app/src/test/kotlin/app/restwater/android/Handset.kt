package app.restwater.android

import android.app.AlarmManager
import android.app.Notification
import android.app.NotificationManager
import android.content.Context
import androidx.test.core.app.ApplicationProvider
import app.restwater.core.Work
import app.restwater.core.log.Moment
import app.restwater.core.screen.Screen
import app.restwater.core.screen.Which
import java.io.File
import java.util.concurrent.TimeUnit
import kotlinx.coroutines.runBlocking
import org.robolectric.Shadows.shadowOf
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

    fun alarms(): List<Long> = shadowOf(app.getSystemService(Context.ALARM_SERVICE) as AlarmManager).scheduledAlarms.map { it.triggerAtMs }

    fun files() = (core.screen(Which.FILES, app.now()) as Screen.Files).v1

    /** The kinds of the log's entries, read as another phone would. */
    fun kinds(): List<String> {
        val file = runBlocking { core.send(app.now(), Work()) }
        return Regex("\"kind\":\"([a-z_]+)\"").findAll(File(file.path).readText()).map { it.groupValues[1] }.toList()
    }

    /** Sets the phone's clocks to a moment of its own, from which [later] goes on. */
    fun setClock() {
        val begin = System.currentTimeMillis()
        seconds = 0
        app.now = { Moment(begin + seconds * 1_000, 0, "Europe/London", 60_000 + seconds * 1_000, "one boot", 0u) }
    }

    /** Time passes. */
    fun later(by: Long) {
        seconds += by
    }

    private var seconds = 0L

    /** Waits for work that runs beside the main thread, whose answers come by the main looper. */
    fun until(what: () -> String, there: () -> Boolean) {
        repeat(800) {
            ShadowLooper.idleMainLooper(50, TimeUnit.MILLISECONDS)
            if (there()) return
            Thread.sleep(25)
        }
        throw AssertionError(what())
    }
}
