import Foundation

/// Makes what the system rings and shows agree with the plan. It compares the plan with what is pending and shown at
/// the time, so that a process that was ended, or two that ran one after the other, leave nothing behind.
@MainActor
public final class Reconciler {
    /// Called once a session if something is to ring and the system does not allow it.
    public var onAlarmsRefused: (@MainActor () -> Void)?
    private let alarms: [any AlarmCenter]
    private let activities: any ActivityCenter
    private let clock: Clock
    private var next: PhonePlan?
    private var task: Task<Void, Never>?
    private var toldOfRefusal = false
    private var asked = false

    /// Takes alarm centres in order of preference: only the first one that the angler allows rings.
    public init(alarms: [any AlarmCenter], activities: any ActivityCenter, clock: @escaping Clock = present) {
        (self.alarms, self.activities, self.clock) = (alarms, activities, clock)
    }

    /// Carries out a plan; a newer one replaces a plan that has not been started.
    public func carryOut(_ plan: PhonePlan) {
        next = plan
        guard task == nil else { return }
        task = Task {
            while let plan = next {
                next = nil
                await reconcileAlarms(plan)
                await reconcileActivities(plan)
            }
            task = nil
        }
    }

    /// Returns when the last plan has been carried out. An intent awaits this before it ends: the system may suspend the
    /// process at once.
    public func settled() async {
        while let task { await task.value }
    }

    /// Asks the angler once, if they were never asked, then carries out the plan.
    public func askForAlarms(then plan: @escaping @MainActor () -> PhonePlan) {
        guard !asked else { return }
        asked = true
        Task {
            for center in alarms where await center.permission() == .notAsked {
                do {
                    if try await center.requestPermission() { break }
                } catch {
                    Log.fault("asking to ring", error)
                }
            }
            carryOut(plan())
        }
    }

    private func reconcileAlarms(_ plan: PhonePlan) async {
        var ringing: Int?
        for (i, center) in alarms.enumerated() where await center.permission() == .granted {
            ringing = i
            break
        }
        for (i, center) in alarms.enumerated() {
            await reconcile(center, with: i == ringing ? plan.alarms : [], leaving: i == ringing ? plan.due : [])
        }
        if ringing != nil || plan.wait == nil { toldOfRefusal = false }
        if ringing == nil && !plan.alarms.isEmpty { await tellOfRefusal() }
    }

    /// An alarm that has rung stays until the core no longer says that it is due, whatever its minute would be now:
    /// that moves with what is learned from another rod.
    private func reconcile(_ center: any AlarmCenter, with planned: [PlannedAlarm], leaving due: [PlannedAlarm]) async {
        do {
            let known = try await center.known()
            let wanted = Set(planned.map(\.systemId))
            let gone = known.subtracting(wanted).filter { id in !due.contains { $0.isSet(as: id) } }
            if !gone.isEmpty { try await center.cancel(gone) }
            for alarm in planned where !known.contains(alarm.systemId) { try await center.schedule(alarm) }
        } catch {
            Log.fault("setting alarms", error)
        }
    }

    /// Only if the last centre, which always exists, was refused: one that was not asked yet may still be allowed.
    private func tellOfRefusal() async {
        guard !toldOfRefusal, await alarms.last?.permission() == .refused else { return }
        toldOfRefusal = true
        onAlarmsRefused?()
    }

    private func reconcileActivities(_ plan: PhonePlan) async {
        let shown = await activities.shown()
        let now = clock().date
        let kept = plan.wait == nil ? nil : shown.filter { $0.isActive && !isOld($0, now) }.max { $0.startedAt < $1.startedAt }
        guard let wait = plan.wait else {
            for activity in shown { await activities.end(activity.id) }
            return
        }
        if let kept {
            if kept.wait != wait { await activities.update(kept.id, to: wait) }
        } else if await activities.areAllowed() {
            do {
                try await activities.start(wait, at: now)
            } catch {
                Log.fault("starting a Live Activity", error)
                // Refused in the background: an old activity that still counts is better than none until the app is in
                // front.
                return await keepTheNewest(of: shown, wait)
            }
        }
        for activity in shown where activity.id != kept?.id { await activities.end(activity.id) }
    }

    private func keepTheNewest(of shown: [ShownActivity], _ wait: RunningWait) async {
        let newest = shown.filter(\.isActive).max { $0.startedAt < $1.startedAt }
        for activity in shown where activity.id != newest?.id { await activities.end(activity.id) }
        if let newest { await activities.update(newest.id, to: wait) }
    }

    private func isOld(_ activity: ShownActivity, _ now: Date) -> Bool {
        now.timeIntervalSince(activity.startedAt) >= ShownActivity.renewAfter
    }
}
