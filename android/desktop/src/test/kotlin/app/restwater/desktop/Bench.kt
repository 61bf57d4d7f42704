package app.restwater.desktop

import androidx.compose.runtime.Composable
import androidx.compose.ui.ExperimentalComposeUiApi
import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.InternalComposeUiApi
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.graphics.asComposeCanvas
import androidx.compose.ui.input.pointer.PointerEventType
import androidx.compose.ui.platform.FrameRecomposer
import androidx.compose.ui.scene.CanvasLayersComposeScene
import androidx.compose.ui.unit.Density
import androidx.compose.ui.unit.IntSize
import app.restwater.core.Action
import app.restwater.core.BankState
import app.restwater.core.Key
import app.restwater.core.Moment
import app.restwater.core.PadAsk
import app.restwater.core.Restwater
import app.restwater.core.Which
import app.restwater.core.bankLayout
import app.restwater.ui.GlassMeasure
import app.restwater.ui.RestwaterApp
import app.restwater.ui.RestwaterState
import com.sun.management.OperatingSystemMXBean
import java.io.File
import java.lang.management.ManagementFactory
import java.nio.file.Files
import java.sql.Connection
import java.sql.DriverManager
import kotlin.system.exitProcess
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.runBlocking
import org.jetbrains.skia.Canvas
import org.jetbrains.skia.Picture
import org.jetbrains.skia.PictureRecorder
import org.jetbrains.skia.Rect
import org.jetbrains.skia.Surface

/**
 * Timings through the bindings: `BenchKt act` compares a tap with a bare SQLite insert, `BenchKt ui` keys and screens
 * with the time of a frame, `BenchKt ffi` calls with an empty call.
 */
fun main(args: Array<String>) {
    val folder = Files.createTempDirectory("restwater-bench").toFile()
    try {
        when (args.singleOrNull()) {
            "act" -> act(folder)
            "ffi" -> ffi(File(folder, "log").apply { mkdirs() })
            "ui" -> { frames(File(folder, "frames")); recorded(File(folder, "recorded")); keyToPicture(folder); idle(folder) }
            else -> { System.err.println("usage: BenchKt act|ffi|ui"); exitProcess(2) }
        }
    } finally {
        folder.deleteRecursively()
    }
    exitProcess(0)
}

/** Alternates taps and bare inserts, so that other work of the machine affects both alike. */
private fun act(folder: File) {
    val core = Restwater.open(File(folder, "log").apply { mkdirs() }.path, moment(0), "en-GB")
    core.act(Action.StartSession(null), moment(1))
    val ours = mutableListOf<Double>()
    val bare = mutableListOf<Double>()
    val cycle = listOf(Action.Cast(1u), Action.Bite(1u), Action.Landed(1u, null))
    bareStore(folder).use { store ->
        repeat(WARM + TAPS) { i ->
            ours += millis { core.act(cycle[i % 3], moment(10L + 2 * i)) }
            bare += millis { insert(store, i) }
        }
    }
    core.close()
    val (us, them) = ours.drop(WARM).sorted() to bare.drop(WARM).sorted()
    val goal = 1.5 * them.median() + 1.0
    row("act: one tap through JNA, p50", ms(us.median()), "<= 1.5 x and 1 ms", us.median() <= goal, "${ms(them.median())} bare SQLite", us.median() / them.median())
    row("act: one tap through JNA, p99", ms(us.p99()), "-", null, "${ms(them.p99())} bare SQLite", us.p99() / them.p99())
}

/** A database with the pragmas of the log and a table of its shape. */
private fun bareStore(folder: File): Connection {
    val store = DriverManager.getConnection("jdbc:sqlite:${File(folder, "bare.db").path}")
    store.createStatement().use { sql ->
        sql.execute("PRAGMA journal_mode = WAL")
        sql.execute("PRAGMA synchronous = FULL")
        sql.execute("PRAGMA foreign_keys = ON")
        sql.execute("CREATE TABLE op (seq INTEGER PRIMARY KEY, id BLOB NOT NULL UNIQUE, sha256 BLOB NOT NULL, body BLOB NOT NULL) STRICT")
    }
    return store
}

/** Inserts one row as large as an entry; it is on stable storage when this returns. */
private fun insert(store: Connection, i: Int) = store.prepareStatement("INSERT INTO op (id, sha256, body) VALUES (?, ?, ?)").use { sql ->
    sql.setBytes(1, ByteArray(16) { (i shr (8 * (it % 4))).toByte() })
    sql.setBytes(2, ByteArray(32))
    sql.setBytes(3, ByteArray(BODY_BYTES) { 'a'.code.toByte() })
    sql.executeUpdate()
}

