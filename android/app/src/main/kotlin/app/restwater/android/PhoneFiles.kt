package app.restwater.android

import android.content.Context
import android.content.Intent
import android.net.Uri
import android.os.Bundle
import android.os.StatFs
import android.provider.DocumentsContract
import android.system.ErrnoException
import android.system.OsConstants
import androidx.activity.ComponentActivity
import androidx.activity.result.contract.ActivityResultContracts
import androidx.core.content.FileProvider
import androidx.lifecycle.DefaultLifecycleObserver
import androidx.lifecycle.LifecycleOwner
import app.restwater.core.Outgoing
import app.restwater.core.shellWords
import app.restwater.core.superfluousCopies
import app.restwater.ui.FilePorts
import app.restwater.ui.FileTrouble
import app.restwater.ui.FilesDesk
import app.restwater.ui.language
import java.io.File
import java.io.FileNotFoundException
import java.io.IOException
import java.io.InputStream
import java.io.OutputStream
import kotlinx.coroutines.CancellationException
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.flow.MutableStateFlow
import kotlinx.coroutines.flow.filterNotNull
import kotlinx.coroutines.flow.first
import kotlinx.coroutines.launch
import kotlinx.coroutines.sync.Mutex
import kotlinx.coroutines.sync.withLock
import kotlinx.coroutines.withContext

/**
 * Files through the phone's share sheet and document picker. The app gets access only to what the user picks. The
 * application holds this object, so that a picker's answer is used even if the activity that asked was recreated or the
 * process was ended in between.
 */
internal class PhoneFiles(private val app: RestwaterApplication) : FilePorts {
    private val create = Asking("create", ActivityResultContracts.CreateDocument("*/*"), ::saveLate)
    private val open = Asking("open", ActivityResultContracts.OpenDocument()) { from -> from?.let(::openLate) }
    private val tree = Asking("tree", ActivityResultContracts.OpenDocumentTree()) { folder -> folder?.let(::keepLate) }
    private val chosen = app.getSharedPreferences("files", Context.MODE_PRIVATE)
    private val copying = Mutex()

    /** The activity that can be seen. */
    private val front = MutableStateFlow<ComponentActivity?>(null)

    /** The file that is saved once the user has picked a place. */
    private var toSave: Outgoing? = null

    /** Whether an earlier process was ended before a file was saved or sent. */
    private var left = chosen.contains(UNFINISHED) || chosen.contains(HALF)

    override suspend fun begun(): Unit = withContext(Dispatchers.IO) { chosen.edit().putBoolean(UNFINISHED, true).commit() }

    override fun ended() = chosen.edit().remove(UNFINISHED).apply()

    /** Says, once, that an earlier process was ended before a file was saved or sent. What it had half overwritten is as before. */
    suspend fun unfinished(): String? {
        if (!left) return null
        left = false
        withContext(Dispatchers.IO) {
            chosen.getString(HALF, null)?.let { half -> runCatching { restore(Uri.parse(half), chosen.getString(BEFORE, null)) } }
            chosen.edit().remove(UNFINISHED).remove(HALF).remove(BEFORE).commit()
        }
        return shellWords(language()).fileUnfinished
    }

    /** Gives a place its old content back; [before] is the copy of that, empty if there was nothing. */
    private fun restore(half: Uri, before: String?) {
        val held = before?.let(::File)
        when {
            before == null -> Unit
            before.isEmpty() -> DocumentsContract.deleteDocument(app.contentResolver, half)
            held?.exists() == true -> write(half) { out -> pour(held.inputStream(), out) }
        }
        held?.delete()
    }

    /** Registers an activity that can ask; [saved] is the state that an earlier instance kept. */
    fun attach(activity: ComponentActivity, saved: Bundle?) {
        listOf(create, open, tree).forEach { it.attach(activity) }
        activity.lifecycle.addObserver(object : DefaultLifecycleObserver {
            override fun onStart(owner: LifecycleOwner) {
                front.value = activity
            }

            override fun onStop(owner: LifecycleOwner) {
                front.compareAndSet(activity, null)
            }
        })
        val kept = saved?.getStringArray(TO_SAVE) ?: return
        if (toSave == null) toSave = Outgoing(kept[0], kept[1], kept[2], kept[3])
    }

