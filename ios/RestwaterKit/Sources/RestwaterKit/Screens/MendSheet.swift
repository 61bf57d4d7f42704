import RestwaterCore

/// Doubtful entries, each corrected in a few taps.
extension Sheet {
    mutating func drawMend(_ mend: MendView, _ slate: Slate, _ content: ScreenContent) {
        let rest = head(mend.title, notice: content.notice, slate)
        if let open = mend.open {
            drawEntry(open, in: rest, slate, content.paging)
        } else {
            let line = 5 * slate.mm
            put("mend-says", mend.says, em: slate.text.body, at: rest.with(height: line), slate, order: 10, middle: false)
            let lines = mend.lines.map {
                ListLine(
                    says: $0.what, more: $0.why, spoken: $0.spoken, key: slate.words.mend.label, keySpoken: $0.keySpoken,
                    tag: "mend-\($0.op)", ask: .act($0.open))
            }
            list(lines, in: rest.with(top: rest.top + line, height: rest.height - line), slate, page: content.paging.grid)
        }
        back(slate)
    }

    /// One entry: what is doubtful about it, and a key for each possible answer; a single choice takes effect at once.
    private mutating func drawEntry(_ open: MendOpen, in place: Rect, _ slate: Slate, _ paging: Paging) {
        let (body, whatEm) = (slate.text.body, 1.2)
        let chosen = open.rows.first { $0.tag == paging.row }
        let keys = chosen?.choices.count ?? open.rows.count
        let parts = slate.rowParts(open.what, open.why, sizes: (whatEm, 1), keys: keys, in: place)
        put("mend-what", open.what, em: body * whatEm, at: parts.says, slate, weight: .bold, order: 10)
        put("mend-why", open.why, em: body, at: parts.source, slate, order: 11, middle: false)
        let rest = parts.keys
        if chosen != nil {
            rows(open.rows, in: rest, slate, paging)
            return
        }
        let cells = open.rows.map { row in
            let only = row.choices.count == 1 ? row.choices[0] : nil
            let ask: Ask = only.flatMap { row.value.isEmpty ? .act($0.action) : nil } ?? .row(row.tag)
            let face = KeyFace(row.label, sub: only?.label ?? row.value, spoken: only?.spoken ?? row.spoken)
            return Cell(face: face, tag: "row-\(row.tag)", ask: ask)
        }
        grid(cells, in: rest, slate, page: paging.grid)
    }
}
