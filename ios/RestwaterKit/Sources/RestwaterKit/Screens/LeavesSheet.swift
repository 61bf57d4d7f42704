import RestwaterCore

/// Screens made of leaves (Bench, Book, Conditions, Cautions): sentences and figures above, keys below. What does not
/// fit at this text size goes on the next page: nothing scrolls and nothing becomes too small to read.
extension Sheet {
    mutating func drawLeaves(_ view: LeavesView, _ slate: Slate, _ content: ScreenContent) {
        // A key may remove its own leaf, as closing a session does: then the first leaf is shown.
        guard let leaf = view.leaves.first(where: { $0.id == content.paging.leaf }) ?? view.leaves.first else { return }
        let rest = head(leaf.title, notice: content.notice, slate)
        if leaf.rows.contains(where: { $0.tag == content.paging.row }) {
            rows(leaf.rows, in: rest, slate, content.paging)
        } else {
            drawLeaf(leaf, in: rest, slate, content.paging)
        }
        back(slate)
    }

    private mutating func drawLeaf(_ leaf: Leaf, in rest: Rect, _ slate: Slate, _ paging: Paging) {
        let page = LeafPage(leaf, slate: slate)
        let cells = leaf.keys.map { leafCell($0) } + leaf.rows.map(Cell.init(row:))
        let typed = leaf.typing == nil ? 0 : 11 * slate.mm
        // What the screen was opened for stays at the top: a few lines, a range, or the sentence and a key of the list.
        let line = slate.text.body * Letters.line
        let blocks = page.blocks(width: rest.width)
        let few = leaf.list.isEmpty ? 3 * line : 2 * line + page.wideKey
        let all = blocks.map { page.height($0, width: rest.width) }.reduce(0, +) + Double(leaf.list.count) * page.wideKey
        let least = max(min(few, all), page.leastForRanges(width: rest.width))
        let row = 18 * slate.mm
        // The keys keep the lower part; at large text sizes some of them move to a later page so that a sentence stays
        // above. Where there is room, each of them has the whole width for its words.
        let wanted = slate.layout.apart ? cells.count : Int((slate.gridHeight(cells.count) / row).rounded())
        let rows = min(wanted, max(1, Int((rest.height - typed - least) / row)))
        let widest = slate.widestLabel(cells)
        func divided(_ rows: Int) -> DividedLeaf {
            let keys = row * Double(rows)
            let below = rest.with(top: rest.bottom - keys, height: keys)
            let grids = slate.gridPages(cells.count, in: below, widest: widest)
            if leaf.keysLast {
                return keysLast(below, grids) { first in page.parts(blocks, width: rest.width) { rest.height - ($0 < first ? 0 : keys) } }
            }
            // The text has the whole of each page after those of the keys. What can be typed is on the first page only.
            func taken(_ part: Int) -> Double { part >= grids ? 0 : keys + (part == 0 ? typed : 0) }
            let parts = page.parts(blocks, width: rest.width) { rest.height - taken($0) }
            return DividedLeaf(parts: parts, keys: below, firstKeys: 0, grids: grids)
        }
        // The text needs more pages than its keys do, or has no room for a whole sentence: then fewer rows of keys leave it more
        // room on each.
        let tried = rows > 1 ? (1...rows).reversed().map(divided) : [divided(rows)]
        guard let best = tried.min(by: { ($0.broken, $0.pages) < ($1.broken, $1.pages) }) else { return }
        let number = paging.part % best.pages
        let below = best.keys
        let textOnly = number < best.firstKeys || number >= best.firstKeys + best.grids
        let above = rest.height - below.height - (number == 0 ? typed : 0)
        column(best.parts[min(number, best.parts.count - 1)], in: textOnly ? rest : rest.with(height: above), page, slate)
        if !textOnly {
            if number == 0, let typing = leaf.typing { drawTyping(typing, in: rest.with(top: below.top - typed, height: typed), slate) }
            gridPage(cells, in: below, slate, page: number - best.firstKeys, widest: widest)
        }
        pager(number, of: best.pages, slate, .nextPart)
    }

    /// A leaf whose keys are where its text ends, on as few pages as that takes; `text` divides it for the first page with keys.
    private func keysLast(_ keys: Rect, _ grids: Int, _ text: (Int) -> [[LeafBlock]]) -> DividedLeaf {
        var first = 0
        var parts = text(first)
        while parts.count > first + 1 {
            first += 1
            parts = text(first)
        }
        // If the text just fills the pages before that of the keys, its last block goes with them.
        if parts.count == first, let whole = parts.last {
            parts = whole.count > 1 ? Array(parts.dropLast()) + [Array(whole.dropLast()), Array(whole.suffix(1))] : parts + [[]]
        }
        return DividedLeaf(parts: parts, keys: keys, firstKeys: first, grids: max(1, grids))
    }

