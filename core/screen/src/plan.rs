//! The plan for a day in words: its lines, those that are due, and the result of each.

use super::date::date_words;
use super::figures::{clock, clock_of};
use super::place::{bearing_words, mark_of, reach_words, rig_words};
use super::{Arg, Wording, peg_name, peg_words};
use restwater_log::{MoveAt, PlanLine, PlanSpot, Reach, Spot};
use restwater_session::{PlanDue, PlanOutcome, Session, Stamp, plan_due, plan_outcomes};

/// "today", "tomorrow" or the date of a day counted from 1 January 1970.
pub fn plan_day_words(words: &Wording, day: i32, today: i32) -> String {
    match day.saturating_sub(today) {
        0 => words.say("plan-today"),
        1 => words.say("plan-tomorrow"),
        _ => date_words(words, i64::from(day).saturating_mul(86_400_000), 0),
    }
}

/// A time of day that is planned: "12:30".
fn time_words(minute: u16) -> String {
    clock_of(i64::from(minute) * 60_000, 0)
}

/// "12:30" or "90 min after all-in".
pub(crate) fn move_words(words: &Wording, at: MoveAt) -> String {
    match at {
        MoveAt::Clock { minute } => time_words(minute),
        MoveAt::AllIn { minutes } => {
            words.say_with("plan-after-all-in", &[("minutes", Arg::Text(&minutes.to_string()))])
        }
    }
}

/// "gate, 14 wraps of 12 ft, 51.2 m".
pub(crate) fn start_words(words: &Wording, spot: &PlanSpot) -> String {
    let parts = [aim_words(words, spot), spot.reach.map(|reach| reach_words(words, reach))];
    words.listed(&parts.into_iter().flatten().collect::<Vec<_>>())
}

fn aim_words(words: &Wording, spot: &PlanSpot) -> Option<String> {
    spot.mark.clone().or_else(|| spot.bearing_cdeg.map(|cdeg| bearing_words(words, cdeg)))
}

/// The subject of a line and its content.
pub(crate) fn line_words(words: &Wording, line: &PlanLine) -> (String, String) {
    match line {
        PlanLine::Peg { peg, note } => (peg_words(words, peg), note.clone()),
        PlanLine::Rig { rod, rig } => {
            (words.say_with("rod", &[("rod", Arg::Text(&rod.to_string()))]), rig_words(words, rig))
        }
        PlanLine::Start { spot } => (words.say("plan-start"), start_words(words, spot)),
        PlanLine::Leave { minutes } => {
            let minutes = minutes.to_string();
            (words.say("plan-leave"), words.say_with("plan-minutes", &[("minutes", Arg::Text(&minutes))]))
        }
        PlanLine::Move { at } => (words.say("plan-move"), move_words(words, *at)),
    }
}

/// The lines that are due, each a sentence; how long to leave the first casts only if that isn't said already.
pub(crate) fn due_words(words: &Wording, session: &Session, now: &Stamp, leave_is_said: bool) -> Vec<String> {
    let say = |due: PlanDue| match due {
        PlanDue::Peg { peg, note } => {
            let peg = peg_name(words, peg);
            words.say_with("plan-due-peg", &[("peg", Arg::Text(peg)), ("note", Arg::Text(note))])
        }
        PlanDue::Rig { rod, rig } => {
            let (rod, rig) = (rod.to_string(), rig_words(words, rig));
            words.say_with("plan-due-rig", &[("rod", Arg::Text(&rod)), ("rig", Arg::Text(&rig))])
        }
        PlanDue::Start { spot } => {
            words.say_with("plan-due-start", &[("spot", Arg::Text(&start_words(words, spot)))])
        }
        PlanDue::Leave { minutes } => {
            words.say_with("plan-due-leave", &[("minutes", Arg::Text(&minutes.to_string()))])
        }
        PlanDue::Move { at_ms } => {
            let time = clock_of(now.wall_at(at_ms), now.shown.offset_min);
            words.say_with("plan-due-move", &[("time", Arg::Text(&time))])
        }
    };
    let due = plan_due(session, now).into_iter();
    due.filter(|due| !(leave_is_said && matches!(due, PlanDue::Leave { .. }))).map(say).collect()
}

/// The plan of a session compared with what happened, a sentence or two for each line; empty without a plan.
pub fn plan_words(words: &Wording, session: &Session) -> Vec<String> {
    plan_outcomes(session).iter().map(|outcome| outcome_words(words, session, outcome)).collect()
}

