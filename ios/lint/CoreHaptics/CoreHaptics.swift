// Signatures only; each comment is the page under developer.apple.com/documentation that says so.
@_exported import Foundation

// corehaptics/chhapticdevicecapability
public protocol CHHapticDeviceCapability { var supportsHaptics: Bool { get } }
// swift-format-ignore: AlwaysUseLowerCamelCase
public let CHHapticTimeImmediate: TimeInterval = 0
// corehaptics/chhapticpatternplayer
public protocol CHHapticPatternPlayer {
    // corehaptics/chhapticpatternplayer/start(attime:)
    func start(atTime time: TimeInterval) throws
    // corehaptics/chhapticpatternplayer/stop(attime:)
    func stop(atTime time: TimeInterval) throws
}

// corehaptics/chhapticevent
open class CHHapticEvent: NSObject {
    // corehaptics/chhapticevent/eventtype
    public struct EventType: Sendable { public static let hapticContinuous: EventType = { fatalError() }() }
    // corehaptics/chhapticevent/parameterid
    public struct ParameterID: Sendable {
        public static let hapticIntensity: ParameterID = { fatalError() }()
        public static let hapticSharpness: ParameterID = { fatalError() }()
    }
    public init(eventType: EventType, parameters: [CHHapticEventParameter], relativeTime: TimeInterval, duration: TimeInterval) { fatalError() }
}
// corehaptics/chhapticeventparameter
open class CHHapticEventParameter: NSObject { public init(parameterID: CHHapticEvent.ParameterID, value: Float) { fatalError() } }
// corehaptics/chhapticdynamicparameter
open class CHHapticDynamicParameter: NSObject {}
// corehaptics/chhapticpattern
open class CHHapticPattern: NSObject {
    public init(events: [CHHapticEvent], parameters: [CHHapticDynamicParameter]) throws { fatalError() }
}
// corehaptics/chhapticengine
open class CHHapticEngine {
    public init() throws { fatalError() }
    // corehaptics/chhapticengine/capabilitiesforhardware()
    public static func capabilitiesForHardware() -> any CHHapticDeviceCapability { fatalError() }
    public var isAutoShutdownEnabled: Bool {
        get { fatalError() }
        set { fatalError() }
    }
    // corehaptics/chhapticengine/start()
    public func start() throws { fatalError() }
    // corehaptics/chhapticengine/makeplayer(with:)
    public func makePlayer(with pattern: CHHapticPattern) throws -> any CHHapticPatternPlayer { fatalError() }
}
