package app.restwater.ui

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.CompositionLocalProvider
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.produceState
import androidx.compose.runtime.remember
import androidx.compose.ui.Modifier
import androidx.compose.ui.semantics.LiveRegionMode
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.isTraversalGroup
import androidx.compose.ui.semantics.liveRegion
import androidx.compose.ui.semantics.paneTitle
import androidx.compose.ui.semantics.semantics
import app.restwater.core.Action
import app.restwater.core.BankLayout
import app.restwater.core.BankState
import app.restwater.core.FanGlass
import app.restwater.core.FishView
import app.restwater.core.Glass
import app.restwater.core.Hand
import app.restwater.core.Key
import app.restwater.core.KeyView
import app.restwater.core.LeavesView
import app.restwater.core.PadAsk
import app.restwater.core.PadWords
import app.restwater.core.Rect
import app.restwater.core.RestwaterException
import app.restwater.core.RodView
import app.restwater.core.Scheme
import app.restwater.core.SwimKey
import app.restwater.core.SwimKeyView
import app.restwater.core.SwimView
import app.restwater.core.WeightView
import app.restwater.core.Which
import app.restwater.core.bankLayout
import app.restwater.core.matchLayout
import app.restwater.core.padWords
import app.restwater.core.swimLayout
import kotlinx.coroutines.delay

/** What a shell knows about its screen besides the size of the window. */
data class GlassMeasure(
    val pxPerMm: Double,
    val textScale: Double = 1.0,
    val insetTopPx: Double = 0.0,
    val insetBottomPx: Double = 0.0,
)

/** All screens of one state. Reads the clock again each second, unless the shell does that itself. */
@Composable
fun RestwaterApp(state: RestwaterState, measure: GlassMeasure, ticking: Boolean = true) {
    LaunchedEffect(state, ticking) { if (ticking) state.runClock() else state.toFront() }
    val ink = if (state.settings.scheme == Scheme.DAY) Ink.Day else Ink.Night
    val send: (Action, () -> Unit) -> Unit = remember(state) { state::act }
    val opened: () -> Unit = remember(state) { state::opened }
    val drafts = remember(state) { state.drafts to { state.showing } }
    val rejected: () -> Unit = remember(state) { state::tapRejected }
    CompositionLocalProvider(
        LocalInk provides ink, LocalPxPerMm provides measure.pxPerMm.toFloat(), LocalSend provides send, LocalOpened provides opened,
        LocalDrafts provides drafts,
    ) {
        // A screen reader walks through a screen by the order of its pieces.
        BoxWithConstraints(Modifier.fillMaxSize().background(ink.paper).oneThumbOnly(rejected).semantics { isTraversalGroup = true }) {
            val glass = Glass(
                constraints.maxWidth.toDouble(), constraints.maxHeight.toDouble(), measure.pxPerMm, measure.textScale,
                state.settings.hand == Hand.LEFT, measure.insetTopPx, measure.insetBottomPx,
            )
            MeasuredOnce { Screens(state, glass) }
            RejectedFrame(state.rejectedTaps)
        }
    }
}

