//! A salvage of a log whose last entries are only in its write-ahead log, as an app that was killed leaves them.

use super::whose::go;
use super::whose::{a_partners_day_between_my_taps, all_sessions};
use super::*;
use std::fs;
use std::path::Path;

const DAY: i64 = 24 * 60 * MIN;
const LOG: &str = "restwater.db-wal";
/// A frame of the write-ahead log: its header and a page (SQLite file format, section 4.1).
const FRAME: usize = 24 + 4_096;

impl Phone {
    /// The same phone after the process was killed: what was on its disk then, changed by `change`.
    fn killed(&mut self, change: impl FnOnce(&Path)) {
        let disk = TempDir::new().unwrap();
        for name in ["restwater.db", LOG] {
            fs::copy(self.dir.path().join(name), disk.path().join(name)).unwrap();
        }
        drop(self.app.take());
        change(disk.path());
        self.dir = disk;
    }

    fn salvage(&mut self, ms: i64) -> String {
        let (entropy, words) = (Box::new(Counting(77_000_000)), Wording::shared("en-GB"));
        let said = App::salvage(self.dir.path(), entropy, &at(ms), words).unwrap();
        self.open();
        said
    }

    fn kinds(&mut self) -> Vec<String> {
        let session = self.app().session().unwrap().id;
        let ops = self.app().journal.store().ops_of(session).unwrap();
        ops.iter().map(|op| op.payload.kind().to_owned()).collect()
    }
}

#[test]
fn an_import_made_just_before_the_app_was_killed_can_be_undone_after_a_salvage() {
    let (mut mine, id) = a_partners_day_between_my_taps();
    mine.killed(|_| {});
    mine.salvage(10 * MIN);
    let imports = mine.files(11 * MIN).imports;
    assert_eq!(imports.iter().map(|import| (import.id, import.undone)).collect::<Vec<_>>(), [(id, false)]);
    mine.tap(12 * MIN, &Action::UndoImport { id }).unwrap();
    mine.tap(13 * MIN, &all_sessions()).unwrap();
    assert_eq!(mine.book_leaf(13 * MIN, "sessions").says, "1 session of 1.");
    assert_eq!(mine.kinds(), ["session_started", "cast", "wound_in"], "my own entries stay");
}

/// The power went while the last tap was being stored: its key never answered, and opening the log doesn't show it. Nor
/// does a salvage, which keeps every entry that was answered.
#[test]
fn a_tap_that_was_never_stored_does_not_appear_after_a_salvage() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(2 * MIN, &WOUND_IN).unwrap();
    let without_its_end = |dir: &Path| {
        let log = dir.join(LOG);
        let mut bytes = fs::read(&log).unwrap();
        bytes.truncate(bytes.len() - FRAME);
        let kind = b"\"wound_in\"";
        assert!(bytes.windows(kind.len()).any(|part| part == kind), "its bytes are there");
        fs::write(&log, bytes).unwrap();
    };
    phone.killed(without_its_end);
    let disk = TempDir::new().unwrap();
    for name in ["restwater.db", LOG] {
        fs::copy(phone.dir.path().join(name), disk.path().join(name)).unwrap();
    }
    phone.open();
    assert_eq!(phone.kinds(), ["session_started", "cast"], "as it is opened");
    drop(phone.app.take());
    phone.dir = disk;
    let said = phone.salvage(10 * MIN);
    assert_eq!(phone.kinds(), ["session_started", "cast"], "{said}");
}

/// SQLite reads a write-ahead log up to the first damage. Every acknowledged entry is kept, also after that.
#[test]
fn damage_within_the_write_ahead_log_costs_no_entry_after_it() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(2 * MIN, &WOUND_IN).unwrap();
    let all = phone.kinds();
    phone.killed(|dir| {
        let log = dir.join(LOG);
        let mut bytes = fs::read(&log).unwrap();
        // The first frame, so that no checksum after it is right.
        bytes[32 + 100..32 + 200].fill(0x5A);
        fs::write(&log, bytes).unwrap();
    });
    phone.salvage(10 * MIN);
    assert_eq!(phone.kinds(), all);
}

