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
        let mark = folder.deletingLastPathComponent().appendingPathComponent("this-phone-\(folder.lastPathComponent)")
        try afterTransfer(dir: folder.path, mark: mark.path, now: clock(), language: language)
        try keepHere(mark)
        return try Restwater.open(dir: folder.path, now: clock(), language: language)
    } catch {
        throw Refusal(error)
    }
}

/// Keeps a file out of the phone's backups, and so out of what another phone is set up from.
func keepHere(_ file: URL) throws {
    #if canImport(Darwin)
    var (file, values) = (file, URLResourceValues())
    values.isExcludedFromBackup = true
    try file.setResourceValues(values)
    #endif
}
