import RestwaterCore

/// The screens that can be opened, with a key for each, as the core lists them. Those of the bank are nearest to the
/// thumb, the others above them under their heading. If both groups don't fit, they are one grid of several pages.
extension Sheet {
    mutating func drawScreens(_ list: ScreenListView, _ slate: Slate, _ content: ScreenContent) {
        let rest = head("", notice: content.notice, slate)
        func cells(_ group: ScreenGroup) -> [Cell] {
            list.keys.filter { $0.group == group }.map { key in
                let goal = Showing(key.which)
                return Cell(face: KeyFace(key.label, sub: key.sub, spoken: key.spoken), tag: "open-\(String.tag(goal))", ask: .open(goal))
            }
        }
        let groups = [(list.onTheBank, cells(.onTheBank)), (list.beforeAndAfter, cells(.beforeAndAfter))]
        // Large headings become smaller before they are dropped.
        let count = Double(groups.count)
        let keys = groups.map { slate.gridHeight($0.1.count) + 2 * slate.mm }.reduce(0, +)
        let usual = slate.text.body * 1.3
        let heading = min(usual, max(usual * slate.usualShare, (rest.height - keys) / count))
        if count * heading + keys > rest.height {
            let all = groups.flatMap(\.1)
            grid(all, in: rest, slate, page: content.paging.grid, breaks: true)
        } else {
            var bottom = rest.bottom
            for (i, (title, keys)) in groups.enumerated() {
                let height = slate.gridHeight(keys.count)
                // A screen reader reads a heading and its own keys, then the other group.
                let order = Double(50 + 10 * i)
                grid(keys, in: rest.with(top: bottom - height, height: height), slate, page: 0, order: order)
                bottom -= height + heading
                put(
                    "group-\(i + 1)", title, em: slate.text.body, at: rest.with(top: bottom, height: heading), slate, weight: .bold,
                    order: order - 0.5, role: .heading)
                bottom -= 2 * slate.mm
            }
        }
        back(slate)
    }
}
