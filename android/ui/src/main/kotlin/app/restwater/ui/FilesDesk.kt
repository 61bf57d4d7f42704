package app.restwater.ui

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import app.restwater.core.IncomingView
import app.restwater.core.Moment
import app.restwater.core.Outgoing
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.Work
import kotlinx.coroutines.CancellationException
import kotlinx.coroutines.CoroutineDispatcher
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.Job
import kotlinx.coroutines.delay
import kotlinx.coroutines.launch
import kotlinx.coroutines.sync.Mutex
import kotlinx.coroutines.sync.withLock
import kotlinx.coroutines.withContext

/** What a shell does with files; the core makes and reads them. Failures are [FileTrouble]s. */
interface FilePorts {
    /** Whether the system can pass a file on to another app or phone. */
    val shares: Boolean get() = true

    /** Whether copies of backups can go to a folder of the user. */
    val copiesBackups: Boolean get() = false

    /** Passes a file on to another app or phone. */
    suspend fun handOn(file: Outgoing)

    /** Passes a text on to another app. */
    suspend fun handOn(text: String) = Unit

    /** Saves a file in a place that the user picks; returns whether they picked one. */
    suspend fun save(file: Outgoing): Boolean

    /** Has the user pick a folder for copies of backups; returns its name, or null if they cancelled. */
    suspend fun pickFolder(): String? = null

    /** Copies a backup to that folder, if one was picked and this one isn't there yet. */
    suspend fun copyBackup(path: String) = Unit

    /** A file is being made and passed on until it has [ended]: the system may end the process before. */
    suspend fun begun() = Unit
    fun ended() = Unit

    /** A file that was picked is not needed any more: its copy can go. Every other file stays. */
    fun finished(path: String) = Unit

    /** Lets the user pick a file; returns a path that the core can read, or null if they cancelled. */
    suspend fun pick(): String?
}

/** Why a file could not be passed on or picked, in words for the user. */
class FileTrouble(text: String) : Exception(text)

/** A shell without files, for pictures and tests. */
object NoFiles : FilePorts {
    override suspend fun handOn(file: Outgoing) = Unit
    override suspend fun save(file: Outgoing) = false
    override suspend fun pick(): String? = null
}

/** Which page of the Files screen is open. */
enum class FilesPage { SEND, INCOMING, IMPORTS, BACKUPS }

/**
 * Long work on files, one task at a time, with its progress. On a phone it outlives the activity that asked for it, so
 * [scope] is the application's there.
 */
