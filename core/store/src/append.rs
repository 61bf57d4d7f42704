//! Adding ops: one immediate transaction, durable when it returns.

use super::read::began_of;
use super::{SnapshotRow, Store, StoreError, order_bytes, snapshot};
use restwater_log::{Began, Hlc, JSON_MAX, Op, OpOrder, canonical_bytes};
use rusqlite::{CachedStatement, OptionalExtension, Transaction, TransactionBehavior};
use sha2::{Digest, Sha256};
use std::collections::HashMap;
use std::collections::hash_map::Entry;
use uuid::Uuid;

impl Store {
    /// Adds ops, and the resulting snapshot, in one immediate transaction, which is on stable storage when
    /// this returns. An op that is already there is skipped. If one with the same id differs, all of them are
    /// refused.
    pub fn append(&mut self, ops: &[Op], snapshot: Option<&SnapshotRow>) -> Result<(), StoreError> {
        let brought = {
            let mut conn = self.conn()?;
            let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate)?;
            let mut adding = Adding::begin(&tx)?;
            for op in ops {
                let body = canonical_bytes(op)?;
                if adding.add(op, Hashed::of(&body))? == Added::Clash {
                    return Err(StoreError::Clash(op.id));
                }
            }
            let brought = adding.finish()?;
            if let Some(row) = snapshot {
                snapshot::put(&tx, row)?;
            }
            tx.commit()?;
            brought
        };
        self.saw(brought);
        Ok(())
    }

    /// Notes the result of a committed transaction.
    pub fn saw(&mut self, brought: Brought) {
        self.last_hlc = self.last_hlc.max(brought.last_hlc);
        self.version = self.version.max(brought.version);
    }
}

/// The result of a transaction, once it is committed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Brought {
    last_hlc: Hlc,
    version: u64,
}

impl Brought {
    /// Combines this with a later addition in the same transaction.
    #[must_use]
    pub fn and(self, later: Self) -> Self {
        Self { last_hlc: self.last_hlc.max(later.last_hlc), version: self.version.max(later.version) }
    }

    /// The latest clock of the ops that were added.
    pub fn last_hlc(self) -> Hlc {
        self.last_hlc
    }
}

/// What happened to an op that was to be added.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Added {
    /// It was added.
    New,
    /// It was there already, byte for byte.
    Known,
    /// It was there, damaged, and is again as it was written: its body or its hash had changed since.
    Mended,
    /// A different op with its id was there already, and stays.
    Clash,
}

/// The canonical bytes of an op with their hash, which is computed only once.
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

/// Ops that are being added to the log within a transaction.
pub struct Adding<'tx> {
    tx: &'tx Transaction<'tx>,
    /// The device of this store.
    device: Uuid,
    insert: CachedStatement<'tx>,
    sessions: HashMap<Uuid, Growth>,
    last_hlc: Hlc,
}

/// The changes of a session in this transaction.
struct Growth {
    no: i64,
    /// Whether its row was created in this transaction.
    made: bool,
    /// How many of its ops were new.
    ops: i64,
    /// How it began; `None` as long as no op of it is in the log.
    began: Option<Began>,
    /// Order of its latest op.
    last: OpOrder,
    /// Order of the latest new op by this store's device that is a step of UNDO.
    own: Option<OpOrder>,
}

impl Growth {
    /// The session of the first op of it that is met. Its row is created if it is new.
    fn begin(tx: &Transaction<'_>, op: &Op) -> Result<Self, StoreError> {
        let found = tx
            .prepare_cached(include_str!("sql/session_no.sql"))?
            .query_row([op.session.as_bytes()], |row| Ok((row.get(0)?, began_of(row, [1, 2, 3]))))
            .optional()?;
        let made = found.is_none();
        let (no, began) = match found {
            Some((no, began)) => (no, Some(began?)),
            None => tx
                .prepare_cached(include_str!("sql/add_session.sql"))?
                .query_row((op.session.as_bytes(), op.at.wall_ms, order_bytes(op.order())), |row| {
                    Ok((row.get(0)?, None))
                })?,
        };
        Ok(Self { no, made, ops: 0, began, last: op.order(), own: None })
    }
}

impl<'tx> Adding<'tx> {
    /// Begins adding within a transaction.
    pub fn begin(tx: &'tx Transaction<'tx>) -> Result<Self, StoreError> {
        let insert = tx.prepare_cached(include_str!("sql/add_op.sql"))?;
        let device = super::device(tx)?;
        Ok(Self { tx, device, insert, sessions: HashMap::new(), last_hlc: Hlc::default() })
    }

    /// Adds one op, given with its canonical bytes.
    pub fn add(&mut self, op: &Op, body: Hashed<'_>) -> Result<Added, StoreError> {
        in_range(op)?;
        let growth = match self.sessions.entry(op.session) {
            Entry::Occupied(met) => met.into_mut(),
            Entry::Vacant(first) => first.insert(Growth::begin(self.tx, op)?),
        };
        let no = growth.no;
        let added = self.insert.execute((no, op.id.as_bytes(), &body.sha256[..], body.bytes))?;
        if added == 0 {
            return self.compare(no, op.id, body);
        }
        growth.ops += 1;
        growth.began = Began::and_of(growth.began, op);
        growth.last = growth.last.max(op.order());
        if op.device == self.device && op.is_step_of_undo() {
            growth.own = growth.own.max(Some(op.order()));
        }
        self.last_hlc = self.last_hlc.max(op.hlc);
        Ok(Added::New)
    }

    /// Compares an op with the one that has its id. Hash and body of that one belong together, so if one of them is as it should
    /// be and the other isn't, the row is damaged and not another entry.
    fn compare(&self, no: i64, id: Uuid, body: Hashed<'_>) -> Result<Added, StoreError> {
        let same: bool = self
            .tx
            .prepare_cached(include_str!("sql/same_op.sql"))?
            .query_row((id.as_bytes(), body.bytes, &body.sha256[..]), |row| row.get(0))?;
        if same {
            return Ok(Added::Known);
        }
        let mended = self.tx.prepare_cached(include_str!("sql/mend_op.sql"))?.execute((
            no,
            id.as_bytes(),
            &body.sha256[..],
            body.bytes,
        ))?;
        Ok(if mended > 0 { Added::Mended } else { Added::Clash })
    }

    /// Brings the session rows up to date and returns the result of the transaction, for [`Store::saw`] after
    /// the commit.
    pub fn finish(self) -> Result<Brought, StoreError> {
        let mut grow = self.tx.prepare_cached(include_str!("sql/grow_session.sql"))?;
        for growth in self.sessions.values() {
            let Some(began) = growth.began.filter(|_| growth.ops > 0) else {
                if growth.made {
                    self.tx.execute("DELETE FROM session WHERE no = ?1", [growth.no])?;
                }
                continue;
            };
            grow.execute((
                growth.no,
                growth.ops,
                order_bytes(growth.last),
                order_bytes(began.order),
                began.wall_ms,
                began.device.map(Uuid::into_bytes),
                growth.own.map(order_bytes),
            ))?;
        }
        Ok(Brought { last_hlc: self.last_hlc, version: super::read::version(self.tx)? })
    }
}

fn in_range(op: &Op) -> Result<(), StoreError> {
    let fits = |n: i64| (-JSON_MAX..=JSON_MAX).contains(&n);
    if fits(op.at.wall_ms) && fits(op.at.mono_ms) { Ok(()) } else { Err(StoreError::OutOfRange(op.id)) }
}
