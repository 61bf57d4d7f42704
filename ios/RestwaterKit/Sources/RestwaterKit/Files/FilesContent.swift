import RestwaterCore

/// What the Files screen holds beside its record.
public struct FilesContent: Equatable, Sendable {
    public internal(set) var view: FilesView?
    /// Which page is open.
    var page = FilesPage.send
    /// What a file would bring, or has brought.
    var incoming: IncomingView?
    /// Whether that file is in by now.
    var taken = false
    /// Where it is, in a folder of our own.
    var path: String?
    /// What the angler calls where it came from.
    var source = ""
    /// Entries that long work has dealt with so far, or `nil` if nothing runs.
    public internal(set) var progress: UInt64?
    /// The system's dialog that is to be shown.
    public internal(set) var dialog: FileDialog?
    /// The dialog whose answer is still to come: it may have left the screen already.
    public internal(set) var answering: FileDialog?
}

/// Pages of the Files screen.
enum FilesPage: Sendable {
    case send, incoming, imports, backups
}

/// A dialog of the system: a picker or its share sheet.
public enum FileDialog: Equatable, Sendable {
    /// A file to take in.
    case pick
    /// A folder for copies of backups.
    case folder
    /// Hand this file on.
    case share(Outgoing)
    /// Hand this text on.
    case text(String)
    /// Save this file in a place of the angler's.
    case save(Outgoing)
}

/// What a key of the Files screen asks.
public enum FilesAsk: Equatable, Sendable {
    case send, save, pick, folder, takeIn, leave, imports, backups, backUp, lookOver
    /// What a backup would bring.
    case offer(path: String)
    /// What the partner is called.
    case source(String)
}