@Composable
private fun Screens(state: RestwaterState, glass: Glass) {
    val measure = with(glass) { GlassMeasure(pxPerMm, textScale, insetTopPx, insetBottomPx) }
    val view = state.steadyBank
    // Before the first record there is nothing to say unless it was refused.
    if (view == null) return if (state.notice.isBlank()) Unit else Trouble(state.notice, measure)
    // Without a session there is still a screen: the keys, and an empty place for the clock.
    val ask = PadAsk(view.state, view.rods.size.coerceIn(1, 3).toUByte(), (state.page % 256).toUByte())
    val placed = remember(glass, ask) { layoutOf(glass, ask) }
    val bank = placed.getOrElse { Trouble((it as? RestwaterException.Failed)?.text ?: throw it, measure); return }
    val layout = remember(bank) { bank.ofPages() }
    val words = remember { padWords(language()) }
    val notice = noticeOf(state)
    val missing: @Composable () -> Unit = { Missing(notice, layout, words) { state.back() } }
    when (state.showing) {
        Showing.BANK -> {
            // The fan changes after a tap or each minute, never each second.
            bank.fan?.let { place ->
                LaunchedEffect(glass, place, view.latest, view.spot, view.header.clock) { state.readFan(smallFan(glass, place)) }
            }
            BankScreen(
                view, bank, words, state.page, notice, remember(state) { taps(state) },
                remember(state.fan) { state.fan?.let { scene -> { SwimCanvas(scene, Modifier.fillMaxSize()) } } },
                remember(state) { { state.bank ?: view } },
            )
        }
        Showing.SETUP -> state.setup?.let { setup ->
            SetupScreen(setup, layout, words, notice, { state.act(it) }, { state.begin(setup.start) }, { state.openByKey(Showing.CAUTIONS) }) {
                state.back()
            }
        } ?: missing()
        Showing.TACKLE -> state.tackle?.let { tackle ->
            TackleScreen(tackle, layout, words, notice, { state.act(it) }) {
                state.back()
            }
        } ?: missing()
        Showing.SWIM -> state.swim?.let { Swim(state, it, notice, glass, layout, words) } ?: missing()
        Showing.WAITS -> state.waits?.let { waits ->
            WaitsScreen(waits, layout, words, notice, { state.act(it) }, onOpen = { state.openByKey(Showing.of(it)) }) {
                state.back()
            }
        } ?: missing()
        Showing.CHANGES -> state.changes?.let { changes ->
            ChangesScreen(changes, layout, words, notice, { state.act(it) }, onOpen = { state.openByKey(Showing.of(it)) }) { state.back() }
        } ?: missing()
        Showing.MATCH -> state.match?.let { match ->
            val keys = remember(glass) { matchLayout(glass) }
            MatchScreen(match, keys, layout, words, notice, { state.act(it) }, onOpen = { state.openByKey(Showing.of(it)) }) {
                state.back()
            }
        } ?: missing()
        Showing.FISH -> state.fish?.let { Fishes(state, it, notice, glass, layout, words) } ?: missing()
        Showing.WEIGHT -> state.weight?.let { Weights(state, it, notice, glass, layout, words) } ?: missing()
        Showing.FEED -> state.feed?.let { Fishes(state, it, notice, glass, layout, words) } ?: missing()
        Showing.FEED_WEIGHT -> state.feedWeight?.let { Weights(state, it, notice, glass, layout, words) } ?: missing()
        Showing.SEEN -> state.seen?.let { Fishes(state, it, notice, glass, layout, words) } ?: missing()
        Showing.BENCH -> state.bench?.let { Leaves(state, it, notice, layout, words) } ?: missing()
        Showing.BOOK -> state.book?.let { Leaves(state, it, notice, layout, words) } ?: missing()
        Showing.CONDITIONS -> state.conditions?.let { Leaves(state, it, notice, layout, words) } ?: missing()
        Showing.CAUTIONS -> state.cautions?.let { Leaves(state, it, notice, layout, words) } ?: missing()
        Showing.DAY -> state.day?.let { Leaves(state, it, notice, layout, words) } ?: missing()
        Showing.WELCOME -> state.welcome?.let { Leaves(state, it, notice, layout, words) } ?: missing()
        Showing.LEGEND -> state.legend?.let { Leaves(state, it, notice, layout, words) } ?: missing()
        Showing.FILES -> state.files?.let { files ->
            FilesScreen(files, state.desk, layout, words, notice, glass.leftHanded, { state.act(it) }) { state.back() }
        } ?: missing()
        Showing.MEND -> state.mend?.let { mend ->
            MendScreen(mend, layout, words, notice, glass.leftHanded, { state.act(it) }) { state.back() }
        } ?: missing()
        Showing.PHONE -> state.phone?.let { phone ->
            RowsScreen(phone.title, phone.rows, layout, words, notice, { state.act(it) }, "", emptyList(), state.ownRows, state::chooseOwn, null) {
                state.back()
            }
        } ?: missing()
        Showing.SCREENS -> state.screenList?.let { list ->
            ScreenList(list, layout, words, state::openByKey) { state.back() }
        } ?: missing()
    }
}

/** A screen whose record isn't there: the core has refused it and says why, or the answer is still to come. */
@Composable
private fun Missing(notice: String, layout: BankLayout, words: PadWords, onBack: () -> Unit) {
    Ground()
    PageHead("", notice, layout)
    Back(layout, words, onBack = onBack)
}

/** A screen of leaves; one of its keys may open another screen. */
@Composable
private fun Leaves(state: RestwaterState, view: LeavesView, notice: String, layout: BankLayout, words: PadWords) {
    LeavesScreen(
        view, layout, words, notice, { state.act(it) }, onOpen = { state.openByKey(Showing.of(it)) }, onShare = state.desk::share,
    ) { state.back() }
}

