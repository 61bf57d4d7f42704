import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// iOS ends the process of an app in the background when it likes: a later tap means what it meant before.
@MainActor
final class NewProcessTests: XCTestCase, @unchecked Sendable {
    /// Two rods out, the second one chosen.
    private func secondRodChosen() async throws -> Handset {
        let phone = Handset()
        await phone.launch()
        try await phone.act(.setup(tap: .rods(rods: 2)))
        try await phone.begin()
        for action in [Action.cast(rod: 1), .cast(rod: 2), .chooseRod(rod: 2)] { try await phone.act(action) }
        return phone
    }

    private func fishOn(_ phone: Handset) async throws -> [Bool] {
        let state = try phone.state
        await phone.session.settled()
        state.refresh()
        await state.settled()
        return try XCTUnwrap(state.content.bank).rods.map { $0.state == .fishOn }
    }

    func testTheChosenRodIsStillChosen() async throws {
        let phone = try await secondRodChosen()
        await phone.kill()
        await phone.launch(nil)
        _ = try await phone.session.tap(.bite)
        phone.session.phase(.active)
        let on = try await fishOn(phone)
        XCTAssertEqual(on, [false, true])
    }

    func testAKeyOfTheLockScreenIsForTheRodThatItWasShownFor() async throws {
        let phone = try await secondRodChosen()
        let bite = try XCTUnwrap(phone.activities.list.first?.wait.keys.first { $0.id == "BITE" })
        XCTAssertEqual(bite.rod, 2)
        // The lock screen is not up to date, as when the process was ended before that.
        _ = try phone.state.line.core.act(action: .chooseRod(rod: 1), at: phone.clock.moment)
        await phone.kill()
        await phone.launch(nil)
        _ = try await phone.session.tap(bite)
        phone.session.phase(.active)
        let on = try await fishOn(phone)
        XCTAssertEqual(on, [false, true])
    }

    func testAKeyThatDoesNothingSaysWhyOnTheLockScreen() async throws {
        let phone = try await secondRodChosen()
        let bite = try XCTUnwrap(phone.activities.list.first?.wait.keys.first { $0.id == "BITE" })
        try await phone.act(.woundIn(rod: 2))
        await phone.kill()
        await phone.launch(nil)
        do {
            _ = try await phone.session.tap(bite)
            XCTFail("nothing is out")
        } catch {
            XCTAssertEqual(error.kind, .notNow)
            XCTAssertEqual(phone.activities.list.map(\.wait.text), [error.text])
        }
    }

    /// Without the log there is no plan from which the lock screen could be drawn.
    func testAKeyThatFindsTheLogHeldElsewhereSaysSoOnTheLockScreen() async throws {
        let phone = try await secondRodChosen()
        let shown = try XCTUnwrap(phone.activities.list.first?.wait)
        let bite = try XCTUnwrap(shown.keys.first { $0.id == "BITE" })
        await phone.kill()
        let clock = phone.clock
        let other = try openLog(in: phone.folder, clock: { clock.moment })
        await phone.launch(nil)
        do {
            _ = try await phone.session.tap(bite)
            XCTFail("it is held")
        } catch {
            XCTAssertEqual(error.kind, .busy)
            XCTAssertEqual(phone.activities.list.map(\.wait.text), [error.text])
        }
        try other.pause()
        _ = try await phone.session.tap(bite)
        XCTAssertNotEqual(phone.activities.list.first?.wait.title, shown.title)
    }

    /// What to do next time is being written on the page of the day before, while today's session runs.
    private func writing() async throws -> Handset {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        try await phone.act(.endSession)
        phone.clock.forward(ms: 3_600_000)
        try await phone.begin()
        let state = try phone.state
        await tap(.open(.book), phone)
        let days = try XCTUnwrap(state.content.book?.leaves.first?.list.filter { $0.tag.hasPrefix("open-") })
        XCTAssertEqual(days.count, 2)
        await tap(.key(try XCTUnwrap(days.last).tap), phone)
        await tap(.leaf("next"), phone)
        await tap(.typed(.plan, "begin far out"), phone)
        return phone
    }

    private func tap(_ ask: Ask, _ phone: Handset) async {
        guard let state = try? phone.state else { return XCTFail("no state") }
        state.tap(ask)
        await state.settled()
        phone.clock.forward(ms: 2_000)
        state.refresh()
        await state.settled()
    }

    /// The page for next time, in words.
    private func next(_ phone: Handset) throws -> String {
        let leaf = try XCTUnwrap(try phone.state.content.book?.leaves.first { $0.id == "next" })
        return String(describing: leaf)
    }

