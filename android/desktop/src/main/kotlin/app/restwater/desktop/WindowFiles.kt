package app.restwater.desktop

import app.restwater.core.Outgoing
import app.restwater.ui.FilePorts
import app.restwater.ui.FileTrouble
import java.awt.FileDialog
import java.awt.Frame
import java.awt.Toolkit
import java.awt.datatransfer.StringSelection
import java.io.File
import java.io.IOException
import java.nio.file.Files
import java.nio.file.StandardCopyOption
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.withContext

/** Files through the PC's own dialogues. */
class WindowFiles(private val window: Frame) : FilePorts {
    override val shares get() = false

    override suspend fun handOn(file: Outgoing) {
        save(file)
    }

    /** A PC has no share sheet: the text is put on the clipboard. */
    override suspend fun handOn(text: String) =
        Toolkit.getDefaultToolkit().systemClipboard.setContents(StringSelection(text), null)

    override suspend fun save(file: Outgoing): Boolean {
        val to = ask(FileDialog.SAVE, file.name) ?: return false
        try {
            withContext(Dispatchers.IO) { Files.copy(File(file.path).toPath(), to.toPath(), StandardCopyOption.REPLACE_EXISTING) }
        } catch (failed: IOException) {
            throw FileTrouble("${to.name}: ${failed.message}")
        }
        return true
    }

    override suspend fun pick(): String? = ask(FileDialog.LOAD, null)?.path

    private suspend fun ask(mode: Int, name: String?): File? = withContext(Dispatchers.Main) {
        val dialog = FileDialog(window, "Restwater", mode)
        dialog.file = name
        dialog.isVisible = true
        dialog.file?.let { File(dialog.directory, it) }
    }
}
