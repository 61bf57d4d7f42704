import Foundation
import RestwaterCore

/// Opens the log in the app's own folder, or begins one there.
public func openLog(in folder: URL, clock: Clock = present) throws(Refusal) -> Restwater {
    do {
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        return try Restwater.open(dir: folder.path, now: clock())
    } catch {
        throw Refusal(error)
    }
}
