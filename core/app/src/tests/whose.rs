//! Whose day it is: my sessions, and those imported from a partner's file.

use super::learning::screens;
use super::*;
use restwater_exchange::Progress;
use restwater_screen::{BookSet, BookTap, FilesTap, FilterTap, Leaf, Span, WaitsView, Whose};
use std::ops::ControlFlow;
use std::path::PathBuf;

const DAY: i64 = 24 * 60 * MIN;

pub(super) fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn advice_of(whose: Whose) -> Action {
    Action::Waits { tap: WaitsTap::Whose { whose } }
}

fn shown(set: BookSet, whose: Whose) -> Action {
    Action::Book { tap: BookTap::Filter { set, by: FilterTap::Whose { whose } } }
}

/// Makes the Book list everybody's sessions.
pub(super) fn all_sessions() -> Action {
    shown(BookSet::Shown, Whose::Both)
}

impl Phone {
    /// A day on one peg of one water. Every bite comes after about fifteen minutes and is landed.
    pub(super) fn day_with(&mut self, from: i64, peg: &str, bites: i64) -> i64 {
        self.tap(from - 2_000, &typed(TypedInto::Water, "Mill pool")).unwrap();
        self.tap(from - 1_000, &typed(TypedInto::Peg, peg)).unwrap();
        self.tap(from, &START).unwrap();
        for i in 0..bites {
            let splash = from + MIN + i * 20 * MIN;
            for (after, action) in [(0, CAST), (14 * MIN + i * 10_000, BITE), (16 * MIN, LANDED)] {
                self.tap(splash + after, &action).unwrap();
            }
        }
        let end = from + MIN + bites * 20 * MIN;
        self.tap(end, &Action::EndSession).unwrap();
        end
    }

    pub(super) fn all_of_it(&mut self, ms: i64) -> PathBuf {
        self.tap(ms, &Action::Files { tap: FilesTap::Span { span: Span::Everything } }).unwrap();
        PathBuf::from(self.app().send(&at(ms), &mut go).unwrap().path)
    }

    pub(super) fn take(&mut self, file: &std::path::Path, ms: i64) -> Uuid {
        self.app().take_in(file, "a friend", &at(ms), &mut go).unwrap();
        match self.app().screen(Which::Files, &at(ms)).unwrap() {
            Screen::Files(files) => files.imports[0].id,
            other => panic!("{other:?}"),
        }
    }

    pub(super) fn book_leaf(&mut self, ms: i64, id: &str) -> Leaf {
        match self.app().screen(Which::Book, &at(ms)).unwrap() {
            Screen::Book(book) => book.leaves.into_iter().find(|leaf| leaf.id == id).unwrap(),
            other => panic!("{other:?}"),
        }
    }

    fn the_waits(&mut self, ms: i64) -> WaitsView {
        screens(self, ms).0
    }
}

/// A partner's phone with a day of three bites from a week ago, and the file of all its entries.
pub(super) fn a_partners_day() -> (Phone, PathBuf) {
    let mut theirs = Phone::with_ids_from(500);
    let end = theirs.day_with(-7 * DAY, "22", 3);
    let file = theirs.all_of_it(end + MIN);
    (theirs, file)
}

/// My phone, which took in a partner's day between two taps of my own, and that import.
pub(super) fn a_partners_day_between_my_taps() -> (Phone, Uuid) {
    let (_theirs, file) = a_partners_day();
    let mut mine = started();
    mine.tap(MIN, &CAST).unwrap();
    let id = mine.take(&file, 2 * MIN);
    mine.tap(3 * MIN, &WOUND_IN).unwrap();
    (mine, id)
}

/// A phone with a partner's imported day of eight bites from a week ago, on which my first own day begins.
fn with_a_partners_day() -> (Phone, Uuid, i64) {
    let mut theirs = Phone::with_ids_from(500);
    let end = theirs.day_with(-7 * DAY, "22", 8);
    let file = theirs.all_of_it(end + MIN);
    let mut mine = started();
    mine.tap(MIN, &CAST).unwrap();
    let import = mine.take(&file, 2 * MIN);
    (mine, import, 3 * MIN)
}

