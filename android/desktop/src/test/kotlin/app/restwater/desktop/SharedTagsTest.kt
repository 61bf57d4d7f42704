package app.restwater.desktop

import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.runDesktopComposeUiTest
import app.restwater.core.Restwater
import app.restwater.core.readDay
import app.restwater.ui.GlassMeasure
import app.restwater.ui.RestwaterApp
import app.restwater.ui.RestwaterState
import app.restwater.ui.Showing
import java.io.File
import java.nio.file.Files
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers

/**
 * Every screen at every picture of the demo day, as the tags of what is on it, kept in `tests/days/demo.tags.txt`. The
 * iOS kit reads the same file and must have each of them (`SharedTagsTests.swift`): a key that one shell has and the
 * other lacks is a failed test. `RESTWATER_KEEP=1 ./dev test kotlin` rewrites the file.
 */
@OptIn(ExperimentalTestApi::class)
class SharedTagsTest {
    private val kept = File(System.getProperty("restwater.tree"), "tests/days/demo.tags.txt")

    @Test fun theTagsAreThoseKept() {
        val found = tags()
        if (System.getenv("RESTWATER_KEEP") == "1") kept.writeText(found)
        assertEquals(kept.readText(), found)
    }

    private fun tags(): String {
        val log = Files.createTempDirectory("restwater-tags").toFile()
        val lines = StringBuilder()
        try {
            val day = readDay(File(kept.parentFile, "demo.jsonl").readText())
            var at = day.first().at
            val core = Restwater.open(log.path, at, "en-GB")
            val state = RestwaterState(core, { at }, CoroutineScope(Dispatchers.Unconfined), Dispatchers.Unconfined)
            runDesktopComposeUiTest(GLASS.widthPx.toInt(), GLASS.heightPx.toInt()) {
                setContent { RestwaterApp(state, GlassMeasure(GLASS.pxPerMm, 1.0, GLASS.insetTopPx, GLASS.insetBottomPx), ticking = false) }
                for (tap in day) {
                    at = tap.at
                    tap.action?.let { action -> runOnIdle { state.act(action) } }
                    val picture = tap.picture ?: continue
                    for (showing in Showing.entries) {
                        runOnIdle { state.open(showing) }
                        waitForIdle()
                        val nodes = onAllNodes(SemanticsMatcher.keyIsDefined(SemanticsProperties.TestTag), useUnmergedTree = true).fetchSemanticsNodes()
                        val tags = nodes.map { it.config[SemanticsProperties.TestTag].replace(Regex("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}"), "#") }
                        // The core refuses a screen that has nothing to show yet; its line is left out.
                        if (tags.isNotEmpty()) lines.append("$picture $showing ${tags.distinct().sorted().joinToString(" ") { it.replace(' ', '_') }}\n")
                    }
                }
            }
            core.close()
        } finally {
            log.deleteRecursively()
        }
        return lines.toString()
    }
}
