import RestwaterCore

/// One key of a grid.
struct Cell {
    let face: KeyFace
    let tag: String
    let ask: Ask
    /// Whether it and its neighbours of the same kind are placed from left to right, whichever hand holds the phone.
    var reads = false
}

extension Cell {
    /// The field of a row as a key that opens its choices.
    init(row: ChoiceRow) {
        let face = KeyFace(row.label, sub: row.value, spoken: row.spoken)
        self.init(face: face, tag: "row-\(row.tag)", ask: .row(row.tag), reads: row.reads)
    }
}

extension Slate {
    /// Height of a grid of this number of keys, including the gap above it.
    func gridHeight(_ keys: Int) -> Double { Double(gridRows(keys)) * 18 * mm }

    /// The same below a sentence, of which at least three lines are visible; the pager leads to the rows for which
    /// there is no room.
    func keysBelow(_ sentence: String, _ keys: Int, in place: Rect) -> Double {
        let row = 18 * mm
        let lines = Double(letters.lines(of: sentence, em: text.body, width: place.width))
        let words = min(text.body * Letters.line * lines, place.height / 3)
        return min(gridHeight(keys), row * max(1, ((place.height - words) / row).rounded(.down)))
    }

    /// The size of text at 100 % as a share of that of large text.
    var usualShare: Double { min(1, subMm() * mm / text.sub) }

    /// Pages of a grid of this number of keys in a place, with labels, or words if labels may be broken, up to that width.
    func gridPages(_ keys: Int, in place: Rect, widest: Double = 0, breaks: Bool = false) -> Int {
        Int(keyGrid(ask: gridAsk(keys, in: place, widest: widest, breaks: breaks)).pages)
    }

    /// Width of the widest label of large text at the size that is asked for, or of its widest word; 0 for other text.
    func widestLabel(_ cells: [Cell], breaks: Bool = false) -> Double {
        guard layout.apart else { return 0 }
        let parts = cells.flatMap { breaks ? $0.face.label.split(separator: " ").map(String.init) : [$0.face.label] }
        return parts.map { letters.width($0, gridLabel, .bold) }.max() ?? 0
    }

    /// Size of a label of a grid.
    fileprivate var gridLabel: Double { text.secondary * 0.9 }

    /// One page of a grid of this number of keys, as the core places them.
    fileprivate func gridAsk(_ keys: Int, in place: Rect, page: Int = 0, widest: Double = 0, reads: [Bool] = [], breaks: Bool = false) -> GridAsk {
        GridAsk(
            place: place, keys: UInt32(keys), page: UInt32(page), columns: layout.columns, pxPerMm: mm, leftHanded: layout.leftHanded,
            large: layout.apart, widest: widest, breaks: breaks, reads: reads)
    }

    fileprivate var columns: Int { Int(layout.columns) }
    fileprivate func gridRows(_ keys: Int) -> Int { (keys + columns - 1) / columns }
}

extension Sheet {
    /// Keys 15 mm high in columns; if they don't all fit, the pager turns their pages.
    mutating func grid(
        _ cells: [Cell], in place: Rect, _ slate: Slate, page number: Int, pager at: Rect? = nil, order: Double = 50, breaks: Bool = false
    ) {
        let widest = breaks ? slate.widestLabel(cells, breaks: true) : 0
        let pages = slate.gridPages(cells.count, in: place, widest: widest, breaks: breaks)
        gridPage(cells, in: place, slate, page: number % pages, order: order, widest: widest, breaks: breaks)
        pager(number % pages, of: pages, slate, at: at, .moreGrid)
    }

    /// One page of such keys, on a screen that turns them with its own pages; beyond the end, the last page.
    mutating func gridPage(
        _ cells: [Cell], in place: Rect, _ slate: Slate, page number: Int, order: Double = 50, widest: Double = 0, breaks: Bool = false
    ) {
        let page = keyGrid(ask: slate.gridAsk(cells.count, in: place, page: number, widest: widest, reads: cells.map(\.reads), breaks: breaks))
        let places = page.places
        let shown = Array(cells.dropFirst(Int(page.first)).prefix(places.count))
        let labels = zip(shown, places).map { cell, at in
            (cell.face.label, KeyDrawing.labelPlace(at, hasSub: cell.face.sub != nil, mm: slate.mm))
        }
        let em = slate.letters.common(labels, em: slate.gridLabel)
        for (i, (cell, at)) in zip(shown, places).enumerated() {
            key(cell.tag, cell.face, em: em, sub: slate.text.sub, at: at, slate, order: order + Double(i) / 100, cell.ask)
        }
    }

    /// The fields as keys; the open one as the keys of its choices. Nothing scrolls.
    mutating func rows(
        _ rows: [ChoiceRow], and more: [Cell] = [], caution: String = "", in place: Rect, _ slate: Slate, _ paging: Paging, pager: Rect? = nil
    ) {
        let opened = rows.first { $0.tag == paging.row }
        let body = slate.text.body
        let parts = slate.rowParts(
            opened?.spoken, opened?.source ?? "", sizes: (1, Slate.sourceEm), keys: opened?.choices.count ?? rows.count + more.count, in: place,
            typed: opened?.typing != nil, caution: caution)
        if parts.caution.height > 0 { self.caution(caution, em: body * Slate.cautionEm, at: parts.caution, slate, order: 5) }
        guard let row = opened else {
            let cells = rows.map(Cell.init(row:)) + more
            grid(cells, in: parts.keys, slate, page: paging.grid, pager: pager, breaks: true)
            return
        }
        put("row-label", row.spoken, em: body, at: parts.says, slate, weight: .bold, order: 10)
        if parts.source.height > 0 { put("row-source", row.source, em: body * Slate.sourceEm, at: parts.source, slate, order: 11) }
        let choices = row.choices.map { choice in
            Cell(
                face: KeyFace(choice.label, spoken: choice.spoken, chosen: choice.chosen),
                tag: "choice-\(row.tag)-\(choice.tag)", ask: .act(choice.action), reads: true
            )
        }
        if let typing = row.typing { drawTyping(typing, in: parts.field, slate) }
        grid(choices, in: parts.keys, slate, page: paging.grid, pager: pager)
    }
}

extension Slate {
    /// Sizes of a caution and of where a value is from, relative to other text.
    fileprivate static let cautionEm = 0.85
    fileprivate static let sourceEm = 0.9

    /// The parts of a page of choices, as the core places them: a caution, what is open, if anything is, and details of it in sizes
    /// relative to other text.
    func rowParts(
        _ says: String?, _ source: String, sizes: (Double, Double), keys: Int, in place: Rect, typed: Bool = false, caution: String = ""
    ) -> RowPlace {
        func saysHeight(_ em: Double) -> Double { letters.height(says ?? "", em: em * sizes.0, width: place.width, weight: .bold) }
        func sourceHeight(_ em: Double) -> Double { letters.height(source, em: em * sizes.1, width: place.width) }
        let usual = text.body * usualShare
        return rowPlace(
            ask: RowAsk(
                place: place, pxPerMm: mm, open: says != nil, typed: typed, rows: UInt32(gridRows(keys)),
                caution: caution.isBlank ? 0 : cautionHeight(caution, em: text.body * Self.cautionEm, width: place.width),
                says: saysHeight(text.body), source: sourceHeight(text.body), saysUsual: saysHeight(usual), sourceUsual: sourceHeight(usual)))
    }
}
