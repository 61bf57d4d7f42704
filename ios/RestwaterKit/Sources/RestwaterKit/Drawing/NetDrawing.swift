import RestwaterCore

/// A keepnet: its weight in words, and as a bar up to its limit, with the uncertain range below it.
struct NetDrawing {
    let net: NetView
    let width, height, body: Double
    let slate: Slate
    private var mm: Double { slate.mm }

    /// Heights of the parts of a net: its name and weight, its bar if it has a limit, the limit, the warning.
    struct Shape {
        let heading, bar, limit, says: Double
        var height: Double { heading + bar + limit + says }
    }

    static func shape(_ net: NetView, body: Double, width: Double, slate: Slate) -> Shape {
        let beside = width - sign * slate.mm
        func part(_ text: String, _ em: Double, _ width: Double, _ weight: Weight) -> Double {
            text.isBlank ? 0 : slate.letters.height(text, em: em, width: width, weight: weight) + body * 0.25
        }
        return Shape(
            heading: part(net.heading, body * headingSize, beside, .bold), bar: net.shares.isEmpty ? 0 : body * 1.3,
            limit: part(net.limit, body * limitSize, width, .medium), says: part(net.says, body, beside, .bold))
    }

    /// Width of the sign before a text, mm; sizes of the heading and of the limit relative to plain text.
    private static let (sign, headingSize, limitSize) = (3.5, 1.05, 0.9)

    func marks() -> [Mark] {
        let shape = Self.shape(net, body: body, width: width, slate: slate)
        // All parts change their height together with the place.
        let share = height / shape.height
        let sign = Self.sign * mm
        let write = slate.write
        func place(_ left: Double, _ top: Double, _ height: Double) -> Rect { Rect(left: left, top: top, width: width - left, height: height) }
        let (heading, bar, limit, warned) = (shape.heading * share, shape.bar * share, shape.limit * share, shape.says * share)
        var marks = net.inUse ? arrow(heading) : []
        marks += write.fit(net.heading, em: body * Self.headingSize, in: place(sign, 0, heading), weight: .bold)
        if net.shares.count == 3 { marks += self.bar(top: heading, bar) }
        if limit > 0 { marks += write.fit(net.limit, em: body * Self.limitSize, in: place(0, heading + bar, limit)) }
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
