// Signatures only; each comment is the page under developer.apple.com/documentation that says so.

public struct UTType: Hashable, Sendable {
    public init(exportedAs identifier: String, conformingTo parent: UTType? = nil) { fatalError() }
    public static let folder: UTType = { fatalError() }()
    public static let data: UTType = { fatalError() }()
}
