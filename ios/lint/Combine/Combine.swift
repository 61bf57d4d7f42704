// Written from knowledge; signatures only (../README.md).

public protocol ObservableObject: AnyObject {
    var objectWillChange: ObservableObjectPublisher { get }
}

extension ObservableObject {
    public var objectWillChange: ObservableObjectPublisher { fatalError() }
}

public final class ObservableObjectPublisher {
    public func send() { fatalError() }
}
