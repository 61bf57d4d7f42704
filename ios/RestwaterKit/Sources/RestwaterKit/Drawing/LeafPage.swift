import RestwaterCore

/// One piece of a leaf.
enum LeafBlock {
    case words(tag: String, String, em: Double, Weight)
    /// Words whose page ends within a sentence.
    case broken(tag: String, String, em: Double, Weight)
    /// A caution in its frame.
    case boxed(String, em: Double)
    case line(LeafLine, Int)
    /// The scale of the ranges below it, the size of its label, and its height.
    case scale(Axis, label: Double, height: Double)
    /// A key as wide as the screen.
    case wide(LeafKey)
    /// A keepnet of the Match screen.
    case net(NetView, Int)

    fileprivate var isText: Bool {
        switch self {
        case .words, .broken, .boxed: true
        default: false
        }
    }

    fileprivate var isScale: Bool { if case .scale = self { true } else { false } }
    fileprivate var hasRange: Bool { if case .line(let line, _) = self { line.span != nil } else { false } }
    fileprivate var isBoxed: Bool { if case .boxed = self { true } else { false } }
    var isBroken: Bool { if case .broken = self { true } else { false } }
    /// Sentences that come after the lines.
    fileprivate var isNote: Bool { if case .words(let tag, _, _, _) = self { tag != "says" } else { false } }
}

/// Divides the blocks of a leaf into parts, each of which fits on one page.
struct LeafPage {
    let leaf: Leaf
    let slate: Slate
    private var body: Double { slate.text.body }
    private var small: Double { body * 0.85 }
    private var mm: Double { slate.mm }

    init(_ leaf: Leaf, slate: Slate) { (self.leaf, self.slate) = (leaf, slate) }

    /// Height of a key as wide as the screen, with the gap below it: such a key is not used while fishing.
    var wideKey: Double { max(11 * mm, (slate.text.secondary + slate.text.sub) * 1.3 + 2 * mm) + Self.belowWide * mm }

    func blocks(width: Double) -> [LeafBlock] {
        var blocks: [LeafBlock] = []
        if !leaf.says.isBlank { blocks.append(.words(tag: "says", leaf.says, em: body, .bold)) }
        if !leaf.caution.isBlank { blocks.append(.boxed(leaf.caution, em: small)) }
        blocks += leaf.lines.enumerated().map { .line($1, $0) }
        return blocks + leaf.notes.enumerated().map { .words(tag: "note-\($0)", $1, em: small, .medium) }
    }

    /// Height of a scale: its label, which is of the size of 100 % where there is little room, and its figures.
    private func scaleHeight(label: Double) -> Double { 1.3 * (label + small) + 2.2 * mm }
    private var lowLabel: Double { small * slate.usualShare }

    /// The room that each range needs, with its scale above it; 0 without one.
    func leastForRanges(width: Double) -> Double {
        let ranges = leaf.lines.filter { $0.span != nil }.map { shape($0, width, body).height }
        return ranges.max().map { $0 + scaleHeight(label: lowLabel) } ?? 0
    }

    func height(_ block: LeafBlock, width: Double) -> Double {
        switch block {
        case .words(let tag, let text, let em, let weight), .broken(let tag, let text, let em, let weight):
            slate.letters.height(text, em: em, width: width, weight: weight) + below(tag)
        case .boxed(let text, let em): slate.cautionHeight(text, em: em, width: width)
        case .line(let line, _): shape(line, width, body).height
        case .scale(_, _, let height): height
        case .wide: wideKey
        case .net(let net, _): NetDrawing.shape(net, body: body, width: width, slate: slate).height + below("says")
        }
    }

    /// The part of a block's height that is a gap below it. The last block of a page doesn't need it, since text must not become
    /// smaller for a pixel.
    func gap(_ block: LeafBlock) -> Double {
        switch block {
        case .words(let tag, _, _, _), .broken(let tag, _, _, _): below(tag) - Self.belowLast * mm
        case .boxed: 1.5 * mm
        case .wide: Self.belowWide * mm
        case .line, .scale, .net: 0
        }
    }

