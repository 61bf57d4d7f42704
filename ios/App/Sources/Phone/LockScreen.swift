import ActivityKit
import Foundation
import RestwaterKit

/// The running wait on the lock screen. The system's own clock ticks there; we speak only when something has changed.
@MainActor
final class LockScreen {
    private var activity: Activity<WaitAttributes>?
    private var shown: RunningWait?

    func show(_ wait: RunningWait?) {
        guard wait != shown else { return }
        shown = wait
        guard let wait else {
            let ended = activity
            activity = nil
            Task { await ended?.end(nil, dismissalPolicy: .immediate) }
            return
        }
        let content = ActivityContent(state: WaitAttributes.ContentState(wait), staleDate: nil)
        if let activity {
            Task { await activity.update(content) }
        } else if ActivityAuthorizationInfo().areActivitiesEnabled {
            // Refused while the app is in the background: the next tap in front begins it.
            activity = try? Activity.request(attributes: WaitAttributes(), content: content, pushType: nil)
            if activity == nil { shown = nil }
        }
    }
}

extension WaitAttributes.ContentState {
    init(_ wait: RunningWait) {
        self.init(title: wait.title, text: wait.text, since: wait.since, keys: wait.keys.map { WaitAttributes.Key(id: $0.id, label: $0.label) })
    }
}
