import RestwaterCore

/// The map of the swim, where to cast next with the reasons, and the keys for the next cast.
extension Sheet {
    mutating func drawSwim(_ view: SwimView, _ slate: Slate, _ content: ScreenContent) {
        let layout = swimLayout(glass: slate.glass, ask: SwimPadAsk(pad: view.pad))
        scene = slate.fan(layout.canvas, small: false)
        // The legend is opened from the map, so it goes back to it.
        let more = content.paging.more || content.paging.row == Self.legend
        if more {
            drawSwimMore(view, slate, content)
        } else {
            drawSwimHead(view, layout, slate)
            drawLargeFan(view, layout, slate, content.scene)
            let lines = [content.notice, view.why, view.cell] + view.drift
            let marks = slate.write.sentences(
                view.headline, lines.filter { !$0.isEmpty }, em: slate.text.body * 1.25, small: slate.text.body, in: layout.words.local,
                least: slate.usualShare
            )
            // The description of the picture has the place and its reasons, so that each sentence is read once.
            put(
                "swim-words", marks, spoken: ([content.notice] + view.drift).filter { !$0.isBlank }.joined(separator: " "), at: layout.words,
                order: 20)
            for place in layout.keys { drawSwimKey(view, place, slate) }
            if let more = layout.more {
                key("swim-more", KeyFace(slate.words.further), em: slate.text.secondary, sub: 0, at: more, slate, order: 80, .moreSwim)
            }
        }
        back(slate, at: more ? nil : layout.back)
    }

    private mutating func drawSwimHead(_ view: SwimView, _ layout: SwimLayout, _ slate: Slate) {
        // If there is no second line, the moment shown is beside the title: it must be visible.
        let beside = layout.area == nil ? [view.title, view.replay] : [view.title]
        let title = beside.filter { !$0.isEmpty }.joined(separator: "   ")
        put("title", title, em: slate.text.headline * 0.85, at: layout.title, slate, weight: .bold, role: .heading)
        if let area = layout.area {
            let second = [view.area, view.replay].filter { !$0.isEmpty }.joined(separator: "   ")
            put("area", second, em: slate.text.body, at: area, slate, order: 1)
        }
        let face = KeyFace(view.legendLabel, spoken: view.legendLabel)
        key("swim-legend", face, em: slate.text.header, sub: 0, at: layout.legend, slate, order: 90, .row(Self.legend))
    }

    private mutating func drawLargeFan(_ view: SwimView, _ layout: SwimLayout, _ slate: Slate, _ drawn: SwimScene?) {
        let said = [view.headline, view.why, view.cell].filter { !$0.isEmpty }.joined(separator: " ")
        let marks = drawn.map { SwimDrawing(scene: $0, mm: slate.mm, letters: slate.letters).marks() } ?? []
        put("swim-fan", marks, spoken: said, at: layout.canvas, role: .picture, order: 10)
        (pieces[pieces.count - 1].aims, pieces[pieces.count - 1].announced) = (true, view.headline)
    }

    private mutating func drawSwimKey(_ view: SwimView, _ place: SwimKeyPlace, _ slate: Slate) {
        // KEEP and RELEASE share a place: the core says which of the two it is.
        let found = view.keys.first { $0.key == place.key } ?? view.keys.first { place.key == .keep && $0.key == .release }
        guard let found else { return }
        let face = KeyFace(found.label, spoken: found.spoken, solid: found.solid && found.enabled, enabled: found.enabled)
        let order = 50 + Double(view.keys.firstIndex { $0.key == found.key } ?? 0) / 100
        key(
            "swim-\(String.tag(found.key))", face, em: slate.text.secondary, sub: slate.text.sub, at: place.rect, slate, order: order,
            .swim(found.tap))
    }

    /// Names and marks, the replay, boundaries, bands, features, hazards, the full list, the peg on the map.
    private mutating func drawSwimMore(_ view: SwimView, _ slate: Slate, _ content: ScreenContent) {
        let title = [view.title, view.replay].filter { !$0.isEmpty }.joined(separator: "   ")
        let rest = head(title, notice: content.notice, slate)
        switch content.paging.row {
        case nil: drawSwimKeys(view, in: rest, slate, content.paging)
        case Self.legend: drawLegend(view, in: rest, slate)
        case Self.list: drawSwimList(view, content.scene, in: rest, slate)
        case Self.place: drawPegPlace(view, in: rest, slate, content.paging)
        default: rows(view.rows, in: rest, slate, content.paging)
        }
    }

