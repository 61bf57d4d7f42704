//! Adding ops: one immediate transaction, durable when it returns.

use super::{SnapshotRow, Store, StoreError, order_bytes, snapshot};
use restwater_log::{Hlc, Op, OpOrder, canonical_bytes};
use rusqlite::{CachedStatement, OptionalExtension, Transaction, TransactionBehavior};
use sha2::{Digest, Sha256};
use std::collections::HashMap;
use uuid::Uuid;

/// The largest whole number that JSON carries exactly everywhere (RFC 8259, section 6).
pub const JSON_MAX: i64 = (1 << 53) - 1;

impl Store {
    /// Adds ops, and the snapshot they lead to, in one immediate transaction; on stable storage when it
    /// returns. An op that is already there is passed over; one that differs is refused, and with it all.
    pub fn append(&mut self, ops: &[Op], snapshot: Option<&SnapshotRow>) -> Result<(), StoreError> {
        let mut last_hlc = self.last_hlc;
        {
            let mut conn = self.conn()?;
            let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate)?;
            let mut adding = Adding::begin(&tx)?;
            for op in ops {
                let body = canonical_bytes(op)?;
                if adding.add(op, Hashed::of(&body))? == Added::Clash {
                    return Err(StoreError::Clash(op.id));
                }
            }
            last_hlc = last_hlc.max(adding.finish()?);
            if let Some(row) = snapshot {
                snapshot::put(&tx, row)?;
            }
            tx.commit()?;
        }
        self.last_hlc = last_hlc;
        Ok(())
    }

    /// Notes a clock reading that a committed transaction brought.
    pub fn saw(&mut self, hlc: Hlc) {
        self.last_hlc = self.last_hlc.max(hlc);
    }
}

/// What became of an op that was to be added.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Added {
    /// It is in the log now.
    New,
    /// It was there, byte for byte.
    Known,
    /// One with its id was there and differs; that one stays.
    Clash,
}

/// The canonical bytes of an op with their hash, which is worked out once.
#[derive(Debug, Clone, Copy)]
pub struct Hashed<'a> {
    /// The canonical bytes.
    pub bytes: &'a [u8],
    /// Their SHA-256.
    pub sha256: [u8; 32],
}

impl<'a> Hashed<'a> {
    /// Hashes the bytes.
    pub fn of(bytes: &'a [u8]) -> Self {
        Self { bytes, sha256: Sha256::digest(bytes).into() }
    }
}

/// Ops on their way into the log, within a transaction.
pub struct Adding<'tx> {
    tx: &'tx Transaction<'tx>,
    insert: CachedStatement<'tx>,
    sessions: HashMap<Uuid, Growth>,
    last_hlc: Hlc,
}

/// What a session gains in this transaction.
struct Growth {
    no: i64,
    /// Its row was made in this transaction,
    made: bool,
    /// and this many ops were new.
    ops: i64,
    first_wall_ms: i64,
    last: OpOrder,
}

impl<'tx> Adding<'tx> {
    /// Begins adding within a transaction.
    pub fn begin(tx: &'tx Transaction<'tx>) -> Result<Self, StoreError> {
        let insert = tx.prepare_cached(include_str!("sql/add_op.sql"))?;
        Ok(Self { tx, insert, sessions: HashMap::new(), last_hlc: Hlc::default() })
    }

    /// Adds one op, given with its canonical bytes.
    pub fn add(&mut self, op: &Op, body: Hashed<'_>) -> Result<Added, StoreError> {
        in_range(op)?;
        let no = self.session(op)?;
        let added = self.insert.execute((no, op.id.as_bytes(), &body.sha256[..], body.bytes))?;
        if added == 0 {
            return self.compare(op.id, body.bytes);
        }
        if let Some(growth) = self.sessions.get_mut(&op.session) {
            growth.ops += 1;
            growth.first_wall_ms = growth.first_wall_ms.min(op.at.wall_ms);
            growth.last = growth.last.max(op.order());
        }
        self.last_hlc = self.last_hlc.max(op.hlc);
        Ok(Added::New)
    }

    fn compare(&self, id: Uuid, body: &[u8]) -> Result<Added, StoreError> {
        let same: bool = self
            .tx
            .prepare_cached(include_str!("sql/same_op.sql"))?
            .query_row((id.as_bytes(), body), |row| row.get(0))?;
        Ok(if same { Added::Known } else { Added::Clash })
    }

    /// The number of the op's session, which is made where it is new.
    fn session(&mut self, op: &Op) -> Result<i64, StoreError> {
        if let Some(growth) = self.sessions.get(&op.session) {
            return Ok(growth.no);
        }
        let found: Option<i64> = self
            .tx
            .prepare_cached(include_str!("sql/session_no.sql"))?
            .query_row([op.session.as_bytes()], |row| row.get(0))
            .optional()?;
        let made = found.is_none();
        let no = match found {
            Some(no) => no,
            None => self
                .tx
                .prepare_cached(include_str!("sql/add_session.sql"))?
                .query_row((op.session.as_bytes(), op.at.wall_ms, order_bytes(op.order())), |row| {
                    row.get(0)
                })?,
        };
        self.sessions
            .insert(op.session, Growth { no, made, ops: 0, first_wall_ms: op.at.wall_ms, last: op.order() });
        Ok(no)
    }

    /// Brings the session rows up to date; the latest clock reading among the ops added.
    pub fn finish(self) -> Result<Hlc, StoreError> {
        let mut grow = self.tx.prepare_cached(include_str!("sql/grow_session.sql"))?;
        for growth in self.sessions.values() {
            if growth.ops == 0 {
                if growth.made {
                    self.tx.execute("DELETE FROM session WHERE no = ?1", [growth.no])?;
                }
                continue;
            }
            grow.execute((growth.no, growth.ops, growth.first_wall_ms, order_bytes(growth.last)))?;
        }
        Ok(self.last_hlc)
    }
}

fn in_range(op: &Op) -> Result<(), StoreError> {
    let fits = |n: i64| (-JSON_MAX..=JSON_MAX).contains(&n);
    if fits(op.at.wall_ms) && fits(op.at.mono_ms) { Ok(()) } else { Err(StoreError::OutOfRange(op.id)) }
}
