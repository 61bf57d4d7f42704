import Foundation
import RestwaterCore

/// The answer of the phone's satellite receiver.
public enum PositionRead: Equatable, Sendable {
    /// Degrees north and east (WGS 84), and how accurate the phone says that is.
    case found(latDeg: Double, lonDeg: Double, accuracyM: Double)
    /// It may not be read.
    case notAllowed
    /// None came.
    case notFound
}

/// The phone's position: asked for once when its key is tapped, in the foreground, and never required.
extension RestwaterState {
    /// Shown where an answer is still to come.
    nonisolated static let waits = "…"

    /// The key: asks the phone, if it has a receiver.
    func usePhone() {
        guard let ask = onPositionWanted else { return say(shellWords(language: phoneLanguage()).noReceiver) }
        guard !readsPosition else {
            onEcho?(.ignored)
            return
        }
        readsPosition = true
        // A receiver may take most of a minute.
        content.notice = Self.waits
        ask()
    }

    /// The answer only fills two lines of the Swim screen: the angler sees it and taps SET PLACE.
    public func positionRead(_ read: PositionRead) {
        readsPosition = false
        switch read {
        case .notAllowed: say(shellWords(language: phoneLanguage()).positionNotAllowed)
        case .notFound: say(shellWords(language: phoneLanguage()).positionNotFound)
        case .found(let latDeg, let lonDeg, let accuracyM):
            // Without a locale: a decimal point, whatever the phone uses elsewhere.
            let written = [latDeg, lonDeg].map { String(format: "%.7f", $0) }
            act(.typed(into: .pegLatitude, text: written[0])) {
                $0.act(.typed(into: .pegLongitude, text: written[1])) { $0.say(positionWords(accuracyM: accuracyM, language: phoneLanguage())) }
            }
        }
    }
}
