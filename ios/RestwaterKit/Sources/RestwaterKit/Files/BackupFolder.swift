import Foundation
import RestwaterCore

#if canImport(Darwin)
import Darwin
#endif

/// The angler's folder for copies of backups (on a drive, in a cloud, in another app), remembered by the system's
/// bookmark. Without one nothing is copied. Its calls block, so they are made off the main thread.
struct BackupFolder: @unchecked Sendable {
    // UserDefaults may be used from any thread
    // (developer.apple.com/documentation/foundation/userdefaults: "The UserDefaults class is thread-safe").
    let defaults: UserDefaults
    let files: any FileAccess
    /// One copy after another: a second one would remove the half of the first.
    private let copying = NSLock()
    private static let key = "backup-folder"
    /// The backup that was copied last to that folder, by its name.
    private static let copied = "backup-copied"
    /// The names of all copies that this phone made in that folder. Another phone may have copies there too.
    private static let copies = "backup-copies"

    init(defaults: UserDefaults, files: any FileAccess) { (self.defaults, self.files) = (defaults, files) }

    /// Sets the folder to a URL from the system's picker; returns its name, to be shown.
    func pick(_ url: URL) throws -> String {
        try keep(url)
        // Nothing has been copied to it yet.
        defaults.removeObject(forKey: Self.copied)
        defaults.removeObject(forKey: Self.copies)
        return url.lastPathComponent
    }

    private func keep(_ url: URL) throws {
        try files.use(url, to: .read) { folder in
            #if canImport(Darwin)
            defaults.set(try folder.bookmarkData(options: .minimalBookmark, includingResourceValuesForKeys: nil, relativeTo: nil), forKey: Self.key)
            #else
            defaults.set(Data(folder.path.utf8), forKey: Self.key)
            #endif
        }
    }

    /// Copies a backup to the folder, if one was picked and this one isn't there yet. Until it is whole it has another name: the
    /// system may end the process meanwhile.
    func copy(_ path: String) throws { try copying.withLock { try copyNext(path) } }

    private func copyNext(_ path: String) throws {
        let file = URL(fileURLWithPath: path)
        guard let folder = try folder(), defaults.string(forKey: Self.copied) != file.lastPathComponent else { return }
        try files.use(folder, to: .write(folder.appendingPathComponent(file.lastPathComponent))) { copy in
            let half = copy.appendingPathExtension("part")
            if FileManager.default.fileExists(atPath: half.path) { try FileManager.default.removeItem(at: half) }
            try FileManager.default.copyItem(at: file, to: half)
            if FileManager.default.fileExists(atPath: copy.path) { try FileManager.default.removeItem(at: copy) }
            try FileManager.default.moveItem(at: half, to: copy)
        }
        defaults.set(file.lastPathComponent, forKey: Self.copied)
        thin(folder, made: file.lastPathComponent)
    }

    /// After a complete copy, removes the ones that are superfluous by the core's rule. One that can't be removed now is removed
    /// later.
    private func thin(_ folder: URL, made: String) {
        var left = (defaults.stringArray(forKey: Self.copies) ?? []).filter { $0 != made } + [made]
        for name in superfluousCopies(names: left, made: made) {
            Log.attempt("removing an old copy of a backup") {
                try files.use(folder, to: .remove(folder.appendingPathComponent(name))) { copy in
                    if FileManager.default.fileExists(atPath: copy.path) { try FileManager.default.removeItem(at: copy) }
                }
                left.removeAll { $0 == name }
            }
        }
        defaults.set(left, forKey: Self.copies)
    }

    private func folder() throws -> URL? {
        guard let data = defaults.data(forKey: Self.key) else { return nil }
        #if canImport(Darwin)
        var stale = false
        let url = try URL(resolvingBookmarkData: data, options: [], relativeTo: nil, bookmarkDataIsStale: &stale)
        // A bookmark that can't be renewed still leads to the folder for now.
        if stale { Log.attempt("renewing the bookmark of the backup folder") { try keep(url) } }
        return url
        #else
        return URL(fileURLWithPath: String(decoding: data, as: UTF8.self))
        #endif
    }
}

extension RestwaterState {
    /// Copies a backup that nobody asked for now, unless it has been copied. If that fails, the Files screen says so: the Bank is
    /// about fish.
    func copyQuietly(_ path: String) { copy(path) { _, _ in } }

    /// Copies a backup that the angler has just made. If that fails it is said at once, unless the page was left by then.
    func copyLoudly(_ path: String) {
        copy(path) { state, refusal in
            if state.content.showing == .files, state.content.files.page == .backups { state.refused(refusal) }
        }
    }

    private func copy(_ path: String, failed: @escaping @MainActor @Sendable (RestwaterState, Refusal) -> Void) {
        let folder = backups
        aside({ () -> Refusal? in
            do { try folder.copy(path) } catch { return FileTrouble.refusal(of: error) }
            return nil
        }) { state, refusal in
            state.content.files.copyTrouble = refusal?.text ?? ""
            guard let refusal else { return }
            Log.fault("copying a backup", refusal)
            failed(state, refusal)
        }
    }

    /// Sets the folder from the system's picker for copies of backups.
    func copyBackups(to url: URL) {
        let folder = backups
        aside({ try folder.pick(url) }) { state, name in
            state.say(name)
            state.ask({ core in try core.latestBackup() }) { state, latest in
                if let latest { state.copyQuietly(latest) }
            }
        }
    }
}
