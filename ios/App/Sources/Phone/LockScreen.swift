import ActivityKit
import Foundation
import RestwaterKit

/// The running waits on the lock screen. The system's own clock ticks there; we speak only when a wait begins, changes or ends.
@MainActor
final class LockScreen {
    private var activity: Activity<WaitAttributes>?
    private var shown: [RunningWait] = []

    func show(_ waits: [RunningWait]) {
        guard waits != shown else { return }
        shown = waits
        let state = WaitAttributes.ContentState(waits: waits.map(WaitAttributes.Wait.init))
        let content = ActivityContent(state: state, staleDate: nil)
        if let activity {
            let ended = waits.isEmpty
            self.activity = ended ? nil : activity
            Task {
                if ended { await activity.end(content, dismissalPolicy: .immediate) } else { await activity.update(content) }
            }
        } else if !waits.isEmpty, ActivityAuthorizationInfo().areActivitiesEnabled {
            // Refused while the app is in the background: the next tap in front begins it.
            activity = try? Activity.request(attributes: WaitAttributes(), content: content, pushType: nil)
            if activity == nil { shown = [] }
        }
    }
}

extension WaitAttributes.Wait {
    init(_ wait: RunningWait) {
        self.init(
            rod: Int(wait.rod), name: wait.name, since: wait.since, sinceText: wait.sinceText, headline: wait.headline, spot: wait.spot,
            holdUntil: wait.holdUntil, recastBy: wait.recastBy
        )
    }
}
