import Foundation

/// Uses what another app lends: a URL of the system's pickers may be security-scoped, and a file in a cloud drive has to be
/// fetched first.
func borrowed(_ url: URL, _ use: (URL) throws -> Void) throws {
    #if canImport(Darwin)
    let scoped = url.startAccessingSecurityScopedResource()
    defer { if scoped { url.stopAccessingSecurityScopedResource() } }
    var fault: NSError?
    var thrown: (any Error)?
    NSFileCoordinator().coordinate(readingItemAt: url, error: &fault) { there in
        do { try use(there) } catch { thrown = error }
    }
    if let error = fault ?? thrown { throw error }
    #else
    try use(url)
    #endif
}
