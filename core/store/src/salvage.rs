//! A damaged store is set aside, never deleted, and every op that can still be read goes into a new one.
//!
//! Two methods are used: reading through SQLite, row by row, and searching the raw bytes of the file and of the
//! completed transactions in its write-ahead log, where each op directly follows its hash. An op counts as saved
//! only if its hash is right, so that nothing produced by the damage gets in.

use super::closed_file::open_closed;
use super::committed::committed_pages;
use super::connect::{has_log, lock, make_whole, open_unchanged, sync_directory};
use super::look::{Found, look_only};
use super::{Adding, FILE_NAME, Hashed, ImportRow, MOST_OPS, Store, StoreError, uuid_of};
use restwater_log::{Op, op_from_bytes};
use rusqlite::{Connection, TransactionBehavior};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use uuid::Uuid;

/// What was saved of a damaged store.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SalvageReport {
    /// Ops saved.
    pub saved: u64,
    /// Ops that could not be saved, if the file still shows how many it had.
    pub lost: Option<u64>,
    /// Where the damaged file is now.
    pub set_aside: PathBuf,
}

/// The name of the new store until it is complete.
const MAKING: &str = "restwater.db.saving";
/// Prefix of the complete new store that is about to replace the damaged one; the time of the salvage
/// follows.
const SAVED: &str = "restwater.db.saved-";

/// The steps of a salvage; a test interrupts it at each, as the end of the process would.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Step {
    /// The new store is being filled.
    Filling,
    /// It is complete. From here on it will replace the damaged one, if necessary when the store is opened
    /// next.
    Whole,
    /// The write-ahead log of the damaged store is set aside.
    LogSetAside,
    /// The damaged store is set aside.
    SetAside,
}

impl Store {
    /// Sets the damaged store in `dir` aside and puts a new one with every op that could be saved in its place.
    ///
    /// The new store is created beside the damaged one, which stays unchanged until the new one is complete.
    /// This is for a store that gave [`StoreError::Damaged`]; a foreign or newer file is not touched and
    /// returns its own error. `forget` names the settings that apply only to the damaged file.
    pub fn salvage(
        dir: &Path,
        new_device: Uuid,
        wall_ms: i64,
        forget: &[&str],
    ) -> Result<SalvageReport, StoreError> {
        salvage_stopping(dir, new_device, wall_ms, forget, &mut |_| Ok(()))
    }
}

/// The salvage itself. `at` is called before each step; an error from it stops the salvage.
pub(super) fn salvage_stopping(
    dir: &Path,
    new_device: Uuid,
    wall_ms: i64,
    forget: &[&str],
    at: &mut dyn FnMut(Step) -> Result<(), StoreError>,
) -> Result<SalvageReport, StoreError> {
    finish_salvage(dir)?;
    match look_only(&dir.join(FILE_NAME)) {
        Ok(Found::Nothing) if !has_log(dir) => return Err(StoreError::Foreign("nothing to save".into())),
        Ok(_) | Err(StoreError::Damaged(_)) => {}
        Err(other) => return Err(other),
    }
    let _lock = lock(dir)?;
    let mut found = gather(dir)?;
    found.settings.retain(|(key, _)| !forget.contains(&key.as_str()));
    let saved = found.ops.len() as u64;
    let mut wall_ms = wall_ms;
    while set_aside_as(dir, wall_ms).exists() {
        wall_ms += 1;
    }
    let whole = dir.join(format!("{SAVED}{wall_ms}"));
    make_whole(dir, MAKING, &whole, found.device.unwrap_or(new_device), |conn| {
        at(Step::Filling)?;
        fill(conn, &found)
    })?;
    let set_aside = take_place(dir, &whole, wall_ms, at)?;
    Ok(SalvageReport { saved, lost: found.had.map(|had| had.saturating_sub(saved)), set_aside })
}

/// Writes everything that was found in one transaction.
fn fill(conn: &mut Connection, found: &Salvaged) -> Result<(), StoreError> {
    let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate)?;
    let mut adding = Adding::begin(&tx)?;
    // In the order of the damaged store, so that the entries of an import stay together.
    let mut ops: Vec<&SavedOp> = found.ops.values().collect();
    ops.sort_by_key(|found| found.seq.unwrap_or(i64::MAX));
    for SavedOp { op, body, .. } in &ops {
        adding.add(op, Hashed::of(body))?;
    }
    adding.finish()?;
    let seqs: Vec<i64> = ops.iter().map_while(|found| found.seq).collect();
    for import in &found.imports {
        import.add_again(&tx, &seqs)?;
    }
    for (key, value) in &found.settings {
        tx.prepare_cached(include_str!("sql/set_setting.sql"))?.execute([key, value])?;
    }
    tx.commit()?;
    Ok(())
}

