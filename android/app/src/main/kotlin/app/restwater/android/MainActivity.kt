package app.restwater.android

import android.Manifest
import android.app.UiModeManager
import android.content.Context
import android.content.Intent
import android.content.res.Configuration
import android.graphics.Color
import android.net.Uri
import android.os.Build
import android.os.Bundle
import android.util.DisplayMetrics
import android.view.KeyEvent
import android.view.MotionEvent
import android.view.WindowManager
import androidx.activity.ComponentActivity
import androidx.activity.SystemBarStyle
import androidx.activity.compose.BackHandler
import androidx.activity.compose.setContent
import androidx.activity.enableEdgeToEdge
import androidx.activity.result.contract.ActivityResultContracts
import androidx.activity.viewModels
import androidx.compose.foundation.isSystemInDarkTheme
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.WindowInsets
import androidx.compose.foundation.layout.WindowInsetsSides
import androidx.compose.foundation.layout.exclude
import androidx.compose.foundation.layout.ime
import androidx.compose.foundation.layout.only
import androidx.compose.foundation.layout.safeDrawing
import androidx.compose.foundation.layout.windowInsetsPadding
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.produceState
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.toArgb
import androidx.compose.ui.platform.LocalConfiguration
import androidx.compose.ui.platform.LocalDensity
import androidx.core.content.IntentCompat
import androidx.core.graphics.drawable.toDrawable
import androidx.core.view.WindowCompat
import androidx.core.view.WindowInsetsCompat.Type.statusBars
import androidx.core.view.WindowInsetsControllerCompat
import androidx.lifecycle.Lifecycle
import androidx.lifecycle.lifecycleScope
import androidx.lifecycle.repeatOnLifecycle
import app.restwater.R
import app.restwater.core.BankState
import app.restwater.core.Scheme
import app.restwater.core.WatchAlarm
import app.restwater.core.palmMm
import app.restwater.core.shellWords
import app.restwater.ui.GlassMeasure
import app.restwater.ui.Ink
import app.restwater.ui.LocalInk
import app.restwater.ui.LocalSystemBack
import app.restwater.ui.RestwaterApp
import app.restwater.ui.RestwaterState
import app.restwater.ui.Showing
import app.restwater.ui.Trouble
import app.restwater.ui.language
import kotlin.math.abs
import kotlinx.coroutines.delay
import kotlinx.coroutines.launch

/** The main activity: it shows the stage of [RestwaterModel], and asks for what only an activity can ask for. */
class MainActivity : ComponentActivity() {
    private val app get() = application as RestwaterApplication
    private val model: RestwaterModel by viewModels()
    private val bars by lazy {
        WindowCompat.getInsetsController(window, window.decorView).apply {
            systemBarsBehavior = WindowInsetsControllerCompat.BEHAVIOR_SHOW_TRANSIENT_BARS_BY_SWIPE
        }
    }
    private val palm by lazy { Palm(palmMm() * pxPerMm(resources.displayMetrics)) { state?.tapRejected() } }
    private val overLock by lazy { OverLock(this, model) }
    private val lock by lazy { Lock(this) }
    private val volume by lazy { VolumeKeys(this, app) }
    private val ask = registerForActivityResult(ActivityResultContracts.RequestPermission()) {
        Question.answered(this)
        onReady { it.lookOut() }
    }

    /** The system bars are transparent; their icons follow the app's scheme, whatever theme the phone has. */
    private val bare = SystemBarStyle.auto(Color.TRANSPARENT, Color.TRANSPARENT) { phone ->
        state?.settings?.scheme?.let { it == Scheme.NIGHT }
            ?: (phone.configuration.uiMode and Configuration.UI_MODE_NIGHT_MASK == Configuration.UI_MODE_NIGHT_YES)
    }

    /** What is shown. */
    internal val stage: Stage get() = model.stage

    /** What the screens draw; none until the log is open. */
    internal val state: RestwaterState? get() = (stage as? Stage.Ready)?.state

    override fun onCreate(savedInstanceState: Bundle?) {
        super.onCreate(savedInstanceState)
        wearFace()
        enableEdgeToEdge(bare, bare)
        overLock.again()
        if (savedInstanceState == null) Question.isNoLongerOpen(this)
        // They register for results before the activity has started, as the system requires.
        app.files.attach(this, savedInstanceState)
        app.receiver.attach(this)
        setContent { Shown(model.stage) }
        // The clock of the screens runs while they are visible. Composition can't decide this, since it is paused later.
        lifecycleScope.launch { repeatOnLifecycle(Lifecycle.State.STARTED) { model.ready().runClock() } }
        // If it is opened again from the list of recent apps, an activity gets the intent that it was first started with.
        val again = intent.flags and Intent.FLAG_ACTIVITY_LAUNCHED_FROM_HISTORY != 0
        if (savedInstanceState == null && !again) take(intent)
        model.fetchAgain()?.let(::fetch)
    }

