package app.restwater.desktop

import app.restwater.core.Action
import app.restwater.core.Restwater
import app.restwater.core.UniffiRustCallStatus
import app.restwater.core.Which
import app.restwater.core.coreVersion
import com.sun.jna.Native
import java.io.File

/** The empty function of tests/empty, called exactly as uniffi's Kotlin does. */
private object EmptyLibrary {
    init {
        Native.register(EmptyLibrary::class.java, "restwater_empty")
    }

    external fun uniffi_restwater_empty_fn_func_nothing(uniffi_out_err: UniffiRustCallStatus)

    fun nothing() {
        val status = UniffiRustCallStatus()
        uniffi_restwater_empty_fn_func_nothing(status)
        check(status.isSuccess())
    }
}

/** What a call costs: alternating with an empty call, in batches because the clock's step is as long as a call. */
internal fun ffi(folder: File) {
    val core = Restwater.open(folder.path, moment(0), "en-GB")
    core.act(Action.StartSession(null), moment(1))
    core.act(Action.Cast(1u), moment(2))
    val empty = mutableListOf<Double>()
    val calls = listOf<() -> Unit>({ coreVersion() }, { core.screen(Which.BANK, moment(60)) })
    val times = calls.map { mutableListOf<Double>() }
    repeat(BATCHES) {
        empty += batch { EmptyLibrary.nothing() }
        calls.forEachIndexed { i, call -> times[i] += batch(call) }
    }
    core.close()
    val none = empty.drop(BATCHES / 2).sorted().median()
    row("ffi: an empty call through JNA", ms(none), "<= 20 us", none <= 0.02)
    val (word, record) = times.map { it.drop(BATCHES / 2).sorted().median() }
    row("ffi: a word read through JNA", ms(word), "<= 50 us", word <= 0.05, "${ms(none)} empty call", word / none)
    row("ffi: the Bank record read through JNA", ms(record), "<= 1 frame", record <= FRAME_MS, "${ms(none)} empty call", record / none)
}

/** Milliseconds per call. */
private fun batch(call: () -> Unit) = millis { repeat(CALLS) { call() } } / CALLS

private const val BATCHES = 60
private const val CALLS = 200
