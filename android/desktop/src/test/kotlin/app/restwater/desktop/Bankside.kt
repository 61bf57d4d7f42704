package app.restwater.desktop

import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.test.DesktopComposeUiTest
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.SemanticsMatcher
import androidx.compose.ui.test.SemanticsNodeInteraction
import androidx.compose.ui.test.onAllNodesWithTag
import androidx.compose.ui.test.click
import androidx.compose.ui.test.onNodeWithTag
import androidx.compose.ui.test.onRoot
import androidx.compose.ui.test.performClick
import androidx.compose.ui.test.performTouchInput
import androidx.compose.ui.test.runDesktopComposeUiTest
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.BankState
import app.restwater.core.DayTap
import app.restwater.core.Glass
import app.restwater.core.Hand
import app.restwater.core.Key
import app.restwater.core.Moment
import app.restwater.core.Outgoing
import app.restwater.core.PadAsk
import app.restwater.core.Restwater
import app.restwater.core.Scheme
import app.restwater.core.Step
import app.restwater.core.Work
import app.restwater.core.bankLayout
import app.restwater.ui.FilePorts
import app.restwater.ui.GlassMeasure
import app.restwater.ui.NoReceiver
import app.restwater.ui.Position
import app.restwater.ui.Receiver
import app.restwater.ui.RestwaterApp
import app.restwater.ui.RestwaterState
import app.restwater.ui.Showing
import app.restwater.ui.language
import app.restwater.ui.tag
import java.io.File
import java.nio.file.Files
import java.util.Locale
import kotlin.coroutines.CoroutineContext
import kotlinx.coroutines.CoroutineDispatcher
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.cancelAndJoin
import kotlinx.coroutines.runBlocking

/**
 * A phone on the bank: the real screens and the real library with a folder of its own, and a clock that is set by hand.
 */
@OptIn(ExperimentalTestApi::class)
class Bankside(private val ui: DesktopComposeUiTest, private val folder: File, val glass: Glass) {
    private var ms = NINE_O_CLOCK
    private var core = open()
    private val work = SupervisorJob()

    /** The shell's files: kept here, and picked from here. */
    val files = FilesInHand()

    /** The phone's receiver: none, until a test gives one. */
    val receiver = ReceiverInHand()

    /** Where the core is asked. */
    val worker = WorkerInHand()
    var state = newState()
        private set

    private fun open() = Restwater.open(folder.path, now(), language())

    private fun newState() =
        RestwaterState(core, ::now, CoroutineScope(Dispatchers.Unconfined + work), worker, files, receiver = receiver)

    /** Ends what still runs in the background first: it would read a screen from a closed log. */
    private fun close() {
        runBlocking { work.children.forEach { it.cancelAndJoin() } }
        core.close()
    }

    private fun now() = Moment(ms, 0, "Europe/London", ms - NINE_O_CLOCK + 1_000, "one boot", 0u)

    fun show() {
        val measure = GlassMeasure(glass.pxPerMm, glass.textScale, glass.insetTopPx, glass.insetBottomPx)
        ui.setContent { RestwaterApp(state, measure, ticking = false) }
        ui.waitForIdle()
    }

    /** Lets time pass and reads the screen again, as happens each second. */
    fun wait(minutes: Int = 0, seconds: Int = 0) {
        ms += minutes * 60_000L + seconds * 1_000L
        ui.runOnIdle { runBlocking { state.refresh() } }
        ui.waitForIdle()
    }

    /** Lets less than a second pass: a cold thumb taps twice. */
    fun atOnce() {
        ms += 300
    }

    /** Time passes for what moves on the screen. */
    fun passes(ms: Long) {
        ui.mainClock.advanceTimeBy(ms)
        ui.waitForIdle()
    }

    /** Everything on the screen that matches, drawn text included. */
    fun nodes(matcher: SemanticsMatcher): List<SemanticsNode> = ui.onAllNodes(matcher, useUnmergedTree = true).fetchSemanticsNodes()

    fun node(tag: String): SemanticsNodeInteraction = ui.onNodeWithTag(tag)

    /** Whether such a node shows. */
    fun isThere(tag: String): Boolean = ui.onAllNodesWithTag(tag).fetchSemanticsNodes().isNotEmpty()

    /** How many pages the pager says there are. */
    fun pages(): Int {
        val said = node("next-page").fetchSemanticsNode().config[SemanticsProperties.ContentDescription].single()
        return checkNotNull(Regex("of (\\d+)").find(said)).groupValues[1].toInt()
    }

    fun tap(key: Key) = tapOn(tag(key))

    fun tapOn(tag: String) {
        val before = state.showing
        node(tag).performClick()
        ui.waitForIdle()
        // Waits as an angler would after BACK and after a key that opens something: a tap within the time of a double tap
        // counts as one.
        if (tag == "back" || state.showing != before || OPENS.any { tag.startsWith(it) }) ms += 1_000
    }