    func testWhatIsTypedComesBackWithTheSessionThatItIsAbout() async throws {
        let phone = try await writing()
        await phone.kill()
        phone.clock.forward(ms: 600_000)
        await phone.launch()
        let content = try phone.state.content
        XCTAssertEqual(content.showing, .book)
        XCTAssertEqual(content.paging.leaf, "next")
        XCTAssertEqual(try line(phone), "begin far out")
        await tap(.send(.typed(into: .plan, text: "begin far out")), phone)
        XCTAssertTrue(try next(phone).contains("begin far out"))
        await tap(.act(.book(tap: .close)), phone)
        XCTAssertFalse(try next(phone).contains("begin far out"), "it is not about today")
        XCTAssertEqual(try line(phone), "")
        await phone.kill()
        await phone.launch()
        XCTAssertEqual(try line(phone), "", "it was sent")
    }

    func testWhatIsTypedOutlivesABatteryThatDies() async throws {
        let phone = try await writing()
        try await phone.goesOut()
        await phone.launch()
        XCTAssertEqual(try phone.state.content.showing, .bank)
        XCTAssertEqual(try phone.state.content.drafts.list.map(\.text), ["begin far out"])
        try await reopen(phone)
        XCTAssertEqual(try line(phone), "begin far out")
        await tap(.send(.typed(into: .plan, text: "begin far out")), phone)
        try await phone.goesOut()
        await phone.launch()
        XCTAssertEqual(try phone.state.content.drafts.list, [], "it was sent")
    }

    /// The page for next time of the day before.
    private func reopen(_ phone: Handset) async throws {
        await tap(.open(.book), phone)
        let days = try XCTUnwrap(try phone.state.content.book?.leaves.first?.list.filter { $0.tag.hasPrefix("open-") })
        await tap(.key(try XCTUnwrap(days.last).tap), phone)
        await tap(.leaf("next"), phone)
    }

    /// A tap on the lock screen starts a process that never shows a screen.
    func testAProcessWithoutAScreenKeepsWhatWasTyped() async throws {
        let phone = try await writing()
        await phone.kill()
        await phone.launch(nil)
        _ = try await phone.session.tap(.cast)
        await phone.kill()
        phone.clock.forward(ms: 60_000)
        await phone.launch()
        XCTAssertEqual(try line(phone), "begin far out")
    }

    func testAScreenWhoseSubjectIsGoneDoesNotComeBack() async throws {
        let phone = try await writing()
        await phone.kill()
        try await anotherSessionBegins(phone)
        await phone.launch()
        XCTAssertEqual(try phone.state.content.showing, .bank)
        XCTAssertEqual(try phone.state.content.paging, Paging())
    }

    /// In a process of its own, as a shortcut could.
    private func anotherSessionBegins(_ phone: Handset) async throws {
        let clock = phone.clock
        let core = try openLog(in: phone.folder, clock: { clock.moment })
        _ = try core.act(action: .endSession, at: clock.moment)
        clock.forward(ms: 60_000)
        _ = try core.act(action: .startSession(setup: nil), at: clock.moment)
        try core.pause()
    }

