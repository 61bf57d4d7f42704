package app.restwater.desktop

import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.BankState
import app.restwater.core.BankView
import app.restwater.core.DayTap
import app.restwater.core.FilesTap
import app.restwater.core.FormChoice
import app.restwater.core.Glass
import app.restwater.core.Hand
import app.restwater.core.KeyTap
import app.restwater.core.LeavesView
import app.restwater.core.Moment
import app.restwater.core.PadAsk
import app.restwater.core.PadWords
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.Scheme
import app.restwater.core.Screen
import app.restwater.core.Settings
import app.restwater.core.SetupView
import app.restwater.core.SwimKey
import app.restwater.core.SwimKeyView
import app.restwater.core.TackleView
import app.restwater.core.Which
import app.restwater.core.Work
import app.restwater.core.bankLayout
import app.restwater.core.padWords
import app.restwater.core.readDay
import app.restwater.core.swimLayout
import app.restwater.ui.ChangesScreen
import app.restwater.ui.Ink
import app.restwater.ui.LeavesScreen
import app.restwater.ui.LocalInk
import app.restwater.ui.LocalPxPerMm
import app.restwater.ui.ScreenList
import app.restwater.ui.SetupScreen
import app.restwater.ui.SwimScreen
import app.restwater.ui.SwimTaps
import app.restwater.ui.TackleScreen
import app.restwater.ui.WaitsScreen
import app.restwater.ui.largeFan
import app.restwater.ui.ofPages
import app.restwater.ui.pagesOf
import app.restwater.ui.smallFan
import app.restwater.ui.swimPad
import java.io.File
import java.nio.file.Files
import java.util.Locale
import kotlin.system.exitProcess
import kotlinx.coroutines.runBlocking

/**
 * Plays a day file through the real core and draws the screens it asks for: `PlayKt DAY OUT [GLASS] [LANGUAGE]`, where GLASS
 * is WIDTHxHEIGHT@PX_PER_MM, such as 750x1334@12.84, and LANGUAGE a tag such as de-DE.
 */
fun main(args: Array<String>) {
    val glass = if (args.size > 2) glassOf(args[2]) else GLASS
    if (args.size !in 2..4 || glass == null) {
        System.err.println("usage: PlayKt DAY OUT [WIDTHxHEIGHT@PX_PER_MM] [LANGUAGE]")
        exitProcess(2)
    }
    try {
        val day = readDay(File(args[0]).readText())
        val language = args.getOrElse(3) { ENGLISH }
        // The pager asks the phone for its language.
        Locale.setDefault(Locale.forLanguageTag(language))
        play(day, File(args[1]), glass, language)
    } catch (refused: RestwaterException.Failed) {
        System.err.println("${args[0]}: ${refused.text}")
        exitProcess(1)
    }
}

/** What the pictures of a day are drawn with. */
class Played(val core: Restwater, val language: String, val glass: Glass, val out: File) {
    val words = padWords(language)

    fun bank(at: Moment) = (core.screen(Which.BANK, at) as Screen.Bank).v1
}

/** Taps the day into a log of its own and writes pictures and screens to [out]; prints the advice as it changes. */
fun play(day: List<DayTap>, out: File, glass: Glass = GLASS, language: String = ENGLISH) {
    val log = Files.createTempDirectory("restwater-day").toFile()
    try {
        val core = Restwater.open(log.path, day.first().at, language)
        val played = Played(core, language, glass, out)
        out.mkdirs()
        welcome(played, day.first())
        File(out, "screens.jsonl").bufferedWriter().use { screens ->
            var said = ""
            for (tap in day) {
                tap.action?.let { core.act(it, tap.at) }
                screens.appendLine(core.screenJson(Which.BANK, tap.at))
                val bank = played.bank(tap.at)
                val advice = "${bank.advice.headline} ${bank.advice.detail}"
                if (advice != said) println("${bank.header.clock}  $advice")
                said = advice
                tap.picture?.let { name -> pictures(played, tap, bank, name) }
            }
        }
        // A second apart: a tap that follows an opened screen at once is ignored.
        var last = day.last()
        for (part in listOf(::learning, ::leaves, ::deskPictures)) {
            last = last.aSecondLater()
            part(played, last)
        }
        entries(core, last, out)
        core.close()
    } finally {
        log.deleteRecursively()
    }
}

/** The cards of the first day, before anything is tapped. */
private fun welcome(played: Played, first: DayTap) = eachLeaf(played, first, listOf(Which.WELCOME))

/**
 * The Bank for the right hand by day and by night, for the left hand and at twice the text size; and the other screens.
 */
