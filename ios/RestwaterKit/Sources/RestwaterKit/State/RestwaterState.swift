import Foundation
import RestwaterCore

/// The one state that the screens draw, and the only access to the core. Taps go to the core one after another, each
/// with the moment the thumb lifted, and the core's answer is what is shown.
@MainActor
public final class RestwaterState: Observed {
    /// What is drawn. Combine, if available, is notified before each change, and `onChange` after it.
    public internal(set) var content = ScreenContent() {
        willSet { tellOfChange() }
        didSet {
            if content.settings != oldValue.settings { lastSettings.keep(content.settings) }
            onChange?()
        }
    }

    /// Called on the main thread after each change of `content`.
    public var onChange: (@MainActor () -> Void)?
    /// Called with what should be felt and heard after a tap.
    public var onEcho: (@MainActor (Echo) -> Void)?
    /// Called when the phone's position is wanted; `positionRead` takes the answer. Not set if there is no receiver.
    public var onPositionWanted: (@MainActor () -> Void)?
    /// Called each time the plan for alarms and the lock screen has been read: the caller that carries it out compares it with
    /// what the system holds, which another process may have left there.
    public var onPlan: (@MainActor (PhonePlan) -> Void)?
    /// What the phone is to do apart from the screen: alarms, the running wait, keeping awake.
    public internal(set) var plan = PhonePlan.none

    let line: CoreLine
    let clock: Clock
    let files: any FileAccess
    let backups: BackupFolder
    private let lastSettings: LastSettings
    let lastScreen: LastScreen
    let unfinished: UnfinishedFile
    /// What an earlier process had open on the Files screen, until that has come back.
    var keptFiles: KeptScreen?
    /// What the screens are about and what is half typed on them, as the core last gave it.
    var subject = ""
    /// Whether the app is in the background, with its log released.
    var away: Bool
    /// The sizes of the fans, as last requested.
    var fanGlass: FanGlass?
    var sceneGlass: FanGlass?
    var fanKey: FanKey?
    var sceneKey: SceneKey?
    /// The screen that was asked for last, which may still be being read; `nil` until one was asked for.
    private var goal: Showing?
    /// Whether the phone is being asked where it is.
    var readsPosition = false
    /// The long work that is running.
    var running: Work?
    /// The long work that was cancelled last.
    var cancelled: Work?
    /// Whether the reading of a second is unanswered.
    private var ticking = false
    private(set) var waiting = 0
    private var settledCalls: [CheckedContinuation<Void, Never>] = []

    /// A state for that core; `away` if no screen is in the foreground yet.
    public init(
        core: Restwater, away: Bool = false, defaults: UserDefaults = .standard, files: any FileAccess = SystemFiles(),
        clock: @escaping Clock = present
    ) {
        self.files = files
        backups = BackupFolder(defaults: defaults, files: files)
        lastSettings = LastSettings(defaults: defaults)
        lastScreen = LastScreen(defaults: defaults)
        unfinished = UnfinishedFile(defaults: defaults)
        content.settings = lastSettings.read
        line = CoreLine(core)
        self.away = away
        self.clock = clock
    }

    /// Reads the open screen again, as of now.
    public func refresh() { read(content.showing) }

    /// The same each second. Time changes nothing of what a screen is about; and while a reading is unanswered, as during a long
    /// import, no other one is put before the taps.
    public func tick() {
        guard !ticking, !away else { return }
        ticking = true
        read(content.showing, about: false)
    }

