import RestwaterCore

/// A screen of choices and nothing else: spot and rig of one rod, and what belongs to this phone.
extension Sheet {
    mutating func drawRows(_ title: String, _ fields: [ChoiceRow], _ slate: Slate, _ seen: Seen, choose: (String, String) -> Action) {
        let rest = head(title, notice: seen.notice, slate, bottom: slate.back.top)
        rows(fields, in: rest, slate, seen.turned, choose: choose)
        back(slate)
    }
}
