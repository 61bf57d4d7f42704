package app.restwater.desktop

import androidx.compose.ui.ExperimentalComposeUiApi
import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.input.pointer.PointerEventType
import androidx.compose.ui.unit.Density
import app.restwater.core.Action
import app.restwater.core.BankState
import app.restwater.core.Key
import app.restwater.core.Moment
import app.restwater.core.PadAsk
import app.restwater.core.Restwater
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

/** Timed through the bindings: `BenchKt act` a tap against a bare SQLite insert, `BenchKt ui` a key against a frame. */
fun main(args: Array<String>) {
    val folder = Files.createTempDirectory("restwater-bench").toFile()
    val held = try {
        when (args.singleOrNull()) {
            "act" -> listOf(act(folder))
            "ui" -> listOf(keyToPicture(folder), idle(folder))
            else -> { System.err.println("usage: BenchKt act|ui"); exitProcess(2) }
        }
    } finally {
        folder.deleteRecursively()
    }
    println("${held.count { it }} held, ${held.count { !it }} missed")
    exitProcess(if (held.all { it }) 0 else 1)
}

/** Taps and bare inserts by turns, so that whatever else the machine does falls on both. */
private fun act(folder: File): Boolean {
    val core = Restwater.open(File(folder, "log").apply { mkdirs() }.path, moment(0))
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
    val held = us.median() <= goal
    println("%-34s ours p50 %.3f ms p99 %.3f ms; bare SQLite insert p50 %.3f ms p99 %.3f ms; ratio %.2f; goal p50 %.3f ms: %s".format(
        "act, $TAPS taps through JNA", us.median(), us.p99(), them.median(), them.p99(), us.median() / them.median(), goal, word(held),
    ))
    return held
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

/** One row, as large as an entry, on stable storage when this returns. */
private fun insert(store: Connection, i: Int) = store.prepareStatement("INSERT INTO op (id, sha256, body) VALUES (?, ?, ?)").use { sql ->
    sql.setBytes(1, ByteArray(16) { (i shr (8 * (it % 4))).toByte() })
    sql.setBytes(2, ByteArray(32))
    sql.setBytes(3, ByteArray(BODY_BYTES) { 'a'.code.toByte() })
    sql.executeUpdate()
}

/** From the thumb lifting off CAST, WOUND IN by turns to the picture with the answer in it. */
@OptIn(ExperimentalComposeUiApi::class)
private fun keyToPicture(folder: File): Boolean {
    val times = mutableListOf<Double>()
    withScreens(File(folder, "keys")) { scene, state, clock ->
        repeat(WARM + KEYS) { i ->
            clock.ms += 90_000
            runBlocking { state.refresh() }
            val bank = checkNotNull(state.bank)
            val key = if (bank.state == BankState.OUT) Key.WOUND_IN else Key.CAST
            val place = bankLayout(GLASS, PadAsk(bank.state, 1u, 0u)).keys.first { it.key == key }.rect
            val at = Offset((place.left + place.width / 2).toFloat(), (place.top + place.height / 2).toFloat())
            scene.render(clock.nanos())
            scene.sendPointerEvent(PointerEventType.Press, at)
            scene.render(clock.nanos())
            times += millis {
                scene.sendPointerEvent(PointerEventType.Release, at)
                scene.render(clock.nanos())
            }
            check(state.bank?.state != bank.state) { "the key was not felt" }
        }
    }
    val sorted = times.drop(WARM).sorted()
    val held = sorted.median() < 50
    println("%-34s p50 %.1f ms p99 %.1f ms; goal p50 under 50 ms: %s".format("key press to drawn answer", sorted.median(), sorted.p99(), word(held)))
    return held
}

/** What the running clock costs: a second's refresh and frame, once a second. */
@OptIn(ExperimentalComposeUiApi::class)
private fun idle(folder: File): Boolean {
    val system = ManagementFactory.getOperatingSystemMXBean() as OperatingSystemMXBean
    var share = 0.0
    withScreens(File(folder, "idle")) { scene, state, clock ->
        fun second() {
            clock.ms += 1_000
            runBlocking { state.refresh() }
            scene.render(clock.nanos())
        }
        state.tap(Key.CAST)
        repeat(60) { second() }
        val (cpu, wall) = system.processCpuTime to System.nanoTime()
        repeat(IDLE_S) {
            second()
            Thread.sleep(1_000)
        }
        share = (system.processCpuTime - cpu).toDouble() / (System.nanoTime() - wall)
    }
    val held = share < 0.02
    println("%-34s %.2f %% of a core; goal under 2 %%: %s".format("idle with a running clock", share * 100, word(held)))
    return held
}

private class BenchClock {
    var ms = 10_000L
    private var frame = 0L
    fun nanos(): Long {
        frame += 16_000_000
        return frame
    }
}

/** The screens over a session that has begun. */
@OptIn(ExperimentalComposeUiApi::class)
private fun withScreens(folder: File, use: (ImageComposeScene, RestwaterState, BenchClock) -> Unit) {
    folder.mkdirs()
    val clock = BenchClock()
    val core = Restwater.open(folder.path, moment(0))
    core.act(Action.StartSession(null), moment(1))
    val state = RestwaterState(core, { moment(clock.ms / 1_000) }, CoroutineScope(Dispatchers.Unconfined), Dispatchers.Unconfined)
    val scene = ImageComposeScene(GLASS.widthPx.toInt(), GLASS.heightPx.toInt(), Density(2.625f, 1f)) {
        RestwaterApp(state, GlassMeasure(GLASS.pxPerMm, 1.0, GLASS.insetTopPx, GLASS.insetBottomPx), ticking = false)
    }
    try {
        runBlocking { state.refresh() }
        repeat(3) { scene.render(clock.nanos()) }
        use(scene, state, clock)
    } finally {
        scene.close()
        core.close()
    }
}

private fun moment(second: Long) = Moment(1_768_640_400_000 + second * 1_000, 0, "Europe/London", second * 1_000, "bench", 0u)

private inline fun millis(task: () -> Unit): Double {
    val from = System.nanoTime()
    task()
    return (System.nanoTime() - from) / 1e6
}

private fun List<Double>.median() = this[size / 2]

private fun List<Double>.p99() = this[(size * 99) / 100]

private fun word(held: Boolean) = if (held) "held" else "missed"

private const val WARM = 60
private const val TAPS = 300
private const val KEYS = 120
private const val IDLE_S = 15
private const val BODY_BYTES = 330
