import RestwaterCore

/// The keys of the Bank.
extension Sheet {
    mutating func drawPad(_ view: BankView, _ slate: Slate) {
        let (layout, text) = (slate.layout, slate.text)
        let shown = layout.keys.compactMap { place in
            view.keys.firstIndex { $0.key == place.key }.map { (place, face(view.keys[$0]), order: $0) }
        }
        let next = nextRod(view)
        func labels(_ large: Bool) -> [(String, Rect)] {
            shown.filter { Self.large.contains($0.0.key) == large }.map { place, face, _ in label(face, place.rect, slate) }
        }
        var others = labels(false)
        let more = KeyFace(slate.words.more)
        if let place = layout.more { others.append(label(more, place, slate)) }
        if let place = layout.nextRod, let next { others.append(label(next.face, place, slate)) }
        // Keys of one kind have the same text size.
        let largeEm = slate.letters.common(labels(true), em: text.primary)
        let smallEm = slate.letters.common(others, em: text.secondary)
        for (place, face, order) in shown {
            let em = Self.large.contains(place.key) ? largeEm : smallEm
            key(
                "key-\(String.tag(place.key))", face, em: em, sub: text.sub, at: place.rect, slate, order: 60 + Double(order) / 100,
                .key(view.keys[order].tap))
        }
        if let place = layout.more { key("more", more, em: smallEm, sub: 0, at: place, slate, order: 70, .moreKeys) }
        if let place = layout.nextRod, let next {
            key("next-rod", next.face, em: smallEm, sub: text.sub, at: place, slate, order: 70.1, .act(next.choose))
        }
    }

    /// The sheet behind MORE: every key that has no place on the pad, and BACK to it.
    mutating func drawMoreKeys(_ view: BankView, at page: PagePlace, _ slate: Slate, _ content: ScreenContent) {
        let (layout, text) = (slate.layout, slate.text)
        _ = head(slate.words.more.spoken, notice: content.notice, slate, page: page)
        let shown = layout.keys.compactMap { place in view.keys.first { $0.key == place.key }.map { (place.rect, $0, face($0)) } }
        let em = slate.letters.common(shown.map { label($2, $0, slate) }, em: text.secondary)
        for (i, (place, view, face)) in shown.enumerated() {
            key("key-\(String.tag(view.key))", face, em: em, sub: text.sub, at: place, slate, order: 60 + Double(i) / 100, .key(view.tap))
        }
        // The pad is the first of the pages.
        let pages = max(1, Int(layout.pages) - 1)
        if let place = layout.more {
            let pager = slate.pagerFace((content.paging.keys - 1) % pages, of: pages)
            key("more", pager, em: em, sub: em * Slate.pageOf, at: place, slate, order: 70, .moreKeys)
        }
        back(slate)
    }

    private func face(_ key: KeyView) -> KeyFace {
        KeyFace(key.label, sub: key.sub, spoken: key.spoken, weight: key.weight, enabled: key.enabled)
    }

    private func label(_ face: KeyFace, _ place: Rect, _ slate: Slate) -> (String, Rect) {
        (face.label, KeyDrawing.labelPlace(place, hasSub: face.sub != nil, mm: slate.mm))
    }

    private func nextRod(_ view: BankView) -> (choose: Action, face: KeyFace)? {
        guard !view.rods.isEmpty else { return nil }
        let chosen = view.rods.firstIndex { $0.chosen } ?? -1
        let rod = view.rods[(chosen + 1) % view.rods.count]
        return (rod.choose, KeyFace(rod.name, sub: rod.alert.isEmpty ? rod.digits : rod.alert, spoken: rod.spoken))
    }

    /// The keys with large text.
    private static let large: Set<Key> = [.cast, .bite, .woundIn, .landed, .lost, .missed, .start]
}
