import ActivityKit
import Foundation
import RestwaterKit

/// The running wait on the lock screen, as the system shows it. Activities are looked up where they are used and never
/// kept: an `Activity` must not be passed from one thread to another.
struct LiveActivities: ActivityCenter {
    func areAllowed() async -> Bool { ActivityAuthorizationInfo().areActivitiesEnabled }

    func shown() async -> [ShownActivity] {
        Activity<WaitAttributes>.activities.filter { $0.activityState != .dismissed }.map { activity in
            ShownActivity(
                id: activity.id, wait: RunningWait(activity.content.state), startedAt: activity.attributes.startedAt,
                isActive: activity.activityState == .active || activity.activityState == .stale
            )
        }
    }

    func start(_ wait: RunningWait, at: Date) async throws {
        _ = try Activity.request(attributes: WaitAttributes(startedAt: at), content: content(wait), pushType: nil)
    }

    func update(_ id: String, to wait: RunningWait) async {
        for activity in Activity<WaitAttributes>.activities where activity.id == id { await activity.update(content(wait)) }
    }

    func end(_ id: String) async {
        for activity in Activity<WaitAttributes>.activities where activity.id == id {
            await activity.end(nil, dismissalPolicy: .immediate)
        }
    }

    private func content(_ wait: RunningWait) -> ActivityContent<WaitAttributes.ContentState> {
        ActivityContent(state: WaitAttributes.ContentState(wait), staleDate: nil)
    }
}

extension WaitAttributes.ContentState {
    init(_ wait: RunningWait) {
        let keys = wait.keys.map { WaitAttributes.Key(id: $0.id, label: $0.label, rod: $0.rod.map(Int.init)) }
        self.init(title: wait.title, text: wait.text, since: wait.since, keys: keys)
    }
}

extension RunningWait {
    init(_ state: WaitAttributes.ContentState) {
        let keys = state.keys.compactMap { OutsideKey(id: $0.id, label: $0.label, rod: $0.rod.flatMap(UInt8.init(exactly:))) }
        self.init(title: state.title, text: state.text, since: state.since, keys: keys)
    }
}
