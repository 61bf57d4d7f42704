package app.restwater.android

import android.app.Activity
import android.content.Context
import android.content.Intent
import android.os.Bundle
import android.provider.DocumentsContract
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasContentDescription
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.lifecycle.Lifecycle
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import app.restwater.core.Outgoing
import app.restwater.core.Work
import app.restwater.core.shellWords
import app.restwater.ui.FilesDesk
import app.restwater.ui.Showing
import java.io.File
import java.util.concurrent.CountDownLatch
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.async
import kotlinx.coroutines.runBlocking
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.android.controller.ActivityController
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** What happens to files while the app is in the background: copies of backups, and a file that is ready too late. */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class LeftTest {
    @get:Rule val rule = createEmptyComposeRule()

    private val shelf = Robolectric.setupContentProvider(Shelf::class.java, Shelf.AUTHORITY)

    @Before fun notificationsAreAllowed() = Handset.thatMayRing()

    @After fun everyReceiverHasAnswered() {
        Handset.settle()
        Handset.answered()
    }

    private fun on(test: (ActivityScenario<MainActivity>, MainActivity) -> Unit) = ActivityScenario.launch(MainActivity::class.java).use { scenario ->
        var launched: MainActivity? = null
        scenario.onActivity { launched = it }
        val activity = checkNotNull(launched)
        Handset.until({ "no screen" }) { rule.waitForIdle(); activity.state?.bank != null }
        Handset.settle()
        test(scenario, activity)
    }

    private fun says(words: String) = hasContentDescription(words, substring = true).or(hasText(words, substring = true))

    private fun pickFolder(name: String = "backups") {
        val tree = DocumentsContract.buildTreeDocumentUri(Shelf.AUTHORITY, name)
        Handset.app.getSharedPreferences("files", Context.MODE_PRIVATE).edit().putString(PhoneFiles.FOLDER, tree.toString()).commit()
    }

    /** A folder whose copies end only after the latch is released. */
    private fun pickSlowFolder(): CountDownLatch {
        pickFolder()
        shelf.makes = true
        shelf.file = File.createTempFile("copy", ".db")
        return CountDownLatch(1).also { shelf.waitsFor = it }
    }

    private fun aBackup() = File.createTempFile("backup", ".db").apply { writeText("the log") }

    private fun leave(scenario: ActivityScenario<MainActivity>) {
        scenario.moveToState(Lifecycle.State.CREATED)
        Handset.settle()
        scenario.moveToState(Lifecycle.State.RESUMED)
        Handset.settle()
    }

    /** The folder may be on a stick at home: the Bank is for the answer to the last tap. */
    @Test fun aCopyThatFailsInTheBackgroundIsReportedOnTheFilesScreenAndNotOnTheBank() {
        Handset.begin()
        Handset.later(60)
        runBlocking { checkNotNull(Handset.core.backUp(Handset.app.now(), Work())) }
        pickFolder()
        on { scenario, activity ->
            rule.runOnUiThread { activity.state?.act(Action.Cast(1u)) }
            Handset.settle()
            val said = checkNotNull(activity.state).notice
            leave(scenario)
            assertEquals("the folder was asked", "android:createDocument", shelf.called)
            assertEquals(said, activity.state?.notice)
            rule.runOnUiThread { activity.state?.open(Showing.FILES) }
            Handset.settle()
            val words = with(shellWords("en-GB")) { listOf(fileGone, fileFailed) }
            rule.waitUntilAtLeastOneExists(says(words[0]).or(says(words[1])), 20_000)
            shelf.makes = true
            shelf.file = File.createTempFile("copy", ".db")
            leave(scenario)
            assertEquals("the copy is made", listOf("wt"), shelf.modes)
            rule.waitForIdle()
            words.forEach { rule.onNode(says(it)).assertDoesNotExist() }
        }
    }

    private fun tap(tag: String) {
        rule.waitUntilExactlyOneExists(hasTestTag(tag), 20_000)
        rule.onNodeWithTag(tag).performClick()
        Handset.settle()
    }

    /** The provider of the folder waits for its network: the Bank must not wait with it. */
    @Test fun backLeadsToTheBankWhileTheFolderDoesNotAnswer() {
        Handset.begin()
        Handset.later(60)
        val comes = pickSlowFolder()
        on { _, activity ->
            val state = checkNotNull(activity.state)
            rule.runOnUiThread { state.open(Showing.FILES) }
            tap("backups")
            tap("back-up")
            Handset.until({ "not copied: ${state.notice}" }) { shelf.called == "android:createDocument" }
            repeat(4) { if (state.showing != Showing.BANK) tap("back") }
            assertEquals(Showing.BANK, state.showing)
            assertTrue("another file can be looked into meanwhile", !state.desk.busy)
            comes.countDown()
            Handset.until({ "never copied" }) { shelf.modes == listOf("wt") }
        }
    }

    @Test fun aCopyThatFailsAfterBackUpIsReportedThere() {
        Handset.begin()
        Handset.later(60)
        pickFolder()
        on { _, activity ->
            val state = checkNotNull(activity.state)
            rule.runOnUiThread { state.open(Showing.FILES) }
            tap("backups")
            tap("back-up")
            Handset.until({ "not said: ${state.notice}" }) { state.notice in with(shellWords("en-GB")) { listOf(fileGone, fileFailed) } }
            assertEquals("the backup itself is there", 1, Handset.files().backups.size)
        }
    }

    @Test fun twoCopiesOfOneBackupAreOne() = runBlocking {
        val comes = pickSlowFolder()
        val backup = aBackup()
        val both = List(2) {
            async(Dispatchers.IO) { Handset.app.files.copyBackup(backup.path) }.also { Thread.sleep(300) }
        }
        comes.countDown()
        both.forEach { it.await() }
        assertEquals("written once", listOf("wt"), shelf.modes)
        assertEquals("and nothing is deleted", 0, shelf.deleted)
        assertEquals("the log", checkNotNull(shelf.file).readText())
    }

    /** The copy under way is for a folder that is no longer the one. */
    @Test fun aFolderPickedDuringACopyGetsItsOwn() = runBlocking {
        val comes = pickSlowFolder()
        val backup = aBackup()
        val first = async(Dispatchers.IO) { Handset.app.files.copyBackup(backup.path) }
        Thread.sleep(300)
        pickFolder("other")
        val second = async(Dispatchers.IO) { Handset.app.files.copyBackup(backup.path) }
        comes.countDown()
        first.await()
        second.await()
        assertEquals("one each", listOf("wt", "wt"), shelf.modes)
    }

    @Test fun aPhoneThatIsTurnedMakesNoBackup() {
        Handset.begin()
        Handset.later(60)
        runBlocking { checkNotNull(Handset.core.backUp(Handset.app.now(), Work())) }
        pickFolder()
        on { scenario, _ ->
            scenario.recreate()
            Handset.settle()
            assertEquals("", shelf.called)
        }
    }

    /** The picker of a stopped activity would not be seen, and its answer would look as if the user had cancelled. */
    @Test fun aFileThatIsReadyAfterTheAppWasLeftIsSavedWhenItIsOpenedAgain() {
        on { scenario, activity ->
            scenario.moveToState(Lifecycle.State.CREATED)
            Handset.settle()
            val table = File.createTempFile("table", ".csv").apply { writeText("casts") }
            val saved = Handset.app.scope.async { Handset.app.files.save(Outgoing(table.path, "table.csv", "text/csv", "saved")) }
            Handset.settle()
            assertNull("dropped", shadowOf(activity).peekNextStartedActivityForResult())
            assertTrue("not reported as cancelled", !saved.isCompleted)
            scenario.moveToState(Lifecycle.State.RESUMED)
            Handset.settle()
            assertEquals(Intent.ACTION_CREATE_DOCUMENT, shadowOf(activity).nextStartedActivityForResult?.intent?.action)
            saved.cancel()
        }
    }

    private fun start(kept: Bundle? = null): ActivityController<MainActivity> {
        val activity = Robolectric.buildActivity(MainActivity::class.java)
        if (kept == null) activity.setup() else activity.setup(kept)
        Handset.until({ "no screen" }) { rule.waitForIdle(); activity.get().state?.bank != null }
        Handset.settle()
        return activity
    }

    /** The system ends the process in the background, after what [meanwhile] began there, and starts another. */
    private fun next(activity: ActivityController<MainActivity>, meanwhile: () -> Unit = {}): ActivityController<MainActivity> {
        val kept = Bundle()
        activity.pause().stop().saveInstanceState(kept)
        // A backup may be made now, beside which the desk begins nothing else.
        atRest(activity)
        rule.runOnUiThread(meanwhile)
        // Another call would find the core of the ended process closed.
        atRest(activity)
        marked = Handset.app.getSharedPreferences("files", Context.MODE_PRIVATE).contains(PhoneFiles.UNFINISHED)
        noticed = activity.get().state?.notice.orEmpty()
        activity.destroy()
        Handset.newProcess()
        return start(kept)
    }

    /** Whether a file was still to be saved when the process ended, and what its screen said. */
    private var marked = false
    private var noticed = ""

    private fun atRest(activity: ActivityController<MainActivity>) {
        Handset.settle()
        Handset.until({ "still at work" }) { activity.get().state?.desk?.busy == false }
        Handset.settle()
    }

    private fun isSaid(activity: ActivityController<MainActivity>) = shellWords("en-GB").fileUnfinished in activity.get().state?.notice.orEmpty()

    /** Its picker would have come up when the app was opened again. */
    @Test fun aFileThatWasNotSavedWhenTheProcessEndedIsSaid() {
        Handset.begin()
        for (begin in listOf<(FilesDesk) -> Unit>({ it.save() }, { it.send() })) {
            val first = start()
            val again = next(first) { begin(checkNotNull(first.get().state).desk) }
            assertTrue("nothing was begun: $noticed", marked)
            Handset.until({ "not said: ${again.get().state?.notice}" }) { isSaid(again) }
            val third = next(again)
            assertTrue("once", !isSaid(third))
            third.pause().stop().destroy()
            Handset.settle()
            Handset.newProcess()
        }
    }

    @Test fun aFileThatTheAnglerDidNotSaveIsNotSaid() {
        Handset.begin()
        val first = start()
        rule.runOnUiThread { checkNotNull(first.get().state).desk.save() }
        Handset.until({ "no picker" }) { shadowOf(first.get()).peekNextStartedActivityForResult() != null }
        val code = shadowOf(first.get()).nextStartedActivityForResult.requestCode
        rule.runOnUiThread { first.get().activityResultRegistry.dispatchResult(code, Activity.RESULT_CANCELED, null) }
        Handset.settle()
        val again = next(first)
        assertTrue(!isSaid(again))
        again.pause().stop().destroy()
    }

    /** The process was ended while an older file was being overwritten. */
    @Test fun aFileThatWasHalfOverwrittenIsAsItWas() {
        val before = File.createTempFile("before", null).apply { writeText("the old report") }
        shelf.file = File.createTempFile("saved", ".html").apply { writeText("hal") }
        Handset.app.getSharedPreferences("files", Context.MODE_PRIVATE).edit()
            .putString("half", Shelf.URI.toString()).putString("before", before.path).commit()
        val activity = start()
        Handset.until({ "not said: ${activity.get().state?.notice}" }) { isSaid(activity) }
        assertEquals("the old report", checkNotNull(shelf.file).readText())
        activity.pause().stop().destroy()
    }

    /** From Android 10 on, the system drops what a stopped activity starts, and says nothing. */
    @Test fun aFileThatIsReadyAfterTheAppWasLeftIsHandedOnWhenItIsOpenedAgain() {
        on { scenario, activity ->
            scenario.moveToState(Lifecycle.State.CREATED)
            Handset.settle()
            val handed = Handset.app.scope.async { Handset.app.files.handOn("the day") }
            Handset.settle()
            assertNull("dropped", shadowOf(activity).peekNextStartedActivity())
            assertTrue("not reported as handed on", !handed.isCompleted)
            scenario.moveToState(Lifecycle.State.RESUMED)
            Handset.settle()
            assertEquals(Intent.ACTION_CHOOSER, shadowOf(activity).nextStartedActivity?.action)
            assertTrue(handed.isCompleted)
        }
    }
}
