//! The Waits screen, "Did it matter?" and alternating tests, tap by tap.

use super::*;

pub(super) fn screens(
    phone: &mut Phone,
    ms: i64,
) -> (restwater_screen::WaitsView, restwater_screen::ChangesView) {
    let waits = match phone.app().screen(Which::Waits, &at(ms)).unwrap() {
        Screen::Waits(waits) => waits,
        other => panic!("{other:?}"),
    };
    match phone.app().screen(Which::Changes, &at(ms)).unwrap() {
        Screen::Changes(changes) => (waits, changes),
        other => panic!("{other:?}"),
    }
}

#[test]
fn waits_and_changes_can_be_opened_before_the_first_session() {
    let mut phone = Phone::new();
    let (waits, changes) = screens(&mut phone, 0);
    assert!(waits.charts.is_empty() && waits.counts.starts_with("Start a session"));
    assert!(changes.changes.is_empty() && changes.says.starts_with("Start a session"));
}

#[test]
fn which_casts_count_is_kept_until_it_is_changed() {
    let (mut phone, now) = with_bites(4);
    let left = |minutes| Action::Waits { tap: WaitsTap::TimeLeft { minutes } };
    let update = phone.tap(now + 1_000, &left(120)).unwrap();
    assert!(!update.changed, "a way of looking is no entry");
    let (waits, _) = screens(&mut phone, now + 2_000);
    assert_eq!(waits.counts, "4 bites in 8 casts, 137 min in the water.");
    assert_eq!(waits.forecast.map(|f| f.left.value), Some("120 min".into()));
    phone.tap(now + 3_000, &Action::Waits { tap: WaitsTap::Rod { rod: Some(2) } }).unwrap();
    let (waits, _) = screens(&mut phone, now + 4_000);
    assert_eq!(waits.counts, "No bites in 0 casts, 0 min in the water.");
    let refused = phone.tap(now + 5_000, &left(0)).unwrap_err();
    assert_eq!(phone.app().message(&refused), "\"0\" is not a value for left. Pick one of the choices.");
}

#[test]
fn earlier_sessions_are_shown_beside_today() {
    let (mut phone, now) = with_bites(6);
    phone.tap(now + 20 * MIN, &Action::EndSession).unwrap();
    phone.tap(now + 1_000 * MIN, &START).unwrap();
    phone.tap(now + 1_001 * MIN, &CAST).unwrap();
    phone.tap(now + 1_020 * MIN, &WOUND_IN).unwrap();
    let (waits, _) = screens(&mut phone, now + 1_021 * MIN);
    let earlier = waits.charts.iter().find(|c| c.kind == restwater_screen::ChartKind::Earlier).unwrap();
    assert!(
        earlier.notes[0].starts_with("This session: no bites in 1 cast. Earlier: 6 in 13"),
        "{:?}",
        earlier.notes
    );
}

#[test]
fn a_test_is_started_set_up_and_ended_by_taps() {
    let mut phone = started();
    let colour = |name: &str| tackle(TackleTap::Colour { name: name.into() });
    let mut now = MIN;
    for value in ["white", "white", "pink"] {
        phone.tap(now, &colour(value)).unwrap();
        phone.tap(now + 1_000, &CAST).unwrap();
        phone.tap(now + 10 * MIN, &WOUND_IN).unwrap();
        now += 12 * MIN;
    }
    let (_, changes) = screens(&mut phone, now);
    let key = changes.changes[0].start.clone().unwrap();
    phone.tap(now, &key.action).unwrap();
    let (_, changes) = screens(&mut phone, now);
    assert_eq!(changes.test.as_ref().map(|t| t.says.as_str()), Some("Next on rod 1: white."));
    assert!(changes.test.is_some_and(|t| t.steps.len() >= 8));
    let set = phone.tap(now + 1_000, &Action::SetNextStep).unwrap();
    assert_eq!(set.undo_label.as_deref().map(|l| l.starts_with("rig")), Some(true));
    assert_eq!(phone.app().session().unwrap().rods[0].rig.colour.as_deref(), Some("white"));
    phone.tap(now + 2_000, &Action::EndAlternation).unwrap();
    assert!(screens(&mut phone, now + 3_000).1.test.is_none());
    let refused = phone.tap(now + 4_000, &Action::EndAlternation).unwrap_err();
    assert_eq!(
        phone.app().message(&refused),
        "No test is running. Start one from a change under Did it matter?"
    );
    phone.tap(now + 5_000, &Action::Undo).unwrap();
    phone.open();
    assert!(screens(&mut phone, now + 6_000).1.test.is_some(), "undo brings it back, over a restart");
    let bait = |name: &str| FactorValue::Bait { name: name.into() };
    let never = Action::StartAlternation { a: bait("x"), b: bait("y") };
    assert_eq!(phone.tap(now + 7_000, &never).unwrap_err().kind(), ErrorKind::BadInput);
}