    private fun onReady(task: suspend (RestwaterState) -> Unit) = model.onReady(task)

    /** Fetches a file of another app and shows what it would bring; its process may take long to answer. */
    private fun fetch(from: Uri) {
        onReady { state -> state.open(Showing.FILES) }
        model.fetch(from)
    }

    override fun onNewIntent(intent: Intent) {
        super.onNewIntent(intent)
        take(intent)
    }

    /** What another app, the launcher or the lock screen asks for: to open a file, to begin a session, or to see the Bank. */
    private fun take(intent: Intent) {
        if (intent.action == START) onReady { state -> state.begin() }
        if (intent.action == BANK) {
            // Every app may start this activity, so what it calls an alarm is not believed.
            val rung = intent.getStringExtra(ALARM)?.let(app.lockScreen::hasRung) == true
            if (rung) overLock.alarm()
            val rod = intent.getIntExtra(ROD, NO_ROD).takeIf { it != NO_ROD }?.toUByte()
            onReady { state -> state.toBank(rod, intent.getStringExtra(TITLE).orEmpty().takeIf { rung }.orEmpty()) }
        }
        fileOf(intent)?.let(::fetch)
    }

    private fun fileOf(intent: Intent): Uri? = when (intent.action) {
        Intent.ACTION_VIEW -> intent.data
        Intent.ACTION_SEND -> IntentCompat.getParcelableExtra(intent, Intent.EXTRA_STREAM, Uri::class.java)
        else -> null
    }

    override fun dispatchTouchEvent(event: MotionEvent): Boolean = palm.filter(event) { super.dispatchTouchEvent(it) }

    override fun dispatchKeyEvent(event: KeyEvent): Boolean = volume.take(event, state) || super.dispatchKeyEvent(event)

    override fun onStart() {
        super.onStart()
        lock.started()
        // By now there may be space, or the other process that had the log open may have ended.
        if (stage is Stage.Refused) app.open()
        app.feel.view = window.decorView
        app.heard = { alarm -> state?.say(alarm.title) }
        app.sounder.cameToFront()
    }

    override fun onResume() {
        super.onResume()
        lock.look()
        onReady { it.toFront() }
    }

    override fun onWindowFocusChanged(hasFocus: Boolean) {
        super.onWindowFocusChanged(hasFocus)
        lock.look()
        if (!hasFocus) return
        overLock.focused()
        // The shade was over the screen, where Do not disturb may have been switched on.
        onReady { it.lookOut() }
    }

    override fun onStop() {
        super.onStop()
        lock.stopped()
        overLock.stopped()
        if (app.feel.view === window.decorView) {
            app.feel.view = null
            app.heard = null
        }
        val state = state ?: return
        // Turned, it is not left.
        if (!isChangingConfigurations) app.scope.launch { state.toBackground() }
    }

    override fun onSaveInstanceState(outState: Bundle) {
        super.onSaveInstanceState(outState)
        app.files.keep(outState)
    }

    @Composable
    private fun Shown(stage: Stage) = when (stage) {
        Stage.Opening -> Calm { insets -> Trouble(if (slow()) getString(R.string.opening) else "", insets) }
        is Stage.Refused -> Calm { insets -> Trouble(stage.text, insets, shellWords(language()).salvage.takeIf { stage.damaged }, model::salvage) }
        is Stage.Ready -> Screens(stage.state)
    }

    /** Before the log is open, the colours are those that the system drew the window with. */
    @Composable
    private fun Calm(content: @Composable (GlassMeasure) -> Unit) {
        val ink = if (isSystemInDarkTheme()) Ink.Night else Ink.Day
        CompositionLocalProvider(LocalInk provides ink) { content(measure(WindowInsets.safeDrawing)) }
    }

    /** Whether opening takes so long that words should be shown; most logs are open before anybody could read them. */
    @Composable
    private fun slow(): Boolean {
        val slow by produceState(false) {
            delay(SLOW_MS)
            value = true
        }
        return slow
    }

