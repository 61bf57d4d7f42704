package app.restwater.desktop

import androidx.compose.ui.geometry.Rect
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.hasClickAction
import app.restwater.core.layout.Glass
import app.restwater.core.readDay
import app.restwater.core.screen.Hand
import app.restwater.ui.CutOff
import app.restwater.ui.DrawnAt
import app.restwater.ui.Showing
import java.io.File
import kotlin.test.Test
import kotlin.test.assertEquals

/**
 * Every screen at states of the days, on glasses small and large, upright and on their side, for either hand, at the usual
 * text and at twice its size: no key lies on another or leaves the glass, no word is cut off, and no text is smaller at
 * twice the size than at the usual one.
 */
class EveryGlassTest {
    private val faults = mutableListOf<String>()

    @Test fun theDemoDay() = walk("demo", "01-before-the-session", "03-fish-on", "08-late-in-the-day", "11-all-out")

    @Test fun theMatch() = walk("match", "05-near-the-limit", null)

    @Test fun theFeederDay() = walk("feeder", "05-other-rod", null)

    @Test fun sixtyCasts() = walk("sixty", null)

    private fun walk(day: String, vararg pictures: String?) {
        val taps = readDay(File("../../tests/days/$day.jsonl").readText())
        for (picture in pictures) for ((name, glass) in GLASSES) {
            val sizes = mutableMapOf<Pair<Showing, String>, Float>()
            for ((scale, hand) in listOf(1.0 to Hand.RIGHT, 1.0 to Hand.LEFT, 2.0 to Hand.RIGHT)) {
                if (hand == Hand.LEFT && glass != GLASSES.first().second) continue
                Bankside.on(glass.copy(textScale = scale)) {
                    choose(hand = hand)
                    live(taps, picture)
                    for (screen in Showing.entries) look(screen, "$day ${picture ?: "end"}, $screen on $name at ${(100 * scale).toInt()} %, $hand", scale, sizes)
                }
            }
        }
        assertEquals(emptyList(), faults)
    }

    /** A screen page by page. */
    private fun Bankside.look(screen: Showing, where: String, scale: Double, sizes: MutableMap<Pair<Showing, String>, Float>) {
        show(screen)
        repeat(PAGES) { page ->
            keysLieApart("$where, page ${page + 1}")
            val cut = nodes(SemanticsMatcher.keyIsDefined(CutOff)).map { it.config[CutOff] }.filter { it.isNotBlank() }
            if (cut.isNotEmpty() && (screen to scale) !in SHORTENED) faults += "$where, page ${page + 1} cuts off: $cut"
            for ((text, em) in nodes(SemanticsMatcher.keyIsDefined(DrawnAt)).flatMap { it.config[DrawnAt] }) {
                if (text.isBlank()) continue
                val usual = sizes[screen to text]
                if (scale == 1.0) sizes[screen to text] = maxOf(em, usual ?: 0f)
                else if (usual != null && em < usual * HAIR) faults += "$where: $text is drawn at $em px, and at 100 % at $usual px"
            }
            if (!isThere("next-page")) return
            tapOn("next-page")
        }
    }

    private fun Bankside.keysLieApart(where: String) {
        val keys = nodes(hasClickAction()).map { it.config.getOrNull(SemanticsProperties.TestTag).orEmpty() to it.boundsInRoot }
        val whole = Rect(0f, 0f, glass.widthPx.toFloat(), glass.heightPx.toFloat())
        for ((i, key) in keys.withIndex()) {
            val (tag, box) = key
            if (box.left < -1 || box.top < -1 || box.right > whole.right + 1 || box.bottom > whole.bottom + 1) faults += "$where: $tag leaves the glass: $box"
            for ((other, there) in keys.drop(i + 1)) {
                val shared = box.intersect(there)
                if (shared.width > 1.5f && shared.height > 1.5f) faults += "$where: $tag lies on $other"
            }
        }
    }

    private companion object {
        /** Pages turned of each screen; where there are fewer the first comes again. */
        const val PAGES = 5

        /** Sizes are steps of five in a hundred: a text is smaller from one step on. */
        const val HAIR = 0.97f

        private fun glass(width: Double, height: Double, mm: Double) = Glass(width, height, mm, 1.0, false, 4 * mm, 0.0)
        val GLASSES = listOf(
            "4.7 in" to glass(750.0, 1334.0, 12.84),
            "6.7 in" to glass(1284.0, 2778.0, 18.03),
            "4.7 in on its side" to glass(1334.0, 750.0, 12.84),
        )

        /** A list that is shortened at twice the text is spoken whole. */
        val SHORTENED = setOf(Showing.SWIM to 2.0)
    }
}
