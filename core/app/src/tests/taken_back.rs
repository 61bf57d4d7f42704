//! Undone imports: what that means on this phone, on others, and for later taps.

use super::whose::{a_partners_day, a_partners_day_between_my_taps, all_sessions, go};
use super::*;
use restwater_screen::SetupTap;
use std::path::PathBuf;

const DAY: i64 = 24 * 60 * MIN;

/// A partner imports my day, undoes that, and sends me everything.
#[test]
fn a_partner_who_undoes_the_import_of_my_day_removes_it_only_there() {
    let mut theirs = Phone::with_ids_from(500);
    theirs.tap(0, &typed(TypedInto::Water, "Alder Pool")).unwrap();
    theirs.tap(30 * MIN, &START).unwrap();
    theirs.tap(31 * MIN, &CAST).unwrap();
    let mut mine = started();
    mine.tap(32 * MIN, &CAST).unwrap();
    let file = mine.all_of_it(40 * MIN);
    let id = theirs.take(&file, 41 * MIN);
    theirs.tap(42 * MIN, &Action::UndoImport { id }).unwrap();
    let file = theirs.all_of_it(43 * MIN);
    mine.take(&file, 44 * MIN);
    let water = |phone: &mut Phone| phone.app().session().and_then(|s| s.setup.water.clone());
    assert_eq!(water(&mut mine).as_deref(), Some("Mill pool"));
    mine.open();
    assert_eq!(water(&mut mine).as_deref(), Some("Mill pool"), "after a restart too");
    mine.tap(45 * MIN, &WOUND_IN).unwrap();
    assert!(mine.undoes().is_some_and(|label| label.starts_with("wound in")));
}

/// A redone import is exported again: a file contains what is in force, whatever happened to the import
/// meanwhile.
#[test]
fn an_undone_import_is_not_exported_but_a_redone_one_is() {
    let (_theirs, file) = a_partners_day();
    let mut mine = started();
    let id = mine.take(&file, MIN);
    let sessions_sent = |mine: &mut Phone, ms: i64, entropy: u64| {
        let file = mine.all_of_it(ms);
        let mut third = Phone::with_ids_from(entropy);
        third.take(&file, ms + 1_000);
        third.tap(ms + 2_000, &all_sessions()).unwrap();
        third.book_leaf(ms + 3_000, "sessions").says
    };
    assert_eq!(sessions_sent(&mut mine, 2 * MIN, 900), "2 sessions of 2.");
    mine.tap(3 * MIN, &Action::UndoImport { id }).unwrap();
    assert_eq!(sessions_sent(&mut mine, 4 * MIN, 910), "1 session of 1.");
    mine.tap(5 * MIN, &Action::RedoImport { id }).unwrap();
    assert_eq!(sessions_sent(&mut mine, 6 * MIN, 920), "2 sessions of 2.");
}

#[test]
fn a_file_can_be_imported_again_after_its_import_was_undone() {
    let (_theirs, file) = a_partners_day();
    let mut mine = started();
    let id = mine.take(&file, MIN);
    mine.tap(2 * MIN, &Action::UndoImport { id }).unwrap();
    let seen = mine.app().look_into(&file, &at(3 * MIN), &mut go).unwrap();
    assert!(seen.brings, "{:?}", seen.lines);
    assert_eq!(seen.lines[0], "UNDO IMPORT removed 11 entries of this file. IMPORT brings them back.");
    mine.take(&file, 4 * MIN);
    mine.tap(5 * MIN, &all_sessions()).unwrap();
    assert_eq!(mine.book_leaf(5 * MIN, "sessions").says, "2 sessions of 2.");
    let seen = mine.app().look_into(&file, &at(6 * MIN), &mut go).unwrap();
    assert!(!seen.brings, "nothing is left to bring: {:?}", seen.lines);
    // Its single line on the Files screen undoes it again, even after a restart.
    mine.open();
    mine.tap(7 * MIN, &Action::UndoImport { id }).unwrap();
    mine.tap(8 * MIN, &all_sessions()).unwrap();
    assert_eq!(mine.book_leaf(8 * MIN, "sessions").says, "1 session of 1.");
}

