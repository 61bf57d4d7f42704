import Foundation

#if canImport(Darwin)
import Darwin
#endif

/// What is done with a location of another app or drive.
public enum FileUse: Sendable {
    /// The location itself is read.
    case read
    /// This file in the location is written.
    case write(URL)
    /// This file in the location is removed.
    case remove(URL)
}

/// Locations that the system's pickers give access to. A URL may be security-scoped, and a file in a cloud drive has to
/// be fetched first, so this blocks and must be called off the main thread.
public protocol FileAccess: Sendable {
    func use(_ place: URL, to use: FileUse, _ work: (URL) throws -> Void) throws
}

/// The system's files.
public struct SystemFiles: FileAccess {
    public init() {}

    public func use(_ place: URL, to use: FileUse, _ work: (URL) throws -> Void) throws {
        #if canImport(Darwin)
        let scoped = place.startAccessingSecurityScopedResource()
        defer { if scoped { place.stopAccessingSecurityScopedResource() } }
        var fault: NSError?
        var thrown: (any Error)?
        let coordinated = { (there: URL) in
            do { try work(there) } catch { thrown = error }
        }
        let coordinator = NSFileCoordinator(filePresenter: nil)
        switch use {
        case .read: coordinator.coordinate(readingItemAt: place, options: [], error: &fault, byAccessor: coordinated)
        case .write(let file): coordinator.coordinate(writingItemAt: file, options: .forReplacing, error: &fault, byAccessor: coordinated)
        case .remove(let file): coordinator.coordinate(writingItemAt: file, options: .forDeleting, error: &fault, byAccessor: coordinated)
        }
        if let error = fault ?? thrown { throw error }
        #else
        switch use {
        case .read: try work(place)
        case .write(let file), .remove(let file): try work(file)
        }
        #endif
    }
}
