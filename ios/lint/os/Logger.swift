// Signatures only; each comment is the page under developer.apple.com/documentation that says so.

// os/logger
public struct Logger: Sendable {
    // os/logger/init(subsystem:category:)
    public init(subsystem: String, category: String) { fatalError() }
    // os/logger/error(_:)
    public func error(_ message: OSLogMessage) { fatalError() }
}
// os/oslogprivacy
public struct OSLogPrivacy: Sendable { public static var `public`: OSLogPrivacy { fatalError() } }
// os/oslogmessage
public struct OSLogMessage: ExpressibleByStringInterpolation {
    public init(stringLiteral value: String) { fatalError() }
    public init(stringInterpolation: OSLogInterpolation) { fatalError() }
}
// os/osloginterpolation
public struct OSLogInterpolation: StringInterpolationProtocol {
    public init(literalCapacity: Int, interpolationCount: Int) { fatalError() }
    // os/osloginterpolation/appendliteral(_:)
    public mutating func appendLiteral(_ literal: String) { fatalError() }
    // os/osloginterpolation/appendinterpolation(_:privacy:)
    public mutating func appendInterpolation(_ text: @autoclosure @escaping () -> String, privacy: OSLogPrivacy) { fatalError() }
}
