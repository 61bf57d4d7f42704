import RestwaterCore

/// A screen with nothing but choices: spot and rig of one rod, and the settings of this phone.
extension Sheet {
    mutating func drawRows(
        _ title: String, _ fields: [ChoiceRow], caution: String = "", cautionOn: [String] = [], _ slate: Slate, _ content: ScreenContent
    ) {
        let rest = head(title, notice: content.notice, slate)
        let isAbout = content.paging.row.map(cautionOn.contains) ?? true
        rows(fields, caution: isAbout ? caution : "", in: rest, slate, content.paging)
        back(slate)
    }
}
