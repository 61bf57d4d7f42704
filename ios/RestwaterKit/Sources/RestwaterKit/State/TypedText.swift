/// What a line shows while it is typed and passed on letter by letter. The core's answer to a letter must not overtake the next
/// letter, but what comes from elsewhere, such as the phone's position, is shown even while the line has the cursor.
public struct TypedText: Equatable, Sendable {
    public private(set) var shown = ""
    /// What was typed and not answered yet.
    private var sent: [String] = []

    public init() {}

    /// The angler has typed.
    public mutating func typed(_ text: String) {
        shown = text
        sent.append(text)
    }

    /// The core's value, and whether the line has the cursor.
    public mutating func answered(_ value: String, typing: Bool) {
        if typing, let answered = sent.firstIndex(of: value) {
            sent.removeSubrange(...answered)
        } else {
            sent = []
            shown = value
        }
    }
}
