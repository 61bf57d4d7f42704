import RestwaterKit
import UIKit

/// Widths of the system's own face with figures of one width, the one the canvas draws with.
extension Letters {
    static let phone = Letters { text, em, weight in Widths.shared.width(text, em, weight) }
}

/// Widths asked for before.
private final class Widths: @unchecked Sendable {
    static let shared = Widths()
    private let known = NSCache<NSString, NSNumber>()

    func width(_ text: String, _ em: Double, _ weight: Weight) -> Double {
        let key = "\(em) \(weight) \(text)" as NSString
        if let width = known.object(forKey: key) { return width.doubleValue }
        let font = UIFont.monospacedDigitSystemFont(ofSize: CGFloat(em), weight: weight == .bold ? .bold : .medium)
        let width = Double(NSAttributedString(string: text, attributes: [.font: font]).size().width)
        known.setObject(NSNumber(value: width), forKey: key)
        return width
    }
}
