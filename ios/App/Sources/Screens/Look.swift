import RestwaterKit
import SwiftUI

/// How marks are drawn: the colours, and whether the phone asks for bold text.
struct Look: Equatable, Sendable {
    var ink: Ink
    var bold = false

    func weight(_ weight: Weight) -> SwiftUI.Font.Weight {
        switch weight {
        case .medium: bold ? .bold : .medium
        case .bold: bold ? .heavy : .bold
        }
    }
}
