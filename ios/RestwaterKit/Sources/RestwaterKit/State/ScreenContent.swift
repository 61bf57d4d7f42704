import RestwaterCore

/// Everything that the screens are drawn from.
public struct ScreenContent: Equatable, Sendable {
    public internal(set) var bank: BankView?
    public internal(set) var setup: SetupView?
    public internal(set) var tackle: TackleView?
    public internal(set) var swim: SwimView?
    public internal(set) var waits: WaitsView?
    public internal(set) var changes: ChangesView?
    public internal(set) var mend: MendView?
    public internal(set) var phone: PhoneView?
    public internal(set) var match: MatchView?
    public internal(set) var fish: FishView?
    public internal(set) var weight: WeightView?
    public internal(set) var feed: FishView?
    public internal(set) var feedWeight: WeightView?
    public internal(set) var seen: FishView?
    public internal(set) var bench: LeavesView?
    public internal(set) var book: LeavesView?
    public internal(set) var conditions: LeavesView?
    public internal(set) var cautions: LeavesView?
    public internal(set) var day: LeavesView?
    public internal(set) var welcome: LeavesView?
    public internal(set) var legend: LeavesView?
    /// The screens that can be opened now.
    public internal(set) var screenList: ScreenListView?
    public internal(set) var files = FilesContent()
    public internal(set) var settings = Settings(hand: .right, scheme: .day)
    public internal(set) var showing = Showing.bank
    /// The small swim fan, if there is a session.
    public internal(set) var fan: SwimScene?
    /// The large fan of the Swim screen.
    public internal(set) var scene: SwimScene?
    /// The core's notice about the last tap.
    public internal(set) var notice = ""
    /// How many answers there have been: the same one twice is announced twice.
    public internal(set) var answers = 0
    /// How many taps have been rejected so far: each is shown by a frame around the screen.
    public internal(set) var rejectedTaps = 0
    /// Texts that are typed and not sent yet.
    public internal(set) var drafts = Drafts()
    /// The pages and rows that are open on the current screen.
    public internal(set) var paging = Paging()

    public init() {}

    /// Stores the core's answer.
    mutating func show(_ screen: Screen) {
        switch screen {
        case .bank(let view):
            // The sheet behind MORE has the keys of one rod in one state: with another the pad is back, since that is where LANDED
            // would be.
            if let bank, (bank.state, rod) != (view.state, view.rods.first { $0.chosen }?.rod ?? 1) { paging.keys = 0 }
            bank = view
        case .setup(let view): setup = view
        case .tackle(let view): tackle = view
        case .swim(let view): swim = view
        case .waits(let view): waits = view
        case .changes(let view): changes = view
        case .files(let view): files.view = view
        case .mend(let view): mend = view
        case .phone(let view): phone = view
        case .match(let view): match = view
        case .fish(let view): fish = view
        case .weight(let view): weight = view
        case .feed(let view): feed = view
        case .feedWeight(let view): feedWeight = view
        case .seen(let view): seen = view
        case .bench(let view): bench = view
        case .book(let view): book = view
        case .conditions(let view): conditions = view
        case .cautions(let view): cautions = view
        case .day(let view): day = view
        case .welcome(let view): welcome = view
        case .legend(let view): legend = view
        }
    }

    /// Ink on paper or chalk on ink.
    public var scheme: Scheme { settings.scheme }

    /// The rod that the keys act on.
    var rod: UInt8 { bank?.rods.first { $0.chosen }?.rod ?? 1 }
}

/// The open pages and rows of a screen, which are part of no record; they are reset when a screen is opened.
public struct Paging: Equatable, Sendable {
    /// Page of the sheet behind MORE on the Bank, from 1; 0 while it is closed.
    public internal(set) var keys = 0
    /// Picture or page of a screen with several.
    public internal(set) var page = 0
    /// Page of a grid of keys that is too long for its place.
    public internal(set) var grid = 0
    /// The row whose choices are open.
    public internal(set) var row: String? {
        didSet { if row != oldValue { grid = 0 } }
    }
    /// The leaf that is open; `nil` for the first.
    public internal(set) var leaf: String?
    /// Part of a leaf that is too long for its place.
    public internal(set) var part = 0
    /// The page of the Match screen.
    public internal(set) var match = MatchPage.now
    /// Whether the further keys of the Swim screen are open.
    public internal(set) var more = false
}
