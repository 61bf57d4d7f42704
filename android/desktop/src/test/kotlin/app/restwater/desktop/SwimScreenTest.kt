package app.restwater.desktop

import androidx.compose.ui.geometry.Offset
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.assertContentDescriptionContains
import androidx.compose.ui.test.click
import androidx.compose.ui.test.performTextClearance
import androidx.compose.ui.test.performTextInput
import androidx.compose.ui.test.performTouchInput
import app.restwater.core.layout.Glass
import app.restwater.core.layout.SwimLayout
import app.restwater.core.screen.Hand
import app.restwater.core.screen.Key
import app.restwater.core.screen.SwimKey
import app.restwater.core.screen.SwimPad
import app.restwater.core.screen.SwimView
import app.restwater.core.swim.LineRole
import app.restwater.core.swimLayout
import app.restwater.ui.Position
import app.restwater.ui.ReceiverTrouble
import app.restwater.ui.Showing
import app.restwater.ui.swimPad
import kotlin.math.abs
import kotlin.math.hypot
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertFalse
import kotlin.test.assertNotEquals
import kotlin.test.assertTrue

/** The Swim screen by its keys and by taps on its picture, on the real library. */
@OptIn(ExperimentalTestApi::class)
class SwimScreenTest {
    @Test fun everyCellIsPickedByARayAndABandOnEveryGlassAndForEitherHand() {
        for (bare in GLASSES) for (hand in Hand.entries) Bankside.on(bare) {
            if (hand == Hand.LEFT) tapOn("hand")
            toTheSwim()
            // Without marks and bounds: five rays of five bands.
            val aimed = List(25) { i ->
                pick(ray = i / 5, band = i % 5)
                assertEquals(SwimPad.STEPS, swim.pad)
                swim.headline.removePrefix("Next: ").also {
                    tapOn("back")
                    wait(seconds = 1)
                    assertEquals(SwimPad.RAYS, swim.pad)
                }
            }
            assertEquals(25, aimed.toSet().size, "$aimed")
        }
    }

    @Test fun aSpotIsPickedInTwoTapsAndCastTo() = Bankside.on {
        toTheSwim()
        pick(ray = 0, band = 2)
        val headline = swim.headline
        tapOn(KEY(SwimKey.CAST_HERE))
        assertEquals(Showing.BANK, state.showing)
        val spot = headline.removePrefix("Next: ")
        assertTrue(bank.spot.startsWith(spot), "${bank.spot} / $spot")
    }

    @Test fun everyTargetOfThePictureIsReachedByOneTapAndIs15MmFromTheNext() {
        for (glass in GLASSES) Bankside.on(glass) {
            toTheSwim()
            val scene = checkNotNull(state.scene)
            val targets = scene.targetXy.chunked(2)
            // The fan of the smallest glass has room for one of 15 mm; the rest of it is reached by the step keys.
            assertTrue(targets.size >= if (glass == GLASSES.first()) 1 else 2, "${targets.size} targets")
            for ((i, a) in targets.withIndex()) for (b in targets.drop(i + 1)) {
                val apart = hypot(a[0] - b[0], a[1] - b[1]) / glass.pxPerMm
                assertTrue(apart >= 14.99, "$apart mm")
            }
            val seen = targets.indices.map { i -> target(i).let { (x, y) -> tapFan(x, y); wait(seconds = 1); swim.headline } }
            assertEquals(targets.size, seen.toSet().size, "$seen")
        }
    }

