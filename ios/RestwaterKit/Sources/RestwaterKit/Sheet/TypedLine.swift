import RestwaterCore

extension Slate {
    /// Height of a typed line.
    var lineHeight: Double { 9 * mm }
}

extension Sheet {
    /// Line number `i` of the lines that are typed into the core's fields, from the top of the place.
    mutating func line(_ line: TypedField, _ i: Int, _ place: Rect, _ slate: Slate) {
        self.line(line.tag, line.label, line.value, to: .core(line.into), i, place, slate)
    }

    /// The same for any line.
    mutating func line(_ tag: String, _ label: String, _ value: String, to goal: FieldGoal, _ i: Int, _ place: Rect, _ slate: Slate) {
        var piece = Piece("field-\(tag)", at: place.with(top: place.top + Double(i) * slate.lineHeight, height: slate.lineHeight))
        piece.field = Field(label: label, value: value, em: slate.text.body, to: goal)
        (piece.spoken, piece.order) = (label, 10 + Double(i))
        pieces.append(piece)
    }
}
