package app.restwater.android

import android.content.ActivityNotFoundException
import android.content.Context
import android.content.Intent
import android.net.Uri
import android.provider.DocumentsContract
import android.system.ErrnoException
import android.system.OsConstants
import androidx.activity.ComponentActivity
import androidx.activity.result.contract.ActivityResultContracts
import androidx.core.content.FileProvider
import app.restwater.core.app.Outgoing
import app.restwater.core.shellWords
import app.restwater.ui.FilePorts
import app.restwater.ui.FileTrouble
import java.io.File
import java.io.FileNotFoundException
import java.io.IOException
import java.io.InputStream
import java.io.OutputStream
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.withContext

/** Files by the phone's share sheet and document picker. Nothing is asked of the system but what the user picks. */
class PhoneFiles(private val activity: ComponentActivity) : FilePorts {
    private val create = Asking(activity, ActivityResultContracts.CreateDocument("*/*"))
    private val open = Asking(activity, ActivityResultContracts.OpenDocument())
    private val tree = Asking(activity, ActivityResultContracts.OpenDocumentTree())
    private val chosen = activity.getSharedPreferences("files", Context.MODE_PRIVATE)

    override val copiesBackups get() = true

    override suspend fun handOn(file: Outgoing) = explained {
        val uri = FileProvider.getUriForFile(activity, "${activity.packageName}.files", File(file.path), file.name)
        val send = Intent(Intent.ACTION_SEND).setType(file.mediaType).putExtra(Intent.EXTRA_STREAM, uri).putExtra(Intent.EXTRA_TITLE, file.name)
            .addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
        activity.startActivity(Intent.createChooser(send, file.name))
    }

    override suspend fun save(file: Outgoing): Boolean = explained {
        val to = create.ask(file.name) ?: return@explained false
        copy(File(file.path), to)
        true
    }

    /** Any file may be picked: what it is, the core tells by what is in it. */
    override suspend fun pick(): String? = explained { open.ask(arrayOf("*/*"))?.let { take(activity, it) } }

    override suspend fun pickFolder(): String? = explained {
        val folder = tree.ask(null) ?: return@explained null
        val both = Intent.FLAG_GRANT_READ_URI_PERMISSION or Intent.FLAG_GRANT_WRITE_URI_PERMISSION
        activity.contentResolver.takePersistableUriPermission(folder, both)
        chosen.edit().putString(FOLDER, folder.toString()).apply()
        folder.lastPathSegment.orEmpty()
    }

    override suspend fun copyBackup(path: String) {
        val folder = chosen.getString(FOLDER, null)?.let(Uri::parse) ?: return
        explained {
            val parent = DocumentsContract.buildDocumentUriUsingTree(folder, DocumentsContract.getTreeDocumentId(folder))
            val file = File(path)
            val to = DocumentsContract.createDocument(activity.contentResolver, parent, "application/octet-stream", file.name)
                ?: throw FileNotFoundException(file.name)
            copy(file, to)
        }
    }

    /** Writes the whole file and has it on its way to the storage before it says so; a half-written one is removed. */
    private suspend fun copy(file: File, to: Uri) = withContext(Dispatchers.IO) {
        try {
            activity.contentResolver.openFileDescriptor(to, "w")?.use { opened ->
                java.io.FileOutputStream(opened.fileDescriptor).use { out ->
                    pour(file.inputStream(), out)
                    out.flush()
                    runCatching { out.fd.sync() } // A provider in the cloud has nothing to sync.
                }
            } ?: throw FileNotFoundException(to.toString())
        } catch (failed: IOException) {
            runCatching { DocumentsContract.deleteDocument(activity.contentResolver, to) }
            throw failed
        }
    }

    internal companion object {
        const val FOLDER = "folder"

        /** Copies a file of another app to where the core can read it; the name it has there plays no part. */
        suspend fun take(context: Context, from: Uri): String = explained {
            withContext(Dispatchers.IO) {
                val folder = context.cacheDir.resolve("incoming").apply { mkdirs() }
                folder.listFiles().orEmpty().forEach { it.delete() }
                val to = File(folder, "file")
                val stream = context.contentResolver.openInputStream(from) ?: throw FileNotFoundException(from.toString())
                to.outputStream().use { pour(stream, it) }
                to.path
            }
        }

        private fun pour(from: InputStream, to: OutputStream) = from.use { it.copyTo(to) }

        /** What went wrong with a file of another app, in words that say what to do. */
        private suspend fun <T> explained(task: suspend () -> T): T =
            try {
                task()
            } catch (refused: SecurityException) {
                throw FileTrouble(shellWords().fileNotAllowed)
            } catch (gone: FileNotFoundException) {
                throw FileTrouble(shellWords().fileGone)
            } catch (failed: IOException) {
                val full = (failed.cause as? ErrnoException)?.errno == OsConstants.ENOSPC || "ENOSPC" in failed.message.orEmpty()
                throw FileTrouble(if (full) shellWords().fileNoSpace else shellWords().fileFailed)
            } catch (nobody: ActivityNotFoundException) {
                throw FileTrouble(shellWords().fileFailed)
            } catch (odd: IllegalArgumentException) {
                throw FileTrouble(shellWords().fileGone)
            }
    }
}
