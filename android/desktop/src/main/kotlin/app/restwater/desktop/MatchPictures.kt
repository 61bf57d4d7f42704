package app.restwater.desktop

import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import app.restwater.core.BankLayout
import app.restwater.core.BankState
import app.restwater.core.BankView
import app.restwater.core.DayTap
import app.restwater.core.Glass
import app.restwater.core.MatchView
import app.restwater.core.PadAsk
import app.restwater.core.PadWords
import app.restwater.core.Screen
import app.restwater.core.Which
import app.restwater.core.bankLayout
import app.restwater.core.matchLayout
import app.restwater.ui.FishScreen
import app.restwater.ui.Ink
import app.restwater.ui.LocalInk
import app.restwater.ui.LocalPxPerMm
import app.restwater.ui.MatchPage
import app.restwater.ui.MatchScreen
import app.restwater.ui.ofPages
import app.restwater.ui.WeightScreen

/**
 * Every page of the Match screen by day, by night, for the left hand and at twice the text size; none if no match is
 * set.
 */
fun matchPictures(played: Played, tap: DayTap, bank: BankView, write: (String, ByteArray) -> Unit) {
    val glass = played.glass
    val view = (played.core.screen(Which.MATCH, tap.at) as Screen.Match).v1
    val pages = if (view.weighIn == null) listOf(MatchPage.NOW).filter { view.begin != null } else MatchPage.entries
    for (page in pages) {
        fun draw(kind: String, on: Glass, ink: Ink) = write("match-${page.name.lowercase()}-$kind", matchPicture(view, bank, on, ink, page, played.words))
        draw("day", glass, Ink.Day)
        draw("night", glass, Ink.Night)
        draw("left", glass.copy(leftHanded = true), Ink.Day)
        draw("large-text", glass.copy(textScale = 2.0), Ink.Day)
    }
}

/** The screen of the latest fish and its number pad in the same variants; none before a fish is landed. */
fun fishPictures(played: Played, tap: DayTap, bank: BankView, write: (String, ByteArray) -> Unit) {
    val (core, glass, words) = Triple(played.core, played.glass, played.words)
    if (bank.state != BankState.LANDED) return
    val fish = (core.screen(Which.FISH, tap.at) as Screen.Fish).v1
    val weight = (core.screen(Which.WEIGHT, tap.at) as Screen.Weight).v1
    fun draw(kind: String, on: Glass, ink: Ink) {
        write("fish-$kind", fishPicture(bank, on, ink) { layout -> FishScreen(fish, matchLayout(on), layout, words, "", { }) { } })
        write("weight-$kind", fishPicture(bank, on, ink) { layout -> WeightScreen(weight, matchLayout(on), layout, words, "", { }) { } })
    }
    draw("day", glass, Ink.Day)
    draw("night", glass, Ink.Night)
    draw("left", glass.copy(leftHanded = true), Ink.Day)
    draw("large-text", glass.copy(textScale = 2.0), Ink.Day)
}

private fun fishPicture(bank: BankView, glass: Glass, ink: Ink, screen: @Composable (BankLayout) -> Unit): ByteArray = picture(glass) {
    CompositionLocalProvider(LocalInk provides ink, LocalPxPerMm provides glass.pxPerMm.toFloat()) {
        screen(bankLayout(glass, PadAsk(bank.state, bank.rods.size.coerceIn(1, 3).toUByte(), 0u)).ofPages())
    }
}

private fun matchPicture(view: MatchView, bank: BankView, glass: Glass, ink: Ink, page: MatchPage, words: PadWords): ByteArray = picture(glass) {
    CompositionLocalProvider(LocalInk provides ink, LocalPxPerMm provides glass.pxPerMm.toFloat()) {
        val layout = bankLayout(glass, PadAsk(bank.state, bank.rods.size.coerceIn(1, 3).toUByte(), 0u)).ofPages()
        MatchScreen(view, matchLayout(glass), layout, words, "", { }, page) { }
    }
}
