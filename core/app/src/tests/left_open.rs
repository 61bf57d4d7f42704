//! The morning after an END that was forgotten.

use super::clock_steps::{STEPS, rebooted, stepped};
use super::match_day::in_match;
use super::rods::with_rods;
use super::*;
use restwater_screen::KeyWeight;

/// The next day; the session began at 22:13 on 14 Nov.
const MORNING: i64 = 12 * 60 * MIN;
/// Three weeks later, in the morning.
const WEEKS_LATER: i64 = 21 * 24 * 60 * MIN + 10 * 60 * MIN;

fn solid(phone: &mut Phone, ms: i64) -> Vec<Key> {
    let keys = phone.bank(ms).keys;
    keys.into_iter().filter(|key| key.weight == KeyWeight::Solid).map(|key| key.key).collect()
}

fn headline(phone: &mut Phone, ms: i64) -> String {
    let advice = phone.bank(ms).advice;
    assert_eq!(phone.app().watch(&at(ms)).text, advice.headline);
    advice.headline
}

#[test]
fn a_session_of_yesterday_with_every_rod_in_is_to_be_ended() {
    let mut phone = with_rods(2);
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(2 * MIN, &Action::Cast { rod: 2 }).unwrap();
    phone.tap(40 * MIN, &WOUND_IN).unwrap();
    assert!(!headline(&mut phone, MORNING).starts_with("Still open"), "rod 2 fishes through the night");
    phone.tap(41 * MIN, &Action::WoundIn { rod: 2 }).unwrap();
    assert_eq!(solid(&mut phone, 100 * MIN), [Key::Cast], "23:53, still the same day");
    assert_eq!(solid(&mut phone, 41 * MIN + 600 * MIN), [Key::Cast], "06:54, after a night's sleep");
    let advice = phone.bank(MORNING).advice;
    assert_eq!(advice.headline, "Still open since 14 Nov 2023.");
    assert_eq!(advice.detail, "END closes it, then START begins a new one.");
    assert_eq!(solid(&mut phone, MORNING), [Key::End]);
    assert_eq!(phone.app().watch(&at(MORNING)).next, None, "no cast without a look");
    let keys = phone.bank(MORNING).keys;
    assert!(keys.iter().any(|key| key.key == Key::Cast && key.enabled));
    // An angler who goes on fishing is not asked to end it.
    phone.tap(MORNING, &CAST).unwrap();
    assert!(!headline(&mut phone, MORNING + MIN).starts_with("Still open"));
    phone.tap(MORNING + 2 * MIN, &WOUND_IN).unwrap();
    assert_eq!(solid(&mut phone, MORNING + 3 * MIN), [Key::Cast]);
}

#[test]
fn a_session_that_nothing_was_cast_in_a_break_and_a_match_have_words_of_their_own() {
    let mut phone = started();
    assert_eq!(headline(&mut phone, MORNING), "Still open since 14 Nov 2023.");
    phone.tap(MIN, &Action::Away).unwrap();
    assert_eq!(headline(&mut phone, MORNING), "Away from the rods.");
    let mut phone = in_match();
    assert!(!headline(&mut phone, 200 * MIN).starts_with("Still open"), "a match over midnight");
    assert_eq!(headline(&mut phone, MORNING), "All out.");
}

/// The session began at 22:13; a clock that is set later moves it to another day only as far as the time itself does.
#[test]
fn a_clock_that_was_set_since_start_does_not_make_the_session_one_of_yesterday() {
    let (_, next_year) = STEPS[1];
    let bank = |phone: &mut Phone, now: &Moment| match phone.app().screen(Which::Bank, now).unwrap() {
        Screen::Bank(bank) => bank,
        other => panic!("{other:?}"),
    };
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.app().act(&WOUND_IN, &stepped(next_year, 5 * MIN)).unwrap();
    let seen = bank(&mut phone, &stepped(next_year, 100 * MIN));
    assert!(!seen.advice.headline.starts_with("Still open"), "{}", seen.advice.headline);
    let seen = bank(&mut phone, &stepped(next_year, MORNING));
    assert!(seen.advice.headline.starts_with("Still open"), "{}", seen.advice.headline);
    // START was tapped while the clock was a year ahead.
    let mut ahead = Phone::new();
    ahead.app().act(&START, &stepped(next_year, 0)).unwrap();
    ahead.tap(MIN, &CAST).unwrap();
    ahead.tap(5 * MIN, &WOUND_IN).unwrap();
    let seen = bank(&mut ahead, &at(100 * MIN));
    assert!(!seen.advice.headline.starts_with("Still open"), "{}", seen.advice.headline);
    assert!(headline(&mut ahead, MORNING).starts_with("Still open"));
}

/// END was forgotten three weeks ago, and the phone was restarted this morning.
#[test]
fn a_session_left_open_for_weeks_is_to_be_ended_after_a_restart_too() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(30 * MIN, &WOUND_IN).unwrap();
    let now = rebooted(WEEKS_LATER, WEEKS_LATER - 60 * MIN);
    let Screen::Bank(bank) = phone.app().screen(Which::Bank, &now).unwrap() else { panic!() };
    assert_eq!(bank.advice.headline, "Still open since 14 Nov 2023.");
    assert_eq!(phone.app().watch(&now).text, bank.advice.headline);
}

#[test]
fn a_match_left_open_for_weeks_is_over_after_a_restart_too() {
    let mut phone = in_match();
    phone.tap(90 * MIN, &CAST).unwrap();
    phone.tap(110 * MIN, &WOUND_IN).unwrap();
    let now = rebooted(WEEKS_LATER, WEEKS_LATER - 60 * MIN);
    let Screen::Match(view) = phone.app().screen(Which::Match, &now).unwrap() else { panic!() };
    assert_eq!(view.phase, restwater_screen::MatchPhase::Over);
    assert_eq!(phone.app().watch(&now).alarms, []);
}

/// AWAY on the way to the van, and END forgotten: a break lasts a night at the longest, not weeks.
#[test]
fn a_session_left_open_in_a_break_is_to_be_ended_too() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(30 * MIN, &WOUND_IN).unwrap();
    phone.tap(31 * MIN, &Action::Away).unwrap();
    assert_eq!(headline(&mut phone, MORNING), "Away from the rods.");
    assert_eq!(headline(&mut phone, WEEKS_LATER), "Still open since 14 Nov 2023.");
    assert_eq!(solid(&mut phone, WEEKS_LATER), [Key::End]);
    assert_eq!(phone.app().watch(&at(WEEKS_LATER)).next, None);
    let now = rebooted(WEEKS_LATER, WEEKS_LATER - 60 * MIN);
    let Screen::Bank(bank) = phone.app().screen(Which::Bank, &now).unwrap() else { panic!() };
    assert_eq!(bank.advice.headline, "Still open since 14 Nov 2023.", "after a restart of the phone");
}
