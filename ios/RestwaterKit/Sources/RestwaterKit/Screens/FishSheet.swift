import RestwaterCore

/// A landed fish, in a match or not: what can be entered about it, and the number pad for its weight.
extension Sheet {
    mutating func drawFish(_ view: FishView, _ slate: Slate, _ content: ScreenContent) {
        guard let keys = Log.attempt("laying out the fish", { try matchLayout(glass: slate.glass) }) else { return }
        let slots = keys.classes.count
        let perPage = view.classes.count <= slots ? slots : slots - 1
        let pages = max(1, (view.classes.count + perPage - 1) / max(1, perPage))
        let shown = view.classes.dropFirst(content.paging.grid % pages * perPage).prefix(perPage)
        let place = head(view.title, notice: content.notice, slate, page: keys.fish)
        let body = slate.text.body
        let marks = slate.write.sentences(
            view.says.first ?? "", Array(view.says.dropFirst()), em: body * 1.35, small: body * 1.1, in: place.local, least: slate.usualShare)
        let spoken = view.says.joined(separator: " ")
        put("fish-says", marks, spoken: spoken, at: place, order: 10)
        pieces[pieces.count - 1].announced = spoken
        let labels = zip(shown, keys.classes).map { ($0.label, KeyDrawing.labelPlace($1, hasSub: true, mm: slate.mm)) }
        let em = slate.letters.common(labels, em: slate.text.primary)
        for (key, at) in zip(shown, keys.classes) { fishKey(key, at, slate, em: em) }
        // The wide key takes the pager's place here, so the pager takes the place of the last class.
        pager(content.paging.grid % pages, of: pages, slate, at: keys.classes[slots - 1], .moreGrid)
        for (key, at) in zip(view.small, view.reads ? keys.aboveClassesRead : keys.aboveClasses) { fishKey(key, at, slate, em: slate.text.secondary) }
        fishKey(view.weigh, keys.wide, slate, em: slate.text.primary)
        back(slate)
    }

    mutating func drawWeight(_ view: WeightView, _ slate: Slate, _ content: ScreenContent) {
        guard let keys = Log.attempt("laying out the number pad", { try matchLayout(glass: slate.glass) }) else { return }
        let place = head(view.title, notice: content.notice, slate, page: keys.typing)
        figure(view.figure, [view.says], beside: place, in: keys.figure, slate)
        if !view.says.isBlank, place.height > 0 { put("figure-says", view.says, em: slate.text.body, at: place, slate, order: 15, middle: false) }
        let ems = slate.padEms(zip(view.pad, keys.pad).map { ($0.label, $0.sub, $1) })
        for ((key, at), em) in zip(zip(view.pad, keys.pad), ems) { fishKey(key, at, slate, em: em) }
        guard let guess = view.guess else {
            fishKey(view.weighed, keys.wide, slate, em: slate.text.primary)
            return back(slate)
        }
        let takes = Array(zip([guess, view.weighed], keys.padTakes))
        let labels = takes.map { key, at in (key.label, KeyDrawing.labelPlace(at, hasSub: !key.sub.isBlank, mm: slate.mm)) }
        let em = slate.letters.common(labels, em: slate.text.primary)
        for (key, at) in takes { fishKey(key, at, slate, em: em) }
        back(slate, at: keys.padBack)
    }

    /// A number being typed; if there is no room for what is known about it, that is spoken with it.
    mutating func figure(_ figure: String, _ says: [String], beside place: Rect, in low: Rect, _ slate: Slate) {
        let spoken = place.height > 0 ? figure : ([figure] + says).joined(separator: " ")
        put("figure", figure, spoken: spoken, em: low.height * 0.8, at: low, slate, weight: .bold, order: 20, announced: figure)
    }

    private mutating func fishKey(_ key: FishKey, _ place: Rect, _ slate: Slate, em: Double) {
        let face = KeyFace(key.label, sub: key.sub, spoken: key.spoken, weight: key.weight, enabled: key.enabled)
        self.key(key.tag, face, em: em, sub: slate.text.sub, at: place, slate, order: 60, .fish(key))
    }
}

extension Slate {
    /// Sizes of the labels of a number pad: one for its figures, and one for its words, which are wider.
    func padEms(_ keys: [(label: String, sub: String, at: Rect)]) -> [Double] {
        func common(_ some: [(label: String, sub: String, at: Rect)]) -> Double {
            letters.common(some.map { ($0.label, KeyDrawing.labelPlace($0.at, hasSub: !$0.sub.isBlank, mm: mm)) }, em: text.primary)
        }
        let (figures, words) = (common(keys.filter { $0.label.count == 1 }), common(keys.filter { $0.label.count != 1 }))
        return keys.map { $0.label.count == 1 ? figures : words }
    }
}
