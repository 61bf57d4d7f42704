import RestwaterCore

/// Putting pieces on a sheet.
extension Sheet {
    /// Text that is drawn and spoken.
    mutating func put(
        _ tag: String, _ text: String, spoken: String? = nil, em: Double, at place: Rect, _ slate: Slate, weight: Weight = .medium,
        order: Double = 0, role: Role = .words, across: Across = .start, middle: Bool = true, oneLine: Bool = false, announced: String = ""
    ) {
        var piece = Piece(tag, at: place)
        piece.marks = slate.write.fit(text, em: em, in: place.local, weight: weight, across: across, middle: middle, oneLine: oneLine)
        (piece.spoken, piece.order, piece.role, piece.announced) = (spoken ?? text, order, role, announced)
        pieces.append(piece)
    }

    /// Marks of a piece whose words are spoken as a whole.
    mutating func put(_ tag: String, _ marks: [Mark], spoken: String, at place: Rect, role: Role = .words, order: Double = 0) {
        var piece = Piece(tag, at: place)
        (piece.marks, piece.spoken, piece.role, piece.order) = (marks, spoken, role, order)
        pieces.append(piece)
    }

    /// A key.
    mutating func key(_ tag: String, _ face: KeyFace, em: Double, sub: Double, at place: Rect, _ slate: Slate, order: Double = 0, _ ask: Ask) {
        var piece = Piece(tag, at: place)
        let drawing = KeyDrawing(face: face, size: place, em: em, sub: sub, mm: slate.mm, letters: slate.letters)
        piece.marks = drawing.marks(pressed: false)
        piece.pressed = drawing.marks(pressed: true)
        (piece.role, piece.spoken, piece.order, piece.enabled, piece.ask) = (.key, face.spoken, order, face.enabled, ask)
        piece.selected = face.chosen
        pieces.append(piece)
    }

    /// The only pager: MORE, with the page number and how many there are. It appears if there is more than one page.
    mutating func pager(_ page: Int, of pages: Int, _ slate: Slate, at place: Rect? = nil, _ ask: Ask) {
        guard pages > 1 else { return }
        let em = slate.text.secondary
        key("next-page", slate.pagerFace(page, of: pages), em: em, sub: em * Slate.pageOf, at: place ?? slate.layout.pager, slate, order: 85, ask)
    }

    /// BACK is in the corner of the thumb.
    mutating func back(_ slate: Slate, at place: Rect? = nil) {
        key("back", KeyFace(slate.words.back), em: slate.text.secondary, sub: 0, at: place ?? slate.layout.back, slate, order: 90, .back)
    }

    /// Title and notice of a page; returns the rest of it.
    mutating func head(_ title: String, notice: String, _ slate: Slate, page: PagePlace? = nil) -> Rect {
        let page = page ?? slate.layout.page
        // If they share a place, the notice is shown instead of the title.
        let shown = page.title == page.notice && !notice.isBlank ? "" : title
        // Large text has the line of the notice too while there is none.
        let both = slate.layout.apart && notice.isBlank && page.title != page.notice
        let place = both ? page.title.with(height: page.notice.bottom - page.title.top) : page.title
        put("title", shown, spoken: title, em: slate.text.headline, at: place, slate, weight: .bold, role: .heading)
        put("notice", notice, em: slate.text.body, at: page.notice, slate, order: 1)
        return page.rest
    }
}

extension Slate {
    /// What the pager says on a page, from 0.
    func pagerFace(_ page: Int, of pages: Int) -> KeyFace {
        let said = pagerWords(page: UInt32(page + 1), pages: UInt32(pages), language: phoneLanguage())
        return KeyFace(said.label, sub: said.of, spoken: said.spoken)
    }

    /// Size of "2 of 4" relative to the word above it.
    static let pageOf = 0.8
}