/// Finishes a salvage that was interrupted after the new store was complete. It may be interrupted anywhere
/// and called again, since the files present show how far it got.
pub(super) fn finish_salvage(dir: &Path) -> Result<(), StoreError> {
    let Some((whole, wall_ms)) = saved_store(dir)? else { return Ok(()) };
    let _lock = lock(dir)?;
    take_place(dir, &whole, wall_ms, &mut |_| Ok(())).map(drop)
}

/// The complete new store of an interrupted salvage, and the time of that salvage.
fn saved_store(dir: &Path) -> Result<Option<(PathBuf, i64)>, StoreError> {
    for entry in fs::read_dir(dir).map_err(StoreError::from_io)? {
        let entry = entry.map_err(StoreError::from_io)?;
        let name = entry.file_name();
        let time = name.to_str().and_then(|name| name.strip_prefix(SAVED)).and_then(|time| time.parse().ok());
        if let Some(wall_ms) = time {
            return Ok(Some((entry.path(), wall_ms)));
        }
    }
    Ok(None)
}

/// The path to which a store found damaged at that time is moved.
fn set_aside_as(dir: &Path, wall_ms: i64) -> PathBuf {
    dir.join(format!("{FILE_NAME}.damaged-{wall_ms}"))
}

/// Moves the damaged store aside, puts the complete one in its place, and returns the new path of the damaged
/// one. Its write-ahead log is moved first, since it must never be beside another store than its own.
fn take_place(
    dir: &Path,
    whole: &Path,
    wall_ms: i64,
    at: &mut dyn FnMut(Step) -> Result<(), StoreError>,
) -> Result<PathBuf, StoreError> {
    at(Step::Whole)?;
    let set_aside = set_aside_as(dir, wall_ms);
    for (end, step) in [("-wal", Step::LogSetAside), ("", Step::SetAside)] {
        let from = dir.join(format!("{FILE_NAME}{end}"));
        let mut to = set_aside.clone().into_os_string();
        to.push(end);
        if from.exists() && !Path::new(&to).exists() {
            fs::rename(from, to).map_err(StoreError::from_io)?;
        }
        sync_directory(dir)?;
        at(step)?;
    }
    fs::rename(whole, dir.join(FILE_NAME)).map_err(StoreError::from_io)?;
    sync_directory(dir)?;
    Ok(set_aside)
}

/// An op that was found.
struct SavedOp {
    op: Op,
    /// Its original bytes, which may contain more than is known here if a later version wrote them.
    body: Vec<u8>,
    /// The number of its row; `None` if only its bytes were found.
    seq: Option<i64>,
}

#[derive(Default)]
struct Salvaged {
    ops: BTreeMap<Uuid, SavedOp>,
    imports: Vec<ImportRow>,
    settings: Vec<(String, String)>,
    device: Option<Uuid>,
    had: Option<u64>,
}

fn gather(dir: &Path) -> Result<Salvaged, StoreError> {
    let file = dir.join(FILE_NAME);
    let mut found = Salvaged::default();
    // First with what its write-ahead log has completed, since only there the latest imports and choices are; then
    // without it, since it may be the damaged part.
    let with_log = || matches!(look_only(&file), Ok(Found::Store)) && has_log(dir);
    if with_log()
        && let Ok(conn) = open_unchanged(&file)
    {
        // Entries that can't be read here are found in the raw bytes, as far as they are intact.
        let _ = by_rows(&conn, &mut found);
    }
    if let Ok(conn) = open_closed(&file) {
        let _ = by_rows(&conn, &mut found);
    }
    let bytes = bytes_of(&file)?;
    by_bytes(&bytes, &mut found.ops);
    let log = bytes_of(&dir.join(format!("{FILE_NAME}-wal")))?;
    for page in committed_pages(&log) {
        by_bytes(page, &mut found.ops);
    }
    found.device = found.device.or_else(|| device_in(&bytes)).or_else(|| device_in(&log));
    Ok(found)
}

