package app.restwater.desktop

import androidx.compose.ui.test.DesktopComposeUiTest
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.assertContentDescriptionContains
import androidx.compose.ui.test.runDesktopComposeUiTest
import app.restwater.core.Action
import app.restwater.core.ErrorKind
import app.restwater.core.Moment
import app.restwater.core.NoHandle
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.Screen
import app.restwater.core.Settings
import app.restwater.core.Update
import app.restwater.core.WatchView
import app.restwater.core.Which
import app.restwater.ui.Drawn
import app.restwater.ui.GlassMeasure
import app.restwater.ui.RestwaterApp
import app.restwater.ui.RestwaterState
import app.restwater.ui.Showing
import app.restwater.ui.Trouble
import java.nio.file.Files
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers

/** A screen that the core can't show says so, and the angler gets back. */
@OptIn(ExperimentalTestApi::class)
class RefusedScreenTest {
    /** The real library, which can't read one screen. */
    private class Refusing(private val core: Restwater, private val refused: Which) : Restwater(NoHandle) {
        override fun act(action: Action, at: Moment): Update = core.act(action, at)

        override fun settings(now: Moment): Settings = core.settings(now)

        override fun watch(now: Moment): WatchView = core.watch(now)

        override fun subject(): String = core.subject()

        override fun about(which: Which, now: Moment): String = core.about(which, now)

        override fun screen(which: Which, now: Moment): Screen =
            if (which == refused) throw RestwaterException.Failed(ErrorKind.entries.first(), REFUSED, "") else core.screen(which, now)
    }

    private fun refusing(
        which: Which, widthPx: Int = 1080, heightPx: Int = 2400, measure: GlassMeasure = GlassMeasure(16.0),
        then: (RestwaterState, DesktopComposeUiTest) -> Unit,
    ) {
        wearFace()
        val folder = Files.createTempDirectory("restwater-refused").toFile()
        val now = Moment(1_768_640_400_000L, 0, "Europe/London", 1_000, "one boot", 0u)
        Restwater.open(folder.path, now, "en-GB").use { core ->
            runDesktopComposeUiTest(widthPx, heightPx) {
                val state = RestwaterState(Refusing(core, which), { now }, CoroutineScope(Dispatchers.Unconfined), Dispatchers.Unconfined)
                setContent { RestwaterApp(state, measure, ticking = false) }
                waitForIdle()
                then(state, this)
            }
        }
        folder.deleteRecursively()
    }

    @Test fun aScreenThatCantBeReadDoesNotComeUpAndTheBankSaysWhy() {
        for (screen in Showing.entries.filter { it.which != Which.BANK }) {
            refusing(screen.which) { state, ui ->
                ui.runOnIdle { state.open(screen) }
                ui.waitForIdle()
                ui.onNodeWithTag("notice").assertContentDescriptionContains(REFUSED)
                assertEquals(Showing.BANK, state.showing, "$screen")
            }
        }
    }

    @Test fun aBankThatCantBeReadSaysWhy() = refusing(Which.BANK) { _, ui ->
        ui.onNodeWithTag("trouble").assertContentDescriptionContains(REFUSED)
    }

    @Test fun aMessageOnAGlassThatIsTooSmallIsClearOfTheBars() {
        fun top(inset: Double): Float {
            var top = 0f
            refusing(Which.SEEN, 420, 420, GlassMeasure(16.0, 1.0, inset, 0.0)) { _, ui -> top = ui.onNodeWithTag("trouble").fetchSemanticsNode().boundsInRoot.top }
            return top
        }
        assertEquals(60f, top(60.0) - top(0.0), 1f)
    }

    @Test fun aMessageInsteadOfAScreenGrowsWithTheText() {
        fun em(scale: Double): Float {
            var em = 0f
            runDesktopComposeUiTest(1080, 2400) {
                setContent { Trouble(REFUSED, GlassMeasure(16.0, scale)) }
                em = onNodeWithTag("trouble").fetchSemanticsNode().children.single().config[Drawn].single().em
            }
            return em
        }
        assertEquals(1.5f, em(1.5) / em(1.0), 0.01f)
    }

    private companion object {
        const val REFUSED = "The disk does not answer."
    }
}
