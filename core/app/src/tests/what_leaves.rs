//! What leaves the phone with a file, and what comes with the angler to another one.

use super::whose::{a_partners_day, go};
use super::*;
use restwater_log::TAKEN_UNTIL_MS;
use restwater_screen::{BookTap, FilesTap, FormChoice, Span};
use std::fs;
use std::path::PathBuf;

const DAY: i64 = 24 * 60 * MIN;

fn files(tap: FilesTap) -> Action {
    Action::Files { tap }
}

impl Phone {
    fn sends_all(&mut self, ms: i64, form: FormChoice) -> (PathBuf, String) {
        for tap in [FilesTap::Form { form }, FilesTap::Span { span: Span::Everything }] {
            self.tap(ms, &files(tap)).unwrap();
        }
        let sent = self.app().send(&at(ms), &mut go).unwrap();
        (PathBuf::from(&sent.path), fs::read_to_string(&sent.path).unwrap())
    }

    /// A day with bread on the line, and one that was begun as its copy, with something packed.
    fn copied_day(&mut self, from: i64) {
        self.tap(from, &START).unwrap();
        self.tap(from + 1_000, &tackle(TackleTap::Bait { name: "bread".into() })).unwrap();
        self.tap(from + 2_000, &Action::EndSession).unwrap();
        self.tap(from + 3_000, &Action::Setup { tap: SetupTap::CopyLast }).unwrap();
        let rows = self.set_up_rows(from + 4_000);
        let item = rows.iter().find(|row| row.tag == "pack").unwrap().choices[0].action.clone();
        self.tap(from + 4_000, &item).unwrap();
        self.tap(from + 5_000, &START).unwrap();
        self.tap(from + 6_000, &Action::EndSession).unwrap();
    }

    pub(super) fn set_up_rows(&mut self, ms: i64) -> Vec<restwater_screen::ChoiceRow> {
        match self.app().screen(Which::Setup, &at(ms)).unwrap() {
            Screen::Setup(setup) => setup.rows,
            other => panic!("{other:?}"),
        }
    }

    fn backed_up(&mut self, ms: i64) -> PathBuf {
        PathBuf::from(self.app().back_up(&at(ms), &mut go).unwrap().unwrap().path)
    }
}

/// The first reading was taken at home: neither UNDO nor a second reading leaves it in the file.
#[test]
fn a_position_that_was_undone_or_replaced_is_not_sent() {
    let place = |lat_e7| Action::PlacePeg { lat_e7, lon_e7: -12_000_000, straight_out_cdeg: 0 };
    let (home, peg) = (521_111_111, 532_222_222);
    for undone in [true, false] {
        let mut phone = started();
        phone.tap(MIN, &place(home)).unwrap();
        if undone {
            phone.tap(2 * MIN, &Action::Undo).unwrap();
        }
        phone.tap(3 * MIN, &place(peg)).unwrap();
        phone.tap(4 * MIN, &files(FilesTap::Position { included: true })).unwrap();
        let (path, text) = phone.sends_all(5 * MIN, FormChoice::Entries);
        assert!(text.contains("532222222") && !text.contains("521111111"), "undone: {undone}");
        let mut theirs = Phone::with_ids_from(500);
        let seen = theirs.app().look_into(&path, &at(6 * MIN), &mut go).unwrap();
        assert!(seen.whole, "{:?}", seen.lines);
        assert!(
            fs::read(phone.backed_up(7 * MIN)).unwrap().windows(9).any(|w| w == b"521111111"),
            "a backup has all"
        );
    }
}

/// The ids of sessions and phones hold the time at which they were made.
#[test]
fn the_table_for_a_club_contains_no_time() {
    let mut phone = Phone::with_ids_from(40);
    phone.day_with(-DAY, "22", 2);
    let session = phone.app().session().unwrap().id;
    let device = phone.app().journal.store().device();
    let (path, text) = phone.sends_all(MIN, FormChoice::Club);
    assert!(text.lines().count() > 1);
    for id in [session, device] {
        assert!(!text.contains(&id.to_string()) && !text.contains(&id.simple().to_string()));
        assert!(!path.to_string_lossy().contains(&id.simple().to_string()[..8]));
    }
    assert_eq!(phone.sends_all(2 * MIN, FormChoice::Club).1, text, "sent twice it counts once");
}

