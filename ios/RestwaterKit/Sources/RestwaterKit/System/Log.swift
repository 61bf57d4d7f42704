import Foundation

#if canImport(os)
import os
#endif

/// Where errors go that no screen shows: the system's log on a phone, standard error elsewhere.
public enum Log {
    public static func fault(_ doing: String, _ error: any Error) {
        #if canImport(os)
        Logger(subsystem: "app.restwater", category: "app").error("\(doing, privacy: .public): \(String(reflecting: error), privacy: .public)")
        #else
        FileHandle.standardError.write(Data("restwater: \(doing): \(String(reflecting: error))\n".utf8))
        #endif
    }

    /// Does something that may fail without harm; a failure is logged.
    @discardableResult
    public static func attempt<T>(_ doing: String, _ work: () throws -> T) -> T? {
        do { return try work() } catch {
            fault(doing, error)
            return nil
        }
    }
}
