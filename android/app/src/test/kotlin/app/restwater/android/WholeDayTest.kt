package app.restwater.android

import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import app.restwater.core.DayTap
import app.restwater.core.Key
import app.restwater.core.Restwater
import app.restwater.core.Work
import app.restwater.core.readDay
import app.restwater.ui.RestwaterState
import app.restwater.ui.Showing
import app.restwater.ui.tag
import java.io.File
import java.nio.file.Files
import kotlinx.coroutines.runBlocking
import org.junit.Assert.assertEquals
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** Sixty casts tapped key by key on Android's framework leave the log that the day player leaves. */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [35], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class WholeDayTest {
    @get:Rule val rule = createEmptyComposeRule()

    private val day = readDay(File(checkNotNull(System.getProperty("restwater.tree")), "tests/days/sixty.jsonl").readText())

    @Test fun sixtyCastsByKeysAreTheSameLog() {
        Handset.app.now = { day.first().at }
        ActivityScenario.launch(MainActivity::class.java).use { scenario ->
            var opened: RestwaterState? = null
            Handset.until({ "no screen" }) { scenario.onActivity { opened = it.state }; opened != null }
            val state = checkNotNull(opened)
            // An empty log shows the welcome first.
            Handset.until({ "no welcome" }) { state.showing == Showing.WELCOME }
            rule.runOnIdle { state.open(Showing.BANK) }
            for (step in day) press(step, state)
        }
        assertEquals(60, day.count { it.action is Action.Cast })
        assertEquals(played(), log(Handset.core))
    }

    /** The same as ./dev play: each action goes to the core at its moment. */
    private fun played(): List<String> {
        val folder = Files.createTempDirectory("played").toFile()
        val core = Restwater.open(folder.path, day.first().at, "en-GB")
        day.forEach { step -> step.action?.let { core.act(it, step.at) } }
        return log(core).also { core.close() }
    }

    private fun press(step: DayTap, state: RestwaterState) {
        val action = step.action ?: return
        val keys = when (action) {
            is Action.StartSession -> listOf(Key.START, Key.START)
            is Action.Cast -> listOf(Key.CAST)
            is Action.Bite -> listOf(Key.BITE)
            is Action.Landed -> listOf(Key.LANDED)
            is Action.Lost -> listOf(Key.LOST)
            is Action.Missed -> listOf(Key.MISSED)
            is Action.WoundIn -> listOf(Key.WOUND_IN)
            is Action.Liner -> listOf(Key.LINER)
            is Action.Indication -> listOf(Key.INDICATION)
            is Action.Twitch -> listOf(Key.TWITCH)
            is Action.TimeBack -> listOf(Key.TIME_BACK)
            is Action.EndSession -> listOf(Key.END)
            Action.Undo -> listOf(Key.UNDO)
            Action.Redo -> listOf(Key.REDO)
            else -> error("no key for $action")
        }
        for ((i, key) in keys.withIndex()) {
            // The set-up is opened a second before it is left: a double tap on START begins nothing.
            if (i + 1 < keys.size) Handset.app.now = { step.at.copy(wallMs = step.at.wallMs - 1_000, monoMs = step.at.monoMs - 1_000) }
            else Handset.app.now = { step.at }
            // The key as it is at this moment; if it is behind MORE, that was opened a second before.
            rule.runOnIdle { runBlocking { state.refresh() } }
            val now = Handset.app.now
            repeat(PAGES) {
                if (there(tag(key)) || !there("more")) return@repeat
                Handset.app.now = { step.at.copy(wallMs = step.at.wallMs - 1_000, monoMs = step.at.monoMs - 1_000) }
                rule.onNodeWithTag("more").performClick()
                // The sheet opens once the core has taken the tap, on another thread: until then MORE would be found again.
                Handset.until({ "MORE for $key: the screen says: ${state.notice}" }) { state.underWay == 0 }
                rule.waitForIdle()
            }
            Handset.app.now = now
            check(there(tag(key))) { "no $key at ${step.at.wallMs}, page ${state.page}: ${state.bank?.state} ${state.bank?.latest} ${state.notice}" }
            rule.onNodeWithTag(tag(key)).performClick()
            Handset.until({ "$key at $step: the screen says: ${state.notice}" }) { state.underWay == 0 }
            if (key == Key.END) rule.runOnIdle { state.open(Showing.BANK) }
        }
    }

    private fun there(tag: String) = rule.onAllNodes(hasTestTag(tag)).fetchSemanticsNodes().isNotEmpty()

    /** The entries in order, with ids numbered as they appear and boots without their phone: those are random, all else must agree. */
    private fun log(core: Restwater): List<String> {
        val file = File(runBlocking { core.send(day.last().at, Work()) }.path).readText()
        val seen = mutableMapOf<String, Int>()
        return file.split('\u001e').filter { "\"kind\"" in it }.map { record ->
            ID.replace(PHONE.replace(HASH.replace(record.trim(), ""), "\"boot\":\"phone/")) { "#${seen.getOrPut(it.value) { seen.size }}" }
        }
    }

    private companion object {
        const val PAGES = 6
        val ID = Regex("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}")
        val PHONE = Regex("\"boot\":\"[^\"/]{12}/")
        val HASH = Regex("\"sha256\":\"[0-9a-f]{64}\",?")
    }
}