/// A partner's days are the partner's to give, until the phone is said to be the angler's own.
#[test]
fn the_table_for_a_club_has_only_the_anglers_own_days() {
    let (_theirs, file) = a_partners_day();
    let mut mine = Phone::with_ids_from(40);
    mine.day_with(-DAY, "22", 2);
    let own = mine.sends_all(MIN, FormChoice::Club).1;
    mine.take(&file, 2 * MIN);
    assert_eq!(mine.sends_all(3 * MIN, FormChoice::Club).1, own);
    let day = mine
        .app()
        .journal
        .store()
        .sessions()
        .unwrap()
        .into_iter()
        .find(|row| row.began.device != Some(mine.app().journal.store().device()));
    mine.tap(4 * MIN, &Action::Book { tap: BookTap::Open { session: day.unwrap().id } }).unwrap();
    mine.tap(5 * MIN, &Action::Book { tap: BookTap::PhoneIsMine { mine: true } }).unwrap();
    let both = mine.sends_all(6 * MIN, FormChoice::Club).1;
    assert_eq!(both.lines().count() - 1, 2 * (own.lines().count() - 1));
}

/// The phone's clock once showed a year that other phones don't take from a file: what is written after it is corrected is
/// still taken, by a partner and from a backup.
#[test]
fn a_clock_that_was_centuries_ahead_leaves_later_entries_readable_elsewhere() {
    let mut phone = started();
    let ahead = i64::try_from(TAKEN_UNTIL_MS).unwrap() + 400 * DAY - at(0).wall_ms;
    phone.tap(ahead, &Action::Note { text: "the clock".into() }).unwrap();
    phone.tap(2 * MIN, &CAST).unwrap();
    phone.tap(9 * MIN, &WOUND_IN).unwrap();
    let (path, _) = phone.sends_all(10 * MIN, FormChoice::Entries);
    let backup = phone.backed_up(11 * MIN);
    for file in [path, backup] {
        let seen = Phone::with_ids_from(500).app().look_into(&file, &at(12 * MIN), &mut go).unwrap();
        assert!(seen.whole, "{:?}", seen.lines);
    }
}

/// A backup made while the phone's clock was a year ahead does not make a backup due at every turn to the background.
#[test]
fn a_backup_of_the_future_does_not_make_one_due_each_time() {
    let mut phone = started();
    phone.backed_up(365 * DAY);
    phone.tap(MIN, &CAST).unwrap();
    assert!(phone.app().back_up_if_due(&at(2 * MIN)).unwrap().is_some());
    phone.tap(5 * MIN, &WOUND_IN).unwrap();
    assert!(phone.app().back_up_if_due(&at(6 * MIN)).unwrap().is_none());
    phone.tap(70 * MIN, &CAST).unwrap();
    assert!(phone.app().back_up_if_due(&at(71 * MIN)).unwrap().is_some());
}

/// Plans, cautions that were read and a club's start come to a new phone with the log, without a wallet too.
#[test]
fn what_was_planned_comes_to_a_new_phone_without_a_wallet() {
    let mut old = Phone::with_ids_from(500);
    let club = old.club_file(&super::club::file(&[]));
    old.app().take_in(&club, "Alder AC", &at(0), &mut go).unwrap();
    old.day_with(MIN, "22", 2);
    let session = old.app().session().unwrap().id;
    let backup = old.backed_up(60 * MIN);
    let mut new = Phone::with_ids_from(900);
    let club_of = |new: &mut Phone, ms| new.files(ms).rows.iter().any(|row| row.tag == "club");
    new.take(&backup, 61 * MIN);
    assert!(!club_of(&mut new, 62 * MIN), "it may be a partner's log");
    new.tap(63 * MIN, &Action::Book { tap: BookTap::Open { session } }).unwrap();
    new.tap(64 * MIN, &Action::Book { tap: BookTap::PhoneIsMine { mine: true } }).unwrap();
    assert!(club_of(&mut new, 65 * MIN));
    new.open();
    assert!(club_of(&mut new, 66 * MIN), "after a restart too");
    new.tap(67 * MIN, &files(FilesTap::LeaveClub)).unwrap();
    assert!(!club_of(&mut new, 68 * MIN));
}

