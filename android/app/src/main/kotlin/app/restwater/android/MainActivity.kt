package app.restwater.android

import android.Manifest
import android.content.Intent
import android.content.res.Configuration
import android.net.Uri
import android.os.Build
import android.os.Bundle
import android.util.DisplayMetrics
import android.view.MotionEvent
import android.view.WindowManager
import androidx.activity.ComponentActivity
import androidx.activity.compose.BackHandler
import androidx.activity.compose.setContent
import androidx.activity.enableEdgeToEdge
import androidx.activity.result.contract.ActivityResultContracts
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.WindowInsets
import androidx.compose.foundation.layout.WindowInsetsSides
import androidx.compose.foundation.layout.only
import androidx.compose.foundation.layout.safeDrawing
import androidx.compose.foundation.layout.safeDrawingPadding
import androidx.compose.foundation.layout.windowInsetsPadding
import androidx.compose.material3.Button
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalConfiguration
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.testTag
import androidx.core.view.WindowCompat
import androidx.core.view.WindowInsetsCompat.Type.statusBars
import androidx.core.view.WindowInsetsControllerCompat
import androidx.lifecycle.lifecycleScope
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.app.ErrorKind
import app.restwater.core.palmMm
import app.restwater.core.shellWords
import app.restwater.ui.FileTrouble
import app.restwater.ui.GlassMeasure
import app.restwater.ui.RestwaterApp
import app.restwater.ui.RestwaterState
import app.restwater.ui.Showing
import kotlin.math.abs
import kotlinx.coroutines.launch

/** The one activity: it holds the shared screens over the process's core. */
class MainActivity : ComponentActivity() {
    private val app get() = application as RestwaterApplication
    private val files by lazy { PhoneFiles(this) }
    private val bars by lazy {
        WindowCompat.getInsetsController(window, window.decorView).apply {
            systemBarsBehavior = WindowInsetsControllerCompat.BEHAVIOR_SHOW_TRANSIENT_BARS_BY_SWIPE
        }
    }
    private val palm by lazy { Palm(palmMm() * pxPerMm(resources.displayMetrics)) }
    private val receiver by lazy { PhoneReceiver(this) }
    private val ask = registerForActivityResult(ActivityResultContracts.RequestPermission()) { lifecycleScope.launch { state?.lookOut() } }

    /** What the screens draw; none where the log could not be opened. */
    internal var state: RestwaterState? = null
        private set

    override fun onCreate(savedInstanceState: Bundle?) {
        super.onCreate(savedInstanceState)
        enableEdgeToEdge()
        // Both register their questions before the activity has started, as the system wants it.
        files
        receiver
        show()
        if (savedInstanceState == null) takeFile(intent)
        // The same screen after the phone was turned, or the process was killed meanwhile.
        val showed = savedInstanceState?.getString(SHOWING)
        Showing.entries.find { it.name == showed }?.let { state?.open(it) }
    }

    private fun show() = app.core.fold(::screens, ::refused)

    private fun screens(core: Restwater) {
        val state = RestwaterState(core, { app.now() }, lifecycleScope, app.worker, files, LockScreen(applicationContext), receiver)
        this.state = state
        setContent { Screens(state) }
    }

    private fun refused(why: Throwable) = setContent { Refused(why) }

    override fun onNewIntent(intent: Intent) {
        super.onNewIntent(intent)
        takeFile(intent)
    }

    /** A file that another app opens with this one, or shares to it. */
    private fun takeFile(intent: Intent) {
        val shared = if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.TIRAMISU) {
            intent.getParcelableExtra(Intent.EXTRA_STREAM, Uri::class.java)
        } else {
            @Suppress("DEPRECATION") intent.getParcelableExtra(Intent.EXTRA_STREAM)
        }
        val from = when (intent.action) {
            Intent.ACTION_VIEW -> intent.data
            Intent.ACTION_SEND -> shared
            else -> null
        } ?: return
        val state = state ?: return
        lifecycleScope.launch {
            try {
                state.offerFile(PhoneFiles.take(applicationContext, from))
            } catch (trouble: FileTrouble) {
                state.say(trouble.message.orEmpty())
            }
        }
    }

    override fun dispatchTouchEvent(event: MotionEvent): Boolean = palm.filter(event) { super.dispatchTouchEvent(it) }

    override fun onResume() {
        super.onResume()
        lifecycleScope.launch { state?.toFront() }
    }

    override fun onStop() {
        super.onStop()
        app.scope.launch { state?.toBackground() }
    }

    override fun onSaveInstanceState(outState: Bundle) {
        super.onSaveInstanceState(outState)
        state?.let { outState.putString(SHOWING, it.showing.name) }
    }

    @Composable
    private fun Screens(state: RestwaterState) {
        val density = LocalDensity.current
        val insets = WindowInsets.safeDrawing
        val lying = LocalConfiguration.current.orientation == Configuration.ORIENTATION_LANDSCAPE
        // On its side the glass is low: the status bar gives its line to the screen, and a swipe brings it back.
        LaunchedEffect(lying) { if (lying) bars.hide(statusBars()) else bars.show(statusBars()) }
        val measure = GlassMeasure(
            pxPerMm = pxPerMm(resources.displayMetrics),
            textScale = LocalConfiguration.current.fontScale.toDouble(),
            insetTopPx = insets.getTop(density).toDouble(),
            insetBottomPx = insets.getBottom(density).toDouble(),
        )
        // The system's back goes where BACK goes, and leaves the app from the Bank.
        BackHandler(enabled = state.showing != Showing.BANK) { state.open(Showing.BANK) }
        LaunchedEffect(state.keepAwake) {
            val on = WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON
            if (state.keepAwake) window.addFlags(on) else window.clearFlags(on)
            if (state.keepAwake) askForNotifications()
        }
        // What stands at the sides, a camera or three buttons, is no glass.
        Box(Modifier.windowInsetsPadding(insets.only(WindowInsetsSides.Horizontal))) { RestwaterApp(state, measure) }
    }

    /** Once a session is open, and once only: an answer is an answer. */
    private fun askForNotifications() {
        val asked = getSharedPreferences("asked", MODE_PRIVATE)
        if (Build.VERSION.SDK_INT < Build.VERSION_CODES.TIRAMISU || LockScreen(this).allowed || asked.getBoolean("notifications", false)) return
        asked.edit().putBoolean("notifications", true).apply()
        ask.launch(Manifest.permission.POST_NOTIFICATIONS)
    }

    /** The log could not be opened: what the core says of it, and the key for a damaged one. */
    @Composable
    private fun Refused(why: Throwable) {
        val failed = why as? RestwaterException.Failed ?: throw why
        Column(Modifier.safeDrawingPadding()) {
            Text(failed.text, Modifier.testTag("refused"))
            if (failed.kind == ErrorKind.DAMAGED) {
                Button(
                    onClick = {
                        val said = app.salvage()
                        show()
                        state?.say(said)
                    },
                    modifier = Modifier.testTag("salvage"),
                ) { Text(shellWords().salvage) }
            }
        }
    }
}

private const val SHOWING = "showing"

/** Millimetres as the phone states them; where that can't be true, as its density class has them. */
internal fun pxPerMm(display: DisplayMetrics): Double {
    val stated = (display.xdpi + display.ydpi) / 2.0
    val dpi = if (abs(stated / display.densityDpi - 1) < STATED_OFF) stated else display.densityDpi.toDouble()
    return dpi / MM_PER_INCH
}

/** Density classes are at most a third away from a real glass. */
private const val STATED_OFF = 0.34
private const val MM_PER_INCH = 25.4
