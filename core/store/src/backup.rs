//! Rolling backups: a copy of the whole file, verified after it was written, thinned with age.

use super::closed_file::{each_op_of_file, open_closed};
use super::connect::sync_directory;
use super::thin::kept;
use super::{Store, StoreError};
use chrono::{DateTime, NaiveDateTime};
use rusqlite::backup::{Backup, StepResult};
use rusqlite::{Connection, MAIN_DB};
use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File};
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};

/// One verified backup.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BackupFile {
    /// Where it is.
    pub path: PathBuf,
    /// When it was made: wall ms since 1970 UTC, to the second.
    pub wall_ms: i64,
}

/// How many pages are copied between two checks for cancellation.
const PAGES: i32 = 256;

impl Store {
    /// Copies the store into `dir`, verifies the copy, and only then thins the older ones.
    ///
    /// `progress` receives the pages left and the total; `Break` cancels the backup. Returns `None` if it was
    /// cancelled.
    pub fn backup(
        &self,
        dir: &Path,
        wall_ms: i64,
        progress: &mut dyn FnMut(u64, u64) -> ControlFlow<()>,
    ) -> Result<Option<BackupFile>, StoreError> {
        fs::create_dir_all(dir).map_err(StoreError::from_io)?;
        let part = dir.join("backup.part");
        let _ = fs::remove_file(&part);
        let done = self.copy_to(&part, progress).and_then(|whole| {
            if !whole {
                return Ok(None);
            }
            self.verify(&part)?;
            File::open(&part).and_then(|f| f.sync_all()).map_err(StoreError::from_io)?;
            let wall_ms = nameable(wall_ms);
            let path = dir.join(name_of(wall_ms));
            fs::rename(&part, &path).map_err(StoreError::from_io)?;
            sync_directory(dir)?;
            // The backup is made and verified. An older one that can't be removed now will be removed with a
            // later one.
            let _ = thin(dir, wall_ms);
            Ok(Some(BackupFile { path, wall_ms }))
        });
        let _ = fs::remove_file(&part);
        done
    }

    fn copy_to(
        &self,
        part: &Path,
        progress: &mut dyn FnMut(u64, u64) -> ControlFlow<()>,
    ) -> Result<bool, StoreError> {
        let source = self.conn()?;
        let mut copy = Connection::open(part)?;
        let backup = Backup::new_with_names(&source, MAIN_DB, &mut copy, MAIN_DB)?;
        loop {
            match backup.step(PAGES)? {
                StepResult::Done => return Ok(true),
                StepResult::More => {}
                _ => return Err(StoreError::Busy),
            }
            let pages = backup.progress();
            let count = |n: i32| u64::try_from(n).unwrap_or(0);
            if progress(count(pages.remaining), count(pages.pagecount)).is_break() {
                return Ok(false);
            }
        }
    }

    /// The copy must be sound and contain every op of this store, each as it was written: what the file system or the memory
    /// did to an old entry would otherwise be copied until no sound backup is left.
    fn verify(&self, copy: &Path) -> Result<(), StoreError> {
        let conn = open_closed(copy)?;
        let sound: String = conn.query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))?;
        if sound != "ok" {
            return Err(StoreError::Damaged(format!("the backup: {sound}")));
        }
        let mut theirs = 0;
        each_op_of_file(copy, &mut |row| {
            theirs += u64::from(row.is_ok());
            Ok::<(), StoreError>(())
        })?;
        let ours = self.count()?;
        if theirs != ours {
            return Err(StoreError::Damaged(format!("the backup has {theirs} intact entries of {ours}")));
        }
        Ok(())
    }
}

/// The backups in a directory, latest first. Files with other names are ignored.
pub fn backups(dir: &Path) -> Result<Vec<BackupFile>, StoreError> {
    let entries = match fs::read_dir(dir) {
        Err(e) if e.kind() == std::io::ErrorKind::NotFound => return Ok(vec![]),
        other => other.map_err(StoreError::from_io)?,
    };
    let mut found = Vec::new();
    for entry in entries {
        let path = entry.map_err(StoreError::from_io)?.path();
        if let Some(wall_ms) = path.file_name().and_then(|n| n.to_str()).and_then(time_of) {
            found.push(BackupFile { path, wall_ms });
        }
    }
    restwater_sorting::by_key(&mut found, |b| std::cmp::Reverse(b.wall_ms));
    Ok(found)
}

