import Foundation
import RestwaterCore

/// A folder of the angler's for copies of backups, remembered by the system's bookmark: a drive, a cloud, another app.
/// Without one nothing is copied. (UserDefaults may be used from any thread.)
struct BackupFolder: @unchecked Sendable {
    let defaults: UserDefaults
    private static let key = "backup-folder"

    /// The folder from now on, by a URL that the system's picker gave. Its name, to be said.
    func pick(_ url: URL) throws -> String {
        try borrowed(url) { folder in
            #if canImport(Darwin)
            defaults.set(try folder.bookmarkData(), forKey: Self.key)
            #else
            defaults.set(Data(folder.path.utf8), forKey: Self.key)
            #endif
        }
        return url.lastPathComponent
    }

    /// Copies a backup there, where a folder was picked; the same name is there once.
    func copy(_ path: String) throws {
        guard let folder = try folder() else { return }
        let file = URL(fileURLWithPath: path)
        try borrowed(folder) { folder in
            let copy = folder.appendingPathComponent(file.lastPathComponent)
            if !FileManager.default.fileExists(atPath: copy.path) { try FileManager.default.copyItem(at: file, to: copy) }
        }
    }

    private func folder() throws -> URL? {
        guard let data = defaults.data(forKey: Self.key) else { return nil }
        #if canImport(Darwin)
        var stale = false
        let url = try URL(resolvingBookmarkData: data, bookmarkDataIsStale: &stale)
        if stale { _ = try? pick(url) }
        return url
        #else
        return URL(fileURLWithPath: String(decoding: data, as: UTF8.self))
        #endif
    }
}

extension RestwaterState {
    /// The folder that the system's picker gave for copies of backups.
    public func copyBackups(to url: URL) {
        seen.files.wanted = nil
        do {
            seen.notice = try backups.pick(url)
        } catch {
            refused(FileTrouble.refusal(of: error))
        }
    }
}
