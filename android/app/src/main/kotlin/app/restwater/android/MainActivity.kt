package app.restwater.android

import android.content.Context
import android.os.Bundle
import android.os.SystemClock
import android.provider.Settings
import androidx.activity.ComponentActivity
import androidx.activity.compose.setContent
import androidx.activity.enableEdgeToEdge
import androidx.compose.foundation.layout.WindowInsets
import androidx.compose.foundation.layout.safeDrawing
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.ui.platform.LocalConfiguration
import androidx.compose.ui.platform.LocalContext
import androidx.compose.ui.platform.LocalDensity
import app.restwater.core.Moment
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.ui.GlassMeasure
import app.restwater.ui.RestwaterApp
import app.restwater.ui.RestwaterState
import app.restwater.ui.Trouble
import java.time.Instant
import java.time.ZoneId
import kotlinx.coroutines.Dispatchers

/** The one activity: it holds the shared screens. */
class MainActivity : ComponentActivity() {
    private val phone by lazy { Phone.of(this) }

    override fun onCreate(savedInstanceState: Bundle?) {
        super.onCreate(savedInstanceState)
        enableEdgeToEdge()
        setContent {
            val core = phone.log.getOrElse { Trouble((it as? RestwaterException.Failed)?.text ?: throw it, glass()); return@setContent }
            val scope = rememberCoroutineScope()
            val state = remember { RestwaterState(core, phone::now, scope, phone.worker) }
            RestwaterApp(state, glass())
        }
    }

    override fun onStart() {
        super.onStart()
        phone.log.onSuccess { runCatching(it::resume) }
    }

    override fun onStop() {
        phone.log.onSuccess { runCatching(it::pause) }
        super.onStop()
    }
}

/** The glass as the phone reports it: millimetres from its dots per inch, the text size from its settings. */
@Composable
private fun glass(): GlassMeasure {
    val metrics = LocalContext.current.resources.displayMetrics
    val density = LocalDensity.current
    val edges = WindowInsets.safeDrawing
    // Some phones report nonsense for the dots; the density bucket is never off by more than a third.
    val dots = metrics.xdpi.takeIf { it in metrics.densityDpi * 0.66f..metrics.densityDpi * 1.5f } ?: metrics.densityDpi.toFloat()
    return GlassMeasure(
        pxPerMm = dots / 25.4,
        textScale = LocalConfiguration.current.fontScale.toDouble(),
        insetTopPx = edges.getTop(density).toDouble(),
        insetBottomPx = edges.getBottom(density).toDouble(),
    )
}

/** The log and the clocks of this phone, one for the process. */
private class Phone(private val context: Context) {
    val worker = Dispatchers.IO.limitedParallelism(1)
    val log: Result<Restwater> = try {
        Result.success(Restwater.open(context.filesDir.path, now()))
    } catch (refused: RestwaterException.Failed) {
        Result.failure(refused)
    }

    /** This moment by the wall clock and by the one that counts on while the phone sleeps. */
    fun now(): Moment {
        val zone = ZoneId.systemDefault()
        val wall = System.currentTimeMillis()
        val offset = zone.rules.getOffset(Instant.ofEpochMilli(wall)).totalSeconds / 60
        val boot = Settings.Global.getInt(context.contentResolver, Settings.Global.BOOT_COUNT, 0)
        return Moment(wall, offset.toShort(), zone.id, SystemClock.elapsedRealtime(), "boot $boot", 0u)
    }

    companion object {
        private var phone: Phone? = null

        fun of(context: Context): Phone = phone ?: Phone(context.applicationContext).also { phone = it }
    }
}