    /// A leaf on its pages. Sentences and keys turn their pages together; the shorter of the two stays on its last page.
    private struct DividedLeaf {
        let parts: [[LeafBlock]]
        let keys: Rect
        /// The first page with keys.
        let firstKeys: Int
        let grids: Int
        var pages: Int { max(parts.count, firstKeys + grids) }
        /// Pages that end within a sentence.
        var broken: Int { parts.joined().filter(\.isBroken).count }
    }

    /// Sentences at their own size, on as many pages as they need.
    func spread(_ says: String, _ notes: [String], in place: Rect, _ slate: Slate, lines: [LeafLine] = []) -> [LeafText] {
        let leaf = Leaf(
            id: "", title: "", says: says, caution: "", lines: lines, axis: nil, notes: notes, list: [], typing: nil, rows: [], keys: [],
            keysLast: false)
        let page = LeafPage(leaf, slate: slate)
        return page.parts(page.blocks(width: place.width), width: place.width) { _ in place.height }.map { LeafText(page: page, blocks: $0) }
    }

    /// One of those pages.
    mutating func drawText(_ text: LeafText, in place: Rect, _ slate: Slate) { column(text.blocks, in: place, text.page, slate) }

    /// A key that offers something to do on a screen with nothing to show yet.
    func offer(_ key: LeafKey?) -> [Cell] { key.map { [leafCell($0)] } ?? [] }

    private func leafCell(_ key: LeafKey) -> Cell {
        Cell(face: KeyFace(leaf: key), tag: "key-\(key.tag)", ask: .key(key.tap))
    }

    /// A text that is typed and entered by its key; with cold hands nobody has to.
    mutating func drawTyping(_ typing: TypedField, in place: Rect, _ slate: Slate) {
        let text = slate.draft(typing.into)
        let width = 15 * slate.mm
        let at = place.with(width: place.width - width - 2 * slate.mm, height: place.height - slate.mm)
        var line = slate.typed("typed-\(typing.tag)", typing.label, text, to: .typed(typing.into), typing.keyboard, at: at)
        line.order = 40
        pieces.append(line)
        let key = place.with(left: place.right - width, width: width, height: place.height - slate.mm)
        let face = KeyFace(typing.send, spoken: typing.sendSpoken, enabled: !text.isBlank)
        self.key(
            "send-\(typing.tag)", face, em: slate.text.body, sub: slate.text.body, at: key, slate, order: 41,
            .send(.typed(into: typing.into, text: text)))
    }

    private mutating func column(_ blocks: [LeafBlock], in place: Rect, _ page: LeafPage, _ slate: Slate) {
        var top = place.top
        for (n, block) in blocks.enumerated() {
            // A block higher than its part is made smaller as a whole, as happens at 200 % on the smallest screen.
            let height = page.height(block, width: place.width)
            let at = place.with(top: top, height: max(0, min(page.drawn(block, width: place.width), place.bottom - top)))
            top += height
            let order = 10 + Double(n) / 10
            switch block {
            case .words(let tag, let text, let em, let weight), .broken(let tag, let text, let em, let weight):
                put(tag, text, em: em, at: at, slate, weight: weight, order: order, middle: false)
            case .boxed(let text, let em): caution(text, em: em, at: at, slate, order: order)
            case .line(let line, let i):
                put("line-\(i)", page.marks(line, width: at.width, height: at.height), spoken: line.spoken, at: at, order: order)
            case .scale(let axis, let label, _):
                put("scale", page.scaleMarks(axis, label: label, width: at.width, height: at.height), spoken: axis.label, at: at, order: order)
            case .net(let net, let i):
                let drawing = NetDrawing(net: net, width: at.width, height: at.height, body: slate.text.body, slate: slate)
                put("match-net-\(i)", drawing.marks(), spoken: net.spoken, at: at, order: order)
            case .wide(let key):
                self.key(
                    "key-\(key.tag)", KeyFace(leaf: key), em: slate.text.secondary, sub: slate.text.sub, at: at, slate, order: order,
                    .key(key.tap))
            }
        }
    }
}

extension KeyFace {
    init(leaf key: LeafKey) {
        self.init(key.label, sub: key.sub, spoken: key.spoken, solid: key.solid, enabled: key.enabled)
    }
}

/// Sentences that fill one page.
struct LeafText {
    let page: LeafPage
    let blocks: [LeafBlock]
}
