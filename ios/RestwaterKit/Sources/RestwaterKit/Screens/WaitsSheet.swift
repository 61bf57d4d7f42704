import RestwaterCore

/// What the record says about waiting: one picture per page, with its message above it.
extension Sheet {
    mutating func drawWaits(_ waits: WaitsView, _ slate: Slate, _ content: ScreenContent) {
        func fields(_ rows: [ChoiceRow]) -> [Cell] { rows.map(Cell.init(row:)) + offer(waits.offer) }
        let usual = fields(waits.rows)
        var pages: [ScreenPage] = waits.charts.flatMap { chart in
            apart(chart.title, usual, chart.says, chart.notes, slate) { sheet, figures, at in sheet.drawChart(chart, figures, at, slate) }
        }
        if let forecast = waits.forecast {
            pages.append(
                ScreenPage(title: forecast.title, cells: fields([forecast.left]), rows: [forecast.left]) { $0.drawForecast(forecast, in: $1, slate) })
        }
        // The figures behind the verdicts come last.
        if let figures = waits.figures { pages += figurePages(figures, usual, waits.rows, slate) }
        let page = pages.isEmpty ? 0 : content.paging.page % pages.count
        let shown = pages.indices.contains(page) ? pages[page] : nil
        let rest = head(shown?.title ?? waits.title, notice: content.notice, slate)
        let open = shown?.rows ?? waits.rows
        if open.contains(where: { $0.tag == content.paging.row }) {
            rows(open, in: rest, slate, content.paging)
        } else {
            let cells = shown?.cells ?? usual
            let keys = slate.gridHeight(cells.count)
            let place = rest.with(height: rest.height - keys)
            if let shown {
                shown.draw(&self, place)
            } else {
                put("says", waits.counts, em: slate.text.body, at: place, slate, order: 10)
            }
            gridPage(cells, in: rest.with(top: rest.bottom - keys, height: keys), slate, page: page)
            pager(page, of: pages.count, slate, .nextPage)
        }
        back(slate)
    }

    /// Intervals, p values and the methods behind them.
    mutating func drawFigures(_ figures: FiguresView, in place: Rect, _ slate: Slate) {
        put("figures", figures.lines.joined(separator: "\n"), em: slate.text.body * 0.85, at: place, slate, order: 10, middle: false)
    }

    private mutating func drawChart(_ chart: ChartView, _ figures: Double, _ at: Rect, _ slate: Slate) {
        let drawing = ChartDrawing(chart, width: at.width, height: at.height, mm: slate.mm, figures: figures, letters: slate.letters)
        put("chart-\(String.tag(chart.kind))", drawing.marks(), spoken: chart.spoken, at: at, role: .picture, order: 11)
    }

    private mutating func drawForecast(_ forecast: ForecastView, in place: Rect, _ slate: Slate) {
        let body = slate.text.body
        drawPage(forecast.says, forecast.notes, in: place, slate) { sheet, _, slot in
            // Lines are no further apart than 3.4 times the size of plain text.
            let each = min(slot.height / Double(max(1, forecast.lines.count)), body * 3.4)
            for (i, line) in forecast.lines.enumerated() {
                let at = slot.with(top: slot.top + Double(i) * each, height: each)
                let marks =
                    slate.write.fit(line.label, em: body * 0.85, in: at.local.with(height: each * 0.42))
                    + slate.write.fit(line.value, em: body * 1.1, in: at.local.with(top: each * 0.42, height: each * 0.5), weight: .bold)
                sheet.put("forecast-\(i)", marks, spoken: line.spoken, at: at, order: 11 + Double(i) / 100)
            }
        }
    }

    /// The smallest share of a page for a chart.
    static let chartShare = 0.62

    /// A sentence, a picture below it, and the method below that; on a low page the words are beside the picture.
    mutating func drawPage(
        _ says: String, _ notes: [String], in place: Rect, _ slate: Slate, share: Double = chartShare, picture: (inout Sheet, Double, Rect) -> Void
    ) {
        let (low, words, gap) = (place.isLow, place.besidePicture, slate.wordsGap)
        let text = notes.filter { !$0.isBlank }.joined(separator: " ")
        func height(_ text: String, _ em: Double, _ weight: Weight = .medium) -> Double { slate.height(text, em, words.width, weight) }
        let body = slate.wordSize(says, notes, in: place, share: share)
        let small = body * 0.85
        let least = low ? 15.0 : says.isBlank && text.isBlank ? 18 : 24
        let figure = min(slate.text.body * 0.85, place.height / least)
        let said = height(says, body, .bold)
        let both = said + height(text, small)
        let above = low ? said * min(1, both > 0 ? (place.height - gap) / both : 1) : said
        put("says", says, em: body, at: words.with(height: above), slate, weight: .bold, order: 10, middle: false)
        if low {
            picture(&self, figure, place.with(width: place.width * Rect.picture - 2 * gap))
            let rest = words.with(top: words.top + above + gap, height: max(0, words.height - above - gap))
            put("notes", text, em: small, at: rest, slate, order: 12, middle: false)
            return
        }
        let below = height(text, small)
        picture(&self, figure, place.with(top: place.top + above + gap, height: max(0, place.height - above - below - 2.5 * gap)))
        put("notes", text, em: small, at: place.with(top: place.bottom - below - gap, height: below), slate, order: 12, middle: false)
    }
}

extension Slate {
    /// Between the words and the picture of a page.
    fileprivate var wordsGap: Double { 1.5 * mm }

    fileprivate func height(_ text: String, _ em: Double, _ width: Double, _ weight: Weight) -> Double {
        em * Letters.line * Double(letters.lines(of: text, em: em, width: width, weight: weight))
    }

    /// The size of the words of a page whose picture keeps its share of it, however large the text is.
    func wordSize(_ says: String, _ notes: [String], in place: Rect, share: Double) -> Double {
        let (width, gap) = (place.besidePicture.width, wordsGap)
        let text = notes.filter { !$0.isBlank }.joined(separator: " ")
        func height(_ em: Double) -> Double { self.height(says, em, width, .bold) + self.height(text, 0.85 * em, width, .medium) }
        if place.isLow { return letters.largestDrawn(self.text.body) { em in height(em) > 0 ? (place.height - gap) / height(em) : 1 } }
        let room = place.height * (1 - share) - 2.5 * gap
        return letters.largest(self.text.body) { height($0) <= room }
    }
}

extension Rect {
    /// A page more than twice as wide as high has its words beside the picture, which takes this share of the width.
    fileprivate static let picture = 0.52
    fileprivate var isLow: Bool { width > 2 * height }

    /// Where the words of a page are.
    fileprivate var besidePicture: Rect { isLow ? with(left: left + width * Self.picture, width: width * (1 - Self.picture)) : self }
}