/// A longer file of the same day is imported after the shorter one was undone: the day is there, with
/// everything in the file.
#[test]
fn a_longer_file_restores_a_day_whose_beginning_was_undone_with_an_import() {
    let mut theirs = Phone::with_ids_from(500);
    theirs.tap(-DAY, &typed(TypedInto::Water, "Alder Pool")).unwrap();
    theirs.tap(-DAY + MIN, &START).unwrap();
    theirs.tap(-DAY + 2 * MIN, &CAST).unwrap();
    let shorter = theirs.all_of_it(-DAY + 3 * MIN);
    theirs.tap(-DAY + 9 * MIN, &BITE).unwrap();
    theirs.tap(-DAY + 11 * MIN, &LANDED).unwrap();
    let longer = theirs.all_of_it(-DAY + 12 * MIN);
    let mut mine = started();
    let id = mine.take(&shorter, MIN);
    mine.tap(2 * MIN, &Action::UndoImport { id }).unwrap();
    mine.take(&longer, 3 * MIN);
    mine.tap(4 * MIN, &all_sessions()).unwrap();
    let sessions = mine.book_leaf(4 * MIN, "sessions");
    assert_eq!(sessions.says, "2 sessions of 2.");
    assert!(sessions.list.iter().any(|day| day.label.contains("Alder Pool")), "{:?}", sessions.list);
}

#[test]
fn undoing_an_import_reads_no_session_that_the_bank_does_not_need() {
    let mut theirs = Phone::with_ids_from(500);
    for day in 0..20 {
        theirs.day_with((day - 30) * DAY, "22", 1);
    }
    let file = theirs.all_of_it(-5 * DAY);
    let mut mine = started();
    mine.tap(MIN, &CAST).unwrap();
    let id = mine.take(&file, 2 * MIN);
    mine.tap(3 * MIN, &Action::UndoImport { id }).unwrap();
    assert_eq!(mine.app().journal.recent().in_memory(), 1, "the session on the Bank alone");
    mine.open();
    assert_eq!(mine.app().journal.recent().in_memory(), 1);
    assert_eq!(mine.app().journal.recent().undo().unwrap().kind, "cast");
    mine.tap(5 * MIN, &Action::RedoImport { id }).unwrap();
    mine.app().look_over().unwrap();
    assert_eq!(mine.app().journal.recent().in_memory(), 1, "nor when the log was looked over");
}

/// My own file, sent back by a partner, brings nothing new, whether or not the partner undid its import.
#[test]
fn my_own_day_sent_back_to_me_brings_nothing() {
    let mut mine = started();
    mine.tap(MIN, &CAST).unwrap();
    let mine_sent = mine.all_of_it(2 * MIN);
    let mut theirs = Phone::with_ids_from(500);
    theirs.take(&mine_sent, 3 * MIN);
    let back = theirs.all_of_it(4 * MIN);
    let seen = mine.app().look_into(&back, &at(5 * MIN), &mut go).unwrap();
    assert_eq!((seen.new, seen.brings), (0, false), "{:?}", seen.lines);
}

/// Copying the last set-up includes the feeder of a rod, which then feeds with its casts.
#[test]
fn copying_a_set_up_puts_its_feeder_on_the_line_again() {
    let mut phone = started();
    phone.tap(MIN, &tackle(TackleTap::Feeder { mg: Some(30_000) })).unwrap();
    phone.tap(2 * MIN, &Action::EndSession).unwrap();
    phone.tap(DAY, &Action::Setup { tap: SetupTap::CopyLast }).unwrap();
    phone.tap(DAY + MIN, &START).unwrap();
    assert_eq!(phone.app().session().unwrap().rods[0].fill_mg, Some(30_000));
}

#[test]
fn a_peg_with_two_equal_digits_can_be_typed_as_fast_as_any_other() {
    let mut phone = Phone::new();
    for ms in [0, 300] {
        phone.tap(ms, &Action::Setup { tap: SetupTap::DrawDigit { digit: 2 } }).unwrap();
    }
    phone.tap(2_000, &START).unwrap();
    assert_eq!(phone.app().session().unwrap().setup.peg.as_deref(), Some("22"));
}

