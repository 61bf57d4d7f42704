//! Undoing and redoing a whole import: new ops point at the imported ones, so that this survives a restart,
//! too. It applies to this phone alone: neither these ops nor the ops that they undo are exported.

use super::ExchangeError;
use super::taken_back::{said_by, said_of_imports, still_takes, takings_of, targets};
use restwater_log::{HybridClock, Moment, Op, Payload, canonical_bytes};
use restwater_store::{Adding, Brought, Hashed, ImportRow, Store, StoreError};
use rusqlite::{Transaction, TransactionBehavior};
use std::collections::{BTreeMap, BTreeSet, HashSet};
use uuid::Uuid;

/// The most ids in one op, so that no record becomes too long.
const TARGETS: usize = 500;

/// Undoes exactly what the import brought, and what it restored of earlier ones. Returns the sessions that changed.
pub fn undo_import(
    store: &mut Store,
    import: Uuid,
    at: &Moment,
    new_id: &mut dyn FnMut() -> Uuid,
) -> Result<Vec<Uuid>, ExchangeError> {
    step(store, import, at, new_id, false)
}

/// Redoes the import: the ops that undid it no longer count.
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
    let clock = HybridClock::after(store.last_hlc());
    let mut writer = Writer { device: store.device(), clock, at, new_id };
    let (sessions, brought) = {
        let mut conn = store.conn()?;
        let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate).map_err(StoreError::from)?;
        let row = ImportRow::find(&tx, import)?
            .filter(|row| row.undone == redo)
            .ok_or(ExchangeError::NoSuchImport(import))?;
        let said = said_of_imports(&tx, None)?;
        let with_it = said_by(&said, import);
        let targets = if redo {
            // Ops that are out of force are included, so that what the angler redoes stays if an import that had redone it is undone.
            ids_of(said.iter().filter(|op| is_taking_of(op, import)))
        } else {
            row.ops_brought(&tx)?.into_iter().chain(ids_of(with_it.iter().copied())).collect()
        };
        let sessions = targets.iter().map(|(session, _)| *session).collect::<BTreeSet<_>>();
        let before = ImportRow::last_seq(&tx)?;
        let group = (writer.new_id)();
        let brought = if redo {
            let brought =
                writer.point_at(&tx, group, targets, &|targets| Payload::ImportRedone { import, targets })?;
            ImportRow::set_undone(&tx, import, None)?;
            brought
        } else {
            writer.take_back(&tx, group, import, targets)?
        };
        for earlier in with_it.iter().filter_map(|op| import_of(op)).collect::<BTreeSet<_>>() {
            let undone = still_takes(&takings_of(&tx, earlier)?, &said);
            ImportRow::set_undone(&tx, earlier, undone.then_some(before))?;
        }
        tx.commit().map_err(StoreError::from)?;
        (sessions.into_iter().collect(), brought)
    };
    store.saw(brought);
    Ok(sessions)
}

fn ids_of<'a>(ops: impl IntoIterator<Item = &'a Op>) -> Vec<(Uuid, Uuid)> {
    ops.into_iter().map(|op| (op.session, op.id)).collect()
}

/// The import whose entries the op removes or restores.
fn import_of(op: &Op) -> Option<Uuid> {
    match op.payload {
        Payload::ImportUndone { import, .. } | Payload::ImportRedone { import, .. } => Some(import),
        _ => None,
    }
}

fn is_taking_of(op: &Op, taken: Uuid) -> bool {
    matches!(op.payload, Payload::ImportUndone { import, .. } if import == taken)
}

/// Who writes the ops that point at those of an import, and when.
pub(super) struct Writer<'a> {
    pub(super) device: Uuid,
    pub(super) clock: HybridClock,
    pub(super) at: &'a Moment,
    pub(super) new_id: &'a mut dyn FnMut() -> Uuid,
}

impl Writer<'_> {
    /// Restores those entries of an undone import that the file contains; the others stay undone. `takings` are the ops
    /// that removed them. `by` is the import of the file: its id is the group of what is written here, so that undoing it also
    /// undoes this.
    pub(super) fn bring_back(
        &mut self,
        tx: &Transaction<'_>,
        by: Uuid,
        (import, takings): (Uuid, &[Op]),
        in_the_file: &HashSet<Uuid>,
    ) -> Result<Brought, ExchangeError> {
        let said = said_of_imports(tx, None)?;
        let mut brought =
            self.point_at(tx, by, ids_of(takings), &|targets| Payload::ImportRedone { import, targets })?;
        let rest: Vec<_> = targets(takings).filter(|(_, id)| !in_the_file.contains(id)).collect();
        if !rest.is_empty() {
            brought = brought.and(self.take_back(tx, by, import, rest)?);
        }
        if !still_takes(&takings_of(tx, import)?, &said) {
            ImportRow::set_undone(tx, import, None)?;
        }
        Ok(brought)
    }

    fn take_back(
        &mut self,
        tx: &Transaction<'_>,
        group: Uuid,
        import: Uuid,
        targets: Vec<(Uuid, Uuid)>,
    ) -> Result<Brought, ExchangeError> {
        let before = ImportRow::last_seq(tx)?;
        let brought =
            self.point_at(tx, group, targets, &|targets| Payload::ImportUndone { import, targets })?;
        ImportRow::set_undone(tx, import, Some(before))?;
        Ok(brought)
    }

    /// Writes, in each session, an op that undoes or restores its targets.
    fn point_at(
        &mut self,
        tx: &Transaction<'_>,
        group: Uuid,
        targets: Vec<(Uuid, Uuid)>,
        said: &dyn Fn(Vec<Uuid>) -> Payload,
    ) -> Result<Brought, ExchangeError> {
        let mut by_session: BTreeMap<Uuid, Vec<Uuid>> = BTreeMap::new();
        for (session, id) in targets {
            by_session.entry(session).or_default().push(id);
        }
        let mut adding = Adding::begin(tx)?;
        for (session, ids) in by_session {
            for targets in ids.chunks(TARGETS) {
                let op = Op {
                    id: (self.new_id)(),
                    device: self.device,
                    hlc: self.clock.tick(self.at.wall_ms),
                    at: self.at.clone(),
                    session,
                    payload: said(targets.to_vec()),
                    amends: None,
                    group: Some(group),
                };
                let body = canonical_bytes(&op).map_err(StoreError::from)?;
                adding.add(&op, Hashed::of(&body))?;
            }
        }
        Ok(adding.finish()?)
    }
}