fn outcome_words(words: &Wording, session: &Session, outcome: &PlanOutcome) -> String {
    match outcome {
        PlanOutcome::Pegs { liked, drawn, got } => pegs_came(words, liked, *drawn, *got),
        PlanOutcome::Rig { rod, rig, first, kept } => {
            let (rod, rig) = (rod.to_string(), rig_words(words, rig));
            let id = came_of("plan-rig", first.is_some(), *kept);
            let first = first.map(|first| rig_words(words, first)).unwrap_or_default();
            let args = [("rod", Arg::Text(&rod)), ("rig", Arg::Text(&rig)), ("first", Arg::Text(&first))];
            words.say_with(&id, &args)
        }
        PlanOutcome::Start { spot, first, kept } => {
            let id = came_of("plan-start", first.is_some(), *kept);
            let at = first.and_then(|cast| cast.spot.as_ref());
            let first =
                at.map_or_else(|| words.say("plan-spot-none"), |at| as_planned(words, session, spot, at));
            let planned = short_words(words, spot);
            words.say_with(&id, &[("planned", Arg::Text(&planned)), ("first", Arg::Text(&first))])
        }
        PlanOutcome::Leave { minutes, left_min } => left_words(words, *minutes, left_min),
        PlanOutcome::Move { at_ms, offset_min, first } => {
            moved_words(words, session, *at_ms, *offset_min, *first)
        }
    }
}

/// "one of pegs 14, 22. You drew 14."
fn pegs_came(words: &Wording, liked: &[&str], drawn: Option<&str>, got: bool) -> String {
    let id = match (drawn, got) {
        (None, _) => "plan-pegs-none",
        (Some(_), true) => "plan-pegs-kept",
        (Some(_), false) => "plan-pegs-other",
    };
    let liked: Vec<&str> = liked.iter().map(|peg| peg_name(words, peg)).collect();
    let drawn = drawn.map_or("", |peg| peg_name(words, peg));
    let args = [
        ("count", Arg::Count(liked.len())),
        ("pegs", Arg::Text(&words.listed(&liked))),
        ("drawn", Arg::Text(drawn)),
    ];
    words.say_with(id, &args)
}

/// "leave the first casts 20 min. The first 2 were left 16, 25 min."
fn left_words(words: &Wording, minutes: u16, left_min: &[i64]) -> String {
    let left: Vec<String> = left_min.iter().map(ToString::to_string).collect();
    let id = if left.is_empty() { "plan-leave-none" } else { "plan-leave-left" };
    let args = [
        ("minutes", Arg::Text(&minutes.to_string())),
        ("left", Arg::Text(&words.listed(&left))),
        ("count", Arg::Count(left.len())),
    ];
    words.say_with(id, &args)
}

/// "kept-back water at 12:30. First cast there 12:47."
fn moved_words(
    words: &Wording,
    session: &Session,
    at_ms: i64,
    offset_min: i16,
    first: Option<&Stamp>,
) -> String {
    let time = session.started.as_ref().map(|start| clock_of(start.wall_at(at_ms), offset_min));
    let id = if first.is_some() { "plan-move-cast" } else { "plan-move-none" };
    let first = first.map(|first| clock(&first.shown)).unwrap_or_default();
    let args = [("time", Arg::Text(time.as_deref().unwrap_or_default())), ("first", Arg::Text(&first))];
    words.say_with(id, &args)
}

fn came_of(id: &str, happened: bool, kept: bool) -> String {
    let how = match (happened, kept) {
        (false, _) => "none",
        (true, true) => "kept",
        (true, false) => "other",
    };
    format!("{id}-{how}")
}

/// "14 wraps, gate": only what was planned, without figures derived from it.
fn short_words(words: &Wording, spot: &PlanSpot) -> String {
    let parts = [spot.reach.map(|reach| short_reach(words, reach)), aim_words(words, spot)];
    words.listed(&parts.into_iter().flatten().collect::<Vec<_>>())
}

fn short_reach(words: &Wording, reach: Reach) -> String {
    match reach {
        Reach::Wraps { hundredths: 100, .. } => words.say("tackle-wrap"),
        Reach::Wraps { hundredths, .. } => {
            let wraps = words.figure(f64::from(hundredths) / 100.0, 2);
            words.say_with("tackle-wraps", &[("wraps", Arg::Text(&wraps))])
        }
        other => reach_words(words, other),
    }
}

/// Where a cast went, as far as the plan defines it. Wraps of another span are named with their span.
fn as_planned(words: &Wording, session: &Session, planned: &PlanSpot, at: &Spot) -> String {
    let reach = planned.reach.map(|reach| match (reach, at.reach) {
        (Reach::Wraps { span_tenth_mm: a, .. }, Reach::Wraps { span_tenth_mm: b, .. }) if a == b => {
            short_reach(words, at.reach)
        }
        _ => reach_words(words, at.reach),
    });
    let aims = planned.mark.is_some() || planned.bearing_cdeg.is_some();
    let mark = mark_of(session, at).map(|mark| mark.name.clone());
    let aim = aims.then(|| mark.unwrap_or_else(|| bearing_words(words, at.bearing_cdeg)));
    words.listed(&reach.into_iter().chain(aim).collect::<Vec<_>>())
}
