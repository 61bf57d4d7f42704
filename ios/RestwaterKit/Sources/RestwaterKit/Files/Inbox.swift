import Foundation

/// Files from elsewhere, copied into a folder of our own while the system gives access to them, so that they can still
/// be read when the angler has decided.
enum Inbox {
    /// Where the system leaves the files that other apps open with this one; it never empties it.
    static let own = FileManager.default.urls(for: .documentDirectory, in: .userDomainMask).first?
        .appendingPathComponent("Inbox", isDirectory: true)

    /// The copy's path; a file that the system left in our `own` folder is removed. Blocks: called off the main thread.
    static func take(_ url: URL, by files: any FileAccess, own: URL? = Inbox.own) throws -> String {
        // A folder for each: the files that two anglers made on one day have one name.
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("inbox-\(UUID().uuidString)", isDirectory: true)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let copy = folder.appendingPathComponent(url.lastPathComponent)
        do {
            try files.use(url, to: .read) { file in try FileManager.default.copyItem(at: file, to: copy) }
        } catch {
            // On a full phone the half of it would take the room that the log needs.
            finished(copy.path)
            throw error
        }
        if let own, isInside(own, url) { Log.attempt("emptying the inbox") { try FileManager.default.removeItem(at: url) } }
        return copy.path
    }

    /// A file that was taken is not needed any more: its copy goes. Every other file stays.
    static func finished(_ path: String) {
        let folder = URL(fileURLWithPath: path).deletingLastPathComponent()
        guard folder.lastPathComponent.hasPrefix("inbox-"), isInside(FileManager.default.temporaryDirectory, folder) else { return }
        Log.attempt("removing a file that was looked into") { try FileManager.default.removeItem(at: folder) }
    }

    private static func isInside(_ folder: URL, _ url: URL) -> Bool {
        let (outer, inner) = (folder.resolvingSymlinksInPath().pathComponents, url.resolvingSymlinksInPath().pathComponents)
        return inner.count > outer.count && inner.starts(with: outer)
    }
}
