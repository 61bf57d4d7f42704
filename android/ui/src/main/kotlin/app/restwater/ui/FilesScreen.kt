package app.restwater.ui

import androidx.compose.runtime.Composable
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.saveable.rememberSaveable
import androidx.compose.runtime.setValue
import androidx.compose.ui.Modifier
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.FilesView
import app.restwater.core.PadWords
import app.restwater.core.Rect

/** Export, import, imports that can be undone, and backups. */
@Composable
fun FilesScreen(
    files: FilesView,
    desk: FilesDesk,
    layout: BankLayout,
    words: PadWords,
    notice: String,
    leftHanded: Boolean,
    onAct: (Action) -> Unit,
    onBack: () -> Unit,
) {
    var open by rememberSaveable { mutableStateOf<String?>(null) }
    Ground()
    // A page that a key opens has the key's word as its title.
    val title = when (desk.page) {
        FilesPage.IMPORTS -> files.importsKey
        FilesPage.BACKUPS -> files.backupsKey
        FilesPage.SEND, FilesPage.INCOMING -> files.title
    }
    val rest = PageHead(title, desk.progress?.let { "… $it" } ?: notice.ifBlank { if (desk.fetching > 0) WAITS else desk.copyTrouble }, layout)
    when (desk.page) {
        FilesPage.SEND -> if (open == null) SendPage(files, desk, rest, layout) { open = it } else Rows(files.rows, open, { open = it }, rest, layout, onAct)
        FilesPage.INCOMING -> IncomingPage(files, desk, rest, layout)
        FilesPage.IMPORTS -> {
            val lines = files.imports.map { line ->
                ListLine(line.says, "", line.says, line.key, line.keySpoken, "import-${line.id}") { onAct(line.action) }
            }
            ListPage(lines, emptyList(), files.none, rest, layout, leftHanded)
        }
        FilesPage.BACKUPS -> {
            val lines = files.backups.map { line -> ListLine(line.says, "", line.says, line.key, line.keySpoken, "backup-${line.says}") { desk.offer(line.path) } }
            val folder = Cell(KeyFace(files.folder, null, files.folder), "folder") { desk.pickFolder() }
            val keys = (if (desk.copiesBackups) listOf(folder) else emptyList()) + listOf(
                Cell(KeyFace(files.backUp, null, files.backUp), "back-up") { desk.backUp() },
                Cell(KeyFace(files.lookOver, null, files.lookOver), "look-over") { desk.lookOver() },
            )
            ListPage(lines, keys, files.noBackups, rest, layout, leftHanded)
        }
    }
    Back(layout, words) {
        when {
            // Once only: BACK always leads to the Bank.
            desk.progress != null && desk.cancel() -> Unit
            open != null -> open = null
            desk.page != FilesPage.SEND && !desk.leaving -> desk.leave()
            else -> onBack()
        }
    }
}

@Composable
private fun SendPage(files: FilesView, desk: FilesDesk, place: Rect, layout: BankLayout, onOpen: (String) -> Unit) {
    val opened = LocalOpened.current
    val rows = files.rows.map { row ->
        Cell(KeyFace(row.label, row.value, row.spoken), "row-${row.tag}") { opened(); onOpen(row.tag) }
    }
    val keys = listOf(
        Cell(KeyFace(files.importsKey, null, files.importsKey), "imports") { opened(); desk.page = FilesPage.IMPORTS },
        Cell(KeyFace(files.backupsKey, null, files.backupsKey), "backups") { opened(); desk.page = FilesPage.BACKUPS },
        Cell(KeyFace(files.takeIn, null, files.takeIn), "take-in") { desk.pick() },
    )
    val save = Cell(KeyFace(files.save, null, files.save, solid = !desk.shares), "save") { desk.save() }
    val send = Cell(KeyFace(files.send, null, files.send, solid = true), "send") { desk.send() }
    val cells = rows + keys + if (desk.shares) listOf(save, send) else listOf(save)
    val height = keysBelow(files.says, cells.size, place, layout)
    Sentences(listOf(files.says), place.copy(height = place.height - height), layout, "files-says")
    KeyGrid(cells, place.copy(top = place.top + place.height - height, height = height), layout)
}

@Composable
private fun IncomingPage(files: FilesView, desk: FilesDesk, place: Rect, layout: BankLayout) {
    val incoming = desk.incoming ?: return
    val leave = Cell(KeyFace(incoming.leave, null, incoming.leave, solid = desk.taken), "leave") { desk.leave() }
    val take = Cell(KeyFace(incoming.takeIn, null, incoming.takeIn, solid = true), "take") { desk.takeIn() }
    val cells = if (!desk.taken && incoming.brings) listOf(leave, take) else listOf(leave)
    val keys = keysBelow("", cells.size, place, layout)
    val line = 9.0 * LocalPxPerMm.current
    val asks = if (cells.size == 2) line else 0.0
    Sentences(listOf(incoming.title) + incoming.lines, place.copy(height = place.height - keys - asks - line / 3), layout, "incoming")
    if (asks > 0) {
        val at = place.copy(top = place.top + place.height - keys - asks, height = line)
        Field("source", files.sourceLabel, desk.source, layout, at) { desk.source = it }
    }
    KeyGrid(cells, place.copy(top = place.top + place.height - keys, height = keys), layout)
}

@Composable
private fun ListPage(
    lines: List<ListLine>, keys: List<Cell>, none: String, place: Rect, layout: BankLayout, leftHanded: Boolean,
) {
    val height = if (keys.isEmpty()) 0.0 else gridHeight(keys.size, layout)
    val list = place.copy(height = place.height - height)
    if (lines.isEmpty()) SpokenText(none, layout.text.body.toFloat(), LocalInk.current.ink, Modifier.at(list), middle = false)
    Lines(lines, list, layout, leftHanded)
    if (keys.isNotEmpty()) KeyGrid(keys, place.copy(top = place.top + place.height - height, height = height), layout)
}