    func testAScreenWithNothingTypedComesBackOnTheSameDayOnly() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        await tap(.open(.waits), phone)
        await phone.kill()
        phone.clock.forward(ms: 3_600_000)
        await phone.launch()
        XCTAssertEqual(try phone.state.content.showing, .waits)
        await phone.kill()
        phone.clock.forward(ms: 25 * 3_600_000)
        await phone.launch()
        XCTAssertEqual(try phone.state.content.showing, .bank)
    }

    func testTheSheetBehindMoreComesBack() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        await tap(.moreKeys, phone)
        await phone.kill()
        phone.clock.forward(ms: 3_600_000)
        await phone.launch()
        XCTAssertEqual(try phone.state.content.paging.keys, 1)
    }

    /// The log opens more slowly than the system passes the tap on.
    func testAnAlarmThatStartsTheProcessLeadsToTheBankWithItsRod() async throws {
        let phone = Handset()
        await phone.launch()
        let alarm = try await phone.castSecondRod()
        await tap(.open(.waits), phone)
        await phone.kill()
        phone.clock.forward(ms: 15 * 60_000)
        let gate = Flag(false)
        let launch = Task {
            await phone.launch(open: {
                while !gate.isSet { usleep(1_000) }
                return try openLog(in: $0, clock: $1)
            })
        }
        for _ in 0..<100 where phone.session == nil { try await Task.sleep(nanoseconds: 5_000_000) }
        let opened = phone.session.alarmOpened(alarm.systemId)
        try await Task.sleep(nanoseconds: 20_000_000)
        gate.set(true)
        await launch.value
        await opened.value
        await phone.session.settled()
        let content = try phone.state.content
        XCTAssertEqual(content.showing, .bank)
        XCTAssertEqual(content.bank?.rods.first { $0.chosen }?.rod, 2)
        XCTAssertTrue(content.notice.contains("Rod 2"), content.notice)
    }

    /// An alarm that the system itself rings is stopped, in a process without a screen: the next key is for its rod.
    func testAnAlarmThatWasStoppedChoosesItsRod() async throws {
        let phone = Handset()
        await phone.launch()
        let alarm = try await phone.castSecondRod()
        await phone.kill()
        phone.clock.forward(ms: 15 * 60_000)
        await phone.launch(nil)
        try await phone.session.alarmAnswered(alarm.systemId)
        // Without another await: an intent that returns may be suspended at once.
        XCTAssertEqual(phone.activities.list.map(\.wait.title).filter { $0.contains("Rod 2") }.count, 1, "\(phone.activities.list)")
        let clock = phone.clock
        let core = try openLog(in: phone.folder, clock: { clock.moment })
        guard case .bank(let bank) = try core.screen(which: .bank, now: clock.moment) else { return XCTFail("no bank") }
        XCTAssertEqual(bank.rods.first { $0.chosen }?.rod, 2)
        try core.pause()
        _ = try await phone.session.tap(.woundIn)
        try await phone.session.alarmAnswered(alarm.systemId)
    }

    /// A mail's file is opened with the app, which brings up the Files screen: the text is still on its own.
    func testWhatWasTypedIsThereAfterAFileOpenedTheApp() async throws {
        let phone = try await writing()
        await phone.kill()
        let letter = FileManager.default.temporaryDirectory.appendingPathComponent("letter-\(UUID().uuidString).txt")
        try Data("Dear all".utf8).write(to: letter)
        let launch = Task { await phone.launch() }
        for _ in 0..<100 where phone.session == nil { try await Task.sleep(nanoseconds: 5_000_000) }
        phone.session.takeIn(letter)
        await launch.value
        try await Task.sleep(nanoseconds: 50_000_000)
        await phone.session.settled()
        XCTAssertEqual(try phone.state.content.showing, .files)
        await tap(.open(.book), phone)
        await tap(.leaf("next"), phone)
        XCTAssertEqual(try line(phone), "begin far out")
    }

    /// What a living process shows in the line that is typed.
    private func line(_ phone: Handset) throws -> String? {
        let sheet = Sheet.of(try phone.state.content, on: Bankside.phone, letters: plainLetters)
        return sheet["typed-plan"]?.field?.value
    }

    /// The bait is out, a note is being typed, an alarm is tapped.
    func testWhatIsTypedOutlivesAnAlarm() async throws {
        let phone = try await writing()
        await tap(.back, phone)
        await tap(.back, phone)
        XCTAssertEqual(try phone.state.content.showing, .bank)
        await tap(.open(.book), phone)
        await tap(.leaf("next"), phone)
        XCTAssertEqual(try line(phone), "begin far out")
        await phone.session.alarmOpened(UUID()).value
        await phone.session.settled()
        await tap(.open(.book), phone)
        await tap(.leaf("next"), phone)
        XCTAssertEqual(try line(phone), "begin far out")
        // About today it would be another text.
        await tap(.act(.book(tap: .close)), phone)
        XCTAssertEqual(try line(phone), "")
    }

    /// A partner's file is being looked at, and the name of the partner typed.
    func testAFileThatWasBeingLookedAtComesBack() async throws {
        let other = try Bankside()
        await other.start()
        await other.tap(.cast)
        await other.wait(minutes: 5)
        await other.open(.files)
        await other.tap("send")
        guard case .share(let file)? = other.state.content.files.dialog else { return XCTFail("nothing to share") }
        let phone = Handset()
        await phone.launch()
        try phone.state.offer(URL(fileURLWithPath: file.path))
        await phone.session.settled()
        await tap(.files(.source("the other bank")), phone)
        await phone.kill()
        await phone.launch()
        let files = try phone.state.content.files
        XCTAssertEqual(files.page, .incoming)
        XCTAssertEqual(files.source, "the other bank")
        XCTAssertGreaterThan(files.incoming?.new ?? 0, 0)
        // The system empties its temporary folder as it likes.
        await phone.kill()
        Inbox.finished(try XCTUnwrap(files.path))
        await phone.launch()
        XCTAssertEqual(try phone.state.content.files.page, .send)
        XCTAssertEqual(try phone.state.content.notice, shellWords(language: phoneLanguage()).fileGone)
    }
}
