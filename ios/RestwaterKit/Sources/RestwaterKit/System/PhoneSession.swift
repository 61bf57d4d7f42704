import Foundation
import RestwaterCore

/// The one log of the process, with everything that the phone does apart from its screens. The app creates it before
/// its first window, so that a tap on the lock screen finds it however the process was started.
@MainActor
public final class PhoneSession {
    /// The log, opened off the main thread.
    public let opening: Opening
    public let contacts = Contacts()
    public let reconciler: Reconciler
    /// Called once the log is open.
    public var onOpen: (@MainActor (RestwaterState) -> Void)?
    /// Called when the plan has been read: whether the screen stays on.
    public var onPlan: (@MainActor (PhonePlan) -> Void)?
    /// Called when the app has to ring itself, since the system may not.
    public var onRing: (@MainActor () -> Void)?
    private var latestPhase: Phase?
    private let clock: Clock
    private let sleep: @Sendable (TimeInterval) async throws -> Void
    /// Rings in the foreground if the system does not.
    private var ringer: Task<Void, Never>?
    /// What it has rung for.
    private var rung: [PlannedAlarm] = []
    /// Files that came while the log could not be opened.
    private var filesToTakeIn: [URL] = []

    public init(
        opening: Opening, alarms: [any AlarmCenter], activities: any ActivityCenter, clock: @escaping Clock = present,
        sleep: @escaping @Sendable (TimeInterval) async throws -> Void = { try await Task.sleep(nanoseconds: UInt64($0 * 1e9)) }
    ) {
        (self.opening, self.clock, self.sleep) = (opening, clock, sleep)
        reconciler = Reconciler(alarms: alarms, activities: activities, clock: clock)
        opening.onOpen = { [unowned self] state in listen(to: state) }
        opening.start()
    }

    private func listen(to state: RestwaterState) {
        state.onPlan = { [unowned self, unowned state] plan in
            onPlan?(plan)
            // Asked when a session is open and the app is in the foreground, before there is anything to ring; never while a
            // fish is on.
            if plan.wait != nil, latestPhase == .active, state.content.bank?.state != .fishOn {
                reconciler.askForAlarms { [weak state] in state?.plan }
            }
            reconciler.carryOut(plan)
        }
        reconciler.onAlarmsRefused = { [unowned state] in state.alarmsAreOff() }
        reconciler.onAlarmsSilent = { [unowned state] in state.alarmsAreSilent() }
        reconciler.onWaitHidden = { [unowned state] in state.waitIsHidden() }
        reconciler.onAlarmFailed = { [unowned state] _ in state.alarmFailed() }
        reconciler.onLeftToRing = { [unowned self] due, planned in ringInFront(due: due, planned: planned) }
        onOpen?(state)
        state.comeUp()
        if let latestPhase { state.phase(latestPhase) }
        filesToTakeIn.forEach { state.offer($0) }
        filesToTakeIn = []
    }

    /// The app goes to the background or comes back. In the foreground, a log that could not be opened is tried again.
    public func phase(_ phase: Phase) {
        latestPhase = phase
        switch opening.stage {
        case .open(let state): state.phase(phase)
        case .opening, .failed: if phase == .active { opening.start() }
        }
    }

    /// The phone was unlocked: its files can be read.
    public func unlocked() { opening.start() }

    /// The phone's clock or zone has changed.
    public func clockWasSet() {
        if case .open(let state) = opening.stage { state.clockWasSet() }
    }

    /// Returns when everything begun so far is on the disk and known to the system.
    public func settled() async {
        if case .open(let state) = opening.stage { await state.settled() }
        await reconciler.settled()
    }

    /// An alarm is due in the foreground: its title says what it rings for.
    public func dueInFront(_ title: String) {
        if case .open(let state) = opening.stage { state.say(title) }
    }

    /// If the system may not ring, the app does in the foreground: each alarm once, and one whose minute passed meanwhile as soon
    /// as the app is in the foreground again. One that has rung and is due is the same one whatever its time is now: the phone
    /// corrects its clock. One that is planned for another time rings again.
    private func ringInFront(due: [PlannedAlarm], planned: [PlannedAlarm]) {
        ringer?.cancel()
        rung.removeAll { rung in !due.contains { $0.isSet(as: rung.systemId) } && !planned.contains { $0.isReading(of: rung) } }
        let toRing =
            due.filter { alarm in !rung.contains { alarm.isSet(as: $0.systemId) } }
            + planned.filter { alarm in !rung.contains { alarm.isReading(of: $0) } }
        guard let alarm = toRing.min(by: { $0.at < $1.at }) else { return ringer = nil }
        ringer = Task { [weak self, sleep, clock] in
            let left = alarm.at.timeIntervalSince(clock().date)
            if left > 0 { do { try await sleep(left) } catch { return } }
            guard let self, latestPhase == .active, !Task.isCancelled else { return }
            rung.append(alarm)
            dueInFront(alarm.title)
            onRing?()
            ringInFront(due: due, planned: planned)
        }
    }

    /// An alarm of the system was tapped.
    @discardableResult
    public func alarmOpened(_ systemId: UUID) -> Task<Void, Never> {
        Task {
            do { try await opening.ready().alarmOpened(systemId) } catch { Log.fault("opening an alarm", error) }
        }
    }

    /// An alarm that the system itself rings was stopped. When this returns, the lock screen shows its rod.
    public func alarmAnswered(_ systemId: UUID) async throws(Refusal) {
        _ = try await told { state throws(Refusal) in
            try await state.alarmAnswered(systemId)
            return ""
        }
    }

    /// A file from another app. If the log can't be opened, the file is shown once it can be.
    public func takeIn(_ url: URL) {
        Task {
            do { try await opening.ready().offer(url) } catch {
                Log.fault("taking in a file", error)
                filesToTakeIn.append(url)
            }
        }
    }

    /// A tap from outside the screens; returns the core's answer. By then the entry is on the disk, the alarms are set
    /// and the lock screen is up to date. If nothing could be logged, the lock screen says why.
    public func tap(_ key: OutsideKey) async throws(Refusal) -> String {
        // The moment of the tap: the log may still have to be opened.
        let at = clock()
        do {
            return try await told { state throws(Refusal) in try await state.tapFromOutside(key, at: at) }
        } catch {
            await reconciler.say(error.text)
            throw error
        }
    }

    /// A tap on the key that is due next.
    public func tapNext() async throws(Refusal) -> String {
        let at = clock()
        return try await told { state throws(Refusal) in try await state.tapNextFromOutside(at: at) }
    }

    /// How long the chosen rod has been out, and what the record says about it.
    public func howLong() async throws(Refusal) -> String {
        try await told { state throws(Refusal) in try await state.waitInWords() }
    }

    /// Does this once the log is open, and returns when the system is up to date; also if it was refused, since
    /// something that an earlier process left with the system may have to be corrected.
    private func told(
        _ work: @MainActor (RestwaterState) async throws(Refusal) -> String
    ) async throws(Refusal) -> String {
        let state = try await opening.ready()
        do {
            let said = try await work(state)
            await reconciler.settled()
            return said
        } catch {
            await reconciler.settled()
            throw error
        }
    }
}
