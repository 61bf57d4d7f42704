package app.restwater.ui

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.app.FanGlass
import app.restwater.core.log.Moment
import app.restwater.core.positionWords
import app.restwater.core.screen.Action
import app.restwater.core.screen.BankView
import app.restwater.core.screen.ChangesView
import app.restwater.core.screen.DoorsView
import app.restwater.core.screen.FilesView
import app.restwater.core.screen.Hand
import app.restwater.core.screen.KeyTap
import app.restwater.core.screen.KeyView
import app.restwater.core.screen.LeavesView
import app.restwater.core.screen.MatchView
import app.restwater.core.screen.MendView
import app.restwater.core.screen.PhoneView
import app.restwater.core.screen.Scheme
import app.restwater.core.screen.Screen
import app.restwater.core.screen.Settings
import app.restwater.core.screen.SetupView
import app.restwater.core.screen.SwimKey
import app.restwater.core.screen.SwimKeyView
import app.restwater.core.screen.SwimView
import app.restwater.core.screen.TackleView
import app.restwater.core.screen.TypedInto
import app.restwater.core.screen.WaitsView
import app.restwater.core.screen.Which
import app.restwater.core.swim.SwimScene
import java.util.Locale
import kotlinx.coroutines.CoroutineDispatcher
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext

/** Which screen lies on top. */
enum class Showing(
    /** What the core is asked for while it shows. */
    val which: Which,
) {
    BANK(Which.BANK),
    SETUP(Which.SETUP),
    TACKLE(Which.TACKLE),
    SWIM(Which.SWIM),
    WAITS(Which.WAITS),
    CHANGES(Which.CHANGES),
    MATCH(Which.MATCH),
    BENCH(Which.BENCH),
    BOOK(Which.BOOK),
    CONDITIONS(Which.CONDITIONS),
    CAUTIONS(Which.CAUTIONS),
    MEND(Which.MEND),
    FILES(Which.FILES),
    PHONE(Which.PHONE),

    /** The list of screens, over what the Bank screen shows. */
    SCREENS(Which.BANK),
    ;

    companion object {
        /** What shows a screen of the core; the Bank where this shell has none for it. */
        fun of(which: Which): Showing = entries.firstOrNull { it.which == which } ?: BANK
    }
}

/**
 * What the screens draw, held once. Taps go to the core one after another on [worker], each with the moment the
 * thumb lifted; what the core answers is what is shown. No rule stands here.
 */
