import Foundation
import RestwaterCore

/// Opens a log, or begins one; blocks while it reads.
public typealias LogOpener = @Sendable (URL, Clock) throws -> Restwater

/// The log of the process: being opened, open, or the core's error if it could not be opened, with the one remedy for a
/// damaged one. Opening and salvaging read the whole log, so both run off the main thread.
@MainActor
public final class Opening: Observed {
    public enum Stage {
        case opening
        case open(RestwaterState)
        case failed(Refusal)
    }

    public private(set) var stage = Stage.opening {
        willSet { tellOfChange() }
    }

    /// Colours and hand as last set, for what is shown while there is no state.
    public var settings: Settings { LastSettings(defaults: defaults).read }

    /// Called when the log has been opened.
    public var onOpen: (@MainActor (RestwaterState) -> Void)?
    private let folder: URL
    private let defaults: UserDefaults
    private let clock: Clock
    private let open: LogOpener
    /// Whether the system lets the app's files be read: not before the first unlock after a restart.
    private let readable: @MainActor () -> Bool
    /// Whether they could not be read when the log was to be opened.
    private var isLocked = false
    private var work: Task<Void, Never>?

    /// Nothing is read before `start`. Until a screen comes to the front (the system may start the process without
    /// one), the log is released after each call.
    public init(
        folder: URL, defaults: UserDefaults = .standard, clock: @escaping Clock = present,
        readable: @escaping @MainActor () -> Bool = { true }, open: @escaping LogOpener = { try openLog(in: $0, clock: $1) }
    ) {
        (self.folder, self.defaults, self.clock, self.readable, self.open) = (folder, defaults, clock, readable, open)
    }

    /// Opens the log, unless it is open or being opened. One that failed is tried again: the phone may have been locked
    /// since it was switched on, or another process of ours may still have held the log.
    public func start() {
        if case .open = stage { return }
        begin { [folder, clock, open] in (try open(folder, clock), nil) }
    }

    /// The state of the open log, once there is one; a failed opening is tried once more.
    public func ready() async throws(Refusal) -> RestwaterState {
        start()
        await settled()
        switch stage {
        case .open(let state): return state
        case .failed(let refusal): throw refusal
        case .opening: throw Refusal(kind: .busy, text: isLocked ? words.phoneLocked : words.stillOpening)
        }
    }

    private var words: ShellWords { shellWords(language: phoneLanguage()) }

    /// Returns when no opening is in progress.
    public func settled() async {
        while let work { await work.value }
    }

    /// Sets the damaged log aside, begins a new one with what could be saved, and reports what that was.
    public func salvage() {
        begin { [folder, clock, open, language = phoneLanguage()] in
            let said = try RestwaterCore.salvage(dir: folder.path, now: clock(), language: language)
            return (try open(folder, clock), said)
        }
    }

    /// What is shown while there is no state: nothing yet, that the phone has to be unlocked first, or what happened and the
    /// key that saves what can be saved from a damaged log.
    public func trouble(on measure: GlassMeasure, letters: Letters) -> Sheet {
        guard case .failed(let refusal) = stage else {
            return isLocked ? .trouble(words.phoneLocked, key: nil, on: measure, letters: letters) : Sheet()
        }
        let key = refusal.kind == .damaged ? words.salvage : nil
        return .trouble(refusal.text, key: key, on: measure, letters: letters)
    }

    private func begin(_ reading: @escaping @Sendable () throws -> (Restwater, String?)) {
        guard work == nil else { return }
        work = Task {
            do {
                let (core, said) = try await offMain(reading)
                let state = RestwaterState(core: core, away: true, defaults: defaults, clock: clock)
                if let said { state.say(said) }
                isLocked = false
                stage = .open(state)
                onOpen?(state)
            } catch {
                // What went wrong can't be known while no file can be read: it is neither the folder's fault nor the log's.
                let refusal = Refusal(error)
                isLocked = !refusal.isOfALogThatWasRead && !readable()
                stage = isLocked ? .opening : .failed(refusal)
            }
            work = nil
        }
    }

    private func tellOfChange() {
        #if canImport(Combine)
        objectWillChange.send()
        #endif
    }
}