    /// The height that a block is drawn in: text keeps its gap, in case measuring it was a pixel short.
    func drawn(_ block: LeafBlock, width: Double) -> Double {
        height(block, width: width) - (block.isText && !block.isBoxed ? 0 : gap(block))
    }

    /// The height that a block needs where nothing follows.
    func least(_ block: LeafBlock, width: Double) -> Double { height(block, width: width) - gap(block) }

    /// Below a key as wide as the screen, and below the last sentence of a page, mm.
    private static let belowWide = 2.5
    private static let belowLast = 0.3

    /// Below a sentence and below a note.
    private func below(_ tag: String) -> Double { (tag == "says" ? 1.5 : 1) * mm }

    /// Fills the parts from the top, each as far as its room allows: the text, then the wide keys, then the sentences after them.
    /// With large text each part is filled to its last line. In each part the scale comes before the first range.
    func parts(_ blocks: [LeafBlock], width: Double, room: (Int) -> Double) -> [[LeafBlock]] {
        // A caution is always on the first part, before the sentence if there is no room for both.
        let said = blocks.prefix { $0.isText }
        let boxed = said.filter(\.isBoxed)
        if let first = said.first, !boxed.isEmpty, !first.isBoxed,
            said.map({ height($0, width: width) }).reduce(0, +) - (said.last.map(gap) ?? 0) > room(0)
        {
            return parts(boxed + blocks.filter { !$0.isBoxed }, width: width, room: room)
        }
        let list = leaf.list.map(LeafBlock.wide)
        var queue = list.isEmpty ? blocks : blocks.filter { !$0.isNote } + list + blocks.filter(\.isNote)
        var parts: [[LeafBlock]] = [[]]
        var left = room(0)
        while !queue.isEmpty {
            var block = queue.removeFirst()
            func above() -> LeafBlock? {
                guard block.hasRange, let axis = leaf.axis, !parts[parts.count - 1].contains(where: \.isScale) else { return nil }
                // If there is little room, the scale has a smaller label, so that the line below stays on this page at its size.
                let label = least(block, width: width) + scaleHeight(label: small) > left ? lowLabel : small
                return .scale(axis, label: label, height: scaleHeight(label: label))
            }
            func free() -> Double { left - (above().map { height($0, width: width) } ?? 0) }
            func cutHere(alone: Bool) -> Bool {
                guard least(block, width: width) > free(), let two = cut(block, width: width, room: free(), alone: alone) else { return false }
                block = two.0
                queue.insert(two.1, at: 0)
                return true
            }
            if !cutHere(alone: parts[parts.count - 1].isEmpty) && least(block, width: width) > free() && !parts[parts.count - 1].isEmpty {
                // A heading moves to the next part together with the line below it.
                var carried: [LeafBlock] = []
                if case .line(let line, _)? = parts[parts.count - 1].last, line.heads, parts[parts.count - 1].count > 1 {
                    carried = [parts[parts.count - 1].removeLast()]
                }
                parts.append(carried)
                left = room(parts.count - 1) - carried.map { self.height($0, width: width) }.reduce(0, +)
                // A block that is higher than a whole page is cut too.
                _ = cutHere(alone: true)
            }
            if let scale = above() {
                parts[parts.count - 1].append(scale)
                left -= height(scale, width: width)
            }
            parts[parts.count - 1].append(block)
            left -= height(block, width: width)
        }
        return parts
    }