    @Test fun theReasonsStandWholeBelowWhereNextOnEveryGlassAndAtTwiceTheText() {
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

    @Test fun stepKeysMoveTheRingACell() = Bankside.on {
        toTheSwim()
        pick(ray = 2, band = 2)
        fun after(key: SwimKey): String { wait(seconds = 1); tapOn(KEY(key)); return swim.headline }
        val here = swim.headline.removePrefix("Next: ")
        assertNotEquals(here, after(SwimKey.STEP_OUT))
        assertEquals(here, after(SwimKey.STEP_IN).removePrefix("Next: "))
        assertNotEquals(here, after(SwimKey.STEP_LEFT))
        assertEquals(here, after(SwimKey.STEP_RIGHT).removePrefix("Next: "))
        node("swim-fan").assertContentDescriptionContains(here, substring = true)
    }

    @Test fun waterIsKeptBackAndReleased() = Bankside.on {
        toTheSwim()
        val (x, y) = target(0)
        tapFan(x, y)
        tapOn(KEY(SwimKey.KEEP))
        wait(minutes = 26)
        assertTrue(LineRole.KEPT_BACK in lines())
        assertTrue(checkNotNull(state.scene).labelText.any { "kept back 26 min" in it }, "${state.scene?.labelText}")
        tapFan(x, y)
        stepTo { swim.keys.any { it.key == SwimKey.RELEASE } }
        assertFalse(key(SwimKey.CAST_HERE).enabled, "kept-back water is not cast to")
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

    @Test fun thePegIsPlacedByTypingAndABadPlaceIsSaid() = Bankside.on {
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
        // A reading of the phone only fills the lines.
        receiver.answer = { Position(-17.5, 178.25, 2_000.0) }
        wait(seconds = 1)
        tapOn(KEY(SwimKey.USE_PHONE))
        node("notice").assertContentDescriptionContains("it is rough", substring = true)
        wait(seconds = 1)
        assertEquals(listOf("-17.5000000", "178.2500000", "210"), swim.place.fields.map { it.value })
        // A refusal is said, and what stands in the lines stays.
        receiver.answer = { throw ReceiverTrouble("not allowed") }
        tapOn(KEY(SwimKey.USE_PHONE))
        node("notice").assertContentDescriptionContains("not allowed")
        assertEquals("-17.5000000", swim.place.fields.first().value)
    }

    @Test fun theListSaysEverythingThePictureRestsOn() = Bankside.on {
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
            if (hand == Hand.LEFT) tapOn("hand")
            toTheSwim()
            keysAreAsLargeAsTheLayoutSays(SwimPad.RAYS)
            tapOn("pick-ray-1")
            wait(seconds = 1)
            keysAreAsLargeAsTheLayoutSays(SwimPad.CELLS)
            tapOn("pick-cell-${swim.picks[1].value}")
            wait(seconds = 1)
            keysAreAsLargeAsTheLayoutSays(SwimPad.STEPS)
        }
    }

    private fun Bankside.keysAreAsLargeAsTheLayoutSays(pad: SwimPad) {
        assertEquals(pad, swim.pad)
        val layout = laid()
        val keys = layout.keys.map { KEY(it.key) to it.rect }
        val picks = swim.picks.zip(layout.picks) { pick, place -> "pick-${pick.tag}" to place }
        val places = keys + picks + ("back" to layout.back) + listOfNotNull(layout.more?.let { "swim-more" to it })
        assertEquals(swim.picks.size, picks.size)
        for ((tag, rect) in places) {
            val box = node(tag).fetchSemanticsNode().boundsInRoot
            val off = listOf(box.left - rect.left, box.top - rect.top, box.width - rect.width, box.height - rect.height)
            assertTrue(off.all { abs(it) <= 1.5 }, "$tag is $off px off")
            val least = if (tag == KEY(SwimKey.CAST_HERE)) 20.0 else 15.0
            val mm = minOf(box.width, box.height) / glass.pxPerMm
            assertTrue(mm >= least - 1.0 / glass.pxPerMm, "$tag is $mm mm")
            assertTrue(box.bottom <= glass.heightPx && box.right <= glass.widthPx, "$tag leaves the glass")
        }
    }

    @Test fun theLeftHandHasTheMirrorImageButLeftStaysLeft() {
        fun boxes(hand: Hand): Map<SwimKey, Float> {
            val found = mutableMapOf<SwimKey, Float>()
            Bankside.on {
                if (hand == Hand.LEFT) tapOn("hand")
                toTheSwim()
                pick(ray = 0, band = 0)
                for (place in laid().keys) {
                    found[place.key] = node(KEY(place.key)).fetchSemanticsNode().boundsInRoot.center.x
                }
            }
            return found
        }
        val (right, left) = boxes(Hand.RIGHT) to boxes(Hand.LEFT)
        for (key in listOf(SwimKey.KEEP, SwimKey.CAST_HERE)) {
            assertEquals(GLASS.widthPx.toFloat(), right.getValue(key) + left.getValue(key), 3f)
        }
        assertEquals(right[SwimKey.STEP_LEFT], left[SwimKey.STEP_LEFT])
    }

    @Test fun atTwiceTheTextEveryThingOfMoreIsStillThere() = Bankside.on(GLASSES.first().copy(textScale = 2.0)) {
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

        /** 4.7, 6.1 and 6.7 in (public spec sheets, from memory), with what the system keeps. */
        val GLASSES = listOf(
            Glass(750.0, 1334.0, 12.84, 1.0, false, 51.0, 0.0), GLASS, Glass(1290.0, 2796.0, 18.11, 1.0, false, 72.0, 62.0),
        )
    }

    private val Bankside.swim: SwimView get() = checkNotNull(state.swim)

    private fun Bankside.key(key: SwimKey) = swim.keys.first { it.key == key }

    private fun Bankside.lines() = checkNotNull(state.scene).lineRole

    /** Names that stand on the picture or in its key. */
    private fun Bankside.names() = checkNotNull(state.scene).let { scene -> scene.labelText + scene.key.map { it.text } }

    private fun Bankside.laid(): SwimLayout = swimLayout(glass.copy(leftHanded = state.settings.hand == Hand.LEFT), swimPad(swim))

    private fun Bankside.toTheSwim() {
        start()
        tapOn("screens")
        tapOn("open-${Showing.SWIM}")
        assertEquals(Showing.SWIM, state.showing)
        wait(seconds = 1)
    }

    private fun Bankside.target(i: Int) = checkNotNull(state.scene).targetXy.let { it[2 * i] to it[2 * i + 1] }

    /** The two taps: a ray, then a band of it. */
    private fun Bankside.pick(ray: Int, band: Int) {
        tapOn("pick-ray-$ray")
        wait(seconds = 1)
        assertEquals(SwimPad.CELLS, swim.pad)
        assertTrue(swim.headline.endsWith("which band?"), swim.headline)
        tapOn("pick-cell-${swim.picks[band].value}")
        wait(seconds = 1)
    }

    private fun Bankside.tapFan(x: Float, y: Float) {
        node("swim-fan").performTouchInput { click(Offset(x, y)) }
        wait(seconds = 1)
    }

    /** Goes through the swim by the step keys, column by column from the left, until the ring is there. */
    private fun Bankside.stepTo(there: () -> Boolean) {
        fun step(key: SwimKey) { tapOn(KEY(key)); wait(seconds = 1) }
        repeat(8) { step(SwimKey.STEP_LEFT) }
        repeat(9) {
            repeat(6) { step(SwimKey.STEP_IN) }
            repeat(7) { if (there()) return else step(SwimKey.STEP_OUT) }
            step(SwimKey.STEP_RIGHT)
        }
        error("no such cell")
    }

    /** Turns the pages of keys until this one shows. */
    private fun Bankside.turnTo(tag: String) {
        repeat(12) { if (isThere(tag)) return else { tapOn("grid-more"); wait(seconds = 1) } }
        error("$tag is on no page")
    }

    private fun Bankside.tapMore(tag: String) {
        turnTo(tag)
        tapOn(tag)
    }
}
