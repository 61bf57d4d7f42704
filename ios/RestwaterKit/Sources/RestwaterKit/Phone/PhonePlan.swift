import Foundation
import RestwaterCore

/// Something that is to ring, in the form that the system's notifications need.
public struct PlannedAlarm: Equatable, Sendable, Identifiable {
    /// The same for the same cast: a later plan replaces it.
    public let id: String
    public let at: Date
    public let title: String
    public let text: String
    /// The rod that it rings for; `nil` for the match.
    public let rod: UInt8?

    public init(id: String, at: Date, title: String, text: String, rod: UInt8? = nil) {
        (self.id, self.at, self.title, self.text, self.rod) = (id, at, title, text, rod)
    }
}

/// What the lock screen shows about the chosen rod, in the form that a Live Activity needs.
public struct RunningWait: Equatable, Sendable {
    /// "Rod 1: out since 12:24".
    public let title: String
    /// What the record says about it.
    public let text: String
    /// The moment from which a clock counts up, or `nil` if there is nothing to count.
    public let since: Date?
    public let keys: [OutsideKey]

    public init(title: String, text: String, since: Date?, keys: [OutsideKey]) {
        (self.title, self.text, self.since, self.keys) = (title, text, since, keys)
    }
}

/// What the phone is to do while the app is in the background: the core's plan, in the system's own terms.
public struct PhonePlan: Equatable, Sendable {
    public let keepsAwake: Bool
    /// `nil` without a session.
    public let wait: RunningWait?
    /// What is to ring.
    public let alarms: [PlannedAlarm]
    /// Alarms that are due and have not been answered: only the end of its cast silences one.
    public let due: [PlannedAlarm]

    /// Nothing to show and nothing to ring.
    public static let none = PhonePlan(keepsAwake: false, wait: nil, alarms: [])

    init(keepsAwake: Bool, wait: RunningWait?, alarms: [PlannedAlarm], due: [PlannedAlarm] = []) {
        (self.keepsAwake, self.wait, self.alarms, self.due) = (keepsAwake, wait, alarms, due)
    }

    init(_ watch: WatchView) {
        keepsAwake = watch.keepAwake
        wait =
            watch.open
            ? RunningWait(
                title: watch.title, text: watch.text, since: watch.sinceWallMs.map(Self.second),
                keys: watch.keys.map { OutsideKey(key: $0.key, label: $0.label, rod: watch.rod) }
            ) : nil
        alarms = watch.alarms.map(Self.planned)
        due = watch.due.map(Self.planned)
    }

    private static func planned(_ alarm: WatchAlarm) -> PlannedAlarm {
        PlannedAlarm(id: alarm.id, at: second(alarm.atWallMs), title: alarm.title, text: alarm.text, rod: alarm.rod)
    }

    /// Rounded to the second, so that a plan read twice is the same plan: the phone's two clocks differ by less.
    private static func second(_ ms: Int64) -> Date { Date(timeIntervalSince1970: (Double(ms) / 1_000).rounded()) }
}

extension RestwaterState {
    /// Reads the plan again; after each tap, and when the app comes to the front.
    func readPlan() {
        let at = clock()
        ask({ core in try core.watch(now: at) }) { state, watch in state.planned(watch) }
    }

    /// An alarm of the system was tapped: the Bank, with the rod that it rang for and what it says. A key there is meant for
    /// that rod.
    func alarmOpened(_ systemId: UUID) {
        let at = clock()
        open(.bank)
        ask({ core in (try core.watch(now: at), try core.screen(which: .bank, now: at)) }) { state, answer in
            let plan = PhonePlan(answer.0)
            state.content.show(answer.1)
            guard let alarm = (plan.due + plan.alarms).first(where: { $0.isSet(as: systemId) }) else { return }
            state.say(alarm.title)
            guard let rod = state.content.bank?.rods.first(where: { $0.rod == alarm.rod && !$0.chosen }) else { return }
            state.act(rod.choose, quietly: true) { $0.say(alarm.title) }
        }
    }

    func planned(_ watch: WatchView) {
        plan = PhonePlan(watch)
        onPlan?(plan)
    }
}
