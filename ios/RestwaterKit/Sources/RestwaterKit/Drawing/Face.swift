import RestwaterCore

/// The app's typeface (`core/face/res/font`), measured with the table that is built into the core.
public enum Face {
    /// The font name of a cut for words.
    public static func name(_ weight: Weight) -> String { weight == .bold ? "RestwaterSans-Bold" : "RestwaterSans-Medium" }
    /// The font name of a cut for the clock.
    public static func clock(_ percent: UInt32) -> String { "RestwaterSans-Clock\(percent)" }

    static let widths = faceWidths()
    private static let medium = Table { $0.medium }
    private static let bold = Table { $0.bold }

    /// Laying out a day needs millions of widths, so those of the most common letters are read from an array.
    private struct Table: Sendable {
        private let common: [Double]
        private let rare: [UInt32: Double]
        private let other = Double(widths.other) / 1000

        init(_ width: (LetterWidth) -> UInt16) {
            let known = Dictionary(uniqueKeysWithValues: widths.letters.map { ($0.code, Double(width($0)) / 1000) })
            let none = other
            (rare, common) = (known, (0..<256).map { known[$0] ?? none })
        }

        subscript(code: UInt32) -> Double { code < 256 ? common[Int(code)] : rare[code] ?? other }
    }

    /// Width of a text at that em: the sum of its letters, since the cuts have no kerning.
    public static func width(_ text: String, _ em: Double, _ weight: Weight) -> Double {
        let table = weight == .bold ? bold : medium
        return text.unicodeScalars.reduce(0) { $0 + table[$1.value] } * em
    }

    /// Width of figures in a cut of the clock at that em.
    static func width(_ figures: String, _ em: Double, _ cut: ClockCut) -> Double {
        figures.reduce(0) { $0 + Double($1 == ":" ? cut.colon : cut.digit) / 1000 } * em
    }
}

extension Letters {
    /// The widths of the app's own typeface, the same on every phone and on a PC.
    public static let face = Letters(width: Face.width)
}
