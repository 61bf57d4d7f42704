import Foundation
import RestwaterCore

/// A key that can be tapped without the screens: lock screen, action button, shortcut, voice.
public struct OutsideKey: Equatable, Hashable, Sendable, Identifiable {
    let key: Key
    /// Its word.
    public let label: String
    /// The rod that it was shown for, whichever is chosen when it is tapped; `nil` for the chosen one.
    public let rod: UInt8?
    /// Its id for intents: "WOUND_IN".
    public var id: String { String.tag(key) }

    public static let cast = OutsideKey(key: .cast, label: "")
    public static let bite = OutsideKey(key: .bite, label: "")
    public static let woundIn = OutsideKey(key: .woundIn, label: "")
    public static let undo = OutsideKey(key: .undo, label: "")

    init(key: Key, label: String, rod: UInt8? = nil) { (self.key, self.label, self.rod) = (key, label, rod) }

    /// The key with that id; `nil` for any other word.
    public init?(id: String, label: String = "", rod: UInt8? = nil) {
        guard let key = Key.allCases.first(where: { String.tag($0) == id }) else { return nil }
        self.init(key: key, label: label, rod: rod)
    }
}

extension RestwaterState {
    /// Taps a key for the rod that it was shown for, whether or not the app is in the foreground. Only what the Bank would offer
    /// for that rod can be tapped. Returns the core's answer, whatever else is under way; the entry has the moment of the tap,
    /// not that of its turn.
    public func tapFromOutside(_ outside: OutsideKey, at: Moment? = nil) async throws(Refusal) -> String {
        let at = at ?? clock()
        try await readFromOutside(at)
        return try await tapOffered(outside, at)
    }

    /// Taps the key that the core says is due next.
    public func tapNextFromOutside(at: Moment? = nil) async throws(Refusal) -> String {
        let at = at ?? clock()
        guard let next = try await readFromOutside(at) else { throw Refusal(kind: .notNow, text: spokenWait) }
        return try await tapOffered(next, at)
    }

    /// An alarm that the system itself rings was stopped: a key tapped after that is meant for its rod. The screen that is open
    /// stays.
    func alarmAnswered(_ systemId: UUID) async throws(Refusal) {
        let at = clock()
        try await readFromOutside(at)
        guard let alarm = (plan.due + plan.alarms).first(where: { $0.isSet(as: systemId) }) else { return }
        say(alarm.title)
        guard let rod = content.bank?.rods.first(where: { $0.rod == alarm.rod && !$0.chosen }) else { return }
        _ = try await answer({ core in try core.act(action: rod.choose, at: at) }) { state, update in
            state.took(update, quietly: true)
            state.say(alarm.title)
        }
        refresh()
        try await readFromOutside(clock())
    }

    /// How long the chosen rod has been out, and what the record says about it.
    public func waitInWords() async throws(Refusal) -> String {
        try await readFromOutside(clock())
        return content.bank?.waitSpoken ?? content.notice
    }

    private func tapOffered(_ outside: OutsideKey, _ at: Moment) async throws(Refusal) -> String {
        content.paging.keys = 0
        let update: Update
        do {
            update = try await answer({ core in try core.actOutside(key: outside.key, rod: outside.rod, at: at) }) { state, update in
                state.took(update)
            }
        } catch {
            refused(error)
            throw error
        }
        refresh()
        let now = clock()
        _ = try await answer({ core in try core.watch(now: now) }) { state, watch in state.planned(watch) }
        return update.notice
    }

    /// The Bank as of the tap and the plan as of now, which may be later: an alarm that has become due since is not set again. The
    /// plan is read as well, so that what an earlier process left with the system is corrected even if the tap is refused.
    /// Returns the key that was due at the tap.
    @discardableResult private func readFromOutside(_ at: Moment) async throws(Refusal) -> OutsideKey? {
        let now = clock()
        let read = try await answer({ core in
            (try core.screen(which: .bank, now: at), try core.watch(now: now), try core.watch(now: at))
        }) { state, read in
            state.content.show(read.0)
            state.planned(read.1)
        }
        let watch = read.2
        return watch.next.map { OutsideKey(key: $0, label: "", rod: watch.rod) }
    }

    private var spokenWait: String {
        content.bank?.rods.first { $0.chosen }?.spoken ?? content.bank?.advice.headline ?? content.notice
    }
}
