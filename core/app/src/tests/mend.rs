//! Mending through the app.

use super::*;
use restwater_log::EndSaid;
use restwater_screen::{MendTap, MendView};

impl Phone {
    fn mend(&mut self) -> MendView {
        match self.app().screen(Which::Mend, &at(500 * MIN)).unwrap() {
            Screen::Mend(mend) => mend,
            other => panic!("{other:?}"),
        }
    }
}

fn mend(op: Uuid, tap: MendTap) -> Action {
    Action::Mend { op, tap }
}

#[test]
fn an_unseen_end_is_corrected_in_three_taps_and_each_can_be_undone() {
    let mut phone = Phone::new();
    for (minute, action) in [(0, START), (1, CAST), (31, CAST), (46, BITE)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    let mend = phone.mend();
    assert_eq!(mend.says, "1 entry to look at.");
    let op = mend.lines[0].op;
    assert_eq!(mend.lines[0].why, "Its end was not seen: the next cast closed it.");
    phone.tap(50 * MIN, &mend.lines[0].open).unwrap();
    let open = phone.mend().open.unwrap();
    let fields: Vec<&str> = open.rows.iter().map(|r| r.tag.as_str()).collect();
    assert_eq!(fields, ["keep", "end", "after"]);
    assert!(
        open.rows[2]
            .choices
            .iter()
            .all(|c| matches!(c.action, Action::Mend { tap: MendTap::After { minutes: ..=30 }, .. }))
    );
    phone.tap(51 * MIN, &super::mend::mend(op, MendTap::End { end: EndSaid::Lost })).unwrap();
    phone.tap(52 * MIN, &super::mend::mend(op, MendTap::After { minutes: 14 })).unwrap();
    let mend = phone.mend();
    assert_eq!(mend.says, "Nothing doubtful in this session.");
    assert_eq!(mend.open.unwrap().rows[0].value, "lost");
    let cast = phone.app().session().unwrap().casts[0].clone();
    assert_eq!(cast.end.unwrap().cause, EndCause::Lost);
    assert_eq!(cast.bite.unwrap().0.ms_since(&cast.start), 14 * MIN);
    phone.tap(53 * MIN, &Action::Undo).unwrap();
    phone.tap(54 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.mend().lines.len(), 1);
}

#[test]
fn a_forgotten_cast_is_added_from_its_gap() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    for start in [1, 16, 31, 46, 100] {
        phone.tap(start * MIN, &CAST).unwrap();
        phone.tap((start + 13) * MIN, &WOUND_IN).unwrap();
    }
    let line = phone.mend().lines[0].clone();
    assert_eq!(line.why, "A long gap before it: a cast may be missing.");
    phone.tap(200 * MIN, &mend(line.op, MendTap::AddCast)).unwrap();
    let session = phone.app().session().unwrap().clone();
    assert_eq!(session.casts.len(), 6);
    // Wound in at 59 min, out a turn-round later; in a turn-round before 100 min. Turn-rounds are 2 min.
    assert_eq!(session.casts[4].start.at_ms, 61 * MIN);
    assert_eq!(session.casts[4].end.as_ref().unwrap().at.at_ms, 98 * MIN);
    let line = phone.mend().lines[0].clone();
    assert_eq!(line.what, "cast added 23:14");
    phone.tap(201 * MIN, &mend(line.op, MendTap::Confirm)).unwrap();
    assert_eq!(phone.mend().lines, []);
}

#[test]
fn impossible_corrections_are_refused() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    let out = phone.app().ops().last().unwrap().id;
    let nowhere = Uuid::from_u128(5);
    let refused = phone.tap(2 * MIN, &mend(nowhere, MendTap::Confirm)).unwrap_err();
    assert_eq!(refused.kind(), ErrorKind::NotNow);
    for tap in [MendTap::End { end: EndSaid::Lost }, MendTap::After { minutes: 9 }, MendTap::AddCast] {
        let refused = phone.tap(3 * MIN, &mend(out, tap)).unwrap_err();
        assert!(matches!(refused, AppError::NotOfThatEntry), "{tap:?}: {refused}");
    }
    let refused = phone.tap(3 * MIN, &mend(out, MendTap::Back { minutes: 0 })).unwrap_err();
    assert_eq!(refused.kind(), ErrorKind::BadInput);
    assert_eq!(phone.app().ops().len(), 2);
}

