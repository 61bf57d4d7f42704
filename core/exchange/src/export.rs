//! Exports the log as op files.

use super::taken_back::said_of_imports;
use super::write_atomically;
use super::{ExchangeError, OnProgress, OpFileWriter, PROGRESS_EVERY, Progress};
use restwater_log::{Op, Payload, effective, op_from_bytes, sorted, voided};
use restwater_store::{Store, StoreError};
use rusqlite::{CachedStatement, Connection, Rows};
use sha2::{Digest, Sha256};
use std::collections::HashSet;
use std::io::Write;
use std::path::Path;
use uuid::Uuid;

/// What to export.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Selection<'a> {
    /// One session.
    Session(Uuid),
    /// Some sessions.
    Sessions(&'a [Uuid]),
    /// Everything.
    Everything,
}

/// Whether the geographic position of the peg is included.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, serde::Serialize, serde::Deserialize)]
pub enum Place {
    /// It is left out.
    #[default]
    LeftOut,
    /// It is included, because the angler chose so.
    Included,
}

/// What was exported.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Exported {
    /// Ops written.
    pub ops: u64,
    /// Bytes written.
    pub bytes: u64,
}

/// Writes an op file. After an error the file is incomplete, and is recognised as cut off when read.
pub fn export(
    store: &Store,
    what: Selection<'_>,
    place: Place,
    out: impl Write,
    progress: &mut OnProgress<'_>,
) -> Result<Exported, ExchangeError> {
    let places = if place == Place::Included { places_out_of_force(store, what)? } else { Vec::new() };
    let conn = store.conn()?;
    let mut file = OpFileWriter::begin(out)?;
    let mut statement = conn.prepare_cached(match what {
        Selection::Session(_) => include_str!("sql/export_session.sql"),
        Selection::Sessions(_) => include_str!("sql/export_sessions.sql"),
        Selection::Everything => include_str!("sql/export_everything.sql"),
    })?;
    let mut left_here = taken_back_here(&conn, what)?;
    left_here.extend(places);
    let mut rows = select(&mut statement, what)?;
    let mut ops = 0;
    while let Some(row) = rows.next()? {
        let body = row.get_ref(2)?.as_blob().map_err(rusqlite::Error::from)?;
        if Sha256::digest(body).as_slice() != row.get_ref(1)?.as_blob().map_err(rusqlite::Error::from)? {
            return Err(StoreError::Damaged("an entry differs from its hash".into()).into());
        }
        if place == Place::LeftOut && says_where(body) {
            continue;
        }
        let id = Uuid::from_bytes(row.get(0)?);
        if left_here.contains(&id) {
            continue;
        }
        file.op(id, body)?;
        ops += 1;
        if ops % PROGRESS_EVERY == 0 && progress(Progress { ops, bytes: file.bytes() }).is_break() {
            return Err(ExchangeError::Cancelled);
        }
    }
    let (_, ops, bytes) = file.end()?;
    Ok(Exported { ops, bytes })
}

fn select<'s>(statement: &'s mut CachedStatement<'_>, what: Selection<'_>) -> rusqlite::Result<Rows<'s>> {
    match what {
        Selection::Session(id) => statement.query([id.as_bytes()]),
        Selection::Sessions(ids) => {
            let hex: Vec<String> = ids.iter().map(|id| format!("\"{}\"", id.simple())).collect();
            statement.query([format!("[{}]", hex.join(","))])
        }
        Selection::Everything => statement.query([]),
    }
}

/// The entries about imports undone on this phone: those that record the undoing, and the imported entries
/// that are therefore out of force. If they were exported, they would undo the same entries on the phone of
/// the angler who logged them.
fn taken_back_here(conn: &Connection, what: Selection<'_>) -> Result<HashSet<Uuid>, ExchangeError> {
    let session = match what {
        Selection::Session(id) => Some(id),
        Selection::Sessions(_) | Selection::Everything => None,
    };
    let said = said_of_imports(conn, session)?;
    let mut left_here = voided(&sorted(&said));
    left_here.extend(said.iter().map(|op| op.id));
    Ok(left_here)
}

/// The positions of pegs that were undone or that a later one replaced: no screen shows them any more, so the angler can't
/// mean to send them. The first reading may have been taken at home.
fn places_out_of_force(store: &Store, what: Selection<'_>) -> Result<Vec<Uuid>, ExchangeError> {
    let is_place = |op: &Op| matches!(op.payload, Payload::PegPlaced { .. });
    let sessions = match what {
        Selection::Session(id) => vec![id],
        Selection::Sessions(_) | Selection::Everything => sessions_with_places(&*store.conn()?)?,
    };
    let mut out_of_force = Vec::new();
    for session in sessions {
        let ops = store.ops_of(session)?;
        let in_force =
            effective(&sorted(&ops)).into_iter().rev().map(|entry| entry.op).find(|op| is_place(op));
        let in_force = in_force.map(|op| op.id);
        let stays = |op: &Op| in_force.is_some() && (Some(op.id) == in_force || op.amends == in_force);
        out_of_force.extend(ops.iter().filter(|op| is_place(op) && !stays(op)).map(|op| op.id));
    }
    Ok(out_of_force)
}

fn sessions_with_places(conn: &Connection) -> Result<Vec<Uuid>, ExchangeError> {
    let mut statement = conn.prepare_cached(include_str!("sql/sessions_with_places.sql"))?;
    let rows = statement.query_map([], |row| Ok(Uuid::from_bytes(row.get(0)?)))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Whether an op contains the position of the peg. Few do, so only a body that contains the word is parsed.
fn says_where(body: &[u8]) -> bool {
    const KIND: &[u8] = b"\"peg_placed\"";
    let may = body.windows(KIND.len()).any(|part| part == KIND);
    may && op_from_bytes(body).is_ok_and(|op| matches!(op.payload, Payload::PegPlaced { .. }))
}

/// Writes an op file atomically: it is complete and on stable storage, or not there at all.
pub fn export_to(
    store: &Store,
    what: Selection<'_>,
    place: Place,
    path: &Path,
    progress: &mut OnProgress<'_>,
) -> Result<Exported, ExchangeError> {
    write_atomically(path, |out| export(store, what, place, out, progress))
}
