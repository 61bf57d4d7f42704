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
            ask({ core in try core.pause() }) { _, _ in }
        case .active where away:
            away = false
            ask({ core in try core.resume() }) { _, _ in }
            refresh()
        case .active:
            refresh()
        default:
            break
        }
    }
}
