#if canImport(Combine)
import Combine

/// What SwiftUI watches: where there is Combine, its own protocol.
public typealias Observed = ObservableObject
#else
/// What is watched. Without Combine (on Linux) a plain callback tells of changes; it does so everywhere.
public protocol Observed: AnyObject {}
#endif
