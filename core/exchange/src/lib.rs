//! Files in and out: op file, CSV, report.
#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

mod clocks;
mod club_file;
mod error;
mod export;
mod import;
mod op_file;
mod reading;
mod records;
mod strict;
mod tables;
mod taken_back;
mod tally;
mod undo;
mod write_atomically;

pub use club_file::club_in;
pub use error::{ClubFault, ExchangeError, Fault, FaultKind, LooksLike};
pub use export::{Exported, Place, Selection, export, export_to};
pub use import::{Incoming, import, looks_like_a_store, preview, preview_backup, restore};
pub use op_file::{FORMAT, FORMAT_VERSION, MEDIA_TYPE, OpFileWriter};
#[cfg(any(test, feature = "testing"))]
pub use reading::read_op_file;
#[cfg(any(test, feature = "testing"))]
pub use tables::session_csv;
pub use tables::{CsvOptions, Origin, Table, club_phone, month_of, rfc3339, write_csv};
pub use tally::{ClockDifference, Tally, Trailer};
pub use undo::{redo_import, undo_import};
pub use write_atomically::write_atomically;

use std::ops::ControlFlow;

/// The progress of a long piece of work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Progress {
    /// Ops processed.
    pub ops: u64,
    /// Bytes read or written.
    pub bytes: u64,
}

/// Receives the progress from time to time; `Break` cancels the work, which then leaves nothing behind.
pub type OnProgress<'a> = dyn FnMut(Progress) -> ControlFlow<()> + 'a;

/// Ops between two calls of [`OnProgress`].
pub(crate) const PROGRESS_EVERY: u64 = 500;
