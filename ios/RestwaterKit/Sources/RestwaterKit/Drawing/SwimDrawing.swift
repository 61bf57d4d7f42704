import RestwaterCore

/// The swim as the core packed it: water, hatching, lines, marks, labels, in this order.
struct SwimDrawing {
    let scene: SwimScene
    let mm: Double
    let letters: Letters

    /// How much larger than a mark the blank behind it is.
    private static let halo = 1.35

    func marks() -> [Mark] {
        let fills = parts(scene.fillXy, scene.fillStart, closed: true)
            .enumerated().map { Mark.fill($1, scene.fillRole[$0] == .water ? .water : .ink) }
        let at = scene.hatchXy.map(Double.init)
        let hatch = stride(from: 0, to: at.count - 3, by: 4).map { i in
            Mark.line(Point(at[i], at[i + 1]), Point(at[i + 2], at[i + 3]), .ink, Double(scene.hatchWidth))
        }
        let lines = parts(scene.lineXy, scene.lineStart, closed: false)
            .enumerated().map { line($1, scene.lineRole[$0], Double(scene.lineWidth[$0])) }
        let marks = scene.markShape.enumerated().flatMap { i, shape in
            mark(shape, Double(scene.markXy[2 * i]), Double(scene.markXy[2 * i + 1]), Double(scene.markSize[i]))
        }
        // A blank behind each mark, or the hatching would obscure its shape; all blanks come first, so that none covers
        // a neighbour.
        let paper = scene.markShape.indices.filter { scene.markShape[$0] != .nextDot }.map { i in
            let at = Point(Double(scene.markXy[2 * i]), Double(scene.markXy[2 * i + 1]))
            return Mark.fill(.circle(at, Double(scene.markSize[i]) * Self.halo), .paper)
        }
        return fills + hatch + lines + paper + marks + scene.labelText.indices.flatMap(label)
    }

    /// Each polyline or polygon of a packed pair of arrays.
    private func parts(_ xy: [Float], _ start: [UInt32], closed: Bool) -> [Outline] {
        zip(start, start.dropFirst()).map { from, to in
            Outline((Int(from)..<Int(to)).map { Point(Double(xy[2 * $0]), Double(xy[2 * $0 + 1])) }, closed: closed)
        }
    }

    private func line(_ outline: Outline, _ role: LineRole, _ width: Double) -> Mark {
        let tint: Tint =
            switch role {
            case .band, .ray: .soft
            case .nextRing: .accent
            case .halo, .keptBackInner: .paper
            default: .ink
            }
        let dashes: [Double] =
            switch role {
            case .ray: [0.4 * mm, 0.8 * mm]
            case .hazardClear: [1.2 * mm, 0.8 * mm]
            default: []
            }
        return .line(outline, tint, Stroke(width, dashes: dashes, round: true))
    }

    private func mark(_ shape: MarkShape, _ x: Double, _ y: Double, _ half: Double) -> [Mark] {
        let edge = max(0.2 * mm, half * 0.35)
        let centre = Point(x, y)
        let diamond = Outline.closed(Point(x, y - half), Point(x + half, y), Point(x, y + half), Point(x - half, y))
        switch shape {
        case .biteDiamond: return [.fill(diamond, .ink)]
        case .linerTriangle: return open(.closed(Point(x, y - half), Point(x + half, y + half), Point(x - half, y + half)), edge)
        case .lostCross:
            let cross = Outline(Point(x - half, y - half), Point(x + half, y + half)) + Outline(Point(x + half, y - half), Point(x - half, y + half))
            return [.line(cross, .ink, Stroke(edge * 1.3))]
        case .featureSquare: return open(.rect(Rect(left: x - half, top: y - half, width: 2 * half, height: 2 * half)), edge)
        case .hazardCross:
            let cross = Outline(Point(x - half / 2, y), Point(x + half / 2, y)) + Outline(Point(x, y - half / 2), Point(x, y + half / 2))
            return open(diamond, edge) + [.line(cross, .ink, Stroke(edge))]
        case .nextDot: return [.fill(.circle(centre, half), .accent)]
        case .outNow: return [.fill(.circle(centre, half), .ink)]
        case .fedGrains:
            return [(0, -0.6), (-0.62, 0.5), (0.62, 0.5)].map { across, down in
                .fill(.circle(Point(x + across * half, y + down * half), 0.38 * half), .ink)
            }
        case .shownRings: return [0.95, 0.4].map { .line(.circle(centre, $0 * half), .ink, Stroke(0.6 * edge)) }
        }
    }

    private func open(_ outline: Outline, _ edge: Double) -> [Mark] { [.fill(outline, .paper), .line(outline, .ink, Stroke(edge))] }

    private func label(_ i: Int) -> [Mark] {
        let box = scene.labelBox[4 * i..<4 * i + 4].map(Double.init)
        let place = Outline.rect(Rect(left: box[0], top: box[1], width: box[2], height: box[3]))
        let next = scene.labelRole[i] == .next
        // Numbers have a blank behind them too, or the hatching would run through them.
        let paper = scene.labelBoxed[i] || scene.labelRole[i] == .count || scene.labelRole[i] == .range
        var boxed: [Mark] = paper ? [.fill(place, next ? .accent : .paper)] : []
        if scene.labelBoxed[i] && !next { boxed.append(.line(place, .ink, Stroke(0.2 * mm))) }
        let weight: Weight = scene.labelRole[i] == .range ? .medium : .bold
        let em = Double(scene.labelSize[i])
        let wide = letters.width(scene.labelText[i], em, weight)
        let at = Point(Double(scene.labelAt[2 * i]) - wide / 2, Double(scene.labelAt[2 * i + 1]))
        return boxed + [.text(Letter(scene.labelText[i], at: at, em: em, weight: weight, tint: next ? .paper : .ink))]
    }
}
