import Foundation

/// Files of others, copied into a folder of our own while the system lends them, so that they can still be read when the
/// angler has thought it over.
enum Inbox {
    /// The copy's path. The URL may be security-scoped: it is borrowed for the copying only.
    static func take(_ url: URL) throws -> String {
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("inbox", isDirectory: true)
        try? FileManager.default.removeItem(at: folder)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let copy = folder.appendingPathComponent(url.lastPathComponent)
        try borrowed(url) { try FileManager.default.copyItem(at: $0, to: copy) }
        return copy.path
    }

    private static func borrowed(_ url: URL, _ read: (URL) throws -> Void) throws {
        #if canImport(Darwin)
        let scoped = url.startAccessingSecurityScopedResource()
        defer { if scoped { url.stopAccessingSecurityScopedResource() } }
        // A file in a cloud drive is fetched by the system first.
        var fault: NSError?
        var thrown: (any Error)?
        NSFileCoordinator().coordinate(readingItemAt: url, error: &fault) { there in
            do { try read(there) } catch { thrown = error }
        }
        if let error = fault ?? thrown { throw error }
        #else
        try read(url)
        #endif
    }
}
