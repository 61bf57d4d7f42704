//! Common practice: marked as such, no source.

use super::case::{number, numbers, text};
use super::{Topic, tackle};
use restwater_swim::range::{Span, metres, yards};
use restwater_waits::{AdviceState, Record, Settings, Wait, advise};
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

fn wraps(case: &Value) -> Result<Value, String> {
    let span = Span::from_feet(number(case, "span_ft")?).map_err(|e| e.to_string())?;
    let range = span.range_of(number(case, "wraps")?).map_err(|e| e.to_string())?;
    Ok(json!({"m": range, "yd": yards(range)}))
}

fn wraps_for(case: &Value) -> Result<Value, String> {
    let span = Span::from_feet(number(case, "span_ft")?).map_err(|e| e.to_string())?;
    let wanted = numbers(&case["input"], "yd")?;
    let wraps: Result<Vec<f64>, _> = wanted.iter().map(|&yd| span.wraps_for(metres(yd))).collect();
    Ok(json!({"wraps": wraps.map_err(|e| e.to_string())?}))
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
    let advice = advise(&record, &Settings::default()).map_err(|e| e.to_string())?;
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
