package app.restwater.desktop

import app.restwater.core.Action
import app.restwater.core.DayTap
import app.restwater.core.Screen
import app.restwater.core.Which
import app.restwater.core.Work
import app.restwater.ui.FilesDesk
import app.restwater.ui.FilesPage
import app.restwater.ui.FilesScreen
import app.restwater.ui.MendScreen
import app.restwater.ui.NoFiles
import app.restwater.ui.RowsScreen
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.delay
import kotlinx.coroutines.runBlocking
import kotlinx.coroutines.withTimeoutOrNull

/**
 * What is done at home: Files after an import and a backup, the doubtful entries and one of them, the phone's settings and the
 * longest row of choices opened.
 */
internal fun deskPictures(played: Played, last: DayTap) {
    val (core, words) = played.core to played.words
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
    inEveryKind(played, last) { kind, layout, write ->
        val left = kind == "left"
        for (page in FilesPage.entries) {
            desk.page = page
            write("files-${page.name.lowercase()}") { FilesScreen(files, desk, layout, words, "", left, { }) { } }
        }
        write("mend-list") { MendScreen(mend, layout, words, "", left, { }) { } }
        if (opened.open != null) write("mend-entry") { MendScreen(opened, layout, words, "", left, { }) { } }
        val longest = phone.rows.maxByOrNull { it.choices.size }?.tag
        for ((name, row) in listOf("phone" to null, "phone-row" to longest)) {
            write(name) { RowsScreen(phone.title, phone.rows, layout, words, "", { }, "", emptyList(), emptyList(), { _, _ -> }, row) { } }
        }
    }
}

/** A day's file is read at once; if there is no answer in this time, the page is drawn empty. */
private const val LONGEST_LOOK_MS = 5_000L
