package app.restwater.android

import android.content.ContentProvider
import android.content.ContentValues
import android.content.Context
import android.content.Intent
import android.database.Cursor
import android.net.Uri
import android.os.Build
import android.os.Looper
import android.os.ParcelFileDescriptor
import android.provider.DocumentsContract
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.junit4.v2.createEmptyComposeRule
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.performClick
import androidx.core.content.IntentCompat
import androidx.core.os.BundleCompat
import androidx.test.core.app.ActivityScenario
import app.restwater.core.Action
import app.restwater.core.FilesTap
import app.restwater.core.FormChoice
import app.restwater.core.Restwater
import app.restwater.core.Work
import app.restwater.core.shellWords
import app.restwater.ui.FileTrouble
import app.restwater.ui.FilesPage
import app.restwater.ui.Showing
import java.io.File
import java.io.FileNotFoundException
import java.util.concurrent.CountDownLatch
import java.util.concurrent.TimeUnit
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
        shadowOf(Handset.app.contentResolver).registerInputStreamSupplier(Shelf.URI) { file.inputStream() }
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
            rule.runOnUiThread { activity.state?.open(Showing.BANK) }
            comes.countDown()
            until(activity) { activity.state?.desk?.page == FilesPage.INCOMING }
            assertEquals(Showing.BANK, activity.state?.showing)
        }
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

/** Another app's files: one file, none, or a refusal. */
class Shelf : ContentProvider() {
    var file: File? = null
    var refuses = false

    /** Whether it makes files. */
    var makes = false

    /** Whether each file it makes has a place of its own, by its name. */
    var named = false

    /** Whether it removes nothing now. */
    var keeps = false

    /** What was removed. */
    val gone = mutableListOf<String>()

    /** Whether it can't be read now. */
    var unread = false

    /** A slow provider opens a file only when this has come. */
    var waitsFor: CountDownLatch? = null

    /** How many times a file is opened so that writing to it fails. */
    var breaks = 0

    /** How many times the provider fails with an exception of its own when a file is written. */
    var odd = 0
    var deleted = 0

    /** What it was asked for last, and on which thread. */
    var called = ""
    var caller: Thread? = null
    val modes = mutableListOf<String>()

    override fun call(method: String, arg: String?, extras: android.os.Bundle?): android.os.Bundle? {
        called = method
        caller = Thread.currentThread()
        if (method == "android:deleteDocument") {
            if (keeps) throw IllegalStateException("not now")
            deleted += 1
            extras?.let { gone += BundleCompat.getParcelable(it, "uri", Uri::class.java)?.lastPathSegment.orEmpty() }
        }
        if (method != "android:createDocument" || !makes) return null
        val made = if (named) Uri.parse("content://$AUTHORITY/${extras?.getString(DocumentsContract.Document.COLUMN_DISPLAY_NAME)}") else URI
        return android.os.Bundle().apply { putParcelable("uri", made) }
    }

    override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor {
        waitsFor?.await(20, TimeUnit.SECONDS)
        if (refuses) throw SecurityException("not for you")
        val there = file ?: throw FileNotFoundException("gone")
        if (mode == "r" && unread) throw FileNotFoundException("no signal")
        modes += mode
        if ('w' in mode && odd > 0) {
            odd -= 1
            there.writeText("half")
            throw IllegalStateException("not now")
        }
        if ('w' in mode && breaks > 0) {
            breaks -= 1
            there.writeText("half")
            return ParcelFileDescriptor.open(there, ParcelFileDescriptor.MODE_READ_ONLY)
        }
        return ParcelFileDescriptor.open(there, ParcelFileDescriptor.parseMode(mode))
    }

    override fun onCreate() = true
    override fun query(uri: Uri, columns: Array<String>?, where: String?, values: Array<String>?, order: String?): Cursor? = null
    override fun getType(uri: Uri): String? = null
    override fun insert(uri: Uri, values: ContentValues?): Uri? = null
    override fun delete(uri: Uri, where: String?, values: Array<String>?) = 0
    override fun update(uri: Uri, values: ContentValues?, where: String?, args: Array<String>?) = 0

    companion object {
        const val AUTHORITY = "another.app.files"
        val URI: Uri = Uri.parse("content://$AUTHORITY/1")
    }
}
