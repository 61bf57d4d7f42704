import RestwaterCore

/// Pages of the Match screen.
public enum MatchPage: Sendable {
    case now, coming, weighIn, rules
}

/// Time left, the nets, the fish, the weigh-in and the rules of the day, one page each; nothing scrolls.
extension Sheet {
    mutating func drawMatch(_ view: MatchView, _ slate: Slate, _ content: ScreenContent) {
        guard let keys = Log.attempt("laying out the match", { try matchLayout(glass: slate.glass) }) else { return }
        let page = MatchSlate(view: view, keys: keys, slate: slate, content: content)
        switch content.paging.match {
        case .rules where view.toRules != nil:
            let rest = head(view.toRules?.label ?? "", notice: content.notice, slate)
            rows(view.rows, in: rest, slate, content.paging)
        case .coming: drawComing(page)
        case .weighIn where view.weighIn != nil: view.weighIn.map { drawWeighIn($0, page) }
        default: drawNow(page)
        }
        back(slate)
    }

    private mutating func drawNow(_ page: MatchSlate) {
        let (view, slate, keys) = (page.view, page.slate, page.keys)
        let place = head(view.title, notice: page.content.notice, slate, page: keys.now)
        let clock = view.digits.isEmpty ? 0 : 13 * slate.mm
        let top = place.top + clock + (clock > 0 ? 1.5 * slate.mm : 0)
        let below = place.with(top: top, height: place.bottom - top)
        // Where it doesn't fit at its size it has as many pages as it needs; the digits are on the first, and the rest of the others
        // is free for words.
        let large = page.nowParts(below, place)
        let number = page.content.paging.page % max(1, large.parts.count)
        let digits = number == 0 ? slate.write.digits(view.digits, in: place.local.with(height: clock)) : []
        put("match-clock", digits, spoken: view.spoken, at: place.with(height: max(clock, slate.mm)), order: 10)
        (pieces[pieces.count - 1].announced, pieces[pieces.count - 1].runsByItself) = (view.spoken, true)
        if large.parts.isEmpty {
            drawNowBody(page, below)
        } else {
            drawText(LeafText(page: large.page, blocks: large.parts[number]), in: number == 0 ? below : place, slate)
        }
        drawNowKeys(page, number, of: large.parts.count)
        pager(number, of: large.parts.count, slate, at: keys.small.last, .nextPage)
    }

    /// The keys below a page of the running match. A pager has the last small place; the rules are then on the pages after the first.
    private mutating func drawNowKeys(_ page: MatchSlate, _ number: Int, of pages: Int) {
        let (view, keys) = (page.view, page.keys)
        if view.weighIn != nil {
            pageKey("match-fish", view.toFish, keys.wide, page, .open(.fish), solid: view.fishWaits, large: true)
            let coming = (view.toComing, "match-coming", MatchPage.coming)
            let scales = (view.toWeighIn, "match-scales", MatchPage.weighIn)
            let rules = view.toRules.map { ($0, "match-rules", MatchPage.rules) }
            let small = pages < 2 ? [coming, scales] + [rules].compactMap { $0 } : [coming, number == 0 ? scales : rules ?? scales]
            for ((key, tag, goal), at) in zip(small, keys.small) { pageKey(tag, key, at, page, .match(goal)) }
        } else if let begin = view.begin {
            matchKey(begin, keys.wide, page, large: true)
            if let rules = view.toRules { pageKey("match-rules", rules, keys.small[0], page, .match(.rules)) }
        } else if let offer = view.offer {
            let (slate, face) = (page.slate, KeyFace(leaf: offer))
            key("key-\(offer.tag)", face, em: slate.text.primary, sub: slate.text.sub, at: keys.wide, slate, order: 80, .key(offer.tap))
        }
    }

    /// What the digits count, casts left, the nets and what they are based on, where one page has room for it.
    private mutating func drawNowBody(_ page: MatchSlate, _ place: Rect) {
        let (view, body) = (page.view, page.body)
        guard let all = page.stacked(in: place) else { return }
        var stack = MatchStack(place, asked: all.height)
        put("match-says", view.says, em: body * MatchSlate.says, at: stack.next(all.says), page.slate, weight: .bold, order: 11)
        saidOnMatch("match-limit", view.limitSays, stack.next(all.limit), body, page, order: 11.5, weight: .bold)
        for (i, line) in view.lines.enumerated() {
            matchLine("match-line-\(i)", line, stack.next(all.lines[i]), page, em: body, tight: all.tight, order: 12)
        }
        for (i, net) in view.nets.enumerated() {
            let at = stack.next(all.nets[i])
            let drawing = NetDrawing(net: net, width: at.width, height: at.height, body: body, slate: page.slate)
            put("match-net-\(i)", drawing.marks(), spoken: net.spoken, at: at, order: 13 + Double(i) / 10)
        }
        saidOnMatch("match-notes", view.notes.joined(separator: "\n"), stack.next(all.notes), body * MatchSlate.note, page, order: 14)
    }

    private mutating func drawComing(_ page: MatchSlate) {
        let (view, slate) = (page.view, page.slate)
        var pages = comingPages(page)
        if !view.comingFigures.lines.isEmpty { pages += figurePages(view.comingFigures, [], nil, slate) }
        let number = page.content.paging.page % pages.count
        pages[number].draw(&self, head(pages[number].title, notice: page.content.notice, slate))
        pager(number, of: pages.count, slate, .nextPage)
    }

