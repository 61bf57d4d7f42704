//! One angler with two phones, whose files are exchanged.

use super::whose::all_sessions;
use super::*;
use restwater_log::EndSaid;
use restwater_screen::{BookTap, MatchTap, MendTap, RuleTap, Signal};
use std::path::Path;

const HOUR: i64 = 60 * MIN;

impl Phone {
    /// Takes in a file of the angler's other phone, opens its day in the Book and says that the phone is mine.
    fn claims(&mut self, file: &Path, day: Uuid, ms: i64) {
        self.take(file, ms);
        self.tap(ms + 1_000, &all_sessions()).unwrap();
        self.tap(ms + 2_000, &Action::Book { tap: BookTap::Open { session: day } }).unwrap();
        self.tap(ms + 3_000, &Action::Book { tap: BookTap::PhoneIsMine { mine: true } }).unwrap();
    }

    fn todays(&mut self) -> Uuid {
        self.app().session().unwrap().id
    }
}

/// END was tapped by mistake and undone on one phone, while the other phone corrected the cast that END had closed.
#[test]
fn a_correction_of_an_end_that_was_undone_does_not_take_the_fish_away() {
    let mut bank = started();
    bank.tap(0, &CAST).unwrap();
    bank.tap(3 * HOUR, &Action::EndSession).unwrap();
    let (day, cast) = (bank.todays(), bank.app().session().unwrap().casts[0].op);
    let mut home = Phone::with_ids_from(500);
    let file = bank.all_of_it(3 * HOUR + MIN);
    home.claims(&file, day, 3 * HOUR + 2 * MIN);
    for tap in [MendTap::End { end: EndSaid::WoundIn }, MendTap::After { minutes: 20 }] {
        home.tap(3 * HOUR + 3 * MIN, &Action::Mend { op: cast, tap }).unwrap();
        home.look();
    }
    let file = home.all_of_it(3 * HOUR + 4 * MIN);
    bank.tap(3 * HOUR + 5 * MIN, &Action::Undo).unwrap();
    bank.take(&file, 3 * HOUR + 6 * MIN);
    bank.tap(3 * HOUR + 30 * MIN, &BITE).unwrap();
    bank.tap(3 * HOUR + 33 * MIN, &LANDED).unwrap();
    let session = bank.app().session().unwrap();
    let cast = &session.casts[0];
    assert_eq!(cast.end.as_ref().map(|end| end.cause.clone()), Some(EndCause::Landed { fish: None }));
    assert_eq!(cast.bite.as_ref().map(|(at, _)| at.at_ms), Some(3 * HOUR + 30 * MIN));
    // Without the later taps it is out again, and an END that comes then is not the corrected one.
    for _ in 0..2 {
        bank.look();
        bank.tap(3 * HOUR + 40 * MIN, &Action::Undo).unwrap();
    }
    bank.tap(4 * HOUR, &WOUND_IN).unwrap();
    let waits = restwater_session::waits_of(bank.app().session().unwrap());
    assert_eq!(waits.iter().map(|wait| wait.minutes()).collect::<Vec<_>>(), [240.0]);
}

/// END was forgotten, and the data went to a new phone in the shop.
#[test]
fn a_day_that_was_open_when_the_phone_was_changed_can_be_ended_on_the_new_one() {
    let mut old = started();
    old.tap(MIN, &CAST).unwrap();
    old.tap(20 * MIN, &BITE).unwrap();
    old.tap(21 * MIN, &LANDED).unwrap();
    old.tap(25 * MIN, &CAST).unwrap();
    old.tap(60 * MIN, &WOUND_IN).unwrap();
    let day = old.todays();
    let file = old.all_of_it(61 * MIN);
    for later in [DAY, 40 * DAY] {
        let mut new = Phone::with_ids_from(500);
        new.claims(&file, day, later);
        let key = |phone: &mut Phone, ms| {
            let leaf = phone.book_leaf(ms, "session");
            leaf.keys.into_iter().find(|key| key.tag == "end-")
        };
        let end = key(&mut new, later + MIN).expect("a key that ends the day");
        assert_eq!(end.label, "END");
        // A day of this phone runs meanwhile, and END of the Book is not about it.
        new.tap(later + 2 * MIN, &START).unwrap();
        new.tap(later + 3 * MIN, &Action::Book { tap: BookTap::Open { session: day } }).unwrap();
        new.tap(later + 4 * MIN, end.tap.action().unwrap()).unwrap();
        assert!(new.app().session().unwrap().is_open(), "today's goes on");
        assert!(key(&mut new, later + 5 * MIN).is_none(), "it has an end");
        let ops = new.app().journal.store().ops_of(day).unwrap();
        let ended = restwater_session::fold(day, &ops);
        assert_eq!(ended.fished_min(), Some(60.0), "{later}");
        new.tap(later + 6 * MIN, &Action::Undo).unwrap();
        assert!(key(&mut new, later + 7 * MIN).is_some(), "UNDO takes it back");
        let running = new.todays();
        new.tap(later + 8 * MIN, &Action::Book { tap: BookTap::Open { session: running } }).unwrap();
        assert!(key(&mut new, later + 9 * MIN).is_none(), "today's END is on the Bank");
    }
}

