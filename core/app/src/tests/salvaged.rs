//! A salvage of a log whose last entries are only in its write-ahead log, as an app that was killed leaves them.

use super::whose::{a_partners_day_between_my_taps, all_sessions};
use super::*;
use std::fs;
use std::path::Path;

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
fn damage_within_the_write_ahead_log_costs_no_entry_that_stands_after_it() {
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