    /// Reads what a screen shows, as of now; `after` runs when that is there.
    private func read(_ showing: Showing, about asks: Bool = true, then after: (@MainActor @Sendable (RestwaterState) -> Void)? = nil) {
        guard !away else { return }
        let (at, which, lists) = (clock(), showing.which, showing == .screens)
        ask(
            { core in
                let about = asks ? (try core.subject(), try core.about(which: which, now: at)) : nil
                return (try core.settings(now: at), try core.screen(which: which, now: at), lists ? try core.screenList() : nil, about)
            }, reading: true
        ) { state, answer in
            state.ticking = false
            var content = state.content
            if let (subject, about) = answer.3 {
                state.subject = subject
                content.drafts.abouts[showing] = about
            }
            if let list = answer.2 { content.screenList = list }
            content.settings = answer.0
            content.show(answer.1)
            if content != state.content { state.content = content }
            after?(state)
            if which == .bank { state.readFan() }
            state.readScene()
        }
    }

    /// Passes a tap to the core; `after` runs when it was accepted and was not an accidental second tap. A typed
    /// letter is accepted quietly.
    public func act(_ action: Action, quietly: Bool = false, then after: (@MainActor (RestwaterState) -> Void)? = nil) {
        let at = clock()
        ask({ core in try core.act(action: action, at: at) }) { state, update in
            state.took(update, quietly: quietly)
            if !update.repeated { after?(state) }
            state.refresh()
            state.readPlan()
        }
    }

    /// Shows the core's answer to a tap.
    func took(_ update: Update, quietly: Bool = false) {
        say(update.notice)
        content.show(update.screen)
        if let which = update.opens { open(Showing(which), keepingNotice: true) }
        if !quietly { onEcho?(update.repeated ? .ignored : .logged) }
    }

    /// The screen that the app opens with, which is not always the Bank.
    public func greet() {
        let at = clock()
        // Every screen needs the Bank's record and the settings to lay itself out, so they are read first.
        ask({ core in (try core.firstScreen(), try core.screen(which: .bank, now: at), try core.settings(now: at)) }) { state, answer in
            var content = state.content
            content.settings = answer.2
            content.show(answer.1)
            state.content = content
            // It does not cover what was there first, such as a file to open.
            if answer.0 != .bank && state.goal == nil && state.content.notice.isEmpty { state.open(Showing(answer.0)) }
        }
    }

    /// Brings up the screen of an earlier process as it was, unless something else was opened meanwhile, such as an alarm.
    func comeUp(_ showing: Showing, with paging: Paging) {
        guard goal == nil, content.notice.isEmpty else { return }
        let restore: @MainActor @Sendable (RestwaterState) -> Void = { state in
            guard state.goal == showing else { return }
            state.toTop(showing)
            state.content.paging = paging
        }
        goal = showing
        // Nothing is read in the background.
        if away { restore(self) } else { read(showing, then: restore) }
    }

    /// Brings a screen to the top, once its record is there: the one of the last time may be of another fish or another
    /// day, and its keys would act on that. The Bank is always there, since BITE must not wait for anything.
    public func open(_ showing: Showing) { open(showing, keepingNotice: false) }

    func open(_ showing: Showing, keepingNotice: Bool) {
        if !keepingNotice { content.notice = "" }
        goal = showing
        // Nothing is read in the background: the screen is read when the app comes to the front.
        guard showing != .bank, !away else {
            toTop(showing)
            return refresh()
        }
        read(showing) { state in
            if state.goal == showing { state.toTop(showing) }
        }
    }

    private func toTop(_ showing: Showing) {
        var content = content
        content.showing = showing
        content.paging = Paging()
        self.content = content
    }

    /// Asks the core off the main thread; an error is shown in the core's words.
    /// No tap asks for the reading that is made each second, so its error is shown once, and neither heard nor felt.
    func ask<T: Sendable>(
        _ work: @escaping @Sendable (Restwater) throws -> T, reading: Bool = false,
        then: @escaping @MainActor @Sendable (RestwaterState, T) -> Void
    ) {
        waiting += 1
        let away = away
        line.ask({ core in
            // A call from outside the screens (an intent) finds the log released, and leaves it released.
            defer { if away { Log.attempt("putting the log aside") { try core.pause() } } }
            return try work(core)
        }) { answer in
            switch answer {
            case .success(let value): then(self, value)
            case .failure(let refusal) where reading:
                self.ticking = false
                if self.content.notice != refusal.text { self.say(refusal.text) }
            case .failure(let refusal): self.refused(refusal)
            }
            self.answered()
        }
    }