private fun pictures(played: Played, tap: DayTap, bank: BankView, name: String) {
    val (core, glass) = played.core to played.glass
    fun write(kind: String, png: ByteArray) = File(played.out, "$name-$kind.png").writeBytes(png)
    fun draw(kind: String, glass: Glass, hand: Hand, scheme: Scheme, page: Int = 0) =
        write(kind, bankPicture(bank, glass, Settings(hand, scheme), played.words, page) { on, place ->
            if (bank.rods.isEmpty()) null else core.swimScene(tap.at, smallFan(on, place))
        })
    draw("day", glass, Hand.RIGHT, Scheme.DAY)
    draw("night", glass, Hand.RIGHT, Scheme.NIGHT)
    draw("left", glass, Hand.LEFT, Scheme.DAY)
    draw("large-text", glass.copy(textScale = 2.0), Hand.RIGHT, Scheme.DAY)
    if (bank.rods.isNotEmpty()) {
        draw("more", glass, Hand.RIGHT, Scheme.DAY, page = 1)
        draw("more-large-text", glass.copy(textScale = 2.0), Hand.RIGHT, Scheme.DAY, page = 1)
        write("swim", swimPicture(core, tap.at, bank, glass, words = played.words))
        write("swim-night", swimPicture(core, tap.at, bank, glass, Ink.Night, played.words))
        write("swim-large-text", swimPicture(core, tap.at, bank, glass.copy(textScale = 2.0), words = played.words))
    }
    val setup = (core.screen(Which.SETUP, tap.at) as Screen.Setup).v1
    val tackle = (core.screen(Which.TACKLE, tap.at) as Screen.Tackle).v1
    matchPictures(played, tap, bank, ::write)
    fishPictures(played, tap, bank, ::write)
    if (bank.rods.isEmpty()) write("setup", setupPicture(setup, bank, glass, played.words)) else tacklePictures(tackle, bank, played, ::write)
}

/** Tackle, and the row with the most choices opened. */
private fun tacklePictures(tackle: TackleView, bank: BankView, played: Played, write: (String, ByteArray) -> Unit) {
    write("tackle", tacklePicture(tackle, bank, played.glass, played.words, null))
    val open = tackle.rows.maxByOrNull { it.choices.size }?.tag
    write("tackle-row", tacklePicture(tackle, bank, played.glass, played.words, open))
    write("tackle-row-large-text", tacklePicture(tackle, bank, played.glass.copy(textScale = 2.0), played.words, open))
}

/** Every file that the day can be exported as, and the record of every screen at its end. */
private fun entries(core: Restwater, last: DayTap, out: File) {
    Which.entries.forEach { which -> File(out, "${which.name.lowercase()}.json").writeText(core.screenJson(which, last.at)) }
    var tap = last
    for (form in FormChoice.entries) {
        tap = tap.aSecondLater()
        core.act(Action.Files(FilesTap.Form(form)), tap.at)
        val sent = runBlocking { core.send(tap.at, Work()) }
        File(sent.path).copyTo(File(out, sent.name), overwrite = true)
        println(sent.says)
    }
}

private fun DayTap.aSecondLater() = copy(at = at.copy(wallMs = at.wallMs + 1_000, monoMs = at.monoMs + 1_000))

/** What the day taught: every page of the Waits screen and of "Did it matter?" at its end. */
private fun learning(played: Played, last: DayTap) {
    val (core, words) = played.core to played.words
    val waits = (core.screen(Which.WAITS, last.at) as Screen.Waits).v1
    val changes = (core.screen(Which.CHANGES, last.at) as Screen.Changes).v1
    inEveryKind(played, last, listOf("day", "night", "large-text")) { kind, layout, write ->
        // Large text has more pages; beyond the last, the first is drawn again.
        val more = if (kind == "large-text") 2 else 1
        repeat((waits.charts.size + if (waits.forecast == null) 0 else 1).coerceAtLeast(1) * more) { page ->
            write("waits-${page + 1}") { WaitsScreen(waits, layout, words, "", { }, page) { } }
        }
        repeat(pagesOf(changes) * more) { page ->
            write("changes-${page + 1}") { ChangesScreen(changes, layout, words, "", { }, page) { } }
        }
    }
}

/** The list of screens, and every leaf of those that consist of leaves at the day's end; the first of each by night and for the left hand too. */
private fun leaves(played: Played, last: DayTap) {
    val core = played.core
    // An earlier session is opened, to show what that looks like.
    val earliest = leavesOf(core.screen(Which.BOOK, last.at))?.leaves?.first()?.list?.lastOrNull { it.tap is KeyTap.Send }
    (earliest?.tap as? KeyTap.Send)?.let { core.act(it.action, last.at) }
    inEveryKind(played, last) { _, layout, write ->
        write("screens") { ScreenList(core.screenList(), layout, played.words, { }) { } }
    }
    eachLeaf(played, last, listOf(Which.BENCH, Which.BOOK, Which.CONDITIONS, Which.CAUTIONS, Which.DAY, Which.LEGEND))
}