/// A partner's day is the partner's to end.
#[test]
fn an_open_day_of_a_partner_cannot_be_ended_here() {
    let mut theirs = started();
    theirs.tap(MIN, &CAST).unwrap();
    let (day, file) = (theirs.todays(), theirs.all_of_it(2 * MIN));
    let mut mine = Phone::with_ids_from(500);
    mine.take(&file, 3 * MIN);
    mine.tap(4 * MIN, &all_sessions()).unwrap();
    mine.tap(5 * MIN, &Action::Book { tap: BookTap::Open { session: day } }).unwrap();
    assert!(mine.book_leaf(6 * MIN, "session").keys.iter().all(|key| key.tag != "end-"));
}

/// The water was put right on one phone and the peg on the other, before their files were exchanged.
#[test]
fn a_water_and_a_peg_put_right_on_two_phones_are_both_right_after_the_exchange() {
    for home_first in [true, false] {
        let (early, late) = (30 * MIN, 40 * MIN);
        let mut bank = Phone::new();
        bank.tap(0, &START).unwrap();
        bank.tap(MIN, &Action::EndSession).unwrap();
        let day = bank.todays();
        let mut home = Phone::with_ids_from(500);
        let file = bank.all_of_it(2 * MIN);
        home.claims(&file, day, 3 * MIN);
        bank.tap(if home_first { late } else { early }, &typed(TypedInto::SessionWater, "Mill Pond"))
            .unwrap();
        home.tap(if home_first { early } else { late }, &typed(TypedInto::SessionPeg, "14")).unwrap();
        let files = [bank.all_of_it(50 * MIN), home.all_of_it(50 * MIN)];
        bank.take(&files[1], 51 * MIN);
        home.take(&files[0], 51 * MIN);
        for phone in [&mut bank, &mut home] {
            let ops = phone.app().journal.store().ops_of(day).unwrap();
            let setup = restwater_session::fold(day, &ops).setup;
            let both = (setup.water.as_deref(), setup.peg.as_deref());
            assert_eq!(both, (Some("Mill Pond"), Some("14")), "home first: {home_first}");
        }
        // A later correction of either still counts, also one back to what START said.
        home.tap(60 * MIN, &Action::Book { tap: BookTap::Open { session: day } }).unwrap();
        home.tap(61 * MIN, &typed(TypedInto::SessionPeg, "15")).unwrap();
        home.tap(62 * MIN, &typed(TypedInto::SessionWater, "")).unwrap();
        let ops = home.app().journal.store().ops_of(day).unwrap();
        let setup = restwater_session::fold(day, &ops).setup;
        assert_eq!((setup.water, setup.peg.as_deref()), (None, Some("15")));
    }
}

const DAY: i64 = 24 * HOUR;

/// Two phones of one angler: a bait is out on the bank, and at home that day is opened in the Book, as it was at 30 min.
fn fishing_and_claimed() -> (Phone, Phone, Uuid) {
    let mut bank = started();
    bank.tap(MIN, &CAST).unwrap();
    let (day, file) = (bank.todays(), bank.all_of_it(30 * MIN));
    let mut home = Phone::with_ids_from(500);
    home.claims(&file, day, 40 * MIN);
    (bank, home, day)
}

/// The day was ended on the bank, and once more from an older file at home.
#[test]
fn the_phone_that_began_a_day_says_when_it_ended() {
    let (mut bank, mut home, _) = fishing_and_claimed();
    bank.tap(60 * MIN, &Action::EndSession).unwrap();
    home.tap(4 * HOUR, &Action::Book { tap: BookTap::End }).unwrap();
    let file = home.all_of_it(4 * HOUR + MIN);
    bank.take(&file, 4 * HOUR + 2 * MIN);
    assert_eq!(bank.app().session().unwrap().fished_min(), Some(60.0));
}

/// Home ends the day from an older file while the bank goes on fishing.
#[test]
fn an_end_on_the_other_phone_does_not_take_the_fish_that_comes_later() {
    let (mut bank, mut home, day) = fishing_and_claimed();
    home.tap(45 * MIN, &Action::Book { tap: BookTap::End }).unwrap();
    let file = home.all_of_it(46 * MIN);
    bank.tap(60 * MIN, &BITE).unwrap();
    bank.tap(62 * MIN, &LANDED).unwrap();
    bank.take(&file, 63 * MIN);
    let session = bank.app().session().unwrap();
    assert!(session.is_open(), "the bank goes on");
    assert_eq!(restwater_session::catch(session).len(), 1);
    assert_eq!(session.doubts, []);
    bank.tap(64 * MIN, &CAST).unwrap();
    // Home has the later entries then, and offers END again.
    let file = bank.all_of_it(65 * MIN);
    home.take(&file, 66 * MIN);
    home.tap(67 * MIN, &Action::Book { tap: BookTap::Open { session: day } }).unwrap();
    assert!(home.book_leaf(68 * MIN, "session").keys.iter().any(|key| key.tag == "end-"));
}

