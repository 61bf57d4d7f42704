package app.restwater.desktop

import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertContentDescriptionContains
import androidx.compose.ui.test.click
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performSemanticsAction
import androidx.compose.ui.test.performTextClearance
import androidx.compose.ui.test.performTextInput
import androidx.compose.ui.test.performTouchInput
import app.restwater.core.FillRole
import app.restwater.core.Glass
import app.restwater.core.Hand
import app.restwater.core.Key
import app.restwater.core.LineRole
import app.restwater.core.SwimKey
import app.restwater.core.SwimLayout
import app.restwater.core.SwimPad
import app.restwater.core.SwimView
import app.restwater.core.swimLayout
import app.restwater.ui.Position
import app.restwater.ui.ReceiverTrouble
import app.restwater.ui.Showing
import app.restwater.ui.swimPad
import kotlin.math.abs
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNotEquals
import kotlin.test.assertTrue

/** The Swim screen, operated by its keys and by taps on its picture, with the real library. */
@OptIn(ExperimentalTestApi::class)
class SwimScreenTest {
    @Test fun everyCellIsAimedAtByATapOnTheMapOnEveryGlassAndForEitherHand() {
        for (bare in GLASSES) for (hand in Hand.entries) Bankside.on(bare) {
            if (hand == Hand.LEFT) choose(hand = Hand.LEFT)
            toTheSwim()
            val map = swimPlaces().canvas
            // Without marks and boundaries: five columns of five bands.
            val aimed = (1..9).flatMap { i -> (1..12).map { j -> i / 10f to j / 13f } }.map { (x, y) ->
                tapFan(x * map.width.toFloat(), y * map.height.toFloat())
                said(swim)
            }
            assertEquals(25, aimed.toSet().size, "${aimed.toSet()}")
        }
    }

    @Test fun aSpotIsAimedAtAndCastToInTwoTaps() = Bankside.on {
        toTheSwim()
        val map = swimPlaces().canvas
        tapFan(0.3f * map.width.toFloat(), 0.6f * map.height.toFloat())
        val spot = said(swim)
        tapOn(KEY(SwimKey.CAST_HERE))
        assertEquals(Showing.BANK, state.showing)
        assertTrue(bank.spot.startsWith(spot), "${bank.spot} / $spot")
    }

    @Test fun theMapHasAtLeast85PercentOfTheWidthOfEveryGlass() {
        for (bare in GLASSES) for (scale in listOf(1.0, 2.0)) Bankside.on(bare.copy(textScale = scale)) {
            toTheSwim()
            val scene = checkNotNull(state.scene)
            val water = scene.fillRole.indices.filter { scene.fillRole[it] == FillRole.WATER }
            val xs = water.flatMap { i -> (scene.fillStart[i].toInt() until scene.fillStart[i + 1].toInt()).map { scene.fillXy[2 * it] } }
            val share = (xs.max() - xs.min()) / glass.widthPx
            assertTrue(share >= 0.85, "$share of ${glass.widthPx} px")
        }
    }

    @Test fun theLegendIsOneTapAwayAndExplainsEverySymbol() {
        for (bare in GLASSES) for (scale in listOf(1.0, 2.0)) Bankside.on(bare.copy(textScale = scale)) {
            toTheSwim()
            tapOn("swim-legend")
            swim.legend.forEachIndexed { i, text -> node("legend-$i").assertContentDescriptionContains(text) }
            assertNothingCutOff("${bare.widthPx} px at $scale")
            tapOn("back")
            assertTrue(isThere("swim-fan"))
        }
    }

    @Test fun theReasonsFitBelowWhereNextOnEveryGlassAndAtTwiceTheText() {
        for (bare in GLASSES) for (scale in listOf(1.0, 2.0)) Bankside.on(bare.copy(textScale = scale)) {
            start()
            repeat(3) { cast(minutes = 15, bite = true) }
            tapOn("screens")
            tapOn("open-${Showing.SWIM}")
            wait(seconds = 1)
            assertTrue(swim.why.length > 60, swim.why)
            assertNothingCutOff("${bare.widthPx} px at $scale")
        }
    }

