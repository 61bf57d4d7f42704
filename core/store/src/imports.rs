//! The imports: which ops each of them brought, so that one undo takes back one import.
//!
//! This belongs to this phone alone: a phone that receives a file is not affected by imports that
//! were undone here.

use super::read::count_of;
use super::{Store, StoreError, uuid_of};
use rusqlite::{Connection, OptionalExtension, Row};
use uuid::Uuid;

/// One import that brought something.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ImportRow {
    /// Its id.
    pub id: Uuid,
    /// When, wall ms since 1970 UTC.
    pub wall_ms: i64,
    /// Minutes east of UTC then.
    pub offset_min: i16,
    /// The user's name for the partner or the file.
    pub source: String,
    /// How many ops it brought.
    pub ops: u64,
    /// Whether it is undone at present.
    pub undone: bool,
    brought: (i64, i64),
    undone_by: Option<(i64, i64)>,
}

impl Store {
    /// All imports that brought something, latest first.
    pub fn imports(&self) -> Result<Vec<ImportRow>, StoreError> {
        let conn = self.conn()?;
        ImportRow::all(&conn)
    }
}

impl ImportRow {
    /// All of them, latest first.
    pub fn all(conn: &Connection) -> Result<Vec<Self>, StoreError> {
        let mut statement = conn.prepare_cached(include_str!("sql/imports.sql"))?;
        let mut rows = statement.query([])?;
        let mut imports = Vec::new();
        while let Some(row) = rows.next()? {
            imports.push(import_of(row)?);
        }
        Ok(imports)
    }

    /// The number of the row added last.
    pub fn last_seq(conn: &Connection) -> Result<i64, StoreError> {
        Ok(conn.query_row("SELECT coalesce(max(seq), 0) FROM op", [], |row| row.get(0))?)
    }

    /// Notes that the rows after `before` were brought by an import.
    pub fn add(
        conn: &Connection,
        id: Uuid,
        source: &str,
        (wall_ms, offset_min): (i64, i16),
        before: i64,
    ) -> Result<(), StoreError> {
        let last = Self::last_seq(conn)?;
        conn.prepare_cached(include_str!("sql/add_import.sql"))?.execute((
            id.as_bytes(),
            wall_ms,
            offset_min,
            source,
            before + 1,
            last,
        ))?;
        Ok(())
    }

    /// Notes it again after a salvage, which renumbered the rows: `seqs` are the former numbers of those that were saved, in
    /// their order. An import of which nothing was saved is left out.
    pub(super) fn add_again(&self, conn: &Connection, seqs: &[i64]) -> Result<(), StoreError> {
        let Some((first, last)) = renumbered(self.brought, seqs) else { return Ok(()) };
        let (id, source) = (self.id.as_bytes(), &self.source);
        let mut add = conn.prepare_cached(include_str!("sql/add_import.sql"))?;
        add.execute((id, self.wall_ms, self.offset_min, source, first, last))?;
        let undone_by = self.undone_by.and_then(|rows| renumbered(rows, seqs));
        let mut set = conn.prepare_cached(include_str!("sql/set_import_undone.sql"))?;
        set.execute((id, undone_by.map(|rows| rows.0), undone_by.map(|rows| rows.1)))?;
        Ok(())
    }

    /// The import with that id.
    pub fn find(conn: &Connection, id: Uuid) -> Result<Option<Self>, StoreError> {
        conn.prepare_cached(include_str!("sql/import.sql"))?
            .query_row([id.as_bytes()], |row| Ok(import_of(row)))
            .optional()?
            .transpose()
    }

    /// Notes the rows after `before` as those that undid it; `None` if it is in force again.
    pub fn set_undone(conn: &Connection, id: Uuid, before: Option<i64>) -> Result<(), StoreError> {
        let first = before.map(|seq| seq + 1);
        let last = before.map(|_| Self::last_seq(conn)).transpose()?;
        conn.prepare_cached(include_str!("sql/set_import_undone.sql"))?.execute((
            id.as_bytes(),
            first,
            last,
        ))?;
        Ok(())
    }

    /// Session and id of the ops that it brought.
    pub fn ops_brought(&self, conn: &Connection) -> Result<Vec<(Uuid, Uuid)>, StoreError> {
        let mut statement = conn.prepare_cached(include_str!("sql/ops_in_row.sql"))?;
        let rows = statement.query_map([self.brought.0, self.brought.1], |row| {
            Ok((Uuid::from_bytes(row.get(0)?), Uuid::from_bytes(row.get(1)?)))
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
}

/// The new numbers of a range of rows, if any of them was saved.
fn renumbered((first, last): (i64, i64), seqs: &[i64]) -> Option<(i64, i64)> {
    let saved_before = seqs.partition_point(|seq| *seq < first);
    let saved_until = seqs.partition_point(|seq| *seq <= last);
    let range = (i64::try_from(saved_before + 1).ok()?, i64::try_from(saved_until).ok()?);
    (range.0 <= range.1).then_some(range)
}

fn import_of(row: &Row<'_>) -> Result<ImportRow, StoreError> {
    let id: Vec<u8> = row.get(0)?;
    let brought: (i64, i64) = (row.get(4)?, row.get(5)?);
    let undone_by = row.get::<_, Option<i64>>(6)?.zip(row.get(7)?);
    Ok(ImportRow {
        id: uuid_of(&id)?,
        wall_ms: row.get(1)?,
        offset_min: row.get(2)?,
        source: row.get(3)?,
        ops: count_of(brought.1 - brought.0 + 1)?,
        undone: undone_by.is_some(),
        brought,
        undone_by,
    })
}
