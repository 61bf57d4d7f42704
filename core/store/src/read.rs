//! Reading the log.

use super::{Store, StoreError, order_bytes, order_of, uuid_of};
use restwater_log::{Began, Hlc, Op, OpOrder, op_from_bytes};
use rusqlite::{Connection, OptionalExtension, Params, Row};
use sha2::{Digest, Sha256};
use uuid::Uuid;

/// The row of one session in the list of sessions.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SessionRow {
    /// Its id.
    pub id: Uuid,
    /// How it began, which determines its position among the sessions and whose it is.
    pub began: Began,
    /// How many ops it has, including undone and unknown ones.
    pub ops: u64,
    /// Order of its latest op.
    pub last: OpOrder,
    /// Order of the latest op that the device of this store wrote in it.
    pub own: Option<OpOrder>,
}

impl Store {
    /// The ops of a session in the order of the log; kinds of later versions as
    /// [`Payload::Unknown`](restwater_log::Payload::Unknown). Empty if there is no such session.
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

    /// All sessions, the one that began last first.
    pub fn sessions(&self) -> Result<Vec<SessionRow>, StoreError> {
        self.rows(include_str!("sql/sessions.sql"), [])
    }

    /// The kits, newest first.
    pub fn kits(&self) -> Result<Vec<SessionRow>, StoreError> {
        self.rows(include_str!("sql/kits.sql"), [])
    }

    /// One session, if the log has an op of it.
    pub fn session(&self, id: Uuid) -> Result<Option<SessionRow>, StoreError> {
        Ok(self.rows(include_str!("sql/session.sql"), [id.as_bytes()])?.pop())
    }

    /// The session that one device began last before that position, or without one the last of all it began.
    pub fn session_of_before(
        &self,
        device: Uuid,
        began: Option<OpOrder>,
    ) -> Result<Option<SessionRow>, StoreError> {
        let params = (order_or_end(began), device.into_bytes());
        Ok(self.rows(include_str!("sql/session_of_before.sql"), params)?.pop())
    }

    /// The devices that began a session, undone or not.
    pub fn devices(&self) -> Result<Vec<Uuid>, StoreError> {
        let conn = self.conn()?;
        // Goes from one device to the next by the index, skipping all other sessions of the same device.
        let mut statement = conn.prepare_cached(include_str!("sql/next_device.sql"))?;
        let mut devices: Vec<Uuid> = Vec::new();
        loop {
            let last = devices.last().map(|device| device.as_bytes().to_vec()).unwrap_or_default();
            let next: Option<Vec<u8>> = statement.query_row([last], |row| row.get(0))?;
            let Some(next) = next else { return Ok(devices) };
            devices.push(uuid_of(&next)?);
        }
    }

    /// The session in which this store's device wrote last, considering only those last written before `own`,
    /// or all of them.
    pub fn written_before(&self, own: Option<OpOrder>) -> Result<Option<SessionRow>, StoreError> {
        Ok(self.rows(include_str!("sql/written_before.sql"), [order_or_end(own)])?.pop())
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
}

/// Reads an op from a row of hash and bytes, and checks the hash.
pub(super) fn op_of(row: &Row<'_>) -> Result<Op, StoreError> {
    let sha = row.get_ref(0)?.as_blob().map_err(rusqlite::Error::from)?;
    let body = row.get_ref(1)?.as_blob().map_err(rusqlite::Error::from)?;
    if Sha256::digest(body).as_slice() != sha {
        return Err(StoreError::Damaged("an entry differs from its hash".into()));
    }
    Ok(op_from_bytes(body)?)
}

/// An order, or one that comes after every order.
fn order_or_end(order: Option<OpOrder>) -> [u8; 44] {
    order.map_or([0xff; 44], order_bytes)
}

fn session_of(row: &Row<'_>) -> Result<SessionRow, StoreError> {
    let id: Vec<u8> = row.get(0)?;
    let last: Vec<u8> = row.get(3)?;
    let own: Option<Vec<u8>> = row.get(6)?;
    Ok(SessionRow {
        id: uuid_of(&id)?,
        began: began_of(row, [4, 1, 5])?,
        ops: count_of(row.get(2)?)?,
        last: order_of(&last)?,
        own: own.map(|own| order_of(&own)).transpose()?,
    })
}

/// How a session began, read from the columns of its order, wall time and device.
pub(super) fn began_of(row: &Row<'_>, columns: [usize; 3]) -> Result<Began, StoreError> {
    let [order, wall_ms, device] = columns;
    let (order, device): (Vec<u8>, Option<Vec<u8>>) = (row.get(order)?, row.get(device)?);
    began(row.get(wall_ms)?, &order, device.as_deref())
}

fn began(wall_ms: i64, order: &[u8], device: Option<&[u8]>) -> Result<Began, StoreError> {
    let device = device.map(uuid_of).transpose()?;
    Ok(Began { order: order_of(order)?, wall_ms, device })
}

/// The number of the row added last. Rows are never deleted, so it grows with every entry, however old, and
/// identifies the state of the log.
pub(super) fn version(conn: &Connection) -> Result<u64, StoreError> {
    count_of(conn.prepare_cached("SELECT coalesce(max(seq), 0) FROM op")?.query_row([], |row| row.get(0))?)
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
