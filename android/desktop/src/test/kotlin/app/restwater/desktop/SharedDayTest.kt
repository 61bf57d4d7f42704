package app.restwater.desktop

import app.restwater.core.Action
import app.restwater.core.FilesTap
import app.restwater.core.FormChoice
import app.restwater.core.Moment
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.Span
import app.restwater.core.Which
import app.restwater.core.Work
import app.restwater.core.readDay
import java.io.File
import java.nio.file.Files
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue
import kotlinx.coroutines.runBlocking

/**
 * The demo day through Kotlin ends with the entries and screens of Rust's snapshots
 * (`tests/tests/whole_app/shared_day.rs` says how they are compared).
 */
class SharedDayTest {
    private val tree = File(System.getProperty("restwater.tree"))

    @Test fun entriesAndScreensAreThoseOfRust() {
        val log = Files.createTempDirectory("restwater-shared").toFile()
        try {
            val day = readDay(File(tree, "tests/days/demo.jsonl").readText())
            val core = Restwater.open(log.path, day.first().at, "en-GB")
            val (screens, whole) = StringBuilder() to StringBuilder()
            for (tap in day) {
                tap.action?.let { core.act(it, tap.at) }
                tap.picture?.let { picture ->
                    screens.append(picture)
                    for (which in Which.entries) {
                        val name = which.name.lowercase()
                        val text = withoutIds(screen(core, which, tap.at))
                        screens.append(", $name ${text.toByteArray().size} ${fnv1a(text)}")
                        whole.append("$picture $name\n$text\n")
                    }
                    screens.append("\n")
                }
            }
            val end = day.last().at
            for (tap in listOf(FilesTap.Form(FormChoice.ENTRIES), FilesTap.Span(Span.Everything))) core.act(Action.Files(tap), end)
            val file = File(runBlocking { core.send(end, Work()) }.path)
            File(tree, "target/tmp").apply { mkdirs() }.resolve("shared-day-kotlin.txt").writeText(whole.toString())
            same(kept("screens"), screens.toString())
            same(kept("entries"), withoutIds(file.readText().replace("\u001e", "")))
            core.close()
        } finally {
            log.deleteRecursively()
        }
    }

    /** The record, or the core's message if there is none: the swim has nothing to show without a session. */
    private fun screen(core: Restwater, which: Which, at: Moment): String =
        try {
            core.screenJson(which, at)
        } catch (refused: RestwaterException.Failed) {
            refused.text
        }

    private fun fnv1a(text: String): String =
        text.toByteArray().fold(0xcbf29ce484222325uL) { hash, byte -> (hash xor byte.toUByte().toULong()) * 0x100000001b3uL }
            .toString(16).padStart(16, '0')

    /** Compares line by line, so that a failure shows where the difference is. */
    private fun same(kept: String, found: String) {
        val (left, right) = kept.trim().lines() to found.trim().lines()
        assertTrue(left.isNotEmpty() && left.first().isNotBlank())
        left.zip(right).forEach { (a, b) -> assertEquals(a, b) }
        assertEquals(left.size, right.size)
    }

    /** A snapshot without its header. */
    private fun kept(name: String): String =
        File(tree, "tests/tests/whole_app/snapshots/whole_app__shared_day__$name.snap").readText().split("---\n", limit = 3)[2]

    private fun withoutIds(text: String): String {
        val seen = mutableListOf<String>()
        val sameBoots = text.replace(Regex("\"boot\":\"[^\"/]{12}/"), "\"boot\":\"phone/")
        return Regex("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}|[0-9a-f]{64}").replace(sameBoots) { found ->
            if (found.value.length == 64) return@replace "sha256"
            if (found.value !in seen) seen += found.value
            "#${seen.indexOf(found.value) + 1}"
        }
    }
}
