import RestwaterCore

/// What the Files screen holds beside its record.
public struct FilesSeen: Equatable, Sendable {
    public internal(set) var view: FilesView?
    /// Which list is open.
    public internal(set) var list: FilesList?
    /// What a file would bring, or has brought.
    public internal(set) var incoming: IncomingView?
    /// Where that file is, in a folder of our own; none once it is taken in.
    var incomingPath: String?
    /// What the angler calls where it came from.
    var source = ""
    /// A file that was made, to be handed on by the system.
    public internal(set) var made: Outgoing?
    /// Whether the system's picker is asked for.
    public internal(set) var picking = false
    /// Entries that long work has dealt with so far; none where nothing runs.
    public internal(set) var done: UInt64?
}

/// A list of the Files screen.
public enum FilesList: Sendable {
    case imports, backups
}

/// What a key of the Files screen asks.
public enum FilesAsk: Equatable, Sendable {
    case send, pick, takeIn, leave, backUp, lookOver
    case list(FilesList)
    /// What a backup, or a file that lies there, would bring.
    case lookInto(path: String)
    /// What the partner is called.
    case source(String)
}
