package app.restwater.android

import android.content.ActivityNotFoundException
import androidx.activity.ComponentActivity
import androidx.activity.result.ActivityResultLauncher
import androidx.activity.result.contract.ActivityResultContract
import androidx.lifecycle.DefaultLifecycleObserver
import androidx.lifecycle.LifecycleOwner
import kotlinx.coroutines.CompletableDeferred

/**
 * A request to the system that waits for its answer. The caller outlives the activity that made the request; if the
 * whole process was ended in between, the answer goes to [left].
 */
internal class Asking<I, O>(private val key: String, private val contract: ActivityResultContract<I, O>, private val left: (O) -> Unit = {}) {
    private var waiting: CompletableDeferred<O>? = null
    private var launcher: ActivityResultLauncher<I>? = null

    /** Registers an activity that can ask; to be called before it starts. */
    fun attach(activity: ComponentActivity) {
        val own = activity.activityResultRegistry.register(key, activity, contract, ::answered)
        activity.lifecycle.addObserver(object : DefaultLifecycleObserver {
            // There may be two, one of them in the task of an app that shared a file: the visible one asks.
            override fun onStart(owner: LifecycleOwner) {
                launcher = own
            }

            override fun onDestroy(owner: LifecycleOwner) {
                if (launcher === own) launcher = null
            }
        })
    }

    suspend fun ask(question: I): O {
        val answer = CompletableDeferred<O>()
        waiting?.cancel() // Asked again: nobody will answer the earlier request.
        waiting = answer
        val front = launcher ?: throw ActivityNotFoundException(key)
        front.launch(question)
        return answer.await()
    }

    private fun answered(answer: O) {
        val asked = waiting
        waiting = null
        if (asked == null) left(answer) else asked.complete(answer)
    }
}
