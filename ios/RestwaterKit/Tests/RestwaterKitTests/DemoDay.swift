import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// The demo day, or another, played through the state, with its screens at each of its pictures.
@MainActor
final class DemoDay {
    let taps: [DayTap]
    private let clock: DayClock
    let state: RestwaterState

    init(_ name: String = "demo", language: String = "en-GB") throws {
        taps = try readDay(text: try Self.tree("tests/days/\(name).jsonl"))
        let clock = DayClock(taps[0].at)
        self.clock = clock
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("\(name)-\(UUID().uuidString)")
        let defaults = UserDefaults(suiteName: "\(name)-\(UUID().uuidString)")!
        state = RestwaterState(core: try openLog(in: folder, clock: { clock.now }, language: language), defaults: defaults, clock: { clock.now })
    }

    func play(
        on measure: GlassMeasure, screens: [Showing] = Showing.allCases, each: (String, Showing, Sheet) throws -> Void
    ) async throws {
        for tap in taps {
            clock.now = tap.at
            if let action = tap.action { state.act(action) }
            await state.settled()
            guard let picture = tap.picture else { continue }
            for showing in screens {
                state.open(showing)
                await state.settled()
                let sheet = { Sheet.of(self.state.content, on: measure, letters: plainLetters) }
                state.placeFan(sheet().fan)
                state.placeScene(sheet().scene)
                await state.settled()
                try each(picture, showing, sheet())
            }
        }
    }

    /// The screen that the day player and Android's tests use: 6.1 in, 1080 x 2340.
    static let commonGlass = GlassMeasure(width: 1080, height: 2340, pointsPerMm: 16.634, insetTop: 89, insetBottom: 63)

    private static let root = (0..<5).reduce(URL(fileURLWithPath: #filePath)) { at, _ in at.deletingLastPathComponent() }

    /// A file of the tree.
    static func tree(_ path: String) throws -> String {
        try String(contentsOf: root.appendingPathComponent(path), encoding: .utf8)
    }

    /// Writes a text into the tree, for inspection after the tests.
    static func leave(_ text: String, at path: String) throws {
        let file = root.appendingPathComponent(path)
        try FileManager.default.createDirectory(at: file.deletingLastPathComponent(), withIntermediateDirectories: true)
        try text.write(to: file, atomically: true, encoding: .utf8)
    }
}

/// The clock of a day that is played.
private final class DayClock: @unchecked Sendable {
    private let lock = NSLock()
    private var moment: Moment
    init(_ moment: Moment) { self.moment = moment }
    var now: Moment {
        get { lock.withLock { moment } }
        set { lock.withLock { moment = newValue } }
    }
}
