package app.restwater.ui

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import app.restwater.core.Action
import app.restwater.core.BankState
import app.restwater.core.BankView
import app.restwater.core.ScreenListView
import app.restwater.core.FanGlass
import app.restwater.core.FishKey
import app.restwater.core.Hand
import app.restwater.core.KeyTap
import app.restwater.core.KeyView
import app.restwater.core.Moment
import app.restwater.core.Restwater
import app.restwater.core.RestwaterException
import app.restwater.core.Scheme
import app.restwater.core.Screen
import app.restwater.core.Settings
import app.restwater.core.SwimKey
import app.restwater.core.SwimKeyView
import app.restwater.core.SwimScene
import app.restwater.core.TypedInto
import app.restwater.core.Which
import app.restwater.core.positionWords
import java.util.Locale
import kotlinx.coroutines.CoroutineDispatcher
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.delay
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext

/**
 * The one state that the screens draw. Taps go to the core one after another on [worker], each with the moment the
 * thumb lifted, and the core's answer is what is shown. There are no rules here.
 */
class RestwaterState(
    private val core: Restwater,
    private val now: () -> Moment,
    private val scope: CoroutineScope,
    private val worker: CoroutineDispatcher,
    ports: FilePorts = NoFiles,
    private val lookout: Lookout = NoLookout,
    private val receiver: Receiver = NoReceiver,
    private val own: PhoneRows = NoPhoneRows,
    private val feel: Feel = NoFeel,
    /** Hand and scheme as they were last chosen, for the first picture. */
    begins: Settings = Settings(Hand.RIGHT, Scheme.DAY),
    /** Export and import of files. */
    val desk: FilesDesk = FilesDesk(core, now, scope, ports, worker),
    /** Texts that are typed and not sent yet. */
    val drafts: Drafts = Drafts(),
) : Records() {
    init {
        hearFiles()
    }

    /** Shows notices about files here: two screens may share one desk, and the one in the foreground gets them. */
    private fun hearFiles() {
        desk.heard = { said ->
            if (said.isNotEmpty()) notice = said
            refresh()
            // An import may have ended a cast, or brought one.
            lookOut()
        }
    }

    /** Rows of the Phone screen that belong to this shell. */
    var ownRows by mutableStateOf(emptyList<ShellRow>())
        private set

    /** The screens that can be opened now. */
    var screenList by mutableStateOf<ScreenListView?>(null)
        private set
    var settings by mutableStateOf(begins)
        private set
    var showing by mutableStateOf(Showing.BANK)
        private set

    /** The small swim fan, if a spot is known. */
    var fan by mutableStateOf<SwimScene?>(null)
        private set

    /** The large fan of the Swim screen. */
    var scene by mutableStateOf<SwimScene?>(null)
        private set

    private val noSession get() = bank?.state.let { it == null || it == BankState.NO_SESSION }

    /** Whether a session is open. */
    var sessionOpen by mutableStateOf(false)
        private set

    /** Whether the screen is to stay on. */
    var keepAwake by mutableStateOf(false)
        private set

    /** The minute that the screen shows: pictures with minutes are redrawn when it changes. */
    var minute by mutableStateOf(0L)
        private set

    /** The core's notice about the last tap. */
    var notice by mutableStateOf("")
        private set

    /** Which page of the sheet behind MORE is open, from 1; 0 while it is closed. */
    var page by mutableStateOf(0)
        private set

    /** Reads the open screen again, as of now. */
    suspend fun refresh() {
        read(showing)
    }

    /** The same each second: time changes nothing of what a screen is about. */
    private suspend fun tick() {
        read(showing, asks = false)
    }

    /** Reads what a screen shows, as of now, and returns whether it could be read; if it [asks], also what that is about. */
    private suspend fun read(screen: Showing, asks: Boolean = true): Boolean {
        val (which, at) = screen.which to now()
        if (screen == Showing.SCREENS) screenList = answer { core.screenList() }
        if (screen == Showing.PHONE) ownRows = own.rows()
        // The layout of every screen depends on the Bank's record, so it is read first whichever screen the app opens
        // with.
        if (bank == null && which != Which.BANK) answer { core.screen(Which.BANK, at) }?.let { show(it) }
        minute = at.wallMs / 60_000
        val (settings, record, about) = answer {
            Triple(core.settings(at), core.screen(which, at), if (asks) core.subject() to core.about(which, at) else null)
        } ?: return false
        about?.let {
            subject = it.first
            drafts.about(screen, it.second)
        }
        this.settings = settings
        show(record)
        return true
    }

    /** Reads the fan again for its place on the screen; without a session there is none. */
    suspend fun readFan(glass: FanGlass) {
        val at = now()
        fan = if (noSession) null else answer { core.swimScene(at, glass) }
    }

    /** Reads the large fan again. */
    suspend fun readScene(glass: FanGlass) {
        val at = now()
        scene = answer { core.swimScene(at, glass) }
    }

    /** A tap on the large fan, in px of its canvas. */
    fun aim(glass: FanGlass, x: Double, y: Double) {
        scope.launch {
            answer { core.swimTap(glass, x, y) }?.let { refresh() }
            readScene(glass)
        }
    }

    /** A key of the Swim screen. */
    fun swimKey(key: SwimKeyView) = follow(key.tap) { if (key.key == SwimKey.CAST_HERE) toTop(Showing.BANK) }

    /** A key about a landed fish; if it completes the entry, the core's answer is shown on the Bank. */
    fun fishKey(key: FishKey) = follow(key.tap) { if (key.closes) toTop(Showing.BANK) }

    /** Does what a key asks; [after] runs when its action was accepted and was not an accidental second tap. */
    private fun follow(tap: KeyTap, after: () -> Unit = {}) {
        when (tap) {
            is KeyTap.Send -> act(tap.action, after)
            is KeyTap.Open -> openByKey(Showing.of(tap.which))
            is KeyTap.Share -> desk.share(tap.text)
            KeyTap.AskReceiver -> usePhone()
            // Only a screen of leaves has leaves to open.
            is KeyTap.Leaf -> Unit
        }
    }

    /**
     * Asks the phone once where it is. The reading only fills two lines of the Swim screen: the angler sees it and taps
     * SET PLACE. If it is refused or does not come, a sentence says so, and the lines can still be typed.
     */
    private fun usePhone() {
        if (reading) return feel.refused()
        reading = true
        // A receiver may take most of a minute.
        notice = WAITS
        scope.launch {
            try {
                val at = receiver.position()
                fun written(degrees: Double) = String.format(Locale.ROOT, "%.7f", degrees)
                act(Action.Typed(TypedInto.PegLatitude, written(at.latDeg))) {
                    act(Action.Typed(TypedInto.PegLongitude, written(at.lonDeg))) { notice = positionWords(at.accuracyM, language()) }
                }
            } catch (trouble: ReceiverTrouble) {
                notice = trouble.message.orEmpty()
            } finally {
                reading = false
            }
        }
    }

    /** Whether the phone is being asked where it is. */
    private var reading = false

    /** A key of the Bank screen. A tap that was accepted closes the sheet behind MORE. */
    fun tap(key: KeyView) {
        val opens = key.tap as? KeyTap.Open ?: return follow(key.tap) { page = 0 }
        openFromBank(Showing.of(opens.which))
    }

    /** A key of the Bank opens a screen, unless the thumb has just tapped one of the sheet behind MORE, which was in its place. */
    fun openFromBank(which: Showing) = act(Action.Opened) { open(which) }

    /** The sheet has the keys of one rod in one state: with another the pad is back, since that is where LANDED would be. */
    override fun show(screen: Screen) {
        fun BankView.about() = state to rods.find { it.chosen }?.rod
        if (screen is Screen.Bank && bank?.about().let { it != null && it != screen.v1.about() }) page = 0
        super.show(screen)
    }

    /** Taps whose answer is not on the screen yet. */
    var underWay by mutableStateOf(0)
        private set

    /** Passes a tap to the core; [after] runs when it was accepted and was not an accidental second tap. */
    fun act(action: Action, after: () -> Unit = {}) {
        val at = now()
        underWay += 1
        scope.launch {
            try {
                answer(feel::refused) { core.act(action, at) }?.let { update ->
                    if (update.repeated) feel.refused() else if (update.changed) feel.accepted()
                    notice = update.notice
                    show(update.screen)
                    update.opens?.let { opened ->
                        goal = Showing.of(opened)
                        bring(goal)
                    }
                    if (!update.repeated) after()
                    refresh()
                    lookOut()
                }
            } finally {
                underWay -= 1
            }
        }
    }

    /** How often contacts were rejected; each time a frame is shown around the screen. */
    var rejectedTaps by mutableStateOf(0)
        private set

    /** Contacts that were not made by a thumb alone: nothing is logged, and the angler can feel and see that. */
    fun tapRejected() {
        rejectedTaps += 1
        feel.refused()
    }

    /** Opens the sheet behind MORE, or turns to its next page. */
    fun more() {
        if (page == 0) act(Action.Opened) { page = 1 } else page += 1
    }

    /** A choice in a row of this shell. */
    fun chooseOwn(row: String, choice: String) {
        own.choose(row, choice)
        scope.launch { refresh() }
    }

    /** What the screens are about and what is half typed on them, as the core last gave it: kept with the open screen. */
    var subject = ""
        private set

    /** Whether what the screens had open before the system ended the app may not come back, because its subject is gone. */
    var opensFresh by mutableStateOf(false)
        private set

    /**
     * The screen and the page of further keys that were open before the system ended the app, and what they were [about]. If that
     * is gone, so is the screen: what was typed on it would go elsewhere.
     */
    fun reopen(which: Showing, page: Int, about: String) {
        goal = which
        this.page = page
        scope.launch {
            if (answer { core.restoreSubject(about) } == true) return@launch bring(which)
            opensFresh = true
            if (goal == which) toTop(Showing.BANK)
        }
    }

    /**
     * Brings a screen to the front once its record has been read. An earlier record may be about another fish or another
     * day, and its keys would act on that. The Bank is always there, since BITE must not wait for anything.
     */
    fun open(which: Showing) {
        notice = ""
        if (which == Showing.BANK) toTop(which)
        goal = which
        scope.launch { bring(which) }
    }

    private suspend fun bring(which: Showing) {
        if (read(which) && goal == which) toTop(which)
    }

    /** The screen that was asked for last, which may still be being read. */
    private var goal = Showing.BANK

    private fun toTop(which: Showing) {
        if (which != Showing.BANK) page = 0
        goal = which
        showing = which
    }

    /** The same by a key. */
    fun openByKey(which: Showing) {
        opened()
        open(which)
    }

    /**
     * A key has opened a screen, a leaf or a row. The core has to know, since a second tap of a cold thumb would hit what
     * has appeared; there is nothing to show or to feel.
     */
    fun opened() {
        val at = now()
        scope.launch { answer { core.act(Action.Opened, at) } }
    }

    /**
     * The screen that the app opens with, which is not always the Bank. It does not cover what was there first, such as
     * a file to open.
     */
    suspend fun greet() {
        val first = answer { core.firstScreen() } ?: return
        if (first != Which.BANK && goal == Showing.BANK && notice.isEmpty()) open(Showing.of(first))
    }

    /** Back to the Bank. The core has to know, since a second tap of a cold thumb would hit CAST. */
    fun back() {
        page = 0
        act(Action.Back)
        open(Showing.BANK)
    }

    /**
     * Tells the system what to show and when to ring while the app is in the background. What was read is shown by the same
     * call of the worker: shown later, it would take the place of what a key on the lock screen has set meanwhile.
     */
    suspend fun lookOut() {
        val at = now()
        answer { core.watch(at).let { it to lookout.show(it) } }?.let { (watch, refused) ->
            keepAwake = watch.keepAwake
            sessionOpen = watch.open
            // Shown when it arises and with each new alarm: after that it would only hide the notices about taps.
            val isNew = refused != null && (refused.isNew || refused.says != refusedSaid)
            if (isNew || refused == null) refusedSaid?.let { notice = notice.removeSuffix(it).trimEnd() }
            if (refused != null && isNew) notice = listOf(notice, refused.says).filter { it.isNotBlank() }.joinToString(" ")
            refusedSaid = refused?.says
        }
    }

    /** What the system does not allow, as it was last shown. */
    private var refusedSaid: String? = null

    /** Shows a sentence of the shell. */
    fun say(text: String) {
        notice = text
    }

    /** A file that the system passes to the app, which may take long to [fetch]: shows what it would bring. */
    fun offerFile(fetch: suspend () -> String) {
        open(Showing.FILES)
        desk.offer(fetch)
    }

    /** The app goes to the background: the log is backed up if that is due. */
    suspend fun toBackground() =
        try {
            desk.backUpIfDue()
        } catch (refused: RestwaterException.Failed) {
            notice = refused.text
        }

    /** Reads the screen each second until it is cancelled, which happens when nobody can see it. */
    suspend fun runClock() {
        toFront()
        while (true) {
            delay(SECOND_MS)
            tick()
        }
    }

    /** The app comes to the front again: keys of the lock screen may have logged in between. */
    suspend fun toFront() {
        hearFiles()
        refresh()
        lookOut()
    }

    /** The set-up of a session, or the Bank if one is open: the launcher's shortcut leads here. */
    suspend fun begin() {
        refresh()
        open(if (noSession) Showing.SETUP else Showing.BANK)
    }

    /**
     * The Bank, where an alarm, the running wait and the tile lead: with the [rod] that an alarm rang for, if it is
     * still there, and what it says.
     */
    suspend fun toBank(rod: UByte?, says: String) {
        toTop(Showing.BANK)
        page = 0
        notice = says
        refresh()
        val other = bank?.rods?.find { it.rod == rod && !it.chosen } ?: return
        act(other.choose) { notice = says }
    }

    /** Begins a session as set up on the screen. */
    fun begin(start: KeyView) = follow(start.tap) { toTop(Showing.BANK) }

    /** Asks the core off the main thread; an error is shown in the core's words. */
    private suspend fun <T> answer(refused: () -> Unit = {}, ask: () -> T): T? =
        try {
            withContext(worker) { ask() }
        } catch (failed: RestwaterException.Failed) {
            refused()
            notice = failed.text
            null
        }
}

private const val SECOND_MS = 1_000L

/** Shown where an answer is still to come. */
internal const val WAITS = "…"
