import RestwaterCore

/// Setting up a session: everything may be left as it is, and START is always visible.
extension Sheet {
    mutating func drawSetup(_ setup: SetupView, _ slate: Slate, _ content: ScreenContent) {
        let rest = head(setup.title, notice: content.notice, slate, page: slate.layout.setUp)
        var taken = 0.0
        if content.paging.row == nil {
            for (i, field) in setup.fields.enumerated() { line(field, i, rest, slate) }
            taken = Double(setup.fields.count) * slate.lineHeight
        }
        let cautions = Cell(
            face: KeyFace(leaf: setup.cautions),
            tag: "open-\(String.tag(Showing.cautions))", ask: .open(.cautions)
        )
        let place = rest.with(top: rest.top + taken, height: rest.height - taken)
        rows(setup.rows, and: [cautions], in: place, slate, content.paging, pager: slate.layout.setUpPager)
        let face = KeyFace(setup.start.label, sub: setup.start.sub, spoken: setup.start.spoken, solid: true)
        key(
            "key-\(String.tag(Key.start))", face, em: slate.text.primary, sub: slate.text.sub, at: slate.layout.start, slate, order: 80,
            .start(setup.start.tap))
        back(slate)
    }
}
