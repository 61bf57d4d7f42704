package app.restwater.android

import android.app.Application
import android.net.Uri
import android.os.Bundle
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.lifecycle.AndroidViewModel
import androidx.lifecycle.SavedStateHandle
import androidx.lifecycle.viewModelScope
import app.restwater.core.ErrorKind
import app.restwater.ui.FilesPage
import app.restwater.ui.RestwaterState
import app.restwater.ui.Showing
import kotlinx.coroutines.CompletableDeferred
import kotlinx.coroutines.launch

/** What the activity shows. */
internal sealed interface Stage {
    /** The log is being opened. */
    data object Opening : Stage

    /** It could not be opened; a damaged one can be salvaged. */
    class Refused(val text: String, val damaged: Boolean) : Stage

    /** The screens. */
    class Ready(val state: RestwaterState) : Stage
}

/** What the activity shows, kept when the phone is turned. Which screen is open is also kept when the process ends. */
internal class RestwaterModel(app: Application, private val saved: SavedStateHandle) : AndroidViewModel(app) {
    private val phone get() = getApplication<RestwaterApplication>()
    private val ready = CompletableDeferred<RestwaterState>()

    var stage by mutableStateOf<Stage>(Stage.Opening)
        private set

    /** The file of another app that was being fetched when the process was ended. */
    private var fetching = saved.get<Uri>(FETCHING)

    /** That file, once. */
    fun fetchAgain(): Uri? = fetching.also { fetching = null }

    /** Fetches a file of another app. Whoever leaves while the log can't be opened finds it on the Files screen later. */
    fun fetch(from: Uri) {
        saved[FETCHING] = from
        phone.scope.launch {
            phone.opened().desk.offer {
                try {
                    PhoneFiles.take(phone, from)
                } finally {
                    saved.remove<Uri>(FETCHING)
                }
            }
        }
    }

    /** Does this with the screens once they exist; while the log can't be opened it waits, for as long as the activity is there. */
    fun onReady(task: suspend (RestwaterState) -> Unit) {
        viewModelScope.launch {
            val state = ready()
            // What has begun goes on whatever happens to the activity.
            phone.scope.launch { task(state) }
        }
    }

    /** Whether an alarm is shown over the lock screen. */
    var overLock = false

    init {
        phone.open()
        take(phone.opening.value)
        viewModelScope.launch { phone.opening.collect(::take) }
        saved.setSavedStateProvider(OPEN, ::bundle)
    }

    private fun take(opening: Opening) {
        stage = when (opening) {
            Opening.Working -> Stage.Opening
            is Opening.Refused -> Stage.Refused(opening.why.text, opening.why.kind == ErrorKind.DAMAGED)
            is Opening.Open -> (stage as? Stage.Ready) ?: Stage.Ready(screens(opening))
        }
    }

    private fun screens(open: Opening.Open): RestwaterState {
        // A tap reaches the log whatever happens to the screen, so its scope is the application's.
        val state = with(phone) {
            RestwaterState(open.core, { now() }, scope, worker, files, lockScreen, receiver, choices, feel, open.settings, open.desk, keptDrafts.drafts)
        }
        val before = saved.get<Bundle>(OPEN)
        if (before != null) reopen(state, before) else viewModelScope.launch { state.greet() }
        phone.salvageSaid()?.let(state::say)
        viewModelScope.launch { phone.files.unfinished()?.let(state::say) }
        ready.complete(state)
        return state
    }

    /** The screens, once they exist. */
    suspend fun ready(): RestwaterState = ready.await()

    /** Saves what can be saved of a damaged log. */
    fun salvage() = phone.salvage()

    private fun bundle(): Bundle {
        val state = (stage as? Stage.Ready)?.state ?: return saved.get<Bundle>(OPEN) ?: Bundle()
        return Bundle().apply {
            putString(SHOWING, state.showing.name)
            putInt(PAGE, state.page)
            putString(SUBJECT, state.subject)
            putString(DESK, state.desk.page.name)
            putString(SOURCE, state.desk.source)
            putString(FILE, state.desk.path)
        }
    }

    /** Restores the screen, page and file after the process was ended. */
    private fun reopen(state: RestwaterState, from: Bundle) {
        // What an earlier version saved does not say what its screen was about.
        val about = from.getString(SUBJECT).orEmpty()
        Showing.entries.find { it.name == from.getString(SHOWING) }?.let { state.reopen(it, from.getInt(PAGE), about) }
        // If the desk outlived the activity, its state is newer than the saved one.
        if (state.desk.page != FilesPage.SEND || state.desk.busy) return
        val page = FilesPage.entries.find { it.name == from.getString(DESK) } ?: return
        val file = from.getString(FILE)
        if (page != FilesPage.INCOMING) state.desk.page = page else file?.let { state.desk.offer(it) }
        state.desk.source = from.getString(SOURCE).orEmpty()
    }

    private companion object {
        const val OPEN = "open"
        const val SHOWING = "showing"
        const val PAGE = "page"
        const val SUBJECT = "subject"
        const val DESK = "desk"
        const val SOURCE = "source"
        const val FILE = "file"
        const val FETCHING = "fetching"
    }
}
