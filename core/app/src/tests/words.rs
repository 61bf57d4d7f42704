//! What a German or a French angler reads: their own language, its decimal comma, its capitals, its word for a peg.

use super::match_day::tap;
use super::*;
use restwater_log::WeightUnit;
use restwater_screen::{BookTap, ConditionsTap, FishTap, MatchTap, RuleTap};
use restwater_sky::conditions::{Answer, WaterColour, WindFrom, WindStrength};
use serde_json::Value;

/// What a screen holds and no angler reads: tags, ids, and what a key sends.
const NOT_READ: [&str; 15] = [
    "tag", "id", "action", "tap", "set", "end", "into", "kit", "send", "screen", "sends", "key", "opens",
    "open", "kind",
];

/// The texts of a screen, each with its place.
fn texts(at: &str, value: &Value, found: &mut Vec<(String, String)>) {
    match value {
        Value::String(text) => found.push((at.to_owned(), text.clone())),
        Value::Array(all) => all.iter().for_each(|value| texts(at, value, found)),
        Value::Object(fields) => fields
            .iter()
            .filter(|(name, _)| !NOT_READ.contains(&name.as_str()))
            .for_each(|(name, value)| texts(&format!("{at}.{name}"), value, found)),
        _ => {}
    }
}

fn on_all_screens(phone: &mut Phone, ms: i64) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for &which in Which::ALL {
        let screen = serde_json::to_value(phone.app().screen(which, &at(ms)).unwrap()).unwrap();
        texts(&format!("{which:?}"), &screen, &mut found);
    }
    found
}

fn rule(rule: RuleTap) -> Action {
    tap(MatchTap::Rule { rule })
}

fn fish(tap: FishTap) -> Action {
    Action::Fish { cast: None, tap }
}

fn answer(answer: Answer) -> Action {
    Action::Conditions { tap: ConditionsTap::Answer { answer } }
}

/// A phone in a language, on a peg, with a match in kilograms and everything else filled in; and the time.
fn filled_in(tag: &str, peg: &str) -> (Phone, i64) {
    let mut phone = Phone::new();
    phone.app().set_language(tag);
    let bench = |tap| Action::Bench { tap };
    let mut actions = vec![
        typed(TypedInto::Water, "Mühlteich"),
        typed(TypedInto::Peg, peg),
        typed(TypedInto::Depth, "2.5 m"),
        typed(TypedInto::PlanPeg, &format!("{peg}: bread")),
        bench(BenchTap::Length { tenth_mm: 3_550 }),
        bench(BenchTap::Tied { count: 3 }),
        bench(BenchTap::Length { tenth_mm: 2_550 }),
        bench(BenchTap::Wanted { count: 5 }),
        bench(BenchTap::HookKnot { tenth_mm: 125 }),
        bench(BenchTap::AddSpool),
        bench(BenchTap::Rung { tenth_mm: 1_234 }),
        bench(BenchTap::Rung { tenth_mm: 2_345 }),
        bench(BenchTap::Splash),
        bench(BenchTap::Bottom),
        bench(BenchTap::Calibrate),
        bench(BenchTap::Height { tenth_mm: 1_234 }),
        START,
        answer(Answer::Water(55)),
        answer(Answer::Air(-15)),
        answer(Answer::Wind(WindStrength::Light)),
        answer(Answer::WindFrom(WindFrom::Sw)),
        answer(Answer::Cloud(4)),
        answer(Answer::Colour(WaterColour::Tinged)),
        rule(RuleTap::Begin),
        rule(RuleTap::Unit { unit: WeightUnit::Grams }),
        rule(RuleTap::MoveAllIn { minutes: -20 }),
        tackle(TackleTap::Reach { reach: Reach::Metres { cm: 2_450 } }),
        tackle(TackleTap::Bearing { cdeg: -1_250 }),
        tackle(TackleTap::PopUp { mm: 123 }),
        tackle(TackleTap::Lead { mg: 28_350 }),
        tackle(TackleTap::Colour { name: "rosa".into() }),
        typed(TypedInto::Bait { rod: 1 }, "Brot"),
    ];
    for colour in ["weiß", "rosa", "weiß", "rosa"] {
        let of_a_fish = [
            tackle(TackleTap::Colour { name: colour.into() }),
            CAST,
            BITE,
            LANDED,
            fish(FishTap::Weight { unit: WeightUnit::Grams, count: 3_500, guessed: false }),
        ];
        actions.extend(of_a_fish);
    }
    actions.extend([CAST, BITE, LANDED]);
    actions.extend([
        fish(FishTap::Digit { digit: 3 }),
        fish(FishTap::NextUnit),
        fish(FishTap::Digit { digit: 5 }),
    ]);
    actions.extend([
        tap(MatchTap::ScalesDigit { digit: 7 }),
        tap(MatchTap::ScalesUnit),
        tap(MatchTap::ScalesDigit { digit: 5 }),
    ]);
    let mut ms = 0;
    for action in actions {
        // A fall takes seconds, a cast a quarter of an hour.
        let takes = match action {
            BITE => 14 * MIN + 30_000,
            Action::Bench { tap: BenchTap::Bottom } => 4_300,
            _ => 3_000,
        };
        ms += takes;
        phone.tap(ms, &action).unwrap_or_else(|error| panic!("{action:?}: {error}"));
    }
    (phone, ms + 2_000)
}