class RestwaterState(
    private val core: Restwater,
    private val now: () -> Moment,
    private val scope: CoroutineScope,
    private val worker: CoroutineDispatcher,
    ports: FilePorts = NoFiles,
    private val lookout: Lookout = NoLookout,
    private val receiver: Receiver = NoReceiver,
) {
    /** Files out and in. */
    val desk = FilesDesk(core, now, scope, ports) { said ->
        if (said.isNotEmpty()) notice = said
        refresh()
    }

    var bank by mutableStateOf<BankView?>(null)
        private set
    var setup by mutableStateOf<SetupView?>(null)
        private set
    var tackle by mutableStateOf<TackleView?>(null)
        private set
    var swim by mutableStateOf<SwimView?>(null)
        private set
    var waits by mutableStateOf<WaitsView?>(null)
        private set
    var changes by mutableStateOf<ChangesView?>(null)
        private set
    var match by mutableStateOf<MatchView?>(null)
        private set
    var bench by mutableStateOf<LeavesView?>(null)
        private set
    var book by mutableStateOf<LeavesView?>(null)
        private set
    var conditions by mutableStateOf<LeavesView?>(null)
        private set
    var cautions by mutableStateOf<LeavesView?>(null)
        private set

    /** The screens that can be opened now. */
    var doors by mutableStateOf<DoorsView?>(null)
        private set
    var files by mutableStateOf<FilesView?>(null)
        private set
    var mend by mutableStateOf<MendView?>(null)
        private set
    var phone by mutableStateOf<PhoneView?>(null)
        private set
    var settings by mutableStateOf(Settings(Hand.RIGHT, Scheme.DAY))
        private set
    var showing by mutableStateOf(Showing.BANK)
        private set

    /** The small swim fan, where a spot is known. */
    var fan by mutableStateOf<SwimScene?>(null)
        private set

    /** The large fan of the Swim screen. */
    var scene by mutableStateOf<SwimScene?>(null)
        private set

    /** Whether the screen is to stay on. */
    var keepAwake by mutableStateOf(false)
        private set

    /** The minute the screen shows: pictures that hold minutes are drawn again when it turns. */
    var minute by mutableStateOf(0L)
        private set

    /** What the core said of the last tap. */
    var notice by mutableStateOf("")
        private set

    /** Which page of small keys is open. */
    var page by mutableStateOf(0)
        private set

    /** Reads the screen that shows again, as of now. */
    suspend fun refresh() {
        val (which, at) = showing.which to now()
        if (showing == Showing.SCREENS) doors = answer { core.doors() }
        // The Bank's record lays every screen out, so it is there first whichever screen the app begins with.
        if (bank == null && which != Which.BANK) answer { core.screen(Which.BANK, at) }?.let { show(it) }
        minute = at.wallMs / 60_000
        answer { core.settings() to core.screen(which, at) }?.let { (settings, screen) ->
            this.settings = settings
            show(screen)
        }
    }

    /** Reads the fan again for the place it has on the glass; without a session there is none. */
    suspend fun readFan(glass: FanGlass) {
        val at = now()
        fan = if (bank?.rods.isNullOrEmpty()) null else answer { core.swimScene(at, glass) }
    }

    /** Reads the large fan again. */
    suspend fun readScene(glass: FanGlass) {
        val at = now()
        scene = answer { core.swimScene(at, glass) }
    }

    /** A tap on the large fan, in px of its canvas. */
    fun aim(glass: FanGlass, x: Double, y: Double) {
        val at = now()
        scope.launch {
            answer { core.swimTap(at, glass, x, y) }?.let { refresh() }
            readScene(glass)
        }
    }

    /** A key of the Swim screen. */
    fun swimKey(key: SwimKeyView) = follow(key.tap) { if (key.key == SwimKey.CAST_HERE) open(Showing.BANK) }

    /** What a key asks; [after] runs when an action of it was taken. */
    private fun follow(tap: KeyTap, after: () -> Unit = {}) {
        when (tap) {
            is KeyTap.Send -> act(tap.action, after)
            is KeyTap.Open -> open(Showing.of(tap.which))
            KeyTap.AskReceiver -> usePhone()
            // Only a screen of leaves has leaves to turn to.
            is KeyTap.Leaf -> Unit
        }
    }

    /**
     * Asks the phone once where it is. The reading only fills two lines of the Swim screen: the angler sees it and taps
     * SET PLACE. Where it is refused or does not come a sentence says so, and the lines can be typed as ever.
     */
    private fun usePhone() {
        scope.launch {
            try {
                val at = receiver.position()
                fun written(degrees: Double) = String.format(Locale.ROOT, "%.7f", degrees)
                act(Action.Typed(TypedInto.PegLatitude, written(at.latDeg))) {
                    act(Action.Typed(TypedInto.PegLongitude, written(at.lonDeg))) { notice = positionWords(at.accuracyM) }
                }
            } catch (trouble: ReceiverTrouble) {
                notice = trouble.message.orEmpty()
            }
        }
    }

    /** A key of the Bank screen. */
    fun tap(key: KeyView) {
        page = 0
        follow(key.tap)
    }

    /** Taps whose answer is not on the screen yet. */
    var underWay by mutableStateOf(0)
        private set

    /** Hands a tap to the core; [after] runs when it was taken. */
    fun act(action: Action, after: () -> Unit = {}) {
        val at = now()
        underWay += 1
        scope.launch {
            try {
                answer { core.act(action, at) }?.let { update ->
                    notice = update.notice
                    show(update.screen)
                    after()
                    refresh()
                    lookOut()
                }
            } finally {
                underWay -= 1
            }
        }
    }

    /** The next page of small keys. */
    fun more() {
        page += 1
    }

    /** Brings a screen to the top. */
    fun open(which: Showing) {
        showing = which
        notice = ""
        scope.launch { refresh() }
    }

    /** Tells the system what to show and when to ring while the app is not looked at. */
    suspend fun lookOut() {
        val at = now()
        answer { core.watch(at) }?.let { watch ->
            keepAwake = watch.keepAwake
            val trouble = lookout.show(watch)
            // Said once: after that it would only hide what is said of the taps.
            if (trouble != null && trouble != troubleSaid) notice = trouble
            troubleSaid = trouble
        }
    }

    private var troubleSaid: String? = null

    /** Shows a sentence of the shell's. */
    fun say(text: String) {
        notice = text
    }

    /** A file that the system hands to the app: what it would bring is shown. */
    fun offerFile(path: String) {
        open(Showing.FILES)
        desk.offer(path)
    }

    /** To the background: the log is backed up where that is due. */
    suspend fun toBackground() =
        try {
            desk.backUpIfDue()
        } catch (refused: RestwaterException.Failed) {
            notice = refused.text
        } catch (trouble: FileTrouble) {
            notice = trouble.message.orEmpty()
        }

    /** To the front again: keys of the lock screen may have logged meanwhile. */
    suspend fun toFront() {
        refresh()
        lookOut()
    }

    /** Begins a session as the set-up screen stands. */
    fun begin(start: KeyView) = follow(start.tap) { showing = Showing.BANK }

    /** Day to night and back. */
    fun changeScheme() =
        act(Action.Set(null, if (settings.scheme == Scheme.DAY) Scheme.NIGHT else Scheme.DAY))

    /** Right hand to left and back. */
    fun changeHand() = act(Action.Set(if (settings.hand == Hand.RIGHT) Hand.LEFT else Hand.RIGHT, null))

    private fun show(screen: Screen) {
        when (screen) {
            is Screen.Bank -> bank = screen.v1
            is Screen.Setup -> setup = screen.v1
            is Screen.Tackle -> tackle = screen.v1
            is Screen.Swim -> swim = screen.v1
            is Screen.Waits -> waits = screen.v1
            is Screen.Changes -> changes = screen.v1
            is Screen.Match -> match = screen.v1
            is Screen.Bench -> bench = screen.v1
            is Screen.Book -> book = screen.v1
            is Screen.Conditions -> conditions = screen.v1
            is Screen.Cautions -> cautions = screen.v1
            is Screen.Files -> files = screen.v1
            is Screen.Mend -> mend = screen.v1
            is Screen.Phone -> phone = screen.v1
        }
    }

    /** Asks the core off the main thread; what went wrong is shown in the core's words. */
    private suspend fun <T> answer(ask: () -> T): T? =
        try {
            withContext(worker) { ask() }
        } catch (refused: RestwaterException.Failed) {
            notice = refused.text
            null
        }
}
