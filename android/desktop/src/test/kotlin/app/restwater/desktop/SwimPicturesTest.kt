package app.restwater.desktop

import app.restwater.core.Action
import app.restwater.core.FanGlass
import app.restwater.core.Glass
import app.restwater.core.Hand
import app.restwater.core.HazardKind
import app.restwater.core.Moment
import app.restwater.core.Reach
import app.restwater.core.Restwater
import app.restwater.core.Screen
import app.restwater.core.Spot
import app.restwater.core.SwimScene
import app.restwater.core.SwimTap
import app.restwater.core.TypedInto
import app.restwater.core.Which
import app.restwater.core.swimLayout
import app.restwater.ui.Ink
import app.restwater.ui.largeFan
import app.restwater.ui.swimPad
import java.io.File
import java.nio.file.Files
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/**
 * The Swim screen of invented days of 0, 1, 12 and 60 casts on a small, a common and a large screen, by day and night,
 * for either hand and at twice the text size. Labels must not overlap, and the pictures are written to
 * target/screens/swim for inspection.
 */
class SwimPicturesTest {
    @Test fun labelsKeepApartOnEveryGlassAndThePicturesAreThere() {
        val out = File(System.getProperty("restwater.screens", "../../target/screens"), "swim").apply { mkdirs() }
        var pictures = 0
        for (casts in listOf(0, 1, 12, 60)) onADay(casts) { core, at ->
            val bank = (core.screen(Which.BANK, at) as Screen.Bank).v1
            for ((size, bare) in GLASSES) for ((kind, scale, hand, ink) in KINDS) {
                core.act(Action.Set(hand, null), at)
                val glass = bare.copy(textScale = scale, leftHanded = hand == Hand.LEFT)
                val scene = core.swimScene(at, largeFan(glass, swimLayout(glass, swimPad((core.screen(Which.SWIM, at) as Screen.Swim).v1)).canvas))
                assertEquals(emptyList(), overlaps(scene), "$casts casts, $size, $kind")
                File(out, "$casts-$size-$kind.png").writeBytes(swimPicture(core, at, bank, glass, ink))
                pictures += 1
            }
            val small = core.swimScene(at, FanGlass(300.0, 280.0, GLASS.pxPerMm, 1.0, true))
            assertTrue(small.labelText.isEmpty(), "the small fan has no words")
        }
        assertEquals(4 * GLASSES.size * KINDS.size, pictures)
    }

    private data class Kind(val name: String, val scale: Double, val hand: Hand, val ink: Ink)

    private companion object {
        val GLASSES = mapOf(
            "small" to Glass(750.0, 1334.0, 12.84, 1.0, false, 51.0, 0.0),
            "common" to GLASS,
            "large" to Glass(1290.0, 2796.0, 18.11, 1.0, false, 72.0, 62.0),
        )
        val KINDS = listOf(
            Kind("day", 1.0, Hand.RIGHT, Ink.Day), Kind("night", 1.0, Hand.RIGHT, Ink.Night),
            Kind("left", 1.0, Hand.LEFT, Ink.Day), Kind("large-text", 2.0, Hand.RIGHT, Ink.Day),
        )
        const val NINE = 1_768_640_400_000L
    }

    /** Pairs of label boxes that share any area, by their texts. */
    private fun overlaps(scene: SwimScene): List<String> {
        val boxes = scene.labelBox.chunked(4)
        fun apart(a: List<Float>, b: List<Float>) =
            a[0] + a[2] <= b[0] || b[0] + b[2] <= a[0] || a[1] + a[3] <= b[1] || b[1] + b[3] <= a[1]
        return boxes.indices.flatMap { i ->
            (i + 1 until boxes.size).filterNot { apart(boxes[i], boxes[it]) }.map { "${scene.labelText[i]} on ${scene.labelText[it]}" }
        }
    }

    private fun onADay(casts: Int, look: (Restwater, Moment) -> Unit) {
        val log = Files.createTempDirectory("restwater-swim").toFile()
        try {
            var minute = 0L
            fun now() = Moment(NINE + minute * 60_000, 0, "Europe/London", 1_000 + minute * 60_000, "one boot", 0u)
            val core = Restwater.open(log.path, now(), "en-GB")
            fun act(action: Action, minutes: Long = 1) {
                minute += minutes
                core.act(action, now())
            }
            fish(casts, ::act)
            minute += 7
            look(core, now())
            core.close()
        } finally {
            log.deleteRecursively()
        }
    }

    /** Spots in turn at three marks; every third cast brings a bite, every seventh a liner, and one stretch is kept back. */
    private fun fish(casts: Int, act: (Action, Long) -> Unit) {
        act(Action.Typed(TypedInto.Peg, "14"), 1)
        act(Action.StartSession(null), 1)
        val marks = listOf("Dead tree" to -1400, "Gate" to 300, "Boathouse" to 1800)
        for ((name, bearing) in marks) act(Action.SetMark(name, bearing), 1)
        if (casts >= 12) {
            act(Action.Swim(SwimTap.LeftPeg(2000u)), 1)
            act(Action.Swim(SwimTap.FarBank(6000u)), 1)
            act(Action.Swim(SwimTap.Hazard(HazardKind.SNAG)), 1)
        }
        repeat(casts) { i ->
            val spot = Spot(null, marks[(i / 2) % 3].second, Reach.Metres((2_800 + 450 * (i % 5)).toUInt()), true)
            act(Action.SetSpot(1u, spot), 1)
            act(Action.Cast(1u), 1)
            if (i % 7 == 2) act(Action.Liner(1u), 2)
            when {
                i == casts - 1 -> Unit
                i % 3 == 1 -> {
                    act(Action.Bite(1u), 5)
                    act(if (i % 2 == 0) Action.Landed(1u, null) else Action.Lost(1u), 1)
                }
                else -> act(Action.WoundIn(1u), 7)
            }
            if (i == 5) act(Action.KeepBack, 1)
        }
    }
}