#[test]
fn a_partners_day_counts_in_my_advice_only_if_chosen_and_the_bank_says_so() {
    let (mut mine, import, now) = with_a_partners_day();
    assert_eq!(mine.bank(now).strip.hold_min, None, "nothing of mine is known");
    assert!(mine.the_waits(now).counts.starts_with("Make a cast:"), "nothing of mine is known");
    let row = mine.the_waits(now).rows.into_iter().find(|row| row.tag == "whose").unwrap();
    assert_eq!(row.value, "my sessions");
    mine.tap(now, &advice_of(Whose::Both)).unwrap();
    let bank = mine.bank(now + MIN);
    assert!(bank.advice.headline.starts_with("Hold until 1"), "{}", bank.advice.headline);
    let said = "No cast has ended yet. 1 earlier session of another angler counts.";
    assert_eq!(bank.advice.detail, said, "said once, and as theirs");
    assert!(!bank.advice.more.iter().any(|more| more.contains("earlier session")), "{:?}", bank.advice.more);
    assert_eq!(
        mine.the_waits(now + MIN).counts,
        "8 bites in 8 casts over 1 session, 1 h 57 in the water. 1 earlier session of another angler counts."
    );
    // The choice survives a restart, and an undone import no longer counts at once.
    mine.open();
    assert_eq!(mine.bank(now + MIN).advice, bank.advice);
    mine.tap(now + 2 * MIN, &Action::UndoImport { id: import }).unwrap();
    assert_eq!(mine.bank(now + 2 * MIN).strip.hold_min, None);
    mine.tap(now + 3 * MIN, &Action::RedoImport { id: import }).unwrap();
    let told = mine.bank(now + 3 * MIN).advice;
    let said = std::iter::once(&told.detail).chain(&told.more);
    assert_eq!(said.filter(|text| text.contains("of another angler counts.")).count(), 1, "{told:?}");
    mine.tap(now + 4 * MIN, &advice_of(Whose::Me)).unwrap();
    assert_eq!(mine.bank(now + 4 * MIN).strip.hold_min, None);
}

#[test]
fn the_book_shows_my_sessions_and_a_partners_when_asked_and_says_whose() {
    let (mut mine, import, now) = with_a_partners_day();
    let list = mine.book_leaf(now, "sessions");
    assert_eq!(list.says, "1 session of 2. 1 session of another angler isn't counted: see Which.");
    assert_eq!(list.list.len(), 1);
    assert_eq!(mine.book_leaf(now, "rates").says, "Nothing was out yet in these sessions.");
    mine.tap(now, &shown(BookSet::Shown, Whose::Them)).unwrap();
    let list = mine.book_leaf(now, "sessions");
    assert_eq!(list.list.len(), 1);
    assert!(list.list[0].label.ends_with("Mill pool, Peg\u{a0}22, another angler"), "{}", list.list[0].label);
    let rates = mine.book_leaf(now, "rates");
    assert!(rates.says.starts_with("Another angler's: about a bite every 15 min"), "{}", rates.says);
    assert!(rates.lines.last().unwrap().label.ends_with("another angler"), "{:?}", rates.lines);
    // My days and theirs are two sets without a common day.
    mine.tap(now + 1_000, &shown(BookSet::B, Whose::Them)).unwrap();
    let sets = mine.book_leaf(now + 1_000, "sets");
    assert_eq!(sets.lines[0].label, "A: my sessions, 0 sessions", "nothing was out in it");
    assert_eq!(sets.lines[1].label, "B: another angler's, 1 session");
    mine.tap(now + 2_000, &Action::UndoImport { id: import }).unwrap();
    mine.tap(now + 3_000, &shown(BookSet::Shown, Whose::Me)).unwrap();
    assert_eq!(mine.book_leaf(now + 3_000, "sessions").says, "1 session of 1.");
}

/// The last session to copy and the heights tried are mine; a partner's later day changes neither.
#[test]
fn copying_the_last_session_copies_mine() {
    let mut theirs = Phone::with_ids_from(500);
    let end = theirs.day_with(DAY, "22", 1);
    let file = theirs.all_of_it(end + MIN);
    let mut mine = Phone::new();
    mine.day_with(0, "14", 1);
    mine.take(&file, 2 * DAY);
    let Screen::Setup(setup) = mine.app().screen(Which::Setup, &at(2 * DAY)).unwrap() else { panic!() };
    let copy = setup.rows.iter().find(|row| row.tag == "copy").unwrap();
    assert!(copy.choices[0].label.ends_with("Peg\u{a0}14"), "{:?}", copy.choices);
    mine.tap(2 * DAY, &Action::Setup { tap: SetupTap::CopyLast }).unwrap();
    mine.tap(2 * DAY + MIN, &START).unwrap();
    assert_eq!(mine.app().session().unwrap().setup.peg.as_deref(), Some("14"));
}

