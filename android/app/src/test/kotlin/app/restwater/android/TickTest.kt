package app.restwater.android

import android.view.ViewGroup
import androidx.compose.runtime.ExperimentalComposeRuntimeApi
import androidx.compose.runtime.RecomposeScope
import androidx.compose.runtime.Recomposer
import androidx.compose.runtime.tooling.CompositionObserver
import androidx.compose.runtime.tooling.CompositionObserverHandle
import androidx.compose.runtime.tooling.CompositionRegistrationObserver
import androidx.compose.runtime.tooling.ObservableComposition
import androidx.compose.runtime.tooling.observe
import androidx.compose.ui.platform.findViewTreeCompositionContext
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import app.restwater.core.Key
import app.restwater.core.Moment
import app.restwater.core.Restwater
import app.restwater.core.Screen
import app.restwater.core.SetupTap
import app.restwater.core.UniffiWithHandle
import app.restwater.core.Which
import app.restwater.ui.RestwaterState
import app.restwater.ui.tag
import kotlinx.coroutines.launch
import kotlinx.coroutines.runBlocking
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** Each second redraws the running figures and composes nothing. */
@OptIn(ExperimentalTestApi::class, ExperimentalComposeRuntimeApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [35], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class TickTest {
    @get:Rule val rule = createEmptyComposeRule()

    /** Counts what is recomposed in every composition of the process. */
    private class Counter : CompositionRegistrationObserver, CompositionObserver {
        var composed = 0
        private val handles = mutableListOf<CompositionObserverHandle?>()

        override fun onCompositionRegistered(composition: ObservableComposition) {
            handles += composition.setObserver(this)
        }

        override fun onCompositionUnregistered(composition: ObservableComposition) = Unit
        override fun onBeginComposition(composition: ObservableComposition) = Unit
        override fun onScopeEnter(scope: RecomposeScope) {
            composed += 1
        }

        override fun onReadInScope(scope: RecomposeScope, value: Any) = Unit
        override fun onScopeExit(scope: RecomposeScope) = Unit
        override fun onEndComposition(composition: ObservableComposition) = Unit
        override fun onScopeInvalidated(scope: RecomposeScope, value: Any?) = Unit
        override fun onScopeDisposed(scope: RecomposeScope) = Unit
    }

    /** Waits until what is made off the main thread (the picture of the swim) is drawn, on a slow machine too. */
    private fun waitForQuiet(counter: Counter) {
        var quiet = 0
        repeat(40) {
            if (quiet == 4) return
            val was = counter.composed
            Handset.settle()
            rule.waitForIdle()
            quiet = if (counter.composed == was) quiet + 1 else 0
        }
    }

    private fun composedByOneSecond(rods: Int): Int {
        Handset.setClock()
        Handset.allow(android.Manifest.permission.POST_NOTIFICATIONS)
        Handset.core.act(Action.Setup(SetupTap.Rods(rods.toUByte())), Handset.app.now())
        Handset.begin()
        for (rod in 1..rods) Handset.core.act(Action.Cast(rod.toUByte()), Handset.app.now())
        Handset.later(5)
        return ActivityScenario.launch(MainActivity::class.java).use { scenario ->
            var activity: MainActivity? = null
            scenario.onActivity { activity = it }
            rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.BITE)), 20_000)
            Handset.settle()
            rule.waitForIdle()
            val state = checkNotNull(activity?.state)
            val before = state.bank?.rods?.first()?.digits
            val counter = Counter()
            val view = checkNotNull(activity).window.decorView.findViewById<ViewGroup>(android.R.id.content)?.getChildAt(0)
            val recomposer = checkNotNull(view?.findViewTreeCompositionContext()) as Recomposer
            val handle = recomposer.observe(counter)
            waitForQuiet(counter)
            val drawn = counter.composed
            Handset.later(1)
            rule.runOnIdle { runBlocking { state.refresh() } }
            rule.waitForIdle()
            handle.dispose()
            assertTrue("the clock runs", state.bank?.rods?.first()?.digits != before)
            println("tick: $rods rods: ${counter.composed - drawn} scopes composed by one second")
            counter.composed - drawn
        }
    }

    /** A core that counts what it is asked. */
    private class Counting(core: Restwater) : Restwater(UniffiWithHandle, core.uniffiCloneHandle()) {
        var subjects = 0
        var screens = 0

        override fun subject(): String {
            subjects += 1
            return super.subject()
        }

        override fun screen(which: Which, now: Moment): Screen {
            screens += 1
            return super.screen(which, now)
        }
    }

    /** What the screens are about changes by taps, never by time. */
    @Test fun aSecondAsksForNoSubject() {
        Handset.setClock()
        Handset.begin()
        val core = Counting(Handset.core)
        val state = RestwaterState(core, { Handset.app.now() }, Handset.app.scope, Handset.app.worker)
        val clock = Handset.app.scope.launch { state.runClock() }
        Handset.until({ "nothing is read" }) { core.subjects > 0 }
        Handset.settle()
        val (subjects, screens) = core.subjects to core.screens
        Handset.until({ "the clock does not run" }) { core.screens >= screens + 3 }
        assertEquals(subjects, core.subjects)
        clock.cancel()
        Handset.settle()
        core.close()
    }

    @Test fun aSecondOfOneRodComposesNothing() = assertEquals(0, composedByOneSecond(rods = 1))

    @Test fun aSecondOfTwoRodsComposesNoMoreThanTheKeyOfTheOther() = assertTrue(composedByOneSecond(rods = 2) <= 12)
}
