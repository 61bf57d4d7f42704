//! Doubts that arise after an entry was confirmed, and breaks that are entered once the session is over.

use super::clock_steps::rebooted;
use super::*;
use restwater_screen::MendTap;
use restwater_session::{DoubtKind, waits_of};

const NEXT_MORNING: i64 = 15 * 60;

/// Four casts of 13 minutes each, and after a long gap one more, which is still out.
fn with_a_gap() -> (Phone, Uuid) {
    let mut phone = started();
    for start in [0, 15, 30, 45] {
        phone.tap(start * MIN, &CAST).unwrap();
        phone.tap((start + 13) * MIN, &WOUND_IN).unwrap();
    }
    phone.tap(110 * MIN, &CAST).unwrap();
    let session = phone.app().session().unwrap();
    let op = session.casts[4].op;
    assert_eq!(doubts(&mut phone), [(op, DoubtKind::LongGap)]);
    (phone, op)
}

fn doubts(phone: &mut Phone) -> Vec<(Uuid, DoubtKind)> {
    phone.app().session().unwrap().doubts.iter().map(|doubt| (doubt.op, doubt.kind)).collect()
}

fn confirmed(op: Uuid) -> Action {
    Action::Mend { op, tap: MendTap::Confirm }
}

#[test]
fn a_cast_confirmed_while_it_is_out_is_doubted_all_the_same_when_nobody_winds_it_in() {
    let (mut phone, op) = with_a_gap();
    phone.tap(112 * MIN, &confirmed(op)).unwrap();
    assert_eq!(doubts(&mut phone), []);
    phone.tap(NEXT_MORNING * MIN, &Action::EndSession).unwrap();
    assert_eq!(
        doubts(&mut phone),
        [(op, DoubtKind::StillOut)],
        "the gap is kept, the night in the water is not"
    );
    let waits: Vec<f64> =
        waits_of(phone.app().session().unwrap()).iter().map(|wait| wait.minutes()).collect();
    assert_eq!(waits, [13.0; 4]);
    // Confirmed once more, it was out all night; the confirmation taken back, it is doubted again.
    phone.tap((NEXT_MORNING + 1) * MIN, &confirmed(op)).unwrap();
    assert_eq!(doubts(&mut phone), []);
    phone.tap((NEXT_MORNING + 2) * MIN, &Action::Undo).unwrap();
    assert_eq!(doubts(&mut phone), [(op, DoubtKind::StillOut)]);
}

#[test]
fn an_end_or_an_outcome_that_nobody_saw_is_doubted_after_the_cast_was_confirmed() {
    for (bitten, kind) in [(false, DoubtKind::EndNotSeen), (true, DoubtKind::OutcomeNotSeen)] {
        let (mut phone, op) = with_a_gap();
        phone.tap(112 * MIN, &confirmed(op)).unwrap();
        if bitten {
            phone.tap(120 * MIN, &BITE).unwrap();
        }
        phone.tap(125 * MIN, &CAST).unwrap();
        assert_eq!(doubts(&mut phone), [(op, kind)]);
        phone.tap(126 * MIN, &confirmed(op)).unwrap();
        assert_eq!(doubts(&mut phone), []);
    }
}

#[test]
fn a_break_said_after_the_end_leaves_the_late_end_to_be_mended() {
    let (mut phone, op) = with_a_gap();
    phone.tap(123 * MIN, &WOUND_IN).unwrap();
    phone.tap(NEXT_MORNING * MIN, &Action::EndSession).unwrap();
    let late = *doubts(&mut phone).iter().find(|(_, kind)| *kind == DoubtKind::LateEnd).unwrap();
    phone.tap((NEXT_MORNING + 1) * MIN, &Action::Mend { op, tap: MendTap::WasAway }).unwrap();
    assert_eq!(doubts(&mut phone), [late]);
    // 123 min from START to the last entry, without the break from 58 min to a turn-round of 2 min before 110.
    assert_eq!(phone.app().session().unwrap().fished_min(), Some(73.0));
    let end = Action::Mend { op: late.0, tap: MendTap::Back { minutes: 770 } };
    phone.tap((NEXT_MORNING + 2) * MIN, &end).unwrap();
    assert_eq!(phone.app().session().unwrap().ended.as_ref().map(|end| end.at_ms), Some(130 * MIN));
}