/// The storage changed one bit of an old entry. CHECK says what helps, and it does: the backup puts that entry right.
#[test]
fn an_entry_that_rotted_is_put_right_by_the_backup_that_check_advises() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(2 * MIN, &Action::Note { text: "herons".into() }).unwrap();
    phone.tap(9 * MIN, &Action::EndSession).unwrap();
    // The next day runs, so what is shown of the first one comes from its summary.
    phone.tap(DAY, &START).unwrap();
    phone.book_leaf(DAY, "sessions");
    let backup = phone.app().back_up(&at(DAY), &mut go).unwrap().unwrap().path;
    drop(phone.app.take());
    let file = phone.dir.path().join("restwater.db");
    let mut bytes = fs::read(&file).unwrap();
    let place = bytes.windows(6).position(|part| part == b"herons").unwrap();
    bytes[place] ^= 1;
    fs::write(&file, bytes).unwrap();
    phone.open();
    let said = phone.app().look_over().unwrap();
    assert!(said.starts_with("1 entry is damaged and 4 are whole. Restore the latest backup"), "{said}");
    assert!(phone.app().back_up(&at(DAY + MIN), &mut go).is_err(), "rot is not copied over sound backups");
    let seen = phone.app().look_into(Path::new(&backup), &at(12 * MIN), &mut go).unwrap();
    assert!(seen.brings && seen.whole, "the key that imports is there: {:?}", seen.lines);
    assert_eq!(seen.lines[0], "1 entry is damaged in your log. IMPORT puts it right.");
    let took = phone.app().take_in(Path::new(&backup), "", &at(13 * MIN), &mut go).unwrap();
    assert_eq!(took.lines[0], "1 entry that was damaged in your log is whole again.");
    assert_eq!(phone.app().look_over().unwrap(), "All well: 5 entries, each as it was written.");
    assert!(phone.app().back_up(&at(DAY + 2 * MIN), &mut go).unwrap().is_some());
    let row = phone.app().journal.store().sessions().unwrap().pop().unwrap();
    let ops = phone.app().journal.store().ops_of(row.id).unwrap();
    assert!(ops.iter().any(|op| op.payload == Payload::Noted { text: "herons".into() }));
    assert_eq!(phone.files(15 * MIN).imports, [], "nothing came that UNDO IMPORT could take back");
}

/// An index is computed from the entries, so CHECK rebuilds it instead of sending the angler for a backup.
#[test]
fn a_damaged_index_is_rebuilt_by_check() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    let ids: Vec<[u8; 16]> = phone.app().ops().iter().map(|op| op.id.into_bytes()).collect();
    drop(phone.app.take());
    let file = phone.dir.path().join("restwater.db");
    let mut bytes = fs::read(&file).unwrap();
    // A leaf of an index begins with 0x0A (SQLite file format, section 1.6); only that of the entries has both ids.
    let leaves = bytes.chunks_mut(4_096).filter(|page| page[0] == 0x0A);
    let damaged = leaves.filter_map(|page| {
        let place = |id: &[u8; 16]| page.windows(16).position(|part| part == id);
        let (_, last) = place(&ids[0]).zip(place(&ids[1]))?;
        page[last + 15] ^= 1;
        Some(())
    });
    assert_eq!(damaged.count(), 1);
    fs::write(&file, bytes).unwrap();
    phone.open();
    let found = phone.app().journal.store().check(&mut |_, _, _| None).unwrap();
    assert!(!found.file.is_empty() && found.damaged_ops == 0, "{found:?}");
    assert_eq!(phone.app().look_over().unwrap(), "All well: 2 entries, each as it was written.");
    assert!(phone.app().back_up(&at(2 * MIN), &mut go).unwrap().is_some());
}