    @Composable
    private fun measure(insets: WindowInsets): GlassMeasure {
        val density = LocalDensity.current
        return GlassMeasure(
            pxPerMm = pxPerMm(resources.displayMetrics),
            textScale = LocalConfiguration.current.fontScale.toDouble(),
            insetTopPx = insets.getTop(density).toDouble(),
            insetBottomPx = insets.getBottom(density).toDouble(),
        )
    }

    @Composable
    private fun Screens(state: RestwaterState) {
        // The keyboard does not change the layout: it covers the screen for a while, and the system moves the line that is typed
        // above it.
        val insets = WindowInsets.safeDrawing.exclude(WindowInsets.ime)
        val lying = LocalConfiguration.current.orientation == Configuration.ORIENTATION_LANDSCAPE
        // On its side the screen is low: the status bar is hidden to make room, and a swipe brings it back.
        LaunchedEffect(lying) { if (lying) bars.hide(statusBars()) else bars.show(statusBars()) }
        LaunchedEffect(state.settings.scheme) { wear(state.settings.scheme) }
        // The phone may be in a pocket when an alarm comes over the lock screen, so that screen goes dark by itself.
        val awake = state.keepAwake && !lock.locked
        LaunchedEffect(awake) {
            val on = WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON
            if (awake) window.addFlags(on) else window.clearFlags(on)
        }
        // Until the Bank's record is there, it isn't known whether a fish is on.
        val mayAsk = state.steadyBank?.let { it.state != BankState.FISH_ON } == true
        LaunchedEffect(state.sessionOpen, mayAsk) { if (state.sessionOpen && mayAsk) askForNotifications() }
        CompositionLocalProvider(LocalSystemBack provides { onBack -> BackHandler(onBack = onBack) }) {
            // The areas at the sides that a camera or the navigation buttons take up are not used.
            Box(Modifier.windowInsetsPadding(insets.only(WindowInsetsSides.Horizontal))) {
                // Under another key nothing of what was saved comes back.
                key(state.opensFresh) { RestwaterApp(state, measure(insets), ticking = false) }
            }
        }
    }

    /** The icons of the system bars follow the scheme, and so does the window that the next start begins with. */
    private fun wear(scheme: Scheme) {
        val day = scheme == Scheme.DAY
        bars.isAppearanceLightStatusBars = day
        bars.isAppearanceLightNavigationBars = day
        window.setBackgroundDrawable((if (day) Ink.Day else Ink.Night).paper.toArgb().toDrawable())
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.S) {
            val mode = if (day) UiModeManager.MODE_NIGHT_NO else UiModeManager.MODE_NIGHT_YES
            getSystemService(UiModeManager::class.java)?.setApplicationNightMode(mode)
        }
    }

    /** Asked when a session is open, and only once: a refusal is final. */
    private fun askForNotifications() {
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.TIRAMISU || app.lockScreen.allowed || Question.isAsked(this)) return
        Question.asked(this)
        ask.launch(Manifest.permission.POST_NOTIFICATIONS)
    }

    internal companion object {
        private const val SLOW_MS = 500L

        /** The launcher's shortcut. */
        const val START = "app.restwater.START"

        private const val BANK = "app.restwater.BANK"
        private const val ROD = "rod"
        private const val ALARM = "alarm"
        private const val TITLE = "title"
        private const val NO_ROD = -1

        /** Opens the Bank, with the rod and the title of an alarm that rang. */
        fun bank(context: Context, alarm: WatchAlarm? = null): Intent = Intent(context, MainActivity::class.java).setAction(BANK)
            .addFlags(Intent.FLAG_ACTIVITY_NEW_TASK or Intent.FLAG_ACTIVITY_SINGLE_TOP)
            .putExtra(ROD, alarm?.rod?.toInt() ?: NO_ROD).apply { alarm?.let { putExtra(ALARM, it.id).putExtra(TITLE, it.title) } }
    }
}

/** Pixels per millimetre as the phone states them; if that can't be right, those of its density class. */
internal fun pxPerMm(display: DisplayMetrics): Double {
    val stated = (display.xdpi + display.ydpi) / 2.0
    val dpi = if (abs(stated / display.densityDpi - 1) < STATED_OFF) stated else display.densityDpi.toDouble()
    return dpi / MM_PER_INCH
}

/** A screen's density is at most a third away from that of its density class. */
private const val STATED_OFF = 0.34
private const val MM_PER_INCH = 25.4
