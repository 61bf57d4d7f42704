package app.restwater.apk

import app.restwater.core.Action
import app.restwater.core.FanGlass
import app.restwater.core.Moment
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.Which
import app.restwater.core.Work
import kotlinx.coroutines.runBlocking

// A session over the bindings, for ./dev check apk: what comes back of every screen, of a refused tap and of long work is
// printed. It runs once as it was compiled and once after R8, and must print the same.

private const val START = 1_768_640_000_000

private fun at(seconds: Long) = Moment(START + seconds * 1_000, 0, "Europe/London", 1_000_000 + seconds * 1_000, "one boot", 0u)

/** What differs from run to run or by renaming: the ids of entries, and the names of objects that have no text of their own. */
private val own = Regex("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}|[\\w.$]+@[0-9a-f]+")

private fun show(name: String, value: Any?) = println("$name ${own.replace(value.toString(), "_")}")

fun main(arguments: Array<String>) {
    val core = Restwater.open(arguments[0], at(0), "en-GB")
    val taps =
        listOf(
            Action.StartSession(null), Action.Cast(1u), Action.Bite(1u), Action.Landed(1u, null), Action.Cast(1u), Action.Liner(1u),
            Action.WoundIn(1u), Action.Cast(1u), Action.Bite(1u), Action.Lost(1u),
        )
    taps.forEachIndexed { n, tap -> show("tap $n", core.act(tap, at(n * 240L + 60))) }
    for (which in Which.entries) show("$which", core.screen(which, at(3_000)))
    show("swim", core.swimScene(at(3_000), FanGlass(1080.0, 1200.0, 16.0, 1.0, false)))
    try {
        core.act(Action.WoundIn(1u), at(3_060))
        println("wound in with nothing out was taken")
    } catch (refused: RestwaterException) {
        show("refused", refused.message)
    }
    runBlocking {
        show("looked over", core.lookOver())
        val sent = Work().use { core.send(at(3_120), it) }
        show("sent", sent.mediaType)
        show("looked into", Work().use { core.lookInto(sent.path, at(3_180), it) })
    }
    core.close()
}
