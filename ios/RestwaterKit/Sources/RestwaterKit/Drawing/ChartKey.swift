import RestwaterCore

/// Samples of a chart's lines and bands with their words, as many in a row as fit.
struct ChartKey {
    private struct Entry {
        /// None for a band.
        let style: LineStyle?
        let label: Caption.Label
    }

    private let rows: [[Entry]]
    private let mm, row: Double
    var height: Double { Double(rows.count) * row }

    init(_ chart: ChartView, width: Double, mm: Double, row: Double, caption: Caption) {
        (self.mm, self.row) = (mm, row)
        var rows: [[Entry]] = []
        var taken = 0.0
        for (i, line) in chart.lines.filter({ !$0.label.isEmpty }).enumerated() {
            // The band belongs to the first line, so its entry is next to it.
            let bands = i == 0 ? chart.bands.map { Entry(style: nil, label: caption.of($0.label)) } : []
            for entry in [Entry(style: line.style, label: caption.of(line.label))] + bands {
                let wide = Self.sample * mm + entry.label.width + 3 * mm
                if rows.isEmpty || taken + wide > width {
                    rows.append([])
                    taken = 0
                }
                rows[rows.count - 1].append(entry)
                taken += wide
            }
        }
        self.rows = rows
    }

    func marks(top: Double) -> [Mark] {
        rows.enumerated().flatMap { i, entries -> [Mark] in
            let y = top + Double(i) * row
            var x = 0.0
            return entries.flatMap { entry -> [Mark] in
                let middle = y + entry.label.height / 2
                let from = x
                x += Self.sample * mm + entry.label.width + 3 * mm
                return sample(entry.style, from, middle) + [entry.label.at(from + Self.sample * mm, y)]
            }
        }
    }

    private func sample(_ style: LineStyle?, _ x: Double, _ middle: Double) -> [Mark] {
        let (w, h) = ((Self.sample - 1) * mm, 2 * mm)
        if let style { return [.line(Point(x, middle), Point(x + w, middle), .ink, stroke(style, mm))] }
        let box = Outline.rect(Rect(left: x, top: middle - h / 2, width: w, height: h))
        return [.fill(box, .water), .line(box, .soft, Stroke(0.2 * mm))]
    }

    /// Width of a sample with its gap, in millimetres.
    private static let sample = 6.5
}