#[test]
fn two_files_of_one_match_show_both_pegs_and_whose_they_are() {
    let mut theirs = Phone::with_ids_from(500);
    let end = theirs.day_with(10 * MIN, "22", 3);
    let file = theirs.all_of_it(end + MIN);
    let mut mine = Phone::new();
    let end = mine.day_with(0, "14", 1).max(end);
    mine.take(&file, end + 2 * MIN);
    let key = mine.book_leaf(end + 3 * MIN, "sessions").list[0].tap.action().unwrap().clone();
    mine.tap(end + 3 * MIN, &key).unwrap();
    let leaf = mine.book_leaf(end + 4 * MIN, "session");
    let from = leaf.lines.iter().position(|line| line.label == "Side by side on this water").unwrap();
    let said = |line: &restwater_screen::LeafLine| (line.label.clone(), line.value.clone());
    assert_eq!(said(&leaf.lines[from + 1]), ("Peg\u{a0}14, mine".into(), "1 landed".into()));
    assert_eq!(said(&leaf.lines[from + 2]), ("Peg\u{a0}22, another angler".into(), "3 landed".into()));
    assert_eq!(leaf.lines[from + 2].detail, "3 bites in 3 casts, 1 h 01 fished");
    // From the partner's peg it is the other way round, and the page says whose it is.
    mine.tap(end + 5 * MIN, &shown(BookSet::Shown, Whose::Them)).unwrap();
    let list = mine.book_leaf(end + 5 * MIN, "sessions").list;
    let key =
        list.iter().find(|key| key.label.contains("Peg\u{a0}22")).unwrap().tap.action().unwrap().clone();
    mine.tap(end + 6 * MIN, &key).unwrap();
    let leaf = mine.book_leaf(end + 6 * MIN, "session");
    assert!(leaf.title.ends_with("Peg\u{a0}22, another angler"), "{}", leaf.title);
    let pegs: Vec<&str> = leaf
        .lines
        .iter()
        .filter(|line| line.label.starts_with("Peg"))
        .map(|line| line.label.as_str())
        .collect();
    assert_eq!(pegs, ["Peg\u{a0}22, another angler", "Peg\u{a0}14, mine"]);
}

#[test]
fn the_last_sessions_on_a_peg_are_listed_both_mine_and_imported_ones() {
    let mut theirs = Phone::with_ids_from(500);
    let end = theirs.day_with(-7 * DAY, "14", 3);
    let file = theirs.all_of_it(end + MIN);
    let mut mine = Phone::new();
    assert!(mine.book_leaf(0, "peg").says.starts_with("Name the water and the peg"));
    mine.day_with(-20 * DAY, "14", 1);
    mine.day_with(-10 * DAY, "9", 2);
    let import = mine.take(&file, -DAY);
    mine.tap(-1_000, &typed(TypedInto::Peg, "14")).unwrap();
    let leaf = mine.book_leaf(0, "peg");
    assert_eq!(leaf.says, "Peg\u{a0}14, Mill pool: 4 bites in 4 casts over the last 2 sessions.");
    assert!(leaf.lines[0].label.ends_with("Peg\u{a0}14, another angler"), "{:?}", leaf.lines[0]);
    assert!(
        leaf.lines[0].detail.starts_with("3 bites in 3 casts, 1 h 01 fished. 3 in 0.7 rod hours: "),
        "{:?}",
        leaf.lines[0]
    );
    assert!(leaf.lines[1].label.ends_with("Peg\u{a0}14"), "{:?}", leaf.lines[1]);
    // The running session there isn't one of them, an undone import is gone, and a restart changes nothing.
    mine.tap(0, &START).unwrap();
    assert_eq!(mine.book_leaf(MIN, "peg").lines.len(), 2);
    mine.open();
    assert_eq!(mine.book_leaf(MIN, "peg").lines.len(), 2);
    mine.tap(2 * MIN, &Action::UndoImport { id: import }).unwrap();
    assert_eq!(
        mine.book_leaf(2 * MIN, "peg").says,
        "Peg\u{a0}14, Mill pool: 1 bite in 1 cast over 1 other session."
    );
    mine.tap(3 * MIN, &Action::EndSession).unwrap();
    mine.tap(4 * MIN, &typed(TypedInto::Peg, "77")).unwrap();
    let says = mine.book_leaf(4 * MIN, "peg").says;
    assert!(says.starts_with("Peg\u{a0}77, Mill pool: no session here yet. "), "{says}");
    mine.tap(5 * MIN, &START).unwrap();
    let says = mine.book_leaf(6 * MIN, "peg").says;
    assert!(says.starts_with("Peg\u{a0}77, Mill pool: no other session here yet. "), "{says}");
}

