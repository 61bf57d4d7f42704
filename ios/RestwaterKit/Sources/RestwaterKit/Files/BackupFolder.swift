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
    private static let key = "backup-folder"

    /// Sets the folder to a URL from the system's picker; returns its name, to be shown.
    func pick(_ url: URL) throws -> String {
        try files.use(url, to: .read) { folder in
            #if canImport(Darwin)
            defaults.set(try folder.bookmarkData(options: .minimalBookmark, includingResourceValuesForKeys: nil, relativeTo: nil), forKey: Self.key)
            #else
            defaults.set(Data(folder.path.utf8), forKey: Self.key)
            #endif
        }
        return url.lastPathComponent
    }

    /// Copies a backup to the folder, if one was picked; the same name exists there only once.
    func copy(_ path: String) throws {
        guard let folder = try folder() else { return }
        let file = URL(fileURLWithPath: path)
        try files.use(folder, to: .write(folder.appendingPathComponent(file.lastPathComponent))) { copy in
            if !FileManager.default.fileExists(atPath: copy.path) { try FileManager.default.copyItem(at: file, to: copy) }
        }
    }

    private func folder() throws -> URL? {
        guard let data = defaults.data(forKey: Self.key) else { return nil }
        #if canImport(Darwin)
        var stale = false
        let url = try URL(resolvingBookmarkData: data, options: [], relativeTo: nil, bookmarkDataIsStale: &stale)
        // A bookmark that can't be renewed still leads to the folder for now.
        if stale { Log.attempt("renewing the bookmark of the backup folder") { try pick(url) } }
        return url
        #else
        return URL(fileURLWithPath: String(decoding: data, as: UTF8.self))
        #endif
    }
}

extension RestwaterState {
    /// Copies a backup that nobody asked for now. If that fails, the Files screen says so: the Bank is about fish.
    func copyQuietly(_ path: String) {
        let folder = backups
        aside({ () -> Refusal? in
            do { try folder.copy(path) } catch { return FileTrouble.refusal(of: error) }
            return nil
        }) { state, refusal in
            if let refusal { Log.fault("copying a backup", refusal) }
            state.content.files.copyTrouble = refusal?.text ?? ""
        }
    }

    /// Sets the folder from the system's picker for copies of backups.
    func copyBackups(to url: URL) {
        let folder = backups
        aside({ try folder.pick(url) }) { state, name in state.say(name) }
    }
}
