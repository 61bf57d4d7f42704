import Foundation
import RestwaterCore

/// The language of the phone, as a tag of BCP 47: what everything is said in, where the core has it.
public func phoneLanguage() -> String { Locale.preferredLanguages.first ?? "en-GB" }

/// Opens the log in the app's own folder, or begins one there.
public func openLog(in folder: URL, clock: Clock = present, language: String = phoneLanguage()) throws(Refusal) -> Restwater {
    do {
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        return try Restwater.open(dir: folder.path, now: clock(), language: language)
    } catch {
        throw Refusal(error)
    }
}