    /** A cold thumb taps twice in the place of a key. */
    fun twice(tag: String) {
        val at = node(tag).fetchSemanticsNode().boundsInRoot.center
        repeat(2) {
            ui.onRoot().performTouchInput { click(at) }
            ui.waitForIdle()
            atOnce()
        }
        ms += 1_000
    }

    /** How many entries the log has. */
    fun entries(): Int = runBlocking { File(core.send(now(), Work()).path).readLines().count { "\"kind\"" in it } }

    /** As chosen on the Phone screen. */
    fun choose(hand: Hand? = null, scheme: Scheme? = null) {
        ui.runOnIdle { state.act(Action.Set(hand, scheme)) }
        ui.waitForIdle()
    }

    /** Goes from an empty log to an open session. */
    fun start() {
        tap(Key.START)
        tap(Key.START)
        wait(seconds = 30)
    }

    /** Chooses water on the map, as its keys do. */
    fun aim() {
        ui.runOnIdle { state.act(Action.StepAim(Step.LEFT)) }
        ui.waitForIdle()
    }

    /** Long work runs in the background; this waits for its result. */
    fun until(there: () -> Boolean) {
        ui.waitUntil(timeoutMillis = 20_000, condition = there)
        ui.waitForIdle()
    }

    /** Plays a day file up to and including the picture of that name, or all of it. */
    fun live(day: List<DayTap>, picture: String?) {
        for (tap in day) {
            tap.action?.let { core.act(it, tap.at) }
            ms = tap.at.wallMs
            if (tap.picture != null && tap.picture == picture) break
        }
        wait(seconds = 20)
    }

    /** What a shell does when it opens. */
    fun greet() {
        ui.runOnIdle { runBlocking { state.greet() } }
        ui.waitForIdle()
    }

    /** Opens a screen from the list. */
    fun goTo(screen: Showing) {
        tapOn("screens")
        tapOn("open-$screen")
    }

    /** Brings a screen to the top. */
    fun show(screen: Showing) {
        ui.runOnIdle { state.open(screen) }
        wait(seconds = 1)
    }

    val bank get() = checkNotNull(state.bank)

    /** The current layout. */
    fun layout(page: Int = state.page): BankLayout {
        val rods = bank.rods.size.coerceIn(1, 3).toUByte()
        return bankLayout(glass.copy(leftHanded = state.settings.hand == Hand.LEFT), PadAsk(bank.state, rods, page.toUByte()))
    }

    companion object {
        /** Tags of keys that open a row, a leaf or a page of their own screen. */
        private val OPENS = listOf("more", "row-", "key-to-", "key-leaf-", "match-", "mend-", "swim-more", "swim-legend", "swim-place", "swim-list")

        /** 17 January 2026, 9:00. */
        private const val NINE_O_CLOCK = 1_768_640_400_000L

        /** The tests run in English (pom.xml); [language] is a tag of BCP 47. */
        fun on(glass: Glass = GLASS, language: String = "en-GB", day: Bankside.() -> Unit) {
            wearFace()
            val before = Locale.getDefault()
            Locale.setDefault(Locale.forLanguageTag(language))
            val folder = Files.createTempDirectory("restwater-test").toFile()
            try {
                runDesktopComposeUiTest(glass.widthPx.toInt(), glass.heightPx.toInt()) {
                    val bankside = Bankside(this, folder, glass)
                    bankside.show()
                    bankside.day()
                    bankside.close()
                }
            } finally {
                Locale.setDefault(before)
                folder.deleteRecursively()
            }
        }
    }
}

/** Keeps the files that are handed on; the file that is picked is the one put here. */
class FilesInHand : FilePorts {
    val handedOn = mutableListOf<Outgoing>()
    var toPick: String? = null

    override suspend fun handOn(file: Outgoing) {
        handedOn += file
    }

    val texts = mutableListOf<String>()

    override suspend fun handOn(text: String) {
        texts += text
    }

    override suspend fun save(file: Outgoing) = handedOn.add(file)

    override suspend fun pick(): String? = toPick
}

/** A receiver that gives the answer it is set to; at first there is none, as on a PC. */
class ReceiverInHand : Receiver {
    var answer: (suspend () -> Position)? = null

    override suspend fun position() = answer?.invoke() ?: NoReceiver.position()
}

/** Asks the core at once, or later while it is held, as behind long work. */
class WorkerInHand : CoroutineDispatcher() {
    private val waiting = ArrayDeque<Runnable>()
    private var held = false

    fun hold() {
        held = true
    }

    fun release() {
        held = false
        while (waiting.isNotEmpty()) waiting.removeFirst().run()
    }

    override fun isDispatchNeeded(context: CoroutineContext) = held

    override fun dispatch(context: CoroutineContext, block: Runnable) {
        waiting += block
    }
}

/** The states with the keys that lead to them from an open session. */
val LEADING_TO: Map<BankState, List<Key>> = mapOf(
    BankState.READY to emptyList(),
    BankState.OUT to listOf(Key.CAST),
    BankState.FISH_ON to listOf(Key.CAST, Key.BITE),
)