    /** Keeps what is needed to continue if the process is ended while the user picks. */
    fun keep(into: Bundle) {
        toSave?.let { into.putStringArray(TO_SAVE, arrayOf(it.path, it.name, it.mediaType, it.says)) }
    }

    private fun saveLate(to: Uri?) {
        val file = toSave ?: return
        toSave = null
        if (to != null) late { desk -> explained { copy(File(file.path), to) }; desk.saved(file) }
    }

    private fun openLate(from: Uri) = late { desk -> desk.offer { take(app, from) } }

    private fun keepLate(folder: Uri) = late { desk -> desk.folderPicked(explained { keepFolder(folder) }) }

    private fun late(task: suspend (FilesDesk) -> Unit) {
        app.scope.launch {
            val desk = app.opened().desk
            try {
                task(desk)
            } catch (trouble: FileTrouble) {
                desk.heard(trouble.message.orEmpty())
            }
        }
    }

    override val copiesBackups get() = true

    override suspend fun handOn(file: Outgoing) = explained {
        val uri = FileProvider.getUriForFile(app, "${app.packageName}.files", File(file.path), file.name)
        val send = Intent(Intent.ACTION_SEND).setType(file.mediaType).putExtra(Intent.EXTRA_STREAM, uri).putExtra(Intent.EXTRA_TITLE, file.name)
            .addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
        handOn(send, file.name)
    }

    override suspend fun handOn(text: String) = explained {
        handOn(Intent(Intent.ACTION_SEND).setType("text/plain").putExtra(Intent.EXTRA_TEXT, text), null)
    }

    /** If the app was left meanwhile, when it is opened again: from Android 10 on, the system drops what is started before. */
    private suspend fun handOn(send: Intent, title: String?) = front.filterNotNull().first().startActivity(Intent.createChooser(send, title))

    override suspend fun save(file: Outgoing): Boolean = explained {
        toSave = file
        // If the app was left meanwhile, when it is opened again: the system drops the picker, and answers as if the user had cancelled.
        front.filterNotNull().first()
        // From here on the system keeps the request, and brings the answer to the next process too.
        ended()
        val to = create.ask(file.name)
        toSave = null
        if (to == null) return@explained false
        copy(File(file.path), to)
        true
    }

    /** Any file may be picked: the core recognises it by its content. It may have to be fetched first, like one that comes from elsewhere. */
    override suspend fun pick(): String? = explained {
        open.ask(arrayOf("*/*"))?.let(::openLate)
        null
    }

    override suspend fun pickFolder(): String? = explained {
        tree.ask(null)?.let(::keepFolder)
    }

    private fun keepFolder(folder: Uri): String {
        val both = Intent.FLAG_GRANT_READ_URI_PERMISSION or Intent.FLAG_GRANT_WRITE_URI_PERMISSION
        app.contentResolver.takePersistableUriPermission(folder, both)
        // Nothing has been copied to it yet.
        chosen.edit().putString(FOLDER, folder.toString()).remove(COPIED).remove(BEGUN).apply { copies().keys.forEach { remove(COPY + it) } }.apply()
        return folder.lastPathSegment.orEmpty()
    }

    /** One copy after another: a second one would take the first one's mark for that of an ended process. */
    override suspend fun copyBackup(path: String) = copying.withLock {
        val to = chosen.getString(FOLDER, null)
        val file = File(path)
        if (to != null && chosen.getString(COPIED, null) != file.name) copyTo(Uri.parse(to), file)
    }

