import Foundation
import RestwaterCore

/// Why the core did nothing: what kind, what to show, and the detail for a report.
public struct Refusal: LocalizedError, Equatable, Sendable {
    /// The kind, which distinguishes refusals.
    public let kind: ErrorKind
    /// What to show, in the core's words.
    public let text: String
    /// For a report.
    public let detail: String

    public var errorDescription: String? { text }

    /// Whether the core has read in the log why it can't be opened.
    var isOfALogThatWasRead: Bool { [.busy, .damaged, .newer, .foreign].contains(kind) }

    init(kind: ErrorKind, text: String, detail: String = "") { (self.kind, self.text, self.detail) = (kind, text, detail) }

    /// From whatever a call threw. An error that is not one of our refusals counts as a bug of ours.
    public init(_ error: any Error) {
        switch error {
        case let refusal as Refusal:
            self = refusal
        case RestwaterError.Failed(let kind, let text, let detail):
            (self.kind, self.text, self.detail) = (kind, text, detail)
        default:
            (kind, text, detail) = (.internal, error.localizedDescription, String(reflecting: error))
        }
    }
}
