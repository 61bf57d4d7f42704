// Written from knowledge; signatures only (../README.md).
@_exported import Foundation

open class AVAudioSession: NSObject {
    public struct Category: Sendable { public static let ambient: Category = { fatalError() }() }
    public struct Mode: Sendable { public static let `default`: Mode = { fatalError() }() }
    public struct CategoryOptions: OptionSet, Sendable {
        public let rawValue: UInt
        public init(rawValue: UInt) { self.rawValue = rawValue }
        public static let mixWithOthers = CategoryOptions(rawValue: 1)
    }
    public static func sharedInstance() -> AVAudioSession { fatalError() }
    public func setCategory(_ category: Category, mode: Mode, options: CategoryOptions = []) throws { fatalError() }
}
open class AVAudioFormat: NSObject {
    public init?(standardFormatWithSampleRate rate: Double, channels: UInt32) { fatalError() }
}
open class AVAudioNode: NSObject {}
open class AVAudioMixerNode: AVAudioNode {}
open class AVAudioPlayerNode: AVAudioNode {
    public func scheduleBuffer(
        _ buffer: AVAudioPCMBuffer, at when: AVAudioTime?, options: AVAudioPlayerNodeBufferOptions = [], completionHandler: (@Sendable () -> Void)? = nil
    ) { fatalError() }
    public func play() { fatalError() }
}
open class AVAudioTime: NSObject {}
public struct AVAudioPlayerNodeBufferOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
    public static let interrupts = AVAudioPlayerNodeBufferOptions(rawValue: 2)
}
open class AVAudioPCMBuffer: NSObject {
    public init?(pcmFormat: AVAudioFormat, frameCapacity: UInt32) { fatalError() }
    public var floatChannelData: UnsafePointer<UnsafeMutablePointer<Float>>? { fatalError() }
    public var frameLength: UInt32 { get { fatalError() } set { fatalError() } }
}
open class AVAudioEngine: NSObject {
    public var mainMixerNode: AVAudioMixerNode { fatalError() }
    public var isRunning: Bool { fatalError() }
    public func attach(_ node: AVAudioNode) { fatalError() }
    public func connect(_ from: AVAudioNode, to: AVAudioNode, format: AVAudioFormat?) { fatalError() }
    public func start() throws { fatalError() }
}