#[test]
fn no_screen_of_a_german_or_french_phone_has_a_decimal_point() {
    for tag in ["de-DE", "fr-FR"] {
        let (mut phone, now) = filled_in(tag, "14");
        // Digits on both sides of a point, except in a date such as 14.11.2023 and in a time of day.
        let point = |text: &str| {
            let chars: Vec<char> = text.chars().collect();
            chars.windows(3).any(|c| c[0].is_ascii_digit() && c[1] == '.' && c[2].is_ascii_digit())
        };
        let mut all = on_all_screens(&mut phone, now);
        // The pack list of the next session is made of this one's leads.
        phone.tap(now + MIN, &Action::EndSession).unwrap();
        all.extend(on_all_screens(&mut phone, now + 2 * MIN));
        let found: Vec<_> = all.iter().filter(|(_, text)| point(text)).collect();
        assert!(found.is_empty(), "{tag}: {found:#?}");
        for figure in ["3,5 kg", "7,5 kg", "28,35 g"] {
            assert!(all.iter().any(|(_, text)| text.contains(figure)), "{tag}: {figure} is on no screen");
        }
    }
}

#[test]
fn german_nouns_keep_their_capital_within_a_sentence() {
    let (mut phone, now) = filled_in("de-DE", "14");
    let colour = |name: &str| FactorValue::Colour { name: name.into() };
    let test = Action::StartAlternation { a: colour("rosa"), b: colour("weiß") };
    phone.tap(now, &test).unwrap();
    phone.tap(now + MIN, &tackle(TackleTap::Colour { name: "weiß".into() })).unwrap();
    let mut all = on_all_screens(&mut phone, now + 2 * MIN);
    // The Book says the weather of the session that is open in it.
    let session = phone.app().session().unwrap().id;
    phone.tap(now + 3 * MIN, &Action::EndSession).unwrap();
    phone.tap(now + 4 * MIN, &Action::Book { tap: BookTap::Open { session } }).unwrap();
    all.extend(on_all_screens(&mut phone, now + 5 * MIN));
    let nouns = ["wasser", "luft", "wind ", "wolken", "farbe", "köder", "rute", "blei", "vorfach", "haken"];
    let starts =
        |text: &str, noun: &str| text.split(|c: char| !c.is_alphabetic()).any(|word| word == noun.trim());
    let found: Vec<_> = all.iter().filter(|(_, text)| nouns.iter().any(|noun| starts(text, noun))).collect();
    assert!(found.is_empty(), "{found:#?}");
    assert!(all.iter().any(|(_, text)| text.contains("Wasser 5,5 °C, Luft −1,5 °C")));
    assert!(all.iter().any(|(_, text)| text.contains("Test (Farbe)")));
}

#[test]
fn a_peg_that_was_typed_with_its_word_is_not_called_so_twice() {
    for (tag, peg) in [("en-GB", "Peg 14"), ("de-DE", "Platz 14"), ("fr-FR", "place 14")] {
        let word = peg.split(' ').next().unwrap().to_lowercase();
        let doubled = format!("{word}\u{a0}{word}");
        let (mut phone, now) = filled_in(tag, peg);
        let mut all = on_all_screens(&mut phone, now);
        phone.tap(now + MIN, &Action::EndSession).unwrap();
        all.extend(on_all_screens(&mut phone, now + 2 * MIN));
        let found: Vec<_> = all.iter().filter(|(_, text)| text.to_lowercase().contains(&doubled)).collect();
        assert!(found.is_empty(), "{tag}: {found:#?}");
        let named = |text: &str| text.to_lowercase().contains(&format!("{word}\u{a0}14"));
        assert!(all.iter().filter(|(_, text)| named(text)).count() > 3, "{tag}: the peg is named");
    }
}

#[test]
fn a_refusal_is_in_the_language_of_the_phone() {
    for (tag, same_moment, choice, long) in [
        (
            "de-DE",
            "Start und Schluss sind zur selben Zeit: prüfe beide Zeiten.",
            "„99“ geht hier nicht. Wähle einen der angebotenen Werte.",
            "Das ist zu lang: 500 Zeichen, höchstens 80.",
        ),
        (
            "fr-FR",
            "Le début et la fin sont au même moment\u{a0}: vérifiez les deux heures.",
            "«\u{a0}99\u{a0}» ne convient pas ici. Prenez un des choix.",
            "C'est trop long\u{a0}: 500 caractères, 80 au plus.",
        ),
    ] {
        let mut phone = started();
        phone.app().set_language(tag);
        phone.tap(2_000, &rule(RuleTap::Begin)).unwrap();
        let mut ms = 2_000;
        let refused = (0..10).find_map(|_| {
            ms += 3_000;
            phone.tap(ms, &rule(RuleTap::MoveAllOut { minutes: -60 })).err()
        });
        assert_eq!(phone.app().message(&refused.unwrap()), same_moment);
        let refused = phone.tap(MIN, &tackle(TackleTap::HookSize { size: 99 })).unwrap_err();
        assert_eq!(phone.app().message(&refused), choice);
        let note = format!("14: {}", "x".repeat(500));
        let refused = phone.tap(2 * MIN, &typed(TypedInto::PlanPeg, &note)).unwrap_err();
        assert_eq!(phone.app().message(&refused), long);
        // The bench says by itself what can't be done.
        let bench = |phone: &mut Phone, ms, tap| phone.tap(ms, &Action::Bench { tap }).unwrap();
        bench(&mut phone, 3 * MIN, BenchTap::Wanted { count: 5 });
        bench(&mut phone, 4 * MIN, BenchTap::HookWeight { mg: 5_000 });
        let said = on_all_screens(&mut phone, 5 * MIN);
        phone.app().set_language("en-GB");
        let english = on_all_screens(&mut phone, 5 * MIN);
        let what = ["tie it new", "pop up", "The bait lifts"];
        let left: Vec<_> = said.iter().filter(|(_, text)| what.iter().any(|w| text.contains(w))).collect();
        assert!(left.is_empty(), "{tag}: {left:#?}");
        assert!(english.iter().any(|(_, text)| text.contains("The bait lifts")), "{english:#?}");
    }
}
