// Signatures only; each comment is the page under developer.apple.com/documentation that says so.

public protocol DynamicProperty {}

// swiftui/state
@propertyWrapper public struct State<Value>: DynamicProperty {
    public init(wrappedValue: Value) { fatalError() }
    public var wrappedValue: Value {
        get { fatalError() }
        nonmutating set { fatalError() }
    }
    public var projectedValue: Binding<Value> { fatalError() }
}

// swiftui/binding
@propertyWrapper public struct Binding<Value> {
    @preconcurrency public init(get: @escaping @isolated(any) @Sendable () -> Value, set: @escaping @isolated(any) @Sendable (Value) -> Void) {
        fatalError()
    }
    public var wrappedValue: Value {
        get { fatalError() }
        nonmutating set { fatalError() }
    }
    public var projectedValue: Binding<Value> { fatalError() }
}

// swiftui/stateobject
@MainActor @preconcurrency @propertyWrapper public struct StateObject<Object: ObservableObject>: DynamicProperty {
    nonisolated public init(wrappedValue thunk: @autoclosure @escaping () -> Object) { fatalError() }
    public var wrappedValue: Object { fatalError() }
}

// swiftui/observedobject
@MainActor @preconcurrency @propertyWrapper public struct ObservedObject<Object: ObservableObject>: DynamicProperty {
    public init(wrappedValue: Object) { fatalError() }
    public var wrappedValue: Object {
        get { fatalError() }
        nonmutating set { fatalError() }
    }
}

// swiftui/focusstate
@propertyWrapper public struct FocusState<Value: Hashable>: DynamicProperty {
    public init() where Value == Bool { fatalError() }
    public var wrappedValue: Value {
        get { fatalError() }
        nonmutating set { fatalError() }
    }
    public var projectedValue: Binding { fatalError() }
    // swiftui/focusstate/binding
    public struct Binding {}
}

// swiftui/scaledmetric
@propertyWrapper public struct ScaledMetric<Value: BinaryFloatingPoint>: DynamicProperty {
    public init(wrappedValue: Value, relativeTo style: Font.TextStyle) { fatalError() }
    public var wrappedValue: Value { fatalError() }
}

// swiftui/environmentvalues
public struct EnvironmentValues {
    public var scenePhase: ScenePhase { fatalError() }
    public var layoutDirection: LayoutDirection {
        get { fatalError() }
        set { fatalError() }
    }
    // swiftui/environmentvalues/legibilityweight
    public var legibilityWeight: LegibilityWeight? {
        get { fatalError() }
        set { fatalError() }
    }
    // swiftui/environmentvalues/dynamictypesize
    public var dynamicTypeSize: DynamicTypeSize {
        get { fatalError() }
        set { fatalError() }
    }
    // swiftui/environmentvalues/colorschemecontrast
    public var colorSchemeContrast: ColorSchemeContrast { fatalError() }
}
// swiftui/environment
@propertyWrapper public struct Environment<Value>: DynamicProperty {
    public init(_ path: KeyPath<EnvironmentValues, Value>) { fatalError() }
    public var wrappedValue: Value { fatalError() }
}
// swiftui/dynamictypesize
public enum DynamicTypeSize: Hashable, Comparable, CaseIterable, Sendable {
    case xSmall, small, medium, large, xLarge, xxLarge, xxxLarge, accessibility1, accessibility2, accessibility3, accessibility4, accessibility5
    public var isAccessibilitySize: Bool { fatalError() }
}
// swiftui/scenephase
public enum ScenePhase: Comparable, Sendable { case background, inactive, active }
// swiftui/legibilityweight
public enum LegibilityWeight: Hashable, Sendable { case regular, bold }
// swiftui/colorschemecontrast
public enum ColorSchemeContrast: Hashable, Sendable { case standard, increased }
// swiftui/layoutdirection
public enum LayoutDirection: Hashable, Sendable { case leftToRight, rightToLeft }
// swiftui/colorscheme
public enum ColorScheme: Sendable { case light, dark }
// swiftui/visibility
public enum Visibility: Sendable { case automatic, visible, hidden }
