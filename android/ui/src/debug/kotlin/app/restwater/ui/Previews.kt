package app.restwater.ui

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.ui.Modifier
import androidx.compose.ui.tooling.preview.Preview
import androidx.compose.ui.unit.dp
import app.restwater.core.NetView
import app.restwater.core.NetWarning
import app.restwater.core.Rect
import app.restwater.core.StripMark
import app.restwater.core.StripMarkShape
import app.restwater.core.StripView

/**
 * Previews of the parts of the screens for Android Studio, from records written here: a preview has no native library,
 * so a screen that asks the core for its layout can't be shown. They are not part of a release. `PreviewsTest` draws
 * each of them.
 */
internal val previews: Map<String, @Composable () -> Unit> = mapOf(
    "keys" to { KeysPreview() },
    "keys by night" to { KeysByNightPreview() },
    "keys at 200 %" to { LargeKeysPreview() },
    "wait" to { WaitPreview() },
    "wait by night" to { WaitByNightPreview() },
    "no bite yet" to { NoBiteYetPreview() },
    "net" to { NetPreview() },
)

@Preview(name = "Keys: outlined, solid, refused")
@Composable
internal fun KeysPreview() = Part(Ink.Day) { Keys(KEY_MM * 0.22f) }

@Preview(name = "Keys by night")
@Composable
internal fun KeysByNightPreview() = Part(Ink.Night) { Keys(KEY_MM * 0.22f) }

@Preview(name = "Keys at 200 % text")
@Composable
internal fun LargeKeysPreview() = Part(Ink.Day) { Keys(KEY_MM * 0.44f) }

@Preview(name = "The wait in digits, advice and strip")
@Composable
internal fun WaitPreview() = Part(Ink.Day) { Wait(threeBites, "Wait 19 to 21 minutes.", advice) }

@Preview(name = "The wait by night")
@Composable
internal fun WaitByNightPreview() = Part(Ink.Night) { Wait(threeBites, "Wait 19 to 21 minutes.", advice) }

@Preview(name = "The strip before the first bite")
@Composable
internal fun NoBiteYetPreview() = Part(Ink.Day) { Wait(noBite, "Too few bites yet.", listOf("Fish your usual wait.")) }

@Preview(name = "A keepnet near its limit")
@Composable
internal fun NetPreview() = Part(Ink.Day) {
    val net = NetView("Net 1", "38 lb 4 oz", "Net 1: 38 lb 4 oz", "Limit 40 lb", "Change nets before the next fish.", NetWarning.NEAR, listOf(0.9, 0.956, 1.0), true, "Net 1, 38 lb 4 oz")
    NetBar(net, "net", mm(2f, 4f, 64f, 30f), 3.4f * PX_PER_MM)
}

/** A piece of the screen, in the colours of a scheme. */
@Composable
private fun Part(ink: Ink, content: @Composable () -> Unit) =
    CompositionLocalProvider(LocalInk provides ink, LocalPxPerMm provides PX_PER_MM) {
        Box(Modifier.size(PART_DP.dp).background(ink.paper)) { content() }
    }

@Composable
private fun Keys(labelMm: Float) {
    val faces = listOf(
        KeyFace("CAST", "ends this cast, starts the next", "Cast", solid = true),
        KeyFace("BITE", "tip pulled round", "Bite"),
        KeyFace("UNDO", "nothing to undo", "Undo", enabled = false),
    )
    faces.forEachIndexed { i, face ->
        val place = mm(2f, 2f + i * (KEY_MM + 3f), 64f, KEY_MM)
        PadKey(face, face.label, labelMm * PX_PER_MM, labelMm * PX_PER_MM / 2, Modifier.at(place)) { }
    }
}

@Composable
private fun Wait(strip: StripView, first: String, others: List<String>) {
    val ink = LocalInk.current
    Digits({ "12:34" }, ink.ink, Modifier.at(mm(2f, 2f, 64f, 14f)))
    Sentences(first, others, 5f * PX_PER_MM, 3.4f * PX_PER_MM, ink.ink, Modifier.at(mm(2f, 19f, 64f, 22f)))
    WaitStrip(strip, 3f * PX_PER_MM, Modifier.at(mm(2f, 44f, 64f, 16f)))
}

private val advice = listOf("All 3 bites came between 14 and 18 min.", "Past 23 min: not tried.")

private val threeBites = StripView(
    30.0, 5u, 12.6, 19.0, 21.0, listOf(14.0, 16.0), 23.0,
    listOf(14.2, 15.0, 17.6).map { StripMark(it, 0u, StripMarkShape.BITE) } + StripMark(23.0, 0u, StripMarkShape.NO_BITE) +
        StripMark(6.0, 0u, StripMarkShape.LINER),
    "12 minutes out",
)

private val noBite = StripView(30.0, 5u, 12.6, null, null, null, null, emptyList(), "12 minutes out")

private fun mm(left: Float, top: Float, width: Float, height: Float) =
    Rect((left * PX_PER_MM).toDouble(), (top * PX_PER_MM).toDouble(), (width * PX_PER_MM).toDouble(), (height * PX_PER_MM).toDouble())

/** Pixels per millimetre of a phone with 420 dots per inch, like Android Studio's default device. */
private const val PX_PER_MM = 16.5f

/** Width and height of a part: 68 mm. */
private const val PART_DP = 427

/** The smallest height of a key that is used while fishing. */
private const val KEY_MM = 20f
