// Signatures only; each comment is the page under developer.apple.com/documentation that says so. ActivityConfiguration and
// the island are WidgetKit's with SwiftUI.
import ActivityKit
import AppIntents
import SwiftUI

// swiftui/widget
@MainActor @preconcurrency public protocol Widget {
    associatedtype Body: WidgetConfiguration
    @MainActor @preconcurrency var body: Body { get }
    @MainActor @preconcurrency init()
}
// swiftui/widgetconfiguration
@MainActor @preconcurrency public protocol WidgetConfiguration {}
extension WidgetConfiguration {
    // swiftui/widgetconfiguration/supplementalactivityfamilies(_:), iOS 18
    public func supplementalActivityFamilies(_ families: [ActivityFamily]) -> some WidgetConfiguration { _same(self) }
}
func _same<C: WidgetConfiguration>(_ configuration: C) -> some WidgetConfiguration { configuration }
// widgetkit/activityfamily, iOS 18
public enum ActivityFamily: Hashable, Sendable { case small, medium }
// swiftui/environmentvalues/activityfamily
extension EnvironmentValues {
    public var activityFamily: ActivityFamily {
        get { fatalError() }
        set { fatalError() }
    }
}
// swiftui/widgetbundle
@MainActor @preconcurrency public protocol WidgetBundle {
    associatedtype Body: Widget
    @WidgetBundleBuilder @MainActor @preconcurrency var body: Body { get }
    @MainActor @preconcurrency init()
}
extension WidgetBundle { @MainActor @preconcurrency public static func main() { fatalError() } }
public protocol _LimitedAvailabilityWidgetMarker {}
public struct _Widgets: Widget { public init() { fatalError() }; public var body: _NoConfiguration { fatalError() } }
public struct _NoConfiguration: WidgetConfiguration {}
// swiftui/widgetbundlebuilder
@resultBuilder @MainActor public struct WidgetBundleBuilder {
    // swiftui/widgetbundlebuilder/buildexpression(_:)
    public static func buildExpression<W: Widget>(_ widget: W) -> W { fatalError() }
    // widgetkit/widgetbundlebuilder/buildexpression(_:)
    public static func buildExpression<C: ControlWidget>(_ control: C) -> C { fatalError() }
    // widgetkit/widgetbundlebuilder/buildblock(_:)
    public static func buildBlock<W: Widget>(_ widget: W) -> W { fatalError() }
    // widgetkit/widgetbundlebuilder/buildblock(_:)
    public static func buildBlock<C: ControlWidget>(_ control: C) -> C { fatalError() }
    // widgetkit/widgetbundlebuilder/buildblock(_:)
    public static func buildBlock<each W: Widget>(_ widget: repeat each W) -> _Widgets { fatalError() }
    // swiftui/widgetbundlebuilder/buildoptional(_:)
    public static func buildOptional(_ widget: (any Widget & _LimitedAvailabilityWidgetMarker)?) -> _Widgets { fatalError() }
    // swiftui/widgetbundlebuilder/buildlimitedavailability(_:)
    public static func buildLimitedAvailability(_ widget: some ControlWidget) -> any Widget & _LimitedAvailabilityWidgetMarker { fatalError() }
}

// swiftui/controlwidget, iOS 18
@MainActor @preconcurrency public protocol ControlWidget {
    associatedtype Body: ControlWidgetConfiguration
    @MainActor @preconcurrency var body: Body { get }
    @MainActor @preconcurrency init()
}
// swiftui/controlwidgetconfiguration
@MainActor @preconcurrency public protocol ControlWidgetConfiguration {}
extension ControlWidgetConfiguration {
    // swiftui/controlwidgetconfiguration/displayname(_:)
    public func displayName(_ name: LocalizedStringResource) -> some ControlWidgetConfiguration { _sameControl(self) }
}
func _sameControl<C: ControlWidgetConfiguration>(_ configuration: C) -> some ControlWidgetConfiguration { configuration }
// swiftui/controlwidgettemplate
@MainActor @preconcurrency public protocol ControlWidgetTemplate {}
// widgetkit/staticcontrolconfiguration/init(kind:content:)
@MainActor @preconcurrency public struct StaticControlConfiguration<Content: ControlWidgetTemplate>: ControlWidgetConfiguration {
    public init(kind: String, content: @escaping () -> Content) { fatalError() }
}
// widgetkit/controlwidgetbuttondefaultactionlabel
public struct ControlWidgetButtonDefaultActionLabel: View { public var body: Never { fatalError() } }
// widgetkit/controlwidgetbutton/init(action:label:)-77p8j
@MainActor @preconcurrency public struct ControlWidgetButton<Label: View, ActionLabel: View, Action: AppIntent>: ControlWidgetTemplate {
    public init(action: Action, @ViewBuilder label: @escaping () -> Label) where ActionLabel == ControlWidgetButtonDefaultActionLabel { fatalError() }
}

// widgetkit/activityviewcontext
public struct ActivityViewContext<Attributes: ActivityAttributes> {
    public var attributes: Attributes { fatalError() }
    public var state: Attributes.ContentState { fatalError() }
}
// widgetkit/activityconfiguration/init(for:content:dynamicisland:)
@MainActor @preconcurrency public struct ActivityConfiguration<Attributes: ActivityAttributes>: WidgetConfiguration {
    public init<C: View>(
        for type: Attributes.Type, @ViewBuilder content: @escaping (ActivityViewContext<Attributes>) -> C,
        dynamicIsland: @escaping (ActivityViewContext<Attributes>) -> DynamicIsland
    ) { fatalError() }
}
// widgetkit/dynamicisland
@MainActor @preconcurrency public struct DynamicIsland {
    public init<A: DynamicIslandExpandedContent, L: View, T: View, M: View>(
        @DynamicIslandExpandedContentBuilder expanded: @escaping () -> A, @ViewBuilder compactLeading: @escaping () -> L,
        @ViewBuilder compactTrailing: @escaping () -> T, @ViewBuilder minimal: @escaping () -> M
    ) { fatalError() }
}
// widgetkit/dynamicislandexpandedcontent
public protocol DynamicIslandExpandedContent {}
public struct _Expanded: DynamicIslandExpandedContent {}
// widgetkit/dynamicislandexpandedcontentbuilder
@resultBuilder public struct DynamicIslandExpandedContentBuilder {
    // widgetkit/dynamicislandexpandedcontentbuilder/buildblock(_:)
    public static func buildBlock<each R: DynamicIslandExpandedContent>(_ region: repeat each R) -> _Expanded { fatalError() }
}
// widgetkit/dynamicislandexpandedregionposition
public struct DynamicIslandExpandedRegionPosition {
    public static var leading: Self { fatalError() }
    public static var trailing: Self { fatalError() }
    public static var bottom: Self { fatalError() }
}
// widgetkit/dynamicislandexpandedregion
public struct DynamicIslandExpandedRegion<Content: View>: DynamicIslandExpandedContent {
    public init(_ position: DynamicIslandExpandedRegionPosition, @ViewBuilder content: @escaping () -> Content) { fatalError() }
}

// swiftui/button/init(intent:label:): SwiftUI's own with AppIntents on Apple's systems.
extension Button { public init<I: AppIntent>(intent: I, @ViewBuilder label: () -> Label) { fatalError() } }