class FilesDesk(
    private val core: Restwater,
    private val now: () -> Moment,
    private val scope: CoroutineScope,
    private val ports: FilePorts,
    /** Makes the calls to the core that wait for it; those that take long wait by themselves. */
    private val worker: CoroutineDispatcher = Dispatchers.IO,
) {
    /** Called with notices about the work; the open screens listen. */
    var heard: suspend (notice: String) -> Unit = {}

    var page by mutableStateOf(FilesPage.SEND)

    /** What the picked file would bring, or has brought. */
    var incoming by mutableStateOf<IncomingView?>(null)
        private set

    /** Whether that file has been imported. */
    var taken by mutableStateOf(false)
        private set

    /** The user's name for where it came from. */
    var source by mutableStateOf("")

    /** Entries processed by the running work; null if none is running. */
    var progress by mutableStateOf<ULong?>(null)
        private set

    /** How many files of other apps are still to come. */
    var fetching by mutableStateOf(0)
        private set

    /** Why the last copy of a backup did not reach the folder, or empty if it did. */
    var copyTrouble by mutableStateOf("")
        private set

    /** The file that is being looked at. */
    var path: String? = null
        private set
    private var taking = false

    /** Whether the page of the file was left during its import. */
    var leaving = false
        private set
    private var work: Work? = null
    private var cancelled: Work? = null
    private val turn = Mutex()

    /** Whether work is running. */
    val busy get() = work != null

    /** Makes the file that the screen asks for and passes it on. */
    fun send() = make { file ->
        ports.handOn(file)
        heard(file.says)
    }

    /** Passes a text on. */
    fun share(text: String) = asking { ports.handOn(text) }

    /** Makes the file that the screen asks for and saves it in a place that the user picks. */
    fun save() = make { file -> if (ports.save(file)) saved(file) }

    /** Makes that file, and does this with it. If the system ends the process before the end, the next one finds the mark. */
    private fun make(pass: suspend (Outgoing) -> Unit) = run { work ->
        ports.begun()
        val file = orUnmarked { core.send(now(), work) }
        asking {
            orUnmarked { pass(file) }
            ports.ended()
        }
    }

    /** A failure is reported at once, so the next process need not report it. */
    private suspend fun <T> orUnmarked(task: suspend () -> T): T =
        try {
            task()
        } catch (gone: CancellationException) {
            throw gone
        } catch (failed: Exception) {
            ports.ended()
            throw failed
        }

    /** A file was saved, even if the system ended the app while the user picked a place. */
    suspend fun saved(file: Outgoing) = heard(file.says)

    /** Whether the system can pass a file on. */
    val shares get() = ports.shares

    /** Whether copies of backups can go to a folder of the user. */
    val copiesBackups get() = ports.copiesBackups

    /** Has the user pick a folder for copies of backups. */
    fun pickFolder() = asking { ports.pickFolder()?.let { folderPicked(it) } }

    /** A folder was picked: the backup that is there goes to it at once. */
    suspend fun folderPicked(name: String) {
        heard(name)
        copyLatest()
    }

    /** The backup made last is copied unless it has been: the last copy may have failed. */
    private suspend fun copyLatest() {
        withContext(worker) { core.latestBackup() }?.let { ports.copyBackup(it) }
        copyTrouble = ""
    }

    /** The same, and why it failed if it did. */
    private suspend fun copied(): String? =
        try {
            copyLatest()
            null
        } catch (trouble: FileTrouble) {
            trouble.message.orEmpty().also { copyTrouble = it }
        }

    /** Lets the user pick a file and shows what it contains. */
    fun pick() = asking { ports.pick()?.let(::offer) }

    /** Shows what a file from elsewhere contains (opened with the app, or a backup), after the work in progress. */
    fun offer(file: String) = run(waits = true) { work -> look(file, work) }

    /** The same for a file that has to be fetched first, which may take long: the keys work meanwhile. */
    fun offer(fetch: suspend () -> String) = asking {
        fetching += 1
        try {
            offer(fetch())
        } finally {
            fetching -= 1
        }
    }

    // Until the answer is there, an earlier file stays the one that is shown and that IMPORT takes in.
    private suspend fun look(file: String, work: Work) {
        val seen = try {
            core.lookInto(file, now(), work)
        } catch (refused: RestwaterException.Failed) {
            ports.finished(file)
            throw refused
        }
        path?.takeIf { it != file }?.let(ports::finished)
        path = file
        taken = false
        incoming = seen
        page = FilesPage.INCOMING
        heard("")
    }

    /** Imports the file that was looked at. */
    fun takeIn() = run { work ->
        val file = path ?: return@run
        taking = true
        try {
            incoming = core.takeIn(file, source, now(), work)
            taken = true
            heard("")
        } finally {
            taking = false
            if (leaving && !taken) discard()
            leaving = false
        }
    }

    /** Discards the file that was looked at. An import that is under way is cancelled; if it was too late, its result stays. */
    fun leave() {
        cancel()
        if (taking) leaving = true else discard()
    }

    private fun discard() {
        path?.let(ports::finished)
        path = null
        incoming = null
        source = ""
        page = FilesPage.SEND
    }

    /** Makes a backup now. Its copy is not part of this work, since the folder may wait for its network. */
    fun backUp() = run { work ->
        val made = core.backUp(now(), work) ?: return@run
        heard(made.says)
        // A failure is said at once, unless the page was left by then.
        asking { copied()?.let { if (page == FilesPage.BACKUPS) heard(it) } }
    }

    /**
     * Makes a backup if one is due; the shell calls this when it goes to the background. The Bank is for answers to taps, so a
     * copy that fails is reported where copies are made.
     */
    suspend fun backUpIfDue() {
        core.backUpIfDue(now())
        copied()
    }

    /** Checks the whole log. */
    fun lookOver() = run { heard(core.lookOver()) }

    /** Cancels the running work; returns false if there is none, or if it was cancelled before. */
    fun cancel(): Boolean {
        val running = work?.takeIf { it !== cancelled } ?: return false
        running.cancel()
        cancelled = running
        return true
    }

    /** A key tapped while work is running does nothing; work that comes from elsewhere [waits] its turn. */
    private fun run(waits: Boolean = false, task: suspend (Work) -> Unit) {
        if (work != null && !waits) return
        val started = Work()
        if (work == null) work = started
        scope.launch {
            turn.withLock {
                work = started
                doing(started, task)
            }
        }
    }

    /** While the user picks, which may take a long time, other work goes on. */
    private fun asking(task: suspend () -> Unit) {
        scope.launch { explained(task) }
    }

    private suspend fun explained(task: suspend () -> Unit) =
        try {
            task()
        } catch (refused: RestwaterException.Failed) {
            heard(refused.text)
        } catch (trouble: FileTrouble) {
            heard(trouble.message.orEmpty())
        }

    private suspend fun doing(started: Work, task: suspend (Work) -> Unit) {
        val watch = watch(started)
        try {
            explained { task(started) }
        } finally {
            watch.cancel()
            progress = null
            work = null
        }
    }

    /** Shows the progress after a moment: most work is done before anybody could read it. */
    private fun watch(work: Work): Job = scope.launch {
        while (true) {
            delay(WATCH_MS)
            progress = work.done()
        }
    }

    private companion object {
        const val WATCH_MS = 200L
    }
}
