import XCTest

/// The one path that has to work on every phone: begin a session, cast, and see the cast on the Bank. Not run here.
@MainActor
final class FirstCastTests: XCTestCase {
    func testASessionIsBegunAndACastIsLogged() {
        continueAfterFailure = false
        let app = XCUIApplication()
        app.launch()
        // The Bank's START opens the set-up, and its START begins the session.
        tap("key-START", in: app)
        tap("key-START", in: app)
        answerTheSystem()
        tap("key-CAST", in: app)
        XCTAssertTrue(app.buttons["key-BITE"].waitForExistence(timeout: 10), "a bait is out")
    }

    /// With a session open, the system may ask whether the app may ring.
    private func answerTheSystem() {
        let system = XCUIApplication(bundleIdentifier: "com.apple.springboard")
        for answer in ["Allow", "Allow"] where system.buttons[answer].waitForExistence(timeout: 4) { system.buttons[answer].tap() }
    }

    private func tap(_ tag: String, in app: XCUIApplication) {
        let key = app.buttons[tag]
        XCTAssertTrue(key.waitForExistence(timeout: 10), tag)
        key.tap()
    }
}