/** From the thumb lifting off CAST or WOUND IN (alternating) to the picture that shows the answer. */
@OptIn(ExperimentalComposeUiApi::class)
private fun keyToPicture(folder: File) {
    val times = mutableListOf<Double>()
    withScreens(File(folder, "keys")) { scene, state, clock, _ ->
        repeat(WARM + KEYS) { i ->
            clock.ms += 90_000
            runBlocking { state.refresh() }
            val bank = checkNotNull(state.bank)
            val key = if (bank.state == BankState.OUT) Key.WOUND_IN else Key.CAST
            val place = bankLayout(GLASS, PadAsk(bank.state, 1u, 0u)).keys.first { it.key == key }.rect
            val at = Offset((place.left + place.width / 2).toFloat(), (place.top + place.height / 2).toFloat())
            scene.draw(clock)
            scene.sendPointerEvent(PointerEventType.Press, at)
            scene.draw(clock)
            times += millis {
                scene.sendPointerEvent(PointerEventType.Release, at)
                scene.draw(clock)
            }
            check(state.bank?.state != bank.state) { "the key was not felt" }
        }
    }
    val sorted = times.drop(WARM).sorted()
    row("ui: key press to drawn answer, p50", ms(sorted.median()), "< 50 ms", sorted.median() < 50)
    row("ui: key press to drawn answer, p99", ms(sorted.p99()), "-", null)
}

/** The work of one second while a cast is out: making the record in the core, reading all of a screen, and drawing. */
@OptIn(ExperimentalComposeUiApi::class)
private fun frames(folder: File) {
    val (records, readings, drawings) = List(3) { mutableListOf<Double>() }
    withScreens(folder) { scene, state, clock, core ->
        state.tap(checkNotNull(state.bank).keys.first { it.key == Key.CAST })
        repeat(WARM + FRAMES) {
            clock.ms += 1_000
            records += millis { core.screen(Which.BANK, moment(clock.ms / 1_000)) }
            readings += millis { runBlocking { state.refresh() } }
            drawings += millis { scene.draw(clock) }
        }
    }
    val frame = "${ms(FRAME_MS)} frame"
    for ((name, times) in listOf("Bank record" to records, "screen read whole" to readings)) {
        val sorted = times.drop(WARM).sorted()
        row("ui: $name, p50", ms(sorted.median()), "<= 1 frame", sorted.median() <= FRAME_MS, frame, sorted.median() / FRAME_MS)
        row("ui: $name, p99", ms(sorted.p99()), "<= 1 frame", sorted.p99() <= FRAME_MS, frame, sorted.p99() / FRAME_MS)
    }
    // Drawn by the processor, into memory. On a phone the graphics chip does this, so there is no goal for it here.
    val drawn = drawings.drop(WARM).sorted().median()
    row("ui: screen drawn by the processor, p50", ms(drawn), "-", null, frame, drawn / FRAME_MS)
}

/**
 * What a second costs a phone's processor: making and reading the record, composing what changed and drawing it into a
 * list of commands, which the phone's graphics chip turns into pixels. A phone and a window paint again only where something has
 * changed; [idle] paints the whole screen by the processor, since a picture in memory has no other way.
 */
@OptIn(InternalComposeUiApi::class)
private fun recorded(folder: File) {
    val (seconds, wholes, changes) = List(3) { mutableListOf<Double>() }
    withState(folder) { state, clock, _ ->
        val recomposer = FrameRecomposer(Dispatchers.Unconfined) { }
        val size = IntSize(GLASS.widthPx.toInt(), GLASS.heightPx.toInt())
        val scene = CanvasLayersComposeScene(recomposer, density = Density(2.625f, 1f), size = size)
        scene.setContent { Screens(state) }
        state.tap(checkNotNull(state.bank).keys.first { it.key == Key.CAST })
        val layout = bankLayout(GLASS, PadAsk(checkNotNull(state.bank).state, 1u, 0u))
        val surface = Surface.makeRasterN32Premul(size.width, size.height)
        repeat(WARM + FRAMES) {
            clock.ms += 1_000
            PictureRecorder().use { recorder ->
                var drawn: Picture? = null
                seconds += millis {
                    runBlocking { state.refresh() }
                    recomposer.performFrame(clock.nanos())
                    scene.measureAndLayout()
                    scene.draw(recorder.beginRecording(Rect.makeWH(size.width.toFloat(), size.height.toFloat())).asComposeCanvas())
                    drawn = recorder.finishRecordingAsPicture()
                }
                checkNotNull(drawn).use { picture ->
                    wholes += millis { surface.canvas.drawPicture(picture) }
                    changes += millis { for (place in listOf(layout.rods.first().target, layout.strip)) surface.canvas.drawWithin(place, picture) }
                }
            }
        }
        surface.close()
        scene.close()
        recomposer.close()
    }
    val names = listOf("a second of the clock, without pixels", "all pixels of the screen, by the processor", "the pixels that a second changes")
    for ((name, times) in names.zip(listOf(seconds, wholes, changes))) row("ui: $name, p50", ms(times.drop(WARM).sorted().median()), "-", null)
}

