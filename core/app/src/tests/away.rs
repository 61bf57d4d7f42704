//! Going away from the rods and coming back.

use super::*;
use restwater_screen::MendTap;
use restwater_session::{DoubtKind, waits_of};

#[test]
fn going_away_stops_the_clock_of_the_turn_round_and_a_cast_starts_it_again() {
    let mut phone = started();
    for (ms, action) in [(0, CAST), (12 * MIN, WOUND_IN), (14 * MIN, Action::Away)] {
        phone.tap(ms, &action).unwrap();
    }
    let bank = phone.bank(40 * MIN);
    assert_eq!((bank.rods[0].digits.as_str(), bank.rods[0].since.as_str()), ("26:00", "away since 22:27"));
    assert_eq!(bank.advice.headline, "Away from the rods.");
    let key = bank.keys.iter().find(|view| view.key == Key::Away).unwrap();
    assert_eq!((key.label.as_str(), key.tap.action()), ("I'M BACK", Some(&Action::Returned)));
    // The time can be set back, but not to before the rod was in.
    phone.tap(41 * MIN, &Action::TimeBack { minutes: 1 }).unwrap();
    assert_eq!(phone.bank(41 * MIN).rods[0].since, "away since about 22:26");
    assert!(phone.tap(42 * MIN, &Action::TimeBack { minutes: 5 }).is_err());
    phone.tap(43 * MIN, &Action::Returned).unwrap();
    assert_eq!(phone.bank(44 * MIN).rods[0].digits, "1:00");
    phone.tap(45 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.bank(45 * MIN).rods[0].since, "away since about 22:26");
    phone.tap(46 * MIN, &CAST).unwrap();
    assert!(phone.app().session().unwrap().away().is_none());
}

#[test]
fn going_away_with_a_rod_out_and_coming_back_twice_are_refused() {
    let mut phone = started();
    phone.tap(0, &CAST).unwrap();
    let refused = phone.tap(MIN, &Action::Away).unwrap_err();
    assert_eq!(phone.app().message(&refused), "Rod 1 is out. Wind in before you go away.");
    assert!(phone.bank(MIN).keys.iter().any(|view| view.key == Key::Away && !view.enabled));
    phone.tap(2 * MIN, &WOUND_IN).unwrap();
    let refused = phone.tap(3 * MIN, &Action::Returned).unwrap_err();
    assert_eq!(phone.app().message(&refused), "You are not away. Tap AWAY first.");
    phone.tap(4 * MIN, &Action::Away).unwrap();
    assert!(phone.tap(5 * MIN, &Action::Away).is_err());
}

#[test]
fn a_forgotten_break_can_be_added_from_the_gap_it_left() {
    let mut phone = started();
    for start in [0, 15, 30, 45, 110] {
        phone.tap(start * MIN, &CAST).unwrap();
        phone.tap((start + 13) * MIN, &WOUND_IN).unwrap();
    }
    let doubts = phone.app().session().unwrap().doubts.clone();
    assert_eq!(doubts.iter().map(|doubt| doubt.kind).collect::<Vec<_>>(), [DoubtKind::LongGap]);
    let op = doubts[0].op;
    phone.tap(130 * MIN, &Action::Mend { op, tap: MendTap::WasAway }).unwrap();
    let session = phone.app().session().unwrap();
    assert_eq!(session.doubts, []);
    assert_eq!((session.breaks.len(), waits_of(session).len()), (1, 5));
    // From the wind-in at 58 min to a turn-round of 2 min before the splash at 110.
    let (from, to) = (session.breaks[0].from.at_ms, session.breaks[0].to.as_ref().unwrap().at_ms);
    assert_eq!((to - from) / MIN, 50);
    phone.tap(131 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.app().session().unwrap().doubts.len(), 1);
}

