package app.restwater.android

import androidx.activity.ComponentActivity
import androidx.activity.result.contract.ActivityResultContract
import kotlinx.coroutines.CompletableDeferred

/** A question to the system whose answer is waited for. */
internal class Asking<I, O>(activity: ComponentActivity, contract: ActivityResultContract<I, O>) {
    private var answer: CompletableDeferred<O>? = null
    private val launcher = activity.registerForActivityResult(contract) { answer?.complete(it) }

    suspend fun ask(question: I): O {
        val waiting = CompletableDeferred<O>()
        answer = waiting
        launcher.launch(question)
        return waiting.await()
    }
}
