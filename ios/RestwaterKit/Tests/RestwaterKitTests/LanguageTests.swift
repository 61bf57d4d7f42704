import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// The app in the phone's language: the first of those the angler reads that the core has.
@MainActor
final class LanguageTests: XCTestCase, @unchecked Sendable {
    func testAGermanPhoneHearsGermanOnTheScreensInErrorsAndInTheWordsOfNoRecord() async throws {
        // Dutch is not there.
        try await Languages.$wanted.withValue("nl,de-AT,fr") {
            let day = try Bankside()
            await day.start()
            XCTAssertEqual(day.bank.keys.first { $0.key == .cast }?.label, "WURF")
            day.state.act(.bite(rod: 1))
            await day.state.settled()
            XCTAssertTrue(day.state.content.notice.hasPrefix("An Rute 1 ist nichts draußen"), day.state.content.notice)
            day.state.open(.phone)
            await day.state.settled()
            XCTAssertEqual(day.sheet["back"]?.spoken, padWords(language: "de").back.spoken)
            XCTAssertNotEqual(padWords(language: "de").back.spoken, padWords(language: "en").back.spoken)
            day.state.usePhone()
            XCTAssertEqual(day.state.content.notice, shellWords(language: "de").noReceiver)
        }
    }

    func testInFrenchARowAndItsChoicesHaveANoBreakSpaceBeforeTheColon() async throws {
        try await Languages.$wanted.withValue("fr-FR") {
            let day = try Bankside()
            await day.start()
            await day.open(.phone)
            let row = try XCTUnwrap(day.state.content.phone?.rows.first)
            XCTAssertEqual(day.sheet["row-\(row.tag)"]?.spoken, "\(row.label)\u{a0}: \(row.value)")
            await day.tap("row-\(row.tag)")
            XCTAssertEqual(day.sheet["row-label"]?.spoken, "\(row.label)\u{a0}: \(row.value)")
            for choice in row.choices {
                XCTAssertEqual(day.sheet["choice-\(row.tag)-\(choice.tag)"]?.spoken, "\(row.label)\u{a0}: \(choice.label)")
            }
        }
    }

    func testWhereTheCoreHasNoneOfThePhonesLanguagesItSaysEnglish() async throws {
        try await Languages.$wanted.withValue("nl-BE,cy") {
            let day = try Bankside()
            await day.start()
            XCTAssertEqual(day.bank.keys.first { $0.key == .cast }?.label, "CAST")
        }
    }

    func testAnErrorAtOpeningIsInThePhonesLanguage() async throws {
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("no-log-\(UUID().uuidString)")
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        try Data("this is no log".utf8).write(to: folder.appendingPathComponent("restwater.db"))
        let texts = try ["en-GB", "de-DE", "fr-FR"].map { language in
            var text = ""
            XCTAssertThrowsError(try openLog(in: folder, language: language)) { text = ($0 as? Refusal)?.text ?? "" }
            return text
        }
        XCTAssertEqual(Set(texts).count, 3, "\(texts)")
        XCTAssertFalse(texts.contains(""))
    }
}
