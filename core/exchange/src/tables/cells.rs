//! Writes rows cell by cell.

use super::{CsvOptions, ExchangeError};
use chrono::{DateTime, FixedOffset, SecondsFormat};
use csv::{Terminator, Writer, WriterBuilder};
use restwater_log::Moment;
use restwater_session::Stamp;
use std::borrow::Cow;
use std::io::Write;

pub(super) struct Cells<W: Write> {
    out: Writer<W>,
    options: CsvOptions,
    rows: u64,
}

impl<W: Write> Cells<W> {
    pub fn begin(out: W, options: CsvOptions) -> Self {
        let out = WriterBuilder::new().terminator(Terminator::CRLF).flexible(false).from_writer(out);
        Self { out, options, rows: 0 }
    }

    pub fn header(&mut self, names: &[&str]) -> Result<(), ExchangeError> {
        self.out.write_record(names).map_err(failed)
    }

    /// Text from the log.
    pub fn words(&mut self, text: Option<&str>) -> Result<(), ExchangeError> {
        let text = text.unwrap_or_default();
        let cell = if self.options.neutralise_formulas { neutral(text) } else { Cow::Borrowed(text) };
        self.out.write_field(cell.as_bytes()).map_err(failed)
    }

    /// One of our own words, an id or a whole number.
    pub fn plain(&mut self, text: &(impl ToString + ?Sized)) -> Result<(), ExchangeError> {
        self.out.write_field(text.to_string()).map_err(failed)
    }

    pub fn yes_or_no(&mut self, is: bool) -> Result<(), ExchangeError> {
        self.plain(if is { "yes" } else { "no" })
    }

    /// A number with this many decimals, if there is one.
    pub fn number(&mut self, value: Option<f64>, decimals: usize) -> Result<(), ExchangeError> {
        let cell = value.filter(|v| v.is_finite()).map(|v| format!("{v:.decimals$}"));
        self.out.write_field(cell.unwrap_or_default()).map_err(failed)
    }

    /// A local time with its offset, to the second.
    pub fn time(&mut self, at: Option<&Stamp>) -> Result<(), ExchangeError> {
        self.out.write_field(at.map(|at| rfc3339(&at.shown)).unwrap_or_default()).map_err(failed)
    }

    /// Ends a row that isn't counted, since it only says that nothing is left.
    pub fn end_empty_row(&mut self) -> Result<(), ExchangeError> {
        self.out.write_record(None::<&[u8]>).map_err(failed)
    }

    pub fn end_row(&mut self) -> Result<(), ExchangeError> {
        self.rows += 1;
        self.end_empty_row()
    }

    pub fn end(mut self) -> Result<u64, ExchangeError> {
        self.out.flush()?;
        Ok(self.rows)
    }
}

fn failed(error: csv::Error) -> ExchangeError {
    ExchangeError::Io(error.into())
}

/// Local time with offset; empty if the clock is outside the range of a calendar.
pub fn rfc3339(at: &Moment) -> String {
    let offset = FixedOffset::east_opt(i32::from(at.offset_min) * 60);
    let time = DateTime::from_timestamp_millis(at.wall_ms).zip(offset);
    time.map_or_else(String::new, |(time, offset)| {
        time.with_timezone(&offset).to_rfc3339_opts(SecondsFormat::Secs, false)
    })
}

/// First characters that spreadsheets treat as a formula (OWASP, "CSV Injection"), full-width forms included.
const LEADS: &[char] = &['=', '+', '-', '@', '＝', '＋', '－', '＠'];

/// First characters that a spreadsheet may leave out before it looks for a formula.
const BLANKS: &[char] = &['\t', '\r', '\n'];

/// Characters within a cell at which a spreadsheet may begin a new one: where a comma is for decimals it splits at
/// semicolons, and then a quotation mark before the cell does not keep it together.
const SPLITS: &[char] = &[';', '\t', '\r', '\n'];

/// Puts a `'` before each character that begins a formula wherever a cell may begin.
pub(super) fn neutral(text: &str) -> Cow<'_, str> {
    let mut cell = String::new();
    if text.starts_with(BLANKS) {
        cell.push('\'');
    }
    let mut begins = true;
    for c in text.chars() {
        if begins && LEADS.contains(&c) {
            cell.push('\'');
        }
        begins = SPLITS.contains(&c) || (begins && (c == '"' || c == ' '));
        cell.push(c);
    }
    if cell == text { Cow::Borrowed(text) } else { Cow::Owned(cell) }
}
