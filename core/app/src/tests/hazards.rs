//! The rule on dead fish, the welcome, the card of the day and night at dusk, after a restart, an import and
//! a change of the clock. `tests/tests/full_disk/main.rs` tests them on a full disk.

use super::clock_steps::{STEPS, WallStep, stepped};
use super::day_card::{day_taps, fish, leaf, leaf_at};
use super::match_day::in_match;
use super::*;
use restwater_screen::{BookTap, PhoneTap};

const DAY: i64 = 24 * 60 * MIN;

fn rule_shown(phone: &mut Phone, now: &Moment) -> String {
    let Screen::Match(view) = phone.app().screen(Which::Match, now).unwrap() else { panic!() };
    view.rows.into_iter().find(|row| row.tag == "said").unwrap().value
}

fn say_rule(phone: &mut Phone, text: &str, now: &Moment) {
    phone.app().act(&typed(TypedInto::MatchRule, text), now).unwrap();
}

/// The rule that a session in the log holds, whether it is shown or not.
fn rule_of(phone: &mut Phone, session: Uuid) -> String {
    restwater_session::fold(session, &phone.app().journal.store().ops_of(session).unwrap()).match_rule
}

#[test]
fn a_partners_rule_on_dead_fish_disappears_with_the_import_and_mine_stays() {
    let mut theirs = Phone::with_ids_from(500);
    theirs.tap(30 * MIN, &START).unwrap();
    let begin =
        Action::Match { tap: restwater_screen::MatchTap::Rule { rule: restwater_screen::RuleTap::Begin } };
    theirs.tap(31 * MIN, &begin).unwrap();
    say_rule(&mut theirs, "dead fish don't count", &at(32 * MIN));
    let their_session = theirs.app().session().unwrap().id;
    let file = theirs.sent(33 * MIN);
    let mut mine = in_match();
    let id = mine.brought(&file, 34 * MIN);
    assert_eq!(rule_of(&mut mine, their_session), "dead fish don't count");
    assert_eq!(rule_shown(&mut mine, &at(35 * MIN)), "ask the organiser", "nothing was said of my match");
    say_rule(&mut mine, "dead fish count half", &at(36 * MIN));
    mine.tap(37 * MIN, &Action::UndoImport { id }).unwrap();
    assert_eq!(rule_of(&mut mine, their_session), "");
    assert_eq!(rule_shown(&mut mine, &at(38 * MIN)), "dead fish count half");
    mine.tap(39 * MIN, &Action::RedoImport { id }).unwrap();
    mine.open();
    assert_eq!(rule_of(&mut mine, their_session), "dead fish don't count");
    assert_eq!(rule_shown(&mut mine, &at(40 * MIN)), "dead fish count half");
}

#[test]
fn the_latest_rule_on_dead_fish_counts_whatever_the_clock_showed() {
    for (what, step) in STEPS {
        let mut phone = in_match();
        say_rule(&mut phone, "ask at the scales", &at(MIN));
        say_rule(&mut phone, "dead fish don't count", &stepped(step, 2 * MIN));
        assert_eq!(rule_shown(&mut phone, &stepped(step, 3 * MIN)), "dead fish don't count", "{what}");
        phone.open();
        assert_eq!(rule_shown(&mut phone, &stepped(step, 3 * MIN)), "dead fish don't count", "{what}");
        phone.app().act(&Action::Undo, &stepped(step, 4 * MIN)).unwrap();
        assert_eq!(rule_shown(&mut phone, &stepped(step, 5 * MIN)), "ask at the scales", "{what}");
    }
}

/// The welcome doesn't depend on the clock, so no clock is changed here.
#[test]
fn after_importing_a_partners_file_first_the_welcome_is_still_shown_once() {
    let mut theirs = started();
    theirs.tap(MIN, &CAST).unwrap();
    let file = theirs.sent(2 * MIN);
    let mut mine = Phone::with_ids_from(500);
    mine.brought(&file, 3 * MIN);
    assert_eq!(mine.app().first_screen().unwrap(), Which::Welcome, "nothing of mine was logged");
    let Screen::Welcome(cards) = mine.app().screen(Which::Welcome, &at(4 * MIN)).unwrap() else { panic!() };
    let starts = |leaf: &restwater_screen::Leaf| leaf.keys.iter().any(|key| key.tap.action() == Some(&START));
    assert!(
        cards.leaves.iter().all(starts),
        "the partner's session is not taken for one of mine that is open"
    );
    mine.open();
    assert_eq!(mine.app().first_screen().unwrap(), Which::Bank, "shown once");
}

/// A finished day of eight casts with four bites, and the moment at which it is looked at.
fn a_day() -> (Phone, i64) {
    let mut phone = started();
    let end = fish(&mut phone);
    phone.tap(end + MIN, &Action::EndSession).unwrap();
    (phone, end + 2 * MIN)
}

