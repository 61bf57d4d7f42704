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
    assert_eq!(waits.counts, "4 bites in 8 casts this session, 2 h 17 in the water.");
    assert_eq!(waits.forecast.map(|f| f.left.value), Some("120 min".into()));
    phone.tap(now + 3_000, &Action::Waits { tap: WaitsTap::Rod { rod: Some(2) } }).unwrap();
    let (waits, _) = screens(&mut phone, now + 4_000);
    assert_eq!(waits.counts, "No bites in 0 casts this session, 0 min in the water.");
    let refused = phone.tap(now + 5_000, &left(0)).unwrap_err();
    assert_eq!(phone.app().message(&refused), "\"0\" can't be used here. Pick one of the choices.");
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
    phone.tap(now + 1_000, &Action::SetNextStep).unwrap();
    assert_eq!(phone.undoes().as_deref().map(|l| l.starts_with("rig")), Some(true));
    assert_eq!(phone.app().session().unwrap().rods[0].rig.colour.as_deref(), Some("white"));
    phone.tap(now + 2_000, &Action::EndAlternation).unwrap();
    assert!(screens(&mut phone, now + 3_000).1.test.is_none());
    let refused = phone.tap(now + 4_000, &Action::EndAlternation).unwrap_err();
    assert_eq!(phone.app().message(&refused), "No test is running. Start one from a change under Changes.");
    phone.tap(now + 5_000, &Action::Undo).unwrap();
    phone.open();
    assert!(screens(&mut phone, now + 6_000).1.test.is_some(), "undo brings it back, over a restart");
    let bait = |name: &str| FactorValue::Bait { name: name.into() };
    let never = Action::StartAlternation { a: bait("x"), b: bait("y") };
    assert_eq!(phone.tap(now + 7_000, &never).unwrap_err().kind(), ErrorKind::BadInput);
}

fn count(tap: WaitsTap) -> Action {
    Action::Waits { tap }
}

/// A choice of casts is one of its day: the next day counts all of its own, and shows the key that undoes a choice.
#[test]
fn a_choice_of_casts_ends_with_its_session() {
    let (mut phone, now) = with_bites(4);
    phone.tap(now + 1_000, &count(WaitsTap::Rod { rod: Some(2) })).unwrap();
    phone.tap(now + 2_000, &count(WaitsTap::TimeLeft { minutes: 120 })).unwrap();
    phone.tap(now + 20 * MIN, &Action::EndSession).unwrap();
    for (minute, action) in [(60, START), (61, CAST), (75, WOUND_IN)] {
        phone.tap(now + minute * MIN, &action).unwrap();
    }
    let (waits, _) = screens(&mut phone, now + 76 * MIN);
    assert!(waits.counts.starts_with("4 bites in 10 casts over 2 sessions,"), "{}", waits.counts);
    phone.open();
    assert_eq!(screens(&mut phone, now + 76 * MIN).0, waits);
    // The day that UNDO reopens is a different one, too.
    phone.tap(now + 77 * MIN, &count(WaitsTap::TodayOnly { only: true })).unwrap();
    assert!(screens(&mut phone, now + 77 * MIN).0.counts.starts_with("No bites in 1 cast this session,"));
    for minute in 78..81 {
        phone.tap(now + minute * MIN, &Action::Undo).unwrap();
    }
    let (waits, _) = screens(&mut phone, now + 82 * MIN);
    phone.open();
    assert_eq!(screens(&mut phone, now + 82 * MIN).0, waits);
}

#[test]
fn what_is_chosen_is_listed_although_no_cast_has_it_any_more() {
    let mut phone = rods::with_rods(2);
    for (minute, action) in
        [(1, CAST), (15, WOUND_IN), (16, Action::Cast { rod: 2 }), (30, Action::WoundIn { rod: 2 })]
    {
        phone.tap(minute * MIN, &action).unwrap();
    }
    phone.tap(31 * MIN, &count(WaitsTap::Rod { rod: Some(2) })).unwrap();
    phone.tap(32 * MIN, &Action::Undo).unwrap();
    phone.tap(33 * MIN, &Action::Undo).unwrap();
    let (waits, _) = screens(&mut phone, 34 * MIN);
    assert!(waits.counts.starts_with("No bites in 0 casts"), "{}", waits.counts);
    let row = waits.rows.iter().find(|row| row.tag == "rod").expect("a choice can be changed");
    assert_eq!(row.value, "Rod 2");
    let all = row.choices.iter().find(|choice| !choice.chosen).unwrap().action.clone();
    assert!(row.choices.iter().filter(|choice| choice.chosen).count() == 1);
    phone.tap(35 * MIN, &all).unwrap();
    assert!(screens(&mut phone, 36 * MIN).0.counts.starts_with("No bites in 1 cast"));
}

/// A spot that was chosen stays chosen on the row while no cast of today is on it.
#[test]
fn a_chosen_spot_is_listed_even_if_no_cast_is_on_it_any_more() {
    let mut phone = started();
    let spot = |cdeg| tackle(TackleTap::Bearing { cdeg });
    for (minute, action) in
        [(1, spot(-1_250)), (2, CAST), (10, WOUND_IN), (11, spot(2_000)), (12, CAST), (20, WOUND_IN)]
    {
        phone.tap(minute * MIN, &action).unwrap();
    }
    let (waits, _) = screens(&mut phone, 21 * MIN);
    let row = waits.rows.iter().find(|row| row.tag == "spot").unwrap();
    let right = row.choices.iter().find(|choice| choice.label.contains("20")).unwrap().clone();
    phone.tap(22 * MIN, &right.action).unwrap();
    for minute in 23..25 {
        phone.tap(minute * MIN, &Action::Undo).unwrap();
    }
    let (waits, _) = screens(&mut phone, 26 * MIN);
    let row = waits.rows.iter().find(|row| row.tag == "spot").unwrap();
    let chosen: Vec<&str> =
        row.choices.iter().filter(|choice| choice.chosen).map(|choice| choice.label.as_str()).collect();
    assert_eq!(chosen.len(), 1);
    assert!(chosen[0].contains("20"), "{chosen:?}");
    let tags: std::collections::BTreeSet<&str> = row.choices.iter().map(|c| c.tag.as_str()).collect();
    assert_eq!(tags.len(), row.choices.len(), "each has a tag of its own");
}

#[test]
fn once_the_day_is_over_its_last_hour_counts() {
    let mut phone = started();
    for i in 0..12 {
        for (after, action) in [(0, CAST), (11 + i % 3, BITE), (14, LANDED)] {
            phone.tap((1 + i * 15 + after) * MIN, &action).unwrap();
        }
    }
    let running = screens(&mut phone, 182 * MIN);
    phone.tap(185 * MIN, &Action::EndSession).unwrap();
    let over = screens(&mut phone, 186 * MIN);
    assert_ne!(running.0.figures, over.0.figures, "the last hour counts once it is over");
    phone.open();
    assert_eq!(over, screens(&mut phone, 186 * MIN));
    let over = |phone: &mut Phone| screens(phone, 189 * MIN).0.figures;
    phone.tap(187 * MIN, &Action::Undo).unwrap();
    let taken_back = over(&mut phone);
    phone.open();
    assert_eq!(over(&mut phone), taken_back);
}
