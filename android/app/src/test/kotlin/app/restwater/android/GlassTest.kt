package app.restwater.android

import android.graphics.Bitmap
import androidx.compose.ui.graphics.asAndroidBitmap
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.captureToImage
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.onRoot
import androidx.compose.ui.test.performClick
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import app.restwater.core.Key
import app.restwater.ui.Showing
import app.restwater.ui.tag
import java.io.File
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/**
 * Sizes of keys in millimetres on five screens of three densities, at 200 % text too; and a picture of every screen.
 */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [35])
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class GlassTest {
    @get:Rule val rule = createEmptyComposeRule()

    @Config(qualifiers = "w360dp-h640dp-xhdpi") @Test fun smallPhone() = keysAreLargeEnough()

    @Config(qualifiers = "w384dp-h832dp-xhdpi") @Test fun slimPhone() = keysAreLargeEnough()

    @Config(qualifiers = "w411dp-h731dp-xxhdpi") @Test fun shortPhone() = keysAreLargeEnough()

    @Config(qualifiers = "w412dp-h915dp-xxhdpi") @Test fun commonPhone() = keysAreLargeEnough()

    @Config(qualifiers = "w430dp-h932dp-xxxhdpi", fontScale = 2f) @Test fun largePhoneAtTwiceTheText() = keysAreLargeEnough()

    @Config(qualifiers = "w640dp-h360dp-land-xhdpi") @Test fun smallPhoneOnItsSide() = keysAreLargeEnough()

    @Config(qualifiers = "w915dp-h412dp-land-xxhdpi", fontScale = 2f) @Test fun commonPhoneOnItsSideAtTwiceTheText() = keysAreLargeEnough()

    @Config(qualifiers = "w891dp-h411dp-land-xhdpi") @Test fun everyScreenOnItsSide() = pictures("-on-its-side")

    @Config(qualifiers = "w640dp-h360dp-land-xhdpi") @Test fun everyScreenOnItsSideOnASmallPhone() = pictures("-on-its-side-small")

    @Config(qualifiers = "w411dp-h891dp-xhdpi") @Test fun everyScreenAtOnce() = pictures("")

    @Config(qualifiers = "w411dp-h891dp-xhdpi", fontScale = 2f) @Test fun everyScreenAtTwiceTheText() = pictures("-large-text")

    @Config(qualifiers = "w411dp-h891dp-xhdpi") @Test fun aReaderHasAWordForEveryKeyAndHearsTheWait() = on { _, _ ->
        val nodes = rule.onAllNodes(androidx.compose.ui.test.hasClickAction()).fetchSemanticsNodes()
        assertTrue(nodes.size >= 8)
        for (node in nodes) {
            val said = node.config.getOrNull(SemanticsProperties.ContentDescription).orEmpty()
            assertTrue("a key says nothing: ${node.config}", said.any { it.isNotBlank() })
        }
        val clock = rule.onNodeWithTag("clock-1").fetchSemanticsNode().config
        assertTrue(clock.contains(SemanticsProperties.LiveRegion))
    }

    private fun on(test: (MainActivity, Double) -> Unit) {
        Handset.begin()
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        ActivityScenario.launch(MainActivity::class.java).use { scenario ->
            var opened: MainActivity? = null
            scenario.onActivity { opened = it }
            val activity = checkNotNull(opened)
            rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.BITE)), WITHIN_MS)
            test(activity, pxPerMm(activity.resources.displayMetrics))
        }
    }

    private fun keysAreLargeEnough() = on { _, pxPerMm ->
        for ((key, least) in listOf(Key.CAST to 20.0, Key.BITE to 20.0, Key.WOUND_IN to 20.0, Key.LINER to 15.0, Key.UNDO to 15.0)) {
            val box = rule.onNodeWithTag(tag(key)).fetchSemanticsNode().boundsInRoot
            val smaller = minOf(box.width, box.height) / pxPerMm
            assertTrue("$key is $smaller mm", smaller >= least - 1.5 / pxPerMm)
        }
    }

    private fun pictures(kind: String) = on { activity, _ ->
        val folder = File(checkNotNull(System.getProperty("restwater.screens"))).apply { mkdirs() }
        for (screen in Showing.entries) {
            rule.runOnIdle { activity.state?.open(screen) }
            rule.waitForIdle()
            val picture = drawn(screen)
            File(folder, "${screen.name.lowercase()}$kind.png").outputStream().use { picture.compress(Bitmap.CompressFormat.PNG, 100, it) }
        }
    }

    /** The screen as soon as it shows something: its record comes from another thread. */
    private fun drawn(screen: Showing): Bitmap {
        repeat(100) {
            val picture = rule.onRoot().captureToImage().asAndroidBitmap()
            val points = (0 until picture.width step 5).flatMap { x -> (0 until picture.height step 5).map { y -> picture.getPixel(x, y) } }
            if (points.toSet().size > 1) return picture
            Thread.sleep(50)
            rule.waitForIdle()
        }
        throw AssertionError("nothing is drawn on $screen")
    }

    private companion object {
        const val WITHIN_MS = 20_000L
    }
}