/// The bytes of a file; none if it isn't there.
fn bytes_of(file: &Path) -> Result<Vec<u8>, StoreError> {
    match fs::read(file) {
        Err(e) if e.kind() == std::io::ErrorKind::NotFound => Ok(Vec::new()),
        bytes => bytes.map_err(StoreError::from_io),
    }
}

/// Reads each row separately, so that a damaged page costs only the rows on it.
fn by_rows(conn: &Connection, found: &mut Salvaged) -> Result<(), StoreError> {
    let device: Result<Vec<u8>, _> = conn.query_row(include_str!("sql/device.sql"), [], |row| row.get(0));
    // If the page with the device is lost, it can be found from a session in which it wrote.
    let told_again = || conn.query_row(include_str!("sql/device_by_session.sql"), [], |row| row.get(0));
    let device = device.or_else(|_| told_again()).ok().and_then(|bytes| uuid_of(&bytes).ok());
    found.device = found.device.or(device);
    let had: Result<i64, _> = conn.query_row("SELECT max(seq) FROM op", [], |row| row.get(0));
    found.had = found.had.max(had.ok().and_then(|n| u64::try_from(n).ok()));
    // Each as far as it can be read: without them the entries are there all the same.
    if found.settings.is_empty() {
        found.settings = settings(conn).unwrap_or_default();
    }
    if found.imports.is_empty() {
        found.imports = ImportRow::all(conn).unwrap_or_default();
        found.imports.reverse();
    }
    let mut one = conn.prepare("SELECT sha256, body FROM op WHERE seq = ?1")?;
    let most = i64::try_from(found.had.unwrap_or(0).min(MOST_OPS)).unwrap_or(i64::MAX);
    for seq in 1..=most {
        let row = one.query_row([seq], |row| Ok((row.get::<_, Vec<u8>>(0)?, row.get::<_, Vec<u8>>(1)?)));
        if let Ok((sha, body)) = row
            && Sha256::digest(&body).as_slice() == sha
            && let Ok(op) = op_from_bytes(&body)
        {
            found.ops.entry(op.id).or_insert(SavedOp { op, body, seq: Some(seq) });
        }
    }
    Ok(())
}

/// The settings that can still be read.
fn settings(conn: &Connection) -> Result<Vec<(String, String)>, StoreError> {
    let mut statement = conn.prepare("SELECT key, value FROM setting")?;
    let rows = statement.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
    Ok(rows.map_while(Result::ok).collect())
}

/// The possible beginnings of the canonical bytes of an op: its moment, or what it amends.
const STARTS: [&[u8]; 2] = [br#"{"at":{""#, br#"{"amends":""#];

/// Finds ops in raw bytes: the start of one, the hash directly before it, and JSON up to its end.
fn by_bytes(bytes: &[u8], ops: &mut BTreeMap<Uuid, SavedOp>) {
    for start in STARTS {
        let mut from = 32;
        while let Some(at) = position(bytes, start, from) {
            from = at + 1;
            let mut values =
                serde_json::Deserializer::from_slice(&bytes[at..]).into_iter::<serde::de::IgnoredAny>();
            if !matches!(values.next(), Some(Ok(_))) {
                continue;
            }
            let body = &bytes[at..at + values.byte_offset()];
            if Sha256::digest(body).as_slice() == &bytes[at - 32..at]
                && let Ok(op) = op_from_bytes(body)
            {
                ops.entry(op.id).or_insert_with(|| SavedOp { op, body: body.to_vec(), seq: None });
            }
        }
    }
}

/// The beginning of the row that contains the store's device (SQLite file format, sections 1.6 and 2.1): 25
/// bytes of payload, a header of three with the types of a text of six bytes and a blob of sixteen, and the
/// text. The sixteen bytes of the device follow.
const DEVICE_ROW: &[u8] = b"\x19\x03\x19\x2cdevice";

/// The device of a store if the page that leads to that row is lost but the row itself is not.
fn device_in(bytes: &[u8]) -> Option<Uuid> {
    let at = position(bytes, DEVICE_ROW, 0)? + DEVICE_ROW.len();
    Uuid::from_slice(bytes.get(at..at + 16)?).ok()
}

fn position(bytes: &[u8], what: &[u8], from: usize) -> Option<usize> {
    let mut at = from;
    loop {
        // Searching for the first byte alone is what makes this fast.
        at += bytes.get(at..)?.iter().position(|b| *b == what[0])?;
        if bytes[at..].starts_with(what) {
            return Some(at);
        }
        at += 1;
    }
}
