//! Entries that were tapped while the phone's clock was reset: every screen shows them by the time that a later entry puts right.

use super::clock_steps::{STEPS, stepped};
use super::*;
use restwater_log::{FeedKind, FeedMeasure};
use restwater_screen::FeedTap;

/// START and what follows, by the minute, under a clock that shows 1970.
fn under_a_reset_clock(taps: &[(i64, Action)]) -> Phone {
    let (_, reset) = STEPS[0];
    let mut phone = Phone::new();
    phone.app().act(&START, &stepped(reset, 0)).unwrap();
    for (minute, action) in taps {
        phone.app().act(action, &stepped(reset, minute * MIN)).unwrap();
    }
    phone
}

#[test]
fn the_latest_entries_have_the_times_that_the_other_screens_show() {
    let mut phone = under_a_reset_clock(&[(1, CAST)]);
    assert_eq!(phone.undoes().as_deref(), Some("cast 00:01"), "no time is known yet");
    phone.tap(11 * MIN, &WOUND_IN).unwrap();
    // The network has set the clock; the end of the cast shows by how much.
    for restarted in [false, true] {
        if restarted {
            phone.open();
        }
        let bank = phone.bank(12 * MIN);
        assert_eq!(bank.latest, ["wound in 22:24", "cast 22:14", "start 22:13"]);
    }
    phone.tap(13 * MIN, &Action::Undo).unwrap();
    phone.tap(14 * MIN, &BITE).unwrap();
    phone.tap(15 * MIN, &Action::Lost { rod: 1 }).unwrap();
    assert_eq!(phone.bank(16 * MIN).latest, ["lost 22:28", "bite 22:27", "cast 22:14"]);
}

#[test]
fn mend_names_an_entry_by_the_time_that_it_happened() {
    let hand = FeedTap::Measure { what: FeedKind::Loose, measure: FeedMeasure::Handful };
    let mut phone =
        under_a_reset_clock(&[(4, Action::Feed { tap: hand }), (5, Action::TimeBack { minutes: 1 })]);
    phone.tap(11 * MIN, &CAST).unwrap();
    let Screen::Mend(mend) = phone.app().screen(Which::Mend, &at(12 * MIN)).unwrap() else { panic!() };
    let line = mend.lines[0].clone();
    assert!(line.what.ends_with("22:16"), "{}", line.what);
    phone.tap(12 * MIN, &line.open).unwrap();
    let Screen::Mend(mend) = phone.app().screen(Which::Mend, &at(13 * MIN)).unwrap() else { panic!() };
    assert_eq!(mend.open.unwrap().what, line.what);
}
