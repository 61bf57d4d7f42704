import RestwaterCore

/// What the phone is to do beside the screen. Plain values: the app hands them to the system as they stand.
public struct PhonePlan: Equatable, Sendable {
    /// One alarm a rod that is out and has a time to recast by.
    public internal(set) var alarms: [RecastAlarm] = []
    /// The waits that run, for the lock screen.
    public internal(set) var waits: [RunningWait] = []
    /// Whether the glass stays lit: while a session is open.
    public internal(set) var keepsAwake = false

    public init() {}
}

extension RestwaterState {
    /// Plans from the Bank as last read: what runs now, and what the Bank will say at the minute to recast by.
    func planAhead(at now: Moment) {
        guard let bank = seen.bank else { return }
        plan.keepsAwake = bank.state != .noSession
        plan.waits = RunningWait.all(of: bank, now: now)
        let kept = plan.alarms.filter { alarm in alarm.stillHolds(for: bank, now: now) }
        guard let due = RecastAlarm.due(of: bank, now: now) else {
            plan.alarms = kept
            return
        }
        if let same = kept.first(where: { $0.rod == due.rod }), same.isFor(due) {
            plan.alarms = kept
            return
        }
        ask({ core in try core.screen(which: .bank, now: due.at) }) { state, screen in
            guard case .bank(let then) = screen else { return }
            let alarm = RecastAlarm(due, as: then)
            state.plan.alarms = (kept.filter { $0.rod != alarm.rod } + [alarm]).sorted { $0.rod < $1.rod }
        }
    }
}
