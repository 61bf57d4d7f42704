import RestwaterCore

/// One key of a grid.
struct Cell {
    let face: KeyFace
    let tag: String
    let ask: Ask
}

extension Cell {
    /// The field of a row as a key that opens its choices.
    init(row: ChoiceRow) {
        self.init(face: KeyFace(row.label, sub: row.value, spoken: "\(row.label): \(row.value)"), tag: "row-\(row.tag)", ask: .row(row.tag))
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

    /// Keys of a grid that fit into a place.
    fileprivate func gridFits(_ place: Rect) -> Int { columns * max(1, Int((place.height + 3 * mm) / (18 * mm))) }

    /// Pages of a grid of this number of keys in a place.
    func gridPages(_ keys: Int, in place: Rect) -> Int {
        let fits = gridFits(place)
        return max(1, (keys + fits - 1) / fits)
    }

    fileprivate var columns: Int { Int(layout.columns) }
    fileprivate func gridRows(_ keys: Int) -> Int { (keys + columns - 1) / columns }
}

extension Sheet {
    /// Keys 15 mm high in columns; if they don't all fit, the pager turns their pages.
    mutating func grid(_ cells: [Cell], in place: Rect, _ slate: Slate, page number: Int, pager at: Rect? = nil, order: Double = 50) {
        let pages = slate.gridPages(cells.count, in: place)
        gridPage(cells, in: place, slate, page: number % pages, order: order)
        pager(number % pages, of: pages, slate, at: at, .moreGrid)
    }

    /// One page of such keys, on a screen that turns them with its own pages; beyond the end, the last page.
    mutating func gridPage(_ cells: [Cell], in place: Rect, _ slate: Slate, page number: Int, order: Double = 50) {
        let (gap, height) = (3 * slate.mm, 15 * slate.mm)
        let columns = slate.columns
        let width = (place.width - Double(columns - 1) * gap) / Double(columns)
        let fits = slate.gridFits(place)
        let page = min(number, slate.gridPages(cells.count, in: place) - 1)
        let shown = Array(cells.dropFirst(page * fits).prefix(fits))
        // The rows are at the bottom of their place, where the thumb is.
        let top = place.bottom - Double(slate.gridRows(shown.count)) * (height + gap) + gap
        let places = shown.indices.map { i in
            Rect(
                left: place.left + Double(i % columns) * (width + gap), top: top + Double(i / columns) * (height + gap), width: width, height: height)
        }
        let labels = zip(shown, places).map { cell, at in
            (cell.face.label, KeyDrawing.labelPlace(at, hasSub: cell.face.sub != nil, mm: slate.mm))
        }
        let em = slate.letters.common(labels, em: slate.text.secondary * 0.9)
        for (i, (cell, at)) in zip(shown, places).enumerated() {
            key(cell.tag, cell.face, em: em, sub: slate.text.sub, at: at, slate, order: order + Double(i) / 100, cell.ask)
        }
    }

    /// The fields as keys; the open one as the keys of its choices. Nothing scrolls.
    mutating func rows(_ rows: [ChoiceRow], and more: [Cell] = [], in place: Rect, _ slate: Slate, _ paging: Paging, pager: Rect? = nil) {
        guard let row = rows.first(where: { $0.tag == paging.row }) else {
            grid(rows.map(Cell.init(row:)) + more, in: place, slate, page: paging.grid, pager: pager)
            return
        }
        let line = 4.5 * slate.mm
        let body = slate.text.body
        put("row-label", "\(row.label): \(row.value)", em: body, at: place.with(height: line), slate, weight: .bold, order: 10)
        put("row-source", row.source, em: body * 0.9, at: place.with(top: place.top + line, height: line), slate, order: 11)
        let choices = row.choices.map { choice in
            Cell(
                face: KeyFace(choice.label, spoken: "\(row.label): \(choice.label)", solid: choice.chosen),
                tag: "choice-\(row.tag)-\(choice.tag)", ask: .act(choice.action)
            )
        }
        var rest = place.with(top: place.top + 2 * line, height: place.height - 2 * line)
        if let typing = row.typing {
            let height = 11 * slate.mm
            drawTyping(typing, in: rest.with(height: height), slate, paging)
            rest = rest.with(top: rest.top + height, height: rest.height - height)
        }
        grid(choices, in: rest, slate, page: paging.grid, pager: pager)
    }
}
