//! Imports entries of another phone, or earlier ones of this phone: one transaction, one undo.

use super::clocks::Clocks;
use super::reading::{Sink, op_of_backup, read};
use super::taken_back::{TakenBack, removes_entries_before};
use super::undo::Writer;
use super::{
    ExchangeError, Fault, FaultKind, LooksLike, OnProgress, PROGRESS_EVERY, Progress, Tally, Trailer,
};
use restwater_log::{HybridClock, Moment, Op};
use restwater_store::{
    Added, Adding, Brought, Hashed, ImportRow, MOST_OPS, RowFault, Store, StoreError, each_op_of_file,
};
use rusqlite::TransactionBehavior;
use std::fs::File;
use std::io::Read;
use std::path::Path;
use uuid::Uuid;

/// The source of an import, and when it happens.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Incoming {
    /// Id of this import.
    pub id: Uuid,
    /// The user's name for the partner or the file.
    pub source: String,
    /// When.
    pub at: Moment,
}

/// What an import of the file would add. The log is not changed.
pub fn preview(
    store: &Store,
    file: impl Read,
    now_ms: i64,
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    Ok(take_in(store, now_ms, None, |sink| read(file, sink, progress))?.0)
}

/// Imports every intact record of the file; the tally says what was left out. Entries of undone imports that
/// the file contains are restored; `new_id` gives the ids of the entries that record this. On an error
/// nothing is imported.
pub fn import(
    store: &mut Store,
    file: impl Read,
    incoming: &Incoming,
    new_id: &mut dyn FnMut() -> Uuid,
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    let (tally, brought) =
        take_in(store, incoming.at.wall_ms, Some((incoming, new_id)), |sink| read(file, sink, progress))?;
    store.saw(brought);
    Ok(tally)
}

/// Imports the entries of a backup, or of another store's file. Restoring is an ordinary import, so
/// everything logged since the backup stays.
pub fn restore(
    store: &mut Store,
    backup: &Path,
    incoming: &Incoming,
    new_id: &mut dyn FnMut() -> Uuid,
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    let (tally, brought) = take_in(store, incoming.at.wall_ms, Some((incoming, new_id)), |sink| {
        read_backup(backup, sink, progress)
    })?;
    store.saw(brought);
    Ok(tally)
}

/// What restoring the backup would add. The log is not changed.
pub fn preview_backup(
    store: &Store,
    backup: &Path,
    now_ms: i64,
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    Ok(take_in(store, now_ms, None, |sink| read_backup(backup, sink, progress))?.0)
}

/// Whether a file is a database, as backups are, judged by its first bytes and not by its name.
pub fn looks_like_a_store(file: &Path) -> Result<bool, ExchangeError> {
    let mut head = Vec::new();
    File::open(file)?.take(64).read_to_end(&mut head)?;
    Ok(LooksLike::of(&head) == LooksLike::Database)
}

/// Passes the ops of a store's file to the sink; a row that can't be read is a fault.
fn read_backup(
    backup: &Path,
    sink: &mut Sink<'_>,
    progress: &mut OnProgress<'_>,
) -> Result<Tally, ExchangeError> {
    let mut tally = Tally::default();
    let (mut record, mut bytes) = (0, 0);
    let all = each_op_of_file(backup, &mut |row| {
        record += 1;
        if record > MOST_OPS {
            return Err(ExchangeError::TooMany(MOST_OPS));
        }
        let fault = match row {
            Err(RowFault::WrongHash) => Some(FaultKind::WrongHash),
            Err(RowFault::NotARow) => Some(FaultKind::NotARecord),
            Ok(body) => {
                bytes += body.len() as u64;
                match op_of_backup(body) {
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

/// Runs `read` with a sink that adds to the log in one transaction, which is committed if `keep` names the
/// source, and otherwise rolled back.
fn take_in(
    store: &Store,
    now_ms: i64,
    keep: Option<(&Incoming, &mut dyn FnMut() -> Uuid)>,
    read: impl FnOnce(&mut Sink<'_>) -> Result<Tally, ExchangeError>,
) -> Result<(Tally, Brought), ExchangeError> {
    let mut conn = store.conn()?;
    let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate).map_err(StoreError::from)?;
    let before = ImportRow::last_seq(&tx)?;
    let mut taken_back = TakenBack::of(&tx);
    let mut adding = Adding::begin(&tx)?;
    let mut clocks = Clocks::default();
    let mut sink = |op: &Op, body: Hashed<'_>, tally: &mut Tally| {
        if removes_entries_before(&tx, op, before)? {
            return Ok(None);
        }
        let known = tally.new;
        let fault = add(&mut adding, op, body, &mut taken_back, tally)?;
        clocks.note(op, tally.new > known);
        Ok(fault)
    };
    let mut tally = read(&mut sink)?;
    tally.clocks = clocks.told(now_ms);
    let mut brought = adding.finish()?;
    taken_back.end_of_file();
    tally.brought_back = taken_back.in_the_file().len() as u64;
    // Otherwise the transaction is rolled back when it goes out of scope.
    if let Some((incoming, new_id)) = keep {
        if tally.new > 0 {
            let (wall_ms, offset_min) = (incoming.at.wall_ms, incoming.at.offset_min);
            ImportRow::add(&tx, incoming.id, &incoming.source, (wall_ms, offset_min), before)?;
        }
        let clock = HybridClock::after(store.last_hlc().max(brought.last_hlc()));
        let mut writer = Writer { device: store.device(), clock, at: &incoming.at, new_id };
        for (import, takings) in taken_back.touched() {
            let touched = (import, takings);
            brought = brought.and(writer.bring_back(&tx, incoming.id, touched, taken_back.in_the_file())?);
        }
        tx.commit().map_err(StoreError::from)?;
    }
    Ok((tally, brought))
}

fn add(
    adding: &mut Adding<'_>,
    op: &Op,
    body: Hashed<'_>,
    taken_back: &mut TakenBack<'_>,
    tally: &mut Tally,
) -> Result<Option<FaultKind>, ExchangeError> {
    match adding.add(op, body) {
        Ok(Added::New) => {
            tally.added(op);
            Ok(None)
        }
        Ok(Added::Known) => {
            tally.known += 1;
            taken_back.saw(op)?;
            Ok(None)
        }
        Ok(Added::Mended) => {
            tally.mended += 1;
            taken_back.saw(op)?;
            Ok(None)
        }
        Ok(Added::Clash) => Ok(Some(FaultKind::Clash(op.id))),
        Err(error) => Err(error.into()),
    }
}