    private suspend fun copyTo(folder: Uri, file: File) {
        // The folder may be another app's, or lie behind a network.
        explained {
            withContext(Dispatchers.IO) {
                // A copy that was begun when the process was ended may be half of one.
                chosen.getString(BEGUN, null)?.let { half -> runCatching { DocumentsContract.deleteDocument(app.contentResolver, Uri.parse(half)) } }
                val parent = DocumentsContract.buildDocumentUriUsingTree(folder, DocumentsContract.getTreeDocumentId(folder))
                val to = DocumentsContract.createDocument(app.contentResolver, parent, "application/octet-stream", file.name)
                    ?: throw FileNotFoundException(file.name)
                chosen.edit().putString(BEGUN, to.toString()).commit()
                copy(file, to, Before.Nothing)
                // Meanwhile another folder may have been picked, to which it has not been copied.
                if (chosen.getString(FOLDER, null) != folder.toString()) {
                    chosen.edit().remove(BEGUN).commit()
                    return@withContext
                }
                chosen.edit().putString(COPIED, file.name).putString(COPY + file.name, to.toString()).remove(BEGUN).commit()
                thin(file.name)
            }
        }
    }

    /** The copies that this phone made in that folder, by name, with their addresses. Another phone may have copies there too. */
    private fun copies(): Map<String, String> =
        chosen.all.filterKeys { it.startsWith(COPY) }.entries.associate { (key, place) -> key.removePrefix(COPY) to place.toString() }

    /** After a complete copy, removes the ones that are superfluous by the core's rule. One that can't be removed now is removed later. */
    private fun thin(made: String) {
        val copies = copies()
        for (name in superfluousCopies(copies.keys.toList(), made)) {
            val gone = try {
                // Android 8 returns false where later versions throw.
                DocumentsContract.deleteDocument(app.contentResolver, Uri.parse(copies[name]))
            } catch (already: FileNotFoundException) {
                true
            } catch (notNow: RuntimeException) {
                false
            }
            if (gone) chosen.edit().remove(COPY + name).commit()
        }
    }

    /** Only copies of ours are removed: a backup that was looked into stays. */
    override fun finished(path: String) {
        val file = File(path)
        if (file.parentFile == incoming(app)) file.delete()
    }

    /** What was at a place before a file is written there. */
    private sealed interface Before {
        /** Nothing: the file is new. */
        object Nothing : Before

        /** Another file, of which this is a copy. */
        class Held(val copy: File) : Before

        /** Something that can't be read now, as in a cloud without a signal. */
        object Unknown : Before
    }

    /**
     * Writes the whole file and hands it to the storage before it reports success. If that fails, a file that was there
     * before gets its old content back as far as the provider allows, and is never deleted; a new file is removed.
     */
    private suspend fun copy(file: File, to: Uri, before: Before) = withContext(Dispatchers.IO) {
        try {
            write(to) { out -> pour(file.inputStream(), out) }
        } catch (failed: Exception) {
            when (before) {
                Before.Nothing -> runCatching { DocumentsContract.deleteDocument(app.contentResolver, to) }
                is Before.Held -> runCatching { write(to) { out -> pour(before.copy.inputStream(), out) } }
                Before.Unknown -> Unit
            }
            throw failed
        }
    }

    /** Writes a file where the user has picked a place, which may be another file's. */
    private suspend fun copy(file: File, to: Uri) = withContext(Dispatchers.IO) {
        val before = before(to)
        val held = (before as? Before.Held)?.copy
        chosen.edit().putString(HALF, to.toString()).apply {
            if (before != Before.Unknown) putString(BEFORE, held?.path.orEmpty())
        }.commit()
        try {
            copy(file, to, before)
        } finally {
            held?.delete()
            chosen.edit().remove(HALF).remove(BEFORE).commit()
        }
    }

    private fun before(at: Uri): Before {
        val aside = File.createTempFile("before", null, app.cacheDir)
        val held = runCatching {
            app.contentResolver.openInputStream(at)?.use { from -> aside.outputStream().use { from.copyTo(it) } }
        }.getOrNull()
        if (held != null && held > 0) return Before.Held(aside)
        aside.delete()
        return if (held == null) Before.Unknown else Before.Nothing
    }

