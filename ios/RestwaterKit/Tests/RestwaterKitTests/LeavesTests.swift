import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Screens made of leaves: opening, turning, leaving and choosing, at every text size.
@MainActor
final class LeavesTests: XCTestCase, @unchecked Sendable {
    private let screens: [Showing] = [.bench, .book, .conditions, .cautions]

    func testEveryLeafIsReachedByItsKeyAndLeftByBack() async throws {
        for showing in screens {
            let day = try Bankside()
            await day.start()
            await day.open(showing)
            let leaves = try XCTUnwrap(day.leaves(showing)).leaves
            XCTAssertFalse(leaves.isEmpty)
            let opens = (leaves[0].list + leaves[0].keys).compactMap { key in
                if case .leaf(let id) = key.tap { id } else { nil }
            }
            for id in opens {
                let tag = "key-leaf-\(id)"
                await day.reach(tag)
                await day.tap(tag)
                XCTAssertEqual(day.state.content.paging.leaf, id)
                XCTAssertEqual(day.sheet["title"]?.spoken, leaves.first { $0.id == id }?.title)
                await day.tap("back")
                XCTAssertNil(day.state.content.paging.leaf)
                XCTAssertEqual(day.state.content.showing, showing)
            }
            await day.tap("back")
            XCTAssertEqual(day.state.content.showing, .bank)
        }
    }

    func testEverySentenceOfALeafIsOnOneOfItsPartsAtEveryTextSize() async throws {
        for scale in [1.0, 3.1] {
            for showing in screens {
                var measure = Bankside.phone
                measure.textScale = scale
                let day = try Bankside(measure: measure)
                await day.start()
                await day.open(showing)
                for leaf in try XCTUnwrap(day.leaves(showing)).leaves {
                    day.state.tap(.leaf(leaf.id))
                    var spoken = Set<String>()
                    // What large text divides between pages, put together again.
                    var whole: [String: [String]] = [:]
                    for _ in 0..<60 {
                        let sheet = day.sheet
                        spoken.formUnion(sheet.pieces.map(\.spoken))
                        for piece in sheet.pieces where whole[piece.tag]?.contains(piece.spoken) != true {
                            whole[piece.tag, default: []].append(piece.spoken)
                        }
                        guard sheet["next-page"] != nil else { break }
                        day.state.tap(.nextPart)
                    }
                    spoken.formUnion(whole.values.map { $0.joined(separator: " ") })
                    for text in [leaf.says, leaf.caution] + leaf.notes where !text.isEmpty {
                        XCTAssertTrue(spoken.contains(text), "\(showing) \(leaf.id) at \(scale): \(text)")
                    }
                    for line in leaf.lines {
                        XCTAssertTrue(spoken.contains { $0.hasPrefix(line.label) }, "\(showing) \(leaf.id) at \(scale): \(line.label)")
                    }
                }
            }
        }
    }

    func testEveryPageWithARangeHasOneScaleOnWhichItCanBeRead() async throws {
        for scale in [1.0, 2.0] {
            var measure = Bankside.phone
            measure.textScale = scale
            let day = try Bankside(measure: measure)
            for n in 0..<5 {
                await day.start()
                for bite in [true, n % 2 == 0] {
                    await day.tap(.cast)
                    await day.wait(minutes: 20)
                    await day.tap(bite ? .bite : .woundIn)
                    await day.wait(minutes: 2)
                    if bite { await day.tap(.lost) }
                    await day.wait(minutes: 1)
                }
                await day.turn(to: "key-END", by: "more")
                await day.tap(.end)
                await day.tap("back")
                await day.wait(minutes: 60)
            }
            await day.open(.book)
            let leaf = try XCTUnwrap(day.leaves(.book)?.leaves.first { $0.id == "rates" })
            let axis = try XCTUnwrap(leaf.axis)
            day.state.tap(.leaf(leaf.id))
            await day.state.settled()
            var drawn = 0
            for _ in 0..<30 {
                let ranges = day.sheet.pieces.filter { piece in
                    leaf.lines.indices.contains { piece.tag == "line-\($0)" && leaf.lines[$0].span != nil }
                }
                let scales = day.sheet.pieces.filter { $0.tag == "scale" }
                XCTAssertEqual(scales.count, ranges.isEmpty ? 0 : 1, "at \(scale)")
                drawn += ranges.count
                for range in ranges {
                    XCTAssertLessThanOrEqual(scales[0].place.bottom, range.place.top + 0.01)
                    XCTAssertEqual(strokes(range), strokes(scales[0]), "the same places as the figures")
                }
                guard day.sheet["next-page"] != nil, drawn < leaf.lines.filter({ $0.span != nil }).count else { break }
                await day.tap("next-page")
            }
            XCTAssertEqual(drawn, leaf.lines.filter { $0.span != nil }.count)
            XCTAssertGreaterThan(drawn, 3)
            XCTAssertGreaterThan(axis.ticks.count, 1)
        }
    }

    /// Where the soft upright strokes of a piece are.
    private func strokes(_ piece: Piece) -> [Double] {
        piece.marks.compactMap { mark in
            guard case .line(let outline, .soft, _) = mark, case .move(let from)? = outline.parts.first, case .line(let to)? = outline.parts.last,
                from.x == to.x
            else { return nil }
            return from.x
        }
    }
}

extension Bankside {
    func leaves(_ showing: Showing) -> LeavesView? {
        switch showing {
        case .bench: state.content.bench
        case .book: state.content.book
        case .conditions: state.content.conditions
        case .cautions: state.content.cautions
        default: nil
        }
    }

    /// Turns parts and pages until the piece is there.
    func reach(_ tag: String) async {
        for _ in 0..<12 where sheet[tag] == nil {
            await tap("next-page")
        }
    }
}