    /// Cuts a text between two sentences, so that a page is full. A sentence that is alone on its page and higher than it is cut
    /// between two clauses, and such a figure above its details; otherwise a figure has at least the first sentence of its details
    /// below it, or the first clause if it is nothing but a label for them, or goes to the next page with all of them.
    private func cut(_ block: LeafBlock, width: Double, room: Double, alone isAlone: Bool) -> (LeafBlock, LeafBlock)? {
        guard slate.layout.apart else { return nil }
        switch block {
        case .words(let tag, let text, let em, let weight), .broken(let tag, let text, let em, let weight):
            func words(_ some: ArraySlice<String>) -> LeafBlock { .words(tag: tag, some.joined(separator: " "), em: em, weight) }
            func fitting(_ all: [String]) -> Int? { (1..<max(1, all.count)).last { least(words(all.prefix($0)), width: width) <= room } }
            let sentences = sentencesOf(text: text)
            if let fit = fitting(sentences) { return (words(sentences.prefix(fit)), words(sentences.dropFirst(fit))) }
            let clauses = clausesOf(text: text)
            if isAlone, let fit = fitting(clauses) {
                return (.broken(tag: tag, clauses.prefix(fit).joined(separator: " "), em: em, weight), words(clauses.dropFirst(fit)))
            }
            guard isAlone, let (first, rest) = slate.letters.split(text, em: em, width: width, weight: weight, room: room - Self.belowLast * mm)
            else {
                return nil
            }
            return (.broken(tag: tag, first, em: em, weight), .words(tag: tag, rest, em: em, weight))
        case .line(let line, let i):
            let sentences = sentencesOf(text: line.detail)
            let all = sentences.count < 2 && line.value.isBlank ? clausesOf(text: line.detail) : sentences
            for fit in (1..<max(1, all.count)).reversed() {
                // A screen reader hears all of them with the figure.
                let some = LeafLine(
                    label: line.label, value: line.value, detail: all.prefix(fit).joined(separator: " "), spoken: line.spoken,
                    figureSpoken: line.figureSpoken, span: line.span, heads: line.heads)
                guard shape(some, width, body).height <= room else { continue }
                let rest = all.dropFirst(fit).joined(separator: " ")
                return (.line(some, i), .words(tag: "line-\(i)-more", rest, em: small, .medium))
            }
            let said = line.figureSpoken
            let alone = LeafLine(
                label: line.label, value: line.value, detail: "", spoken: said, figureSpoken: said, span: line.span, heads: line.heads)
            guard isAlone, !line.detail.isBlank, shape(alone, width, body).height <= room else { return nil }
            return (.line(alone, i), .words(tag: "line-\(i)-more", line.detail, em: small, .medium))
        case .boxed, .wide, .scale, .net: return nil
        }
    }

    /// Heights of the pieces of a line.
    private struct Shape {
        let beside: Bool
        let label, value, valueWidth, detail, span, gap: Double
        var height: Double { label + (beside ? 0 : value) + detail + span + gap }
    }

    private func shape(_ line: LeafLine, _ width: Double, _ em: Double) -> Shape {
        let letters = slate.letters
        let valueWidth = line.value.isBlank ? 0 : min(width, letters.width(line.value, em, .bold) * 1.03 + 2)
        let labelWidth = letters.width(line.label, em, .medium)
        // Side by side where that takes one line, or where the value is short and the label can wrap beside it.
        let beside = line.value.isBlank || valueWidth < width * 0.42 || labelWidth + valueWidth < width * 0.94
        let label = letters.height(line.label, em: em, width: beside ? width - valueWidth - em * 0.8 : width)
        return Shape(
            beside: beside, label: label, value: letters.height(line.value, em: em, width: width, weight: .bold), valueWidth: valueWidth,
            detail: line.detail.isBlank ? 0 : letters.height(line.detail, em: em * 0.85, width: width),
            span: line.span == nil ? 0 : 4 * mm, gap: 1.6 * mm
        )
    }

