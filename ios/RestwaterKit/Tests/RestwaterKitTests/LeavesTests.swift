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