#[test]
fn the_card_of_the_day_is_the_same_after_a_restart_and_after_a_partners_later_day() {
    let (mut mine, now) = a_day();
    let card = leaf(&mut mine, Which::Day, now);
    assert_eq!(card.says, "4 bites in 8 casts, 4 fish landed.");
    mine.open();
    assert_eq!(leaf(&mut mine, Which::Day, now), card);
    let mut theirs = Phone::with_ids_from(500);
    theirs.tap(now, &START).unwrap();
    theirs.tap(now + MIN, &CAST).unwrap();
    theirs.tap(now + 2 * MIN, &Action::EndSession).unwrap();
    let file = theirs.sent(now + 3 * MIN);
    let id = mine.brought(&file, now + 4 * MIN);
    assert_eq!(leaf(&mut mine, Which::Day, now + 5 * MIN), card, "the partner's day is not my card");
    mine.open();
    assert_eq!(leaf(&mut mine, Which::Day, now + 5 * MIN), card);
    mine.tap(now + 6 * MIN, &Action::UndoImport { id }).unwrap();
    assert_eq!(leaf(&mut mine, Which::Day, now + 7 * MIN), card);
}

#[test]
fn the_card_of_the_day_counts_the_right_minutes_when_the_clock_is_set() {
    let (mut other, now) = a_day();
    let card = leaf(&mut other, Which::Day, now);
    for (what, step) in STEPS {
        let mut phone = started();
        for (n, (ms, action)) in day_taps().0.into_iter().enumerate() {
            let clock: WallStep = if n < 6 { |wall| wall } else { step };
            phone.app().act(&action, &stepped(clock, ms)).unwrap();
        }
        let end = now - MIN;
        let update = phone.app().act(&Action::EndSession, &stepped(step, end)).unwrap();
        assert_eq!(update.opens, Some(Which::Day), "{what}");
        assert_eq!(leaf_at(&mut phone, Which::Day, &stepped(step, now)), card, "{what}");
    }
}

/// 14 November 2023, 22:13 UTC: dark in the west of Europe, and day in New Zealand.
const HERE: Action = Action::PlacePeg { lat_e7: 520_000_000, lon_e7: 0, straight_out_cdeg: 0 };
const FAR_AWAY: Action =
    Action::PlacePeg { lat_e7: -400_000_000, lon_e7: 1_750_000_000, straight_out_cdeg: 0 };
const AT_DUSK: Action = Action::Phone { tap: PhoneTap::NightAtDusk };

fn scheme(phone: &mut Phone, now: &Moment) -> Scheme {
    phone.app().settings(now).scheme
}

#[test]
fn night_comes_at_dusk_on_a_water_whose_peg_was_placed_on_an_earlier_day_before_and_after_a_restart() {
    let mut phone = started();
    phone.tap(1_000, &HERE).unwrap();
    phone.tap(2_000, &AT_DUSK).unwrap();
    phone.tap(MIN, &Action::EndSession).unwrap();
    phone.tap(DAY, &START).unwrap();
    assert_eq!(scheme(&mut phone, &at(DAY + MIN)), Scheme::Night);
    phone.open();
    assert_eq!(scheme(&mut phone, &at(DAY + MIN)), Scheme::Night);
    assert_eq!(scheme(&mut phone, &at(DAY + 13 * 60 * MIN)), Scheme::Day);
}

#[test]
fn night_depends_on_my_peg_while_a_partners_day_is_open_in_the_book() {
    let mut theirs = Phone::with_ids_from(500);
    theirs.tap(0, &START).unwrap();
    theirs.tap(1_000, &FAR_AWAY).unwrap();
    let their_session = theirs.app().session().unwrap().id;
    let file = theirs.sent(MIN);
    let mut mine = started();
    mine.tap(1_000, &HERE).unwrap();
    mine.tap(2_000, &AT_DUSK).unwrap();
    let id = mine.brought(&file, 2 * MIN);
    assert_eq!(scheme(&mut mine, &at(3 * MIN)), Scheme::Night);
    mine.tap(4 * MIN, &Action::Book { tap: BookTap::Open { session: their_session } }).unwrap();
    assert_eq!(scheme(&mut mine, &at(5 * MIN)), Scheme::Night, "it is dark where I sit");
    mine.tap(6 * MIN, &Action::UndoImport { id }).unwrap();
    assert_eq!(scheme(&mut mine, &at(7 * MIN)), Scheme::Night);
}

/// The sun depends on the time of day, and so on the wall clock. If a flat battery set that to 1970, the
/// session's own time is used instead.
#[test]
fn a_clock_reset_to_1970_brings_no_night_at_noon_and_no_day_at_night() {
    let mut phone = started();
    phone.tap(1_000, &HERE).unwrap();
    phone.tap(2_000, &AT_DUSK).unwrap();
    for (after, light) in [(MIN, Scheme::Night), (14 * 60 * MIN, Scheme::Day)] {
        for shows in [0, 12 * 60 * MIN] {
            let now = Moment { wall_ms: shows, ..at(after) };
            assert_eq!(scheme(&mut phone, &now), light, "{after} ms, the clock shows {shows}");
        }
    }
    // A session that began with such a clock uses the right time as soon as the clock is set.
    let mut phone = Phone::new();
    let reset = |ms: i64| Moment { wall_ms: ms, ..at(ms) };
    for (ms, action) in [(0, START), (1_000, HERE), (2_000, AT_DUSK)] {
        phone.app().act(&action, &reset(ms)).unwrap();
    }
    assert_eq!(scheme(&mut phone, &at(MIN)), Scheme::Night);
    assert_eq!(scheme(&mut phone, &at(14 * 60 * MIN)), Scheme::Day);
}
