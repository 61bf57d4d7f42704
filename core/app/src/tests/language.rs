//! The language of the phone: all of a screen, what is said of a tap, and what is refused.

use super::*;
use restwater_screen::Key;

#[test]
fn an_app_in_german_says_german_words_and_can_be_told_another_language() {
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
