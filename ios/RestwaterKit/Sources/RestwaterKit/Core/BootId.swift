import Foundation

#if canImport(Darwin)
import Darwin
#endif

/// What entries say about this boot of the phone: an id and an origin of the monotonic clock, both random. The kernel's id and the
/// time since the boot never leave the phone: together with the wall time, the latter would give the moment of the boot, by which
/// one phone can be told from another.
struct OwnBoot: Codable, Equatable, Sendable {
    /// The kernel's id of the boot that this belongs to.
    let kernel: String
    let id: String
    /// What is added to the time since the boot.
    let originMs: Int64

    /// A new one; the origin lies within 35 years.
    static func new(for kernel: String) -> OwnBoot {
        OwnBoot(kernel: kernel, id: UUID().uuidString.lowercased(), originMs: Int64.random(in: 0..<(1 << 40)))
    }

    /// The one of this boot. It is kept in a file, so that all processes share it, and replaced after a restart of the phone. Throws
    /// if the file can be neither read nor written.
    static func of(_ kernel: String, in file: URL) throws -> OwnBoot {
        if FileManager.default.fileExists(atPath: file.path) {
            let data = try Data(contentsOf: file)
            // A file that can't be decoded, or that belongs to another boot, is replaced.
            if let kept = Log.attempt("reading the boot", { try JSONDecoder().decode(OwnBoot.self, from: data) }), kept.kernel == kernel {
                return kept
            }
        }
        let made = new(for: kernel)
        try FileManager.default.createDirectory(at: file.deletingLastPathComponent(), withIntermediateDirectories: true)
        #if canImport(Darwin)
        // It can be read before the first unlock: a tap from outside may be the first thing in a process.
        try JSONEncoder().encode(made).write(to: file, options: [.atomic, .noFileProtection])
        #else
        try JSONEncoder().encode(made).write(to: file, options: .atomic)
        #endif
        try keepHere(file)
        return made
    }
}

/// The boot of this process. While its file can be neither read nor written, the process has one of its own, which the wall clock
/// bridges as it does after a restart, and tries again at the next moment.
final class Boots: Sendable {
    static let own = Boots(file: support.appendingPathComponent("boot"), kernel: readBootId())

    private let file: URL
    private let kernel: String?
    private let lock = NSLock()
    private nonisolated(unsafe) var kept: OwnBoot?
    private let meanwhile: OwnBoot

    init(file: URL, kernel: String?) {
        (self.file, self.kernel, meanwhile) = (file, kernel, .new(for: kernel ?? ""))
    }

    var now: OwnBoot {
        lock.withLock {
            if kept == nil, let kernel { kept = Log.attempt("keeping the boot") { try OwnBoot.of(kernel, in: file) } }
            return kept ?? meanwhile
        }
    }

    private static var support: URL {
        FileManager.default.urls(for: .applicationSupportDirectory, in: .userDomainMask).first ?? URL(fileURLWithPath: NSHomeDirectory())
    }
}

#if canImport(Darwin)
/// The kernel's own id of the boot session.
private func readBootId() -> String? {
    var size = 0
    guard sysctlbyname("kern.bootsessionuuid", nil, &size, nil, 0) == 0, size > 1 else { return nil }
    var bytes = [CChar](repeating: 0, count: size)
    guard sysctlbyname("kern.bootsessionuuid", &bytes, &size, nil, 0) == 0 else { return nil }
    return String(decoding: bytes.prefix { $0 != 0 }.map { UInt8(bitPattern: $0) }, as: UTF8.self)
}
#else
/// The kernel's own id of the boot (proc(5)).
private func readBootId() -> String? {
    let text = Log.attempt("reading the boot id") { try String(contentsOfFile: "/proc/sys/kernel/random/boot_id", encoding: .utf8) }
    return text?.trimmingCharacters(in: .whitespacesAndNewlines)
}
#endif