    private fun write(to: Uri, pour: (OutputStream) -> Unit) {
        // Truncated first: "w" alone leaves the end of a longer file in place.
        app.contentResolver.openFileDescriptor(to, "wt")?.use { opened ->
            java.io.FileOutputStream(opened.fileDescriptor).use { out ->
                pour(out)
                out.flush()
                runCatching { out.fd.sync() } // A provider in the cloud has nothing to sync.
            }
        } ?: throw FileNotFoundException(to.toString())
    }

    internal companion object {
        const val FOLDER = "folder"

        /** The backup that was copied last to that folder, by its name. */
        private const val COPIED = "copied"

        /** A copy that was begun, and is whole once this is gone. */
        const val BEGUN = "begun"

        /** Prefix of the preference that keeps the address of a copy. */
        private const val COPY = "copy:"
        /** A file is being made or passed on. */
        const val UNFINISHED = "unfinished"

        /** A place that is being written to, and the copy of what was there: none if that is not known, empty if there was nothing. */
        const val HALF = "half"
        const val BEFORE = "before"
        private const val OLD_MS = 24 * 60 * 60_000L
        private const val TO_SAVE = "to-save"

        /** A day's file has some hundred kilobytes, and a log of years some hundred megabytes; both sizes are choices. */
        private const val SMALL = 4L shl 20
        private const val LOGS_ROOM = 64L shl 20
        private const val PART = 256 shl 10

        /** Copies a file of another app to a place where the core can read it; its name does not matter. */
        suspend fun take(context: Context, from: Uri): String = explained {
            withContext(Dispatchers.IO) {
                val folder = incoming(context).apply { mkdirs() }
                // Another file may be being imported at this moment, so only old ones are deleted.
                val old = System.currentTimeMillis() - OLD_MS
                folder.listFiles().orEmpty().filter { it.lastModified() < old }.forEach { it.delete() }
                val to = File.createTempFile("file", null, folder)
                val stream = context.contentResolver.openInputStream(from) ?: throw FileNotFoundException(from.toString())
                try {
                    to.outputStream().use { pourWithin(folder, stream, it) }
                } catch (failed: Exception) {
                    // On a full phone the half of it would take the room that the log needs.
                    to.delete()
                    throw failed
                }
                to.path
            }
        }

        private fun incoming(context: Context) = context.cacheDir.resolve("incoming")

        private fun pour(from: InputStream, to: OutputStream) = from.use { it.copyTo(to) }

        /**
         * The same for a file of which nobody knows what it is. A film that was shared by mistake would fill the phone, and the log
         * could not take the next entry; so what is no small file stops before that.
         */
        private fun pourWithin(folder: File, from: InputStream, to: OutputStream) = from.use {
            val part = ByteArray(PART)
            var copied = 0L
            while (true) {
                val read = it.read(part)
                if (read < 0) break
                copied += read
                if (copied > SMALL && StatFs(folder.path).availableBytes < LOGS_ROOM) throw IOException("ENOSPC")
                to.write(part, 0, read)
            }
        }

        /** Turns a failure with another app's file into words that say what to do. */
        private suspend fun <T> explained(task: suspend () -> T): T =
            try {
                task()
            } catch (refused: SecurityException) {
                throw FileTrouble(shellWords(language()).fileNotAllowed)
            } catch (gone: FileNotFoundException) {
                throw FileTrouble(shellWords(language()).fileGone)
            } catch (failed: IOException) {
                val full = (failed.cause as? ErrnoException)?.errno == OsConstants.ENOSPC || "ENOSPC" in failed.message.orEmpty()
                throw FileTrouble(if (full) shellWords(language()).fileNoSpace else shellWords(language()).fileFailed)
            } catch (odd: RuntimeException) {
                if (odd is CancellationException) throw odd
                // A provider may throw anything, and its process may die under the call.
                throw FileTrouble(if (odd is IllegalArgumentException) shellWords(language()).fileGone else shellWords(language()).fileFailed)
            }
    }
}
