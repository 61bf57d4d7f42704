// What the Darwin branches of RestwaterKit use, so that they are compiled too: on Apple's systems it is Foundation's own
// and the C library's. Each comment is the page under developer.apple.com/documentation that says so.
@_exported import Foundation

// kernel/1387446-sysctlbyname
public func sysctlbyname(
    _ name: UnsafePointer<CChar>!, _ old: UnsafeMutableRawPointer!, _ oldLength: UnsafeMutablePointer<Int>!, _ new: UnsafeMutableRawPointer!,
    _ newLength: Int
) -> Int32 { fatalError() }

// foundation/localizedstringresource
public struct LocalizedStringResource: ExpressibleByStringLiteral, Equatable, Sendable {
    public init(stringLiteral value: String) { fatalError() }
}

// foundation/customlocalizedstringresourceconvertible
public protocol CustomLocalizedStringResourceConvertible {
    var localizedStringResource: LocalizedStringResource { get }
}

// foundation/nsfilecoordinator
open class NSFileCoordinator: NSObject {
    // foundation/nsfilecoordinator/readingoptions
    public struct ReadingOptions: OptionSet { public let rawValue: UInt; public init(rawValue: UInt) { self.rawValue = rawValue } }
    // foundation/nsfilecoordinator/writingoptions
    public struct WritingOptions: OptionSet {
        public let rawValue: UInt
        public init(rawValue: UInt) { self.rawValue = rawValue }
        public static var forDeleting: WritingOptions { fatalError() }
        public static var forReplacing: WritingOptions { fatalError() }
    }
    public init(filePresenter: (any NSFilePresenter)?) { fatalError() }
    // foundation/nsfilecoordinator/coordinate(readingitemat:options:error:byaccessor:)
    public func coordinate(
        readingItemAt url: URL, options: ReadingOptions = [], error: UnsafeMutablePointer<NSError?>?, byAccessor reader: (URL) -> Void
    ) { fatalError() }
    // foundation/nsfilecoordinator/coordinate(writingitemat:options:error:byaccessor:)
    public func coordinate(
        writingItemAt url: URL, options: WritingOptions = [], error: UnsafeMutablePointer<NSError?>?, byAccessor writer: (URL) -> Void
    ) { fatalError() }
}
// darwin/nsfilepresenter
public protocol NSFilePresenter: NSObjectProtocol {}

extension URL {
    // foundation/nsurl/bookmarkcreationoptions
    public struct BookmarkCreationOptions: OptionSet {
        public let rawValue: UInt
        public init(rawValue: UInt) { self.rawValue = rawValue }
        public static var minimalBookmark: BookmarkCreationOptions { fatalError() }
    }
    // foundation/nsurl/bookmarkresolutionoptions
    public struct BookmarkResolutionOptions: OptionSet { public let rawValue: UInt; public init(rawValue: UInt) { self.rawValue = rawValue } }
    // foundation/url/startaccessingsecurityscopedresource()
    public func startAccessingSecurityScopedResource() -> Bool { fatalError() }
    // foundation/url/stopaccessingsecurityscopedresource()
    public func stopAccessingSecurityScopedResource() { fatalError() }
    // foundation/url/bookmarkdata(options:includingresourcevaluesforkeys:relativeto:)
    public func bookmarkData(
        options: BookmarkCreationOptions = [], includingResourceValuesForKeys keys: Set<URLResourceKey>? = nil, relativeTo url: URL? = nil
    ) throws -> Data { fatalError() }
    // foundation/url/init(resolvingbookmarkdata:options:relativeto:bookmarkdataisstale:)
    public init(
        resolvingBookmarkData data: Data, options: BookmarkResolutionOptions = [], relativeTo url: URL? = nil, bookmarkDataIsStale: inout Bool
    ) throws { fatalError() }
}
