import RestwaterCore

/// Which screen is open.
public enum Showing: String, CaseIterable, Sendable {
    case bank, setup, tackle, swim, waits, changes, match, fish, weight, feed, feedWeight, seen, bench, book, conditions, cautions, files, mend
    case phone, day, welcome, legend, screens

    /// What shows a screen of the core.
    init(_ which: Which) { self = Self.allCases.first { $0.which == which } ?? .bank }

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
        case .fish: .fish
        case .weight: .weight
        case .feed: .feed
        case .feedWeight: .feedWeight
        case .seen: .seen
        case .bench: .bench
        case .book: .book
        case .conditions: .conditions
        case .cautions: .cautions
        case .files: .files
        case .mend: .mend
        case .phone: .phone
        case .day: .day
        case .welcome: .welcome
        case .legend: .legend
        }
    }
}
