package app.restwater.desktop

import androidx.compose.ui.test.assertContentDescriptionContains
import app.restwater.core.Key
import app.restwater.ui.FilesPage
import app.restwater.ui.Showing
import java.io.File
import java.nio.file.Files
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue
import kotlinx.coroutines.runBlocking

/** Files, operated by their keys: exported from one phone, imported into another, and undone. */
class FilesScreenTest {
    private fun Bankside.aCast() {
        start()
        tap(Key.CAST)
        wait(minutes = 15)
        tap(Key.BITE)
        wait(seconds = 30)
        tap(Key.LANDED)
        wait(seconds = 30)
    }

    private fun Bankside.sent(): File {
        val before = files.handedOn.size
        goTo(Showing.FILES)
        tapOn("send")
        until { files.handedOn.size > before }
        return File(files.handedOn.last().path)
    }

    /** A file with one cast of another phone. */
    private fun fromAnotherPhone(): File = Files.createTempFile("restwater", ".json-seq").toFile().also { carried ->
        Bankside.on {
            aCast()
            sent().copyTo(carried, overwrite = true)
        }
    }

    /** Opens the page that shows what a picked file contains. */
    private fun Bankside.lookInto(file: File) {
        files.toPick = file.path
        goTo(Showing.FILES)
        tapOn("take-in")
        until { state.desk.page == FilesPage.INCOMING }
    }

    @Test fun aSessionIsExportedThenShownImportedAndUndoneOnAnotherPhone() {
        val carried = Files.createTempFile("restwater", ".json-seq").toFile()
        Bankside.on {
            aCast()
            val file = sent()
            assertEquals("application/json-seq", files.handedOn.last().mediaType)
            file.copyTo(carried, overwrite = true)
        }
        Bankside.on {
            start()
            lookInto(carried)
            node("incoming").assertContentDescriptionContains("4 new entries in 1 session.", substring = true)
            tapOn("take")
            until { state.desk.taken }
            node("incoming").assertContentDescriptionContains("UNDO IMPORT removes them.", substring = true)
            tapOn("leave")
            tapOn("imports")
            val line = checkNotNull(state.files).imports.single()
            assertTrue(!line.undone)
            wait(seconds = 2)
            tapOn("import-${line.id}")
            assertTrue(checkNotNull(state.files).imports.single().undone)
        }
        carried.delete()
    }

    @Test fun aFileOfAnotherKindIsNamedAndNothingChanges() = Bankside.on {
        start()
        val letter = Files.createTempFile("letter", ".txt").toFile().apply { writeText("Dear all") }
        files.toPick = letter.path
        goTo(Showing.FILES)
        tapOn("take-in")
        until { "it is text" in state.notice }
        assertEquals(FilesPage.SEND, state.desk.page)
        letter.delete()
    }

    /** A file that can't be read comes while another one is shown: IMPORT takes in the one that is shown. */
    @Test fun theFileThatIsShownIsTheOneThatIsImported() {
        val carried = fromAnotherPhone()
        Bankside.on {
            start()
            lookInto(carried)
            val letter = Files.createTempFile("letter", ".txt").toFile().apply { writeText("Dear all") }
            state.desk.offer(letter.path)
            until { "it is text" in state.notice }
            tapOn("take")
            until { state.desk.taken }
            node("incoming").assertContentDescriptionContains("UNDO IMPORT removes them.", substring = true)
            letter.delete()
        }
        carried.delete()
    }

    /** DON'T IMPORT, tapped while the import is under way: either nothing was imported, or its result is shown. */
    @Test fun anImportThatIsGivenUpLeavesNothingOrSaysWhatItBrought() {
        val carried = fromAnotherPhone()
        Bankside.on {
            start()
            lookInto(carried)
            state.desk.takeIn()
            state.desk.leave()
            until { !state.desk.busy && (state.desk.page == FilesPage.SEND || state.desk.taken) }
            assertEquals(state.desk.taken, state.desk.incoming != null, "its result is shown")
            runBlocking { state.refresh() }
            assertEquals(state.desk.taken, checkNotNull(state.files).imports.isNotEmpty())
        }
        carried.delete()
    }

    @Test fun everyFormIsChosenByTwoTapsAndMade() = Bankside.on {
        aCast()
        goTo(Showing.FILES)
        for ((form, ending) in listOf("report" to "html", "casts" to "csv", "fish" to "csv", "sessions" to "csv", "map" to "geojson")) {
            tapOn("row-form")
            tapOn("choice-form-$form")
            tapOn("back")
            val before = files.handedOn.size
            tapOn("send")
            until { files.handedOn.size > before }
            assertEquals(ending, File(files.handedOn.last().path).extension)
        }
    }

    @Test fun theSwimIsExportedAsAMapAndAnotherPhoneImportsAndUndoesIt() {
        val carried = Files.createTempFile("swim", "").toFile()
        Bankside.on {
            start()
            goTo(Showing.SWIM)
            wait(seconds = 1)
            tapOn("swim-more")
            tapOn("swim-MARK_HERE")
            tapOn("back")
            tapOn("back")
            goTo(Showing.FILES)
            tapOn("row-form")
            tapOn("choice-form-map")
            tapOn("back")
            tapOn("send")
            until { files.handedOn.isNotEmpty() }
            val file = files.handedOn.single()
            assertEquals("application/geo+json", file.mediaType)
            File(file.path).copyTo(carried, overwrite = true)
            assertTrue("coordinates" !in carried.readText(), "positions stay on the phone")
        }
        Bankside.on {
            start()
            lookInto(carried)
            node("incoming").assertContentDescriptionContains("New from the file: 1 mark", substring = true)
            tapOn("take")
            until { state.desk.taken }
            node("incoming").assertContentDescriptionContains("One tap of UNDO removes it.", substring = true)
            tapOn("leave")
            tapOn("back")
            wait(seconds = 1)
            tap(Key.UNDO)
            wait(seconds = 1)
            lookInto(carried)
            node("incoming").assertContentDescriptionContains("New from the file: 1 mark", substring = true)
        }
        carried.delete()
    }

    @Test fun aBackupIsMadeListedAndShown() = Bankside.on {
        aCast()
        goTo(Showing.FILES)
        tapOn("backups")
        tapOn("back-up")
        until { checkNotNull(state.files).backups.isNotEmpty() }
        tapOn("look-over")
        until { state.notice.startsWith("All well") }
        tapOn("backup-${checkNotNull(state.files).backups.first().says}")
        until { state.desk.page == FilesPage.INCOMING }
        node("incoming").assertContentDescriptionContains("Nothing new", substring = true)
    }
}
