import RestwaterCore

/// Which screen lies on top.
public enum Showing: String, CaseIterable, Sendable {
    case bank, setup, tackle, swim, waits, changes, match, files, mend, phone, screens

    /// The record it is drawn from.
    var which: Which {
        switch self {
        case .bank, .screens: .bank
        case .setup: .setup
        case .tackle: .tackle
        case .swim: .swim
        case .waits: .waits
        case .changes: .changes
        case .match: .match
        case .files: .files
        case .mend: .mend
        case .phone: .phone
        }
    }
}