/// Minutes of each wait, as the session counts them.
fn waits(phone: &mut Phone) -> Vec<f64> {
    let session = phone.app().session().unwrap();
    restwater_session::waits_of(session).iter().map(|w| w.minutes()).collect()
}

#[test]
fn adding_one_forgotten_cast_fills_the_gap_after_a_corrected_end() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    // The fourth cast of 13 min has no end: the fifth closes it.
    for start in [1, 16, 31] {
        phone.tap(start * MIN, &CAST).unwrap();
        phone.tap((start + 13) * MIN, &WOUND_IN).unwrap();
    }
    phone.tap(46 * MIN, &CAST).unwrap();
    phone.tap(100 * MIN, &CAST).unwrap();
    phone.tap(113 * MIN, &WOUND_IN).unwrap();
    let unseen = phone.mend().lines[0].op;
    phone.tap(200 * MIN, &mend(unseen, MendTap::End { end: EndSaid::WoundIn })).unwrap();
    phone.tap(201 * MIN, &mend(unseen, MendTap::After { minutes: 10 })).unwrap();
    let gap = phone.mend().lines[0].clone();
    assert_eq!(gap.why, "A long gap before it: a cast may be missing.");
    phone.tap(202 * MIN, &mend(gap.op, MendTap::AddCast)).unwrap();
    // In at 56 min, out at 58, in at 98, a turn-round of two minutes on either side.
    assert_eq!(waits(&mut phone), [13.0, 13.0, 13.0, 10.0, 40.0, 13.0]);
    assert_eq!(phone.mend().lines.iter().map(|l| l.what.as_str()).collect::<Vec<_>>(), ["cast added 23:11"]);
    let again = phone.tap(203 * MIN, &mend(gap.op, MendTap::AddCast)).unwrap_err();
    assert_eq!(again.kind(), ErrorKind::NotNow);
    assert_eq!(waits(&mut phone).len(), 6);
}

