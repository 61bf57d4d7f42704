//! Reading the ops of a store's file that isn't this store: a backup, or one that was set aside.

use super::StoreError;
use super::look::{Found, look_only};
use crate::exchange::{ExchangeError, FaultKind};
use rusqlite::{Connection, OpenFlags};
use sha2::{Digest, Sha256};
use std::fmt::Write as _;
use std::path::Path;

/// Takes the bytes of an op whose hash is right, or what is wrong with the row.
pub(crate) type EachOp<'a> = dyn FnMut(Result<&[u8], FaultKind>) -> Result<(), ExchangeError> + 'a;

/// Hands over the ops of a closed store file, in the order they were added, without writing to it or
/// beside it. Whether all rows could be read.
pub(crate) fn each_op_of_file(file: &Path, each: &mut EachOp<'_>) -> Result<bool, ExchangeError> {
    let conn = open_closed(file)?;
    let mut statement = conn.prepare("SELECT sha256, body FROM op ORDER BY seq")?;
    let mut rows = statement.query([])?;
    loop {
        let row = match rows.next() {
            Ok(Some(row)) => row,
            Ok(None) => return Ok(true),
            Err(_) => return Ok(false),
        };
        let parts = row.get_ref(0).and_then(|sha| Ok((sha.as_blob()?, row.get_ref(1)?.as_blob()?)));
        match parts {
            Ok((sha, body)) if Sha256::digest(body).as_slice() == sha => each(Ok(body))?,
            Ok(_) => each(Err(FaultKind::WrongHash))?,
            Err(_) => each(Err(FaultKind::NotARecord))?,
        }
    }
}

/// Opens a store file that nobody writes to, for reading only. Its write-ahead log, if any, is not read.
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
    Ok(conn)
}
