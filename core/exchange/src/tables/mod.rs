//! CSV (RFC 4180) of sessions, casts and fish, with the unit in each header.
//!
//! Lines end in CRLF, text is UTF-8, the first line names the columns; a cell that isn't known is empty.
//! Times are local with their offset (RFC 3339), to the second. Texts from the log (water, peg, bait, colour,
//! class, notes) that a spreadsheet would treat as a formula begin with an added `'`, unless that is switched off:
//! a file from another angler must not run anything. Numbers and times are never touched.

mod casts;
mod cells;
mod club;
mod fish;
mod sessions;
mod weather;

use super::{ExchangeError, OnProgress, Progress, Selection};
use cells::Cells;
pub use cells::rfc3339;
pub use club::{club_phone, month_of};
use restwater_log::{Op, Payload, effective, sorted};
use restwater_session::{Session, fold};
use restwater_store::{SessionRow, Store};
use std::io::Write;
use uuid::Uuid;

/// Which table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Table {
    /// One row for each session.
    Sessions,
    /// One row for each cast.
    Casts,
    /// One row for each landed fish.
    Fish,
    /// For each day with waits, one row for each kind of shape, for a club.
    ClubDays,
}

/// How it is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CsvOptions {
    /// Puts a `'` before texts that a spreadsheet would treat as a formula. On by default.
    pub neutralise_formulas: bool,
}

impl Default for CsvOptions {
    fn default() -> Self {
        Self { neutralise_formulas: true }
    }
}

/// What the log knows about a session besides its entries.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Origin {
    /// The phone that began it, if that is known and to be shown.
    pub phone: Option<Uuid>,
    /// How many entries it has, undone ones included. An undo is an entry too, so on one phone the count only grows: of two
    /// copies that it sent, the one with more entries is the later one. What UNDO IMPORT took back and positions that were
    /// undone are counted on the phone where they are and go to no other, so a partner's copy of the same session may count
    /// fewer.
    pub entries: u64,
}

/// Writes a table of the selected sessions, earliest first, and returns the number of rows, not counting those of sessions of
/// which nothing is left. A session's row has the id of the phone that began it, which shows whose it is without a name. Days for a club are those of the `mine`
/// phones alone: another angler's days are not the sender's to give.
pub fn write_csv(
    store: &Store,
    what: Selection<'_>,
    table: Table,
    options: CsvOptions,
    mine: &[Uuid],
    out: impl Write,
    progress: &mut OnProgress<'_>,
) -> Result<u64, ExchangeError> {
    let mut cells = Cells::begin(out, options);
    header(&mut cells, table)?;
    let mut done = Progress::default();
    let is_mine = |row: &&SessionRow| {
        table != Table::ClubDays || row.began.device.is_some_and(|phone| mine.contains(&phone))
    };
    for row in store.sessions()?.iter().rev().filter(|row| selected(row, what)).filter(is_mine) {
        let ops = store.ops_of(row.id)?;
        let origin = Origin { phone: row.began.device, entries: ops.len() as u64 };
        if !is_gone_with_an_import(&ops) {
            rows(&mut cells, table, &fold(row.id, &ops), origin)?;
        }
        done.ops += ops.len() as u64;
        if progress(done).is_break() {
            return Err(ExchangeError::Cancelled);
        }
    }
    cells.end()
}

/// The table of one session, without a log, for tests.
#[cfg(any(test, feature = "testing"))]
pub fn session_csv(
    session: &Session,
    table: Table,
    options: CsvOptions,
    origin: Origin,
    out: impl Write,
) -> Result<u64, ExchangeError> {
    let mut cells = Cells::begin(out, options);
    header(&mut cells, table)?;
    rows(&mut cells, table, session, origin)?;
    cells.end()
}

/// Whether a session has no beginning because the import that brought its START was undone. It is left out, also if a note of this
/// phone or entries of another import are still in force: that undoing counts on this phone alone, and elsewhere other copies of
/// the session count. A phone that such a note reaches has neither a START nor a cast of that session, and leaves it out as well.
/// A session of which the START was undone otherwise keeps a row that says so, where a table has one for a session: it replaces
/// the copies that were sent before.
fn is_gone_with_an_import(ops: &[Op]) -> bool {
    let is_of_a_day =
        |op: &Op| matches!(op.payload, Payload::SessionStarted(_)) || op.payload.rod().is_some();
    if !ops.iter().any(is_of_a_day) {
        return true;
    }
    let begins = |ordered: &[&Op]| {
        effective(ordered).iter().any(|of| matches!(of.payload, Payload::SessionStarted { .. }))
    };
    let of_no_import = ops.iter().filter(|op| !matches!(op.payload, Payload::ImportUndone { .. }));
    !begins(&sorted(ops)) && begins(&sorted(of_no_import))
}

/// Whether a session is selected. A kit never is, since it has no casts; it is only exported as entries.
fn selected(row: &SessionRow, what: Selection<'_>) -> bool {
    !restwater_log::is_kit(row.id)
        && match what {
            Selection::Session(id) => row.id == id,
            Selection::Sessions(ids) => ids.contains(&row.id),
            Selection::Everything => true,
        }
}

fn header<W: Write>(cells: &mut Cells<W>, table: Table) -> Result<(), ExchangeError> {
    cells.header(match table {
        Table::Sessions => sessions::HEADER,
        Table::Casts => casts::HEADER,
        Table::Fish => fish::HEADER,
        Table::ClubDays => club::HEADER,
    })
}

fn rows<W: Write>(
    cells: &mut Cells<W>,
    table: Table,
    session: &Session,
    origin: Origin,
) -> Result<(), ExchangeError> {
    match table {
        Table::Sessions => sessions::row(cells, session, origin),
        Table::Casts => casts::rows(cells, session, origin),
        Table::Fish => fish::rows(cells, session, origin),
        Table::ClubDays => club::rows(cells, session, origin),
    }
}

#[cfg(test)]
mod tests;
