import RestwaterCore

/// The Bank screen: the record says what is shown and the core's layout where; nothing is decided here.
extension Sheet {
    mutating func drawBank(_ view: BankView, _ slate: Slate, _ content: ScreenContent) {
        // Without a picture of the swim, the clock takes the fan's place too.
        let layout = slate.layout
        if let page = layout.sheet { return drawMoreKeys(view, at: page, slate, content) }
        fan = layout.fan.map { slate.fan($0, small: true) }
        drawTop(view, slate)
        drawClocks(view, slate, wide: content.fan == nil)
        drawWords(view, slate, notice: content.notice)
        let strip = StripDrawing(
            view.strip, width: layout.strip.width, height: layout.strip.height, mm: slate.mm, figures: slate.text.figures,
            letters: slate.letters
        )
        put("strip", strip.marks(), spoken: view.strip.spoken, at: layout.strip, role: .picture, order: 30)
        // A tap on the strip explains its symbols.
        pieces[pieces.count - 1].ask = .open(.legend)
        if let place = layout.fan, let scene = content.fan { drawFan(scene, place, slate) }
        drawPad(view, slate)
        put("notice", content.notice, em: slate.text.body, at: layout.notice, slate, weight: .bold, order: 5, across: .centre)
    }

    private mutating func drawTop(_ view: BankView, _ slate: Slate) {
        let (header, layout, words) = (view.header, slate.layout, slate.words)
        let em = slate.text.header
        let half = layout.header.local.with(height: layout.header.height / 2)
        let marks =
            slate.write.fit("\(header.place)  \(header.clock)", em: em, in: half, weight: .bold, oneLine: true)
            + slate.write.fit(header.length, em: em * 0.9, in: half.with(top: half.height), oneLine: true)
        put("header", marks, spoken: header.spoken, at: layout.header)
        let screenKeys: [(String, KeyFace, Rect, Ask)] = layout.screenKeys.compactMap { place in
            guard let key = view.screenKeys.first(where: { $0.which == place.which }) else { return nil }
            let goal = Showing(key.which)
            return ("open-\(String.tag(goal))", KeyFace(key.label, spoken: key.spoken), place.rect, .open(goal))
        }
        let keys = [("screens", KeyFace(words.screens), layout.screens, Ask.open(.screens))] + screenKeys
        let size = slate.letters.common(keys.map { ($0.1.label, KeyDrawing.labelPlace($0.2, hasSub: false, mm: slate.mm)) }, em: em)
        for (i, (tag, face, place, ask)) in keys.enumerated() {
            key(tag, face, em: size, sub: 0, at: place, slate, order: Double(i + 1), ask)
        }
    }

    private mutating func drawClocks(_ view: BankView, _ slate: Slate, wide: Bool) {
        let layout = slate.layout
        let one = layout.rods.count == 1
        for place in layout.rods {
            guard let rod = view.rods.first(where: { $0.rod == place.rod }) else { continue }
            let target = one && wide ? layout.fan.map { place.target.and($0) } ?? place.target : place.target
            var piece = Piece("clock-\(rod.rod)", at: target)
            if one {
                piece.marks = clock(rod, in: target.local, slate)
            } else {
                piece.marks = cell(rod, place, slate)
                (piece.role, piece.selected, piece.ask) = (.tab, rod.chosen, .act(rod.choose))
            }
            piece.spoken = rod.spokenSince
            (piece.announced, piece.runsByItself, piece.order) = (rod.spoken, true, 10 + Double(rod.rod) / 10)
            pieces.append(piece)
        }
        guard let since = layout.since, let chosen = view.rods.first(where: { $0.chosen }) else { return }
        // Spoken with the clock.
        put("since", slate.write.fit(chosen.since, em: slate.text.body, in: since.local), spoken: "", at: since)
    }

    /// Em of a rod's number relative to the width of its place: a digit is a little more than half an em wide.
    private static let numberEm = 1.5

