//! Compares what a kill left with what had been acknowledged.

use super::child::{export_path, imported};
use super::{Failed, Outcome, Work};
use crate::invented::Phone;
use restwater_exchange::{Progress, read_op_file};
use restwater_log::Op;
use restwater_store::{FILE_NAME, Store, StoreError, backups};
use rusqlite::{Connection, OpenFlags};
use std::collections::BTreeMap;
use std::ops::ControlFlow;
use std::path::Path;
use uuid::Uuid;

pub(super) fn judge(
    dir: &Path,
    work: Work,
    seed: u64,
    told: &[String],
    outcome: &mut Outcome,
) -> Result<(), Failed> {
    if work == Work::Migration {
        return migrated(dir, outcome);
    }
    let count = |word: &str| told.iter().filter(|line| line.starts_with(word)).count();
    let mut phone = Phone::new(seed);
    phone.begin();
    for _ in 0..count("tap ") {
        phone.tap();
    }
    let mut safe = phone.ops().to_vec();
    let imports = count("imported ");
    for n in 1..=imports as u64 {
        safe.extend(imported(seed, n));
    }
    let there = ops_of(dir, outcome).unwrap_or_else(|_| {
        outcome.broken += 1;
        BTreeMap::new()
    });
    outcome.entries += safe.len() as u64;
    outcome.lost += safe.iter().filter(|op| there.get(&op.id) != Some(op)).count() as u64;
    // An import that was not acknowledged is there completely or not at all.
    let next = imported(seed, imports as u64 + 1);
    let part = next.iter().filter(|op| there.contains_key(&op.id)).count();
    outcome.broken += u64::from(work == Work::Import && part != 0 && part != next.len());
    outcome.broken += exported(dir, count("exported "), outcome)?;
    backed_up(dir, count("backed up "), outcome)
}

/// The ops of a store, if SQLite's own check and ours are clean.
fn ops_of(dir: &Path, outcome: &mut Outcome) -> Result<BTreeMap<Uuid, Op>, StoreError> {
    let store = Store::open(dir, Uuid::nil())?;
    outcome.checked += 1;
    let report = store.check(&mut |_, _, _| None)?;
    if !report.is_clean() {
        return Err(StoreError::Damaged(format!("{report:?}")));
    }
    let mut ops = BTreeMap::new();
    for row in store.sessions()? {
        ops.extend(store.ops_of(row.id)?.into_iter().map(|op| (op.id, op)));
    }
    Ok(ops)
}

/// An export under its own name is complete and has at least what the last acknowledged one had.
fn exported(dir: &Path, acknowledged: usize, outcome: &mut Outcome) -> Result<u64, Failed> {
    let Ok(bytes) = std::fs::read(export_path(dir)) else { return Ok(u64::from(acknowledged > 0)) };
    let mut go = |_: Progress| ControlFlow::Continue(());
    let tally = read_op_file(&bytes[..], |_, _| (), &mut go)?;
    outcome.entries += acknowledged as u64 + 1;
    Ok(u64::from(!tally.is_whole() || tally.whole < acknowledged as u64 + 1))
}

/// The latest backup is intact and has at least what it had when it was acknowledged.
fn backed_up(dir: &Path, acknowledged: usize, outcome: &mut Outcome) -> Result<(), Failed> {
    let all = backups(&dir.join("backups"))?;
    let Some(latest) = all.first() else {
        outcome.broken += u64::from(acknowledged > 0);
        return Ok(());
    };
    for backup in &all {
        let uri = format!("file:{}?immutable=1", backup.path.display());
        let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_URI;
        let conn = Connection::open_with_flags(uri, flags)?;
        let sound: String = conn.query_row("PRAGMA integrity_check", [], |row| row.get(0))?;
        let ops: i64 = conn.query_row("SELECT count(*) FROM op", [], |row| row.get(0))?;
        outcome.checked += 1;
        let enough = backup != latest || ops > i64::try_from(acknowledged)?;
        outcome.broken += u64::from(sound != "ok" || !enough);
    }
    Ok(())
}

/// Every file of the first schema opens with its two ops, whether or not its migration was interrupted.
fn migrated(dir: &Path, outcome: &mut Outcome) -> Result<(), Failed> {
    for entry in std::fs::read_dir(dir)? {
        let one = entry?.path();
        if !one.join(FILE_NAME).exists() {
            continue; // killed before the file was put there
        }
        outcome.entries += 2;
        match ops_of(&one, outcome) {
            Ok(ops) => outcome.lost += 2 - (ops.len() as u64).min(2),
            Err(_) => outcome.broken += 1,
        }
    }
    Ok(())
}
