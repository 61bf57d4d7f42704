/// Small text on a picture, made smaller only if a line would be wider than the picture.
struct Caption {
    let letters: Letters
    let em: Double
    let widest: Double

    /// A caption of known size.
    struct Label: Equatable {
        let text: String
        let em, width: Double
        let weight: Weight
        var height: Double { em * Letters.line }

        /// The caption with its upper left corner at this point.
        func at(_ left: Double, _ top: Double) -> Mark {
            .text(Letter(text, at: Point(left, Letters.baseline(top: top, em: em)), em: em, weight: weight))
        }
    }

    func of(_ text: String, _ weight: Weight = .medium) -> Label {
        let wide = letters.width(text, em, weight)
        if wide <= widest { return Label(text: text, em: em, width: wide, weight: weight) }
        let smaller = em * widest / wide * 0.98
        return Label(text: text, em: smaller, width: letters.width(text, smaller, weight), weight: weight)
    }
}
