//! SQLite: the log, projections, migrations, backup, check.
//!
//! One file, `restwater.db`, in a directory of its own. Once [`Store::append`] has returned, its ops are on
//! stable storage. Sessions and snapshots are projections: they can be rebuilt from the log at any time.
#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

mod append;
mod backup;
mod check;
mod closed_file;
mod committed;
mod connect;
mod error;
mod imports;
mod look;
mod read;
mod salvage;
mod schema;
mod setting;
mod snapshot;
mod thin;

pub use append::{Added, Adding, Brought, Hashed};
pub use backup::{BackupFile, backups, superfluous_copies};
pub use check::{CheckReport, Folding};
pub use closed_file::{EachOp, RowFault, each_op_of_file};
pub use connect::sync_directory;
pub use error::StoreError;
pub use imports::ImportRow;
pub use read::SessionRow;
pub use salvage::SalvageReport;
pub use schema::{APPLICATION_ID, KNOWN_VERSION};
pub use snapshot::SnapshotRow;

use restwater_log::{Hlc, OpOrder};
use rusqlite::{Connection, OptionalExtension, TransactionBehavior};
use std::cell::{RefCell, RefMut};
use std::path::{Path, PathBuf};
use uuid::Uuid;

/// Name of the file within its directory.
pub const FILE_NAME: &str = "restwater.db";

/// The most ops that a log or a file may hold: several lifetimes of logging.
pub const MOST_OPS: u64 = 5_000_000;

/// What a returned [`Store::append`] survives.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Durability {
    /// A power cut: `synchronous=FULL`.
    #[default]
    PowerCut,
    /// Not even that: `synchronous=OFF`, the control of the power-cut test and nothing else.
    None,
}

/// The log on disk.
#[derive(Debug)]
pub struct Store {
    dir: PathBuf,
    device: Uuid,
    durability: Durability,
    /// `None` while paused.
    conn: RefCell<Option<Connection>>,
    last_hlc: Hlc,
    version: u64,
}

impl Store {
    /// Opens the store in `dir`, or creates one there that belongs to `new_device`.
    ///
    /// A file that is refused is left byte for byte as it was.
    pub fn open(dir: &Path, new_device: Uuid) -> Result<Self, StoreError> {
        Self::open_with(dir, new_device, Durability::PowerCut)
    }

    /// [`Store::open`] with another durability, for the control of the power-cut test.
    pub fn open_with(dir: &Path, new_device: Uuid, durability: Durability) -> Result<Self, StoreError> {
        let conn = connection(dir, new_device, durability)?;
        let device = device(&conn)?;
        let (last_hlc, version) = (read::last_hlc(&conn)?, read::version(&conn)?);
        let conn = RefCell::new(Some(conn));
        Ok(Self { dir: dir.to_owned(), device, durability, conn, last_hlc, version })
    }

    /// The device that writes here.
    pub fn device(&self) -> Uuid {
        self.device
    }

    /// Another device writes here from now on, since the file was copied from another phone, which may go on writing its
    /// own. Earlier entries keep the device that wrote them.
    pub fn change_device(&mut self, device: Uuid) -> Result<(), StoreError> {
        {
            let mut conn = self.conn()?;
            let tx = conn.transaction_with_behavior(TransactionBehavior::Immediate)?;
            tx.execute("UPDATE meta SET value = ?1 WHERE key = 'device'", [device.as_bytes()])?;
            // The new device has written nothing yet.
            tx.execute("UPDATE session SET own_order = NULL", [])?;
            tx.commit()?;
        }
        self.device = device;
        Ok(())
    }

    /// The latest clock reading in the log.
    pub fn last_hlc(&self) -> Hlc {
        self.last_hlc
    }

    /// The version of the log, which grows with every entry that is added, however old the entry is. It is
    /// meaningful only for this file.
    pub fn version(&self) -> u64 {
        self.version
    }

    /// The directory of the store.
    pub fn dir(&self) -> &Path {
        &self.dir
    }

    /// Writes everything into the one file and closes it, as iOS requires before it suspends the app.
    pub fn pause(&mut self) -> Result<(), StoreError> {
        let Some(conn) = self.conn.get_mut().take() else { return Ok(()) };
        let checked: Result<i64, _> = conn.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |row| row.get(0));
        // After a failed checkpoint the data is still in the log beside the file, so closing loses nothing.
        conn.close().map_err(|(_, error)| StoreError::from(error))?;
        checked?;
        Ok(())
    }

    /// Opens the file again; any other call does so, too.
    pub fn resume(&mut self) -> Result<(), StoreError> {
        self.conn().map(drop)
    }

    /// The connection, which is opened again after a pause.
    pub fn conn(&self) -> Result<RefMut<'_, Connection>, StoreError> {
        let mut slot = self.conn.try_borrow_mut().map_err(|_| StoreError::Busy)?;
        if slot.is_none() {
            *slot = Some(connection(&self.dir, self.device, self.durability)?);
        }
        RefMut::filter_map(slot, Option::as_mut).map_err(|_| StoreError::Busy)
    }
}

/// A connection to the store in `dir`, after finishing any interrupted salvage.
fn connection(dir: &Path, new_device: Uuid, durability: Durability) -> Result<Connection, StoreError> {
    look::directory(dir)?;
    salvage::finish_salvage(dir)?;
    connect::connect(dir, new_device, durability)
}

/// The device stored in the file.
fn device(conn: &Connection) -> Result<Uuid, StoreError> {
    let kept: Option<Vec<u8>> =
        conn.query_row(include_str!("sql/device.sql"), [], |row| row.get(0)).optional()?;
    uuid_of(&kept.ok_or_else(|| StoreError::Damaged("it doesn't say whose it is".into()))?)
}

fn uuid_of(bytes: &[u8]) -> Result<Uuid, StoreError> {
    Uuid::from_slice(bytes).map_err(|_| StoreError::Damaged("an id of the wrong length".into()))
}

/// An order as bytes that sort in the same way.
pub(crate) fn order_bytes(order: OpOrder) -> [u8; 44] {
    let (hlc, device, id) = order;
    let mut out = [0; 44];
    out[..8].copy_from_slice(&hlc.ms.to_be_bytes());
    out[8..12].copy_from_slice(&hlc.count.to_be_bytes());
    out[12..28].copy_from_slice(device.as_bytes());
    out[28..].copy_from_slice(id.as_bytes());
    out
}

/// The order that [`order_bytes`] wrote.
pub(crate) fn order_of(bytes: &[u8]) -> Result<OpOrder, StoreError> {
    let wrong = || StoreError::Damaged("an order of the wrong length".into());
    let bytes: &[u8; 44] = bytes.try_into().map_err(|_| wrong())?;
    let ms = bytes[..8].try_into().map(u64::from_be_bytes).map_err(|_| wrong())?;
    let count = bytes[8..12].try_into().map(u32::from_be_bytes).map_err(|_| wrong())?;
    Ok((Hlc { ms, count }, uuid_of(&bytes[12..28])?, uuid_of(&bytes[28..])?))
}

#[cfg(test)]
mod tests;