/// The system copied the log to a new phone, and the old one goes on with its own: a file of one does not show its day, nor its
/// last tap, as the other's.
#[test]
fn two_phones_with_one_log_by_transfer_stay_two_phones() {
    let mut old = Phone::with_ids_from(500);
    old.bench(0, restwater_screen::BenchTap::Tied { count: 8 }).unwrap();
    old.day_with(MIN, "22", 1);
    old.copied_day(40 * MIN);
    old.app().pause().unwrap();
    let mut new = Phone::with_ids_from(900);
    drop(new.app.take());
    fs::copy(
        old.dir.path().join(restwater_store::FILE_NAME),
        new.dir.path().join(restwater_store::FILE_NAME),
    )
    .unwrap();
    let mark = new.dir.path().join("this-phone");
    for number in [77_000, 78_000] {
        App::after_transfer(new.dir.path(), &mark, Box::new(Counting(number)), &at(50 * MIN)).unwrap();
    }
    new.open();
    assert_ne!(new.app().journal.store().device(), old.app().journal.store().device());
    // What was chosen for the last START was used by it, on whichever phone that was.
    let rows = new.set_up_rows(59 * MIN);
    let value = |tag: &str| rows.iter().find(|row| row.tag == tag).unwrap().value.clone();
    assert_eq!(value("copy"), "no");
    assert!(value("pack").starts_with("0 of "), "{}", value("pack"));
    new.tap(60 * MIN, &START).unwrap();
    assert_eq!(new.app().session().unwrap().rods[0].rig, restwater_log::Rig::default());
    new.tap(61 * MIN, &CAST).unwrap();
    old.tap(70 * MIN, &START).unwrap();
    old.tap(71 * MIN, &CAST).unwrap();
    old.tap(80 * MIN, &WOUND_IN).unwrap();
    let file = old.all_of_it(81 * MIN);
    let running = new.app().session().unwrap().id;
    new.take(&file, 82 * MIN);
    for opened_again in [false, true] {
        if opened_again {
            new.open();
        }
        assert_eq!(new.app().session().unwrap().id, running, "its own session is on the Bank");
        assert_eq!(new.app().journal.recent().undo().unwrap().kind, "cast");
        new.tap(83 * MIN, &super::whose::all_sessions()).unwrap();
        assert_eq!(new.book_leaf(83 * MIN, "sessions").says, "5 sessions of 5.", "all of them the angler's");
        assert_ne!(
            new.app().kit().unwrap().wallet,
            restwater_kit::Kit::default().wallet,
            "the wallet came along"
        );
    }
    assert_eq!(new.app().look_over().unwrap().split(':').next(), Some("All well"));
}

/// The mark could not be written at first, as on a full disk: the transfer is noticed again, and no day of before is lost.
#[test]
fn a_transfer_that_is_noticed_twice_keeps_all_days_the_anglers() {
    let mut phone = Phone::with_ids_from(500);
    phone.day_with(MIN, "22", 1);
    phone.app().pause().unwrap();
    drop(phone.app.take());
    let dir = phone.dir.path().to_owned();
    let nowhere = dir.join("no such folder").join("this-phone");
    let moved = |mark: &std::path::Path, number| {
        App::after_transfer(&dir, mark, Box::new(Counting(number)), &at(50 * MIN))
    };
    assert_eq!(moved(&nowhere, 77_000).unwrap_err().kind(), ErrorKind::NotSaved);
    moved(&dir.join("this-phone"), 78_000).unwrap();
    phone.open();
    phone.tap(60 * MIN, &super::whose::all_sessions()).unwrap();
    let sessions = phone.book_leaf(60 * MIN, "sessions");
    assert_eq!(sessions.says, "1 session of 1.");
    assert_eq!(phone.app().mine.len(), 3, "this phone, the one before, and the first try");
    assert!(phone.app().journal.store().sessions().unwrap().iter().all(|row| {
        row.began.device.is_some_and(|device| phone.app.as_ref().unwrap().mine.contains(&device))
    }));
}
