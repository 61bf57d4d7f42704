import Foundation
import RestwaterCore

/// The log of the process: open, or what the core said where it could not be opened, with the one way out of a damaged one.
@MainActor
public final class Opening: Observed {
    /// The state over the open log.
    public private(set) var state: Result<RestwaterState, Refusal> {
        willSet { tellOfChange() }
        didSet { onOpen?(state) }
    }

    /// Called when the log has been opened anew.
    public var onOpen: (@MainActor (Result<RestwaterState, Refusal>) -> Void)?
    private let folder: URL
    private let defaults: UserDefaults
    private let clock: Clock

    /// Until a screen comes to the front (the system may start the process without one) the log is put aside after each call.
    public init(folder: URL, defaults: UserDefaults = .standard, clock: @escaping Clock = present) {
        (self.folder, self.defaults, self.clock) = (folder, defaults, clock)
        state = Self.open(folder, defaults, clock)
    }

    private static func open(_ folder: URL, _ defaults: UserDefaults, _ clock: @escaping Clock) -> Result<RestwaterState, Refusal> {
        do {
            return .success(RestwaterState(core: try openLog(in: folder, clock: clock), away: true, defaults: defaults, clock: clock))
        } catch {
            return .failure(error)
        }
    }

    /// What is shown while there is no state: what happened, and the key that saves what can be saved from a damaged log.
    public func trouble(on measure: GlassMeasure, letters: Letters) -> Sheet {
        guard case .failure(let refusal) = state else { return Sheet() }
        return .trouble(refusal.text, key: refusal.kind == .damaged ? shellWords().salvage : nil, on: measure, letters: letters)
    }

    /// Sets the damaged log aside, begins a new one with what could be saved, and says what that was.
    public func salvage() {
        let said: String
        do {
            said = try RestwaterCore.salvage(dir: folder.path, now: clock())
        } catch {
            state = .failure(Refusal(error))
            return
        }
        state = Self.open(folder, defaults, clock)
        if case .success(let state) = state { state.say(said) }
    }

    private func tellOfChange() {
        #if canImport(Combine)
        objectWillChange.send()
        #endif
    }
}
