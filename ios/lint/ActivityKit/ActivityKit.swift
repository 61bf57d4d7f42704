// Signatures only; each comment is the page under developer.apple.com/documentation that says so.
@_exported import Foundation

// activitykit/activityattributes
public protocol ActivityAttributes: Decodable, Encodable {
    associatedtype ContentState: Decodable, Encodable, Hashable
}
// activitykit/activitycontent
public struct ActivityContent<State: Decodable & Encodable & Hashable> {
    public init(state: State, staleDate: Date?, relevanceScore: Double = 0) { fatalError() }
    public var state: State {
        get { fatalError() }
        set { fatalError() }
    }
}
extension ActivityContent: Sendable where State: Sendable {}
// activitykit/pushtype
public struct PushType {}
// activitykit/activityuidismissalpolicy
public struct ActivityUIDismissalPolicy { public static var immediate: ActivityUIDismissalPolicy { fatalError() } }
// activitykit/activityauthorizationinfo: a class there
public final class ActivityAuthorizationInfo {
    public init() { fatalError() }
    public var areActivitiesEnabled: Bool { fatalError() }
}
// activitykit/activitystate
public enum ActivityState: Hashable { case active, ended, dismissed, stale }
// activitykit/activity: the page says nothing of Sendable, so neither does this.
public class Activity<Attributes: ActivityAttributes> {
    // activitykit/activity/contentstate
    public typealias ContentState = Attributes.ContentState
    // activitykit/activity/activities
    public static var activities: [Activity<Attributes>] { fatalError() }
    // activitykit/activity/request(attributes:content:pushtype:)
    public static func request(attributes: Attributes, content: ActivityContent<ContentState>, pushType: PushType? = nil) throws -> Activity<
        Attributes
    > { fatalError() }
    public var id: String { fatalError() }
    public var attributes: Attributes { fatalError() }
    // activitykit/activity/content
    public var content: ActivityContent<ContentState> { fatalError() }
    // activitykit/activity/activitystate
    public var activityState: ActivityState { fatalError() }
    // activitykit/activity/update(_:)
    public func update(_ content: ActivityContent<ContentState>) async { fatalError() }
    // activitykit/activity/end(_:dismissalpolicy:)
    public func end(_ content: ActivityContent<ContentState>?, dismissalPolicy: ActivityUIDismissalPolicy) async { fatalError() }
}
