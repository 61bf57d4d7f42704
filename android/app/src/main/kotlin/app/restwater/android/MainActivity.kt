package app.restwater.android

import android.os.Bundle
import android.util.DisplayMetrics
import androidx.activity.ComponentActivity
import androidx.activity.compose.setContent
import androidx.activity.enableEdgeToEdge
import androidx.compose.foundation.layout.WindowInsets
import androidx.compose.foundation.layout.safeDrawing
import androidx.compose.foundation.layout.safeDrawingPadding
import androidx.compose.material3.Text
import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.LocalConfiguration
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.platform.testTag
import androidx.lifecycle.lifecycleScope
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.ui.GlassMeasure
import app.restwater.ui.RestwaterApp
import app.restwater.ui.RestwaterState
import kotlin.math.abs
import kotlinx.coroutines.Dispatchers

/** The one activity: it holds the shared screens over the process's core. */
class MainActivity : ComponentActivity() {
    override fun onCreate(savedInstanceState: Bundle?) {
        super.onCreate(savedInstanceState)
        enableEdgeToEdge()
        val core = (application as RestwaterApplication).core
        setContent { core.fold({ Screens(it) }, { Refused(it) }) }
    }

    @Composable
    private fun Screens(core: Restwater) {
        val state = remember {
            RestwaterState(core, { present(applicationContext) }, lifecycleScope, Dispatchers.IO.limitedParallelism(1))
        }
        val density = LocalDensity.current
        val insets = WindowInsets.safeDrawing
        val measure = GlassMeasure(
            pxPerMm = pxPerMm(resources.displayMetrics),
            textScale = LocalConfiguration.current.fontScale.toDouble(),
            insetTopPx = insets.getTop(density).toDouble(),
            insetBottomPx = insets.getBottom(density).toDouble(),
        )
        RestwaterApp(state, measure)
    }
}

/** The log could not be opened: what the core says of it, which is what to do next. */
@Composable
private fun Refused(why: Throwable) {
    val text = (why as? RestwaterException.Failed)?.text ?: throw why
    Text(text, Modifier.safeDrawingPadding().testTag("refused"))
}

/** Millimetres as the phone states them; where that can't be true, as its density class has them. */
internal fun pxPerMm(display: DisplayMetrics): Double {
    val stated = (display.xdpi + display.ydpi) / 2.0
    val dpi = if (abs(stated / display.densityDpi - 1) < STATED_OFF) stated else display.densityDpi.toDouble()
    return dpi / MM_PER_INCH
}

/** Density classes are at most a third away from a real glass. */
private const val STATED_OFF = 0.34
private const val MM_PER_INCH = 25.4
