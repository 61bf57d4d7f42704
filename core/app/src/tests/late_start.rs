//! START tapped late: it can be set back while it is the last entry, and nothing is set back before it.

use super::learning::screens;
use super::*;
use restwater_screen::ChartKind;

const FIVE_AGO: Action = Action::TimeBack { minutes: 5 };
const ONE_AGO: Action = Action::TimeBack { minutes: 1 };

fn offers(phone: &mut Phone, ms: i64) -> bool {
    let keys = phone.bank(ms).keys;
    let is = |key| keys.iter().find(|view| view.key == key).unwrap().enabled;
    assert_eq!(is(Key::TimeBack), is(Key::TimeBackFive));
    is(Key::TimeBackFive)
}

#[test]
fn a_late_start_is_set_back_while_it_is_the_last_entry() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    assert!(offers(&mut phone, 1_000));
    let update = phone.tap(2_000, &FIVE_AGO).unwrap();
    assert_eq!(update.notice, "Time of start set back.");
    phone.look();
    phone.tap(4_000, &FIVE_AGO).unwrap();
    assert_eq!(phone.bank(5 * MIN).header.length, "15 min since the start");
    phone.tap(6 * MIN, &CAST).unwrap();
    phone.tap(6 * MIN + 1_000, &FIVE_AGO).unwrap();
    let session = phone.app().session().unwrap();
    assert_eq!(session.started.as_ref().unwrap().shown.wall_ms, at(-10 * MIN).wall_ms);
    assert_eq!(session.casts[0].start.at_ms, 11 * MIN, "one minute after the tap on START");
    for ms in [7 * MIN, 7 * MIN + 2_000] {
        phone.tap(ms, &Action::Undo).unwrap();
    }
    phone.tap(8 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.bank(9 * MIN).header.length, "14 min since the start", "one step of it is undone");
}

fn session_start(phone: &mut Phone) -> Uuid {
    phone.app().ops()[0].id
}

#[test]
fn the_first_entry_is_not_set_back_before_the_start() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    phone.tap(2 * MIN, &CAST).unwrap();
    let refused = phone.tap(2 * MIN + 1_000, &FIVE_AGO).unwrap_err();
    assert_eq!(
        phone.app().message(&refused),
        "That would put it before the entry at 22:13. Undo that one first, or set back less."
    );
    for ms in [2 * MIN + 2_000, 2 * MIN + 4_000] {
        phone.tap(ms, &ONE_AGO).unwrap();
    }
    assert!(phone.tap(2 * MIN + 6_000, &ONE_AGO).is_err());
    assert_eq!(phone.app().session().unwrap().casts[0].start.at_ms, 0);
    for first in [Action::Away, Action::EndSession] {
        let mut phone = Phone::new();
        phone.tap(0, &START).unwrap();
        phone.tap(2 * MIN, &first).unwrap();
        let last = phone.app().session().unwrap().last_timed.clone().unwrap();
        assert!(
            last.op != session_start(&mut phone)
                && last.in_the_way(120).is_none()
                && last.in_the_way(121).is_some(),
            "{first:?}"
        );
    }
}

/// An older version accepted such a time. The entry is doubtful, and is drawn where it is.
#[test]
fn a_cast_before_the_start_is_doubted_and_drawn_on_the_axis() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    phone.tap(2 * MIN, &CAST).unwrap();
    let (session, cast) = phone.app().session().map(|s| (s.id, s.casts[0].op)).unwrap();
    phone.app().write(session, Payload::TimeSet { back_s: 600 }, Some(cast), &at(3 * MIN)).unwrap();
    phone.tap(20 * MIN, &WOUND_IN).unwrap();
    let (waits, _) = screens(&mut phone, 21 * MIN);
    let drift = waits.charts.iter().find(|chart| chart.kind == ChartKind::Drift).unwrap();
    let dots: Vec<f64> = drift.dots.iter().map(|dot| dot.x).collect();
    assert_eq!(dots, [-8.0]);
    assert!(
        drift.x.from <= -8.0 && drift.x.ticks.iter().all(|tick| tick.at >= drift.x.from),
        "{:?}",
        drift.x
    );
    let doubts = &phone.app().session().unwrap().doubts;
    assert!(doubts.iter().any(|d| d.kind == restwater_session::DoubtKind::OutsideSession), "{doubts:?}");
}

/// Sessions of one phone follow each other: START can be set back to the end of the one before, also after a restart of the
/// phone, when only the wall clock knows how long ago that was.
#[test]
fn a_start_is_not_set_back_into_the_session_before() {
    for reboots in [0, 1] {
        let mut phone = started();
        phone.tap(MIN, &CAST).unwrap();
        phone.tap(20 * MIN, &WOUND_IN).unwrap();
        phone.tap(21 * MIN, &Action::EndSession).unwrap();
        // A START that was undone is no session.
        phone.tap(22 * MIN, &START).unwrap();
        phone.tap(23 * MIN, &Action::Undo).unwrap();
        phone.boots += reboots;
        phone.open();
        phone.tap(30 * MIN, &START).unwrap();
        phone.look();
        phone.tap(30 * MIN + 2_000, &FIVE_AGO).unwrap();
        phone.look();
        let refused = phone.tap(30 * MIN + 4_000, &FIVE_AGO).unwrap_err();
        assert_eq!(refused.kind(), ErrorKind::NotNow);
        assert_eq!(
            phone.app().message(&refused),
            "The session before ended at 22:34. This one can be set back to then and no further."
        );
        for _ in 0..4 {
            phone.look();
            phone.tap(31 * MIN, &ONE_AGO).unwrap();
        }
        assert_eq!(
            phone.app().session().unwrap().started.as_ref().unwrap().shown.wall_ms,
            at(21 * MIN).wall_ms
        );
        phone.look();
        assert!(phone.tap(31 * MIN, &ONE_AGO).is_err());
    }
}

/// A clock that was reset to 1970 doesn't know how long ago the session before ended.
#[test]
fn a_start_under_a_clock_that_was_reset_can_be_set_back() {
    let mut phone = started();
    phone.tap(21 * MIN, &Action::EndSession).unwrap();
    let reset = |ms: i64| Moment { wall_ms: ms, mono_ms: ms, boot: "boot-9".into(), ..at(0) };
    phone.app().act(&START, &reset(10 * MIN)).unwrap();
    phone.look();
    phone.app().act(&FIVE_AGO, &reset(11 * MIN)).unwrap();
    let started = phone.app().session().unwrap().started.as_ref().unwrap().shown.wall_ms;
    assert_eq!(started, 5 * MIN, "START at ten minutes of the reset clock, five minutes back");
}
