#if canImport(Combine)
import Combine

/// What SwiftUI watches: Combine's own protocol if Combine is available.
public typealias Observed = ObservableObject
#else
/// What is watched. Without Combine (on Linux) a plain callback reports changes; it does so everywhere.
public protocol Observed: AnyObject {}
#endif