/// The break was on the bank, long before the other phone ended the day.
#[test]
fn a_break_entered_after_the_other_phone_ended_the_day_does_not_open_it_again() {
    let mut bank = started();
    for start in [0, 15, 30, 45, 110] {
        bank.tap(start * MIN, &CAST).unwrap();
        bank.tap((start + 13) * MIN, &WOUND_IN).unwrap();
    }
    let (day, op) = (bank.todays(), bank.app().session().unwrap().casts[4].op);
    let file = bank.all_of_it(125 * MIN);
    let mut home = Phone::with_ids_from(500);
    home.claims(&file, day, 126 * MIN);
    home.tap(130 * MIN, &Action::Book { tap: BookTap::End }).unwrap();
    let file = home.all_of_it(131 * MIN);
    bank.take(&file, 132 * MIN);
    assert!(!bank.app().session().unwrap().is_open());
    bank.tap(133 * MIN, &Action::Mend { op, tap: MendTap::WasAway }).unwrap();
    let session = bank.app().session().unwrap();
    assert_eq!((session.is_open(), session.breaks.len()), (false, 1));
}

#[test]
fn the_set_up_follows_a_peg_that_was_put_right_on_the_other_phone() {
    let mut bank = Phone::new();
    bank.tap(0, &typed(TypedInto::Peg, "14")).unwrap();
    bank.tap(MIN, &START).unwrap();
    bank.tap(60 * MIN, &Action::EndSession).unwrap();
    let (day, file) = (bank.todays(), bank.all_of_it(61 * MIN));
    let mut home = Phone::with_ids_from(500);
    home.claims(&file, day, 62 * MIN);
    home.tap(63 * MIN, &typed(TypedInto::SessionPeg, "15")).unwrap();
    let file = home.all_of_it(64 * MIN);
    bank.take(&file, 65 * MIN);
    assert_eq!(bank.app().draft.peg.as_deref(), Some("15"));
    bank.open();
    assert_eq!(bank.app().draft.peg.as_deref(), Some("15"), "after a restart too");
}

/// What is logged only while the session is open was logged by somebody who fishes on.
#[test]
fn what_is_logged_on_the_bank_after_the_other_phones_end_keeps_the_day_open() {
    let heard = Action::Match { tap: MatchTap::Heard { signal: Signal::AllIn } };
    for (later, open) in
        [(Action::KeepBack, true), (heard, true), (Action::Note { text: "cold".into() }, false)]
    {
        let mut bank = started();
        bank.tap(2_000, &Action::Match { tap: MatchTap::Rule { rule: RuleTap::Begin } }).unwrap();
        bank.tap(MIN, &CAST).unwrap();
        bank.tap(20 * MIN, &WOUND_IN).unwrap();
        let (day, file) = (bank.todays(), bank.all_of_it(22 * MIN));
        let mut home = Phone::with_ids_from(500);
        home.claims(&file, day, 23 * MIN);
        home.tap(40 * MIN, &Action::Book { tap: BookTap::End }).unwrap();
        bank.tap(50 * MIN, &later).unwrap();
        let file = home.all_of_it(60 * MIN);
        bank.take(&file, 61 * MIN);
        assert_eq!(bank.app().session().unwrap().is_open(), open, "{later:?}");
        bank.open();
        assert_eq!(bank.app().session().unwrap().is_open(), open, "{later:?}, after a restart");
    }
}

