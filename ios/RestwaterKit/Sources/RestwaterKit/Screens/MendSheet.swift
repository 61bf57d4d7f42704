import RestwaterCore

/// Doubtful entries, each a key; the one that is open, with what can be said of it.
extension Sheet {
    mutating func drawMend(_ mend: MendView, _ slate: Slate, _ seen: Seen) {
        let rest = head(mend.title, notice: seen.notice, slate, bottom: slate.back.top)
        if let open = mend.open {
            let words = rest.with(height: min(rest.height * 0.3, 3 * slate.text.body * Letters.line + 2 * slate.mm))
            put("doubt", "\(open.what). \(open.why)", em: slate.text.body, at: words, slate, weight: .bold, order: 10, middle: false)
            let below = rest.with(top: words.bottom, height: rest.bottom - words.bottom)
            rows(open.rows, in: below, slate, seen.turned) { .mend(op: open.op, field: $0, value: $1) }
        } else {
            let cells = mend.lines.enumerated().map { i, line in
                Cell(face: KeyFace(line.what, sub: line.why, spoken: "\(line.what). \(line.why)"), tag: "doubt-\(i)", ask: .act(.openDoubt(op: line.op)))
            }
            let keys = min(slate.gridHeight(cells.count), rest.height - 6 * slate.mm)
            put("says", mend.says, em: slate.text.body, at: rest.with(height: rest.height - keys), slate, order: 10, middle: false)
            grid(cells, in: rest.with(top: rest.bottom - keys, height: keys), slate, page: seen.turned.grid)
        }
        back(slate)
    }
}
