//! The entries that UNDO IMPORT removed, as they follow from the log itself. The list of imports does not say this: a log that
//! came to a new phone by a backup has no such list.

use super::ExchangeError;
use restwater_log::{Op, Payload, op_from_bytes, sorted, voided};
use rusqlite::{Connection, OptionalExtension};
use std::collections::{BTreeMap, HashMap, HashSet};
use uuid::Uuid;

/// What the log, or one session of it, says of imports: that entries were removed with one, or restored.
pub(super) fn said_of_imports(conn: &Connection, session: Option<Uuid>) -> Result<Vec<Op>, ExchangeError> {
    let mut statement = conn.prepare_cached(match session {
        Some(_) => include_str!("sql/said_of_imports_in_session.sql"),
        None => include_str!("sql/said_of_imports.sql"),
    })?;
    let mut rows = match session {
        Some(id) => statement.query([id.as_bytes()])?,
        None => statement.query([])?,
    };
    let mut said = Vec::new();
    while let Some(row) = rows.next()? {
        let body = row.get_ref(0)?.as_blob().map_err(rusqlite::Error::from)?;
        // Ops of other kinds may contain the word in their text.
        said.extend(op_from_bytes(body).ok().filter(|op| !op.is_step_of_undo()));
    }
    Ok(said)
}

/// Those of them that removed entries and are in force, by import.
fn in_force(said: Vec<Op>) -> BTreeMap<Uuid, Vec<Op>> {
    let void = voided(&sorted(&said));
    let mut takings: BTreeMap<Uuid, Vec<Op>> = BTreeMap::new();
    for op in said {
        if let Payload::ImportUndone { import, .. } = op.payload
            && !void.contains(&op.id)
        {
            takings.entry(import).or_default().push(op);
        }
    }
    takings
}

/// The ops in force that removed what an import brought.
pub(super) fn takings_of(conn: &Connection, import: Uuid) -> Result<Vec<Op>, ExchangeError> {
    Ok(in_force(said_of_imports(conn, None)?).remove(&import).unwrap_or_default())
}

/// The ops by which the import restored entries that had been removed with earlier imports.
pub(super) fn said_by(said: &[Op], import: Uuid) -> Vec<&Op> {
    said.iter().filter(|op| op.group == Some(import)).collect()
}

/// Whether those ops remove an entry of the angler's, and not only ops about other imports (`said`).
pub(super) fn still_takes(takings: &[Op], said: &[Op]) -> bool {
    let said: HashSet<Uuid> = said.iter().map(|op| op.id).collect();
    targets(takings).any(|(_, id)| !said.contains(&id))
}

/// What is removed here, and how much of it an incoming file contains. A session is read when the file turns out to
/// contain an entry of it that is known.
pub(super) struct TakenBack<'tx> {
    conn: &'tx Connection,
    sessions: HashSet<Uuid>,
    takings: BTreeMap<Uuid, Vec<Op>>,
    /// The import with which each entry was removed.
    entries: HashMap<Uuid, Uuid>,
    in_the_file: HashSet<Uuid>,
    said_in_the_file: Vec<Op>,
}

impl<'tx> TakenBack<'tx> {
    pub(super) fn of(conn: &'tx Connection) -> Self {
        Self {
            conn,
            sessions: HashSet::new(),
            takings: BTreeMap::new(),
            entries: HashMap::new(),
            in_the_file: HashSet::new(),
            said_in_the_file: Vec::new(),
        }
    }

    /// The file contains this entry, which is known here.
    pub(super) fn saw(&mut self, op: &Op) -> Result<(), ExchangeError> {
        if self.sessions.insert(op.session) {
            for (import, ops) in in_force(said_of_imports(self.conn, Some(op.session))?) {
                self.entries.extend(targets(&ops).map(|(_, id)| (id, import)));
                self.takings.entry(import).or_default().extend(ops);
            }
        }
        if self.entries.contains_key(&op.id) {
            self.in_the_file.insert(op.id);
        }
        if !op.is_step_of_undo() {
            self.said_in_the_file.push(op.clone());
        }
        Ok(())
    }

    /// The whole file was read. What a backup itself calls removed is not brought back by it.
    pub(super) fn end_of_file(&mut self) {
        for id in voided(&sorted(&self.said_in_the_file)) {
            self.in_the_file.remove(&id);
        }
    }

    /// The entries that the file brings back.
    pub(super) fn in_the_file(&self) -> &HashSet<Uuid> {
        &self.in_the_file
    }

    /// The imports of which the file brings something back, each with the ops that removed entries of its sessions.
    pub(super) fn touched(&self) -> impl Iterator<Item = (Uuid, &[Op])> {
        let imports: HashSet<_> = self.in_the_file.iter().filter_map(|id| self.entries.get(id)).collect();
        self.takings
            .iter()
            .filter(move |(import, _)| imports.contains(import))
            .map(|(id, ops)| (*id, ops.as_slice()))
    }
}

/// Session and id of the entries that those ops removed.
pub(super) fn targets(takings: &[Op]) -> impl Iterator<Item = (Uuid, Uuid)> {
    takings.iter().flat_map(|op| op.payload.voids().unwrap_or_default().iter().map(|id| (op.session, *id)))
}

/// Whether an op of a file is new here and would remove entries that were in this log before the file. A backup of
/// another phone tells what its angler removed there; here that concerns only what comes with the backup.
pub(super) fn removes_entries_before(conn: &Connection, op: &Op, before: i64) -> Result<bool, ExchangeError> {
    let Payload::ImportUndone { targets, .. } = &op.payload else { return Ok(false) };
    let mut find = conn.prepare_cached("SELECT 1 FROM op WHERE id = ?1 AND seq <= ?2")?;
    let mut was_here =
        |id: &Uuid| find.query_row((id.as_bytes(), before), |_| Ok(())).optional().map(|row| row.is_some());
    if was_here(&op.id)? {
        return Ok(false);
    }
    for id in targets {
        if was_here(id)? {
            return Ok(true);
        }
    }
    Ok(false)
}
