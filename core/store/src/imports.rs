//! The imports: which ops each of them brought, so that one undo takes back one import.
//!
//! This belongs to this phone alone: whoever receives a file is not affected by imports that were undone
//! here.

use super::read::count_of;
use super::{Store, StoreError, uuid_of};
use restwater_log::op_from_bytes;
use rusqlite::{Connection, OptionalExtension, Row};
use std::collections::HashSet;
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
        Self::ops_between(conn, self.brought)
    }

    /// Session and id of the ops that undid it. Empty while the import is in force.
    pub fn ops_that_took_it_back(&self, conn: &Connection) -> Result<Vec<(Uuid, Uuid)>, StoreError> {
        self.undone_by.map_or_else(|| Ok(Vec::new()), |rows| Self::ops_between(conn, rows))
    }

    /// The ops that it brought and that are undone at present.
    pub fn ops_out_of_force(&self, conn: &Connection) -> Result<HashSet<Uuid>, StoreError> {
        let Some((first, last)) = self.undone_by else { return Ok(HashSet::new()) };
        let mut statement = conn.prepare_cached("SELECT body FROM op WHERE seq BETWEEN ?1 AND ?2")?;
        let mut rows = statement.query([first, last])?;
        let mut taken_back = HashSet::new();
        while let Some(row) = rows.next()? {
            let body = row.get_ref(0)?.as_blob().map_err(rusqlite::Error::from)?;
            let op = op_from_bytes(body).map_err(|error| StoreError::Damaged(error.to_string()))?;
            taken_back.extend(op.payload.voids().unwrap_or_default());
        }
        Ok(taken_back)
    }

    fn ops_between(conn: &Connection, (first, last): (i64, i64)) -> Result<Vec<(Uuid, Uuid)>, StoreError> {
        let mut statement = conn.prepare_cached(include_str!("sql/ops_in_row.sql"))?;
        let rows = statement.query_map([first, last], |row| {
            Ok((Uuid::from_bytes(row.get(0)?), Uuid::from_bytes(row.get(1)?)))
        })?;
        Ok(rows.collect::<Result<_, _>>()?)
    }
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