private fun Canvas.drawWithin(place: app.restwater.core.Rect, picture: Picture) {
    save()
    clipRect(Rect.makeXYWH(place.left.toFloat(), place.top.toFloat(), place.width.toFloat(), place.height.toFloat()))
    drawPicture(picture)
    restore()
}

/** What the running clock costs: one refresh and one frame a second. */
@OptIn(ExperimentalComposeUiApi::class)
private fun idle(folder: File) {
    val system = ManagementFactory.getOperatingSystemMXBean() as OperatingSystemMXBean
    var share = 0.0
    withScreens(File(folder, "idle")) { scene, state, clock, _ ->
        fun second() {
            clock.ms += 1_000
            runBlocking { state.refresh() }
            scene.draw(clock)
        }
        state.tap(checkNotNull(state.bank).keys.first { it.key == Key.CAST })
        repeat(60) { second() }
        val (cpu, wall) = system.processCpuTime to System.nanoTime()
        repeat(IDLE_S) {
            second()
            Thread.sleep(1_000)
        }
        share = (system.processCpuTime - cpu).toDouble() / (System.nanoTime() - wall)
    }
    row("ui: idle with a running clock", "%.2f %% of a core".format(share * 100), "< 2 %", share < 0.02)
}

private class BenchClock {
    var ms = 10_000L
    private var frame = 0L
    fun nanos(): Long {
        frame += 16_000_000
        return frame
    }
}

/** The screens with an open session. */
@OptIn(ExperimentalComposeUiApi::class)
private fun withScreens(folder: File, use: (ImageComposeScene, RestwaterState, BenchClock, Restwater) -> Unit) =
    withState(folder) { state, clock, core ->
        val scene = ImageComposeScene(GLASS.widthPx.toInt(), GLASS.heightPx.toInt(), Density(2.625f, 1f)) { Screens(state) }
        repeat(3) { scene.draw(clock) }
        use(scene, state, clock, core)
        scene.close()
    }

private fun withState(folder: File, use: (RestwaterState, BenchClock, Restwater) -> Unit) {
    folder.mkdirs()
    val clock = BenchClock()
    Restwater.open(folder.path, moment(0), "en-GB").use { core ->
        core.act(Action.StartSession(null), moment(1))
        val state = RestwaterState(core, { moment(clock.ms / 1_000) }, CoroutineScope(Dispatchers.Unconfined), Dispatchers.Unconfined)
        runBlocking { state.refresh() }
        use(state, clock, core)
    }
}

@Composable
private fun Screens(state: RestwaterState) =
    RestwaterApp(state, GlassMeasure(GLASS.pxPerMm, 1.0, GLASS.insetTopPx, GLASS.insetBottomPx), ticking = false)

/** Draws one frame and releases its picture at once: while it is held, the next frame begins by copying all pixels. */
@OptIn(ExperimentalComposeUiApi::class)
private fun ImageComposeScene.draw(clock: BenchClock) = render(clock.nanos()).close()

internal fun moment(second: Long) = Moment(1_768_640_400_000 + second * 1_000, 0, "Europe/London", second * 1_000, "bench", 0u)

internal inline fun millis(task: () -> Unit): Double {
    val from = System.nanoTime()
    task()
    return (System.nanoTime() - from) / 1e6
}

internal fun List<Double>.median() = this[size / 2]

internal fun List<Double>.p99() = this[(size * 99) / 100]

/** One row of the benches' table, in the form of tests/src/bench_row.rs; `held` is null if there is no goal. */
internal fun row(name: String, ours: String, goal: String, held: Boolean?, peer: String = "-", ratio: Double? = null) {
    val outcome = when (held) { null -> "noted"; true -> "held"; false -> "missed" }
    println(listOf("bench", name, ours, peer, ratio?.let { "%.2f".format(it) } ?: "-", goal, outcome).joinToString("\t"))
}

/** Milliseconds in the unit that suits them. */
internal fun ms(value: Double) = if (value < 1) "%.2f us".format(value * 1e3) else "%.3f ms".format(value)

private const val WARM = 60
private const val TAPS = 300
private const val KEYS = 120
private const val FRAMES = 600
internal const val FRAME_MS = 1_000.0 / 60
private const val IDLE_S = 15
private const val BODY_BYTES = 330
