import RestwaterCore

/// A laid-out screen: every piece with its place. Pure: the same state and the same screen size give the same sheet.
public struct Sheet: Equatable, Sendable {
    public internal(set) var pieces: [Piece] = []
    /// The place of the small or the large fan, for which a picture is to be requested.
    public internal(set) var fan: FanGlass?
    public internal(set) var scene: FanGlass?

    /// The answer shown last, and how many there have been: the same one twice is two.
    private(set) var answer = ""
    private(set) var answers = 0

    public subscript(tag: String) -> Piece? { pieces.first { $0.tag == tag } }

    /// The open screen, laid out for this size.
    public static func of(_ content: ScreenContent, on measure: GlassMeasure, letters: Letters) -> Sheet {
        guard measure.width > 0, measure.height > 0 else { return Sheet() }
        guard let bank = content.bank else { return content.notice.isEmpty ? Sheet() : trouble(content.notice, on: measure, letters: letters) }
        let slate: Slate
        do {
            slate = try Slate(content, bank: bank, on: measure, letters: letters)
        } catch {
            return trouble(Refusal(error).text, on: measure, letters: letters)
        }
        var sheet = Sheet()
        switch content.showing {
        case .bank: sheet.drawBank(bank, slate, content)
        case .screens: content.screenList.map { sheet.drawScreens($0, slate, content) }
        case .bench: content.bench.map { sheet.drawLeaves($0, slate, content) }
        case .book: content.book.map { sheet.drawLeaves($0, slate, content) }
        case .conditions: content.conditions.map { sheet.drawLeaves($0, slate, content) }
        case .cautions: content.cautions.map { sheet.drawLeaves($0, slate, content) }
        case .day: content.day.map { sheet.drawLeaves($0, slate, content) }
        case .welcome: content.welcome.map { sheet.drawLeaves($0, slate, content) }
        case .legend: content.legend.map { sheet.drawLeaves($0, slate, content) }
        case .setup: content.setup.map { sheet.drawSetup($0, slate, content) }
        case .tackle:
            content.tackle.map { tackle in
                sheet.drawRows(tackle.title, tackle.rows, caution: tackle.caution, cautionOn: tackle.cautionOn, slate, content)
            }
        case .swim: content.swim.map { sheet.drawSwim($0, slate, content) }
        case .waits: content.waits.map { sheet.drawWaits($0, slate, content) }
        case .changes: content.changes.map { sheet.drawChanges($0, slate, content) }
        case .match: content.match.map { sheet.drawMatch($0, slate, content) }
        case .fish: content.fish.map { sheet.drawFish($0, slate, content) }
        case .weight: content.weight.map { sheet.drawWeight($0, slate, content) }
        case .feed: content.feed.map { sheet.drawFish($0, slate, content) }
        case .feedWeight: content.feedWeight.map { sheet.drawWeight($0, slate, content) }
        case .seen: content.seen.map { sheet.drawFish($0, slate, content) }
        case .files: content.files.view.map { sheet.drawFiles($0, slate, content) }
        case .mend: content.mend.map { sheet.drawMend($0, slate, content) }
        case .phone:
            content.phone.map { phone in
                sheet.drawRows(phone.title, phone.rows, slate, content)
            }
        }
        if sheet.pieces.isEmpty {
            // The core has refused the screen (no session for the swim): its message, and the way back.
            _ = sheet.head("", notice: content.notice, slate)
            sheet.back(slate)
        }
        (sheet.answer, sheet.answers) = (content.notice, content.answers)
        return sheet
    }

    /// Why the screens can't be shown, and what to do about it, with a key if the core has one for it.
    static func trouble(_ text: String, key label: String? = nil, on measure: GlassMeasure, letters: Letters) -> Sheet {
        let mm = measure.pointsPerMm
        let key = label == nil ? 0 : 20 * mm
        let place = Rect(
            left: 3 * mm, top: measure.insetTop + 3 * mm, width: measure.width - 6 * mm,
            height: measure.height - measure.insetTop - measure.insetBottom - 6 * mm - key
        )
        var piece = Piece("trouble", at: place)
        piece.spoken = text
        piece.marks = Words(letters: letters).fit(text, em: 3.6 * mm * measure.textScale, in: place.local)
        guard let label else { return Sheet(pieces: [piece]) }
        var save = Piece("salvage", at: place.with(top: place.bottom, height: key))
        let drawing = KeyDrawing(face: KeyFace(label, spoken: label), size: save.place, em: 5 * mm, sub: 0, mm: mm, letters: letters)
        (save.marks, save.pressed) = (drawing.marks(pressed: false), drawing.marks(pressed: true))
        (save.role, save.spoken, save.order, save.ask) = (.key, label, 1, .salvage)
        return Sheet(pieces: [piece, save])
    }
}

/// What every screen needs to lay itself out: the size of the screen, the letters, the core's layout and its words.
struct Slate {
    let glass: Glass
    let letters: Letters
    let layout: BankLayout
    let words: PadWords
    private let drafts: Drafts
    private let showing: Showing
    var mm: Double { glass.pxPerMm }
    /// All words of the Bank are on one screen; the other screens have pages, and the text size set on the phone.
    let text: TextSizes
    var write: Words { Words(letters: letters) }

    /// What is typed and not sent yet.
    func draft(_ into: TypedInto) -> String { drafts.text(on: showing, into: into) }

    init(_ content: ScreenContent, bank: BankView, on measure: GlassMeasure, letters: Letters) throws {
        glass = measure.glass(content.settings.hand)
        self.letters = letters
        let rods = UInt8(min(3, max(1, bank.rods.count)))
        layout = try bankLayout(glass: glass, ask: PadAsk(state: bank.state, rods: rods, page: UInt8(content.paging.keys % 256)))
        text = content.showing == .bank && layout.sheet == nil ? layout.text : layout.pageText
        words = padWords(language: phoneLanguage())
        (drafts, showing) = (content.drafts, content.showing)
    }
}