#[test]
fn setting_the_time_back_after_a_break_was_said_moves_the_last_entry_of_a_rod() {
    let (mut phone, op) = with_a_gap();
    phone.tap(112 * MIN, &Action::Mend { op, tap: MendTap::WasAway }).unwrap();
    let before = phone.app().session().unwrap().breaks.clone();
    let set = phone.tap(113 * MIN, &Action::TimeBack { minutes: 1 }).unwrap();
    assert!(set.notice.contains("cast"), "{}", set.notice);
    let session = phone.app().session().unwrap();
    assert_eq!(session.casts[4].start.at_ms, 109 * MIN);
    assert_eq!(session.breaks, before);
}

/// A note may be written at home in the evening, so it does not say that anybody was fishing.
#[test]
fn a_note_written_at_home_does_not_hide_a_forgotten_end() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(30 * MIN, &WOUND_IN).unwrap();
    phone.tap(600 * MIN, &Action::Note { text: "herons".into() }).unwrap();
    phone.tap(602 * MIN, &Action::EndSession).unwrap();
    let session = phone.app().session().unwrap();
    let end = session.last_timed.as_ref().unwrap().op;
    assert_eq!(session.fished_min(), Some(30.0));
    assert_eq!(doubts(&mut phone), [(end, DoubtKind::LateEnd)]);
}

/// Water that is kept back in the last hour is kept back by somebody at the water; a rig may be changed at home for the next day.
#[test]
fn end_after_the_map_was_used_at_the_water_is_not_late_and_after_the_rig_was_changed_at_home_it_is() {
    let rig = Action::Tackle { rod: 1, tap: TackleTap::Bait { name: "corn".into() } };
    for (last, minute, late) in [(Action::KeepBack, 150, false), (rig, 600, true)] {
        let mut phone = started();
        phone.tap(MIN, &CAST).unwrap();
        phone.tap(30 * MIN, &WOUND_IN).unwrap();
        phone.tap(minute * MIN, &last).unwrap();
        phone.tap((minute + 5) * MIN, &Action::EndSession).unwrap();
        for restarted in [false, true] {
            if restarted {
                phone.open();
            }
            let found = doubts(&mut phone).iter().any(|(_, kind)| *kind == DoubtKind::LateEnd);
            assert_eq!(found, late, "{last:?}");
            let fished = phone.app().session().unwrap().fished_min();
            assert_eq!(fished, Some(if late { 30.0 } else { 155.0 }), "{last:?}");
        }
    }
}

#[test]
fn an_end_forgotten_for_three_weeks_can_be_set_back_to_the_last_entry() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(30 * MIN, &WOUND_IN).unwrap();
    let ended = 21 * 24 * 60 * MIN;
    phone.tap(ended, &Action::EndSession).unwrap();
    let [(op, DoubtKind::LateEnd)] = doubts(&mut phone)[..] else { panic!("{:?}", doubts(&mut phone)) };
    phone.tap(ended + MIN, &Action::OpenDoubt { op: Some(op) }).unwrap();
    let Screen::Mend(mend) = phone.app().screen(Which::Mend, &at(ended + MIN)).unwrap() else { panic!() };
    let open = mend.open.expect("the doubt is open");
    let row = open.rows.iter().find(|row| row.tag == "back").expect("a row that sets it back");
    let last = row.choices.iter().find(|choice| choice.tag == "last").expect("back to the last entry");
    let back = last.action.clone();
    phone.tap(ended + 2 * MIN, &back).unwrap();
    let session = phone.app().session().unwrap();
    assert_eq!(session.ended.as_ref().map(|at| at.at_ms), Some(30 * MIN));
    assert!(session.doubts.iter().all(|doubt| doubt.kind == DoubtKind::Approximate), "{:?}", session.doubts);
}

/// Three weeks later, after a restart of the phone that morning: the line does not know how long that was.
#[test]
fn an_end_forgotten_for_weeks_is_late_after_a_restart_too() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(30 * MIN, &WOUND_IN).unwrap();
    let later = 21 * 24 * 60 * MIN;
    phone.app().act(&Action::EndSession, &rebooted(later, later - 60 * MIN)).unwrap();
    let session = phone.app().session().unwrap();
    assert_eq!(session.fished_min(), Some(30.0));
    assert!(session.doubts.iter().any(|doubt| doubt.kind == DoubtKind::LateEnd), "{:?}", session.doubts);
}