    @Test fun stepKeysMoveTheAimByACell() = Bankside.on {
        toTheSwim()
        tapOn(KEY(SwimKey.STEPS))
        fun after(key: SwimKey): String { wait(seconds = 1); tapOn(KEY(key)); return said(swim) }
        val here = said(swim)
        assertNotEquals(here, after(SwimKey.STEP_OUT))
        assertEquals(here, after(SwimKey.STEP_IN))
        assertNotEquals(here, after(SwimKey.STEP_LEFT))
        assertEquals(here, after(SwimKey.STEP_RIGHT))
        node("swim-fan").assertContentDescriptionContains(here, substring = true)
    }

    @Test fun waterIsKeptBackAndReleased() = Bankside.on {
        toTheSwim()
        val map = swimPlaces().canvas
        val (x, y) = 0.5f * map.width.toFloat() to 0.5f * map.height.toFloat()
        tapFan(x, y)
        tapOn(KEY(SwimKey.KEEP))
        wait(minutes = 26)
        assertTrue(LineRole.KEPT_BACK in lines())
        assertTrue(checkNotNull(state.scene).labelText.any { it.startsWith("KEPT") }, "${state.scene?.labelText}")
        tapFan(x, y)
        assertTrue(swim.keys.any { it.key == SwimKey.RELEASE })
        assertTrue(key(SwimKey.CAST_HERE).enabled && key(SwimKey.CAST_HERE).solid, "a cast there releases it")
        tapOn(KEY(SwimKey.RELEASE))
        wait(seconds = 1)
        assertFalse(LineRole.KEPT_BACK in lines())
        assertTrue(key(SwimKey.CAST_HERE).enabled)
    }

    @Test fun aMarkIsSetByOneTapOrTypedAndRenamedLater() = Bankside.on {
        toTheSwim()
        tapOn("swim-more")
        tapOn(KEY(SwimKey.MARK_HERE))
        assertTrue("Mark 1" in names(), "${names()}")
        node("field-name").performTextInput("Dead tree")
        tapMore("row-rename")
        val choice = swim.rows.first { it.tag == "rename" }.choices.single()
        tapOn("choice-rename-${choice.tag}")
        wait(seconds = 1)
        assertTrue("Dead tree" in names() && "Mark 1" !in names(), "${names()}")
        assertEquals("", swim.name.value)
    }

    @Test fun featuresHazardsAndBoundsAreSetByTaps() = Bankside.on {
        toTheSwim()
        tapOn("swim-more")
        for ((row, value) in listOf("feature" to "bar", "hazard" to "snag", "left" to "1500", "right" to "2000", "far" to "5000")) {
            tapMore("row-$row")
            tapMore("choice-$row-$value")
            tapOn("back")
            wait(seconds = 1)
        }
        val rows = swim.rows.associate { it.tag to it.value }
        assertEquals(listOf("15 m", "20 m", "50 m"), listOf("left", "right", "far").map { rows[it] })
        assertEquals(2, swim.rows.first { it.tag == "remove" }.choices.size)
        tapMore("row-far")
        tapMore("choice-far-0")
        assertEquals("none", swim.rows.first { it.tag == "far" }.value)
    }

    @Test fun theDayIsReplayedByStepKeys() = Bankside.on {
        start()
        tap(Key.CAST)
        wait(minutes = 35)
        tapOn("fan")
        tapOn("swim-more")
        tapOn(KEY(SwimKey.EARLIER))
        assertEquals("As it was at 09:25", swim.replay)
        assertFalse(key(SwimKey.MARK_HERE).enabled, "the past stays as it was")
        wait(seconds = 1)
        tapOn(KEY(SwimKey.EARLIER))
        assertEquals("As it was at 09:15", swim.replay)
        wait(seconds = 1)
        tapOn(KEY(SwimKey.LATER))
        assertEquals("As it was at 09:25", swim.replay)
        tapOn(KEY(SwimKey.NOW))
        assertEquals("", swim.replay)
    }

