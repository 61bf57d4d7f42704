import RestwaterCore

/// The screens there are, a key each.
extension Sheet {
    mutating func drawScreens(_ view: BankView, _ slate: Slate) {
        let words = slate.words
        func cell(_ face: KeyFace, _ goal: Showing) -> Cell { Cell(face: face, tag: "open-\(String.tag(goal))", ask: .open(goal)) }
        var cells = view.keys.filter { $0.key == .tackle || $0.key == .start }.map { key in
            cell(KeyFace(key.label, sub: key.sub, spoken: key.spoken), key.key == .start ? .setup : .tackle)
        }
        if !view.rods.isEmpty { cells.append(cell(KeyFace(words.swim), .swim)) }
        cells += [
            (words.matchDay, Showing.match), (words.waits, .waits), (words.changes, .changes), (words.mend, .mend), (words.files, .files), (words.phone, .phone),
        ].map { cell(KeyFace($0), $1) }
        let rest = head("", notice: "", slate, bottom: slate.back.top)
        grid(cells, in: rest, slate, page: 0)
        back(slate)
    }
}
