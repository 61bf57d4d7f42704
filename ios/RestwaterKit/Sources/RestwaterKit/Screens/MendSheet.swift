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
        let (head, body) = (13 * slate.mm, slate.text.body)
        put("mend-what", open.what, em: body * 1.2, at: place.with(height: head * 0.4), slate, weight: .bold, order: 10)
        put("mend-why", open.why, em: body, at: place.with(top: place.top + head * 0.4, height: head * 0.6), slate, order: 11, middle: false)
        let rest = place.with(top: place.top + head, height: place.height - head)
        if open.rows.contains(where: { $0.tag == paging.row }) {
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
