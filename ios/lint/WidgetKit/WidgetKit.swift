// Written from knowledge; signatures only (../README.md). ActivityConfiguration and the island are WidgetKit's with SwiftUI.
import ActivityKit
import AppIntents
import SwiftUI

@MainActor @preconcurrency public protocol Widget {
    associatedtype Body: WidgetConfiguration
    @MainActor @preconcurrency var body: Body { get }
    @MainActor @preconcurrency init()
}
@MainActor @preconcurrency public protocol WidgetConfiguration {}
@MainActor @preconcurrency public protocol WidgetBundle {
    associatedtype Body: Widget
    @WidgetBundleBuilder @MainActor @preconcurrency var body: Body { get }
    @MainActor @preconcurrency init()
}
extension WidgetBundle { @MainActor @preconcurrency public static func main() { fatalError() } }
@resultBuilder public struct WidgetBundleBuilder {
    public static func buildBlock<W: Widget>(_ widget: W) -> W { fatalError() }
}

public struct ActivityViewContext<Attributes: ActivityAttributes> {
    public var attributes: Attributes { fatalError() }
    public var state: Attributes.ContentState { fatalError() }
}
public struct ActivityConfiguration<Attributes: ActivityAttributes>: WidgetConfiguration {
    public init<C: View>(
        for type: Attributes.Type, @ViewBuilder content: @escaping (ActivityViewContext<Attributes>) -> C,
        dynamicIsland: @escaping (ActivityViewContext<Attributes>) -> DynamicIsland
    ) { fatalError() }
}
public struct DynamicIsland {
    @MainActor public init<A: DynamicIslandExpandedContent, L: View, T: View, M: View>(
        @DynamicIslandExpandedContentBuilder expanded: @escaping () -> A, @ViewBuilder compactLeading: @escaping () -> L,
        @ViewBuilder compactTrailing: @escaping () -> T, @ViewBuilder minimal: @escaping () -> M
    ) { fatalError() }
}
public protocol DynamicIslandExpandedContent {}
public struct _Expanded: DynamicIslandExpandedContent {}
@resultBuilder public struct DynamicIslandExpandedContentBuilder {
    public static func buildBlock<each R: DynamicIslandExpandedContent>(_ region: repeat each R) -> _Expanded { fatalError() }
}
public struct DynamicIslandExpandedRegionPosition: Sendable {
    public static let leading: Self = { fatalError() }()
    public static let trailing: Self = { fatalError() }()
    public static let bottom: Self = { fatalError() }()
}
public struct DynamicIslandExpandedRegion<Content: View>: DynamicIslandExpandedContent {
    public init(_ position: DynamicIslandExpandedRegionPosition, @ViewBuilder content: @escaping () -> Content) { fatalError() }
}

// SwiftUI's own with AppIntents on Apple's systems.
extension Button { public init<I: AppIntent>(intent: I, @ViewBuilder label: () -> Label) { fatalError() } }
