import Foundation
import RestwaterCore

/// What went wrong with a file from elsewhere, in the core's words.
enum FileTrouble {
    static func refusal(of error: any Error) -> Refusal {
        if error is RestwaterError || error is Refusal { return Refusal(error) }
        let words = shellWords(language: phoneLanguage())
        let text: String =
            switch (error as? CocoaError)?.code {
            case .fileReadNoPermission?, .fileWriteNoPermission?: words.fileNotAllowed
            case .fileReadNoSuchFile?, .fileNoSuchFile?: words.fileGone
            case .fileWriteOutOfSpace?: words.fileNoSpace
            default: words.fileFailed
            }
        return Refusal(kind: .badFile, text: text, detail: String(reflecting: error))
    }
}
