import Foundation
import RestwaterCore

/// What the screens draw, held once, and the one way to the core. Taps go to the core one after another, each with the
/// moment the thumb lifted; what the core answers is what is shown.
@MainActor
public final class RestwaterState: Observed {
    /// What is drawn. Each change is told before it happens to Combine, where there is one, and after it to `onChange`.
    public internal(set) var seen = Seen() {
        willSet { tellOfChange() }
        didSet { onChange?() }
    }

    /// Called on the main thread after each change of `seen`.
    public var onChange: (@MainActor () -> Void)?
    /// Called with what should be felt and heard of a tap.
    public var onEcho: (@MainActor (Echo) -> Void)?
    /// Called when the phone's position is wanted; `positionRead` takes the answer. Not set where there is no receiver.
    public var onPositionWanted: (@MainActor () -> Void)?
    /// Called when the plan of what the phone does beside the screen has changed.
    public var onPlan: (@MainActor (PhonePlan) -> Void)?
    /// What the phone is to do beside the screen: alarms, the running wait, keeping awake.
    public internal(set) var plan = PhonePlan.none {
        didSet { onPlan?(plan) }
    }

    let line: CoreLine
    let clock: Clock
    let backups: BackupFolder
    /// Whether the app lies in the background, its log put aside.
    var away: Bool
    /// What the last refused call said.
    var refusal: Refusal?
    /// The glasses of the fans, as last asked for.
    var fanGlass: FanGlass?
    var sceneGlass: FanGlass?
    var fanKey: FanKey?
    var sceneKey: SceneKey?
    /// The long work that runs.
    var running: Work?
    private var waiting = 0
    private var settledCalls: [CheckedContinuation<Void, Never>] = []

    /// Over that core; `away` where no screen is in front yet.
    public init(core: Restwater, away: Bool = false, defaults: UserDefaults = .standard, clock: @escaping Clock = present) {
        backups = BackupFolder(defaults: defaults)
        line = CoreLine(core)
        self.away = away
        self.clock = clock
    }

    /// Reads the screen that shows again, as of now.
    public func refresh() {
        guard !away else { return }
        let (at, which, lists) = (clock(), seen.showing.which, seen.showing == .screens)
        ask({ core in (try core.settings(), try core.screen(which: which, now: at), lists ? try core.doors() : nil) }) { state, answer in
            var seen = state.seen
            if let doors = answer.2 { seen.doors = doors }
            seen.settings = answer.0
            seen.show(answer.1)
            if seen != state.seen { state.seen = seen }
            if which == .bank { state.readFan() }
            state.readScene()
        }
    }

    /// Hands a tap to the core; `after` runs when it was taken.
    public func act(_ action: Action, then after: (@MainActor (RestwaterState) -> Void)? = nil) {
        let at = clock()
        ask({ core in try core.act(action: action, at: at) }) { state, update in
            state.seen.notice = update.notice
            state.seen.show(update.screen)
            state.onEcho?(update.repeated ? .ignored : .logged)
            after?(state)
            state.refresh()
            state.lookOut()
        }
    }

    /// Brings a screen to the top.
    public func open(_ showing: Showing) { open(showing, keepingNotice: false) }

    func open(_ showing: Showing, keepingNotice: Bool) {
        var seen = seen
        seen.showing = showing
        seen.turned = Turned()
        if showing == .match { seen.match = nil }
        if !keepingNotice { seen.notice = "" }
        self.seen = seen
        refresh()
    }

    /// Asks the core off the main thread; what went wrong is shown in the core's words.
    func ask<T: Sendable>(
        _ work: @escaping @Sendable (Restwater) throws -> T,
        then: @escaping @MainActor @Sendable (RestwaterState, T) -> Void
    ) {
        waiting += 1
        let away = away
        line.ask({ core in
            // A call from outside the screens (an intent) finds the log put aside, and leaves it so.
            defer { if away { try? core.pause() } }
            return try work(core)
        }) { answer in
            switch answer {
            case .success(let value): then(self, value)
            case .failure(let refusal): self.refused(refusal)
            }
            self.answered()
        }
    }

    /// Shows what the system or another part of the phone has to say, in the core's words.
    func say(_ text: String) { seen.notice = text }

    /// The phone does not let us ring, although something is to.
    public func alarmsAreOff() { say(shellWords().noNotifications) }

    func refused(_ refusal: Refusal) {
        self.refusal = refusal
        seen.notice = refusal.text
        onEcho?(.refused)
    }

    /// Long work, off the main thread and beside the line: taps wait for it, its progress does not.
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

    private func answered() {
        waiting -= 1
        guard waiting == 0 else { return }
        let calls = settledCalls
        settledCalls = []
        calls.forEach { $0.resume() }
    }

    /// Returns when every call so far, and what it led to, has been answered.
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
