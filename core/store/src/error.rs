//! Why the store can't do what was asked, and what to do next.

use restwater_log::CanonicalError;
use rusqlite::ErrorCode;
use std::io;
use uuid::Uuid;

/// Why the store can't do what was asked. If one of these is returned, nothing was changed.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// The file is a store, but parts of it can't be read.
    #[error("the log is damaged ({0}): save what can be read to a new log")]
    Damaged(String),
    /// Written by a later version of Restwater.
    #[error("the log was written by a newer version (its form is {found}, known is {known}): update the app")]
    Newer {
        /// Schema number of the file.
        found: u32,
        /// Highest schema number known here.
        known: u32,
    },
    /// Something else is where the store should be.
    #[error("{0} is no log of Restwater: move it away, then start again")]
    Foreign(String),
    /// The file or its directory can't be written.
    #[error("the log can't be written here ({0}): give write permission or choose another place")]
    ReadOnly(String),
    /// Another process has the store open.
    #[error("the log is in use by another process: close that one first")]
    Busy,
    /// The disk is full.
    #[error("no space left to keep the entry: free some space, then tap again")]
    NoSpace,
    /// A different op with this id is already in the log.
    #[error("an entry with the id {0} is already there and differs: it was not overwritten")]
    Clash(Uuid),
    /// The op can't be written or read.
    #[error(transparent)]
    Op(#[from] CanonicalError),
    /// A number in an op is too large to be carried exactly by JSON (beyond 2^53).
    #[error("a time of the entry {0} is out of range: set the clock of the phone")]
    OutOfRange(Uuid),
    /// The operating system refused.
    #[error("the disk gave an error ({0}): try again")]
    Io(#[from] io::Error),
    /// SQLite refused for a reason of its own.
    #[error("the log could not be read or written ({0}): try again")]
    Sqlite(String),
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        let Some(code) = error.sqlite_error_code() else {
            return match error {
                rusqlite::Error::FromSqlConversionFailure(..)
                | rusqlite::Error::InvalidColumnType(..)
                | rusqlite::Error::IntegralValueOutOfRange(..) => Self::Damaged(error.to_string()),
                other => Self::Sqlite(other.to_string()),
            };
        };
        match code {
            ErrorCode::DatabaseCorrupt => Self::Damaged(error.to_string()),
            ErrorCode::NotADatabase => Self::Foreign("the file".into()),
            ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked => Self::Busy,
            ErrorCode::DiskFull => Self::NoSpace,
            ErrorCode::ReadOnly | ErrorCode::PermissionDenied | ErrorCode::CannotOpen => {
                Self::ReadOnly(error.to_string())
            }
            _ => Self::Sqlite(error.to_string()),
        }
    }
}

impl StoreError {
    /// Classifies an error of the operating system by what the angler can do about it.
    pub(crate) fn from_io(error: io::Error) -> Self {
        match error.kind() {
            io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => {
                Self::ReadOnly(error.to_string())
            }
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => Self::NoSpace,
            _ => Self::Io(error),
        }
    }
}
