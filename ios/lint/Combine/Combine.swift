// Signatures only; each comment is the page under developer.apple.com/documentation that says so.

public protocol ObservableObject: AnyObject {
    var objectWillChange: ObservableObjectPublisher { get }
}

extension ObservableObject {
    public var objectWillChange: ObservableObjectPublisher { fatalError() }
}

// combine/observableobjectpublisher
public final class ObservableObjectPublisher {
    // combine/observableobjectpublisher/send()
    public func send() { fatalError() }
}