/// A gap with a logged break in it: either the break was longer, or a cast before or after it was forgotten.
#[test]
fn mending_a_gap_that_contains_a_break_does_not_count_its_minutes_twice() {
    let with_a_gap = || {
        let mut phone = started();
        for start in [0, 15, 30, 45] {
            phone.tap(start * MIN, &CAST).unwrap();
            phone.tap((start + 13) * MIN, &WOUND_IN).unwrap();
        }
        phone.tap(60 * MIN, &Action::Away).unwrap();
        phone.tap(80 * MIN, &Action::Returned).unwrap();
        phone.tap(140 * MIN, &CAST).unwrap();
        phone.tap(153 * MIN, &WOUND_IN).unwrap();
        let op = phone.app().session().unwrap().doubts[0].op;
        (phone, op)
    };
    let (mut phone, op) = with_a_gap();
    phone.tap(160 * MIN, &Action::Mend { op, tap: MendTap::WasAway }).unwrap();
    phone.tap(165 * MIN, &Action::EndSession).unwrap();
    let session = phone.app().session().unwrap();
    // The 60 min from the return to the splash are a break except for a turn-round of 2 min; the logged break
    // of 20 min counts once.
    assert_eq!(session.fished_min(), Some(165.0 - 20.0 - 58.0));

    let (mut phone, op) = with_a_gap();
    phone.tap(160 * MIN, &Action::Mend { op, tap: MendTap::AddCast }).unwrap();
    let session = phone.app().session().unwrap();
    let added = session.casts.iter().find(|cast| cast.start.at_ms > session.casts[3].start.at_ms).unwrap();
    let from = session.breaks[0].to.as_ref().unwrap();
    assert!(added.start.ms_since(from) >= 0, "it went out after the break");
    assert_eq!(waits_of(session).iter().map(|wait| wait.minutes() as i64).max(), Some(56));
}

/// Breaks may overlap if one is added afterwards; each minute still counts once.
#[test]
fn a_minute_in_two_breaks_counts_once() {
    let mut phone = started();
    for start in [0, 15, 30, 45, 110] {
        phone.tap(start * MIN, &CAST).unwrap();
        phone.tap((start + 13) * MIN, &WOUND_IN).unwrap();
    }
    let op = phone.app().session().unwrap().doubts[0].op;
    phone.tap(130 * MIN, &Action::Mend { op, tap: MendTap::WasAway }).unwrap();
    phone.tap(135 * MIN, &Action::EndSession).unwrap();
    assert_eq!(phone.app().session().unwrap().fished_min(), Some(85.0));
}

/// Rod 1 is in from 58 to 110 min, rod 2 is out for the given minutes.
fn with_rod_2_out(from: i64, to: i64) -> (Phone, Uuid) {
    let mut phone = rods::with_rods(2);
    for start in [0, 15, 30, 45] {
        phone.tap(start * MIN, &CAST).unwrap();
        phone.tap((start + 13) * MIN, &WOUND_IN).unwrap();
    }
    phone.tap(from * MIN, &Action::Cast { rod: 2 }).unwrap();
    phone.tap(to * MIN, &Action::WoundIn { rod: 2 }).unwrap();
    phone.tap(110 * MIN, &CAST).unwrap();
    phone.tap(123 * MIN, &WOUND_IN).unwrap();
    let doubts = &phone.app().session().unwrap().doubts;
    assert_eq!(doubts.iter().map(|doubt| doubt.kind).collect::<Vec<_>>(), [DoubtKind::LongGap]);
    let op = doubts[0].op;
    (phone, op)
}

fn offers_away(phone: &mut Phone, op: Uuid) -> bool {
    phone.tap(129 * MIN, &Action::OpenDoubt { op: Some(op) }).unwrap();
    match phone.app().screen(Which::Mend, &at(129 * MIN)).unwrap() {
        Screen::Mend(mend) => mend.open.unwrap().rows.iter().any(|row| row.tag == "away"),
        other => panic!("{other:?}"),
    }
}

/// Nobody is away while a bait is out; this also applies to a break that is added in the evening.
#[test]
fn a_break_added_in_the_evening_is_put_where_every_rod_was_in() {
    let away = |op| Action::Mend { op, tap: MendTap::WasAway };
    let (mut phone, op) = with_rod_2_out(60, 100);
    assert!(!offers_away(&mut phone, op));
    let refused = phone.tap(130 * MIN, &away(op)).unwrap_err();
    assert_eq!(phone.app().message(&refused), "Rod 2 was out in that gap. During a break every rod is in.");
    assert_eq!(phone.app().session().unwrap().breaks, []);
    let (mut phone, op) = with_rod_2_out(60, 70);
    assert!(offers_away(&mut phone, op));
    phone.tap(130 * MIN, &away(op)).unwrap();
    let rest = phone.app().session().unwrap().breaks[0].clone();
    // From where rod 2 was in, up to a turn-round of 2 min before rod 1 went out.
    assert_eq!((rest.from.at_ms / MIN, rest.to.unwrap().at_ms / MIN), (70, 108));
}
