import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Letters, colours and millimetres.
final class DrawingTests: XCTestCase {
    /// WCAG 2.2: black on white is 21:1; its technique G18 and many tools print 4.54:1 for #767676 on white.
    func testContrastIsThatOfWcag() {
        let black = Ink(paper: 0xFFFFFF, ink: 0x000000, soft: 0x767676, water: 0xFF0000, accent: 0xFF0000)
        XCTAssertEqual(black.contrast(.ink, .paper), 21, accuracy: 1e-9)
        XCTAssertEqual(black.contrast(.paper, .ink), 21, accuracy: 1e-9)
        XCTAssertEqual(black.contrast(.soft, .paper), 4.54, accuracy: 0.005)
        XCTAssertEqual(black.contrast(.water, .accent), 1, accuracy: 1e-9)
    }

    /// 10:1 for digits, 7:1 for text; lines and marks are not text (WCAG 2.2, 1.4.11, requires 3).
    func testEveryPairOfBothSchemesHasEnoughContrast() {
        let pairs: [(Tint, Tint, Double)] = [
            (.ink, .paper, 10), (.soft, .paper, 7), (.ink, .water, 7), (.soft, .water, 4.5), (.accent, .paper, 4.5), (.accent, .water, 4.5),
        ]
        for ink in [Ink.day, .night, .of(.day, increasedContrast: true), .of(.night, increasedContrast: true)] {
            for (a, b, least) in pairs { XCTAssertGreaterThanOrEqual(ink.contrast(a, b), least, "\(a) on \(b)") }
        }
    }

    func testMoreContrastIsMoreForEveryPair() {
        for scheme in [Scheme.day, .night] {
            let (plain, increased) = (Ink.of(scheme), Ink.of(scheme, increasedContrast: true))
            for tint in [Tint.ink, .soft, .accent] {
                for paper in [Tint.paper, .water] {
                    XCTAssertGreaterThan(increased.contrast(tint, paper), plain.contrast(tint, paper), "\(tint) on \(paper)")
                }
            }
        }
    }

    func testAWordIsNeverBrokenWhileItCanBeMadeSmaller() {
        let fitted = plainLetters.fit("WOUND IN", em: 40, width: 100, height: 80, weight: .bold)
        XCTAssertTrue(fitted.whole)
        XCTAssertEqual(fitted.lines, ["WOUND", "IN"])
        XCTAssertLessThanOrEqual(plainLetters.width("WOUND", fitted.em, .bold), 100)
        XCTAssertLessThan(fitted.em, 40)
    }

    func testAFigureStaysOnTheLineOfItsUnit() {
        for width in stride(from: 60.0, to: 260, by: 10) {
            let fitted = plainLetters.fit("9 bites in 17 casts", em: 20, width: width, height: 200)
            for line in fitted.lines { XCTAssertFalse(line.hasSuffix("9") || line.hasSuffix("17"), "\(fitted.lines)") }
        }
        for width in stride(from: 60.0, to: 260, by: 10) {
            let fitted = plainLetters.fit("19 wraps of 2 m (38 m)", em: 20, width: width, height: 200)
            for line in fitted.lines { XCTAssertFalse(line.hasSuffix("2") || line.hasSuffix("38"), "\(fitted.lines)") }
        }
    }

    func testATextThatFindsNoRoomIsCutAndSaysSo() {
        let fitted = plainLetters.fit(String(repeating: "bite ", count: 80), em: 20, width: 60, height: 24)
        XCTAssertFalse(fitted.whole)
        XCTAssertEqual(fitted.em, 20 * Letters.smallest, accuracy: 1)
    }

    func testTheSentenceBelowIsMadeSmallerAndNotLeftOut() {
        let first = "Next: Dead tree, 22.5 wraps of 2 m (45 m)"
        let second = "Rested 53 min; 2 bites near, the last 3 m away, 37 min ago; a liner here. 9 bites so far: too few to be sure."
        for height in [60.0, 80, 120] {
            let place = Rect(left: 0, top: 0, width: 300, height: height)
            let marks = Words(letters: plainLetters).sentences(first, [second, "6 casts here."], em: 20, small: 16, in: place)
            let texts: [Letter] = marks.compactMap { if case .text(let letter) = $0 { letter } else { nil } }
            let said = texts.map(\.text).joined(separator: " ")
            XCTAssertTrue(said.hasPrefix("\(first) \(second)"), said)
            XCTAssertTrue(texts.allSatisfy { $0.at.y <= height }, "\(height)")
            XCTAssertGreaterThan(texts[0].em, texts[texts.count - 1].em)
        }
    }

    /// Bold letters are wider: a page that counts lines of medium letters has no room for the last line.
    func testLinesOfBoldTextAreCountedInBoldLetters() {
        let text = "Hold until 12 minutes, recast by 18 minutes: half of your bites came in these 6 minutes."
        for width in stride(from: 90.0, to: 400, by: 7) {
            for weight in [Weight.medium, .bold] {
                let drawn = plainLetters.layOut(text, em: 16, width: width, height: 1_000, weight: weight)
                XCTAssertEqual(plainLetters.lines(of: text, em: 16, width: width, weight: weight), drawn.lines.count, "\(weight) at \(width)")
            }
        }
    }

    func testALineBreakIsKept() {
        XCTAssertEqual(plainLetters.fit("pink\n4 bites", em: 10, width: 200, height: 80).lines, ["pink", "4 bites"])
    }

    /// Published sizes of two screens, from memory: 6.1 in of 1179 x 2556, 4.7 in of 750 x 1334.
    func testPointsInAMillimetreGiveTheGlassItsPublishedDiagonal() {
        for (w, h, scale, inches) in [(1179.0, 2556.0, 3.0, 6.12), (750, 1334, 2, 4.7), (1080, 2340, 2.88, 5.42)] {
            let mm = GlassMeasure.pointsPerMm(pixelWidth: w, pixelHeight: h, pixelsPerPoint: scale)
            let diagonal = (w * w + h * h).squareRoot() / scale / mm / 25.4
            XCTAssertEqual(diagonal, inches, accuracy: 0.03)
        }
    }
}
