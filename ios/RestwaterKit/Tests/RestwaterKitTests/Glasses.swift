import RestwaterCore

@testable import RestwaterKit

/// Screens of the phones that the oldest supported system (iOS 17) runs on, as the app measures them, in points: size classes and
/// insets from memory.
enum Glasses {
    /// Held upright.
    static let upright = [
        glass(375, 667, 326, 2, top: 20),
        glass(375, 812, 476, 2.88, top: 50, bottom: 34),
        glass(414, 896, 326, 2, top: 48, bottom: 34),
        glass(375, 812, 458, 3, top: 44, bottom: 34),
        glass(390, 844, 460, 3, top: 47, bottom: 34),
        glass(393, 852, 460, 3, top: 59, bottom: 34),
        glass(430, 932, 460, 3, top: 59, bottom: 34),
    ]

    /// On its side: no status bar, and neither the camera's area nor the one opposite is used.
    static let lying = [
        glass(667, 375, 326, 2), glass(734, 390, 460, 3, bottom: 21), glass(838, 440, 460, 3, bottom: 21),
    ]

    private static func glass(
        _ width: Double, _ height: Double, _ perInch: Double, _ scale: Double, top: Double = 0, bottom: Double = 0
    ) -> GlassMeasure {
        GlassMeasure(width: width, height: height, pointsPerMm: perInch / scale / 25.4, insetTop: top, insetBottom: bottom)
    }
}

extension GlassMeasure {
    func at(_ textScale: Double) -> GlassMeasure {
        var measure = self
        measure.textScale = textScale
        return measure
    }
}

extension RestwaterState {
    /// Every page, row and leaf of the open screen that is reached without the core, with its sheet: as a thumb turns them. If not
    /// `deep`, only the pages.
    func everySheet(on measure: GlassMeasure, deep: Bool = true) -> [(Paging, Sheet)] {
        let before = content.paging
        defer { content.paging = before }
        var (found, waiting): ([(Paging, Sheet)], [Paging]) = ([], [before])
        while let paging = waiting.popLast() {
            content.paging = paging
            let sheet = drawn(on: measure)
            if found.contains(where: { $0.1 == sheet }) { continue }
            found.append((paging, sheet))
            for ask in sheet.pieces.compactMap(\.ask) where ask.turnsAPage || (deep && ask.opensAPage) {
                content.paging = paging
                tap(ask)
                waiting.append(content.paging)
            }
        }
        return found
    }

    /// The sheet with the pictures of the swim for exactly this size.
    func drawn(on measure: GlassMeasure) -> Sheet {
        var content = content
        let sheet = Sheet.of(content, on: measure, letters: plainLetters)
        guard sheet.fan != nil || sheet.scene != nil else { return sheet }
        let core = line.core
        content.fan = sheet.fan.flatMap { place in content.fan == nil ? nil : try? core.swimScene(now: clock(), glass: place) }
        content.scene = sheet.scene.flatMap { try? core.swimScene(now: clock(), glass: $0) }
        return Sheet.of(content, on: measure, letters: plainLetters)
    }
}

extension Ask {
    fileprivate var turnsAPage: Bool {
        switch self {
        case .moreSwim, .match, .nextPage, .moreGrid, .nextPart, .moreKeys: true
        default: false
        }
    }

    fileprivate var opensAPage: Bool {
        switch self {
        case .row, .leaf, .key(.leaf): true
        default: false
        }
    }
}

extension Piece {
    /// Every text that is drawn, labels of pictures too, with the place of its letters on the screen.
    var letters: [(Letter, Rect)] {
        func all(_ marks: [Mark]) -> [Letter] {
            marks.flatMap { mark -> [Letter] in
                switch mark {
                case .text(let letter): [letter]
                case .inside(_, let inner): all(inner)
                default: []
                }
            }
        }
        return all(marks).filter { !$0.text.isBlank }.map { letter in
            let width =
                letter.clock.flatMap { percent in Face.widths.clocks.first { $0.percent == percent } }
                .map { Face.width(letter.text, letter.em, $0) } ?? plainLetters.width(letter.text, letter.em, letter.weight)
            // From the top of a capital to the bottom of a "g".
            let depth = letter.text.contains { "gjpqyQ,;()/".contains($0) } ? 0.2 : 0.02
            let top = place.top + letter.at.y - Letters.cap * letter.em
            return (letter, Rect(left: place.left + letter.at.x, top: top, width: width, height: (Letters.cap + depth) * letter.em))
        }
    }
}