    private func cell(_ rod: RodView, _ place: RodPlace, _ slate: Slate) -> [Mark] {
        let edge = 0.35 * slate.mm
        let tint: Tint = rod.chosen ? .paper : .ink
        let inner = place.target.local
        let frame: Mark =
            rod.chosen
            ? .fill(.rect(inner, corner: slate.mm), .ink) : .line(.rect(inner.inset(edge / 2), corner: slate.mm), .ink, Stroke(edge))
        func inside(_ rect: Rect) -> Rect { rect.with(left: rect.left - place.target.left, top: rect.top - place.target.top) }
        let name = place.name.map { slate.write.fit(rod.label, em: slate.text.body, in: inside($0), tint: tint, weight: .bold) } ?? []
        let number =
            place.number.map {
                slate.write.fit(rod.number, em: $0.width * Self.numberEm, in: inside($0), tint: tint, weight: .bold, across: .centre)
            } ?? []
        let word = rod.alert.isEmpty ? nil : place.word
        let digits =
            word.map { slate.write.fit(rod.alert, em: $0.height, in: inside($0), tint: tint, weight: .bold, across: .centre) }
            ?? clock(rod, in: inside(place.digits), slate, tint: tint)
        return [frame] + digits + name + number + first(rod, place.first.map(inside), tint)
    }

    /// Due first: a triangle below the number, or beside it.
    private func first(_ rod: RodView, _ place: Rect?, _ tint: Tint) -> [Mark] {
        guard rod.first, let place else { return [] }
        let (top, left) = (Point(place.left + place.width / 2, place.top), Point(place.left, place.bottom))
        return [.fill(.closed(top, Point(place.right, place.bottom), left), tint)]
    }

    /// The digits of a rod, or a word in their place.
    private func clock(_ rod: RodView, in place: Rect, _ slate: Slate, tint: Tint = .ink) -> [Mark] {
        rod.word.isEmpty
            ? slate.write.digits(rod.digits, in: place, tint: tint, several: slate.layout.rods.count > 1)
            : slate.write.fit(rod.word, em: min(place.height, slate.text.clockWord), in: place, tint: tint, weight: .bold, oneLine: true)
    }

    private mutating func drawWords(_ view: BankView, _ slate: Slate, notice: String) {
        let (layout, text, advice) = (slate.layout, slate.text, view.advice)
        let below = layout.further == nil ? advice.more : Array(advice.more.dropFirst())
        let more = layout.detail == nil ? [advice.detail] + below : below
        let marks = slate.write.sentences(
            advice.headline, more, em: text.headline, small: text.body, in: layout.advice.local, least: slate.usualShare,
            optional: layout.detail != nil, verdictFirst: true
        )
        // Sentences for which there is no line are still spoken.
        let spoken = ([advice.headline, advice.detail] + advice.more).filter { !$0.isBlank }.joined(separator: " ")
        put("advice", marks, spoken: spoken, at: layout.advice, order: 20)
        // The notice and these sentences share a place.
        let apart = [("detail", layout.detail, advice.detail), ("further", layout.further, advice.more.first ?? "")]
        for (tag, place, sentence) in apart where notice.isBlank {
            guard let place else { continue }
            put(tag, slate.write.fit(sentence, em: text.body, in: place.local), spoken: "", at: place)
        }
        // The spot is spoken even if there is no place for it, together with the rig.
        let spot = layout.spot.map { slate.write.fit(view.spot, em: text.body, in: $0.local, weight: .bold) } ?? []
        put("spot", spot, spoken: view.spotSpoken, at: layout.spot ?? layout.notice, order: 40)
        if let rig = layout.rig { put("rig", slate.write.fit(view.rig, em: text.body, in: rig.local), spoken: "", at: rig) }
        if let place = layout.latest {
            put("latest", slate.write.fit(view.logged, em: text.body, in: place.local), spoken: "", at: place)
        }
    }

    private mutating func drawFan(_ scene: SwimScene, _ place: Rect, _ slate: Slate) {
        put(
            "fan", SwimDrawing(scene: scene, mm: slate.mm, letters: slate.letters).marks(), spoken: slate.words.swim.spoken, at: place, role: .key,
            order: 50)
        pieces[pieces.count - 1].ask = .open(.swim)
    }
}

extension Slate {
    /// The drawing area of a fan.
    func fan(_ place: Rect, small: Bool) -> FanGlass {
        FanGlass(widthPx: place.width, heightPx: place.height, pxPerMm: mm, textScale: glass.textScale, small: small)
    }
}

extension Rect {
    /// This rectangle widened to take in the other's width.
    fileprivate func and(_ other: Rect) -> Rect {
        let from = min(left, other.left)
        return with(left: from, width: max(right, other.right) - from)
    }
}
