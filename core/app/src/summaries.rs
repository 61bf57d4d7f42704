//! Summaries of sessions: read as they are kept, or made from the log and kept.

use super::journal::{Beside, Journal};
use restwater_log::{CanonicalError, Op};
use restwater_session::{Summary, fold};
use restwater_store::{SessionRow, SnapshotRow, Store, StoreError};
use uuid::Uuid;

/// Changes when [`Summary`] does, or what the fold makes of a day, so that older ones are made again.
pub(super) const SUMMARY_VERSION: u32 = 17;

/// What a snapshot of this version contains, with which the check of the log compares it.
pub(super) fn snapshot_body(id: Uuid, ops: &[Op], version: u32) -> Option<Vec<u8>> {
    if version != SUMMARY_VERSION {
        return None;
    }
    serde_json::to_vec(&Summary::of(&fold(id, ops))).ok()
}

/// The summary of a session: as it is kept, or made from the log and kept.
pub(super) fn summary(journal: &Journal, row: &SessionRow) -> Result<Summary, StoreError> {
    let kept = journal.store().snapshot(row.id)?.filter(|kept| kept.version == SUMMARY_VERSION);
    if let Some(summary) = kept.and_then(|kept| serde_json::from_slice(&kept.body).ok()) {
        return Ok(summary);
    }
    let (summary, kept) = rebuilt(journal.store(), row)?;
    journal.beside(Beside::Summaries, journal.store().put_snapshots(&[kept]));
    Ok(summary)
}

/// A summary made from the log, with the snapshot to keep of it.
pub(super) fn rebuilt(store: &Store, row: &SessionRow) -> Result<(Summary, SnapshotRow), StoreError> {
    let session = fold(row.id, &store.ops_of(row.id)?);
    let summary = Summary::of(&session);
    let body = serde_json::to_vec(&summary).map_err(|e| CanonicalError::Unwritable(e.to_string()))?;
    let kept = SnapshotRow { session: row.id, ops: row.ops, last: row.last, version: SUMMARY_VERSION, body };
    Ok((summary, kept))
}
