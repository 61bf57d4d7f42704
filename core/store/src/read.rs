//! Reading the log.

use super::{Store, StoreError, order_bytes, order_of, uuid_of};
use restwater_log::{Hlc, Op, OpOrder, op_from_bytes};
use rusqlite::{Connection, OptionalExtension, Params, Row};
use sha2::{Digest, Sha256};
use uuid::Uuid;

/// One session as the list of sessions needs it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SessionRow {
    /// Its id.
    pub id: Uuid,
    /// Wall time of its earliest op, ms since 1970 UTC.
    pub first_wall_ms: i64,
    /// How many ops it has, undone ones and unknown ones included.
    pub ops: u64,
    /// Order of its latest op.
    pub last: OpOrder,
}

/// Where a session stands in the list of sessions: wall time of its earliest op, and its id.
pub type SessionPlace = (i64, Uuid);

impl Store {
    /// The ops of a session in the order of the log; kinds of later versions as
    /// [`Payload::Unknown`](restwater_log::Payload::Unknown). Empty where there is no such session.
    pub fn ops_of(&self, session: Uuid) -> Result<Vec<Op>, StoreError> {
        let conn = self.conn()?;
        let mut statement = conn.prepare_cached(include_str!("sql/ops_of.sql"))?;
        let mut rows = statement.query([session.as_bytes()])?;
        let mut ops = Vec::new();
        while let Some(row) = rows.next()? {
            ops.push(op_of(row)?);
        }
        ops.sort_by_key(Op::order);
        Ok(ops)
    }

    /// All sessions, newest first.
    pub fn sessions(&self) -> Result<Vec<SessionRow>, StoreError> {
        self.rows(include_str!("sql/sessions.sql"), [])
    }

    /// The sessions that began last, newest first, kits among them.
    pub fn latest_sessions(&self, count: usize) -> Result<Vec<SessionRow>, StoreError> {
        self.rows(include_str!("sql/latest_sessions.sql"), [i64::try_from(count).unwrap_or(i64::MAX)])
    }

    /// The kits, newest first.
    pub fn kits(&self) -> Result<Vec<SessionRow>, StoreError> {
        self.rows(include_str!("sql/kits.sql"), [])
    }

    fn rows(&self, sql: &str, params: impl Params) -> Result<Vec<SessionRow>, StoreError> {
        let conn = self.conn()?;
        let mut statement = conn.prepare_cached(sql)?;
        let mut rows = statement.query(params)?;
        let mut sessions = Vec::new();
        while let Some(row) = rows.next()? {
            sessions.push(session_of(row)?);
        }
        Ok(sessions)
    }

    /// The session that comes before a place in the list of sessions, newest first; the first one without a place.
    pub fn session_before(&self, place: Option<SessionPlace>) -> Result<Option<SessionPlace>, StoreError> {
        // No id is above this one, and none has it.
        let (first_wall_ms, id) = place.unwrap_or((i64::MAX, Uuid::max()));
        let conn = self.conn()?;
        let mut statement = conn.prepare_cached(include_str!("sql/session_before.sql"))?;
        let row = statement.query_row((first_wall_ms, id.as_bytes()), |row| Ok(place_of(row))).optional()?;
        row.transpose()
    }

    /// The sessions with an op that comes after a clock reading, in no order.
    pub fn sessions_after(&self, hlc: Hlc) -> Result<Vec<SessionPlace>, StoreError> {
        let conn = self.conn()?;
        let mut statement = conn.prepare_cached(include_str!("sql/sessions_after.sql"))?;
        let mut rows = statement.query([order_bytes((hlc, Uuid::max(), Uuid::max()))])?;
        let mut places = Vec::new();
        while let Some(row) = rows.next()? {
            places.push(place_of(row)?);
        }
        Ok(places)
    }

    /// Whether this phone may have written in a session, told without reading its ops: where it says no, it has not.
    pub fn may_have_written(&self, session: Uuid) -> Result<bool, StoreError> {
        let name = format!(r#""device":"{}""#, self.device());
        let conn = self.conn()?;
        let mut statement = conn.prepare_cached(include_str!("sql/has_op_of.sql"))?;
        Ok(statement.query_row((session.as_bytes(), name.as_bytes()), |row| row.get(0))?)
    }

    /// The session that began last.
    pub fn latest_session(&self) -> Result<Option<Uuid>, StoreError> {
        let conn = self.conn()?;
        let id: Option<Vec<u8>> = conn
            .prepare_cached(include_str!("sql/latest_session.sql"))?
            .query_row([], |row| row.get(0))
            .optional()?;
        id.map(|bytes| uuid_of(&bytes)).transpose()
    }
}

/// An op out of a row of hash and bytes; the hash is checked.
pub(super) fn op_of(row: &Row<'_>) -> Result<Op, StoreError> {
    let sha = row.get_ref(0)?.as_blob().map_err(rusqlite::Error::from)?;
    let body = row.get_ref(1)?.as_blob().map_err(rusqlite::Error::from)?;
    if Sha256::digest(body).as_slice() != sha {
        return Err(StoreError::Damaged("an entry differs from its hash".into()));
    }
    Ok(op_from_bytes(body)?)
}

fn place_of(row: &Row<'_>) -> Result<SessionPlace, StoreError> {
    let id: Vec<u8> = row.get(0)?;
    Ok((row.get(1)?, uuid_of(&id)?))
}

fn session_of(row: &Row<'_>) -> Result<SessionRow, StoreError> {
    let id: Vec<u8> = row.get(0)?;
    let last: Vec<u8> = row.get(3)?;
    Ok(SessionRow {
        id: uuid_of(&id)?,
        first_wall_ms: row.get(1)?,
        ops: count_of(row.get(2)?)?,
        last: order_of(&last)?,
    })
}

/// A count as it is stored.
pub(super) fn count_of(stored: i64) -> Result<u64, StoreError> {
    u64::try_from(stored).map_err(|_| StoreError::Damaged("a negative count".into()))
}

/// The latest clock reading in the log.
pub(super) fn last_hlc(conn: &Connection) -> Result<Hlc, StoreError> {
    let last: Option<Vec<u8>> =
        conn.query_row(include_str!("sql/last_order.sql"), [], |row| row.get(0)).optional()?;
    Ok(last.map(|bytes| order_of(&bytes)).transpose()?.map_or_else(Hlc::default, |(hlc, _, _)| hlc))
}
