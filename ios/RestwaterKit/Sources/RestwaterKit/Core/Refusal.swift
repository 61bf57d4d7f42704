import Foundation
import RestwaterCore

/// Why the core did nothing: what kind, what to show, and the detail for a report.
public struct Refusal: LocalizedError, Equatable, Sendable {
    /// What tells refusals apart.
    public let kind: ErrorKind
    /// What to show, in the core's words.
    public let text: String
    /// For a report.
    public let detail: String

    public var errorDescription: String? { text }

    init(kind: ErrorKind, text: String, detail: String = "") { (self.kind, self.text, self.detail) = (kind, text, detail) }

    /// Of whatever a call threw. What is no refusal of ours is a fault of ours.
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