    private mutating func drawSwimKeys(_ view: SwimView, in rest: Rect, _ slate: Slate, _ paging: Paging) {
        let further: [SwimKey] = [.markHere, .earlier, .later, .now]
        var cells = view.keys.filter { further.contains($0.key) }.map { found in
            Cell(
                face: KeyFace(found.label, spoken: found.spoken, enabled: found.enabled), tag: "swim-\(String.tag(found.key))",
                ask: .swim(found.tap), reads: found.reads)
        }
        cells.append(Cell(face: KeyFace(view.listLabel, spoken: view.listLabel), tag: "swim-list", ask: .row(Self.list)))
        cells += view.rows.map(Cell.init(row:))
        let face = KeyFace(view.place.label, sub: view.place.value, spoken: view.place.spoken)
        cells.append(Cell(face: face, tag: "swim-place", ask: .row(Self.place)))
        line(view.name, 0, rest, slate)
        grid(cells, in: rest.with(top: rest.top + slate.lineHeight, height: rest.height - slate.lineHeight), slate, page: paging.grid)
    }

    /// Each symbol of the map and what it means beside it; the symbols are drawn by the same code as the map.
    private mutating func drawLegend(_ view: SwimView, in rest: Rect, _ slate: Slate) {
        let column = rest.with(width: Self.legendMm * slate.mm)
        let glass = FanGlass(widthPx: column.width, heightPx: column.height, pxPerMm: slate.mm, textScale: 1, small: false)
        if let scene = Log.attempt("drawing the legend", { try swimLegend(glass: glass, language: phoneLanguage()) }) {
            put("legend", SwimDrawing(scene: scene, mm: slate.mm, letters: slate.letters).marks(), spoken: "", at: column, order: 9)
        }
        let row = rest.height / Double(max(1, view.legend.count))
        let left = column.right + 2 * slate.mm
        let texts = view.legend.enumerated().map { i, text in
            (text, Rect(left: left, top: rest.top + Double(i) * row, width: rest.right - left, height: row))
        }
        // All lines have the same size: they are one list.
        let em = slate.letters.common(texts, em: slate.text.body * 1.1, weight: .medium)
        for (i, (text, place)) in texts.enumerated() { put("legend-\(i)", text, em: em, at: place, slate, order: 10 + Double(i) / 100) }
    }

    /// Everything that the picture is based on, with the meaning of its numbers; nothing is cut off.
    private mutating func drawSwimList(_ view: SwimView, _ scene: SwimScene?, in rest: Rect, _ slate: Slate) {
        let key = (scene?.key ?? []).map(\.spoken)
        put("swim-list-text", (view.list + key).joined(separator: "\n"), em: slate.text.body * 1.1, at: rest, slate, order: 10, middle: false)
    }

    /// Where the peg is on the earth: three lines to type, the key that asks the phone, and the key that sets it.
    private mutating func drawPegPlace(_ view: SwimView, in rest: Rect, _ slate: Slate, _ paging: Paging) {
        for (i, field) in view.place.fields.enumerated() { line(field, i, rest, slate) }
        let typed = Double(view.place.fields.count) * slate.lineHeight
        put("place-note", view.place.note, em: slate.text.body, at: rest.with(top: rest.top + typed, height: slate.lineHeight), slate, order: 30)
        let set = view.keys.filter { $0.key == .usePhone || $0.key == .placePeg }.map { key in
            let solid = key.enabled && key.key == .placePeg
            return Cell(
                face: KeyFace(key.label, spoken: key.spoken, solid: solid, enabled: key.enabled), tag: "swim-\(String.tag(key.key))",
                ask: .swim(key.tap))
        }
        let below = typed + slate.lineHeight
        grid(set, in: rest.with(top: rest.top + below, height: rest.height - below), slate, page: paging.grid)
    }

    /// Pages of the further keys that are not a row of choices.
    private static let list = "list"
    private static let place = "place"
    private static let legend = "legend"
    /// Width of the symbols on the legend, mm.
    private static let legendMm = 14.0
}