/** Every leaf of these screens; the first of each by night and for the left hand too. */
private fun eachLeaf(played: Played, at: DayTap, screens: List<Which>) = inEveryKind(played, at) { kind, layout, write ->
    for (which in screens) {
        val view = leavesOf(played.core.screen(which, at.at)) ?: continue
        val all = if (kind == "day" || kind == "large-text") view.leaves.take(if (which == Which.CAUTIONS) MOST_CAUTIONS else view.leaves.size) else view.leaves.take(1)
        for (leaf in all) {
            repeat(if (leaf == view.leaves.first() && which != Which.LEGEND) 1 else LEAF_PARTS) { part ->
                write("${which.name.lowercase()}-${leaf.id}-${part + 1}") {
                    LeavesScreen(view, layout, played.words, "", { }, leaf.id, part) { }
                }
            }
        }
    }
}

/** Writes what is drawn by day, at twice the text size, by night and for the left hand as NAME-KIND.png. */
internal fun inEveryKind(
    played: Played, last: DayTap, kinds: List<String> = listOf("day", "large-text", "night", "left"),
    draw: (kind: String, layout: BankLayout, write: (String, @Composable () -> Unit) -> Unit) -> Unit,
) {
    val (glass, bank) = played.glass to played.bank(last.at)
    for (kind in kinds) {
        val on = glass.copy(textScale = if (kind == "large-text") 2.0 else glass.textScale, leftHanded = kind == "left")
        val ink = if (kind == "night") Ink.Night else Ink.Day
        draw(kind, bankLayout(on, ask(bank)).ofPages()) { name, content ->
            val drawn = picture(on) {
                CompositionLocalProvider(LocalInk provides ink, LocalPxPerMm provides on.pxPerMm.toFloat(), content = content)
            }
            File(played.out, "$name-$kind.png").writeBytes(drawn)
        }
    }
}

private fun leavesOf(screen: Screen): LeavesView? = when (screen) {
    is Screen.Bench -> screen.v1
    is Screen.Book -> screen.v1
    is Screen.Conditions -> screen.v1
    is Screen.Cautions -> screen.v1
    is Screen.Day -> screen.v1
    is Screen.Welcome -> screen.v1
    is Screen.Legend -> screen.v1
    else -> null
}

/** Leaves of the cautions that are drawn: the cards all look alike. */
private const val MOST_CAUTIONS = 9

/** Parts of a leaf that are drawn: if there are fewer, the first is drawn again. */
private const val LEAF_PARTS = 2

/** The Swim screen at a moment of the day as PNG. */
fun swimPicture(core: Restwater, at: Moment, bank: BankView, glass: Glass, ink: Ink = Ink.Day, words: PadWords = padWords(ENGLISH)): ByteArray {
    val view = (core.screen(Which.SWIM, at) as Screen.Swim).v1
    val layout = swimLayout(glass, swimPad(view))
    val scene = core.swimScene(at, largeFan(glass, layout.canvas))
    val taps = object : SwimTaps {
        override fun key(key: SwimKeyView) = Unit
        override fun act(action: Action) = Unit
        override fun aim(x: Double, y: Double) = Unit
        override fun back() = Unit
    }
    return picture(glass) {
        CompositionLocalProvider(LocalInk provides ink, LocalPxPerMm provides glass.pxPerMm.toFloat()) {
            SwimScreen(view, scene, layout, bankLayout(glass, ask(bank)).ofPages(), words, "", taps)
        }
    }
}

/** The set-up screen of a record as PNG, by day. */
fun setupPicture(setup: SetupView, bank: BankView, glass: Glass, words: PadWords): ByteArray = picture(glass) {
    CompositionLocalProvider(LocalInk provides Ink.Day, LocalPxPerMm provides glass.pxPerMm.toFloat()) {
        SetupScreen(setup, bankLayout(glass, ask(bank)).ofPages(), words, "", { }, { }) { }
    }
}

/** The tackle screen of a record as PNG, by day, with that row opened. */
fun tacklePicture(tackle: TackleView, bank: BankView, glass: Glass, words: PadWords, row: String?): ByteArray = picture(glass) {
    CompositionLocalProvider(LocalInk provides Ink.Day, LocalPxPerMm provides glass.pxPerMm.toFloat()) {
        TackleScreen(tackle, bankLayout(glass, ask(bank)).ofPages(), words, "", { }, row) { }
    }
}

internal fun ask(bank: BankView) = PadAsk(bank.state, bank.rods.size.coerceIn(1, 3).toUByte(), 0u)

/** A screen written as 750x1334@12.84, with 4 mm at the top reserved for the system. */
private fun glassOf(text: String): Glass? {
    val (width, height, density) = Regex("(\\d+)x(\\d+)@([0-9.]+)").matchEntire(text)?.destructured ?: return null
    val mm = density.toDoubleOrNull()?.takeIf { it > 0 } ?: return null
    return Glass(width.toDouble(), height.toDouble(), mm, 1.0, false, 4 * mm, 0.0)
}

/** The language of the pictures if none is asked for. */
const val ENGLISH = "en-GB"

/** A common screen: 6.1 in, 1080 x 2340. */
val GLASS = Glass(1080.0, 2340.0, 16.634, 1.0, false, 89.0, 63.0)