/// A cast whose end was not seen, on two phones that then correct it apart: "LANDED" on one, "20 min" on the other.
#[test]
fn the_end_said_on_one_phone_and_the_minutes_said_on_the_other_both_count() {
    let landed = |op| Action::Mend { op, tap: MendTap::End { end: EndSaid::Landed } };
    let minutes = |op| Action::Mend { op, tap: MendTap::After { minutes: 20 } };
    for bank_says_landed in [true, false] {
        for bank_first in [true, false] {
            let mut bank = started();
            for (minute, action) in [(1, CAST), (40, CAST), (60, WOUND_IN), (61, Action::EndSession)] {
                bank.tap(minute * MIN, &action).unwrap();
            }
            let (day, op) = (bank.todays(), bank.app().session().unwrap().casts[0].op);
            let file = bank.all_of_it(62 * MIN);
            let mut home = Phone::with_ids_from(500);
            home.claims(&file, day, 63 * MIN);
            let (on_bank, at_home) =
                if bank_says_landed { (landed(op), minutes(op)) } else { (minutes(op), landed(op)) };
            bank.tap(if bank_first { 70 } else { 80 } * MIN, &on_bank).unwrap();
            home.tap(75 * MIN, &at_home).unwrap();
            let file = home.all_of_it(81 * MIN);
            let import = bank.take(&file, 82 * MIN);
            bank.open();
            let of = |bank: &mut Phone| {
                let session = bank.app().session().unwrap();
                let wait = restwater_session::waits_of(session)[0];
                (restwater_session::catch(session).len(), wait.minutes(), wait.is_bite())
            };
            assert_eq!(of(&mut bank), (1, 20.0, true), "{bank_says_landed} {bank_first}");
            bank.tap(83 * MIN, &Action::UndoImport { id: import }).unwrap();
            let (fish, minutes, _) = of(&mut bank);
            assert_eq!((fish == 1, minutes == 20.0), (bank_says_landed, !bank_says_landed), "without home's");
            bank.take(&file, 84 * MIN);
            assert_eq!(of(&mut bank), (1, 20.0, true), "{bank_says_landed} {bank_first}, taken in again");
        }
    }
}

/// Home has the correction of the bank and takes it back: it was no fish.
#[test]
fn a_phone_that_has_the_others_correction_of_an_end_may_change_it() {
    let mut bank = started();
    for (minute, action) in [(1, CAST), (40, CAST), (60, WOUND_IN), (61, Action::EndSession)] {
        bank.tap(minute * MIN, &action).unwrap();
    }
    let (day, op) = (bank.todays(), bank.app().session().unwrap().casts[0].op);
    bank.tap(62 * MIN, &Action::Mend { op, tap: MendTap::End { end: EndSaid::Landed } }).unwrap();
    let file = bank.all_of_it(63 * MIN);
    let mut home = Phone::with_ids_from(500);
    home.claims(&file, day, 64 * MIN);
    home.tap(70 * MIN, &Action::Mend { op, tap: MendTap::After { minutes: 20 } }).unwrap();
    let file = home.all_of_it(71 * MIN);
    bank.take(&file, 72 * MIN);
    let of = |phone: &mut Phone| {
        let session = phone.app().session().unwrap();
        let wait = restwater_session::waits_of(session)[0];
        (restwater_session::catch(session).len(), wait.minutes())
    };
    assert_eq!(of(&mut bank), (1, 20.0));
    home.tap(73 * MIN, &Action::Mend { op, tap: MendTap::End { end: EndSaid::WoundIn } }).unwrap();
    let file = home.all_of_it(74 * MIN);
    bank.take(&file, 75 * MIN);
    assert_eq!(of(&mut bank), (0, 20.0));
    bank.tap(76 * MIN, &Action::Mend { op, tap: MendTap::End { end: EndSaid::Landed } }).unwrap();
    assert_eq!(of(&mut bank), (1, 20.0));
}

/// The angler is away from the rods while the other phone's file comes in, which says that there was a break hours ago as well.
#[test]
fn a_break_entered_on_the_other_phone_does_not_end_the_one_that_lasts() {
    let mut bank = started();
    for start in [0, 15, 30, 45, 110] {
        bank.tap(start * MIN, &CAST).unwrap();
        bank.tap((start + 13) * MIN, &WOUND_IN).unwrap();
    }
    let (day, op) = (bank.todays(), bank.app().session().unwrap().casts[4].op);
    let file = bank.all_of_it(124 * MIN);
    let mut home = Phone::with_ids_from(500);
    home.claims(&file, day, 125 * MIN);
    bank.tap(127 * MIN, &Action::Away).unwrap();
    home.tap(130 * MIN, &Action::Mend { op, tap: MendTap::WasAway }).unwrap();
    let file = home.all_of_it(131 * MIN);
    bank.take(&file, 132 * MIN);
    for restarted in [false, true] {
        if restarted {
            bank.open();
        }
        assert_eq!(bank.bank(133 * MIN).state, BankState::Away);
        let session = bank.app().session().unwrap();
        let breaks: Vec<(i64, Option<i64>)> = session
            .breaks
            .iter()
            .map(|rest| (rest.from.at_ms / MIN, rest.to.as_ref().map(|to| to.at_ms / MIN)))
            .collect();
        assert_eq!(breaks, [(58, Some(108)), (127, None)]);
    }
    bank.tap(140 * MIN, &Action::Returned).unwrap();
    let session = bank.app().session().unwrap();
    assert_eq!(session.breaks.len(), 2);
    assert!(session.away().is_none());
    assert!(session.doubts.iter().all(|doubt| doubt.kind != restwater_session::DoubtKind::NoBreak));
}
