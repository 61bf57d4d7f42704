import RestwaterCore

/// Draws each change as a line between its 95 % limits with a ring at its ratio. The filling of the ring shows the
/// verdict, which is also given in words.
struct ForestDrawing {
    let axis: Axis
    let rows: [ChangeView]
    let width, height, mm: Double
    let letters: Letters
    /// Whether the text is so large that the titles have more lines.
    let large: Bool
    private let caption: Caption
    private let bottom: Double

    init(_ axis: Axis, rows: [ChangeView], width: Double, height: Double, mm: Double, figures: Double, large: Bool, letters: Letters) {
        self.large = large
        (self.axis, self.rows, self.width, self.height, self.mm, self.letters) = (axis, rows, width, height, mm, letters)
        caption = Caption(letters: letters, em: min(figures, height / 15), widest: width)
        bottom = height - caption.em * 2.7 - 1.2 * mm
    }

    private func x(_ at: Double) -> Double {
        let (left, right) = (3 * mm, width - 3 * mm)
        return axis.to > axis.from ? left + (right - left) * (at - axis.from) / (axis.to - axis.from) : left
    }

    func marks() -> [Mark] {
        guard bottom > 0, !rows.isEmpty else { return [] }
        let each = min(bottom / Double(rows.count), caption.em * (large ? 10 : 7))
        return scale() + rows.enumerated().flatMap { row($1, top: Double($0) * each, bottom: Double($0 + 1) * each) }
    }

    private func scale() -> [Mark] {
        var marks: [Mark] = []
        var taken: [(from: Double, to: Double)] = []
        // "Same" is what the others are read by: it has its place first.
        for tick in axis.ticks.filter({ $0.at == 0 }) + axis.ticks.filter({ $0.at != 0 }) {
            let same = tick.at == 0
            let x = x(tick.at)
            marks.append(.line(Point(x, 0), Point(x, bottom), same ? .ink : .soft, (same ? 0.35 : 0.12) * mm))
            let label = caption.of(tick.label, same ? .bold : .medium)
            let from = min(max(0, x - label.width / 2), max(0, width - label.width))
            let to = from + label.width
            if taken.contains(where: { from < $0.to + mm && to > $0.from - mm }) { continue }
            marks.append(label.at(from, bottom + 0.6 * mm))
            taken.append((from, to))
        }
        return marks + [caption.of(axis.label).at(0, bottom + 0.8 * mm + caption.em * 1.3)]
    }

    private func row(_ row: ChangeView, top: Double, bottom: Double) -> [Mark] {
        let high = (bottom - top) / caption.em
        let lines = large ? max(1, (high / 1.3).rounded(.down) - 2) : high > 4.6 ? 2 : 1
        var marks: [Mark] = []
        var y = top
        for (text, weight) in [(row.title, Weight.medium), (row.verdict, .bold)] {
            let fitted = letters.fit(text, em: caption.em, width: width, height: caption.em * 1.25 * lines, weight: weight, most: Int(lines))
            let wide = fitted.lines.map { letters.width($0, fitted.em, weight) }.max() ?? 0
            let place = Rect(left: 0, top: y, width: wide, height: fitted.height)
            // A blank area behind the words, so that the lines of the axis don't run through them.
            marks.append(.fill(.rect(place), .paper))
            marks += Words(letters: letters).layOut(fitted, in: place, tint: .ink, weight: weight)
            y += fitted.height
        }
        return marks + limits(row, min((y + bottom) / 2, bottom - 1.6 * mm))
    }

    private func limits(_ row: ChangeView, _ y: Double) -> [Mark] {
        let (low, high, edge) = (x(row.forest.low), x(row.forest.high), 0.45 * mm)
        var marks = [Mark.line(Point(low, y), Point(high, y), .ink, edge)]
        for (end, beyond, way) in [(low, row.forest.lowBeyond, -1.0), (high, row.forest.highBeyond, 1.0)] {
            if beyond {
                let tip = Point(end + way * 1.4 * mm, y)
                marks.append(.line(Outline(Point(end, y - 1.1 * mm), tip, Point(end, y + 1.1 * mm)), .ink, Stroke(edge)))
                marks.append(.line(Point(end, y), tip, .ink, edge))
            } else {
                marks.append(.line(Point(end, y - mm), Point(end, y + mm), .ink, edge))
            }
        }
        guard let at = row.forest.at else { return marks }
        let (centre, r) = (Point(x(at), y), 1.4 * mm)
        marks.append(.fill(.circle(centre, r), .paper))
        switch row.tone {
        case .unknown: break
        case .leans: marks.append(.fill(.leftHalf(centre, r), .ink))
        case .clear: marks.append(.fill(.circle(centre, r), .ink))
        }
        return marks + [.line(.circle(centre, r), .ink, Stroke(0.4 * mm))]
    }
}
