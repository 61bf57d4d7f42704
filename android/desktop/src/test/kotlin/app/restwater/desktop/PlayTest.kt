package app.restwater.desktop

import app.restwater.core.readDay
import app.restwater.core.padWords
import java.io.File
import java.nio.file.Files
import kotlin.test.Test
import kotlin.test.assertContains
import kotlin.test.assertTrue

/** A day is drawn in the language that is asked for, with the cards of the first day, the legend and an open row. */
class PlayTest {
    @Test
    fun a_day_is_played_in_the_language_that_is_asked_for() {
        val out = Files.createTempDirectory("restwater-played").toFile()
        try {
            play(readDay(DAY), out, GLASS, "fr-FR")
            assertContains(File(out, "screens.jsonl").readText(), "LANCER")
            assertTrue(padWords("fr-FR") != padWords(ENGLISH))
            val drawn = out.list().orEmpty().toList()
            for (part in listOf("welcome-", "legend-signs-1", "01-tackle-row", "phone-row", "bench-", "files-")) {
                assertTrue(drawn.any { it.startsWith(part) && it.endsWith(".png") }, "$part: $drawn")
            }
        } finally {
            out.deleteRecursively()
        }
    }
}

/** In a match, whose nets are named in the day file by another language's words. */
private const val DAY = """{"day": "2026-12-12", "offset_min": 0, "zone": "Europe/London"}
{"at": "09:40:15", "do": "start_session"}
{"at": "09:41:25", "do": "match", "tap": {"tap": "rule", "rule": {"rule": "begin"}}}
{"at": "09:41:35", "do": "match", "tap": {"tap": "rule", "rule": {"rule": "limit", "net": "Net 1", "limit": {"drams": 7680}}}}
{"at": "10:50:15", "do": "cast", "rod": 1, "picture": "01"}
"""
