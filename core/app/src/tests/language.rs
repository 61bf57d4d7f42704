//! The language of the phone: everything on a screen, the notice of a tap, and a refusal.

use super::*;
use restwater_screen::Key;

#[test]
fn an_app_in_german_shows_german_words_and_can_be_switched_to_another_language() {
    let mut phone = Phone::new();
    phone.app().set_language("de-AT");
    phone.tap(0, &Action::StartSession { setup: None }).unwrap();
    let cast = |phone: &mut Phone| {
        let bank = phone.bank(MIN);
        bank.keys.into_iter().find(|key| key.key == Key::Cast).unwrap().label
    };
    assert_eq!(cast(&mut phone), "WURF");
    let refused = phone.tap(MIN, &Action::Bite { rod: 1 }).unwrap_err();
    let german = phone.app().message(&refused);
    phone.app().set_language("fr");
    assert_eq!(cast(&mut phone), "LANCER");
    assert_ne!(phone.app().message(&refused), german);
    phone.app().set_language("nl-BE");
    assert_eq!(cast(&mut phone), "CAST", "a language that is not here");
}

/// Whatever was put in words before the language was changed: every screen says what it says on a phone that never was in English.
#[test]
fn another_language_reaches_every_screen_that_was_read_before() {
    let fished = |tag: &str| {
        let mut phone = Phone::new();
        phone.app().set_language(tag);
        phone.tap(-5_000, &typed(TypedInto::Water, "Mill pool")).unwrap();
        phone.tap(0, &START).unwrap();
        for i in 0..4 {
            phone.tap((1 + 20 * i) * MIN, &CAST).unwrap();
            phone.tap((11 + 20 * i) * MIN, &BITE).unwrap();
            phone.tap((12 + 20 * i) * MIN, &LANDED).unwrap();
        }
        phone
    };
    let (mut changed, mut french) = (fished("en-GB"), fished("fr"));
    let all = [
        Which::Bank,
        Which::Waits,
        Which::Changes,
        Which::Book,
        Which::Day,
        Which::Swim,
        Which::Mend,
        Which::Match,
        Which::Bench,
        Which::Files,
        Which::Phone,
        Which::Cautions,
    ];
    let now = at(90 * MIN);
    let read = |phone: &mut Phone| all.map(|which| phone.app().screen(which, &now).unwrap());
    let english = read(&mut changed);
    changed.app().set_language("fr");
    for (english, (mine, theirs)) in
        english.into_iter().zip(read(&mut changed).into_iter().zip(read(&mut french)))
    {
        assert_eq!(mine, theirs);
        assert_ne!(mine, english);
    }
}

/// A screen is finished wherever it comes from: what a tap returns has its spoken texts too.
#[test]
fn the_bank_after_a_tap_says_what_the_bank_says_when_asked() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    let update = phone.tap(MIN, &CAST).unwrap();
    assert_eq!(update.screen, phone.app().screen(Which::Bank, &at(MIN)).unwrap());
    let Screen::Bank(bank) = update.screen else { panic!() };
    assert!(bank.rods[0].spoken_since.starts_with(&bank.rods[0].spoken) && !bank.spot_spoken.is_empty());
}

/// Its cautions name no British rule or number as one of the angler's own, and what the angler chooses counts.
#[test]
fn a_phone_of_another_country_does_not_begin_with_englands_cautions() {
    use restwater_caution::table::Region;
    use restwater_screen::CautionsTap;
    for (tags, usual) in [
        ("en-GB", Region::England),
        ("en", Region::England),
        ("fr_GB,en-GB", Region::England),
        ("de-DE,en-GB", Region::Elsewhere),
        ("fr-FR", Region::Elsewhere),
        ("en-US", Region::Elsewhere),
        ("nl-BE,en-GB", Region::Elsewhere),
    ] {
        let mut phone = Phone::new();
        phone.app().set_language(tags);
        assert_eq!(phone.app().region.now(), usual, "{tags}");
        phone.tap(MIN, &Action::Cautions { tap: CautionsTap::Region { region: Region::Wales } }).unwrap();
        phone.open();
        phone.app().set_language(tags);
        assert_eq!(phone.app().region.now(), Region::Wales, "{tags}");
    }
}
