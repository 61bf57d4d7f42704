import XCTest

@testable import RestwaterKit

/// A palm beside the thumb.
@MainActor
final class ContactsTests: XCTestCase, @unchecked Sendable {
    func testOneThumbAloneCounts() async {
        let contacts = Contacts()
        contacts.onGlass(1)
        XCTAssertTrue(contacts.tapCounts)
        contacts.onGlass(0)
        XCTAssertTrue(contacts.tapCounts, "the tap acts as the thumb lifts")
    }

    func testATapBesideAnotherContactDoesNotCountUntilAllHaveGone() async {
        let contacts = Contacts()
        contacts.onGlass(1)
        contacts.onGlass(2)
        XCTAssertFalse(contacts.tapCounts)
        contacts.onGlass(1)
        XCTAssertFalse(contacts.tapCounts, "the palm is still there")
        contacts.onGlass(0)
        XCTAssertFalse(contacts.tapCounts, "what lifted last was one of two")
        contacts.onGlass(1)
        XCTAssertTrue(contacts.tapCounts, "a new touch counts again")
    }

    func testAPalmCountsForNothingUntilItHasGone() async {
        let contacts = Contacts()
        contacts.onGlass(1, widestMm: 14)
        XCTAssertTrue(contacts.tapCounts, "a thumb")
        contacts.onGlass(1, widestMm: 41)
        contacts.onGlass(1, widestMm: 20)
        contacts.onGlass(0)
        XCTAssertFalse(contacts.tapCounts, "it was a palm for a while")
        contacts.onGlass(1, widestMm: 14)
        XCTAssertTrue(contacts.tapCounts)
    }

    func testATapWithoutAContactCountsWhateverTouchedTheScreenBefore() async {
        let clock = HandClock()
        let contacts = Contacts(monotonicMs: { clock.moment.monoMs })
        contacts.onGlass(1, widestMm: 41)
        XCTAssertFalse(contacts.tapCounts, "the palm is there")
        contacts.onGlass(0)
        XCTAssertFalse(contacts.tapCounts, "it is the palm that lifts")
        clock.forward(ms: 2_000)
        XCTAssertTrue(contacts.tapCounts, "Switch Control or VoiceOver")
    }
}
