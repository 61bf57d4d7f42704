import RestwaterCore

/// One page of a screen that has several: its title, its keys with the rows they open, and what is drawn above them.
struct ScreenPage {
    let title: String
    let cells: [Cell]
    var rows: [ChoiceRow]?
    let draw: (inout Sheet, Rect) -> Void
}

/// Sentences and pictures that large text gives pages of their own.
extension Sheet {
    typealias Drawn = (inout Sheet, Double, Rect) -> Void

    /// A sentence and its picture: on one page, or, if large text leaves too little room for both, on pages of their own.
    func apart(
        _ title: String, _ cells: [Cell], _ says: String, _ notes: [String], _ slate: Slate, share: Double = chartShare, picture: @escaping Drawn
    ) -> [ScreenPage] {
        func page(_ says: String, _ notes: [String]) -> ScreenPage {
            ScreenPage(title: title, cells: cells) { sheet, place in
                sheet.drawPage(says, notes, in: place, slate, share: share, picture: picture)
            }
        }
        let rest = slate.layout.page.rest
        let place = rest.with(height: rest.height - slate.gridHeight(cells.count))
        if !slate.layout.apart || says.isBlank || slate.wordSize(says, notes, in: place, share: share) >= slate.text.body * Self.whole {
            return [page(says, notes)]
        }
        // The notes go with the sentence if one page holds both, else with the picture.
        let all = spread(says, notes.filter { !$0.isBlank }, in: rest, slate)
        let words = all.count == 1 ? all : spread(says, [], in: rest, slate)
        let pages = words.map { text in ScreenPage(title: title, cells: []) { $0.drawText(text, in: $1, slate) } }
        return pages + [page("", all.count == 1 ? [] : notes)]
    }

    /// The figures on one page, or on as many as large text needs.
    func figurePages(_ figures: FiguresView, _ cells: [Cell], _ rows: [ChoiceRow]?, _ slate: Slate) -> [ScreenPage] {
        guard slate.layout.apart else {
            return [ScreenPage(title: figures.title, cells: cells, rows: rows) { $0.drawFigures(figures, in: $1, slate) }]
        }
        let rest = slate.layout.page.rest
        let place = rest.with(height: rest.height - slate.gridHeight(cells.count))
        return spread("", figures.lines, in: place, slate).map { text in
            ScreenPage(title: figures.title, cells: cells, rows: rows) { $0.drawText(text, in: $1, slate) }
        }
    }

    /// Rounding: a text at this share of its size is whole.
    private static let whole = 0.999
}
