import RestwaterCore

/// "Did it matter?": a running test first, a forest plot of the changes, then a page for each.
extension Sheet {
    mutating func drawChanges(_ changes: ChangesView, _ slate: Slate, _ content: ScreenContent) {
        let offered = offer(changes.offer)
        var pages: [ScreenPage] = []
        if let test = changes.test {
            pages += apart(test.title, Self.cells(test, nil) + offered, test.says, test.notes, slate) { sheet, figures, at in
                sheet.drawSteps(test, figures, at, slate)
            }
        }
        let large = slate.layout.apart
        let many = large ? Self.largePlotRows : Self.plotRows
        for from in stride(from: 0, to: changes.changes.count, by: many) {
            let plot = Array(changes.changes[from...].prefix(many))
            let says = from == 0 || !large ? changes.says : ""
            let warning = says.isEmpty ? [] : [changes.warning]
            pages += apart(changes.title, offered, says, warning, slate, share: Self.forestShare) { sheet, figures, at in
                sheet.drawForest(changes.axis, plot, figures, at, slate)
            }
        }
        for change in changes.changes { pages += changePages(change, Self.cells(nil, change) + offered, slate) }
        // The figures behind the verdicts come last.
        if let figures = changes.figures { pages += figurePages(figures, offered, nil, slate) }
        let page = pages.isEmpty ? 0 : content.paging.page % pages.count
        let shown = pages.indices.contains(page) ? pages[page] : nil
        let rest = head(shown?.title ?? changes.title, notice: content.notice, slate)
        let cells = shown?.cells ?? offered
        let keys = slate.gridHeight(cells.count)
        let place = rest.with(height: rest.height - keys)
        if let shown {
            shown.draw(&self, place)
        } else {
            put("says", changes.says, em: slate.text.body, at: place, slate, order: 10)
        }
        gridPage(cells, in: rest.with(top: rest.bottom - keys, height: keys), slate, page: page)
        pager(page, of: pages.count, slate, .nextPage)
        back(slate)
    }

    /// The smallest share of a page for the plot: each change has two lines of text above its line.
    private static let forestShare = 0.7

    private static func cells(_ test: AlternationView?, _ change: ChangeView?) -> [Cell] {
        var cells: [Cell] = []
        if let start = change?.start {
            let face = KeyFace(start.label, sub: start.sub, spoken: start.spoken)
            cells.append(Cell(face: face, tag: "start-test", ask: .act(start.action)))
        }
        if let test {
            if let sub = test.setSub {
                let face = KeyFace(test.setLabel, sub: sub, spoken: test.setSpoken, solid: true)
                cells.append(Cell(face: face, tag: "set-step", ask: .act(test.set)))
            }
            let face = KeyFace(test.endLabel, sub: test.endSub, spoken: test.endSpoken)
            cells.append(Cell(face: face, tag: "end-test", ask: .act(test.end)))
        }
        return cells
    }

    private mutating func drawForest(_ axis: Axis, _ rows: [ChangeView], _ figures: Double, _ at: Rect, _ slate: Slate) {
        let drawing = ForestDrawing(
            axis, rows: rows, width: at.width, height: at.height, mm: slate.mm, figures: figures, large: slate.layout.apart, letters: slate.letters)
        let spoken = rows.map(\.spoken).joined(separator: " ")
        put("forest", drawing.marks(), spoken: spoken, at: at, role: .picture, order: 11)
    }

    /// What is shown below the verdict: what it rests on, why no more can be said, and how to find out.
    private static func reasons(_ change: ChangeView) -> [String] {
        ([change.counts, change.probability] + change.reasons + [change.findOut, change.more]).filter { !$0.isBlank }
    }

    /// One change on one page, or at its own size on as many as large text needs.
    private func changePages(_ change: ChangeView, _ cells: [Cell], _ slate: Slate) -> [ScreenPage] {
        guard slate.layout.apart else { return [ScreenPage(title: change.title, cells: cells) { $0.drawChange(change, in: $1, slate) }] }
        let rest = slate.layout.page.rest
        let place = rest.with(height: rest.height - slate.gridHeight(cells.count))
        return spread(change.says, Self.reasons(change), in: place, slate).map { text in
            ScreenPage(title: change.title, cells: cells) { $0.drawText(text, in: $1, slate) }
        }
    }

    /// One change: the verdict, and what is shown below it.
    private mutating func drawChange(_ change: ChangeView, in place: Rect, _ slate: Slate) {
        let parts = Self.reasons(change)
        let text = parts.joined(separator: "\n")
        let gap = 1.5 * slate.mm
        func lines(_ text: String, _ em: Double, _ weight: Weight) -> Double {
            Double(slate.letters.lines(of: text, em: em, width: place.width, weight: weight))
        }
        func verdict(_ em: Double) -> Double { em * 1.25 * 1.3 * lines(change.says, em * 1.25, .bold) }
        func reasons(_ em: Double) -> Double { em * 1.25 * parts.map { lines($0, em, .medium) }.reduce(0, +) }
        // Verdict and reasons keep their proportion, however large the text.
        let body = slate.letters.largest(slate.text.body) { verdict($0) + gap + reasons($0) <= place.height }
        let head = place.with(height: min(place.height * 0.4, verdict(body)))
        put("verdict", change.says, em: body * 1.25, at: head, slate, weight: .bold, order: 10, middle: false)
        let top = head.bottom + gap
        put("reasons", text, em: body, at: place.with(top: top, height: place.bottom - top), slate, order: 12, middle: false)
    }

    /// The casts of a test: a tick for those done, an arrow for the next.
    private mutating func drawSteps(_ test: AlternationView, _ figures: Double, _ at: Rect, _ slate: Slate) {
        let columns = test.steps.count > 12 ? 2 : 1
        let down = max(1, (test.steps.count + columns - 1) / columns)
        let (width, height) = (at.width / Double(columns), at.height / Double(down))
        for (i, step) in test.steps.enumerated() {
            let cell = Rect(left: at.left + Double(i / down) * width, top: at.top + Double(i % down) * height, width: width, height: height)
            let bold = step.state == .next || step.state == .out
            let words = cell.local.with(left: 6.5 * slate.mm, width: max(0, width - 7 * slate.mm))
            let marks =
                stepMarks(step.state, in: cell.local, mm: slate.mm)
                + slate.write.fit(step.label, em: figures * 1.15, in: words, weight: bold ? .bold : .medium)
            put("step-\(i + 1)", marks, spoken: step.spoken, at: cell, order: 11 + Double(i) / 100)
        }
    }

    /// Changes on one page of the plot; at large text.
    private static let plotRows = 5
    private static let largePlotRows = 2
}
