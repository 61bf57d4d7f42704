import RestwaterCore

/// What the app says about itself.
public struct About: Equatable, Sendable {
    /// Version of the core that this build carries.
    public let coreVersion: String

    public init() { coreVersion = RestwaterCore.coreVersion() }
}
