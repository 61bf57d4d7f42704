//! Taking in what another phone, or an earlier day of this one, has logged: one transaction, one undo.

use super::reading::{Sink, op_of, read};
use super::{
    ExchangeError, Fault, FaultKind, LooksLike, OnProgress, PROGRESS_EVERY, Progress, Tally, Trailer,
};
use restwater_log::Op;
use restwater_store::{
    Added, Adding, Brought, Hashed, ImportRow, RowFault, Store, StoreError, each_op_of_file,
};
use rusqlite::TransactionBehavior;
use std::fs::File;
use std::io::Read;
use std::path::Path;
use uuid::Uuid;

/// Who hands the entries over, and when.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Incoming {
    /// Id of this import.
    pub id: Uuid,
    /// What the user calls the partner, or the file.
    pub source: String,
    /// Wall time now, ms since 1970 UTC.
    pub wall_ms: i64,
    /// Minutes east of UTC now.
    pub offset_min: i16,
}

/// What an import of the file would bring. The log is left as it is.
pub fn preview(
    store: &Store,
    file: impl Read,
    now_ms: i64,
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    let nobody = Incoming { id: Uuid::nil(), source: String::new(), wall_ms: now_ms, offset_min: 0 };
    Ok(take_in(store, &nobody, false, |sink| read(file, sink, progress))?.0)
}

/// Imports the file: everything that is whole, and the tally says what was left. All or, on an error,
/// nothing.
pub fn import(
    store: &mut Store,
    file: impl Read,
    incoming: &Incoming,
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    let (tally, brought) = take_in(store, incoming, true, |sink| read(file, sink, progress))?;
    store.saw(brought);
    Ok(tally)
}

/// Imports the entries of a backup, or of another store's file. Restoring is an import like any other:
/// what was logged since the backup stays.
pub fn restore(
    store: &mut Store,
    backup: &Path,
    incoming: &Incoming,
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    let (tally, brought) = take_in(store, incoming, true, |sink| read_backup(backup, sink, progress))?;
    store.saw(brought);
    Ok(tally)
}

/// What restoring the backup would bring. The log is left as it is.
pub fn preview_backup(
    store: &Store,
    backup: &Path,
    now_ms: i64,
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    let nobody = Incoming { id: Uuid::nil(), source: String::new(), wall_ms: now_ms, offset_min: 0 };
    Ok(take_in(store, &nobody, false, |sink| read_backup(backup, sink, progress))?.0)
}

/// Whether a file is a database, as a backup is: told by its first bytes, whatever it is called.
pub fn looks_like_a_store(file: &Path) -> Result<bool, ExchangeError> {
    let mut head = Vec::new();
    File::open(file)?.take(64).read_to_end(&mut head)?;
    Ok(LooksLike::of(&head) == LooksLike::Database)
}

/// Hands the ops of a store's file to the sink; a row that can't be read is a fault.
fn read_backup(
    backup: &Path,
    sink: &mut Sink<'_>,
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    let mut tally = Tally::default();
    let (mut record, mut bytes) = (0, 0);
    let all = each_op_of_file(backup, &mut |row| {
        record += 1;
        let fault = match row {
            Err(RowFault::WrongHash) => Some(FaultKind::WrongHash),
            Err(RowFault::NotARow) => Some(FaultKind::NotARecord),
            Ok(body) => {
                bytes += body.len() as u64;
                match op_of(body) {
                    Err((_, kind)) => Some(kind),
                    Ok(op) => {
                        tally.whole += 1;
                        sink(&op, Hashed::of(body), &mut tally)?
                    }
                }
            }
        };
        if let Some(kind) = fault {
            tally.fault(Fault { record, byte: bytes, kind });
        }
        if record.is_multiple_of(PROGRESS_EVERY) && progress(Progress { ops: record, bytes }).is_break() {
            return Err(ExchangeError::Cancelled);
        }
        Ok(())
    })?;
    tally.trailer = if all { Trailer::Fits } else { Trailer::Missing };
    Ok(tally)
}

/// Runs `read` with a sink that adds to the log, in one transaction, which is kept or given up.
fn take_in(
    store: &Store,
    incoming: &Incoming,
    keep: bool,
    read: impl FnOnce(&mut Sink<'_>) -> Result<Tally, ExchangeError>,
) -> Result<(Tally, Brought), ExchangeError> {
    let mut conn = store.conn()?;
    let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate).map_err(StoreError::from)?;
    let before = ImportRow::last_seq(&tx)?;
    let mut adding = Adding::begin(&tx)?;
    let mut sink = |op: &Op, body: Hashed<'_>, tally: &mut Tally| add(&mut adding, op, body, incoming, tally);
    let tally = read(&mut sink)?;
    let brought = adding.finish()?;
    if !keep {
        return Ok((tally, brought)); // the transaction is given up as it goes out of scope
    }
    if tally.new > 0 {
        ImportRow::add(&tx, incoming.id, &incoming.source, (incoming.wall_ms, incoming.offset_min), before)?;
    }
    tx.commit().map_err(StoreError::from)?;
    Ok((tally, brought))
}

fn add(
    adding: &mut Adding<'_>,
    op: &Op,
    body: Hashed<'_>,
    incoming: &Incoming,
    tally: &mut Tally,
) -> Result<Option<FaultKind>, ExchangeError> {
    match adding.add(op, body) {
        Ok(Added::New) => {
            tally.added(op);
            tally.clock(op, incoming.wall_ms);
            Ok(None)
        }
        Ok(Added::Known) => {
            tally.known += 1;
            Ok(None)
        }
        Ok(Added::Clash) => Ok(Some(FaultKind::Clash(op.id))),
        Err(error) => Err(error.into()),
    }
}
