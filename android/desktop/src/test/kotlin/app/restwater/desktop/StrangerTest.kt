package app.restwater.desktop

import app.restwater.core.BankState
import app.restwater.ui.Showing
import app.restwater.ui.tag
import java.io.File
import kotlin.test.Test
import kotlin.test.assertEquals
import kotlin.test.assertTrue

/** Follows `docs/first-cast.md`, as somebody would who has never seen the app. */
class StrangerTest {
    /** The rows of the table: the word on the key, and what the screen says afterwards. */
    private val walk = File("../../docs/first-cast.md").readLines().filter { it.startsWith("| **") }.map { row ->
        val (key, says) = row.trim('|').split('|').map { it.trim() }
        key.trim('*') to says.trim('"')
    }

    @Test fun thePageOfAFirstCastIsPlayed() = Bankside.on {
        greet()
        val first = checkNotNull(state.welcome).leaves.first()
        for ((key, says) in walk) {
            when (state.showing) {
                Showing.WELCOME -> tapOn("key-${first.keys.first { it.label == key }.tag}")
                else -> tap(bank.keys.first { it.label == key && it.enabled }.key)
            }
            assertEquals(Showing.BANK, state.showing, key)
            val said = listOf(state.notice, bank.advice.headline, bank.advice.detail, bank.rods.single().since).joinToString(" ")
            assertTrue(says in said, "after $key: $said")
            wait(minutes = 15)
        }
        assertEquals(BankState.LANDED, bank.state)
        assertEquals(listOf("START", "CAST", "BITE", "LANDED"), walk.map { it.first }, "a tap for each thing that happens and one to begin")
    }
}
