import RestwaterCore

/// Spot and rig of one rod, changed by taps; in force from its next cast.
extension Sheet {
    mutating func drawTackle(_ tackle: TackleView, _ slate: Slate, _ seen: Seen) {
        let rest = head(tackle.title, notice: seen.notice, slate, bottom: slate.back.top)
        rows(tackle.rows, in: rest, slate, seen.turned) { .choose(rod: tackle.rod, field: $0, value: $1) }
        back(slate)
    }
}
