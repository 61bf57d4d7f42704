import RestwaterCore

/// The state of a cast of a test: a tick when done, a mark while out, an arrow for the next, or still to come.
func stepMarks(_ state: StepState, in place: Rect, mm: Double) -> [Mark] {
    let (x, y, r) = (place.left + 2.6 * mm, place.top + place.height / 2, min(1.3 * mm, place.height * 0.3))
    switch state {
    case .done: return [.line(Outline(Point(x - r, y), Point(x - r * 0.3, y + r * 0.8), Point(x + r, y - r)), .ink, Stroke(0.5 * mm))]
    case .out: return [.fill(.circle(Point(x, y), r), .ink)]
    case .next: return [.fill(.closed(Point(x - r, y - r), Point(x + r, y), Point(x - r, y + r)), .accent)]
    case .later: return [.line(.circle(Point(x, y), r), .soft, Stroke(0.3 * mm))]
    }
}
