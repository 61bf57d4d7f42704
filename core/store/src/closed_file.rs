//! Reads the ops of a store file that is not open as this store: a backup, or a file that was set aside.

use super::StoreError;
use super::look::{Found, look_only};
use rusqlite::config::DbConfig;
use rusqlite::limits::Limit;
use rusqlite::{Connection, OpenFlags};
use sha2::{Digest, Sha256};
use std::fmt::Write as _;
use std::path::Path;

/// A fault in a row of the log.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RowFault {
    /// The hash belongs to other bytes.
    WrongHash,
    /// The row holds something other than a hash and the bytes of an op.
    NotARow,
}

/// The longest value that is read: far longer than any entry or summary, and short enough for a phone's memory.
const LONGEST_VALUE: i32 = 64 << 20;

/// Receives the bytes of an op whose hash is right, or the fault of its row.
pub type EachOp<'a, E> = dyn FnMut(Result<&[u8], RowFault>) -> Result<(), E> + 'a;

/// Passes the ops of a closed store file to `each`, in the order in which they were added, and writes neither
/// to the file nor beside it. Returns whether every row could be read.
pub fn each_op_of_file<E: From<StoreError>>(file: &Path, each: &mut EachOp<'_, E>) -> Result<bool, E> {
    let conn = open_closed(file)?;
    // A view named like the table may go on for ever.
    let is_table = "SELECT 1 FROM sqlite_schema WHERE name = 'op' AND type = 'table'";
    if let Ok(false) = conn.prepare(is_table).and_then(|mut statement| statement.exists([])) {
        return Ok(false);
    }
    // In a file whose first page is damaged no row can be read.
    let Ok(mut statement) = conn.prepare("SELECT sha256, body FROM op ORDER BY seq") else {
        return Ok(false);
    };
    let Ok(mut rows) = statement.query([]) else { return Ok(false) };
    loop {
        let row = match rows.next() {
            Ok(Some(row)) => row,
            Ok(None) => return Ok(true),
            Err(_) => return Ok(false),
        };
        let parts = row.get_ref(0).and_then(|sha| Ok((sha.as_blob()?, row.get_ref(1)?.as_blob()?)));
        match parts {
            Ok((sha, body)) if Sha256::digest(body).as_slice() == sha => each(Ok(body))?,
            Ok(_) => each(Err(RowFault::WrongHash))?,
            Err(_) => each(Err(RowFault::NotARow))?,
        }
    }
}

/// Opens a store file read-only that nobody writes to. Its write-ahead log, if any, is not read.
pub(super) fn open_closed(file: &Path) -> Result<Connection, StoreError> {
    if look_only(file)? == Found::Nothing {
        return Err(StoreError::Foreign(file.to_string_lossy().into_owned()));
    }
    let mut uri = String::from("file:");
    for byte in file.as_os_str().as_encoded_bytes() {
        match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'/' | b'.' | b'-' | b'_' => {
                uri.push(char::from(*byte));
            }
            other => {
                let _ = write!(uri, "%{other:02x}");
            }
        }
    }
    uri.push_str("?immutable=1");
    let flags =
        OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_URI | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let conn = Connection::open_with_flags(uri, flags)?;
    conn.pragma_update(None, "trusted_schema", false)?;
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_ENABLE_VIEW, false)?;
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_ENABLE_TRIGGER, false)?;
    conn.set_limit(Limit::SQLITE_LIMIT_LENGTH, LONGEST_VALUE)?;
    Ok(conn)
}
