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
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Job
import kotlinx.coroutines.delay
import kotlinx.coroutines.launch
import kotlinx.coroutines.sync.Mutex
import kotlinx.coroutines.sync.withLock

/** What a shell does with files; the core makes and reads them. What goes wrong is a [FileTrouble]. */
interface FilePorts {
    /** Whether the system has a way to hand a file on to another app or phone. */
    val shares: Boolean get() = true

    /** Whether copies of backups can go to a folder of the user's. */
    val copiesBackups: Boolean get() = false

    /** Hands a file on to another app or phone. */
    suspend fun handOn(file: Outgoing)

    /** Hands a text on to another app. */
    suspend fun handOn(text: String) = Unit

    /** Saves a file in a place of the user's; whether they picked one. */
    suspend fun save(file: Outgoing): Boolean

    /** Has the user pick a folder for copies of backups; its name, or null where they changed their mind. */
    suspend fun pickFolder(): String? = null

    /** Copies a backup there, where a folder was picked. */
    suspend fun copyBackup(path: String) = Unit

    /** Lets the user pick a file; where the core can read it, or null where they changed their mind. */
    suspend fun pick(): String?
}

/** Why a file could not be handed on or picked, in words for the user. */
class FileTrouble(text: String) : Exception(text)

/** A shell without files: what a picture or a test needs. */
object NoFiles : FilePorts {
    override suspend fun handOn(file: Outgoing) = Unit
    override suspend fun save(file: Outgoing) = false
    override suspend fun pick(): String? = null
}

/** Which page of the Files screen is open. */
enum class FilesPage { SEND, INCOMING, IMPORTS, BACKUPS }

/**
 * Long work on files, one at a time, with its progress. On a phone it outlives the activity that asked for it, so [scope]
 * is then the application's.
 */
class FilesDesk(
    private val core: Restwater,
    private val now: () -> Moment,
    private val scope: CoroutineScope,
    private val ports: FilePorts,
) {
    /** Told what there is to say of the work; the screens that are there listen. */
    var heard: suspend (notice: String) -> Unit = {}

    var page by mutableStateOf(FilesPage.SEND)

    /** What the file picked would bring, or has brought. */
    var incoming by mutableStateOf<IncomingView?>(null)
        private set

    /** Whether that file is in by now. */
    var taken by mutableStateOf(false)
        private set

    /** What the user calls where it came from. */
    var source by mutableStateOf("")

    /** Entries dealt with by the work that runs; null where none does. */
    var progress by mutableStateOf<ULong?>(null)
        private set

    /** The file that is looked into. */
    var path: String? = null
        private set
    private var work: Work? = null
    private val turn = Mutex()

    /** Whether work runs. */
    val busy get() = work != null

    /** Makes the file the screen asks for and hands it on. */
    fun send() = run { work ->
        val file = core.send(now(), work)
        ports.handOn(file)
        heard("${file.says}: ${file.name}")
    }

    /** Hands a text on. */
    fun share(text: String) = asking { ports.handOn(text) }

    /** Makes the file the screen asks for and saves it in a place of the user's. */
    fun save() = run { work ->
        val file = core.send(now(), work)
        asking { if (ports.save(file)) saved(file) }
    }

    /** A file was saved, if only after the system had ended the app while the user picked a place. */
    suspend fun saved(file: Outgoing) = heard("${file.says}: ${file.name}")

    /** Whether the system can hand a file on. */
    val shares get() = ports.shares

    /** Whether copies of backups can go to a folder of the user's. */
    val copiesBackups get() = ports.copiesBackups

    /** Has the user pick a folder for copies of backups. */
    fun pickFolder() = asking { ports.pickFolder()?.let { heard(it) } }

    /** Lets the user pick a file and looks into it. */
    fun pick() = asking { ports.pick()?.let(::offer) }

    /** Looks into a file that came from elsewhere, after what is under way: opened with the app, or a backup. */
    fun offer(file: String) = run(waits = true) { work -> look(file, work) }

    /** The same, while what is to be had of it is still to be fetched. */
    fun offer(fetch: suspend () -> String) = run(waits = true) { work -> look(fetch(), work) }

    private suspend fun look(file: String, work: Work) {
        path = file
        taken = false
        incoming = core.lookInto(file, now(), work)
        page = FilesPage.INCOMING
        heard("")
    }

    /** Takes in what was looked into. */
    fun takeIn() = run { work ->
        val file = path ?: return@run
        incoming = core.takeIn(file, source, now(), work)
        taken = true
        heard("")
    }

    /** Leaves what was looked into where it is. */
    fun leave() {
        path = null
        incoming = null
        source = ""
        page = FilesPage.SEND
    }

    /** Makes a backup now. */
    fun backUp() = run { work ->
        val made = core.backUp(now(), work) ?: return@run
        ports.copyBackup(made.path)
        heard(made.says)
    }

    /** Makes a backup where one is due; the shell asks when it goes to the background. */
    suspend fun backUpIfDue() {
        core.backUpIfDue(now())?.let { ports.copyBackup(it.path) }
    }

    /** Looks the whole log over. */
    fun lookOver() = run { heard(core.lookOver()) }

    /** Gives up the work that runs. */
    fun giveUp() {
        work?.giveUp()
    }

    /** A key tapped while work runs asks for nothing more; what comes from elsewhere [waits] its turn. */
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

    /** While the user picks, which may take as long as they like, other work goes on. */
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

    /** Shows how far the work is, from a moment on: most is done before anybody could read it. */
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
