//! Taking a whole import back, and bringing it back: new ops that point at what it brought, so that
//! this too survives a restart and merges like any other entry.

use super::ExchangeError;
use restwater_log::{HybridClock, Moment, Op, Payload, canonical_bytes};
use restwater_store::{Adding, Hashed, ImportRow, Store, StoreError};
use rusqlite::{Transaction, TransactionBehavior};
use std::collections::BTreeMap;
use uuid::Uuid;

/// Ids in one op, so that none grows beyond what a record may hold.
const TARGETS: usize = 500;

/// Takes back exactly what the import brought. The sessions it changed.
pub fn undo_import(
    store: &mut Store,
    import: Uuid,
    at: &Moment,
    new_id: &mut dyn FnMut() -> Uuid,
) -> Result<Vec<Uuid>, ExchangeError> {
    step(store, import, at, new_id, false)
}

/// Brings it back: what took it back no longer counts.
pub fn redo_import(
    store: &mut Store,
    import: Uuid,
    at: &Moment,
    new_id: &mut dyn FnMut() -> Uuid,
) -> Result<Vec<Uuid>, ExchangeError> {
    step(store, import, at, new_id, true)
}

fn step(
    store: &mut Store,
    import: Uuid,
    at: &Moment,
    new_id: &mut dyn FnMut() -> Uuid,
    redo: bool,
) -> Result<Vec<Uuid>, ExchangeError> {
    let (device, mut clock) = (store.device(), HybridClock::after(store.last_hlc()));
    let (sessions, brought) = {
        let mut conn = store.conn()?;
        let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate).map_err(StoreError::from)?;
        let row = ImportRow::find(&tx, import)?
            .filter(|row| row.undone == redo)
            .ok_or(ExchangeError::NoSuchImport(import))?;
        let targets = targets(&tx, &row)?;
        let before = ImportRow::last_seq(&tx)?;
        let group = new_id();
        let mut adding = Adding::begin(&tx)?;
        for (session, ids) in &targets {
            for targets in ids.chunks(TARGETS) {
                let op = Op {
                    id: new_id(),
                    device,
                    hlc: clock.tick(at.wall_ms),
                    at: at.clone(),
                    session: *session,
                    payload: said(import, targets.to_vec(), redo),
                    amends: None,
                    group: Some(group),
                };
                let body = canonical_bytes(&op).map_err(StoreError::from)?;
                adding.add(&op, Hashed::of(&body))?;
            }
        }
        let brought = adding.finish()?;
        ImportRow::set_undone(&tx, import, (!redo).then_some(before))?;
        tx.commit().map_err(StoreError::from)?;
        (targets.into_keys().collect(), brought)
    };
    store.saw(brought);
    Ok(sessions)
}

fn said(import: Uuid, targets: Vec<Uuid>, redo: bool) -> Payload {
    if redo { Payload::ImportRedone { import, targets } } else { Payload::ImportUndone { import, targets } }
}

/// What has to be pointed at, by session: the ops of the import, or the ops that took it back.
fn targets(tx: &Transaction<'_>, row: &ImportRow) -> Result<BTreeMap<Uuid, Vec<Uuid>>, StoreError> {
    let mut targets: BTreeMap<Uuid, Vec<Uuid>> = BTreeMap::new();
    for (session, id) in row.ops_in_force(tx)? {
        targets.entry(session).or_default().push(id);
    }
    Ok(targets)
}
