package app.restwater.desktop

import app.restwater.core.BankState
import app.restwater.core.Glass
import app.restwater.core.Key
import app.restwater.core.Moment
import app.restwater.core.PadAsk
import app.restwater.core.Restwater
import app.restwater.core.Work
import app.restwater.core.bankLayout
import app.restwater.ui.RestwaterState
import app.restwater.ui.Showing
import java.awt.Frame
import java.awt.GraphicsEnvironment
import java.awt.Robot
import java.awt.event.InputEvent
import java.awt.event.WindowEvent
import java.io.File
import java.nio.file.Files
import javax.swing.JFrame
import javax.swing.SwingUtilities
import kotlin.concurrent.thread
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue
import kotlinx.coroutines.runBlocking
import org.junit.Assume.assumeFalse

/** The window itself, clicked with a pointer on a display: a session from START to its end, read from the log. */
class WindowTest {
    @Test fun aSessionIsLoggedByClicking() {
        assumeFalse("no display", GraphicsEnvironment.isHeadless())
        val folder = Files.createTempDirectory("restwater-window").toFile()
        var state: RestwaterState? = null
        try {
            val app = thread { openWindow(folder) { state = it } }
            val window = until("a window") { Frame.getFrames().filterIsInstance<JFrame>().find { it.isShowing && it.title == "Restwater" } }
            // Without a window manager AWT may be wrong about the window's place, so it is moved to a known one.
            SwingUtilities.invokeAndWait { window.setLocation(PLACE, PLACE) }
            until("its place") { (window.locationOnScreen.x == PLACE).takeIf { it } }
            Thread.sleep(500)
            val screens = until("a state") { state }
            // An empty log shows the welcome first.
            until("the welcome") { (screens.showing == Showing.WELCOME).takeIf { it } }
            SwingUtilities.invokeAndWait { screens.open(Showing.BANK) }
            val hand = Pointer(window, screens)
            hand.click(BankState.NO_SESSION, Key.START)
            hand.click(BankState.NO_SESSION, Key.START)
            val day = listOf(
                BankState.READY to Key.CAST, BankState.OUT to Key.LINER, BankState.OUT to Key.BITE, BankState.FISH_ON to Key.LANDED,
                BankState.LANDED to Key.CAST, BankState.OUT to Key.WOUND_IN, BankState.READY to Key.UNDO, BankState.OUT to Key.BITE,
                BankState.FISH_ON to Key.LOST,
            )
            for ((state, key) in day) hand.click(state, key)
            SwingUtilities.invokeAndWait { window.dispatchEvent(WindowEvent(window, WindowEvent.WINDOW_CLOSING)) }
            app.join(20_000)
            assertEquals(
                listOf("session_started", "cast", "liner", "bite", "landed", "cast", "wound_in", "undone", "bite", "lost"),
                kinds(folder),
            )
        } finally {
            folder.deleteRecursively()
        }
    }

    private companion object {
        const val PLACE = 20
    }

    /** What the log holds, read as another phone would. */
    private fun kinds(folder: File): List<String> {
        val now = Moment(System.currentTimeMillis(), 0, "Europe/London", 0, "after", 0u)
        val core = Restwater.open(folder.path, now, "en-GB")
        val file = File(runBlocking { core.send(now, Work()) }.path).readText()
        core.close()
        val kinds = Regex("\"kind\":\"([a-z_]+)\"").findAll(file).map { it.groupValues[1] }.toList()
        assertTrue(kinds.isNotEmpty(), file)
        return kinds
    }
}

/** A pointer over the window, no faster than a thumb: a second tap within 0.7 s would be ignored. */
private class Pointer(private val window: JFrame, private val drawn: RestwaterState) {
    private val robot = Robot()

    fun click(state: BankState, key: Key) {
        val content = window.contentPane
        val scale = window.graphicsConfiguration.defaultTransform.scaleX
        val glass = Glass(content.width * scale, content.height * scale, DP_PER_MM * scale, 1.0, false, 0.0, 0.0)
        val place = bankLayout(glass, PadAsk(state, 1u, 0u)).keys.first { it.key == key }.rect
        val corner = content.locationOnScreen
        // The keys of this state are on the screen once its record has arrived and a frame or two have passed.
        until("$state") { (drawn.underWay == 0 && drawn.bank?.state == state).takeIf { it } }
        robot.delay(DRAWN_MS)
        val before = said()
        robot.mouseMove(corner.x + ((place.left + place.width / 2) / scale).toInt(), corner.y + ((place.top + place.height / 2) / scale).toInt())
        robot.delay(100)
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK)
        robot.delay(80)
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK)
        until("an answer to $key") { (said() != before).takeIf { it } }
    }

    private fun said() = listOf(drawn.showing, drawn.bank?.state, drawn.bank?.latest)

    private companion object {
        /** Drawing without a graphics card is slow; and a second tap within 0.7 s would be ignored. */
        const val DRAWN_MS = 1_500
    }
}

private fun <T : Any> until(what: String, find: () -> T?): T {
    repeat(300) {
        find()?.let { found -> return found }
        Thread.sleep(100)
    }
    error("no $what after 30 s")
}
