//! The check: is the file intact, does every op match its hash, do the projections follow from the log?

use super::read::{SessionRow, count_of};
use super::{SnapshotRow, Store, StoreError, order_bytes};
use restwater_log::{Began, Op, op_from_bytes};
use rusqlite::{Connection, Transaction, TransactionBehavior};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use uuid::Uuid;

/// What the check found.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CheckReport {
    /// What SQLite's own integrity check and its check of references report about the file.
    pub file: Vec<String>,
    /// Ops that match their hashes.
    pub ops: u64,
    /// Ops whose bytes differ from their hash, or that can't be read.
    pub damaged_ops: u64,
    /// Sessions whose row doesn't follow from their ops.
    pub sessions: Vec<Uuid>,
    /// Sessions whose snapshot claims to match their ops but isn't the result of folding them.
    pub snapshots: Vec<Uuid>,
}

impl CheckReport {
    /// Whether nothing is wrong.
    pub fn is_clean(&self) -> bool {
        self.file.is_empty() && self.damaged_ops == 0 && self.sessions.is_empty() && self.snapshots.is_empty()
    }

    /// Whether rebuilding the projections repairs everything.
    pub fn is_repairable(&self) -> bool {
        self.file.is_empty() && self.damaged_ops == 0
    }
}

/// Folds the ops of a session into a snapshot body of the requested version, or returns `None` if it can't.
pub type Folding<'a> = dyn FnMut(Uuid, &[Op], u32) -> Option<Vec<u8>> + 'a;

impl Store {
    /// Rebuilds every projection from the log and compares. Changes nothing.
    pub fn check(&self, fold: &mut Folding<'_>) -> Result<CheckReport, StoreError> {
        let mut report = CheckReport::default();
        let rebuilt = {
            let conn = self.conn()?;
            report.file = integrity(&conn)?;
            rebuild(&conn, &mut report)?
        };
        let mut stored: BTreeMap<Uuid, SessionRow> =
            self.sessions()?.into_iter().map(|row| (row.id, row)).collect();
        for (id, row) in &rebuilt {
            if stored.remove(id).as_ref() != Some(row) {
                report.sessions.push(*id);
            }
        }
        report.sessions.extend(stored.into_keys());
        if report.damaged_ops == 0 {
            for id in rebuilt.keys() {
                if let Some(snapshot) = self.snapshot(*id)?
                    && !folds_to(&snapshot, fold(*id, &self.ops_of(*id)?, snapshot.version))
                {
                    report.snapshots.push(*id);
                }
            }
        }
        Ok(report)
    }

    /// Rebuilds SQLite's indexes from the tables: an index is computed as well, and a damaged one may hide an entry.
    pub fn reindex(&mut self) -> Result<(), StoreError> {
        Ok(self.conn()?.execute_batch("REINDEX")?)
    }

    /// Rebuilds the session rows from the log and deletes all snapshots.
    pub fn rebuild(&mut self) -> Result<(), StoreError> {
        let mut conn = self.conn()?;
        let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate)?;
        let damaged = write_session_rows(&tx)?;
        if damaged > 0 {
            return Err(StoreError::Damaged(format!("{damaged} entries")));
        }
        tx.execute("DELETE FROM snapshot", [])?;
        tx.execute(include_str!("sql/drop_empty_sessions.sql"), [])?;
        tx.commit()?;
        Ok(())
    }
}

/// Rebuilds the session rows from the log. Returns how many ops were damaged and therefore ignored.
pub(super) fn write_session_rows(tx: &Transaction<'_>) -> Result<u64, StoreError> {
    let mut report = CheckReport::default();
    let rebuilt = rebuild(tx, &mut report)?;
    let mut set = tx.prepare_cached(include_str!("sql/set_session.sql"))?;
    for row in rebuilt.values() {
        let ops = i64::try_from(row.ops).unwrap_or(i64::MAX);
        set.execute((
            row.id.as_bytes(),
            row.began.wall_ms,
            ops,
            order_bytes(row.last),
            order_bytes(row.began.order),
            row.began.device.map(Uuid::into_bytes),
            row.own.map(order_bytes),
        ))?;
    }
    Ok(report.damaged_ops)
}

fn folds_to(snapshot: &SnapshotRow, folded: Option<Vec<u8>>) -> bool {
    folded.is_none_or(|body| body == snapshot.body)
}

fn integrity(conn: &Connection) -> Result<Vec<String>, StoreError> {
    let mut wrong = Vec::new();
    let mut statement = conn.prepare("PRAGMA integrity_check")?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let line: String = row.get(0)?;
        if line != "ok" {
            wrong.push(line);
        }
    }
    let dangling: i64 =
        conn.query_row("SELECT count(*) FROM pragma_foreign_key_check", [], |row| row.get(0))?;
    if dangling > 0 {
        wrong.push(format!("{dangling} rows point nowhere"));
    }
    Ok(wrong)
}

/// The session rows that follow from the log; also counts the ops.
fn rebuild(conn: &Connection, report: &mut CheckReport) -> Result<BTreeMap<Uuid, SessionRow>, StoreError> {
    let mut sessions: BTreeMap<Uuid, SessionRow> = BTreeMap::new();
    let device = super::device(conn)?;
    let mut statement = conn.prepare(include_str!("sql/all_ops.sql"))?;
    let mut rows = statement.query([])?;
    while let Some(row) = rows.next()? {
        let sha = row.get_ref(0)?.as_blob().map_err(rusqlite::Error::from)?;
        let body = row.get_ref(1)?.as_blob().map_err(rusqlite::Error::from)?;
        let (id, session): (Vec<u8>, Vec<u8>) = (row.get(2)?, row.get(3)?);
        let op = (Sha256::digest(body).as_slice() == sha)
            .then(|| op_from_bytes(body).ok())
            .flatten()
            .filter(|op| op.id.as_bytes() == &id[..] && op.session.as_bytes() == &session[..]);
        match op {
            None => report.damaged_ops += 1,
            Some(op) => {
                report.ops += 1;
                grow(&mut sessions, &op, device);
            }
        }
    }
    Ok(sessions)
}

fn grow(sessions: &mut BTreeMap<Uuid, SessionRow>, op: &Op, device: Uuid) {
    let (id, last, began) = (op.session, op.order(), Began::of(op));
    let row = sessions.entry(id).or_insert(SessionRow { id, began, ops: 0, last, own: None });
    row.ops += 1;
    row.began = row.began.and(began);
    row.last = row.last.max(last);
    if op.device == device && op.is_step_of_undo() {
        row.own = row.own.max(Some(last));
    }
}

impl Store {
    /// How many ops there are in the log.
    pub fn count(&self) -> Result<u64, StoreError> {
        let conn = self.conn()?;
        let count = conn.prepare_cached("SELECT count(*) FROM op")?.query_row([], |row| row.get(0))?;
        count_of(count)
    }
}
