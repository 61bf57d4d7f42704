import RestwaterCore

/// Whether the app is in the foreground.
public enum Phase: Sendable {
    /// In the foreground and receiving taps.
    case active
    /// Visible but not receiving taps: during a call, under the control centre.
    case inactive
    /// In the background; iOS may suspend or end it at any moment.
    case background
}

extension RestwaterState {
    /// The phone's clock or zone has changed. The system rings alarms and counts the running wait by the wall clock, so both are
    /// set again; in the background this waits for the foreground.
    public func clockWasSet() {
        guard !away else { return }
        refresh()
        readPlan()
    }

    /// The log is released in the background, as iOS asks of an app that holds a file open, and opened again in the foreground.
    public func phase(_ phase: Phase) {
        switch phase {
        case .background where !away:
            away = true
            keepScreen()
            let at = clock()
            // A backup if one is due, then the log is released, whatever the result. Only then is the backup copied to
            // the angler's folder, which may be slow to answer.
            long({ core in
                let latest: Result<String?, any Error>
                do { latest = .success(try await core.backedUp(at)) } catch { latest = .failure(error) }
                do { try await offMain { try core.pause() } } catch { Log.fault("putting the log aside", error) }
                return try latest.get()
            }) { state, latest in
                if let latest { state.copyQuietly(latest) }
            }
        case .active:
            away = false
            // What is open is in memory from here on.
            if !subject.isEmpty { lastScreen.forget() }
            refresh()
            readPlan()
            restoreFiles()
            sayUnfinished()
        default:
            break
        }
    }
}

extension Restwater {
    /// Makes a backup if one is due, and returns the latest: not only the one just made, since its copy may have failed.
    fileprivate func backedUp(_ at: Moment) async throws -> String? {
        _ = try await backUpIfDue(now: at)
        return try await offMain { try self.latestBackup() }
    }
}
