import RestwaterCore

/// A picture of the core's numbers. Bands are tinted, lines differ by dashes, points by shape, and stretches are
/// brackets above the picture, so nothing depends on colour.
struct ChartDrawing {
    let chart: ChartView
    let width, height, mm: Double
    private let caption: Caption
    private let upLabels: [(Double, Caption.Label)]
    private let key: ChartKey
    private let row, left, right, top, bottom: Double

    init(_ chart: ChartView, width: Double, height: Double, mm: Double, figures: Double, letters: Letters) {
        (self.chart, self.width, self.height, self.mm) = (chart, width, height, mm)
        // However large the text is, the picture keeps the greater part of its place.
        let caption = Caption(letters: letters, em: min(figures, height / 15), widest: width)
        self.caption = caption
        upLabels = chart.y.ticks.map { ($0.at, caption.of($0.label)) }
        row = caption.em * 1.25
        key = ChartKey(chart, width: width, mm: mm, row: row * 1.1, caption: caption)
        left = (upLabels.map { $0.1.width }.max() ?? 0) + 1.4 * mm
        right = width - mm
        top = row + (chart.spans.isEmpty ? row * 0.6 : row + 1.6 * mm)
        bottom = height - 2.1 * row - 1.2 * mm - key.height
    }

    private func x(_ value: Double) -> Double { left + (right - left) * share(value, chart.x) }
    private func y(_ value: Double) -> Double { bottom - (bottom - top) * share(value, chart.y) }
    private func share(_ value: Double, _ axis: Axis) -> Double {
        axis.to > axis.from ? min(1, max(0, (value - axis.from) / (axis.to - axis.from))) : 0
    }

    func marks() -> [Mark] {
        guard right > left, bottom > top else { return [] }
        let inside = Rect(left: left - 1, top: top - 1, width: right - left + 2, height: bottom - top + 2)
        let dots = chart.notTried.map { notTried(left: x($0.from), top: top, right: x($0.to), bottom: bottom, mm: mm) } ?? []
        let drawn = chart.bands.flatMap(band) + dots + chart.bars.flatMap(bar) + chart.lines.map(line)
        return axes() + [.inside(.rect(inside), drawn)] + chart.spans.flatMap(span) + chart.dots.flatMap(dot) + key.marks(top: height - key.height)
    }

    private func axes() -> [Mark] {
        let thin = 0.25 * mm
        var marks = [caption.of(chart.y.label, .bold).at(0, 0)]
        for (at, label) in upLabels {
            marks.append(.line(Point(left, y(at)), Point(right, y(at)), .soft, thin / 2))
            marks.append(label.at(left - 0.9 * mm - label.width, y(at) - label.height / 2))
        }
        marks.append(.line(Outline(Point(left, top), Point(left, bottom), Point(right, bottom)), .ink, Stroke(thin)))
        var free = 0.0
        for tick in chart.x.ticks {
            let (x, label) = (x(tick.at), caption.of(tick.label))
            marks.append(.line(Point(x, bottom), Point(x, bottom + 0.9 * mm), .ink, thin))
            let from = min(max(0, x - label.width / 2), max(0, width - label.width))
            // Numbers that would touch at large text sizes are left out; their ticks stay.
            if from < free { continue }
            marks.append(label.at(from, bottom + mm))
            free = from + label.width + 1.2 * mm
        }
        let label = caption.of(chart.x.label, .bold)
        return marks + [label.at(max(0, right - label.width), bottom + mm + row)]
    }

    private func band(_ band: ChartBand) -> [Mark] {
        let high = zip(band.x, band.high).map { Point(x($0), y($1)) }
        let low = zip(band.x, band.low).map { Point(x($0), y($1)) }
        let outline = Outline(high + low.reversed(), closed: true)
        return [.fill(outline, .water), .line(outline, .soft, Stroke(0.2 * mm))]
    }

    private func bar(_ bar: ChartBar) -> [Mark] {
        let (from, to, high) = (x(bar.from), x(bar.to), y(bar.height))
        let outline = Mark.line(.rect(Rect(left: from, top: high, width: to - from, height: bottom - high)), .ink, Stroke(0.3 * mm))
        guard bar.height > chart.y.to else { return [outline] }
        // A bar higher than the picture is open at the top, with an arrow.
        let (middle, tip) = ((from + to) / 2, top + 0.2 * mm)
        let arrow = Outline.closed(Point(middle, tip), Point(middle + 0.9 * mm, tip + 1.4 * mm), Point(middle - 0.9 * mm, tip + 1.4 * mm))
        return [outline, .fill(arrow, .ink)]
    }

    private func line(_ line: ChartLine) -> Mark {
        .line(Outline(zip(line.x, line.y).map { Point(x($0), y($1)) }), .ink, stroke(line.style, mm))
    }

    /// A bracket above the picture, with its words.
    private func span(_ span: ChartSpan) -> [Mark] {
        let (from, to, y) = (x(span.from), x(span.to), top - 0.5 * mm)
        let (edge, dots) = (0.45 * mm, Stroke(0.2 * mm, dashes: stroke(.dotted, mm).dashes))
        let known = min(to, max(from, chart.notTried.map { x($0.from) } ?? to))
        var marks = [Mark.line(Point(from, y - 0.8 * mm), Point(known, y - 0.8 * mm), .ink, edge)]
        if known < to { marks.append(.line(Point(known, y - 0.8 * mm), Point(to, y - 0.8 * mm), .ink, untried(edge, mm))) }
        for end in [from, to] {
            marks.append(.line(Point(end, y - 0.8 * mm), Point(end, y + 0.8 * mm), .ink, edge))
            marks.append(.line(Point(end, y), Point(end, bottom), .soft, dots))
        }
        let label = caption.of(span.label, .bold)
        let at = min(max(0, (from + to - label.width) / 2), max(0, width - label.width))
        return marks + [label.at(at, y - 1.2 * mm - label.height)]
    }

    private func dot(_ dot: ChartDot) -> [Mark] {
        let (x, y, r) = (x(dot.x), y(dot.y), 0.95 * mm)
        // The same symbols as on the strip and the map: a diamond is a bite, a stroke a cast wound in without one, and
        // a dot in the accent colour what the record suggests.
        func upright(_ half: Double) -> [Mark] {
            [.line(Point(x, y - half), Point(x, y + half), .paper, 1.1 * mm), .line(Point(x, y - half), Point(x, y + half), .ink, 0.5 * mm)]
        }
        switch dot.shape {
        case .bite:
            let half = 1.2 * r
            let diamond = Outline.closed(Point(x, y - half), Point(x + half, y), Point(x, y + half), Point(x - half, y))
            return [.line(diamond, .paper, Stroke(0.5 * mm)), .fill(diamond, .ink)]
        case .withoutBite: return upright(r)
        case .best: return [.fill(.circle(Point(x, y), 1.5 * r), .paper), .fill(.circle(Point(x, y), 1.2 * r), .accent)]
        case .habit: return upright(1.6 * r)
        }
    }
}

/// A line of a style, which can be told apart at arm's length.
func stroke(_ style: LineStyle, _ mm: Double) -> Stroke {
    switch style {
    case .solid: Stroke(0.55 * mm)
    case .dashed: Stroke(0.4 * mm, dashes: [1.8 * mm, mm])
    case .dotted: Stroke(0.4 * mm, dashes: [0.05 * mm, 0.85 * mm], round: true)
    }
}
