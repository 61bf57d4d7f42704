import Foundation

#if canImport(Darwin)
import Darwin
#endif

/// The id of this boot of the phone; read once.
let bootId: String = readBootId() ?? "boot of process \(ProcessInfo.processInfo.globallyUniqueString)"

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
