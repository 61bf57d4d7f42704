package app.restwater.desktop

import app.restwater.core.Action
import app.restwater.core.DayTap
import app.restwater.core.Glass
import app.restwater.core.Restwater
import app.restwater.core.Screen
import app.restwater.core.Which
import app.restwater.core.Work
import app.restwater.core.padWords
import app.restwater.ui.FilesDesk
import app.restwater.ui.FilesPage
import app.restwater.ui.FilesScreen
import app.restwater.ui.MendScreen
import app.restwater.ui.NoFiles
import app.restwater.ui.RowsScreen
import java.io.File
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.delay
import kotlinx.coroutines.runBlocking
import kotlinx.coroutines.withTimeoutOrNull

/**
 * What is done at home: Files after an import and a backup, the doubtful entries and one of them, the phone's settings.
 */
internal fun deskPictures(core: Restwater, last: DayTap, out: File, glass: Glass) {
    val bank = (core.screen(Which.BANK, last.at) as Screen.Bank).v1
    val desk = FilesDesk(core, { last.at }, CoroutineScope(Dispatchers.Unconfined), NoFiles)
    runBlocking {
        core.backUp(last.at, Work())
        desk.offer(core.send(last.at, Work()).path)
        withTimeoutOrNull(LONGEST_LOOK_MS) { while (desk.incoming == null) delay(5) }
    }
    val files = (core.screen(Which.FILES, last.at) as Screen.Files).v1
    val mend = (core.screen(Which.MEND, last.at) as Screen.Mend).v1
    val phone = (core.screen(Which.PHONE, last.at) as Screen.Phone).v1
    mend.lines.firstOrNull()?.let { core.act(it.open, last.at) }
    val opened = (core.screen(Which.MEND, last.at) as Screen.Mend).v1
    inEveryKind(glass, bank, out) { kind, layout, write ->
        val left = kind == "left"
        for (page in FilesPage.entries) {
            desk.page = page
            write("files-${page.name.lowercase()}") { FilesScreen(files, desk, layout, padWords("en-GB"), "", left, { }) { } }
        }
        write("mend-list") { MendScreen(mend, layout, padWords("en-GB"), "", left, { }) { } }
        if (opened.open != null) write("mend-entry") { MendScreen(opened, layout, padWords("en-GB"), "", left, { }) { } }
        write("phone") { RowsScreen(phone.title, phone.rows, layout, padWords("en-GB"), "", { }) { } }
    }
}

/** A day's file is read at once; if there is no answer in this time, the page is drawn empty. */
private const val LONGEST_LOOK_MS = 5_000L
