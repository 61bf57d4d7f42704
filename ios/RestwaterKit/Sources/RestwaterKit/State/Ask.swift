import RestwaterCore

/// What a tap on a piece of a screen asks for.
public enum Ask: Equatable, Sendable {
    /// A key of the Bank.
    case key(KeyTap)
    /// A key of the Swim screen.
    case swim(KeyTap)
    /// A key about a landed fish.
    case fish(FishKey)
    /// A key of the Files screen.
    case files(FilesAsk)
    /// A complete action.
    case act(Action)
    /// An action that passes on a letter just typed. It makes no sound, since there would be one for every letter.
    case type(Action)
    /// Salvage a damaged log (`Opening` does this, since there is no state yet).
    case salvage
    /// Another screen.
    case open(Showing)
    /// Back to the Bank, or out of what is open on this screen.
    case back
    /// Begin a session as it is set up.
    case start(KeyTap)
    /// Opens the sheet behind MORE, or turns to its next page.
    case moreKeys
    /// The next picture or page.
    case nextPage
    /// The next page of a grid.
    case moreGrid
    /// The choices of a row.
    case row(String)
    /// The further keys of the Swim screen.
    case moreSwim
    /// A page of the Match screen.
    case match(MatchPage)
    /// A leaf of a screen of leaves.
    case leaf(String)
    /// The next page of a leaf that is too long for its place.
    case nextPart
    /// The text typed so far, which its key will pass on.
    case typed(TypedInto, String)
    /// What the key of a typed text passes on.
    case send(Action)
}