/** A fish, feed or a sighting. */
@Composable
private fun Fishes(state: RestwaterState, view: FishView, notice: String, glass: Glass, layout: BankLayout, words: PadWords) {
    val keys = remember(glass) { matchLayout(glass) }
    FishScreen(view, keys, layout, words, notice, state::fishKey) { state.back() }
}

/** The number pad for the weight of a fish or of feed. */
@Composable
private fun Weights(state: RestwaterState, view: WeightView, notice: String, glass: Glass, layout: BankLayout, words: PadWords) {
    val keys = remember(glass) { matchLayout(glass) }
    WeightScreen(view, keys, layout, words, notice, state::fishKey) { state.back() }
}

@Composable
private fun Swim(state: RestwaterState, view: SwimView, notice: String, glass: Glass, bank: BankLayout, words: PadWords) {
    val ask = swimPad(view)
    val layout = remember(glass, ask) { swimLayout(glass, ask) }
    val fan = remember(glass, layout.canvas) { largeFan(glass, layout.canvas) }
    LaunchedEffect(fan, view, state.minute) { state.readScene(fan) }
    val taps = remember(state, fan) {
        object : SwimTaps {
            override fun key(key: SwimKeyView) = state.swimKey(key)
            override fun act(action: Action) = state.act(action)
            override fun aim(x: Double, y: Double) = state.aim(fan, x, y)
            override fun back() = state.back()
        }
    }
    SwimScreen(view, state.scene, layout, bank, words, notice, taps)
}

/** The drawing area of the small fan. */
fun smallFan(glass: Glass, place: Rect) = FanGlass(place.width, place.height, glass.pxPerMm, glass.textScale, true)

private fun layoutOf(glass: Glass, ask: PadAsk): Result<BankLayout> =
    try {
        Result.success(bankLayout(glass, ask))
    } catch (refused: RestwaterException.Failed) {
        Result.failure(refused)
    }

/**
 * The notice: about the last tap, or that its answer is still to come, as during a long import. A tap that is answered
 * at once does not show the latter.
 */
@Composable
private fun noticeOf(state: RestwaterState): String {
    val waits = state.underWay > 0
    val shown by produceState(false, waits) {
        value = false
        if (waits) {
            delay(SLOW_MS)
            value = true
        }
    }
    return if (shown) listOfNotNull(WAITS, state.desk.progress?.toString()).joinToString(" ") else state.notice
}

/** If an answer takes longer than this, the screen shows that it is waiting. */
private const val SLOW_MS = 300L

/** Why the screens can't be shown, and what to do about it, with a key if one can help. */
@Composable
fun Trouble(text: String, measure: GlassMeasure, key: String? = null, onKey: () -> Unit = {}) {
    val mm = measure.pxPerMm
    val ink = LocalInk.current
    CompositionLocalProvider(LocalPxPerMm provides mm.toFloat()) {
        BoxWithConstraints(Modifier.fillMaxSize().background(ink.paper)) {
            val edge = 3 * mm
            val high = if (key == null) 0.0 else 20 * mm
            val wide = (constraints.maxWidth - 2 * edge).coerceAtLeast(0.0)
            val bottom = constraints.maxHeight - measure.insetBottomPx - edge
            val top = measure.insetTopPx + edge
            Box(
                Modifier.at(Rect(edge, top, wide, (bottom - high - edge - top).coerceAtLeast(0.0))).tagged("trouble")
                    .semantics { contentDescription = text; paneTitle = text; liveRegion = LiveRegionMode.Assertive },
            ) { FitText(text, (mm * 3.6 * measure.textScale).toFloat(), ink.ink, Modifier.fillMaxSize()) }
            if (key != null) {
                val place = Rect(edge, bottom - high, wide, high)
                PadKey(KeyFace(key, null, key, solid = true), "trouble-key", (mm * 4).toFloat(), 0f, Modifier.at(place), onTap = onKey)
            }
        }
    }
}

private fun taps(state: RestwaterState) = object : BankTaps {
    override fun key(key: KeyView) = state.tap(key)
    override fun more() = state.more()
    override fun back() = state.back()
    override fun rod(rod: RodView) = state.act(rod.choose)
    override fun screens() = state.openFromBank(Showing.SCREENS)
    override fun open(which: Which) = state.openFromBank(Showing.of(which))
}
