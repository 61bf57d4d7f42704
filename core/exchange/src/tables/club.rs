//! The table of days for a club: how likely each kind of shape of the wait makes the casts of each day. It contains no casts.

use super::cells::{Cells, rfc3339};
use super::{ExchangeError, Origin};
use restwater_log::sha256_hex;
use restwater_session::{Session, waits_of};
use restwater_waits::{CLUB_SHAPES, Shapes};
use std::io::Write;
use uuid::Uuid;

pub(super) const HEADER: &[&str] = &[
    "session_id",
    "phone_id",
    "water",
    "month",
    "water_temperature_c",
    "shapes",
    "kind",
    "usual_weight",
    "ln_bayes_factor",
    "entries",
];

/// The id of a phone in the table of days for a club: always the same for the same phone.
pub fn club_phone(phone: Uuid) -> String {
    alias("phone ", phone)
}

/// Hides an id. The id itself contains the time at which it was made, which would show anyone who was at the water whose day it
/// is. It can't be found from the hash, since half of an id is random. A day that is sent twice has the same hash.
fn alias(kind: &str, id: Uuid) -> String {
    let mut hash = sha256_hex(&[b"restwater club ", kind.as_bytes(), id.as_bytes()].concat());
    hash.truncate(32);
    hash
}

/// The month in which a session began, from 1 to 12: a club's weights are fitted by it, and chosen by it for a day.
pub fn month_of(session: &Session) -> Option<u8> {
    rfc3339(&session.started.as_ref()?.shown).get(5..7)?.parse().ok()
}

/// A day without a cast whose end was seen has one row with its ids and the number of its entries alone: it may have been sent
/// when it had such casts, and this later copy must replace that one.
pub(super) fn rows<W: Write>(
    cells: &mut Cells<W>,
    session: &Session,
    origin: Origin,
) -> Result<(), ExchangeError> {
    let waits = waits_of(session);
    let Some(month) = month_of(session).filter(|_| !waits.is_empty()) else {
        return empty_row(cells, session, origin);
    };
    let celsius = session.conditions_now().water.map(|tenths| f64::from(tenths) / 10.0);
    let shapes = Shapes::usual();
    let kinds = shapes.kind_names().iter().zip(shapes.kind_weights());
    for ((kind, usual), ln) in kinds.zip(shapes.day_by_kind(&waits)) {
        cells.plain(&alias("day ", session.id))?;
        cells.plain(&origin.phone.map_or_else(String::new, club_phone))?;
        cells.words(session.setup.water.as_deref())?;
        cells.plain(&month)?;
        cells.number(celsius, 1)?;
        cells.plain(&CLUB_SHAPES)?;
        cells.plain(kind.as_str())?;
        cells.number(Some(*usual), 12)?;
        cells.number(Some(ln), 6)?;
        cells.plain(&origin.entries)?;
        cells.end_row()?;
    }
    Ok(())
}

fn empty_row<W: Write>(cells: &mut Cells<W>, session: &Session, origin: Origin) -> Result<(), ExchangeError> {
    cells.plain(&alias("day ", session.id))?;
    cells.plain(&origin.phone.map_or_else(String::new, club_phone))?;
    for _ in ["water", "month", "water_temperature_c"] {
        cells.plain("")?;
    }
    cells.plain(&CLUB_SHAPES)?;
    for _ in ["kind", "usual_weight", "ln_bayes_factor"] {
        cells.plain("")?;
    }
    cells.plain(&origin.entries)?;
    cells.end_empty_row()
}
