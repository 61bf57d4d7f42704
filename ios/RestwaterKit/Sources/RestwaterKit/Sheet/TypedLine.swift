import RestwaterCore

extension Slate {
    /// Height of a typed line.
    var lineHeight: Double { 9 * mm }

    /// A line that is typed: its label, as large as the text unless it would take half of the width, and the rest to type in.
    func typed(
        _ tag: String, _ label: String, _ value: String, to goal: FieldGoal, _ keyboard: Keyboard, at place: Rect
    ) -> Piece {
        var piece = Piece(tag, at: place)
        let most = min(place.width * Self.widestLabel, letters.width(label, text.body, .medium) + 1)
        let fitted = letters.fit(label, em: text.body, width: most, height: place.height)
        let wide = fitted.lines.map { letters.width($0, fitted.em, .medium) }.max() ?? 0
        let left = wide + 2 * mm
        let box = place.local.with(left: left, width: place.width - left)
        let top = max(0, (place.height - fitted.height) / 2)
        let edge = 0.25 * mm
        piece.marks =
            write.layOut(fitted, in: place.local.with(top: top), tint: .ink, weight: .medium) + [
                .line(Point(box.left, box.bottom - edge), Point(box.right, box.bottom - edge), .ink, edge)
            ]
        let em = min(text.body * 1.2, place.height / (Letters.line * 1.3))
        piece.field = Field(label: label, value: value, em: em, to: goal, keyboard: keyboard, box: box)
        piece.spoken = label
        return piece
    }

    /// Share of the width for a label at the most.
    private static let widestLabel = 0.45
}

extension Sheet {
    /// Line number `i` of the lines that are typed into the core's fields, from the top of the place.
    mutating func line(_ line: TypedField, _ i: Int, _ place: Rect, _ slate: Slate) {
        self.line(line.tag, line.label, line.value, to: .core(line.into), line.keyboard, i, place, slate)
    }

    /// The same for any line.
    mutating func line(
        _ tag: String, _ label: String, _ value: String, to goal: FieldGoal, _ keyboard: Keyboard, _ i: Int, _ place: Rect, _ slate: Slate
    ) {
        let at = place.with(top: place.top + Double(i) * slate.lineHeight, height: slate.lineHeight)
        var piece = slate.typed("field-\(tag)", label, value, to: goal, keyboard, at: at)
        piece.order = 10 + Double(i)
        pieces.append(piece)
    }

    /// How far the screen moves up while that line is typed: the line, and the key beside it that passes it on, are then above
    /// the keyboard, and never above the upper edge.
    public func lifted(for tag: String, on measure: GlassMeasure) -> Double {
        guard measure.keyboard > 0, let line = self[tag], line.field != nil else { return 0 }
        let key = tag.hasPrefix("typed-") ? self["send-" + tag.dropFirst("typed-".count)] : nil
        let places = [line.place] + (key.map { [$0.place] } ?? [])
        let (top, bottom) = (places.map(\.top).min() ?? 0, places.map(\.bottom).max() ?? 0)
        let covered = bottom + Self.aboveKeyboardMm * measure.pointsPerMm - (measure.height - measure.keyboard)
        return max(0, min(covered, top - measure.insetTop))
    }

    /// Between a typed line and the keyboard, mm.
    private static let aboveKeyboardMm = 1.0
}
