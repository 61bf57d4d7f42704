package app.restwater.android

import android.content.Context
import android.content.Intent
import android.provider.DocumentsContract
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasContentDescription
import androidx.compose.ui.test.hasText
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.lifecycle.Lifecycle
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import app.restwater.core.Outgoing
import app.restwater.core.Work
import app.restwater.core.shellWords
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
