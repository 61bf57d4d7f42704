//! What can be wrong with a file, and where in it.

use restwater_store::StoreError;
use restwater_waits::ClubError;
use std::io;
use uuid::Uuid;

/// What a file looks like that is not an op file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LooksLike {
    /// No bytes at all.
    Empty,
    /// A zip archive, or one of the document formats made of one.
    Zip,
    /// A SQLite database, such as a backup of the log.
    Database,
    /// JSON, but not a sequence of records.
    Json,
    /// Plain text.
    Text,
    /// None of these.
    Other,
}

impl LooksLike {
    /// Judges the first bytes of a file.
    pub(crate) fn of(head: &[u8]) -> Self {
        match head {
            [] => Self::Empty,
            _ if head.starts_with(b"PK\x03\x04") || head.starts_with(b"PK\x05\x06") => Self::Zip,
            _ if head.starts_with(b"SQLite format 3\0") => Self::Database,
            [b'{' | b'[', ..] => Self::Json,
            _ if !head.iter().any(|b| *b < 0x20 && !b.is_ascii_whitespace()) => Self::Text,
            _ => Self::Other,
        }
    }

    /// A name for it in ids of messages.
    pub fn name(self) -> &'static str {
        match self {
            Self::Empty => "empty",
            Self::Zip => "zip",
            Self::Database => "database",
            Self::Json => "json",
            Self::Text => "text",
            Self::Other => "other",
        }
    }
}

impl std::fmt::Display for LooksLike {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Empty => "it is empty",
            Self::Zip => "it is a zip archive",
            Self::Database => "it is a database",
            Self::Json => "it is other JSON",
            Self::Text => "it is text",
            Self::Other => "it is something else",
        })
    }
}

/// Why a club's file can't be used.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ClubFault {
    /// Its form or its shapes are of a later version.
    #[error("the club's file is of a newer version: update the app")]
    Newer,
    /// Its shapes are of an earlier version.
    #[error("the club's file is for an older version of the app: ask for a new one")]
    Older,
    /// It is incomplete, or was changed.
    #[error("the club's file is damaged ({0}): ask for it again")]
    Damaged(String),
    /// Weights that are none.
    #[error("the club's file has {0}: ask for a new one")]
    Weights(ClubError),
    /// Weights fitted to the days of too few anglers.
    #[error(
        "the club's file has weights fitted to the days of {0} anglers: ask for one with at least 5 a water"
    )]
    FewAnglers(u32),
    /// Larger than any such file.
    #[error("the club's file is larger than {0} bytes, or has more than it should: ask for a new one")]
    TooLarge(usize),
}

/// Why a file can't be exchanged at all. The log is left as it was.
#[derive(Debug, thiserror::Error)]
pub enum ExchangeError {
    /// Not an op file.
    #[error("this is no file of Restwater entries ({0}): choose one that ends in .restwater.json-seq")]
    NotOpFile(LooksLike),
    /// Its form is of a later version.
    #[error(
        "the file was written by a newer version (its form is {found}, known is {known}): update the app"
    )]
    Newer {
        /// Version of the file's form.
        found: u64,
        /// Highest version known here.
        known: u64,
    },
    /// The first record can't be read, so nothing after it can be trusted.
    #[error("the file can't be read: {0}; ask for it again")]
    Header(Fault),
    /// More records than any angler logs.
    #[error("the file has more than {0} records: ask for a part of it")]
    TooMany(u64),
    /// The user cancelled.
    #[error("cancelled: nothing was changed")]
    Cancelled,
    /// There is no such import to undo or redo, or it is in that state already.
    #[error("there is no import {0} to take back or bring back")]
    NoSuchImport(Uuid),
    /// The file can't be read or written.
    #[error("the file gave an error ({0}): try another place")]
    Io(#[from] io::Error),
    /// It is the file of a club, and can't be used.
    #[error(transparent)]
    Club(#[from] ClubFault),
    /// The store refused.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl From<rusqlite::Error> for ExchangeError {
    fn from(error: rusqlite::Error) -> Self {
        Self::Store(error.into())
    }
}

/// What is wrong with one record.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum FaultKind {
    /// Bytes that are not UTF-8.
    #[error("bytes that are no UTF-8")]
    NotUtf8,
    /// Not JSON.
    #[error("no JSON: {0}")]
    NotJson(String),
    /// One key twice in an object.
    #[error("the key \"{0}\" twice")]
    DuplicateKey(String),
    /// Half of a surrogate pair.
    #[error("half of a surrogate pair")]
    LoneSurrogate,
    /// Nested deeper than any op.
    #[error("nested too deep")]
    TooDeep,
    /// Longer than any op.
    #[error("longer than a record may be")]
    TooLong,
    /// A number that JSON doesn't carry exactly (beyond 2^53).
    #[error("a number beyond 2^53")]
    NumberOutOfRange,
    /// Readable, but not in canonical form.
    #[error("not in canonical form")]
    NotCanonical,
    /// The hash does not match the bytes.
    #[error("the hash doesn't fit")]
    WrongHash,
    /// Neither op nor trailer.
    #[error("neither an entry nor the end of the file")]
    NotARecord,
    /// Not an op, or one of a known kind with an impossible payload.
    #[error("{0}")]
    NotAnOp(String),
    /// A clock reading beyond the year 2200, which would stop every other clock.
    #[error("a clock beyond the year 2200")]
    ClockAbsurd,
    /// The file ends within the record.
    #[error("cut off")]
    Cut,
    /// A record after the end.
    #[error("something after the end of the file")]
    AfterEnd,
    /// A different op with this id is in the log already, and was kept.
    #[error("the entry {0} differs from the one already there, which was kept")]
    Clash(Uuid),
}

/// A fault and where it is.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("record {record}, byte {byte}: {kind}")]
pub struct Fault {
    /// Number of the record; the header is 0.
    pub record: u64,
    /// Offset in the file, in bytes from 0.
    pub byte: u64,
    /// What is wrong.
    pub kind: FaultKind,
}
