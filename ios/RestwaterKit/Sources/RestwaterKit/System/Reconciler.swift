import Foundation

/// Makes what the system rings and shows agree with the plan. It compares the plan with what is pending and shown at
/// the time, so that a process that was ended, or two that ran one after the other, leave nothing behind.
@MainActor
public final class Reconciler {
    /// Called once a session if something is to ring and the system does not allow it.
    public var onAlarmsRefused: (@MainActor () -> Void)?
    /// Called once a session if something is to ring and the system takes it, but may make no sound.
    public var onAlarmsSilent: (@MainActor () -> Void)?
    /// Called once a session if the running wait may not be shown outside the app: without it there are no keys there.
    public var onWaitHidden: (@MainActor () -> Void)?
    /// Called with an alarm that no part of the system takes, once for each.
    public var onAlarmFailed: (@MainActor (PlannedAlarm) -> Void)?
    /// Called with what only the app in the foreground can ring: everything due, and everything planned, if the system may not;
    /// else nothing.
    public var onLeftToRing: (@MainActor (_ due: [PlannedAlarm], _ planned: [PlannedAlarm]) -> Void)?
    private var toldOfFailure: Set<UUID> = []
    private let alarms: [any AlarmCenter]
    private let activities: any ActivityCenter
    private let clock: Clock
    private var next: PhonePlan?
    private var task: Task<Void, Never>?
    private var toldOfRefusal = false
    private var toldOfSilence = false
    private var toldOfHiddenWait = false
    /// The centres that have been asked in this process, by their place: the system answers at most once.
    private var asked: Set<Int> = []
    private var asking = false
    /// Whether a question is on the screen.
    private var questionIsOpen = false

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

    /// The Live Activity says this until the next plan is carried out: a button of it shows no answer of its own.
    func say(_ text: String) async {
        for activity in await activities.shown() where activity.isActive {
            let wait = activity.wait
            await activities.update(activity.id, to: RunningWait(title: wait.title, text: text, since: wait.since, keys: wait.keys))
        }
    }

    /// Asks the angler, unless something may ring, then carries out the plan, if there is still one. Called with each plan: what
    /// was allowed may have been taken back in the phone's settings.
    public func askForAlarms(then plan: @escaping @MainActor () -> PhonePlan?) {
        guard !asking else { return }
        asking = true
        Task {
            let answered = await askInOrder()
            asking = false
            if answered, let plan = plan() { carryOut(plan) }
        }
    }

    /// Asks in order of preference until one may ring, each centre once in a process; returns whether anything was asked.
    private func askInOrder() async -> Bool {
        var answered = false
        for (place, center) in alarms.enumerated() {
            let permission = await center.permission()
            if permission.takesAlarms { break }
            guard permission == .notAsked, asked.insert(place).inserted else { continue }
            answered = true
            if await allows(center) { break }
        }
        return answered
    }

    private func allows(_ center: any AlarmCenter) async -> Bool {
        questionIsOpen = true
        defer { questionIsOpen = false }
        do { return try await center.requestPermission() } catch {
            Log.fault("asking to ring", error)
            return false
        }
    }

    /// Whether a centre may still be allowed: it was not asked yet, or its question is open.
    private func mayStillBeAllowed() async -> Bool {
        if questionIsOpen { return true }
        for (place, center) in alarms.enumerated() where !asked.contains(place) {
            if await center.permission() == .notAsked { return true }
        }
        return false
    }

    /// The first centre that is allowed gets the alarms; what it doesn't take goes to the next one.
    private func reconcileAlarms(_ plan: PhonePlan) async {
        var (left, due, rings, silent) = (plan.alarms, plan.due, false, false)
        for center in alarms {
            let permission = await center.permission()
            if permission.takesAlarms {
                rings = true
                silent = silent || permission == .silent && !left.isEmpty
                (left, due) = await reconcile(center, with: left, leaving: due)
            } else {
                _ = await reconcile(center, with: [], leaving: [])
            }
        }
        if rings || plan.wait == nil { toldOfRefusal = false }
        if !rings && !plan.alarms.isEmpty { await tellOfRefusal() }
        if silent && !toldOfSilence { onAlarmsSilent?() }
        // Once a session, or again when it comes to that again.
        toldOfSilence = plan.wait != nil && (silent || toldOfSilence && plan.alarms.isEmpty)
        onLeftToRing?(rings ? [] : plan.due, rings ? [] : plan.alarms)
        let failed = rings ? left : []
        for alarm in failed where !toldOfFailure.contains(alarm.systemId) { onAlarmFailed?(alarm) }
        toldOfFailure = Set(failed.map(\.systemId))
    }

    /// An alarm that has rung stays until the core no longer says that it is due, whatever its minute would be now:
    /// that moves with what is learned from another rod. One that is still to ring, but whose minute has moved into the past,
    /// rings now. Returns what this centre does not have of both.
    private func reconcile(
        _ center: any AlarmCenter, with planned: [PlannedAlarm], leaving due: [PlannedAlarm]
    ) async -> (planned: [PlannedAlarm], due: [PlannedAlarm]) {
        let known: KnownAlarms
        do { known = try await center.known() } catch {
            Log.fault("reading the alarms", error)
            return (planned, due)
        }
        let moved = due.filter { alarm in
            !known.pending.contains(alarm.systemId) && known.pending.contains { alarm.isSet(as: $0) }
        }
        let toSet = planned + moved
        let wanted = Set(toSet.map(\.systemId))
        // What rings now takes the place of what would ring at its old minute.
        let stays = { (id: UUID) in
            due.contains { $0.isSet(as: id) } && !(known.pending.contains(id) && moved.contains { $0.isSet(as: id) })
        }
        let gone = known.all.subtracting(wanted).filter { !stays($0) }
        if !gone.isEmpty {
            do { try await center.cancel(gone) } catch { Log.fault("cancelling alarms", error) }
        }
        var failed: [PlannedAlarm] = []
        // One that the system doesn't take must not keep it from the others.
        for alarm in toSet where !known.all.contains(alarm.systemId) {
            do { try await center.schedule(alarm) } catch {
                Log.fault("setting an alarm", error)
                failed.append(alarm)
            }
        }
        return (failed, due.filter { alarm in !known.all.contains { alarm.isSet(as: $0) } })
    }

    private func tellOfRefusal() async {
        guard !toldOfRefusal, await !mayStillBeAllowed() else { return }
        toldOfRefusal = true
        onAlarmsRefused?()
    }

    private func reconcileActivities(_ plan: PhonePlan) async {
        let shown = await activities.shown()
        let now = clock().date
        let kept = plan.wait == nil ? nil : shown.filter { $0.isActive && !isOld($0, now) }.max { $0.startedAt < $1.startedAt }
        guard let wait = plan.wait else {
            toldOfHiddenWait = false
            for activity in shown { await activities.end(activity.id) }
            return
        }
        let allowed = await activities.areAllowed()
        if !allowed && !toldOfHiddenWait { onWaitHidden?() }
        toldOfHiddenWait = toldOfHiddenWait || !allowed
        if let kept {
            if kept.wait != wait { await activities.update(kept.id, to: wait) }
        } else if allowed {
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
