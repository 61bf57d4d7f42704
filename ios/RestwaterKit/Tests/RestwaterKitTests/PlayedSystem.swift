import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// The system's notification centre as its documentation describes it: requests stay pending after the process that
/// made them has ended, and ring at their time.
final class PlayedAlarms: AlarmCenter, @unchecked Sendable {
    private let lock = NSLock()
    private var allowed: AlarmPermission
    private var answer: Bool
    private var set: [UUID: PlannedAlarm] = [:]
    private(set) var requests = 0

    init(_ allowed: AlarmPermission = .granted, answers: Bool = true) { (self.allowed, answer) = (allowed, answers) }

    var pending: [PlannedAlarm] { lock.withLock { Array(set.values) } }
    func change(to permission: AlarmPermission) { lock.withLock { allowed = permission } }

    /// The dialog was closed without an answer.
    var dialogFails = false
    /// How long the angler looks at the dialog, in nanoseconds.
    var answersAfter: UInt64 = 0

    func permission() async -> AlarmPermission { lock.withLock { allowed } }
    func requestPermission() async throws -> Bool {
        lock.withLock { requests += 1 }
        if dialogFails { throw Declined() }
        if answersAfter > 0 { try await Task.sleep(nanoseconds: answersAfter) }
        return lock.withLock {
            allowed = answer ? .granted : .refused
            return answer
        }
    }
    /// The phone's clock: what was set for a time that has passed by now has rung, and is still visible. Without one, nothing rings.
    var clock: HandClock?

    func known() async throws -> KnownAlarms {
        lock.withLock {
            let rung = set.filter { alarm in clock.map { alarm.value.at <= $0.moment.date } ?? false }.keys
            return KnownAlarms(pending: Set(set.keys).subtracting(rung), rung: Set(rung))
        }
    }
    /// Alarms that it does not take, by what they ring for.
    var declines: Set<String> = []
    struct Declined: Error {}

    func schedule(_ alarm: PlannedAlarm) async throws {
        if declines.contains(alarm.id) { throw Declined() }
        // The system takes its time.
        try await Task.sleep(nanoseconds: 5_000_000)
        lock.withLock { set[alarm.systemId] = alarm }
    }
    func cancel(_ ids: Set<UUID>) async throws {
        try await Task.sleep(nanoseconds: 5_000_000)
        lock.withLock { ids.forEach { set[$0] = nil } }
    }
}

/// The system's Live Activities: they outlive the process, end after eight hours, and can be swiped away.
final class PlayedActivities: ActivityCenter, @unchecked Sendable {
    struct Refused: Error {}
    private let lock = NSLock()
    private var all: [ShownActivity] = []
    private var next = 1
    private var background = false
    private var allowed = true
    private(set) var updates = 0

    var list: [ShownActivity] { lock.withLock { all } }
    /// Whether the app may begin one: not in the background.
    func inBackground(_ background: Bool) { lock.withLock { self.background = background } }
    /// The angler swipes it away, or eight hours have passed.
    func endAll() {
        lock.withLock { all = all.map { ShownActivity(id: $0.id, wait: $0.wait, startedAt: $0.startedAt, isActive: false) } }
    }

    /// The angler's own setting.
    func allow(_ allowed: Bool) { lock.withLock { self.allowed = allowed } }

    func areAllowed() async -> Bool { lock.withLock { allowed } }
    func shown() async -> [ShownActivity] { lock.withLock { all } }
    func start(_ wait: RunningWait, at: Date) async throws {
        try await Task.sleep(nanoseconds: 5_000_000)
        try lock.withLock {
            if background { throw Refused() }
            all.append(ShownActivity(id: "activity \(next)", wait: wait, startedAt: at, isActive: true))
            next += 1
        }
    }
    func update(_ id: String, to wait: RunningWait) async {
        lock.withLock {
            updates += 1
            all = all.map { $0.id == id ? ShownActivity(id: id, wait: wait, startedAt: $0.startedAt, isActive: $0.isActive) : $0 }
        }
    }
    func end(_ id: String) async { lock.withLock { all.removeAll { $0.id == id } } }
}

/// A phone whose process ends and starts again, with one log, one notification centre and one lock screen.
@MainActor
final class Handset {
    let folder = FileManager.default.temporaryDirectory.appendingPathComponent("handset-\(UUID().uuidString)")
    let defaults = UserDefaults(suiteName: "handset-\(UUID().uuidString)")!
    let clock = HandClock()
    let alarms: PlayedAlarms
    let activities = PlayedActivities()
    private(set) var session: PhoneSession!
    private(set) var echoes: [Echo] = []

    /// How often the app has rung by itself.
    private(set) var rung = 0
    /// How long the app meant to sleep before that, and how often it was woken.
    private(set) var slept: [TimeInterval] = []
    private var woken = 0

    init(alarms: PlayedAlarms = PlayedAlarms()) {
        self.alarms = alarms
        alarms.clock = clock
    }

    /// The time that the app has slept for has passed.
    func wakeUp() async throws {
        // What was begun is asleep by then, and afterwards what woke up is through.
        try await Task.sleep(nanoseconds: 50_000_000)
        woken += 1
        try await Task.sleep(nanoseconds: 50_000_000)
    }

    var state: RestwaterState {
        get throws {
            guard case .open(let state) = session.opening.stage else { throw Refusal(kind: .internal, text: "not open") }
            return state
        }
    }

    /// Starts the process, in the foreground or in the background for an intent.
    func launch(
        _ phase: Phase? = .active, open: @escaping LogOpener = { try openLog(in: $0, clock: $1) },
        readable: @escaping @MainActor () -> Bool = { true }
    ) async {
        let clock = clock
        let opening = Opening(folder: folder, defaults: defaults, clock: { clock.moment }, readable: readable, open: open)
        session = PhoneSession(
            opening: opening, alarms: [alarms], activities: activities, clock: { clock.moment },
            sleep: { @MainActor [weak self] seconds in
                self?.slept.append(seconds)
                let before = self?.woken
                while let self, self.woken == before { try await Task.sleep(nanoseconds: 2_000_000) }
            })
        session.onRing = { @MainActor [unowned self] in rung += 1 }
        session.onOpen = { @MainActor [unowned self] state in listen(to: state) }
        activities.inBackground(phase != .active)
        if let phase { session.phase(phase) }
        await opening.settled()
        await session.settled()
    }

    private func listen(to state: RestwaterState) { state.onEcho = { [unowned self] in echoes.append($0) } }

    /// Ends the process without warning, as the system does in the background.
    func kill() async {
        session.phase(.background)
        await session.settled()
        session = nil
    }

    /// The battery dies in the cold, or the app crashes: it does not go to the background first.
    func goesOut() async throws {
        // Nothing of it is still at work, and the system releases its log.
        await session.settled()
        try state.line.core.pause()
        session = nil
    }

    func act(_ action: Action) async throws {
        try state.act(action)
        await session.settled()
        clock.forward(ms: 30_000)
    }

    /// A session with an alarm fifteen minutes after each cast.
    func begin() async throws {
        try await act(.startSession(setup: nil))
        try await act(.phone(tap: .alarm(alarm: .after(15))))
    }

    /// A session of two rods: the second one is out and the first one chosen. Returns the alarm of the second.
    func castSecondRod() async throws -> PlannedAlarm {
        try await act(.setup(tap: .rods(rods: 2)))
        try await begin()
        try await act(.cast(rod: 2))
        try await act(.chooseRod(rod: 1))
        return try XCTUnwrap(alarms.pending.first)
    }
}
