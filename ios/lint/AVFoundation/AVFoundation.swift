// Signatures only; each comment is the page under developer.apple.com/documentation that says so.
@_exported import Foundation

// avfaudio/avaudiosession
open class AVAudioSession: NSObject {
    // avfaudio/avaudiosession/category-swift.struct: ambient "plays sounds in sync with the silent switch", playback does not.
    public struct Category: Sendable {
        public static var ambient: Category { fatalError() }
        public static var playback: Category { fatalError() }
    }
    // avfaudio/avaudiosession/mode
    public struct Mode: Sendable { public static var `default`: Mode { fatalError() } }
    // avfaudio/avaudiosession/categoryoptions-swift.struct/mixwithothers is for playAndRecord, playback and multiRoute only.
    public struct CategoryOptions: OptionSet, Sendable {
        public let rawValue: UInt
        public init(rawValue: UInt) { self.rawValue = rawValue }
        public static var duckOthers: CategoryOptions { fatalError() }
    }
    // avfaudio/avaudiosession/setactiveoptions/notifyothersondeactivation
    public struct SetActiveOptions: OptionSet, Sendable {
        public let rawValue: UInt
        public init(rawValue: UInt) { self.rawValue = rawValue }
        public static var notifyOthersOnDeactivation: SetActiveOptions { fatalError() }
    }
    // avfaudio/avaudiosession/mediaserviceswereresetnotification
    public class var mediaServicesWereResetNotification: NSNotification.Name { fatalError() }
    // avfaudio/avaudiosession/sharedinstance()
    public class func sharedInstance() -> AVAudioSession { fatalError() }
    // avfaudio/avaudiosession/setcategory(_:mode:options:)
    public func setCategory(_ category: Category, mode: Mode, options: CategoryOptions = []) throws { fatalError() }
    // avfaudio/avaudiosession/setactive(_:options:)
    public func setActive(_ active: Bool, options: SetActiveOptions = []) throws { fatalError() }
}
// avfaudio/avaudioformat/init(standardformatwithsamplerate:channels:)
open class AVAudioFormat: NSObject {
    public init?(standardFormatWithSampleRate rate: Double, channels: UInt32) { fatalError() }
}
// avfaudio/avaudionode/engine
open class AVAudioNode: NSObject { public var engine: AVAudioEngine? { fatalError() } }
// avfaudio/avaudiomixernode
open class AVAudioMixerNode: AVAudioNode {}
// avfaudio/avaudioplayernode
open class AVAudioPlayerNode: AVAudioNode {
    public override init() { fatalError() }
    // avfaudio/avaudioplayernode/schedulebuffer(_:at:options:completionhandler:)
    public func scheduleBuffer(
        _ buffer: AVAudioPCMBuffer, at when: AVAudioTime?, options: AVAudioPlayerNodeBufferOptions = [],
        completionHandler: (@Sendable () -> Void)? = nil
    ) { fatalError() }
    // avfaudio/avaudioplayernode/play()
    public func play() { fatalError() }
    // avfaudio/avaudioplayernode/stop()
    public func stop() { fatalError() }
}
// avfaudio/avaudiotime
open class AVAudioTime: NSObject {}
// avfaudio/avaudioplayernodebufferoptions
public struct AVAudioPlayerNodeBufferOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
    public static var interrupts: AVAudioPlayerNodeBufferOptions { fatalError() }
}
// avfaudio/avaudiopcmbuffer
open class AVAudioPCMBuffer: NSObject {
    public init?(pcmFormat: AVAudioFormat, frameCapacity: UInt32) { fatalError() }
    public var floatChannelData: UnsafePointer<UnsafeMutablePointer<Float>>? { fatalError() }
    public var frameLength: UInt32 {
        get { fatalError() }
        set { fatalError() }
    }
}
// avfaudio/avaudioengine
open class AVAudioEngine: NSObject {
    public override init() { fatalError() }
    public var mainMixerNode: AVAudioMixerNode { fatalError() }
    public var isRunning: Bool { fatalError() }
    // avfaudio/avaudioengine/attach(_:)
    public func attach(_ node: AVAudioNode) { fatalError() }
    // avfaudio/avaudioengine/connect(_:to:format:)
    public func connect(_ from: AVAudioNode, to: AVAudioNode, format: AVAudioFormat?) { fatalError() }
    // avfaudio/avaudioengine/start()
    public func start() throws { fatalError() }
    // avfaudio/avaudioengine/stop()
    public func stop() { fatalError() }
}
