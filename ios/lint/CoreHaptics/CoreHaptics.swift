// Written from knowledge; signatures only (../README.md).
@_exported import Foundation

public protocol CHHapticDeviceCapability { var supportsHaptics: Bool { get } }
// swift-format-ignore: AlwaysUseLowerCamelCase
public let CHHapticTimeImmediate: TimeInterval = 0
public protocol CHHapticPatternPlayer { func start(atTime time: TimeInterval) throws }

open class CHHapticEvent: NSObject {
    public struct EventType: Sendable { public static let hapticContinuous: EventType = { fatalError() }() }
    public struct ParameterID: Sendable {
        public static let hapticIntensity: ParameterID = { fatalError() }()
        public static let hapticSharpness: ParameterID = { fatalError() }()
    }
    public init(eventType: EventType, parameters: [CHHapticEventParameter], relativeTime: TimeInterval, duration: TimeInterval) { fatalError() }
}
open class CHHapticEventParameter: NSObject { public init(parameterID: CHHapticEvent.ParameterID, value: Float) { fatalError() } }
open class CHHapticDynamicParameter: NSObject {}
open class CHHapticPattern: NSObject {
    public init(events: [CHHapticEvent], parameters: [CHHapticDynamicParameter]) throws { fatalError() }
}
open class CHHapticEngine {
    public init() throws { fatalError() }
    public static func capabilitiesForHardware() -> any CHHapticDeviceCapability { fatalError() }
    public var isAutoShutdownEnabled: Bool {
        get { fatalError() }
        set { fatalError() }
    }
    public func start() throws { fatalError() }
    public func makePlayer(with pattern: CHHapticPattern) throws -> any CHHapticPatternPlayer { fatalError() }
}
