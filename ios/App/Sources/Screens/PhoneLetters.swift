import RestwaterKit

extension Letters {
    /// If the phone asks for bold text, every word is as wide as in the bold cut.
    static func phone(bold: Bool) -> Letters {
        bold ? Letters { text, em, _ in Face.width(text, em, .bold) } : .face
    }
}
