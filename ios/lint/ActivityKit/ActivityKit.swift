// Written from knowledge; signatures only (../README.md).
@_exported import Foundation

public protocol ActivityAttributes: Codable {
    associatedtype ContentState: Codable, Hashable
}
public struct ActivityContent<State: Codable & Hashable> {
    public init(state: State, staleDate: Date?, relevanceScore: Double = 0) { fatalError() }
    public var state: State { fatalError() }
}
extension ActivityContent: Sendable where State: Sendable {}
public struct PushType: Sendable {}
public struct ActivityUIDismissalPolicy: Sendable { public static let immediate: ActivityUIDismissalPolicy = { fatalError() }() }
public struct ActivityAuthorizationInfo {
    public init() { fatalError() }
    public var areActivitiesEnabled: Bool { fatalError() }
}
public final class Activity<Attributes: ActivityAttributes>: @unchecked Sendable {
    public static func request(attributes: Attributes, content: ActivityContent<Attributes.ContentState>, pushType: PushType? = nil) throws -> Activity<Attributes> { fatalError() }
    public func update(_ content: ActivityContent<Attributes.ContentState>) async { fatalError() }
    public func end(_ content: ActivityContent<Attributes.ContentState>?, dismissalPolicy: ActivityUIDismissalPolicy) async { fatalError() }
}
