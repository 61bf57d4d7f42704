import Foundation

/// Files from elsewhere, copied into a folder of our own while the system gives access to them, so that they can still
/// be read when the angler has decided.
enum Inbox {
    /// The copy's path. Blocks: called off the main thread.
    static func take(_ url: URL, by files: any FileAccess) throws -> String {
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent(
            "inbox-\(ProcessInfo.processInfo.processIdentifier)", isDirectory: true)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let copy = folder.appendingPathComponent(url.lastPathComponent)
        try files.use(url, to: .read) { file in
            if FileManager.default.fileExists(atPath: copy.path) { try FileManager.default.removeItem(at: copy) }
            try FileManager.default.copyItem(at: file, to: copy)
        }
        return copy.path
    }
}
