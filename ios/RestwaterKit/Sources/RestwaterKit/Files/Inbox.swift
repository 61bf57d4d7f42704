import Foundation

/// Files from elsewhere. They are copied into a folder of the app while the system gives access to them, so that they
/// can still be read when the angler decides to import them.
enum Inbox {
    /// Where the system puts the files that other apps open with this one. The system never empties it.
    static let own = FileManager.default.urls(for: .documentDirectory, in: .userDomainMask).first?
        .appendingPathComponent("Inbox", isDirectory: true)

    /// Copies a file and returns the path of the copy; a file that the system put in our `own` folder is then removed.
    /// Blocks, so call it off the main thread.
    static func take(
        _ url: URL, by files: any FileAccess, own: URL? = Inbox.own, free: (URL) throws -> Int64? = Inbox.free(in:)
    ) throws -> String {
        emptyOld()
        // A folder for each copy, since files that two anglers made on the same day may have the same name.
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("inbox-\(UUID().uuidString)", isDirectory: true)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let copy = folder.appendingPathComponent(url.lastPathComponent)
        do {
            try files.use(url, to: .read) { file in
                try leaveTheLogItsRoom(file, try free(folder))
                try FileManager.default.copyItem(at: file, to: copy)
            }
        } catch {
            // On a full phone half a copy would take the space that the log needs.
            finished(copy.path)
            throw error
        }
        if let own, isInside(own, url) { Log.attempt("emptying the inbox") { try FileManager.default.removeItem(at: url) } }
        return copy.path
    }

    /// A film that was opened by mistake would fill the phone, and the log could not take the next entry; a small file is always
    /// tried.
    private static func leaveTheLogItsRoom(_ file: URL, _ free: Int64?) throws {
        let size = (try FileManager.default.attributesOfItem(atPath: file.path)[.size] as? NSNumber)?.int64Value ?? 0
        if size > small, let free, free - size < logsRoom { throw CocoaError(.fileWriteOutOfSpace) }
    }

    /// The bytes that are free where a file is copied to.
    static func free(in folder: URL) throws -> Int64? {
        (try FileManager.default.attributesOfFileSystem(forPath: folder.path)[.systemFreeSize] as? NSNumber)?.int64Value
    }

    /// A day's file has some hundred kilobytes, and a log of years some hundred megabytes; both sizes are choices.
    private static let small: Int64 = 4 << 20
    private static let logsRoom: Int64 = 64 << 20

    /// Copies that nobody looks at any more, since their process was ended. Another file may be being imported at this moment.
    private static func emptyOld() {
        let (files, all) = (FileManager.default, FileManager.default.temporaryDirectory)
        Log.attempt("removing old copies of files") {
            for name in try files.contentsOfDirectory(atPath: all.path) where name.hasPrefix("inbox-") {
                let folder = all.appendingPathComponent(name).path
                let made = try files.attributesOfItem(atPath: folder)[.modificationDate] as? Date
                if let made, Date().timeIntervalSince(made) > oldS { try files.removeItem(atPath: folder) }
            }
        }
    }

    /// After a day nobody imports it.
    private static let oldS: TimeInterval = 86_400

    /// Removes the copy of a file that is not needed any more. A path outside our folders is left alone.
    static func finished(_ path: String) {
        let folder = URL(fileURLWithPath: path).deletingLastPathComponent()
        guard folder.lastPathComponent.hasPrefix("inbox-"), isInside(FileManager.default.temporaryDirectory, folder) else { return }
        Log.attempt("removing the copy of a file") { try FileManager.default.removeItem(at: folder) }
    }

    private static func isInside(_ folder: URL, _ url: URL) -> Bool {
        let (outer, inner) = (folder.resolvingSymlinksInPath().pathComponents, url.resolvingSymlinksInPath().pathComponents)
        return inner.count > outer.count && inner.starts(with: outer)
    }
}