    /// The label on the left, the value on the right, details below, and the range on the leaf's axis. A figure that is higher
    /// than its part is made smaller as a whole.
    func marks(_ line: LeafLine, width: Double, height: Double) -> [Mark] {
        let em = slate.letters.largest(body) { self.shape(line, width, $0).height <= height + 1 }
        let (small, shape) = (em * 0.85, self.shape(line, width, em))
        let write = slate.write
        func place(_ left: Double, _ top: Double, _ width: Double, _ height: Double) -> Rect {
            Rect(left: left, top: top, width: width, height: height)
        }
        var marks: [Mark] = [.line(Point(0, 0), Point(width, 0), .soft, 0.12 * mm)]
        var y = shape.gap / 2
        let weight: Weight = line.heads ? .bold : .medium
        let labelWidth = shape.beside ? width - shape.valueWidth - em * 0.8 : width
        marks += write.fit(line.label, em: em, in: place(0, y, labelWidth, shape.label), weight: weight, middle: false)
        if shape.beside {
            let at = place(width - shape.valueWidth, y, shape.valueWidth, shape.label)
            marks += write.fit(line.value, em: em, in: at, weight: .bold, across: .end, middle: false)
            y += shape.label
        } else {
            y += shape.label
            marks += write.fit(line.value, em: em, in: place(0, y, width, shape.value), weight: .bold, middle: false)
            y += shape.value
        }
        marks += write.fit(line.detail, em: small, in: place(0, y, width, shape.detail), tint: .soft, middle: false)
        y += shape.detail
        if let span = line.span, let axis = leaf.axis { marks += spanMarks(span, on: axis, in: place(0, y, width, shape.span), mm: mm) }
        return marks
    }
}

extension LeafPage {
    /// The label of the axis, its figures, and a stroke for each.
    func scaleMarks(_ axis: Axis, label: Double, width: Double, height: Double) -> [Mark] {
        let caption = Caption(letters: slate.letters, em: body * 0.85, widest: width)
        var marks: [Mark] = [Caption(letters: slate.letters, em: label, widest: width).of(axis.label).at(0, 0)]
        var free = 0.0
        for tick in axis.ticks {
            let x = axis.x(tick.at, left: 0, width: width, mm: slate.mm)
            marks.append(.line(Point(x, height - 1.6 * slate.mm), Point(x, height), .soft, 0.3 * slate.mm))
            let figure = caption.of(tick.label)
            let from = min(max(0, x - figure.width / 2), max(0, width - figure.width))
            guard from >= free else { continue }
            marks.append(figure.at(from, 1.3 * label))
            free = from + figure.width + slate.mm
        }
        return marks
    }
}

extension Axis {
    /// The horizontal position of a value on a page of this width.
    func x(_ at: Double, left: Double, width: Double, mm: Double) -> Double {
        let (first, last) = (left + 0.3 * mm, left + width - 2.2 * mm)
        return first + (last - first) * (to > from ? min(1, max(0, (at - from) / (to - from))) : 0)
    }
}

/// The range with its ends and its middle, and a thin stroke for each figure of the axis.
private func spanMarks(_ span: LeafSpan, on axis: Axis, in place: Rect, mm: Double) -> [Mark] {
    let y = place.top + place.height / 2
    func x(_ at: Double) -> Double { axis.x(at, left: place.left, width: place.width, mm: mm) }
    let (low, high, edge) = (x(span.low), x(span.high), 0.5 * mm)
    var marks: [Mark] = axis.ticks.map { tick in
        .line(Point(x(tick.at), y - 1.4 * mm), Point(x(tick.at), y + 1.4 * mm), .soft, (tick.at == axis.from ? 0.3 : 0.12) * mm)
    }
    marks += [.line(Point(low, y), Point(high, y), .ink, edge), .line(Point(low, y - mm), Point(low, y + mm), .ink, edge)]
    if span.beyond {
        let tip = Point(high + 1.6 * mm, y)
        marks.append(.line(Point(high, y), tip, .ink, edge))
        marks.append(.line(Outline(Point(high + 0.4 * mm, y - mm), tip, Point(high + 0.4 * mm, y + mm)), .ink, Stroke(edge)))
    } else {
        marks.append(.line(Point(high, y - mm), Point(high, y + mm), .ink, edge))
    }
    if let at = span.at {
        let side = 1.9 * mm
        marks.append(.fill(.rect(Rect(left: x(at) - side / 2, top: y - side / 2, width: side, height: side), corner: 0.3 * mm), .ink))
    }
    return marks
}
