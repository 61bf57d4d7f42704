//! A day that was sent as a table and then undone: its latest copy says so, and so replaces the one that was sent.

use super::club::one_cast;
use super::whose::{a_partners_day, all_sessions, go};
use super::*;
use restwater_screen::{BookTap, FilesTap, FormChoice, Span};
use std::path::Path;

impl Phone {
    /// The rows of a table of all days, each as the value of some columns, and what the phone says that it holds.
    fn rows_of(&mut self, form: FormChoice, columns: &[&str], ms: i64) -> (Vec<Vec<String>>, String) {
        self.look();
        self.tap(ms, &Action::Files { tap: FilesTap::Span { span: Span::Everything } }).unwrap();
        self.look();
        self.tap(ms + 1, &Action::Files { tap: FilesTap::Form { form } }).unwrap();
        let sent = self.app().send(&at(ms + 2), &mut go).unwrap();
        let text = std::fs::read_to_string(Path::new(&sent.path)).unwrap();
        let mut lines = text.lines().map(|line| line.split(',').map(str::to_owned).collect::<Vec<_>>());
        let header = lines.next().unwrap();
        let place = |column: &&str| header.iter().position(|name| name == column).unwrap();
        let places: Vec<usize> = columns.iter().map(place).collect();
        let rows = lines.map(|row| places.iter().map(|place| row[*place].clone()).collect()).collect();
        (rows, sent.says.split(':').next().unwrap().to_owned())
    }
}

#[test]
fn a_day_whose_start_was_undone_keeps_a_row_that_says_so() {
    let mut phone = one_cast();
    let columns = ["casts", "entries"];
    let sent = phone.rows_of(FormChoice::Sessions, &columns, 20 * MIN);
    assert_eq!(sent, (vec![vec!["1".into(), "3".into()]], "1 session".into()));
    for minute in 30..33 {
        phone.tap(minute * MIN, &Action::Undo).unwrap();
    }
    let (rows, says) =
        phone.rows_of(FormChoice::Sessions, &["casts", "entries", "started", "water"], 40 * MIN);
    assert_eq!(rows, [["0", "6", "", ""]], "more entries than the copy with the cast");
    assert_eq!(says, "0 sessions", "it is none for the angler");
    assert!(phone.rows_of(FormChoice::Casts, &columns[1..], 41 * MIN).0.is_empty());
}

#[test]
fn a_day_without_waits_has_one_row_in_the_table_for_a_club_and_is_no_day() {
    let mut phone = one_cast();
    let columns = ["session_id", "phone_id", "entries", "water", "kind"];
    let (sent, says) = phone.rows_of(FormChoice::Club, &columns, 20 * MIN);
    assert!(sent.len() > 1 && says == "1 day", "{says}");
    for undone in 1..=3 {
        phone.tap((30 + undone) * MIN, &Action::Undo).unwrap();
        let (rows, says) = phone.rows_of(FormChoice::Club, &columns, (40 + undone) * MIN);
        if undone == 1 {
            continue; // The cast is out again.
        }
        let entries = (3 + undone).to_string();
        assert_eq!(rows, [[sent[0][0].as_str(), sent[0][1].as_str(), entries.as_str(), "", ""]]);
        assert_eq!(says, "0 days");
    }
}

/// A partner's day that is undone with its import has no row: the partner's own copy of it counts.
#[test]
fn a_day_that_is_undone_with_an_import_has_no_row() {
    let (_theirs, file) = a_partners_day();
    let mut mine = one_cast();
    let id = mine.take(&file, 20 * MIN);
    assert_eq!(mine.rows_of(FormChoice::Sessions, &["casts"], 21 * MIN).0, [["3"], ["1"]]);
    mine.tap(22 * MIN, &Action::UndoImport { id }).unwrap();
    assert_eq!(mine.rows_of(FormChoice::Sessions, &["casts"], 23 * MIN).0, [["1"]]);
}

/// A note of mine about the partner's day stays when its import is undone, and makes no row of an empty day.
#[test]
fn a_note_in_a_day_that_is_undone_with_its_import_makes_no_row_of_it() {
    let (mut theirs, file) = a_partners_day();
    let day = theirs.app().session().unwrap().id;
    let mut mine = one_cast();
    let id = mine.take(&file, 20 * MIN);
    mine.tap(21 * MIN, &all_sessions()).unwrap();
    mine.tap(22 * MIN, &Action::Book { tap: BookTap::Open { session: day } }).unwrap();
    mine.tap(23 * MIN, &typed(TypedInto::Note, "herons all day")).unwrap();
    mine.tap(24 * MIN, &Action::UndoImport { id }).unwrap();
    assert_eq!(mine.rows_of(FormChoice::Sessions, &["casts"], 25 * MIN).0, [["1"]]);
}

/// The file of noon is undone, that of the evening is not: without its START the day is the partner's to send.
#[test]
fn a_day_whose_start_alone_is_undone_with_an_import_has_no_row() {
    let mut theirs = Phone::with_ids_from(500);
    theirs.tap(0, &START).unwrap();
    theirs.tap(MIN, &CAST).unwrap();
    let noon = theirs.all_of_it(2 * MIN);
    let mut mine = one_cast();
    let id = mine.take(&noon, 20 * MIN);
    theirs.tap(30 * MIN, &WOUND_IN).unwrap();
    theirs.tap(31 * MIN, &CAST).unwrap();
    theirs.tap(40 * MIN, &WOUND_IN).unwrap();
    let evening = theirs.all_of_it(41 * MIN);
    mine.take(&evening, 42 * MIN);
    mine.tap(43 * MIN, &Action::UndoImport { id }).unwrap();
    assert_eq!(mine.rows_of(FormChoice::Sessions, &["casts"], 44 * MIN).0, [["1"]]);
    assert_eq!(mine.rows_of(FormChoice::Casts, &["cast"], 45 * MIN).0.len(), 1, "nor its casts");
}
