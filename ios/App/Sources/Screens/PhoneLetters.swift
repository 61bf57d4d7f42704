import RestwaterKit
import UIKit

/// Widths of the system's own face with figures of one width, the one the canvas draws with.
extension Letters {
    static func phone(bold: Bool) -> Letters {
        Letters { text, em, weight in Widths.shared.width(text, em, weight, bold) }
    }
}

/// Widths asked for before. `NSCache` may be used from several threads
/// (developer.apple.com/documentation/foundation/nscache).
private final class Widths: @unchecked Sendable {
    static let shared = Widths()
    private let known = NSCache<NSString, NSNumber>()

    func width(_ text: String, _ em: Double, _ weight: Weight, _ bold: Bool) -> Double {
        let key = "\(em) \(weight) \(bold) \(text)" as NSString
        if let width = known.object(forKey: key) { return width.doubleValue }
        let font = UIFont.monospacedDigitSystemFont(ofSize: CGFloat(em), weight: face(weight, bold))
        let width = Double(NSAttributedString(string: text, attributes: [.font: font]).size().width)
        known.setObject(NSNumber(value: width), forKey: key)
        return width
    }

    /// The same weights as `Look` draws with.
    private func face(_ weight: Weight, _ bold: Bool) -> UIFont.Weight {
        switch weight {
        case .medium: bold ? .bold : .medium
        case .bold: bold ? .heavy : .bold
        }
    }
}