/// A partner's day was undone, then I moved to a new phone with a backup: his file brings it back there. The backup
/// itself, restored once more, does not.
#[test]
fn a_day_that_was_undone_before_a_move_to_a_new_phone_can_be_imported_there() {
    let (_theirs, file) = a_partners_day();
    let mut old = started();
    let id = old.take(&file, MIN);
    old.tap(2 * MIN, &Action::UndoImport { id }).unwrap();
    let backup = PathBuf::from(old.app().back_up(&at(3 * MIN), &mut go).unwrap().unwrap().path);
    let mut new = Phone::with_ids_from(900);
    let sessions = |new: &mut Phone, ms: i64| {
        new.tap(ms, &all_sessions()).unwrap();
        new.book_leaf(ms, "sessions").says
    };
    new.take(&backup, 4 * MIN);
    assert_eq!(sessions(&mut new, 5 * MIN), "1 session of 1.");
    new.app().take_in(&backup, "", &at(6 * MIN), &mut go).unwrap();
    assert_eq!(sessions(&mut new, 7 * MIN), "1 session of 1.", "the backup calls it undone");
    let seen = new.app().look_into(&file, &at(8 * MIN), &mut go).unwrap();
    assert_eq!(seen.lines[0], "UNDO IMPORT removed 11 entries of this file. IMPORT brings them back.");
    new.app().take_in(&file, "", &at(9 * MIN), &mut go).unwrap();
    assert_eq!(sessions(&mut new, 10 * MIN), "2 sessions of 2.");
    new.open();
    assert_eq!(sessions(&mut new, 11 * MIN), "2 sessions of 2.", "after a restart too");
}

/// A partner who undid the import of my day gives me his whole log as a backup: my day stays mine.
#[test]
fn a_partners_backup_does_not_undo_my_own_day() {
    let mut mine = started();
    mine.tap(MIN, &CAST).unwrap();
    let sent = mine.all_of_it(2 * MIN);
    let mut theirs = Phone::with_ids_from(500);
    let id = theirs.take(&sent, 3 * MIN);
    theirs.tap(4 * MIN, &Action::UndoImport { id }).unwrap();
    let backup = PathBuf::from(theirs.app().back_up(&at(5 * MIN), &mut go).unwrap().unwrap().path);
    mine.app().take_in(&backup, "", &at(6 * MIN), &mut go).unwrap();
    assert!(mine.app().session().is_some_and(Session::is_open), "the session on the Bank");
    mine.open();
    assert!(mine.app().session().is_some_and(Session::is_open), "after a restart too");
}

/// The list of imports outlives a salvage, and UNDO IMPORT and its REDO work as before.
#[test]
fn an_import_can_be_undone_after_the_log_was_salvaged() {
    let (mut mine, id) = a_partners_day_between_my_taps();
    mine.tap(4 * MIN, &Action::UndoImport { id }).unwrap();
    let salvaged = |mine: &mut Phone| {
        drop(mine.app.take());
        let words = Wording::shared("en-GB");
        App::salvage(mine.dir.path(), Box::new(Counting(77_000_000)), &at(10 * MIN), words).unwrap();
        mine.open();
    };
    let sessions = |mine: &mut Phone, ms: i64| {
        mine.tap(ms, &all_sessions()).unwrap();
        mine.book_leaf(ms, "sessions").says
    };
    salvaged(&mut mine);
    let imports = mine.files(11 * MIN).imports;
    assert_eq!((imports.len(), imports[0].id, imports[0].undone), (1, id, true));
    mine.tap(12 * MIN, &Action::RedoImport { id }).unwrap();
    assert_eq!(sessions(&mut mine, 13 * MIN), "2 sessions of 2.");
    salvaged(&mut mine);
    mine.tap(14 * MIN, &Action::UndoImport { id }).unwrap();
    assert_eq!(sessions(&mut mine, 15 * MIN), "1 session of 1.");
}
