//! A second import brings back what was undone with a first one: UNDO IMPORT of the second leaves the log as it was before it.

use super::whose::all_sessions;
use super::*;
use std::path::PathBuf;

const DAY: i64 = 24 * 60 * MIN;

/// A partner's day as it was sent at noon, and again in the evening.
fn sent_twice() -> (PathBuf, PathBuf, Phone) {
    let mut theirs = Phone::with_ids_from(500);
    theirs.tap(-DAY, &typed(TypedInto::Water, "Alder Pool")).unwrap();
    theirs.tap(-DAY + MIN, &START).unwrap();
    theirs.tap(-DAY + 2 * MIN, &CAST).unwrap();
    let noon = theirs.all_of_it(-DAY + 3 * MIN);
    let kept = noon.with_file_name("noon");
    std::fs::rename(&noon, &kept).unwrap();
    theirs.tap(-DAY + 9 * MIN, &BITE).unwrap();
    theirs.tap(-DAY + 11 * MIN, &LANDED).unwrap();
    theirs.tap(-DAY + 12 * MIN, &Action::EndSession).unwrap();
    let evening = theirs.all_of_it(-DAY + 13 * MIN);
    (kept, evening, theirs)
}

impl Phone {
    /// How many days the Book has, how many bites those have, and which imports are undone, latest first.
    fn shown(&mut self, ms: i64) -> (String, usize, Vec<bool>) {
        self.look();
        self.tap(ms, &all_sessions()).unwrap();
        let days = self.book_leaf(ms, "sessions").says;
        let store = self.app().journal.store();
        let rows = store.sessions().unwrap();
        let folded = rows.iter().map(|row| restwater_session::fold(row.id, &store.ops_of(row.id).unwrap()));
        let bites = folded.map(|s| s.casts.iter().filter(|cast| cast.bite.is_some()).count()).sum();
        (days, bites, self.files(ms + 1).imports.iter().map(|import| import.undone).collect())
    }
}

/// The first import was undone, the second one brings its entries back and adds to them.
fn undone_and_imported_again() -> (Phone, Uuid, Uuid, PathBuf, Phone) {
    let (noon, evening, theirs) = sent_twice();
    let mut mine = started();
    let first = mine.take(&noon, MIN);
    mine.tap(2 * MIN, &Action::UndoImport { id: first }).unwrap();
    assert_eq!(mine.shown(3 * MIN), ("1 session of 1.".into(), 0, vec![true]));
    let second = mine.take(&evening, 4 * MIN);
    assert_eq!(mine.shown(5 * MIN), ("2 sessions of 2.".into(), 1, vec![false, false]));
    (mine, first, second, evening, theirs)
}

#[test]
fn undoing_an_import_also_takes_away_what_it_brought_back_of_an_earlier_one() {
    let (mut mine, first, second, ..) = undone_and_imported_again();
    mine.tap(6 * MIN, &Action::UndoImport { id: second }).unwrap();
    let before = ("1 session of 1.".to_owned(), 0, vec![true, true]);
    assert_eq!(mine.shown(7 * MIN), before);
    mine.open();
    assert_eq!(mine.shown(8 * MIN), before, "after a restart too");
    mine.tap(9 * MIN, &Action::RedoImport { id: second }).unwrap();
    assert_eq!(mine.shown(10 * MIN), ("2 sessions of 2.".into(), 1, vec![false, false]));
    // Undone again, the first one can be redone alone.
    mine.tap(11 * MIN, &Action::UndoImport { id: second }).unwrap();
    mine.tap(12 * MIN, &Action::RedoImport { id: first }).unwrap();
    assert_eq!(mine.shown(13 * MIN), ("2 sessions of 2.".into(), 0, vec![true, false]));
}

#[test]
fn what_the_angler_redid_since_stays_when_the_later_import_is_undone() {
    let (mut mine, first, second, ..) = undone_and_imported_again();
    mine.tap(6 * MIN, &Action::UndoImport { id: first }).unwrap();
    mine.tap(7 * MIN, &Action::RedoImport { id: first }).unwrap();
    mine.tap(8 * MIN, &Action::UndoImport { id: second }).unwrap();
    assert_eq!(mine.shown(9 * MIN), ("2 sessions of 2.".into(), 0, vec![true, false]));
}

#[test]
fn what_the_angler_undid_since_stays_undone_when_the_later_import_is_redone() {
    let (mut mine, first, second, ..) = undone_and_imported_again();
    mine.tap(6 * MIN, &Action::UndoImport { id: first }).unwrap();
    mine.tap(7 * MIN, &Action::UndoImport { id: second }).unwrap();
    mine.tap(8 * MIN, &Action::RedoImport { id: second }).unwrap();
    assert_eq!(mine.shown(9 * MIN).2, [false, true]);
}

/// The same file once more, after both were undone: everything is back, and no line says that it is undone.
#[test]
fn a_file_brings_back_all_that_was_undone_of_two_imports() {
    let (mut mine, _, second, evening, _theirs) = undone_and_imported_again();
    mine.tap(6 * MIN, &Action::UndoImport { id: second }).unwrap();
    let seen = mine.app().look_into(&evening, &at(7 * MIN), &mut super::whose::go).unwrap();
    assert_eq!(seen.lines[0], "UNDO IMPORT removed 5 entries of this file. IMPORT brings them back.");
    mine.take(&evening, 8 * MIN);
    assert_eq!(mine.shown(9 * MIN), ("2 sessions of 2.".into(), 1, vec![false, false]));
    mine.tap(10 * MIN, &Action::UndoImport { id: second }).unwrap();
    mine.tap(11 * MIN, &Action::RedoImport { id: second }).unwrap();
    assert_eq!(mine.shown(12 * MIN), ("2 sessions of 2.".into(), 1, vec![false, false]));
}
