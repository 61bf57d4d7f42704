package app.restwater.android

import android.content.Context
import android.content.Intent
import android.net.Uri
import android.os.Build
import android.os.Looper
import android.provider.DocumentsContract
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasContentDescription
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.core.content.IntentCompat
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import app.restwater.core.FilesTap
import app.restwater.core.FormChoice
import app.restwater.core.Restwater
import app.restwater.core.UniffiWithHandle
import app.restwater.core.Work
import app.restwater.core.shellWords
import app.restwater.ui.FileTrouble
import app.restwater.ui.FilesDesk
import app.restwater.ui.FilesPage
import app.restwater.ui.Showing
import java.io.File
import java.io.RandomAccessFile
import java.util.concurrent.CountDownLatch
import java.util.concurrent.TimeUnit
import kotlinx.coroutines.cancel
import kotlinx.coroutines.launch
import kotlinx.coroutines.runBlocking
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.robolectric.shadows.ShadowStatFs

/** Exchanging files with other apps, by intents and by the system's picker. */
@OptIn(ExperimentalTestApi::class)
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 31, 34, 36], qualifiers = "w411dp-h891dp-xhdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class FilesTest {
    @get:Rule val rule = createEmptyComposeRule()

    private val shelf = Robolectric.setupContentProvider(Shelf::class.java, Shelf.AUTHORITY)

    @org.junit.Before fun notificationsAreAllowed() = Handset.allow(android.Manifest.permission.POST_NOTIFICATIONS)

    /** Puts a file on the shelf. Robolectric reads another app's file only if its stream is registered. */
    private fun shelve(file: File) {
        shelf.file = file
        shadowOf(Handset.app.contentResolver).registerInputStreamSupplier(Shelf.URI) {
            shelf.waitsFor?.await(20, TimeUnit.SECONDS)
            file.inputStream()
        }
    }

    private fun <T> on(intent: Intent, test: (MainActivity, ActivityScenario<MainActivity>) -> T) =
        ActivityScenario.launch<MainActivity>(intent.setClass(Handset.app, MainActivity::class.java)).use { scenario ->
            var activity: MainActivity? = null
            scenario.onActivity { activity = it }
            test(checkNotNull(activity), scenario)
        }

    private fun until(activity: MainActivity, there: () -> Boolean) =
        Handset.until({ "still waiting; the screen says: ${activity.state?.notice}" }, there)

    private fun tap(tag: String) {
        rule.waitUntilExactlyOneExists(hasTestTag(tag), 20_000)
        rule.onNodeWithTag(tag).performClick()
    }

    @Test fun aFileOpenedWithTheAppIsShownAndImported() {
        shelve(Handset.fromAnotherPhone())
        on(Intent(Intent.ACTION_VIEW, Shelf.URI)) { activity, _ ->
            until(activity) { activity.state?.desk?.page == FilesPage.INCOMING && activity.state?.showing == Showing.FILES }
            tap("take")
            until(activity) { activity.state?.desk?.taken == true }
        }
        assertEquals(2uL, Handset.files().imports.single().says.substringAfterLast(": ").substringBefore(' ').toULong())
    }

    /** A file from a slow provider: Files is there at once, and nothing changes under the thumb when the file has come. */
    @Test fun aFileThatComesLateDoesNotChangeTheScreenThatIsUsedMeanwhile() {
        shelve(Handset.fromAnotherPhone())
        Handset.core.act(Action.StartSession(null), Handset.app.now())
        val comes = CountDownLatch(1)
        shelf.waitsFor = comes
        on(Intent(Intent.ACTION_VIEW, Shelf.URI)) { activity, _ ->
            until(activity) { activity.state?.showing == Showing.FILES }
            rule.waitUntilExactlyOneExists(hasContentDescription("…"), 5_000)
            rule.runOnUiThread { activity.state?.open(Showing.BANK) }
            comes.countDown()
            until(activity) { activity.state?.desk?.page == FilesPage.INCOMING }
            assertEquals(Showing.BANK, activity.state?.showing)
        }
    }

    /** A film that was shared by mistake: on a full phone the next entry could not be saved while it is being copied. */
    @Test fun aHugeFileLeavesTheLogItsRoom() {
        val film = File.createTempFile("film", null)
        RandomAccessFile(film, "rw").use { it.setLength(24L shl 20) }
        shelve(film)
        val folder = Handset.app.cacheDir.resolve("incoming")
        ShadowStatFs.registerStats(folder.path, 10_000, 2_000, 2_000)
        on(Intent(Intent.ACTION_VIEW, Shelf.URI)) { activity, _ ->
            until(activity) { activity.state?.notice == shellWords("en-GB").fileNoSpace }
        }
        assertEquals(emptyList<String>(), folder.list().orEmpty().toList())
        film.delete()
    }

    /** A file winds a cast in: its alarm here must not ring, and the lock screen must not offer its keys. */
    @Test fun anImportSetsAlarmsAndLockScreenAnew() {
        Handset.thatMayRing()
        Handset.beginWithAnAlarm()
        Handset.later(60)
        Handset.act(Action.Cast(1u), Handset.app.lockScreen)
        assertEquals(1, Handset.alarms().size)
        Handset.later(60)
        // The log as it goes on without this process, as on a phone that was set up from its backup.
        val made = checkNotNull(runBlocking { Handset.core.backUp(Handset.app.now(), Work()) })
        val folder = java.nio.file.Files.createTempDirectory("other").toFile()
        File(made.path).copyTo(folder.resolve("restwater.db"))
        val other = Restwater.open(folder.path, Handset.app.now(), "en-GB")
        Handset.later(60)
        other.act(Action.WoundIn(1u), Handset.app.now())
        val file = runBlocking { other.send(Handset.app.now(), Work()) }.path
        on(Intent(Intent.ACTION_MAIN)) { activity, _ ->
            until(activity) { activity.state?.bank != null }
            Handset.settle()
            rule.runOnUiThread { activity.state?.offerFile { file } }
            until(activity) { activity.state?.desk?.page == FilesPage.INCOMING && activity.state?.desk?.busy == false }
            rule.runOnUiThread { activity.state?.desk?.takeIn() }
            until(activity) { activity.state?.desk?.taken == true }
            Handset.settle()
            assertEquals("wound in", emptyList<Any>(), Handset.alarms())
            val keys = Handset.core.watch(Handset.app.now()).keys.map { it.label }
            assertEquals(keys, checkNotNull(Handset.wait()).actions.map { it.title.toString() })
        }
        other.close()
    }

    /** A slow provider, another app, and the system ends the process: the file is fetched again. */
    @Test fun aFileThatWasBeingFetchedWhenTheProcessEndedIsFetchedAgain() {
        shelve(Handset.fromAnotherPhone())
        val comes = CountDownLatch(1)
        shelf.waitsFor = comes
        val view = Intent(Intent.ACTION_VIEW, Shelf.URI).setClass(Handset.app, MainActivity::class.java)
        val kept = android.os.Bundle()
        val first = Robolectric.buildActivity(MainActivity::class.java, view).setup()
        until(first.get()) { first.get().state?.showing == Showing.FILES }
        first.pause().stop().saveInstanceState(kept).destroy()
        Handset.settle()
        val before = Handset.app.scope
        Handset.newProcess()
        shelf.waitsFor = null
        val again = Robolectric.buildActivity(MainActivity::class.java, view).setup(kept)
        until(again.get()) { again.get().state?.desk?.page == FilesPage.INCOMING && again.get().state?.showing == Showing.FILES }
        again.pause().stop().destroy()
        before.cancel()
        comes.countDown()
    }

    @Test fun aSharedFileOfAnotherKindIsNamed() {
        shelve(File.createTempFile("letter", ".txt").apply { writeText("Dear all") })
        on(Intent(Intent.ACTION_SEND).putExtra(Intent.EXTRA_STREAM, Shelf.URI)) { activity, _ ->
            until(activity) { "it is text" in activity.state?.notice.orEmpty() }
        }
    }

    @Test fun aFileThatIsGoneOrNotAllowedIsReported() {
        shelf.file = null
        on(Intent(Intent.ACTION_VIEW, Shelf.URI)) { activity, _ ->
            until(activity) { activity.state?.notice == shellWords("en-GB").fileGone }
        }
        shelf.refuses = true
        on(Intent(Intent.ACTION_VIEW, Shelf.URI)) { activity, _ ->
            until(activity) { activity.state?.notice == shellWords("en-GB").fileNotAllowed }
        }
    }

    @Test fun theReportIsSavedWhereThePickerSays() {
        Handset.begin()
        shelf.file = File.createTempFile("saved", ".html")
        on(Intent(Intent.ACTION_MAIN)) { activity, _ ->
            until(activity) { activity.state?.bank != null }
            rule.runOnUiThread { activity.state?.open(Showing.FILES) }
            tap("row-form")
            Handset.aSecondLater()
            tap("choice-form-report")
            tap("back")
            tap("save")
            until(activity) { shadowOf(activity).peekNextStartedActivityForResult() != null }
            val asked = shadowOf(activity).nextStartedActivityForResult
            assertEquals(Intent.ACTION_CREATE_DOCUMENT, asked.intent.action)
            assertTrue(asked.intent.getStringExtra(Intent.EXTRA_TITLE).orEmpty().endsWith("-report.html"))
            rule.runOnUiThread { shadowOf(activity).receiveResult(asked.intent, android.app.Activity.RESULT_OK, Intent().setData(Shelf.URI)) }
            until(activity) { "report.html" in activity.state?.notice.orEmpty() }
        }
        assertTrue(checkNotNull(shelf.file).readText().startsWith("<!doctype html>", ignoreCase = true))
    }

    /** Saves the report over a file that is already there. */
    private fun saveOver(says: (MainActivity) -> Boolean) {
        Handset.begin()
        shelf.file = File.createTempFile("saved", ".html").apply { writeText(OLD) }
        shadowOf(Handset.app.contentResolver).registerInputStreamSupplier(Shelf.URI) {
            if (shelf.unread) throw RuntimeException("no signal")
            checkNotNull(shelf.file).inputStream()
        }
        on(Intent(Intent.ACTION_MAIN)) { activity, _ ->
            until(activity) { activity.state?.bank != null }
            Handset.core.act(Action.Files(FilesTap.Form(FormChoice.REPORT)), Handset.app.now())
            rule.runOnUiThread { activity.state?.open(Showing.FILES) }
            tap("save")
            until(activity) { shadowOf(activity).peekNextStartedActivityForResult() != null }
            val asked = shadowOf(activity).nextStartedActivityForResult
            rule.runOnUiThread { shadowOf(activity).receiveResult(asked.intent, android.app.Activity.RESULT_OK, Intent().setData(Shelf.URI)) }
            until(activity) { says(activity) }
        }
    }

    @Test fun aLongerFileIsReplacedCompletely() {
        saveOver { "report.html" in it.state?.notice.orEmpty() }
        assertEquals("truncated in words the provider knows", "wt", shelf.modes.last())
        assertTrue(OLD !in checkNotNull(shelf.file).readText())
    }

    @Test fun ifSavingFailsTheOldFileIsStillThere() {
        shelf.breaks = 1
        saveOver { it.state?.notice == shellWords("en-GB").fileFailed }
        assertEquals(OLD, checkNotNull(shelf.file).readText())
        assertEquals("deleted", 0, shelf.deleted)
    }

    @Test fun ifTheProviderFailsUnexpectedlyTheOldFileIsStillThere() {
        shelf.odd = 1
        saveOver { it.state?.notice == shellWords("en-GB").fileFailed }
        assertEquals(OLD, checkNotNull(shelf.file).readText())
        assertEquals("deleted", 0, shelf.deleted)
    }

    @Test fun aBackupFolderWhoseProviderDiedIsReported() {
        val tree = DocumentsContract.buildTreeDocumentUri(Shelf.AUTHORITY, "backups")
        Handset.app.getSharedPreferences("files", Context.MODE_PRIVATE).edit().putString(PhoneFiles.FOLDER, tree.toString()).commit()
        val backup = File.createTempFile("backup", ".db")
        val said = runCatching { runBlocking { Handset.app.files.copyBackup(backup.path) } }.exceptionOrNull()
        assertTrue("$said", said is FileTrouble)
        // Android 8 answers nothing where later ones pass the fault on.
        val words = with(shellWords("en-GB")) { if (Build.VERSION.SDK_INT < Build.VERSION_CODES.P) fileGone else fileFailed }
        assertEquals(words, said?.message)
    }

    /** The log does not grow after END, so no further backup is made that could be copied in its place. */
    @Test fun aCopyThatFailedIsMadeTheNextTimeAndOnlyOnce() {
        val tree = DocumentsContract.buildTreeDocumentUri(Shelf.AUTHORITY, "backups")
        Handset.app.getSharedPreferences("files", Context.MODE_PRIVATE).edit().putString(PhoneFiles.FOLDER, tree.toString()).commit()
        val backup = File.createTempFile("backup", ".db").apply { writeText("the log") }
        shelf.makes = true
        shelf.file = File.createTempFile("copy", ".db").apply { writeText("") }
        shelf.breaks = 1
        val copy = { runCatching { runBlocking { Handset.app.files.copyBackup(backup.path) } } }
        assertTrue(copy().exceptionOrNull() is FileTrouble)
        assertEquals("what was half written is removed", 1, shelf.deleted)
        assertTrue(copy().isSuccess)
        assertEquals("the log", checkNotNull(shelf.file).readText())
        shelf.called = ""
        assertTrue(copy().isSuccess)
        assertEquals("copied once", "", shelf.called)
    }

    @Test fun aHalfCopyOfAnEndedProcessIsRemovedBeforeTheNextOne() {
        val tree = DocumentsContract.buildTreeDocumentUri(Shelf.AUTHORITY, "backups")
        val kept = Handset.app.getSharedPreferences("files", Context.MODE_PRIVATE)
        kept.edit().putString(PhoneFiles.FOLDER, tree.toString()).putString(PhoneFiles.BEGUN, Shelf.URI.toString()).commit()
        shelf.makes = true
        shelf.file = File.createTempFile("copy", ".db")
        runBlocking { Handset.app.files.copyBackup(File.createTempFile("backup", ".db").path) }
        assertEquals(1, shelf.deleted)
        assertTrue(!kept.contains(PhoneFiles.BEGUN))
    }

    /** The rule is the core's: of one hour, the latest stays. A copy that failed removes nothing but its own half. */
    @Test fun copiesInTheFolderAreThinnedAsTheBackupsOfThePhoneAre() {
        val tree = DocumentsContract.buildTreeDocumentUri(Shelf.AUTHORITY, "backups")
        Handset.app.getSharedPreferences("files", Context.MODE_PRIVATE).edit().putString(PhoneFiles.FOLDER, tree.toString()).commit()
        shelf.makes = true
        shelf.named = true
        shelf.file = File.createTempFile("copy", ".db")
        val folder = java.nio.file.Files.createTempDirectory("backups").toFile()
        fun name(minute: Int) = "restwater-20260110T08%02d00Z.db".format(minute)
        val copy = { minute: Int -> runCatching { runBlocking { Handset.app.files.copyBackup(folder.resolve(name(minute)).apply { writeText("the log") }.path) } } }
        assertTrue(copy(0).isSuccess)
        assertEquals(emptyList<String>(), shelf.gone)
        assertTrue(copy(15).isSuccess)
        assertEquals(listOf(name(0)), shelf.gone)
        shelf.breaks = 1
        assertTrue(copy(30).isFailure)
        assertEquals("its own half", listOf(name(0), name(30)), shelf.gone)
        shelf.keeps = true
        assertTrue("an old copy that can't be removed is no failure", copy(45).isSuccess)
        shelf.keeps = false
        assertTrue(copy(50).isSuccess)
        assertEquals("it goes with the next", listOf(name(0), name(30), name(15), name(45)), shelf.gone)
    }

    @Test fun aFileThatCouldNotBeReadBeforeIsNotDeletedWhenSavingFails() {
        shelf.unread = true
        shelf.breaks = 1
        saveOver { it.state?.notice == shellWords("en-GB").fileFailed }
        assertEquals("deleted", 0, shelf.deleted)
    }

    /** Its half would take the room that the log needs. */
    @Test fun aFileThatEndsTooEarlyLeavesNothing() {
        val incoming = Handset.app.cacheDir.resolve("incoming")
        val torn = object : java.io.InputStream() {
            private var left = 1_000_000

            override fun read(): Int = if (left-- > 0) 'x'.code else throw java.io.IOException("no more")
        }
        shadowOf(Handset.app.contentResolver).registerInputStreamSupplier(Shelf.URI) { torn }
        on(Intent(Intent.ACTION_VIEW, Shelf.URI)) { activity, _ ->
            until(activity) { activity.state?.notice == shellWords("en-GB").fileFailed }
        }
        assertEquals(emptyList<File>(), incoming.listFiles().orEmpty().toList())
    }

    @Test fun aFileThatIsGivenUpIsNotKept() {
        shelve(Handset.fromAnotherPhone())
        on(Intent(Intent.ACTION_VIEW, Shelf.URI)) { activity, _ ->
            until(activity) { activity.state?.desk?.page == FilesPage.INCOMING }
            val incoming = Handset.app.cacheDir.resolve("incoming")
            assertEquals(1, incoming.listFiles().orEmpty().size)
            rule.runOnUiThread { activity.state?.desk?.leave() }
            assertEquals(0, incoming.listFiles().orEmpty().size)
        }
    }

    @Test fun aBackupIsCopiedOffTheMainThread() {
        val tree = DocumentsContract.buildTreeDocumentUri(Shelf.AUTHORITY, "backups")
        Handset.app.getSharedPreferences("files", Context.MODE_PRIVATE).edit().putString(PhoneFiles.FOLDER, tree.toString()).commit()
        val backup = File.createTempFile("backup", ".db")
        // The test above covers what happens then; this shelf makes no files.
        runCatching { runBlocking { Handset.app.files.copyBackup(backup.path) } }
        assertEquals("the provider was asked to make the file", "android:createDocument", shelf.called)
        assertTrue("on the main thread", shelf.caller != Looper.getMainLooper().thread)
    }

    /** The app is left while a long call holds the core: the main thread must not wait for it. */
    @Test fun theLatestBackupIsAskedForOffTheMainThread() {
        var caller: Thread? = null
        val core = object : Restwater(UniffiWithHandle, Handset.core.uniffiCloneHandle()) {
            override fun latestBackup(): String? {
                caller = Thread.currentThread()
                return super.latestBackup()
            }
        }
        val desk = FilesDesk(core, { Handset.app.now() }, Handset.app.scope, Handset.app.files, Handset.app.worker)
        val done = Handset.app.scope.launch { desk.backUpIfDue() }
        Handset.until({ "still at it" }) { done.isCompleted }
        assertTrue("on $caller", caller != null && caller != Looper.getMainLooper().thread)
        core.close()
    }

    @Test fun aFileIsNotImportedAgainWhenTheAppIsOpenedFromTheRecentApps() {
        shelf.refuses = true
        on(Intent(Intent.ACTION_VIEW, Shelf.URI).addFlags(Intent.FLAG_ACTIVITY_LAUNCHED_FROM_HISTORY)) { activity, _ ->
            until(activity) { activity.state?.bank != null }
            Handset.settle()
            assertEquals("", activity.state?.notice)
        }
    }

    @Test fun theShareSheetGetsAFileThatItMayRead() {
        Handset.begin()
        on(Intent(Intent.ACTION_MAIN)) { activity, _ ->
            until(activity) { activity.state?.bank != null }
            rule.runOnUiThread { activity.state?.open(Showing.FILES) }
            tap("send")
            until(activity) { shadowOf(activity).peekNextStartedActivity() != null }
            val sheet = shadowOf(activity).nextStartedActivity
            assertEquals(Intent.ACTION_CHOOSER, sheet.action)
            val send = checkNotNull(IntentCompat.getParcelableExtra(sheet, Intent.EXTRA_INTENT, Intent::class.java))
            assertEquals("application/json-seq", send.type)
            assertTrue(send.flags and Intent.FLAG_GRANT_READ_URI_PERMISSION != 0)
            val uri = checkNotNull(IntentCompat.getParcelableExtra(send, Intent.EXTRA_STREAM, Uri::class.java))
            assertEquals("app.restwater.files", uri.authority)
        }
    }

    private companion object {
        val OLD = "the report of another day ".repeat(10_000)
    }
}
