//! A damaged store is set aside, never deleted, and every op that can still be read goes into a new one.
//!
//! Two ways are tried: SQLite's own reading, row by row, and the bare bytes of the file and its
//! write-ahead log, where each op stands right behind its hash. An op counts as saved only where its hash
//! is right, so that nothing invented by damage gets in.

use super::MOST_OPS;
use super::closed_file::open_closed;
use super::connect::sync_directory;
use super::look::{Found, look_only};
use super::{FILE_NAME, Store, StoreError, uuid_of};
use restwater_log::{Op, op_from_bytes};
use rusqlite::Connection;
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
    /// Ops that were there and could not be saved, where the file still tells how many it had.
    pub lost: Option<u64>,
    /// Where the damaged file is now.
    pub set_aside: PathBuf,
}

impl Store {
    /// Sets the damaged store in `dir` aside and opens a new one with every op that could be saved.
    ///
    /// For a store that gave [`StoreError::Damaged`]. A foreign or newer file is not touched: its own error.
    pub fn salvage(dir: &Path, new_device: Uuid, wall_ms: i64) -> Result<(Self, SalvageReport), StoreError> {
        let file = dir.join(FILE_NAME);
        match look_only(&file) {
            Ok(Found::Nothing) => return Err(StoreError::Foreign("nothing to save".into())),
            Ok(Found::Store) | Err(StoreError::Damaged(_)) => {}
            Err(other) => return Err(other),
        }
        let found = gather(dir)?;
        let set_aside = dir.join(format!("{FILE_NAME}.damaged-{wall_ms}"));
        for end in ["-wal", ""] {
            let from = dir.join(format!("{FILE_NAME}{end}"));
            if from.exists() {
                let mut to = set_aside.clone().into_os_string();
                to.push(end);
                fs::rename(from, to).map_err(StoreError::from_io)?;
            }
        }
        sync_directory(dir)?;
        let mut store = Self::open(dir, found.device.unwrap_or(new_device))?;
        let ops: Vec<Op> = found.ops.into_values().collect();
        for part in ops.chunks(5_000) {
            store.append(part, None)?;
        }
        for (key, value) in &found.settings {
            store.set_setting(key, value)?;
        }
        let saved = ops.len() as u64;
        let lost = found.had.map(|had| had.saturating_sub(saved));
        Ok((store, SalvageReport { saved, lost, set_aside }))
    }
}

#[derive(Default)]
struct Salvaged {
    ops: BTreeMap<Uuid, Op>,
    settings: Vec<(String, String)>,
    device: Option<Uuid>,
    had: Option<u64>,
}

fn gather(dir: &Path) -> Result<Salvaged, StoreError> {
    let file = dir.join(FILE_NAME);
    let mut found = Salvaged::default();
    if let Ok(conn) = open_closed(&file) {
        // What fails here is found again in the bytes, as far as it is whole.
        let _ = by_rows(&conn, &mut found);
    }
    for end in ["", "-wal"] {
        let path = dir.join(format!("{FILE_NAME}{end}"));
        match fs::read(&path) {
            Ok(bytes) => by_bytes(&bytes, &mut found.ops),
            Err(e) if e.kind() == std::io::ErrorKind::NotFound => {}
            Err(e) => return Err(StoreError::from_io(e)),
        }
    }
    Ok(found)
}

/// Reads row by row, each on its own, so that a broken page costs the rows on it and no more.
fn by_rows(conn: &Connection, found: &mut Salvaged) -> Result<(), StoreError> {
    let device: Result<Vec<u8>, _> = conn.query_row(include_str!("sql/device.sql"), [], |row| row.get(0));
    found.device = device.ok().and_then(|bytes| uuid_of(&bytes).ok());
    let had: Result<i64, _> = conn.query_row("SELECT max(seq) FROM op", [], |row| row.get(0));
    found.had = had.ok().and_then(|n| u64::try_from(n).ok());
    found.settings = settings(conn).unwrap_or_default();
    let mut one = conn.prepare("SELECT sha256, body FROM op WHERE seq = ?1")?;
    let most = i64::try_from(found.had.unwrap_or(0).min(MOST_OPS)).unwrap_or(i64::MAX);
    for seq in 1..=most {
        let row = one.query_row([seq], |row| Ok((row.get::<_, Vec<u8>>(0)?, row.get::<_, Vec<u8>>(1)?)));
        if let Ok((sha, body)) = row
            && Sha256::digest(&body).as_slice() == sha
            && let Ok(op) = op_from_bytes(&body)
        {
            found.ops.insert(op.id, op);
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

/// How the canonical bytes of an op begin: with its moment, or with what it amends.
const STARTS: [&[u8]; 2] = [br#"{"at":{""#, br#"{"amends":""#];

/// Finds ops in bare bytes: the start of one, the hash right before it, and JSON up to its end.
fn by_bytes(bytes: &[u8], ops: &mut BTreeMap<Uuid, Op>) {
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
                ops.insert(op.id, op);
            }
        }
    }
}

fn position(bytes: &[u8], what: &[u8], from: usize) -> Option<usize> {
    let mut at = from;
    loop {
        // Looking for the first byte alone is what makes this quick.
        at += bytes.get(at..)?.iter().position(|b| *b == what[0])?;
        if bytes[at..].starts_with(what) {
            return Some(at);
        }
        at += 1;
    }
}