    @Test fun thePegIsPlacedByTypingAndABadPlaceIsReported() = Bankside.on {
        toTheSwim()
        tapOn("swim-more")
        tapMore("swim-place")
        assertFalse(key(SwimKey.PLACE_PEG).enabled)
        for ((field, text) in listOf("lat" to "95", "lon" to "1 15 0 W", "out" to "210")) {
            node("field-$field").performTextInput(text)
        }
        wait(seconds = 1)
        tapOn(KEY(SwimKey.PLACE_PEG))
        node("notice").assertContentDescriptionContains("latitude of 95", substring = true)
        node("field-lat").performTextClearance()
        node("field-lat").performTextInput("52 7 24")
        wait(seconds = 1)
        tapOn(KEY(SwimKey.PLACE_PEG))
        assertEquals("set", swim.place.value)
        wait(seconds = 1)
        // A PC has no receiver, and says so.
        tapOn(KEY(SwimKey.USE_PHONE))
        node("notice").assertContentDescriptionContains("no receiver", substring = true)
        // The phone's reading only fills the lines.
        receiver.answer = { Position(-17.5, 178.25, 2_000.0) }
        wait(seconds = 1)
        tapOn(KEY(SwimKey.USE_PHONE))
        node("notice").assertContentDescriptionContains("it is rough", substring = true)
        wait(seconds = 1)
        assertEquals(listOf("-17.5000000", "178.2500000", "210"), swim.place.fields.map { it.value })
        // A refusal is shown, and the lines keep what is in them.
        receiver.answer = { throw ReceiverTrouble("not allowed") }
        tapOn(KEY(SwimKey.USE_PHONE))
        node("notice").assertContentDescriptionContains("not allowed")
        assertEquals("-17.5000000", swim.place.fields.first().value)
    }

    @Test fun aReadingIsSeenInALineThatIsBeingTypedInto() = Bankside.on {
        toTheSwim()
        tapOn("swim-more")
        tapMore("swim-place")
        receiver.answer = { Position(-17.5, 178.25, 5.0) }
        node("field-lat").performClick()
        node("field-lat").performTextInput("95")
        wait(seconds = 1)
        fun drawn() = node("field-lat").fetchSemanticsNode().config[SemanticsProperties.EditableText].text
        assertEquals("95", drawn())
        // A thumb on a key leaves the focus where it was, which a mouse does not.
        node(KEY(SwimKey.USE_PHONE)).performSemanticsAction(SemanticsActions.OnClick)
        wait(seconds = 1)
        assertEquals("-17.5000000", swim.place.fields.first().value)
        wait(seconds = 1)
        assertEquals("-17.5000000", drawn(), "what SET PLACE logs is what is shown")
        // Letters that are typed after it are taken as before.
        node("field-lat").performTextInput("9")
        wait(seconds = 1)
        assertEquals(drawn(), swim.place.fields.first().value)
    }

    @Test fun theListHasEverythingThatThePictureIsBasedOn() = Bankside.on {
        toTheSwim()
        tapOn("swim-more")
        tapMore("swim-list")
        for (said in listOf(swim.headline, swim.why, swim.note) + swim.drift + swim.others) {
            node("swim-list-text").assertContentDescriptionContains(said, substring = true)
        }
        tapOn("back")
        tapOn("back")
        tapOn("back")
        assertEquals(Showing.BANK, state.showing)
    }

    @Test fun keysAreAsLargeAsTheLayoutSaysOnEveryGlassHandAndText() {
        for (bare in GLASSES) for (hand in Hand.entries) for (scale in listOf(1.0, 2.0)) Bankside.on(bare.copy(textScale = scale)) {
            if (hand == Hand.LEFT) choose(hand = Hand.LEFT)
            toTheSwim()
            keysAreAsLargeAsTheLayoutSays(SwimPad.PLAIN)
            tapOn(KEY(SwimKey.STEPS))
            wait(seconds = 1)
            keysAreAsLargeAsTheLayoutSays(SwimPad.STEPS)
        }
    }