    /// What is to come: on one page, or on as many as large text needs at its size.
    private func comingPages(_ page: MatchSlate) -> [ScreenPage] {
        let (view, slate) = (page.view, page.slate)
        let title = view.toComing.label
        guard slate.layout.apart else { return [ScreenPage(title: title, cells: []) { $0.drawComingPage(page, in: $1) }] }
        let parts = spread(view.comingSays, [], in: slate.layout.page.rest, slate, lines: view.coming.map(LeafLine.init(match:)))
        return parts.map { part in ScreenPage(title: title, cells: []) { $0.drawText(part, in: $1, slate) } }
    }

    private mutating func drawComingPage(_ page: MatchSlate, in place: Rect) {
        let (view, slate) = (page.view, page.slate)
        let says = page.texts([view.comingSays], page.body, place.width, .bold)
        put("coming-says", view.comingSays, em: page.body, at: place.with(height: says), slate, weight: .bold, order: 9, middle: false)
        let top = place.top + says + 2 * slate.mm
        let lines = place.with(top: top, height: place.bottom - top)
        let heights = view.coming.map { page.lineHeight($0, lines.width) }
        var stack = MatchStack(lines, asked: heights.reduce(0, +))
        for (i, line) in view.coming.enumerated() {
            matchLine("coming-\(i)", line, stack.next(heights[i]), page, em: page.body, tight: stack.tight, order: 10)
        }
    }

    private mutating func drawWeighIn(_ weighIn: WeighInPage, _ page: MatchSlate) {
        let place = head(weighIn.title, notice: page.content.notice, page.slate, page: page.keys.typing)
        drawFigure(weighIn.figure, weighIn.notes, weighIn.lines, place, page)
        drawPad(weighIn, page)
    }

    /// A number being typed and, if there is room, what is known about it.
    private mutating func drawFigure(_ figure: String, _ says: [String], _ lines: [MatchLine], _ place: Rect, _ page: MatchSlate) {
        self.figure(figure, says, beside: place, in: page.keys.figure, page.slate)
        guard place.height > 0 else { return }
        let heights = lines.map { page.lineHeight($0, place.width) }
        let said = page.texts(says, page.body, place.width)
        var stack = MatchStack(place, asked: heights.reduce(0, +) + said)
        for (i, line) in lines.enumerated() {
            matchLine("weighed-\(i)", line, stack.next(heights[i]), page, em: page.body, tight: stack.tight, order: 10)
        }
        saidOnMatch("figure-says", says.joined(separator: " "), stack.next(said), page.body, page, order: 15)
    }

    private mutating func drawPad(_ weighIn: WeighInPage, _ page: MatchSlate) {
        let (slate, keys) = (page.slate, page.keys)
        let ems = slate.padEms(zip(weighIn.pad, keys.pad).map { ($0.label, $0.sub, $1) })
        for ((key, at), em) in zip(zip(weighIn.pad, keys.pad), ems) { matchKey(key, at, page, em: em) }
        matchKey(weighIn.weighed, keys.wide, page, large: true)
    }

    private mutating func saidOnMatch(
        _ tag: String, _ text: String, _ place: Rect, _ em: Double, _ page: MatchSlate, order: Double, weight: Weight = .medium
    ) {
        if !text.isBlank { put(tag, text, em: em, at: place, page.slate, weight: weight, order: order, middle: false) }
    }

    private mutating func matchKey(
        _ key: MatchKey, _ place: Rect, _ page: MatchSlate, large: Bool = false, em: Double? = nil
    ) {
        let text = page.slate.text
        let face = KeyFace(key.label, sub: key.sub, spoken: key.spoken, solid: key.solid && key.enabled, enabled: key.enabled)
        self.key(
            key.tag, face, em: em ?? (large ? text.primary : text.secondary), sub: text.sub, at: place, page.slate, order: 60,
            .act(.match(tap: key.tap)))
    }

    private mutating func pageKey(
        _ tag: String, _ key: PageKey, _ place: Rect, _ page: MatchSlate, _ ask: Ask, solid: Bool = false, large: Bool = false
    ) {
        let text = page.slate.text
        let face = KeyFace(key.label, sub: key.sub, spoken: key.spoken, solid: solid)
        self.key(tag, face, em: large ? text.primary : text.secondary, sub: text.sub, at: place, page.slate, order: 61, ask)
    }

    /// A label with its value below it, or beside it if there is little room.
    private mutating func matchLine(
        _ tag: String, _ line: MatchLine, _ place: Rect, _ page: MatchSlate, em: Double, tight: Bool, order: Double
    ) {
        let write = page.slate.write
        if tight {
            put(tag, line.spoken, em: em, at: place, page.slate, weight: .bold, order: order)
            return
        }
        let share = page.texts([line.label], em * MatchSlate.label, place.width) / page.lineHeight(line, place.width, em: em)
        let (above, below) = (place.height * share, place.height * (0.97 - share))
        let marks =
            write.fit(line.label, em: em * MatchSlate.label, in: place.local.with(height: above), middle: false)
            + write.fit(line.value, em: em * MatchSlate.value, in: place.local.with(top: above, height: below), weight: .bold, middle: false)
        put(tag, marks, spoken: line.spoken, at: place, order: order)
    }
}
