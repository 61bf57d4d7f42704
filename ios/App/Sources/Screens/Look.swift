import RestwaterKit
import SwiftUI

/// How marks are drawn: the colours, and whether the phone asks for bold text.
struct Look: Equatable, Sendable {
    var ink: Ink
    var bold = false

    /// The cut of the typeface at a size that the system's text size does not change again, since the layout already
    /// did. If the phone asks for bold text, words in the medium cut are set in the bold one.
    func font(_ letter: Letter) -> SwiftUI.Font {
        .custom(bold && letter.clock == nil ? Face.name(.bold) : letter.cut, fixedSize: letter.em)
    }

    /// The same for a line that is typed.
    static func font(_ weight: Weight, size: Double) -> SwiftUI.Font { .custom(Face.name(weight), fixedSize: size) }
}
