import RestwaterCore

/// A screen with nothing but choices: spot and rig of one rod, and the settings of this phone.
extension Sheet {
    mutating func drawRows(
        _ title: String, _ fields: [ChoiceRow], caution: String = "", _ slate: Slate, _ content: ScreenContent
    ) {
        let rest = head(title, notice: content.notice, slate)
        // A caution is shown where the weight is entered and above all rows.
        let said = [nil, "lead", "material"].contains(content.paging.row) ? caution : ""
        rows(fields, caution: said, in: rest, slate, content.paging)
        back(slate)
    }
}
