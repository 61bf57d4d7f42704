//! Common practice: marked as such, no source.

use super::case::{number, numbers, text};
use super::{Topic, tackle};
use restwater_log::Reach;
use restwater_session::{reach_m, reach_near};
use restwater_swim::range::{METRES_PER_YARD, metres};
use restwater_waits::{AdviceState, Record, Settings, Wait, WaitPosterior};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic { name: "common_practice", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    match text(case, "kind")? {
        "wraps" => wraps(case),
        "wraps_for" => wraps_for(case),
        "leave_time" => leave_time(case),
        "cut_down" => tackle::cut_down(case),
        "lead_rule" => tackle::lead(case),
        other => Err(format!("kind {other} not answered yet")),
    }
}

/// The metres of line in a number of wraps, as the session computes them. Wraps are given in hundredths, the distance between the
/// sticks in tenths of a millimetre.
fn reach(case: &Value, wraps: f64) -> Result<Reach, String> {
    let span_tenth_mm = (number(case, "span_ft")? * 3048.0).round() as u32;
    Ok(Reach::Wraps { hundredths: (wraps * 100.0).round() as u32, span_tenth_mm })
}

fn wraps(case: &Value) -> Result<Value, String> {
    let range = reach_m(reach(case, number(case, "wraps")?)?);
    Ok(json!({"m": range, "yd": range / METRES_PER_YARD}))
}

fn wraps_for(case: &Value) -> Result<Value, String> {
    let like = reach(case, 1.0)?;
    let wraps = |yd: f64| match reach_near(metres(yd), like) {
        Reach::Wraps { hundredths, .. } => Ok(f64::from(hundredths) / 100.0),
        other => Err(format!("{yd} yd came back as {other:?}")),
    };
    let wanted = numbers(&case["input"], "yd")?;
    Ok(json!({"wraps": wanted.into_iter().map(wraps).collect::<Result<Vec<f64>, _>>()?}))
}

/// The limits of the case are bounds, not values: a bound that holds is repeated; for one that doesn't, the
/// value that breaks it is returned, so that the comparison fails and shows it.
fn leave_time(case: &Value) -> Result<Value, String> {
    let mut waits = Vec::new();
    for (key, bite) in [("bites_min", true), ("no_bite_min", false)] {
        for minutes in numbers(&case["input"], key)? {
            waits.push(Wait::new(minutes, bite).map_err(|e| e.to_string())?);
        }
    }
    let record = Record {
        turn_round_min: number(case, "turn_round_min")?,
        bite_extra_min: number(case, "bite_extra_min")?,
        ..Record::of_today(&waits)
    };
    let posterior = WaitPosterior::new(&record, &Settings::default()).map_err(|e| e.to_string())?;
    let advice = posterior.advice();
    if advice.state == AdviceState::CantTellYet {
        return Ok(json!({"says": "can't tell yet"}));
    }
    let bound = |key: &str, figure: Option<f64>, holds: fn(f64, f64) -> bool| {
        let limit = case["expected"][key].as_f64()?;
        Some(figure.map_or(Value::Null, |f| json!(if holds(f, limit) { limit } else { f })))
    };
    Ok(json!({
        "hold_until_at_least": bound("hold_until_at_least", advice.hold_until_min, |f, l| f >= l),
        "recast_by_at_most": bound("recast_by_at_most", advice.recast_by_min, |f, l| f <= l),
    }))
}
