import RestwaterCore

/// What the Files screen shows besides its record.
public struct FilesContent: Equatable, Sendable {
    public internal(set) var view: FilesView?
    /// Which page is open.
    var page = FilesPage.send
    /// What a file would bring, or has brought.
    var incoming: IncomingView?
    /// Whether that file has been imported.
    var taken = false
    /// Whether it is being imported, and whether its page was left meanwhile.
    var taking = false
    var leaving = false
    /// Where it is, in a folder of our own.
    var path: String?
    /// A file that waits for the work that is running.
    var next: String?
    /// How many files of other apps are still to come.
    var fetching = 0
    /// Why the last copy of a backup did not reach the angler's folder, or empty if it did.
    var copyTrouble = ""
    /// The angler's name for where it came from.
    var source = ""
    /// Entries that long work has processed so far, or `nil` if none is running.
    public internal(set) var progress: UInt64?
    /// The system dialog that is to be shown.
    public internal(set) var dialog: FileDialog?
    /// The dialog whose answer is still to come: it may be closed already.
    public internal(set) var answering: FileDialog?
}

/// Pages of the Files screen.
enum FilesPage: String, Sendable {
    case send, incoming, imports, backups
}

/// A dialog of the system: a picker or its share sheet.
public enum FileDialog: Equatable, Sendable {
    /// A file to import.
    case pick
    /// A folder for copies of backups.
    case folder
    /// Pass this file on.
    case share(Outgoing)
    /// Pass this text on.
    case text(String)
    /// Save this file in a place that the angler picks.
    case save(Outgoing)

    /// Whether it passes on a file of ours.
    var isOfFile: Bool {
        switch self {
        case .share, .save: true
        case .pick, .folder, .text: false
        }
    }
}

/// What a key of the Files screen asks.
public enum FilesAsk: Equatable, Sendable {
    case send, save, pick, folder, takeIn, leave, imports, backups, backUp, lookOver
    /// What a backup would bring.
    case offer(path: String)
    /// The partner's name.
    case source(String)
}
