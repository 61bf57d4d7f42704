extension Sheet {
    /// What a screen reader is told when one sheet takes another's place: a new answer, then what has changed of the pieces that
    /// announce themselves. A piece that was not there before is not announced: another screen is read by the finger.
    public static func announcements(from old: Sheet, to new: Sheet) -> [String] {
        let answer = new.answers == old.answers ? "" : new.answer
        let before = Dictionary(old.pieces.map { ($0.tag, $0.announced) }, uniquingKeysWith: { first, _ in first })
        let changed = new.pieces.filter { piece in
            !piece.announced.isEmpty && before[piece.tag].map { $0 != piece.announced } == true && !(piece.runsByItself && !answer.isEmpty)
        }
        return ([answer] + changed.sorted { $0.order < $1.order }.map(\.announced)).filter { !$0.isBlank }
    }
}
