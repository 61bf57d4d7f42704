import RestwaterCore

/// A screen with nothing but choices: spot and rig of one rod, and the settings of this phone.
extension Sheet {
    mutating func drawRows(
        _ title: String, _ fields: [ChoiceRow], caution: String = "", _ slate: Slate, _ content: ScreenContent
    ) {
        var rest = head(title, notice: content.notice, slate)
        // A caution is shown where the weight is entered and above all rows, never over a key.
        if !caution.isBlank && [nil, "lead", "material"].contains(content.paging.row) {
            let em = slate.text.body * 0.85
            let high = min(rest.height * 0.3, slate.cautionHeight(caution, em: em, width: rest.width))
            self.caution(caution, em: em, at: rest.with(height: high), slate, order: 5)
            rest = rest.with(top: rest.top + high, height: rest.height - high)
        }
        rows(fields, in: rest, slate, content.paging)
        back(slate)
    }
}
