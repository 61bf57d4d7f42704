import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// A clock that is set by hand.
final class HandClock: @unchecked Sendable {
    /// 17 January 2026, 9:00.
    static let nine: Int64 = 1_768_640_400_000
    private let lock = NSLock()
    private var ms = nine
    private var boot = 1
    private var setBy: Int64 = 0

    func forward(ms more: Int64) { lock.withLock { ms += more } }
    /// Sets the wall clock forward, or back; the monotonic clock goes on.
    func set(by ms: Int64) { lock.withLock { setBy += ms } }
    /// Restarts the phone.
    func reboot() { lock.withLock { boot += 1 } }

    var moment: Moment {
        lock.withLock {
            Moment(wallMs: ms + setBy, offsetMin: 0, zone: "Europe/London", monoMs: ms - Self.nine + 1_000, boot: "boot \(boot)", approxS: 0)
        }
    }
}

/// A phone on the bank: the real sheets and the real library with a folder of its own.
@MainActor
final class Bankside {
    let folder: URL
    let clock = HandClock()
    var measure: GlassMeasure
    let defaults = UserDefaults(suiteName: "restwater-\(UUID().uuidString)")!
    private(set) var state: RestwaterState
    private(set) var echoes: [Echo] = []
    private(set) var plans: [PhonePlan] = []

    init(measure: GlassMeasure = phone, files: any FileAccess = SystemFiles()) throws {
        folder = FileManager.default.temporaryDirectory.appendingPathComponent("restwater-\(UUID().uuidString)")
        self.measure = measure
        let clock = clock
        state = RestwaterState(core: try openLog(in: folder, clock: { clock.moment }), defaults: defaults, files: files, clock: { clock.moment })
        listen()
    }

    private func listen() {
        state.onEcho = { [unowned self] in echoes.append($0) }
        state.onPlan = { [unowned self] in plans.append($0) }
    }

    /// The process ends in the background and starts again on the same log.
    func restart() throws {
        let clock = clock
        state = RestwaterState(core: try openLog(in: folder, clock: { clock.moment }), defaults: defaults, clock: { clock.moment })
        listen()
    }

    var sheet: Sheet { Sheet.of(state.content, on: measure, letters: plainLetters) }
    var bank: BankView { state.content.bank! }

    /// The screen is read again, as it is each second, and the fans get their places.
    func look() async {
        state.refresh()
        await state.settled()
        state.placeFan(sheet.fan)
        state.placeScene(sheet.scene)
        await state.settled()
    }

    func wait(minutes: Int64 = 0, seconds: Int64 = 0, ms: Int64 = 0) async {
        clock.forward(ms: minutes * 60_000 + seconds * 1_000 + ms)
        await look()
    }

    /// Taps the piece with that tag; fails if there is none or it can't be tapped.
    func tap(_ tag: String, file: StaticString = #filePath, line: UInt = #line) async {
        guard let piece = sheet[tag] else { return XCTFail("no \(tag); there are \(sheet.pieces.map(\.tag))", file: file, line: line) }
        guard let ask = piece.ask, piece.enabled else { return XCTFail("\(tag) can't be tapped", file: file, line: line) }
        state.tap(ask)
        await state.settled()
        // Waits as an angler would after BACK and after a key that opens something: a tap within the time of a double tap
        // counts as one.
        if tag == "back" || opens(ask) { clock.forward(ms: 1_000) }
        await look()
    }

    /// Whether what a key asks for opens a screen, a leaf, a row, or the Bank.
    private func opens(_ ask: Ask) -> Bool {
        switch ask {
        case .key(.open), .swim(.open), .open, .row, .leaf, .match, .moreSwim, .moreKeys, .start: true
        case .fish(let key): if case .open = key.tap { true } else { key.closes }
        default: false
        }
    }

    /// A cold thumb taps twice in the place of a key: the second tap hits what has appeared there.
    func twice(_ tag: String, file: StaticString = #filePath, line: UInt = #line) async {
        guard let place = sheet[tag]?.place else { return XCTFail("no \(tag)", file: file, line: line) }
        let (x, y) = (place.left + place.width / 2, place.top + place.height / 2)
        for _ in 0..<2 {
            let under = sheet.pieces.last { piece in
                let at = piece.place
                return piece.ask != nil && piece.enabled && at.left <= x && x <= at.right && at.top <= y && y <= at.bottom
            }
            if let ask = under?.ask { state.tap(ask) }
            await state.settled()
            await wait(ms: 300)
        }
        clock.forward(ms: 1_000)
    }

    /// Opens what is behind MORE and turns its pages until this one appears.
    func turn(to tag: String, by turner: String) async {
        for _ in 0..<9 where sheet[tag] == nil { await tap(turner) }
    }

    func tap(_ key: Key, file: StaticString = #filePath, line: UInt = #line) async {
        await tap("key-\(String.tag(key))", file: file, line: line)
    }

    /// Opens a screen from the list of screens.
    func open(_ showing: Showing) async {
        await tap("screens")
        await turn(to: "open-\(String.tag(showing))", by: "next-page")
        await tap("open-\(String.tag(showing))")
    }

    /// Goes from an empty log to an open session.
    func start() async {
        await look()
        await tap(.start)
        await tap(.start)
        await wait(seconds: 30)
    }

    /// A common screen: 393 x 852 points at 460 pixels per inch, three per point.
    static let phone = GlassMeasure(
        width: 393, height: 852, pointsPerMm: GlassMeasure.pointsPerMm(pixelWidth: 1179, pixelHeight: 2556, pixelsPerPoint: 3),
        insetTop: 59, insetBottom: 34
    )
}

/// The letters that every phone measures with.
let plainLetters = Letters.face
