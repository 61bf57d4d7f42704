package app.restwater.android

import android.app.Application
import android.app.NotificationManager
import android.content.IntentFilter
import android.content.res.Configuration
import androidx.compose.foundation.ComposeFoundationFlags
import androidx.compose.foundation.ExperimentalFoundationApi
import app.restwater.core.Moment
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.Settings
import app.restwater.core.WatchAlarm
import app.restwater.core.afterTransfer
import app.restwater.core.salvage
import app.restwater.ui.FilesDesk
import app.restwater.ui.language
import java.io.File
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.StateFlow
import kotlinx.coroutines.flow.filterIsInstance
import kotlinx.coroutines.flow.first
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext

/** How far the opening of the log has got. */
internal sealed interface Opening {
    /** It is being opened, and migrated if an earlier version wrote it. */
    data object Working : Opening

    /** It is open; [desk] exports and imports its files, and the first picture has the hand and scheme of [settings]. */
    class Open(val core: Restwater, val desk: FilesDesk, val settings: Settings) : Opening

    /** It could not be opened, for the core's reason. */
    class Refused(val why: RestwaterException.Failed) : Opening
}

/** Holds what outlives every activity: the one core of the process, over the log in the app's own folder, alarms, imports. */
open class RestwaterApplication : Application() {
    /** Text fields have the menu without icons, here as in what R8 makes (proguard-rules.pro). */
    @OptIn(ExperimentalFoundationApi::class)
    override fun onCreate() {
        super.onCreate()
        ComposeFoundationFlags.isNewContextMenuEnabled = false
        ComposeFoundationFlags.isSmartSelectionEnabled = false
        // Sent to those who are there only. An app that is not even in memory says it with its next look at the log.
        val disturbed = IntentFilter(NotificationManager.ACTION_INTERRUPTION_FILTER_CHANGED)
        registerReceiver(SilenceReceiver(), disturbed)
    }

    /** The angler chose another language in the phone's settings while the process is there. */
    override fun onConfigurationChanged(newConfig: Configuration) {
        super.onConfigurationChanged(newConfig)
        val chosen = language()
        if (chosen == said) return
        said = chosen
        // After an opening that is under way, and before anything that a new activity asks.
        receivers.launch {
            val core = opened?.getOrNull() ?: return@launch
            try {
                core.setLanguage(chosen)
                lockScreen.renamed()
                lockScreen.show(core.watch(now()))
            } catch (broken: RestwaterException.Failed) {
                // The next tap says so.
            }
        }
    }

    /** The language of the words. */
    private var said = language()

    private val folder: File get() = filesDir.resolve("log").apply { mkdirs() }

    /** The phone's clocks; a test sets its own. */
    var now: () -> Moment = { present(this) }

    private var opened: Result<Restwater>? = null

    /** Opened at first use, which may take some time; the core's error if that failed. */
    @get:Synchronized
    val core: Result<Restwater>
        get() = opened?.takeIf { it.isSuccess } ?: runCatching { open(folder.path) }.also { opened = it }

    private fun open(folder: String): Restwater {
        afterTransfer(folder, noBackupFilesDir.resolve("this-phone").path, now(), language())
        return Restwater.open(folder, now(), language())
    }

    /** Makes all calls to the core, one after another: from the screens, the lock screen and the alarms. */
    val worker = Dispatchers.IO.limitedParallelism(1)

    /** For work that needs no screen: a tap is saved and an import finished whatever happens to the activity. */
    val scope = CoroutineScope(SupervisorJob() + Dispatchers.Main.immediate)

    /** For the work of receivers: one after another, off the main thread. */
    internal val receivers = CoroutineScope(SupervisorJob() + worker)

    internal val lockScreen by lazy { LockScreen(this) }
    internal val sounder by lazy { Sounder(this) }
    internal val files by lazy { PhoneFiles(this) }
    internal val receiver by lazy { PhoneReceiver(this) }
    internal val feel = PhoneFeel()
    internal val choices by lazy { PhoneChoices(this) }
    internal val keptDrafts by lazy { KeptDrafts(this) }

    private val log = MutableStateFlow<Opening>(Opening.Working)

    /** The state of the opening. */
    internal val opening: StateFlow<Opening> get() = log

    /** Opens the log off the main thread, unless that was done already. */
    internal fun open() {
        if (log.value is Opening.Open) return
        log.value = Opening.Working
        scope.launch {
            val result = withContext(worker) { core.mapCatching { core -> core to core.settings(now()) } }
            log.value = result.fold({ (core, settings) -> opening(core, settings) }) { Opening.Refused(it as? RestwaterException.Failed ?: throw it) }
        }
    }

    private fun opening(core: Restwater, settings: Settings) = Opening.Open(core, FilesDesk(core, { now() }, scope, files, worker), settings)

    /** Waits for the log to be open. */
    internal suspend fun opened(): Opening.Open = opening.filterIsInstance<Opening.Open>().first()

    /**
     * Sets a damaged log aside and saves what can be saved of it, off the main thread and whatever happens to the activity. What
     * came of it is for the next screen to say: see [salvageSaid].
     */
    internal fun salvage() {
        log.value = Opening.Working
        scope.launch {
            try {
                withContext(worker) { salvages.edit().putString(SAID, salvaged()).commit() }
                open()
            } catch (refused: RestwaterException.Failed) {
                // The user has to read the reason first: the log is tried again when the app comes to the front.
                log.value = Opening.Refused(refused)
            }
        }
    }

    /** What a salvage saved and lost, if no screen has said it yet. */
    internal fun salvageSaid(): String? = salvages.getString(SAID, null)?.also { salvages.edit().remove(SAID).apply() }

    private val salvages by lazy { getSharedPreferences("salvage", MODE_PRIVATE) }

    @Synchronized
    private fun salvaged(): String = salvage(folder.path, now(), language()).also { opened = null }

    /** Called when an alarm rings while a screen is in the foreground. */
    internal var heard: ((WatchAlarm) -> Unit)? = null

    /** An alarm rings. */
    internal fun rings(alarm: WatchAlarm) {
        scope.launch { heard?.invoke(alarm) }
    }

    private companion object {
        const val SAID = "said"
    }
}