#[test]
fn a_wait_can_be_corrected_up_to_the_next_entry_of_its_rod() {
    let mut phone = Phone::new();
    for (minute, action) in [(0, START), (1, CAST), (11, WOUND_IN), (31, CAST), (41, BITE), (44, LANDED)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    let casts: Vec<Uuid> = phone.app().session().unwrap().casts.iter().map(|c| c.op).collect();
    let choices = |phone: &mut Phone, op| {
        phone.tap(100 * MIN, &Action::OpenDoubt { op: Some(op) }).unwrap();
        phone.look();
        let open = phone.mend().open.unwrap();
        let row = open.rows.into_iter().find(|r| r.tag == "after").unwrap();
        row.choices.iter().map(|c| c.tag.parse().unwrap()).collect::<Vec<u32>>()
    };
    // The next splash is thirty minutes after the first.
    assert_eq!(choices(&mut phone, casts[0]).last(), Some(&30));
    for (second, minutes) in (0..).zip([4, 25, 30, 12]) {
        phone.tap(101 * MIN + second * 2_000, &mend(casts[0], MendTap::After { minutes })).unwrap();
        assert_eq!(waits(&mut phone)[0], f64::from(minutes));
        assert_eq!(choices(&mut phone, casts[0]).last(), Some(&30), "whatever was said before");
    }
    // A landing was logged thirteen minutes after the second splash: the bite came before it.
    assert_eq!(choices(&mut phone, casts[1]).last(), Some(&12));
    phone.tap(103 * MIN, &mend(casts[1], MendTap::After { minutes: 12 })).unwrap();
    phone.tap(104 * MIN, &mend(casts[1], MendTap::After { minutes: 60 })).unwrap();
    assert_eq!(waits(&mut phone)[1], 13.0);
}

/// The Bank and Mend set a time back by one rule: not beyond what was logged before it.
#[test]
fn a_time_is_set_back_as_far_as_the_bank_would_and_no_further() {
    let mut phone = started();
    for (minute, action) in [(1, CAST), (11, BITE), (12, Action::TimeBack { minutes: 1 }), (14, LANDED)] {
        phone.tap(minute * MIN, &action).unwrap();
    }
    let bite = phone.mend().lines[0].clone();
    assert_eq!(bite.why, "Its time is approximate.");
    phone.tap(20 * MIN, &bite.open).unwrap();
    let rows = phone.mend().open.unwrap().rows;
    let back = rows.iter().find(|row| row.tag == "back").unwrap();
    assert_eq!(back.choices.iter().map(|c| c.tag.as_str()).collect::<Vec<_>>(), ["1", "2", "5", "10"]);
    let refused = phone.tap(21 * MIN, &mend(bite.op, MendTap::Back { minutes: 30 })).unwrap_err();
    assert!(matches!(refused, AppError::BeforeEarlier(_)), "{refused}");
    assert_eq!(
        phone.app().message(&refused),
        "That would put it before the entry at 22:14. Undo that one first, or set back less."
    );
    phone.tap(22 * MIN, &mend(bite.op, MendTap::Back { minutes: 5 })).unwrap();
    assert_eq!(waits(&mut phone), [5.0]);
    assert_eq!(phone.app().session().unwrap().doubts.len(), 1, "approximate still, and nothing worse");
}

/// What is proposed for an end is made from the rhythm, so it teaches none: neither the time between casts nor what a bite costs.
#[test]
fn ends_that_are_taken_as_proposed_are_not_learned_as_the_rhythm() {
    let learned = |end: EndSaid| {
        let mut phone = Phone::new();
        phone.tap(0, &START).unwrap();
        for start in [1, 21, 41, 61, 81] {
            phone.tap(start * MIN, &CAST).unwrap();
        }
        for (second, line) in (0..).zip(phone.mend().lines) {
            phone.tap(90 * MIN + 2_000 * second, &mend(line.op, MendTap::End { end })).unwrap();
        }
        let session = phone.app().session().unwrap().clone();
        let rhythm = restwater_session::rhythm(&session, 9.0, 9.0);
        ((rhythm.turn_rounds, rhythm.bites), waits(&mut phone))
    };
    // Turn-rounds are 2 min, and a bite costs 3 min more, as long as nothing is timed.
    assert_eq!(learned(EndSaid::WoundIn), ((0, 0), vec![18.0; 4]));
    assert_eq!(learned(EndSaid::Lost), ((0, 0), vec![15.0; 4]), "a fish was played in it");
}

/// How the bite ended was not logged; when it came was.
#[test]
fn saying_how_a_bite_ended_leaves_the_time_of_its_tap() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    for (ms, action) in [(MIN, CAST), (15 * MIN + 437, BITE), (31 * MIN, CAST)] {
        phone.tap(ms, &action).unwrap();
    }
    let op = phone.mend().lines[0].op;
    phone.tap(32 * MIN, &mend(op, MendTap::End { end: EndSaid::Landed })).unwrap();
    let bite = phone.app().session().unwrap().casts[0].bite.clone().unwrap().0;
    assert_eq!((bite.at_ms, bite.shown.approx_s), (15 * MIN + 437, 0));
    // Minutes that are said are about.
    phone.tap(33 * MIN, &mend(op, MendTap::After { minutes: 10 })).unwrap();
    let bite = phone.app().session().unwrap().casts[0].bite.clone().unwrap().0;
    assert_eq!((bite.at_ms, bite.shown.approx_s), (11 * MIN, 30));
    // And they stay when the kind is corrected afterwards.
    phone.tap(34 * MIN, &mend(op, MendTap::End { end: EndSaid::Lost })).unwrap();
    let cast = phone.app().session().unwrap().casts[0].clone();
    assert_eq!((cast.bite.unwrap().0.at_ms, cast.end.unwrap().cause), (11 * MIN, EndCause::Lost));
}
