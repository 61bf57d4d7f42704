import RestwaterCore

/// The wait strip: a tape of minutes from the splash. The time so far is solid; bites of this session are diamonds,
/// waits that ended without one are strokes, liners of the running cast are triangles; the near-best band has a
/// bracket, dashed where no cast was out so long; the present minute is a line with a flag in the accent colour; beyond what is known the tape is dotted.
struct StripDrawing {
    let strip: StripView
    let width, height, mm: Double
    let letters: Letters
    private let figure, bracket, ticks, left, right, top, bottom, tape, run: Double

    init(_ strip: StripView, width: Double, height: Double, mm: Double, figures: Double, letters: Letters) {
        (self.strip, self.width, self.height, self.mm, self.letters) = (strip, width, height, mm, letters)
        // On a small screen, bracket, ticks and numbers shrink before the tape does.
        let slim = min(1, max(0.45, height / (11 * mm)))
        figure = min(figures, height * 0.26)
        bracket = 1.6 * mm * slim
        ticks = 1.4 * mm * slim
        left = 0.3 * mm
        right = width - left
        top = bracket + 0.3 * mm
        bottom = height - ticks - figure * 0.95
        tape = bottom - top
        run = tape * 0.3
    }

    private func x(_ minute: Double) -> Double { left + (right - left) * min(1, max(0, minute / strip.lengthMin)) }

    func marks() -> [Mark] {
        guard right > left, tape > 0, strip.lengthMin > 0 else { return [] }
        var marks = unknown() + band() + window()
        if let elapsed = strip.elapsedMin {
            marks.append(.fill(.rect(Rect(left: left, top: bottom - run, width: x(elapsed) - left, height: run)), .ink))
        }
        marks += strip.marks.flatMap(mark)
        marks.append(.line(.rect(Rect(left: left, top: top, width: right - left, height: tape)), .ink, Stroke(0.35 * mm)))
        return marks + scale() + (strip.elapsedMin.map(now) ?? [])
    }

    /// Dots where no cast has been long enough to tell.
    private func unknown() -> [Mark] {
        guard let known = strip.knownToMin else { return [] }
        return notTried(left: x(known), top: top, right: right, bottom: bottom, mm: mm)
    }

    /// The near-best band: a bracket above with its ends drawn down, dashed where no cast was out so long; open to the right if
    /// there is no time to wind in by. A record that says too little for a band has only the time to recast by.
    private func band() -> [Mark] {
        if strip.holdMin == nil && strip.recastMin == nil { return [] }
        let to = x(strip.recastMin ?? strip.lengthMin)
        let from = strip.holdMin.map(x) ?? to
        let (edge, line) = (0.4 * mm, bracket * 0.45)
        let known = min(to, max(from, strip.knownToMin.map(x) ?? to))
        var marks: [Mark] = [.line(Point(from, line), Point(known, line), .ink, edge)]
        if known < to { marks.append(.line(Point(known, line), Point(to, line), .ink, untried(edge, mm))) }
        if strip.holdMin != nil { marks.append(.line(Point(from, 0), Point(from, bottom), .ink, edge)) }
        if strip.recastMin != nil { marks.append(.line(Point(to, 0), Point(to, bottom), .ink, edge)) }
        return marks
    }

    /// Half of the bites come within this: a bar under the marks.
    private func window() -> [Mark] {
        guard let window = strip.windowMin, window.count == 2 else { return [] }
        let y = bottom - run - 0.45 * mm
        return [.line(Point(x(window[0]), y), Point(x(window[1]), y), .ink, 0.5 * mm)]
    }

    private func mark(_ mark: StripMark) -> [Mark] {
        let half = min(1.05 * mm, (tape - run) * 0.36)
        let floor = bottom - run - 0.8 * mm - half
        let y = max(top + half + 0.2 * mm, floor - Double(mark.stack) * half * 1.35)
        let x = min(right - half, max(left + half, x(mark.minute)))
        switch mark.shape {
        case .bite: return shape(.closed(Point(x, y - half), Point(x + half, y), Point(x, y + half), Point(x - half, y)), filled: true)
        case .noBite: return [.line(Point(x, y - half), Point(x, y + half), .ink, 0.5 * mm)]
        case .liner: return shape(.closed(Point(x, y - half), Point(x + half, y + half * 0.8), Point(x - half, y + half * 0.8)), filled: false)
        }
    }

    /// A closed shape with an edge in the paper colour, so that close marks stay distinct.
    private func shape(_ outline: Outline, filled: Bool) -> [Mark] {
        let edge = Mark.line(outline, .paper, Stroke(0.5 * mm))
        return filled ? [edge, .fill(outline, .ink)] : [edge, .fill(outline, .paper), .line(outline, .ink, Stroke(0.35 * mm))]
    }

    private func scale() -> [Mark] {
        let every = max(1, Int(strip.figureEveryMin))
        let length = Int(strip.lengthMin)
        let step = (right - left) / Double(max(1, length)) < 0.8 * mm ? 5 : 1
        return stride(from: 0, through: length, by: step).flatMap { minute -> [Mark] in
            let x = x(Double(minute))
            let long = minute % every == 0
            let reach = ticks * (long ? 1 : minute % 5 == 0 ? 0.75 : 0.4)
            let tick = Mark.line(Point(x, bottom), Point(x, bottom + reach), .ink, 0.25 * mm)
            guard long else { return [tick] }
            let wide = letters.width("\(minute)", figure, .bold)
            let at = Point(min(max(0, x - wide / 2), max(0, width - wide)), height - figure * 0.1)
            return [tick, .text(Letter("\(minute)", at: at, em: figure, weight: .bold))]
        }
    }

    /// The present minute, in the accent colour; its flag makes it recognisable without colour.
    private func now(_ elapsed: Double) -> [Mark] {
        let x = x(elapsed)
        var marks: [Mark] = [
            .line(Point(x, 0), Point(x, bottom + ticks), .accent, 0.7 * mm),
            .fill(.closed(Point(x - 1.1 * mm, 0), Point(x + 1.1 * mm, 0), Point(x, 1.6 * mm)), .accent),
        ]
        if elapsed > strip.lengthMin {
            let past = x - 2 * mm
            marks.append(.line(Point(past, top), Point(past, bottom), .accent, Stroke(0.5 * mm, dashes: [0.6 * mm, 0.6 * mm])))
        }
        return marks
    }
}

/// Dots where no cast was out so long, on the strip and behind a chart.
func notTried(left: Double, top: Double, right: Double, bottom: Double, mm: Double) -> [Mark] {
    let step = 1.3 * mm
    return stride(from: left + step, to: right, by: step).enumerated().flatMap { column, across in
        stride(from: top + (column % 2 == 0 ? step / 2 : step), to: bottom - 0.2 * mm, by: step)
            .map { .fill(.circle(Point(across, $0), 0.2 * mm), .soft) }
    }
}

/// Dashes of a bracket where no cast was out so long.
func untried(_ width: Double, _ mm: Double) -> Stroke { Stroke(width, dashes: [0.9 * mm, 0.7 * mm]) }
