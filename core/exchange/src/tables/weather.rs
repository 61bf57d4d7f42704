//! The six cells of conditions: in the table of casts as at the splash, in that of sessions as last logged.

use super::ExchangeError;
use super::cells::Cells;
use restwater_sky::conditions::Conditions;
use serde::Serialize;
use std::io::Write;

pub(super) fn cells<W: Write>(cells: &mut Cells<W>, known: &Conditions) -> Result<(), ExchangeError> {
    let celsius = |tenths: Option<i16>| tenths.map(|t| f64::from(t) / 10.0);
    cells.number(celsius(known.water), 1)?;
    cells.number(celsius(known.air), 1)?;
    cells.plain(&word(known.wind))?;
    cells.plain(&word(known.wind_from))?;
    cells.plain(&known.cloud.map_or_else(String::new, |oktas| oktas.to_string()))?;
    cells.plain(&word(known.colour))
}

/// The word that the op file uses for it.
fn word<T: Serialize>(value: Option<T>) -> String {
    let value = value.and_then(|v| serde_json::to_value(v).ok());
    value.and_then(|v| v.as_str().map(str::to_owned)).unwrap_or_default()
}
