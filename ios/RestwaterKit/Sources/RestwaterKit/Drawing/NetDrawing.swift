import RestwaterCore

/// A keepnet: its weight in words, and as a bar up to its limit, with the uncertain range below it.
struct NetDrawing {
    let net: NetView
    let width, height, body: Double
    let slate: Slate
    private var mm: Double { slate.mm }

    /// Height a net needs: its name and weight, its bar if it has a limit, the limit, the warning.
    static func height(_ net: NetView, body: Double) -> Double { lines(net) * body * 1.3 }

    private static func lines(_ net: NetView) -> Double {
        1.2 + (net.shares.isEmpty ? 0 : 1) + (net.limit.isEmpty ? 0 : 1.1) + (net.says.isEmpty ? 0 : 1.1)
    }

    func marks() -> [Mark] {
        let unit = height / Self.lines(net)
        let sign = 3.5 * mm
        let write = slate.write
        func place(_ left: Double, _ top: Double, _ height: Double) -> Rect { Rect(left: left, top: top, width: width - left, height: height) }
        var marks = net.inUse ? arrow(unit * 1.2) : []
        marks += write.fit(net.heading, em: body * 1.05, in: place(sign, 0, unit * 1.2), weight: .bold)
        if net.shares.count == 3 { marks += bar(top: unit * 1.2, unit) }
        let warned = net.says.isEmpty ? 0 : unit * 1.1
        if !net.limit.isEmpty { marks += write.fit(net.limit, em: body * 0.9, in: place(0, height - warned - unit * 1.1, unit * 1.1), oneLine: true) }
        if warned > 0 {
            marks += warning(middle: height - warned / 2)
            marks += write.fit(net.says, em: body, in: place(sign, height - warned, warned), weight: .bold)
        }
        return marks
    }

    /// The next fish goes here.
    private func arrow(_ high: Double) -> [Mark] {
        let (y, r) = (high / 2, 1.1 * mm)
        return [.fill(.closed(Point(0, y - r), Point(2 * r, y), Point(0, y + r)), .accent)]
    }

    /// An open triangle near the limit, a solid one at the limit.
    private func warning(middle y: Double) -> [Mark] {
        let (x, r) = (1.4 * mm, 1.2 * mm)
        let triangle = Outline.closed(Point(x - r, y + r), Point(x, y - r), Point(x + r, y + r))
        return net.warning == .atLimit ? [.fill(triangle, .ink)] : [.line(triangle, .ink, Stroke(0.35 * mm))]
    }

    /// From 0 to a tenth beyond the limit; a stroke at the limit and at 80 % of it.
    private func bar(top: Double, _ high: Double) -> [Mark] {
        let edge = 0.3 * mm
        let (from, tall) = (top + high * 0.06, high * 0.52)
        func x(_ share: Double) -> Double { min(1.1, max(0, share)) / 1.1 * (width - edge) + edge / 2 }
        func box(_ top: Double, _ right: Double, _ height: Double) -> Outline {
            .rect(Rect(left: edge / 2, top: top, width: right - edge / 2, height: height))
        }
        var marks: [Mark] = [
            .fill(box(from, x(1), tall), .water), .fill(box(from + tall * 0.18, x(net.shares[1]), tall * 0.64), .ink),
            .line(box(from, x(1), tall), .ink, Stroke(edge)),
            .line(Point(x(0.8), from - tall * 0.15), Point(x(0.8), from + tall * 1.15), .soft, edge),
            .line(Point(x(1), top), Point(x(1), top + high * 0.68), .ink, 2 * edge),
        ]
        let (low, far) = (x(net.shares[0]), x(net.shares[2]))
        if far - low < mm { return marks }
        // The range is below the bar, where ink is visible.
        let y = top + high * 0.83
        marks.append(.line(Point(low, y), Point(far, y), .ink, 0.45 * mm))
        for end in [low, far] { marks.append(.line(Point(end, y - high * 0.14), Point(end, y + high * 0.14), .ink, 0.45 * mm)) }
        return marks
    }
}
