import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// What the system rings and shows while processes end and start.
@MainActor
final class SystemTests: XCTestCase, @unchecked Sendable {
    func testACastWoundInFromTheLockScreenByANewProcessStopsRinging() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        try await phone.act(.cast(rod: 1))
        XCTAssertEqual(phone.alarms.pending.count, 1)
        await phone.kill()
        XCTAssertEqual(phone.alarms.pending.count, 1, "the system keeps it")
        phone.clock.forward(ms: 3 * 60_000)
        await phone.launch(nil)
        let said = try await phone.session.tap(.woundIn)
        // Without another await: an intent that returns may be suspended at once.
        XCTAssertEqual(phone.alarms.pending, [])
        XCTAssertEqual(phone.activities.list.map(\.wait), [try phone.state.plan.wait])
        XCTAssertFalse(said.isEmpty)
    }

    func testARefusedTapFromTheLockScreenCorrectsWhatAnEarlierProcessLeft() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        let old = PlannedAlarm(id: "rod-1", at: phone.clock.moment.date.addingTimeInterval(600), title: "of another process", text: "")
        try await phone.alarms.schedule(old)
        await phone.kill()
        await phone.launch(nil)
        do {
            _ = try await phone.session.tap(.woundIn)
            XCTFail("nothing is out")
        } catch {
            XCTAssertEqual(error.kind, .notNow)
        }
        XCTAssertEqual(phone.alarms.pending, [], "before the intent ends, also where it is refused")
    }

    func testTwoLaunchesShowOneLiveActivityAndItIsAdopted() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        try await phone.act(.cast(rod: 1))
        let first = try XCTUnwrap(phone.activities.list.first)
        await phone.kill()
        await phone.launch()
        XCTAssertEqual(phone.activities.list, [first])
        phone.clock.forward(ms: 60_000)
        try await phone.act(.woundIn(rod: 1))
        XCTAssertEqual(phone.activities.list.map(\.id), [first.id])
        XCTAssertNotEqual(phone.activities.list.first?.wait, first.wait)
        try await phone.act(.endSession)
        XCTAssertEqual(phone.activities.list, [])
    }

    func testALiveActivityIsRenewedBeforeTheSystemEndsItAndAfterASwipe() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        try await phone.act(.cast(rod: 1))
        let first = try XCTUnwrap(phone.activities.list.first)
        phone.clock.forward(ms: 7 * 3_600_000 + 40 * 60_000)
        phone.session.phase(.active)
        await phone.session.settled()
        let second = try XCTUnwrap(phone.activities.list.first)
        XCTAssertEqual(phone.activities.list.count, 1)
        XCTAssertNotEqual(second.id, first.id)
        phone.activities.endAll()
        phone.session.phase(.active)
        await phone.session.settled()
        XCTAssertEqual(phone.activities.list.map(\.isActive), [true])
        XCTAssertNotEqual(phone.activities.list.first?.id, second.id)
    }

    func testAnOldLiveActivityStaysWhereTheSystemRefusesANewOneInTheBackground() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        try await phone.act(.cast(rod: 1))
        let first = try XCTUnwrap(phone.activities.list.first)
        await phone.kill()
        phone.clock.forward(ms: 7 * 3_600_000 + 40 * 60_000)
        await phone.launch(nil)
        _ = try await phone.session.tap(.woundIn)
        XCTAssertEqual(phone.activities.list.map(\.id), [first.id])
        XCTAssertNotEqual(phone.activities.list.first?.wait, first.wait, "it says what is so now")
    }

    func testAnAlarmWithAnotherTimeIsAnotherAlarm() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        try await phone.act(.cast(rod: 1))
        let first = try XCTUnwrap(phone.alarms.pending.first)
        try await phone.act(.phone(tap: .alarm(alarm: .after(20))))
        XCTAssertEqual(phone.alarms.pending.map(\.id), [first.id])
        XCTAssertEqual(phone.alarms.pending.map { $0.at.timeIntervalSince(first.at) }, [300])
    }

    /// The system rings by the wall clock: an alarm of before would come an hour early.
    func testAnAlarmIsSetAnewWhenTheClockIsSetWhileTheAppIsInFront() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        try await phone.act(.cast(rod: 1))
        let first = try XCTUnwrap(phone.alarms.pending.first)
        let splash = try XCTUnwrap(phone.activities.list.first?.wait)
        phone.clock.set(by: 3_600_000)
        phone.session.clockWasSet()
        await phone.session.settled()
        XCTAssertEqual(phone.alarms.pending.map { $0.at.timeIntervalSince(first.at) }, [3_600])
        XCTAssertNotEqual(phone.activities.list.first?.wait, splash)
    }

    func testARingingAlarmIsSilencedOnlyByTheEndOfItsCast() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.act(.setup(tap: .rods(rods: 2)))
        try await phone.begin()
        try await phone.act(.cast(rod: 1))
        phone.clock.forward(ms: 15 * 60_000)
        phone.session.phase(.active)
        await phone.session.settled()
        XCTAssertEqual(phone.alarms.pending.count, 1, "it rings on when the app comes to the front")
        try await phone.act(.cast(rod: 2))
        XCTAssertEqual(phone.alarms.pending.count, 2, "and beside the other rod's key")
        try await phone.act(.phone(tap: .alarm(alarm: .after(14))))
        XCTAssertEqual(phone.alarms.pending.count, 2, "and where its minute has moved")
        await phone.kill()
        await phone.launch()
        XCTAssertEqual(phone.alarms.pending.count, 2, "and in a process that did not set it")
        try await phone.act(.woundIn(rod: 1))
        XCTAssertEqual(phone.alarms.pending.map(\.id), try phone.state.plan.alarms.map(\.id))
        XCTAssertEqual(phone.alarms.pending.count, 1)
    }

    func testAnAlarmThatIsDueInFrontSaysWhatItRingsFor() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        try await phone.act(.cast(rod: 1))
        let title = try XCTUnwrap(phone.alarms.pending.first).title
        phone.session.dueInFront(title)
        XCTAssertEqual(try phone.state.content.notice, title)
    }

    /// After the cast that brought these words.
    private func isSaidOnceASession(_ words: String, by phone: Handset) async throws {
        try await phone.act(.woundIn(rod: 1))
        try await phone.act(.cast(rod: 1))
        XCTAssertFalse(try phone.state.content.notice.contains(words), "not at every cast")
        try await phone.act(.endSession)
        try await phone.act(.startSession(setup: nil))
        try await phone.act(.cast(rod: 1))
        XCTAssertTrue(try phone.state.content.notice.hasSuffix(words), "again in the next session")
    }

    func testRefusedNotificationsAreReportedOnceBesideTheCoresNoticeAboutTheTap() async throws {
        let phone = Handset(alarms: PlayedAlarms(.refused))
        await phone.launch()
        try await phone.begin()
        let core = try await sameTapElsewhere()
        try await phone.act(.cast(rod: 1))
        let words = shellWords(language: phoneLanguage()).noNotifications
        let notice = try phone.state.content.notice
        XCTAssertTrue(notice.hasSuffix(words), notice)
        XCTAssertTrue(notice.hasPrefix(core), "\(notice) begins with \(core)")
        try await isSaidOnceASession(words, by: phone)
    }

    /// The system takes the alarm and rings it without a sound.
    func testSoundsThatAreOffAreReportedOnceASessionAndTheAlarmIsSetAllTheSame() async throws {
        let phone = Handset(alarms: PlayedAlarms(.silent))
        await phone.launch()
        try await phone.begin()
        let words = shellWords(language: phoneLanguage()).alarmSoundsOff
        XCTAssertFalse(try phone.state.content.notice.contains(words), "nothing is to ring yet")
        let core = try await sameTapElsewhere()
        try await phone.act(.cast(rod: 1))
        XCTAssertEqual(phone.alarms.pending.count, 1)
        let notice = try phone.state.content.notice
        XCTAssertTrue(notice.hasPrefix(core) && notice.hasSuffix(words), notice)
        try await isSaidOnceASession(words, by: phone)
    }

    func testSilentNotificationsDoNotMatterWhereTheSystemsOwnAlarmsRing() async throws {
        let (system, notifications) = (PlayedAlarms(), PlayedAlarms(.silent))
        let alarm = PlannedAlarm(id: "rod-1", at: Date(timeIntervalSince1970: 2_000_000_000), title: "", text: "")
        let reconciler = Reconciler(alarms: [system, notifications], activities: PlayedActivities())
        var told = 0
        reconciler.onAlarmsSilent = { told += 1 }
        reconciler.carryOut(PhonePlan(keepsAwake: false, wait: nil, alarms: [alarm]))
        await reconciler.settled()
        XCTAssertEqual(told, 0)
        system.declines = ["rod-1"]
        let other = PlannedAlarm(id: "rod-1", at: Date(timeIntervalSince1970: 2_000_000_060), title: "", text: "")
        reconciler.carryOut(PhonePlan(keepsAwake: false, wait: nil, alarms: [other]))
        await reconciler.settled()
        XCTAssertEqual([told, notifications.pending.count], [1, 1])
    }

    /// What the core says about a first cast.
    private func sameTapElsewhere() async throws -> String {
        let other = Handset()
        await other.launch()
        try await other.begin()
        try await other.act(.cast(rod: 1))
        return try other.state.content.notice
    }

    func testTheAnglerIsAskedInFrontWithASessionOpenAndNeverInTheBackgroundOrWithAFishOn() async throws {
        let phone = Handset(alarms: PlayedAlarms(.notAsked))
        await phone.launch()
        XCTAssertEqual(phone.alarms.requests, 0, "no session is open")
        await phone.kill()
        await phone.launch(nil)
        try await phone.act(.startSession(setup: nil))
        XCTAssertEqual(phone.alarms.requests, 0, "in the background")
        try await phone.act(.cast(rod: 1))
        try await phone.act(.bite(rod: 1))
        phone.session.phase(.active)
        await phone.session.settled()
        XCTAssertEqual(phone.alarms.requests, 0, "a fish is on")
        try await phone.act(.lost(rod: 1))
        await Task.yield()
        XCTAssertEqual(phone.alarms.requests, 1)
    }

    func testTheFirstCentreThatIsAllowedRingsAndNoOther() async throws {
        let (system, notifications) = (PlayedAlarms(.refused), PlayedAlarms())
        let alarm = PlannedAlarm(id: "rod-1", at: Date(timeIntervalSince1970: 2_000_000_000), title: "", text: "")
        let reconciler = Reconciler(alarms: [system, notifications], activities: PlayedActivities())
        let plan = PhonePlan(keepsAwake: false, wait: nil, alarms: [alarm])
        reconciler.carryOut(plan)
        await reconciler.settled()
        XCTAssertEqual([system.pending, notifications.pending], [[], [alarm]])
        system.change(to: .granted)
        reconciler.carryOut(plan)
        await reconciler.settled()
        XCTAssertEqual([system.pending, notifications.pending], [[alarm], []])
    }

    func testAnAlarmThatOnePartOfTheSystemDoesNotTakeGoesToTheNextAndKeepsNoOtherOut() async throws {
        let (system, notifications) = (PlayedAlarms(), PlayedAlarms())
        system.declines = ["rod-1"]
        let alarms = ["rod-1", "rod-2"].map { PlannedAlarm(id: $0, at: Date(timeIntervalSince1970: 2_000_000_000), title: "", text: "") }
        let reconciler = Reconciler(alarms: [system, notifications], activities: PlayedActivities())
        var failed: [String] = []
        reconciler.onAlarmFailed = { failed.append($0.id) }
        let plan = PhonePlan(keepsAwake: false, wait: nil, alarms: alarms)
        for _ in 0..<2 {
            reconciler.carryOut(plan)
            await reconciler.settled()
        }
        XCTAssertEqual([system.pending.map(\.id), notifications.pending.map(\.id)], [["rod-2"], ["rod-1"]])
        XCTAssertEqual(failed, [])
        // When it rings there, it stays until its cast has ended.
        reconciler.carryOut(PhonePlan(keepsAwake: false, wait: nil, alarms: [alarms[1]], due: [alarms[0]]))
        await reconciler.settled()
        XCTAssertEqual(notifications.pending.map(\.id), ["rod-1"])
        reconciler.carryOut(PhonePlan(keepsAwake: false, wait: nil, alarms: [alarms[1]]))
        await reconciler.settled()
        XCTAssertEqual(notifications.pending, [])
    }

    func testAnAlarmThatNothingTakesIsReportedOnce() async throws {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        phone.alarms.declines = ["rod-1"]
        try await phone.act(.cast(rod: 1))
        let words = shellWords(language: phoneLanguage()).alarmNotSet
        let notice = try phone.state.content.notice
        XCTAssertTrue(notice.hasSuffix(words), notice)
        try await phone.act(.liner(rod: 1))
        XCTAssertFalse(try phone.state.content.notice.contains(words), "not at every tap")
    }

    func testATapOnAnAlarmOpensTheBankWithItsRod() async throws {
        let phone = Handset()
        await phone.launch()
        let alarm = try await phone.castSecondRod()
        phone.session.phase(.background)
        phone.clock.forward(ms: 15 * 60_000)
        phone.session.phase(.active)
        try phone.state.open(.files)
        await phone.session.alarmOpened(alarm.systemId).value
        await phone.session.settled()
        let content = try phone.state.content
        XCTAssertEqual(content.showing, .bank)
        XCTAssertEqual(content.bank?.rods.first { $0.chosen }?.rod, 2)
        XCTAssertTrue(content.notice.contains("Rod 2"), content.notice)
        await phone.session.alarmOpened(UUID()).value
        await phone.session.settled()
        XCTAssertEqual(try phone.state.content.bank?.rods.first { $0.chosen }?.rod, 2, "an alarm of long ago chooses nothing")
    }

    func testAFileThatCameWhileTheLogCouldNotBeOpenedIsShownOnceItCan() async throws {
        final class Once: @unchecked Sendable { var failed = false }
        let (phone, once) = (Handset(), Once())
        await phone.launch(open: { folder, clock in
            if once.failed { return try openLog(in: folder, clock: clock) }
            once.failed = true
            throw Refusal(kind: .busy, text: "another process holds it")
        })
        let letter = FileManager.default.temporaryDirectory.appendingPathComponent("letter-\(UUID().uuidString).txt")
        try Data("Dear all".utf8).write(to: letter)
        phone.session.takeIn(letter)
        try await Task.sleep(nanoseconds: 50_000_000)
        phone.session.phase(.active)
        await phone.session.opening.settled()
        await phone.session.settled()
        let content = try phone.state.content
        XCTAssertEqual(content.showing, .files)
        XCTAssertTrue(content.notice.contains("text"), content.notice)
    }

    func testAScreenThatCannotBeReadSaysSoOnceAndMakesNoSoundEachSecond() async throws {
        let phone = Handset()
        await phone.launch()
        let state = try phone.state
        state.open(.swim)
        for _ in 1...3 {
            state.refresh()
            await phone.session.settled()
        }
        XCTAssertFalse(state.content.notice.isEmpty, "no session is open")
        XCTAssertFalse(phone.echoes.contains(.refused))
        XCTAssertLessThanOrEqual(state.content.answers, 1)
    }

    func testTheKeyThatIsDueIsCastThenBiteThenLanded() async throws {
        let phone = Handset()
        await phone.launch(nil)
        do {
            _ = try await phone.session.tapNext()
            XCTFail("no session is open")
        } catch {
            XCTAssertEqual(error.kind, .notNow)
            XCTAssertFalse(error.text.isEmpty)
        }
        try await phone.act(.startSession(setup: nil))
        for (expected, minutes) in [(BankState.out, 12), (.fishOn, 2), (.landed, 1), (.out, 1)] as [(BankState, Int64)] {
            let said = try await phone.session.tapNext()
            XCTAssertFalse(said.isEmpty)
            XCTAssertEqual(try phone.state.content.bank?.state, expected)
            phone.clock.forward(ms: minutes * 60_000)
        }
        let howLong = try await phone.session.howLong()
        XCTAssertTrue(howLong.contains("one minute"), howLong)
        _ = try await phone.session.tap(.undo)
        XCTAssertEqual(try phone.state.content.bank?.state, .landed)
    }

    func testALogThatCouldNotBeReadOnALockedPhoneIsOpenedInFrontAndByTheNextTap() async throws {
        // Before the first unlock after a restart, the system lets no app read its files.
        let locked = Flag(true)
        let open: LogOpener = { folder, clock in
            if locked.isSet { throw CocoaError(.fileReadNoPermission) }
            return try openLog(in: folder, clock: clock)
        }
        let phone = Handset()
        await phone.launch(nil, open: open, readable: { !locked.isSet })
        let words = shellWords(language: phoneLanguage()).phoneLocked
        guard case .opening = phone.session.opening.stage else { return XCTFail("judged a log that can't be read") }
        XCTAssertEqual(phone.session.opening.trouble(on: Bankside.phone, letters: plainLetters)["trouble"]?.spoken, words)
        do {
            _ = try await phone.session.tap(.cast)
            XCTFail("tapped a locked log")
        } catch {
            XCTAssertEqual(error.text, words)
        }
        locked.set(false)
        phone.session.phase(.active)
        await phone.session.opening.settled()
        await phone.session.settled()
        XCTAssertNotNil(try phone.state.content.bank, "it is open, and knows that it is in the foreground")

        let third = Handset()
        locked.set(true)
        await third.launch(open: open, readable: { !locked.isSet })
        locked.set(false)
        third.session.unlocked()
        await third.session.opening.settled()
        XCTAssertNotNil(try third.state, "it opens by itself when the phone is unlocked")

        let second = Handset()
        locked.set(true)
        await second.launch(nil, open: open)
        guard case .failed = second.session.opening.stage else { return XCTFail("the files can be read, so it is another fault") }
        locked.set(false)
        do { _ = try await second.session.tap(.cast) } catch { XCTAssertEqual(error.kind, .notNow, "no session is open, but the log is") }
    }

    func testALogIsOpenedAndSavedOffTheMainThread() async throws {
        let (onMain, reads) = (Flag(false), Flag(false))
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("salvage-\(UUID().uuidString)")
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let time = HandClock()
        let opening = Opening(
            folder: folder, defaults: UserDefaults(suiteName: "salvage-\(UUID().uuidString)")!,
            // Both the opening and the salvage read the clock where they work.
            clock: {
                reads.set(true)
                if Thread.isMainThread { onMain.set(true) }
                return time.moment
            },
            open: { folder, clock in
                _ = clock()
                throw Refusal(kind: .damaged, text: "damaged")
            })
        opening.start()
        await opening.settled()
        XCTAssertTrue(reads.isSet)
        reads.set(false)
        opening.salvage()
        await opening.settled()
        XCTAssertTrue(reads.isSet, "it was salvaged")
        XCTAssertFalse(onMain.isSet)
    }
}

/// A flag that several threads read.
final class Flag: @unchecked Sendable {
    private let lock = NSLock()
    private var value: Bool
    init(_ value: Bool) { self.value = value }
    var isSet: Bool { lock.withLock { value } }
    func set(_ value: Bool) { lock.withLock { self.value = value } }
}
