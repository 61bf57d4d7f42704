//! The table of sessions, one row for each.

use super::cells::Cells;
use super::weather;
use super::{ExchangeError, Origin};
use chrono::DateTime;
use restwater_log::Side;
use restwater_session::figures::{Counts, side_name};
use restwater_session::{Note, OtherNet, PlanOutcome, Session, feed_mg, plan_outcomes, reach_m};
use std::io::Write;

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
    "settle_s",
    "twitch_restarts",
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
    "fed_g",
    "fish_shown",
    "neighbours_fish",
    "neighbours",
    "section_left",
    "section_right",
    "other_nets",
    "dead_fish_rule",
    "plan_day",
    "plan_start_m",
    "first_cast_m",
    "plan_first_casts_min",
    "first_casts_min",
    "plan_move_min",
    "first_kept_back_cast_min",
    "entries",
    "phone_id",
];

pub(super) fn row<W: Write>(
    cells: &mut Cells<W>,
    session: &Session,
    origin: Origin,
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
    cells.plain(&session.setup.settle_s)?;
    cells.yes_or_no(session.setup.twitch_restarts)?;
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
    let mg: u64 = session.feedings().iter().map(|feeding| feed_mg(&feeding.amount)).sum();
    cells.number((mg > 0).then_some(mg as f64 / 1_000.0), 0)?;
    cells.plain(&session.shown.len())?;
    others(cells, session)?;
    plan(cells, session)?;
    cells.plain(&origin.entries)?;
    cells.plain(&origin.phone.map_or_else(String::new, |phone| phone.to_string()))?;
    // Without a START there is no session for the angler, unless a file brought casts of it.
    if session.started.is_none() && session.casts.is_empty() {
        cells.end_empty_row()
    } else {
        cells.end_row()
    }
}

/// Fish that neighbours were seen to land, the extent of the section, the weights of other nets, and the rule
/// on dead fish.
fn others<W: Write>(cells: &mut Cells<W>, session: &Session) -> Result<(), ExchangeError> {
    cells.plain(&session.neighbours.len())?;
    let sides = [Side::Left, Side::Right, Side::Across];
    let fished = |side: &&Side| session.neighbours.iter().any(|fish| fish.side == **side);
    cells.plain(&sides.iter().filter(fished).count())?;
    let pegs = |n: Option<u8>| n.map_or_else(String::new, |n| n.to_string());
    cells.plain(&pegs(session.section.map(|section| section.left)))?;
    cells.plain(&pegs(session.section.map(|section| section.right)))?;
    cells.words(Some(&session.others.iter().map(other_net).collect::<Vec<_>>().join(" | ")))?;
    cells.words(Some(&session.match_rule))
}

/// The figures of the plan, each beside what happened; minutes count from the start of the session.
fn plan<W: Write>(cells: &mut Cells<W>, session: &Session) -> Result<(), ExchangeError> {
    let minutes = |ms: i64| ms as f64 / 60_000.0;
    let mut planned: [Option<f64>; 5] = [None; 5];
    let mut left = String::new();
    for outcome in plan_outcomes(session) {
        match outcome {
            PlanOutcome::Start { spot, first, .. } => {
                planned[0] = spot.reach.map(reach_m);
                let at = first.and_then(|cast| cast.spot.as_ref());
                planned[1] = at.map(|at| reach_m(at.reach));
            }
            PlanOutcome::Leave { minutes, left_min } => {
                planned[2] = Some(f64::from(minutes));
                left = left_min.iter().map(ToString::to_string).collect::<Vec<_>>().join(" | ");
            }
            PlanOutcome::Move { at_ms, first, .. } => {
                planned[3] = Some(minutes(at_ms));
                planned[4] = first.map(|first| minutes(first.at_ms));
            }
            PlanOutcome::Pegs { .. } | PlanOutcome::Rig { .. } => {}
        }
    }
    let day = session.plan.as_ref().and_then(|plan| date_of(plan.day));
    cells.plain(&day.unwrap_or_default())?;
    cells.number(planned[0], 1)?;
    cells.number(planned[1], 1)?;
    cells.number(planned[2], 0)?;
    cells.plain(&left)?;
    cells.number(planned[3], 1)?;
    cells.number(planned[4], 1)
}

/// The date of a day counted from 1 January 1970.
fn date_of(day: i32) -> Option<String> {
    let date = DateTime::from_timestamp(i64::from(day).saturating_mul(86_400), 0)?;
    Some(date.format("%Y-%m-%d").to_string())
}

/// "left 2: 1200.0 g by eye".
fn other_net(net: &OtherNet) -> String {
    let how = if net.guessed { "by eye" } else { "called" };
    format!("{} {}: {:.1} g {how}", side_name(net.peg.side), net.peg.place, net.shown.grams())
}

fn joined(notes: &[Note]) -> String {
    notes.iter().map(|note| note.text.as_str()).collect::<Vec<_>>().join(" | ")
}

/// The weight of all nets together on the scales, or `None` if no net was weighed.
fn weighed_in(session: &Session) -> Option<f64> {
    let nets = &session.scales;
    (!nets.is_empty()).then(|| nets.iter().map(|net| net.shown.grams()).sum())
}
