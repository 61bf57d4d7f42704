import RestwaterCore

/// Samples of a chart's lines, bands and untried minutes with their words, as many in a row as fit.
struct ChartKey {
    private enum Sample {
        case line(LineStyle)
        case band
        case notTried
    }

    private struct Entry {
        let sample: Sample
        let label: Caption.Label
    }

    private let rows: [[Entry]]
    private let mm, row: Double
    var height: Double { Double(rows.count) * row }

    init(_ chart: ChartView, width: Double, mm: Double, row: Double, caption: Caption) {
        (self.mm, self.row) = (mm, row)
        var rows: [[Entry]] = []
        var taken = 0.0
        for entry in Self.entries(chart, caption) {
            let wide = Self.sample * mm + entry.label.width + 3 * mm
            if rows.isEmpty || taken + wide > width {
                rows.append([])
                taken = 0
            }
            rows[rows.count - 1].append(entry)
            taken += wide
        }
        self.rows = rows
    }

    private static func entries(_ chart: ChartView, _ caption: Caption) -> [Entry] {
        var entries: [Entry] = []
        for (i, line) in chart.lines.filter({ !$0.label.isEmpty }).enumerated() {
            entries.append(Entry(sample: .line(line.style), label: caption.of(line.label)))
            // The band belongs to the first line, so its entry is next to it.
            if i == 0 { entries += chart.bands.map { Entry(sample: .band, label: caption.of($0.label)) } }
        }
        if let notTried = chart.notTried { entries.append(Entry(sample: .notTried, label: caption.of(notTried.label))) }
        return entries
    }

    func marks(top: Double) -> [Mark] {
        rows.enumerated().flatMap { i, entries -> [Mark] in
            let y = top + Double(i) * row
            var x = 0.0
            return entries.flatMap { entry -> [Mark] in
                let middle = y + entry.label.height / 2
                let from = x
                x += Self.sample * mm + entry.label.width + 3 * mm
                return sample(entry.sample, from, middle) + [entry.label.at(from + Self.sample * mm, y)]
            }
        }
    }

    private func sample(_ sample: Sample, _ x: Double, _ middle: Double) -> [Mark] {
        let (w, h) = ((Self.sample - 1) * mm, 2 * mm)
        switch sample {
        case .line(let style): return [.line(Point(x, middle), Point(x + w, middle), .ink, stroke(style, mm))]
        case .band:
            let box = Outline.rect(Rect(left: x, top: middle - h / 2, width: w, height: h))
            return [.fill(box, .water), .line(box, .soft, Stroke(0.2 * mm))]
        case .notTried:
            return notTried(left: x - mm, top: middle - 1.3 * mm, right: x + w, bottom: middle + 1.6 * mm, mm: mm)
        }
    }

    /// Width of a sample with its gap, in millimetres.
    private static let sample = 6.5
}