    private fun Bankside.keysAreAsLargeAsTheLayoutSays(pad: SwimPad) {
        assertEquals(pad, swim.pad)
        val layout = swimPlaces()
        val keys = layout.keys.map { KEY(it.key) to it.rect }
        val places = keys + ("back" to layout.back) + listOfNotNull(layout.more?.let { "swim-more" to it })
        for ((tag, rect) in places) {
            val box = node(tag).fetchSemanticsNode().boundsInRoot
            val off = listOf(box.left - rect.left, box.top - rect.top, box.width - rect.width, box.height - rect.height)
            assertTrue(off.all { abs(it) <= 1.5 }, "$tag is $off px off")
            // Beside the step keys, the key that casts is one place wide.
            val least = if (tag == KEY(SwimKey.CAST_HERE) && pad == SwimPad.PLAIN) 20.0 else 15.0
            val mm = minOf(box.width, box.height) / glass.pxPerMm
            assertTrue(mm >= least - 1.0 / glass.pxPerMm, "$tag is $mm mm")
            assertTrue(box.bottom <= glass.heightPx && box.right <= glass.widthPx, "$tag leaves the glass")
        }
    }

    @Test fun theLeftHandHasTheMirrorImageButLeftStaysLeft() {
        fun boxes(hand: Hand): Map<SwimKey, Float> {
            val found = mutableMapOf<SwimKey, Float>()
            Bankside.on {
                if (hand == Hand.LEFT) choose(hand = Hand.LEFT)
                toTheSwim()
                fun look() = swimPlaces().keys.forEach { found[it.key] = node(KEY(it.key)).fetchSemanticsNode().boundsInRoot.center.x }
                look()
                tapOn(KEY(SwimKey.STEPS))
                wait(seconds = 1)
                look()
            }
            return found
        }
        val (right, left) = boxes(Hand.RIGHT) to boxes(Hand.LEFT)
        for (key in listOf(SwimKey.KEEP, SwimKey.CAST_HERE)) {
            assertEquals(GLASS.widthPx.toFloat(), right.getValue(key) + left.getValue(key), 3f)
        }
        assertEquals(right[SwimKey.STEP_LEFT], left[SwimKey.STEP_LEFT])
    }

    @Test fun atTwiceTheTextEverythingBehindMoreIsStillThere() = Bankside.on(GLASSES.first().copy(textScale = 2.0)) {
        toTheSwim()
        tapOn("swim-more")
        tapOn(KEY(SwimKey.MARK_HERE))
        wait(seconds = 1)
        val wanted = swim.rows.map { "row-${it.tag}" } + listOf("swim-list", "swim-place")
        for (tag in wanted) {
            turnTo(tag)
            val said = node(tag).fetchSemanticsNode().config.getOrNull(SemanticsProperties.ContentDescription)
            assertTrue(!said.isNullOrEmpty(), tag)
        }
    }

    private companion object {
        val KEY = { key: SwimKey -> "swim-$key" }

        /** 4.7, 6.1 and 6.7 in (public spec sheets, from memory), with what the system reserves. */
        val GLASSES = listOf(
            Glass(750.0, 1334.0, 12.84, 1.0, false, 51.0, 0.0), GLASS, Glass(1290.0, 2796.0, 18.11, 1.0, false, 72.0, 62.0),
        )
    }

    private val Bankside.swim: SwimView get() = checkNotNull(state.swim)

    private fun Bankside.key(key: SwimKey) = swim.keys.first { it.key == key }

    private fun Bankside.lines() = checkNotNull(state.scene).lineRole

    /** Names on the picture or in its legend. */
    private fun Bankside.names() = checkNotNull(state.scene).let { scene -> scene.labelText + scene.key.map { it.text } }

    private fun Bankside.swimPlaces(): SwimLayout = swimLayout(glass.copy(leftHanded = state.settings.hand == Hand.LEFT), swimPad(swim))

    private fun Bankside.toTheSwim() {
        start()
        tapOn("screens")
        tapOn("open-${Showing.SWIM}")
        assertEquals(Showing.SWIM, state.showing)
        wait(seconds = 1)
    }

    /** The place that the headline names, without the verdict. */
    private fun said(swim: SwimView) = swim.headline.substringAfter(": ")

    private fun Bankside.tapFan(x: Float, y: Float) {
        node("swim-fan").performTouchInput { click(Offset(x, y)) }
        wait(seconds = 1)
    }

    /** Turns the pages of keys until this one appears. */
    private fun Bankside.turnTo(tag: String) {
        repeat(12) { if (isThere(tag)) return else { tapOn("next-page"); wait(seconds = 1) } }
        error("$tag is on no page")
    }

    private fun Bankside.tapMore(tag: String) {
        turnTo(tag)
        tapOn(tag)
    }
}
