import RestwaterCore

extension Slate {
    /// Height of a caution at its size, with the gap below it.
    func cautionHeight(_ text: String, em: Double, width: Double) -> Double {
        letters.height(text, em: em, width: width - 4 * mm) + 4.5 * mm
    }
}

extension Sheet {
    /// A caution in a frame with a bar at its side: it informs, and forbids nothing.
    mutating func caution(_ text: String, em: Double, at place: Rect, _ slate: Slate, order: Double) {
        let mm = slate.mm
        let inner = Rect(left: 2.5 * mm, top: mm, width: place.width - 4 * mm, height: max(0, place.height - 2 * mm))
        let marks: [Mark] = [
            .fill(.rect(place.local.with(width: 1.2 * mm)), .ink), .line(.rect(place.local), .ink, Stroke(0.3 * mm)),
        ]
        put("caution", marks + slate.write.fit(text, em: em, in: inner, middle: false), spoken: text, at: place, order: order)
    }
}