/// A replaced phone is still mine: the sessions of its backup count once I say so.
#[test]
fn the_sessions_of_my_other_phone_are_mine_once_i_say_so() {
    let (mut mine, _, now) = with_a_partners_day();
    mine.tap(now, &shown(BookSet::Shown, Whose::Them)).unwrap();
    let key = mine.book_leaf(now, "sessions").list[0].tap.action().unwrap().clone();
    mine.tap(now + 1_000, &key).unwrap();
    let key = |phone: &mut Phone, ms| {
        let leaf = phone.book_leaf(ms, "session");
        leaf.keys.into_iter().find(|key| key.tag == "mine-").unwrap()
    };
    let is_mine = key(&mut mine, now + 2_000);
    assert_eq!(is_mine.label, "IT'S MINE");
    mine.tap(now + 3_000, is_mine.tap.action().unwrap()).unwrap();
    assert_eq!(key(&mut mine, now + 4_000).label, "NOT MINE");
    mine.open();
    mine.tap(now + 5_000, &shown(BookSet::Shown, Whose::Me)).unwrap();
    assert_eq!(mine.book_leaf(now + 5_000, "sessions").says, "2 sessions of 2.");
    assert!(mine.bank(now + MIN).strip.hold_min.is_some(), "it counts as my own earlier day does");
    let mine_now = mine.bank(now + MIN).advice;
    assert_eq!(mine_now.detail, "No cast has ended yet. 1 earlier session of yours counts too.");
    // A session of this phone is mine in any case.
    let own = mine.book_leaf(now + MIN, "sessions").list[0].tap.action().unwrap().clone();
    mine.tap(now + MIN, &own).unwrap();
    assert!(mine.book_leaf(now + MIN, "session").keys.iter().all(|key| key.tag != "mine-"));
    let refused = mine.tap(now + 2 * MIN, &Action::Book { tap: BookTap::PhoneIsMine { mine: false } });
    assert!(matches!(refused, Err(AppError::NoSuchSession)));
}

/// Doubtful entries of a partner's day can only be corrected by the partner.
#[test]
fn to_mend_counts_my_days_and_mend_is_about_them() {
    let mut theirs = Phone::with_ids_from(500);
    theirs.tap(-7 * DAY, &START).unwrap();
    for (minute, action) in [(1, CAST), (31, CAST), (46, WOUND_IN), (50, Action::EndSession)] {
        theirs.tap(-7 * DAY + minute * MIN, &action).unwrap();
    }
    let day = theirs.app().session().unwrap().clone();
    assert_eq!(day.doubts.len(), 1);
    let file = theirs.all_of_it(-6 * DAY);
    let mut mine = started();
    mine.take(&file, MIN);
    mine.tap(2 * MIN, &all_sessions()).unwrap();
    let list = mine.book_leaf(3 * MIN, "sessions");
    assert!(list.list.len() == 2 && !list.says.contains("To mend"), "{}", list.says);
    mine.tap(4 * MIN, &Action::Book { tap: BookTap::Open { session: day.id } }).unwrap();
    let opened = mine.book_leaf(5 * MIN, "session");
    assert!(opened.notes.iter().all(|note| !note.contains("To mend")), "{:?}", opened.notes);
    let op = day.doubts[0].op;
    let confirm = Action::Mend { op, tap: restwater_screen::MendTap::Confirm };
    assert!(matches!(mine.tap(6 * MIN, &confirm), Err(AppError::NoSuchEntry)));
    // A phone that was said to be the angler's own makes its days the angler's.
    mine.tap(7 * MIN, &Action::Book { tap: BookTap::PhoneIsMine { mine: true } }).unwrap();
    assert!(mine.book_leaf(8 * MIN, "sessions").says.contains("To mend: 1 entry"));
    mine.tap(9 * MIN, &confirm).unwrap();
    assert!(!mine.book_leaf(10 * MIN, "sessions").says.contains("To mend"));
}
