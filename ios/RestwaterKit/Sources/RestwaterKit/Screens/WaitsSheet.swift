import RestwaterCore

/// What the record says about waiting: one picture per page, with its message above it.
extension Sheet {
    mutating func drawWaits(_ waits: WaitsView, _ slate: Slate, _ content: ScreenContent) {
        let pages = waits.charts.count + (waits.forecast == nil ? 0 : 1) + (waits.figures == nil ? 0 : 1)
        let page = pages == 0 ? 0 : content.paging.page % pages
        let chart = page < waits.charts.count ? waits.charts[page] : nil
        // The figures behind the verdicts come last.
        let figures = page == pages - 1 ? waits.figures : nil
        let forecast = chart == nil && figures == nil ? waits.forecast : nil
        let rest = head(chart?.title ?? figures?.title ?? forecast?.title ?? waits.title, notice: content.notice, slate)
        let fields = forecast.map { [$0.left] } ?? waits.rows
        if fields.contains(where: { $0.tag == content.paging.row }) {
            rows(fields, in: rest, slate, content.paging)
        } else {
            let cells = fields.map(Cell.init(row:)) + offer(waits.offer)
            let keys = slate.gridHeight(cells.count)
            let place = rest.with(height: rest.height - keys)
            if let chart {
                drawPage(chart.says, chart.notes, in: place, slate) { sheet, figures, at in sheet.drawChart(chart, figures, at, slate) }
            } else if let figures {
                drawFigures(figures, in: place, slate)
            } else if let forecast {
                drawForecast(forecast, in: place, slate)
            } else {
                put("says", waits.counts, em: slate.text.body, at: place, slate, order: 10)
            }
            gridPage(cells, in: rest.with(top: rest.bottom - keys, height: keys), slate, page: page)
            pager(page, of: pages, slate, .nextPage)
        }
        back(slate)
    }

    /// Intervals, p values and the methods behind them.
    mutating func drawFigures(_ figures: FiguresView, in place: Rect, _ slate: Slate) {
        put("figures", figures.lines.joined(separator: "\n"), em: slate.text.body * 0.85, at: place, slate, order: 10, middle: false)
    }

    private mutating func drawChart(_ chart: ChartView, _ figures: Double, _ at: Rect, _ slate: Slate) {
        let drawing = ChartDrawing(chart, width: at.width, height: at.height, mm: slate.mm, figures: figures, letters: slate.letters)
        put("chart-\(String.tag(chart.kind))", drawing.marks(), spoken: "\(chart.title). \(chart.says)", at: at, role: .picture, order: 11)
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
                sheet.put("forecast-\(i)", marks, spoken: "\(line.label): \(line.value)", at: at, order: 11 + Double(i) / 100)
            }
        }
    }

    /// A page more than this many times as wide as high has its words beside the picture, which takes this share of the
    /// width.
    private static let lowPage = 2.0
    private static let picture = 0.52

    /// The smallest share of a page for a chart.
    static let chartShare = 0.62

    /// A sentence, a picture below it, and the method below that; on a low page the words are beside the picture.
    mutating func drawPage(
        _ says: String, _ notes: [String], in place: Rect, _ slate: Slate, share of: Double = chartShare,
        picture: (inout Sheet, Double, Rect) -> Void
    ) {
        let low = place.width > Self.lowPage * place.height
        let words = low ? place.with(left: place.left + place.width * Self.picture, width: place.width * (1 - Self.picture)) : place
        func height(_ text: String, _ em: Double) -> Double { em * Letters.line * Double(slate.letters.lines(of: text, em: em, width: words.width)) }
        let text = notes.filter { !$0.isBlank }.joined(separator: " ")
        let gap = 1.5 * slate.mm
        func share(_ em: Double) -> Double { (place.height - gap) / (height(says, em) + height(text, 0.85 * em)) }
        // The picture keeps its share of the page however large the text is.
        let room = place.height * (1 - of) - 2.5 * gap
        func fits(_ em: Double) -> Bool { height(says, em) + height(text, 0.85 * em) <= room }
        let body = low ? slate.letters.largestDrawn(slate.text.body, share: share) : slate.letters.largest(slate.text.body, fits)
        let small = body * 0.85
        let figure = min(slate.text.body * 0.85, place.height / (low ? 15 : 24))
        let above = low ? height(says, body) * min(1, share(body)) : height(says, body)
        put("says", says, em: body, at: words.with(height: above), slate, weight: .bold, order: 10, middle: false)
        if low {
            picture(&self, figure, place.with(width: place.width * Self.picture - 2 * gap))
            let rest = words.with(top: words.top + above + gap, height: max(0, words.height - above - gap))
            put("notes", text, em: small, at: rest, slate, order: 12, middle: false)
            return
        }
        let below = height(text, small)
        picture(&self, figure, place.with(top: place.top + above + gap, height: max(0, place.height - above - below - 2.5 * gap)))
        put("notes", text, em: small, at: place.with(top: place.bottom - below - gap, height: below), slate, order: 12, middle: false)
    }
}
