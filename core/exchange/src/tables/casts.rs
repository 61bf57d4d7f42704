//! The table of casts, one row for each.

use super::cells::Cells;
use super::weather;
use super::{ExchangeError, Origin};
use restwater_log::{LeadMaterial, Moment, Reach, Rig, Spot};
use restwater_session::figures::{conditions_at, end_name, feed_kind_name, wait_minutes};
use restwater_session::{Cast, Feeding, Session, Stamp, fed_by, reach_m, waits_of_cast};
use std::io::Write;

pub(super) const HEADER: &[&str] = &[
    "session_id",
    "peg",
    "cast",
    "rod",
    "splash_time",
    "time_right_to_s",
    "wait_min",
    "waits_s",
    "bite",
    "bite_time",
    "bite_right_to_s",
    "end",
    "end_time",
    "end_right_to_s",
    "liners",
    "indications",
    "twitches",
    "reach_m",
    "reach_entered",
    "reach_unit",
    "bearing_deg",
    "clipped_up",
    "bait",
    "colour",
    "popup_cm",
    "hooklength_cm",
    "hook_size",
    "lead_g",
    "lead_material",
    "hooklength_lost",
    "water_temperature_c",
    "air_temperature_c",
    "wind",
    "wind_from",
    "cloud_oktas",
    "water_colour",
    "fed_min_ago",
    "fed_kind",
    "fed_today_g",
    "entries",
];

pub(super) fn rows<W: Write>(
    cells: &mut Cells<W>,
    session: &Session,
    origin: Origin,
) -> Result<(), ExchangeError> {
    let feedings = session.feedings();
    for (n, cast) in session.casts.iter().enumerate() {
        cells.plain(&session.id)?;
        cells.words(session.setup.peg.as_deref())?;
        cells.plain(&(n + 1))?;
        course(cells, session, cast)?;
        spot(cells, cast.spot.as_ref())?;
        rig(cells, &cast.rig)?;
        cells.yes_or_no(cast.hooklength_lost.is_some())?;
        weather::cells(cells, &conditions_at(session, cast))?;
        fed(cells, &feedings, cast)?;
        cells.plain(&origin.entries)?;
        cells.end_row()?;
    }
    Ok(())
}

fn course<W: Write>(cells: &mut Cells<W>, session: &Session, cast: &Cast) -> Result<(), ExchangeError> {
    cells.plain(&cast.rod)?;
    cells.time(Some(&cast.start))?;
    cells.plain(&right_to_s(Some(&cast.start)))?;
    cells.number(wait_minutes(session, cast), 2)?;
    cells.plain(&waits_s(session, cast))?;
    cells.yes_or_no(cast.bite.is_some())?;
    cells.time(cast.bite.as_ref().map(|(at, _)| at))?;
    cells.plain(&right_to_s(cast.bite.as_ref().map(|(at, _)| at)))?;
    cells.plain(cast.end.as_ref().map_or("out", |end| end_name(&end.cause)))?;
    cells.time(cast.end.as_ref().map(|end| &end.at))?;
    cells.plain(&right_to_s(cast.end.as_ref().map(|end| &end.at)))?;
    cells.plain(&cast.liners.len())?;
    cells.plain(&cast.indications.len())?;
    cells.plain(&cast.twitches.len())
}

/// Every wait of the cast to the millisecond: a twitch may end one and begin the next. Only the last can have a bite.
fn waits_s(session: &Session, cast: &Cast) -> String {
    let seconds =
        waits_of_cast(session, cast).into_iter().map(|wait| format!("{:.3}", wait.minutes() * 60.0));
    seconds.collect::<Vec<_>>().join(" | ")
}

/// How far off a time may be; 0 for the time of a tap, unless the clocks of that phone don't agree.
fn right_to_s(at: Option<&Stamp>) -> String {
    let seconds = |at: &Stamp| {
        let clocks_s = if at.uncertain_ms > Moment::JUMP_MS { at.uncertain_ms / 1_000 } else { 0 };
        clocks_s.max(at.shown.approx_s.into()).to_string()
    };
    at.map_or_else(String::new, seconds)
}

/// The feed that had gone in where it landed before its splash, including its own feeder's fill: minutes
/// since the latest, how that went in, and the total.
fn fed<W: Write>(cells: &mut Cells<W>, feedings: &[Feeding], cast: &Cast) -> Result<(), ExchangeError> {
    let here = fed_by(feedings, cast.rod, cast.spot.as_ref(), &cast.start);
    cells.number(here.as_ref().map(|here| here.since_min), 1)?;
    cells.plain(here.as_ref().map_or("", |here| feed_kind_name(here.last.what)))?;
    cells.number(here.map(|here| here.mg as f64 / 1_000.0), 0)
}

fn spot<W: Write>(cells: &mut Cells<W>, spot: Option<&Spot>) -> Result<(), ExchangeError> {
    cells.number(spot.map(|s| reach_m(s.reach)), 2)?;
    let (entered, unit) = match spot.map(|s| s.reach) {
        None => (None, ""),
        Some(Reach::Wraps { hundredths, .. }) => (Some(hundredths), "wraps"),
        Some(Reach::Metres { cm }) => (Some(cm), "m"),
        Some(Reach::Yards { hundredths }) => (Some(hundredths), "yd"),
    };
    cells.number(entered.map(|n| f64::from(n) / 100.0), 2)?;
    cells.plain(unit)?;
    cells.number(spot.map(|s| f64::from(s.bearing_cdeg) / 100.0), 2)?;
    cells.plain(spot.map_or("", |s| if s.clipped { "yes" } else { "no" }))
}

fn rig<W: Write>(cells: &mut Cells<W>, rig: &Rig) -> Result<(), ExchangeError> {
    let tenth = |n: Option<u32>| n.map(|n| f64::from(n) / 10.0);
    cells.words(rig.bait.as_deref())?;
    cells.words(rig.colour.as_deref())?;
    cells.number(tenth(rig.popup_mm), 1)?;
    cells.number(tenth(rig.hooklength_mm), 1)?;
    cells.plain(&rig.hook_size.map_or_else(String::new, |n| n.to_string()))?;
    cells.number(rig.lead_mg.map(|n| f64::from(n) / 1_000.0), 2)?;
    cells.plain(match rig.material {
        None => "",
        Some(LeadMaterial::Lead) => "lead",
        Some(LeadMaterial::NonToxic) => "non-toxic",
    })
}
