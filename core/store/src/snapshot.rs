//! Snapshots of folded sessions, so that opening replays nothing. They can be deleted at any time.

use super::read::count_of;
use super::{Store, StoreError, order_bytes, order_of, uuid_of};
use restwater_log::OpOrder;
use rusqlite::{Connection, OptionalExtension, Row, TransactionBehavior};
use uuid::Uuid;

/// A folded session, opaque here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SnapshotRow {
    /// The session.
    pub session: Uuid,
    /// How many ops went into it. It fits as long as this and `last` are those of the session.
    pub ops: u64,
    /// Order of the latest of these ops.
    pub last: OpOrder,
    /// Version of the body's form.
    pub version: u32,
    /// The folded session.
    pub body: Vec<u8>,
}

impl Store {
    /// The snapshot of a session, if there is one that still fits its ops.
    pub fn snapshot(&self, session: Uuid) -> Result<Option<SnapshotRow>, StoreError> {
        let conn = self.conn()?;
        let mut statement = conn.prepare_cached(include_str!("sql/snapshot.sql"))?;
        let row = statement.query_row([session.as_bytes()], |row| Ok(snapshot_of(row))).optional()?;
        row.transpose()
    }

    /// Stores a snapshot, unless the session has no ops.
    pub fn put_snapshot(&self, row: &SnapshotRow) -> Result<(), StoreError> {
        let conn = self.conn()?;
        put(&conn, row)
    }

    /// Stores several in one transaction.
    pub fn put_snapshots(&self, rows: &[SnapshotRow]) -> Result<(), StoreError> {
        let mut conn = self.conn()?;
        let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate)?;
        for row in rows {
            put(&tx, row)?;
        }
        tx.commit()?;
        Ok(())
    }

    /// The snapshots that still fit, of the sessions that began last, newest first, at most `limit`.
    pub fn recent_snapshots(&self, limit: usize) -> Result<Vec<SnapshotRow>, StoreError> {
        let conn = self.conn()?;
        let mut statement = conn.prepare_cached(include_str!("sql/recent_snapshots.sql"))?;
        let mut rows = statement.query([i64::try_from(limit).unwrap_or(i64::MAX)])?;
        let mut snapshots = Vec::new();
        while let Some(row) = rows.next()? {
            snapshots.push(snapshot_of(row)?);
        }
        Ok(snapshots)
    }
}

/// Writes a snapshot within whatever transaction is open.
pub(super) fn put(conn: &Connection, row: &SnapshotRow) -> Result<(), StoreError> {
    let ops = i64::try_from(row.ops).unwrap_or(i64::MAX);
    conn.prepare_cached(include_str!("sql/put_snapshot.sql"))?.execute((
        row.session.as_bytes(),
        ops,
        order_bytes(row.last),
        row.version,
        &row.body,
    ))?;
    Ok(())
}

fn snapshot_of(row: &Row<'_>) -> Result<SnapshotRow, StoreError> {
    let session: Vec<u8> = row.get(0)?;
    let last: Vec<u8> = row.get(2)?;
    Ok(SnapshotRow {
        session: uuid_of(&session)?,
        ops: count_of(row.get(1)?)?,
        last: order_of(&last)?,
        version: row.get(3)?,
        body: row.get(4)?,
    })
}
