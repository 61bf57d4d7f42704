import Foundation
import RestwaterCore

/// The languages that the angler reads, the most wanted first, as tags of BCP 47: everything is said in the first that the core
/// has. When another is chosen in the phone's settings the system ends the app, so they stay for as long as the process is there.
public enum Languages {
    @TaskLocal static var wanted = Locale.preferredLanguages.joined(separator: ",")
}

public func phoneLanguage() -> String { Languages.wanted }

/// Opens the log in the app's own folder, or begins one there.
public func openLog(in folder: URL, clock: Clock = present, language: String = phoneLanguage()) throws(Refusal) -> Restwater {
    do {
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let mark = markFile(of: folder)
        try afterTransfer(dir: folder.path, mark: mark.path, now: clock(), language: language)
        try keepHere(mark)
        return try Restwater.open(dir: folder.path, now: clock(), language: language)
    } catch {
        throw Refusal(error)
    }
}

/// The file beside the log that says which phone it is.
private func markFile(of folder: URL) -> URL {
    folder.deletingLastPathComponent().appendingPathComponent("this-phone-\(folder.lastPathComponent)")
}

/// Whether the system lets the log be read. It does from the first unlock after a restart on, however often the phone is locked
/// afterwards; the mark has the same protection. Anything but a refusal is another fault, and the core names it.
public func logMayBeRead(in folder: URL, read: (URL) throws -> Void = readAByte) -> Bool {
    do {
        try read(markFile(of: folder))
        return true
    } catch {
        let posix = (error as? POSIXError)?.code
        return (error as? CocoaError)?.code != .fileReadNoPermission && posix != .EPERM && posix != .EACCES
    }
}

public func readAByte(of file: URL) throws {
    let opened = try FileHandle(forReadingFrom: file)
    defer { Log.attempt("closing the mark") { try opened.close() } }
    _ = try opened.read(upToCount: 1)
}

/// Keeps a file out of the phone's backups, and so out of what another phone is set up from.
func keepHere(_ file: URL) throws {
    #if canImport(Darwin)
    var (file, values) = (file, URLResourceValues())
    values.isExcludedFromBackup = true
    try file.setResourceValues(values)
    #endif
}
