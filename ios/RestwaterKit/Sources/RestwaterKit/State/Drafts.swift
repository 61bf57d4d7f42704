import RestwaterCore

/// Texts that are typed and not sent yet, each with the place that it would go to: a text comes back only there.
public struct Drafts: Equatable, Sendable {
    struct Draft: Codable, Equatable, Sendable {
        let screen: String
        let into: String
        /// The core's part of the place, which it alone reads.
        let about: String
        var text: String

        func isAt(_ other: Draft) -> Bool { (screen, into, about) == (other.screen, other.into, other.about) }
    }

    /// The latest last.
    var list: [Draft] = []
    /// What a text typed on a screen would be about, as the core last gave it.
    var abouts: [Showing: String] = [:]
    /// More than anybody leaves half typed.
    private static let most = 20

    private func place(_ showing: Showing, _ into: TypedInto) -> Draft {
        Draft(screen: showing.rawValue, into: String(describing: into), about: abouts[showing] ?? "", text: "")
    }

    func text(on showing: Showing, into: TypedInto) -> String {
        let place = place(showing, into)
        return list.first { $0.isAt(place) }?.text ?? ""
    }

    /// An empty text is none.
    mutating func keep(_ text: String, on showing: Showing, into: TypedInto) {
        var draft = place(showing, into)
        draft.text = text
        list.removeAll { $0.isAt(draft) }
        if !text.isEmpty { list = Array((list + [draft]).suffix(Self.most)) }
    }
}