    /// One call, whatever else is under way; throws the refusal of this call and no other. What it shows is shown by `then`, in
    /// its turn among all answers: by the time the caller goes on, a newer answer may have been shown.
    func answer<T: Sendable>(
        _ work: @escaping @Sendable (Restwater) throws -> T, then: @escaping @MainActor @Sendable (RestwaterState, T) -> Void
    ) async throws(Refusal) -> T {
        waiting += 1
        let away = away
        let result: Result<T, Refusal> = await withCheckedContinuation { call in
            line.ask({ core in
                defer { if away { Log.attempt("putting the log aside") { try core.pause() } } }
                return try work(core)
            }) { answer in
                if case .success(let value) = answer { then(self, value) }
                call.resume(returning: answer)
            }
        }
        answered()
        return try result.get()
    }

    /// Shows an answer: the core's about a tap, or what the system or another part of the phone has to say.
    func say(_ text: String) {
        content.notice = text
        content.answers += 1
    }

    /// The phone does not let the app ring, although something is to ring. The core's notice about the tap stays.
    public func alarmsAreOff() { sayToo(shellWords(language: phoneLanguage()).noNotifications) }

    /// The system rings without a sound.
    public func alarmsAreSilent() { sayToo(shellWords(language: phoneLanguage()).alarmSoundsOff) }

    /// Live Activities are switched off, so the lock screen has no wait and no keys.
    public func waitIsHidden() { sayToo(shellWords(language: phoneLanguage()).waitHidden) }

    /// The phone did not take an alarm.
    public func alarmFailed() { sayToo(shellWords(language: phoneLanguage()).alarmNotSet) }

    private func sayToo(_ words: String) {
        guard !content.notice.contains(words) else { return }
        say([content.notice, words].filter { !$0.isBlank }.joined(separator: " "))
    }

    /// A tap that was not made by a thumb alone: nothing is logged, and that can be felt, heard and seen.
    public func tapRejected() {
        content.rejectedTaps += 1
        onEcho?(.ignored)
    }

    func refused(_ refusal: Refusal) {
        say(refusal.text)
        onEcho?(.refused)
    }

    /// Long work, off the main thread and outside the line: taps wait for it, its progress does not.
    func long<T: Sendable>(
        _ work: @escaping @Sendable (Restwater) async throws -> T,
        then: @escaping @MainActor @Sendable (RestwaterState, T) -> Void,
        ended: @escaping @MainActor @Sendable (RestwaterState) -> Void = { _ in }
    ) {
        waiting += 1
        let core = line.core
        Task {
            do {
                then(self, try await work(core))
            } catch {
                refused(Refusal(error))
            }
            ended(self)
            answered()
        }
    }

    /// Blocking work with files, off the main thread and outside the line.
    func aside<T: Sendable>(
        _ work: @escaping @Sendable () throws -> T, then: @escaping @MainActor @Sendable (RestwaterState, T) -> Void,
        ended: @escaping @MainActor @Sendable (RestwaterState) -> Void = { _ in }
    ) {
        waiting += 1
        Task {
            do {
                then(self, try await offMain(work))
            } catch {
                refused(FileTrouble.refusal(of: error))
            }
            ended(self)
            answered()
        }
    }

    private func answered() {
        waiting -= 1
        guard waiting == 0 else { return }
        let calls = settledCalls
        settledCalls = []
        calls.forEach { $0.resume() }
    }

    /// Returns when every call so far, and the calls that followed from it, have been answered.
    public func settled() async {
        guard waiting > 0 else { return }
        await withCheckedContinuation { settledCalls.append($0) }
    }

    private func tellOfChange() {
        #if canImport(Combine)
        objectWillChange.send()
        #endif
    }
}
