package app.restwater.desktop

import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.ui.platform.LocalDensity
import androidx.compose.ui.unit.DpSize
import androidx.compose.ui.unit.dp
import androidx.compose.ui.window.WindowState
import androidx.compose.ui.window.singleWindowApplication
import app.restwater.core.Moment
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.ui.GlassMeasure
import app.restwater.ui.RestwaterApp
import app.restwater.ui.RestwaterState
import app.restwater.ui.language
import java.io.File
import java.time.ZoneId
import kotlin.system.exitProcess
import kotlinx.coroutines.Dispatchers

/** Opens the screens in a window of a phone's size on the log in the folder given: `MainKt DATA`. */
fun main(args: Array<String>) {
    openWindow(File(args.firstOrNull() ?: run { System.err.println("usage: MainKt DATA"); exitProcess(2) }))
    exitProcess(0)
}

/** The window on the log in a folder, until it is closed; [seen] receives the state that it draws. */
internal fun openWindow(folder: File, seen: (RestwaterState) -> Unit = {}) {
    wearFace()
    folder.mkdirs()
    val core = try {
        Restwater.open(folder.path, present(), language())
    } catch (refused: RestwaterException.Failed) {
        System.err.println("$folder: ${refused.text}")
        exitProcess(1)
    }
    val window = WindowState(size = DpSize((WIDTH_MM * DP_PER_MM).dp, (HEIGHT_MM * DP_PER_MM + TITLE_DP).dp))
    singleWindowApplication(state = window, title = "Restwater", exitProcessOnExit = false) {
        val window = this.window
        val scope = rememberCoroutineScope()
        val state = remember { RestwaterState(core, ::present, scope, Dispatchers.IO.limitedParallelism(1), WindowFiles(window)).also(seen) }
        LaunchedEffect(state) { state.greet() }
        RestwaterApp(state, GlassMeasure(pxPerMm = DP_PER_MM * LocalDensity.current.density))
    }
    core.close()
}

/** This moment by the PC's clocks. The monotonic clock starts with the process, so each process is a boot of its own. */
private fun present(): Moment {
    val zone = ZoneId.systemDefault()
    val wall = System.currentTimeMillis()
    val offset = zone.rules.getOffset(java.time.Instant.ofEpochMilli(wall)).totalSeconds / 60
    return Moment(wall, offset.toShort(), zone.id, System.nanoTime() / 1_000_000, BOOT, 0u)
}

private val BOOT = ProcessHandle.current().let { "${it.pid()}-${it.info().startInstant().orElse(null)?.toEpochMilli()}" }

/** The phone that the window represents, a little larger than life on a PC's screen. */
private const val WIDTH_MM = 68.0
private const val HEIGHT_MM = 146.0
internal const val DP_PER_MM = 6.0
private const val TITLE_DP = 28.0
