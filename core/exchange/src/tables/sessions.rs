//! A row a session.

use super::ExchangeError;
use super::cells::Cells;
use super::weather;
use restwater_session::figures::Counts;
use restwater_session::{Note, Session};
use std::io::Write;
use uuid::Uuid;

pub(super) const HEADER: &[&str] = &[
    "session_id",
    "water",
    "peg",
    "started",
    "ended",
    "length_h",
    "rods",
    "depth_m",
    "stick_span_m",
    "casts",
    "bites",
    "landed",
    "lost",
    "missed",
    "liners",
    "weight_known_g",
    "fish_without_weight",
    "doubtful_entries",
    "notes",
    "hooklengths_lost",
    "fish_put_back",
    "weighed_in_g",
    "water_temperature_c",
    "air_temperature_c",
    "wind",
    "wind_from",
    "cloud_oktas",
    "water_colour",
    "plan_next_time",
    "fished_h",
    "breaks",
    "break_h",
    "phone_id",
];

pub(super) fn row<W: Write>(
    cells: &mut Cells<W>,
    session: &Session,
    phone: Option<Uuid>,
) -> Result<(), ExchangeError> {
    let counts = Counts::of(session);
    let length = session.started.as_ref().zip(session.ended.as_ref()).map(|(from, to)| to.ms_since(from));
    cells.plain(&session.id)?;
    cells.words(session.setup.water.as_deref())?;
    cells.words(session.setup.peg.as_deref())?;
    cells.time(session.started.as_ref())?;
    cells.time(session.ended.as_ref())?;
    cells.number(length.map(|ms| ms as f64 / 3_600_000.0), 2)?;
    cells.plain(&session.rods.len())?;
    cells.number(session.setup.depth_cm.map(|cm| f64::from(cm) / 100.0), 2)?;
    cells.number(Some(f64::from(session.setup.span_tenth_mm) / 10_000.0), 4)?;
    for count in [counts.casts, counts.bites, counts.landed, counts.lost, counts.missed, counts.liners] {
        cells.plain(&count)?;
    }
    cells.number(Some(counts.grams), 1)?;
    cells.plain(&counts.unweighed)?;
    cells.plain(&session.doubts.len())?;
    cells.words(Some(&joined(&session.notes)))?;
    cells.plain(&counts.hooklengths_lost)?;
    cells.plain(&counts.put_back)?;
    cells.number(weighed_in(session), 1)?;
    weather::cells(cells, &session.conditions_now())?;
    cells.words(Some(&joined(&session.next_time)))?;
    cells.number(session.fished_min().map(|min| min / 60.0), 2)?;
    cells.plain(&session.breaks.len())?;
    let span = session.started.as_ref().zip(session.ended.as_ref());
    cells.number(span.map(|(from, to)| session.break_min(from, to) / 60.0), 2)?;
    cells.plain(&phone.map_or_else(String::new, |phone| phone.to_string()))?;
    cells.end_row()
}

fn joined(notes: &[Note]) -> String {
    notes.iter().map(|note| note.text.as_str()).collect::<Vec<_>>().join(" | ")
}

/// What the scales showed of all nets together, or `None` if no net was weighed.
fn weighed_in(session: &Session) -> Option<f64> {
    let nets = &session.scales;
    (!nets.is_empty()).then(|| nets.iter().map(|net| net.shown.grams()).sum())
}
