import RestwaterCore

/// Whether the app is in front.
public enum Phase: Sendable {
    /// In front and tapped.
    case active
    /// In sight but not tapped: a call, the control centre.
    case inactive
    /// Out of sight; iOS may suspend or end it at any moment.
    case background
}

extension RestwaterState {
    /// The log is put aside in the background, as iOS asks of an app that holds a file open, and taken up again in front.
    public func phase(_ phase: Phase) {
        switch phase {
        case .background where !away:
            away = true
            let at = clock()
            // A backup where one is due, then the log is put aside, whatever came of it.
            let folder = backups
            long({ core in
                defer { Log.attempt("putting the log aside") { try core.pause() } }
                guard let made = try await core.backUpIfDue(now: at) else { return }
                do { try folder.copy(made.path) } catch { throw FileTrouble.refusal(of: error) }
            }) { _, _ in }
        case .active:
            away = false
            refresh()
            readPlan()
        default:
            break
        }
    }
}