/// Removes older backups. The one just made stays, even if a reset clock makes it the oldest.
fn thin(dir: &Path, made: i64) -> Result<(), StoreError> {
    let all: BTreeMap<i64, PathBuf> = backups(dir)?.into_iter().map(|b| (b.wall_ms, b.path)).collect();
    for time in superfluous(&all.keys().copied().collect(), made) {
        if let Some(path) = all.get(&time) {
            fs::remove_file(path).map_err(StoreError::from_io)?;
        }
    }
    Ok(())
}

fn superfluous(times: &BTreeSet<i64>, made: i64) -> Vec<i64> {
    let keep = kept(times);
    times.iter().copied().filter(|time| !keep.contains(time) && *time != made).collect()
}

/// Which copies in a folder of the angler's are superfluous by the same rule, given the names of those that this phone made
/// there and of the one just made. A name that is not exactly one of ours is never among them.
pub fn superfluous_copies(names: &[String], made: &str) -> Vec<String> {
    let ours = |name: &str| time_of(name).filter(|time| name_of(*time) == name);
    let Some(made) = ours(made) else { return vec![] };
    let mut times: BTreeSet<i64> = names.iter().filter_map(|name| ours(name)).collect();
    times.insert(made);
    let go: BTreeSet<i64> = superfluous(&times, made).into_iter().collect();
    names.iter().filter(|name| ours(name).is_some_and(|time| go.contains(&time))).cloned().collect()
}

const NAME: &str = "restwater-%Y%m%dT%H%M%SZ.db";

/// The times that a name can contain: the years 1 to 9999 in UTC, in ms since 1970.
const NAMEABLE_MS: [i64; 2] = [-62_135_596_800_000, 253_402_300_799_000];

/// The time to the second, limited to that range, so that a backup gets a name whatever the clock shows.
fn nameable(wall_ms: i64) -> i64 {
    let [first, last] = NAMEABLE_MS;
    wall_ms.clamp(first, last).div_euclid(1_000) * 1_000
}

fn name_of(wall_ms: i64) -> String {
    DateTime::from_timestamp_millis(nameable(wall_ms)).unwrap_or_default().format(NAME).to_string()
}

fn time_of(name: &str) -> Option<i64> {
    let time = NaiveDateTime::parse_from_str(name, NAME).ok()?;
    Some(time.and_utc().timestamp_millis())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_contain_the_time_and_other_names_are_ignored() {
        let name = name_of(1_768_032_000_999);
        assert_eq!(name, "restwater-20260110T080000Z.db");
        assert_eq!(time_of(&name), Some(1_768_032_000_000));
        for other in
            ["restwater.db", "restwater-20260110T080000Z.db-wal", "restwater-20261310T080000Z.db", "x"]
        {
            assert_eq!(time_of(other), None, "{other}");
        }
    }

    #[test]
    fn copies_are_thinned_by_the_same_rule_and_nothing_else_is_touched() {
        let minute = |n: i64| name_of(1_768_032_000_000 + n * 60_000);
        let mut names: Vec<String> = (0..120).map(minute).collect();
        let foreign = [
            "restwater-20260110T080000Z (1).db",
            "restwater-2026110T080000Z.db",
            "restwater-20260110T080000Z.db.part",
            "notes.txt",
        ];
        names.extend(foreign.map(String::from));
        let go = superfluous_copies(&names, &minute(119));
        // Two hours of a copy a minute: the latest of each hour stays.
        assert_eq!(go.len(), 118);
        assert!(!go.contains(&minute(59)) && !go.contains(&minute(119)));
        assert!(!go.iter().any(|name| foreign.contains(&name.as_str())), "{go:?}");
    }

    #[test]
    fn the_copy_just_made_stays_though_a_reset_clock_makes_it_the_oldest() {
        let minute = |n: i64| name_of(1_768_032_000_000 + n * 60_000);
        let names = [minute(0), minute(1), minute(2)];
        assert_eq!(superfluous_copies(&names, &minute(0)), [minute(1)]);
        assert_eq!(superfluous_copies(&names, "another.db"), Vec::<String>::new());
    }

    #[test]
    fn a_backup_has_a_name_with_its_time_whatever_the_clock_shows() {
        for wall_ms in [i64::MIN, -62_135_596_800_000, -10_290_573, -1, 0, 253_402_300_799_999, i64::MAX] {
            assert_eq!(time_of(&name_of(wall_ms)), Some(nameable(wall_ms)), "{wall_ms}");
        }
    }
}
