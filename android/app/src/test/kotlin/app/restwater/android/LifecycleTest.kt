package app.restwater.android

import android.app.Activity
import android.content.Intent
import android.os.Bundle
import android.os.Looper
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performTextInput
import androidx.lifecycle.Lifecycle
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import app.restwater.core.FilesTap
import app.restwater.core.FormChoice
import app.restwater.core.Key
import app.restwater.ui.FilesPage
import app.restwater.ui.Showing
import app.restwater.ui.tag
import java.io.File
import java.util.concurrent.CountDownLatch
import kotlinx.coroutines.launch
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.robolectric.shadows.ShadowLooper

/**
 * Turning the phone, the end of the process, going back and the background: nothing is lost and nothing runs
 * needlessly.
 */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class LifecycleTest {
    @get:Rule val rule = createEmptyComposeRule()

    private val shelf = Robolectric.setupContentProvider(Shelf::class.java, Shelf.AUTHORITY)

    @Before fun notificationsAreAllowed() = Handset.allow(android.Manifest.permission.POST_NOTIFICATIONS)

    private fun tap(tag: String) {
        rule.waitUntilExactlyOneExists(hasTestTag(tag), 20_000)
        rule.onNodeWithTag(tag).performClick()
        rule.waitForIdle()
    }

    private fun isThere(tag: String) = rule.onAllNodesWithTag(tag).fetchSemanticsNodes().isNotEmpty()

    private fun ActivityScenario<MainActivity>.activity(): MainActivity {
        var there: MainActivity? = null
        onActivity { there = it }
        return checkNotNull(there)
    }

    private fun on(test: (ActivityScenario<MainActivity>) -> Unit) = ActivityScenario.launch(MainActivity::class.java).use { scenario ->
        Handset.until({ "no screen" }) { scenario.activity().state?.bank != null }
        test(scenario)
    }

    private fun back(scenario: ActivityScenario<MainActivity>) {
        scenario.onActivity { it.onBackPressedDispatcher.onBackPressed() }
        rule.waitForIdle()
    }

    @Test fun anOpenRowIsStillOpenAfterThePhoneIsTurned() = on { scenario ->
        // An empty log is greeted first.
        tap("key-skip-")
        tap(tag(Key.START))
        tap("row-rods")
        rule.waitUntilExactlyOneExists(hasTestTag("choice-rods-2"), 20_000)
        scenario.recreate()
        rule.waitUntilExactlyOneExists(hasTestTag("choice-rods-2"), 20_000)
    }

    @Test fun aTypedTextIsStillThereAfterThePhoneIsTurned() = on { scenario ->
        Handset.begin()
        val typing = typingLeaf(scenario)
        rule.onNodeWithTag(typing).performTextInput("mist till ten")
        scenario.recreate()
        rule.waitUntilExactlyOneExists(hasTestTag(typing), 20_000)
        val shown = rule.onNodeWithTag(typing).fetchSemanticsNode().config[androidx.compose.ui.semantics.SemanticsProperties.EditableText].text
        assertEquals("mist till ten", shown)
    }

    /** Opens the leaf of the Book on which a note is typed. */
    private fun typingLeaf(scenario: ActivityScenario<MainActivity>): String {
        rule.runOnUiThread { scenario.activity().state?.open(Showing.BOOK) }
        Handset.until({ "no book" }) { scenario.activity().state?.book != null }
        val session = checkNotNull(scenario.activity().state?.book).leaves.first().list.first { it.tag.startsWith("open-") }
        tap("key-${session.tag}")
        Handset.settle()
        tap("key-leaf-session")
        rule.waitUntilExactlyOneExists(hasTestTag("typed-note"), 20_000)
        return "typed-note"
    }

    @Test fun theSystemsBackGestureGoesBackOneLevel() = on { scenario ->
        // An empty log is greeted first.
        tap("key-skip-")
        tap(tag(Key.START))
        tap("row-rods")
        rule.waitUntilExactlyOneExists(hasTestTag("choice-rods-2"), 20_000)
        back(scenario)
        assertEquals(Showing.SETUP, scenario.activity().state?.showing)
        assertFalse(isThere("choice-rods-2"))
        back(scenario)
        assertEquals(Showing.BANK, scenario.activity().state?.showing)
    }

    @Test fun theSheetBehindMoreStaysOpenWhenThePhoneIsTurnedAndTheSystemsBackClosesItAlone() {
        Handset.setClock()
        Handset.begin()
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        on { scenario ->
            tap("more")
            rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.FEED)), 20_000)
            scenario.recreate()
            rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.FEED)), 20_000)
            assertFalse(isThere(tag(Key.BITE)))
            back(scenario)
            rule.waitUntilExactlyOneExists(hasTestTag(tag(Key.BITE)), 20_000)
            assertEquals(0, scenario.activity().state?.page)
            assertFalse("the app is still in the foreground", scenario.activity().isFinishing)
        }
    }

    @Test fun noClockRunsWhileTheScreensCannotBeSeen() {
        Handset.setClock()
        Handset.begin()
        Handset.core.act(Action.Cast(1u), Handset.app.now())
        on { scenario ->
            val activity = scenario.activity()
            fun seconds(n: Int) = repeat(n) {
                Handset.later(1)
                rule.mainClock.advanceTimeBy(1_000)
                Handset.settle()
            }
            seconds(2)
            scenario.moveToState(Lifecycle.State.CREATED)
            Handset.settle()
            val before = checkNotNull(activity.state?.bank).rods.single().digits
            seconds(3)
            assertEquals(before, checkNotNull(activity.state?.bank).rods.single().digits)
            scenario.moveToState(Lifecycle.State.RESUMED)
            Handset.until({ "the clock does not run" }) { activity.state?.bank?.rods?.single()?.digits != before }
        }
    }

    @Test fun theLogIsOpenedOffTheMainThread() {
        var opener: Thread? = null
        val clock = Handset.app.now
        Handset.app.now = { if (opener == null) opener = Thread.currentThread(); clock() }
        on { assertTrue("opened on $opener", opener != Looper.getMainLooper().thread) }
    }

    private fun asked(scenario: ActivityScenario<MainActivity>): Int {
        Handset.until({ "no picker" }) { shadowOf(scenario.activity()).peekNextStartedActivityForResult() != null }
        return shadowOf(scenario.activity()).nextStartedActivityForResult.requestCode
    }

    private fun answer(scenario: ActivityScenario<MainActivity>, code: Int) = scenario.onActivity {
        it.activityResultRegistry.dispatchResult(code, Activity.RESULT_OK, Intent().setData(Shelf.URI))
    }

    private fun saveAs(scenario: ActivityScenario<MainActivity>): Int {
        shelf.file = File.createTempFile("saved", ".html")
        Handset.begin()
        Handset.core.act(Action.Files(FilesTap.Form(FormChoice.REPORT)), Handset.app.now())
        rule.runOnUiThread { scenario.activity().state?.open(Showing.FILES) }
        tap("save")
        return asked(scenario)
    }

    private fun saved() = checkNotNull(shelf.file).readText().startsWith("<!doctype html>", ignoreCase = true)

    @Test fun aPlacePickedWhileThePhoneIsTurnedIsWrittenTo() = on { scenario ->
        val code = saveAs(scenario)
        scenario.recreate()
        answer(scenario, code)
        Handset.until({ "nothing is saved" }) { saved() }
    }

    /** What is to be saved there is in the activity's saved state, and nowhere else. */
    @Test fun aPlacePickedAfterTheProcessEndedIsWrittenTo() {
        val kept = Bundle()
        val first = Robolectric.buildActivity(MainActivity::class.java).setup()
        Handset.until({ "no screen" }) { first.get().state?.bank != null }
        shelf.file = File.createTempFile("saved", ".html")
        Handset.begin()
        Handset.core.act(Action.Files(FilesTap.Form(FormChoice.REPORT)), Handset.app.now())
        rule.runOnUiThread { first.get().state?.open(Showing.FILES) }
        tap("save")
        Handset.until({ "no picker" }) { shadowOf(first.get()).peekNextStartedActivityForResult() != null }
        val code = shadowOf(first.get()).nextStartedActivityForResult.requestCode
        first.pause().stop().saveInstanceState(kept).destroy()
        Handset.settle()
        Handset.newProcess()
        val again = Robolectric.buildActivity(MainActivity::class.java).setup(kept)
        Handset.until({ "no screen" }) { again.get().state?.bank != null }
        again.get().activityResultRegistry.dispatchResult(code, Activity.RESULT_OK, Intent().setData(Shelf.URI))
        Handset.until({ "nothing is saved" }) { saved() }
        again.pause().stop().destroy()
    }

    @Test fun aFilePickedAfterTheProcessEndedIsShown() = on { scenario ->
        val file = Handset.fromAnotherPhone()
        shelf.file = file
        shadowOf(Handset.app.contentResolver).registerInputStreamSupplier(Shelf.URI) { file.inputStream() }
        rule.runOnUiThread { scenario.activity().state?.open(Showing.FILES) }
        tap("take-in")
        val code = asked(scenario)
        scenario.recreate()
        Handset.processEnds()
        answer(scenario, code)
        Handset.until({ "not looked into: ${scenario.activity().state?.notice}" }) { scenario.activity().state?.desk?.page == FilesPage.INCOMING }
    }

    @Test fun anImportGoesOnWhenTheActivityIsLeft() {
        val file = Handset.fromAnotherPhone()
        on { scenario ->
            val state = checkNotNull(scenario.activity().state)
            rule.runOnUiThread { state.offerFile { file.path } }
            Handset.until({ "not looked into: ${state.notice}" }) { state.desk.incoming != null && !state.desk.busy }
            rule.runOnUiThread { state.desk.takeIn() }
        }
        Handset.until({ "nothing was taken in" }) { Handset.files().imports.size == 1 }
    }

    @Test fun theLaunchersShortcutLeadsToTheSetUp() {
        val start = Intent(MainActivity.START).setClass(Handset.app, MainActivity::class.java)
        ActivityScenario.launch<MainActivity>(start).use { scenario ->
            Handset.until({ "not at the set-up" }) { scenario.activity().state?.showing == Showing.SETUP }
        }
        ShadowLooper.idleMainLooper()
    }

    /** Of the tests themselves: what is still under way at the end of one would find the system of the next, or none. */
    @Test fun theEndOfATestWaitsForTheWorker() {
        val begun = CountDownLatch(1)
        var done = false
        Handset.app.receivers.launch {
            begun.countDown()
            Thread.sleep(300)
            done = true
        }
        begun.await()
        Handset.app.onTerminate()
        assertTrue(done)
    }
}
