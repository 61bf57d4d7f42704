import XCTest

/// On a simulator or a phone: the installed app logs a cast with its own library, and the clock of its rod runs on.
/// Keys and pictures have the tags of ios/README.md as their accessibility identifiers.
@MainActor
final class CastUITests: XCTestCase {
    private lazy var app = XCUIApplication()

    override func tearDown() async throws { XCUIDevice.shared.orientation = .portrait }

    func testACastIsTappedAndItsClockGoesOn() {
        begin()
        let cast = app.buttons["key-CAST"]
        let before = clock
        cast.tap()
        XCTAssertTrue(app.buttons["key-BITE"].waitForExistence(timeout: Self.shortly))
        until("the clock says that a cast is out", within: Self.shortly) { clock != before }
        let first = clock
        // It is read out once a minute.
        until("the clock goes on from: \(first)", within: Self.aMinute) { clock != first }
        XCTAssertNotEqual(clock, before)
    }

    /// On either side every key is on the screen and can be tapped, beside the camera and not under it.
    func testOnItsSideEveryKeyIsThere() {
        begin()
        let upright = app.frame
        for side in [UIDeviceOrientation.landscapeLeft, .landscapeRight] {
            XCUIDevice.shared.orientation = side
            until("the screen is turned on its side", within: Self.shortly) { app.frame.width == upright.height }
            for tag in ["key-CAST", "screens", "key-UNDO"] {
                let key = app.buttons[tag]
                XCTAssertTrue(key.waitForExistence(timeout: Self.shortly), tag)
                XCTAssertTrue(key.isHittable, tag)
                XCTAssertTrue(app.frame.contains(key.frame), "\(tag) at \(key.frame)")
            }
            app.buttons["screens"].tap()
            XCTAssertTrue(app.buttons["back"].waitForExistence(timeout: Self.shortly))
            app.buttons["back"].tap()
        }
    }

    /// Opens the app on a Bank with a session.
    private func begin() {
        continueAfterFailure = false
        app.launch()
        let start = app.buttons["key-START"]
        let cast = app.buttons["key-CAST"]
        let skip = app.buttons["key-skip-"]
        until("the first screen shows a key", within: Self.shortly) { skip.exists || start.exists || cast.exists }
        // An empty log shows the welcome first.
        if skip.waitForExistence(timeout: Self.aMoment) { skip.tap() }
        // The first START leads to the set-up, the second begins the session. An open session has neither.
        for _ in 0..<2 where start.waitForExistence(timeout: Self.aMoment) {
            start.tap()
        }
        refuseNotifications()
        // A session of an earlier run may have a cast out.
        let woundIn = app.buttons["key-WOUND_IN"]
        if !cast.waitForExistence(timeout: Self.aMoment), woundIn.exists { woundIn.tap() }
        XCTAssertTrue(cast.waitForExistence(timeout: Self.shortly))
    }

    /// What VoiceOver says of the first rod's wait.
    private var clock: String { app.descendants(matching: .any)["clock-1"].firstMatch.label }

    private func until(_ what: String, within seconds: TimeInterval, _ there: () -> Bool) {
        let end = Date(timeIntervalSinceNow: seconds)
        while !there() {
            guard Date() < end else { return XCTFail("waited \(seconds) s in vain until \(what)") }
            RunLoop.current.run(until: Date(timeIntervalSinceNow: 0.5))
        }
    }

    /// The system's request comes when a session opens. Its first button refuses; the app works without the permission.
    private func refuseNotifications() {
        let question = XCUIApplication(bundleIdentifier: "com.apple.springboard").alerts.firstMatch
        // From iOS 26.1 on a refusal of alarms brings the question for notifications.
        for _ in 0..<2 where question.waitForExistence(timeout: Self.aMoment) {
            question.buttons.element(boundBy: 0).tap()
        }
    }

    private static let aMoment: TimeInterval = 5
    private static let shortly: TimeInterval = 20
    private static let aMinute: TimeInterval = 75
}
