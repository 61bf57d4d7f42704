//! The posterior over the shapes of the wait: its weights, the curves and the leave time that follow from it.

use super::Topic;
use super::case::{number, numbers, or_null, waits};
use restwater_waits::{CurveKind, Record, Settings, Shapes, Wait, WaitPosterior};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// See [`Topic`].
pub const TOPIC: Topic = Topic { name: "wait_shapes", compute, tolerance };

/// A field is below the likelihood with which its expected figure was computed.
fn tolerance(path: &str) -> Option<&'static str> {
    let (likelihood, field) = path.split_once('.')?;
    match field.split('.').next()? {
        _ if likelihood == "density" => Some("abs_density"),
        "rate_per_hour" | "best_rate_per_hour" => Some("abs_rate"),
        "best_min" | "hold_until_min" | "recast_by_min" => Some("abs_minutes"),
        "next_leave_min" => Some("abs_leave"),
        _ => None,
    }
}

/// What the core answers is compared with both ways to take a bite.
fn compute(case: &Value) -> Result<Value, String> {
    let waits = waits(case)?;
    let of = if case["checks"].as_str().is_some_and(|name| name.ends_with("::day_by_kind")) {
        weights(&waits)
    } else {
        answers(case, &waits)?
    };
    Ok(json!({"minutes": of, "density": of}))
}

/// The posterior weight of each form: a name of a kind begins with that of its form.
fn weights(waits: &[Wait]) -> Value {
    let shapes = Shapes::usual();
    let mut forms: BTreeMap<&str, f64> = BTreeMap::new();
    let kinds = shapes.kind_names().iter().zip(shapes.kind_weights());
    for ((name, usual), ln) in kinds.zip(shapes.day_by_kind(waits)) {
        let form = name.split(' ').next().unwrap_or_default();
        *forms.entry(form).or_default() += usual * ln.exp();
    }
    json!(forms)
}

fn answers(case: &Value, waits: &[Wait]) -> Result<Value, String> {
    let settings = Settings { changing: number(case, "changing")?, ..Settings::default() };
    let plan =
        WaitPosterior::new(&Record::of_today(waits), &settings).map_err(|e| format!("no posterior: {e}"))?;
    let (at, looks) = (numbers(&case["input"], "at")?, numbers(&case["input"], "looks")?);
    let curve = |kind, times: &[f64]| plan.curve(kind, times, 0.9).map_err(|e| e.to_string());
    let still = curve(CurveKind::Survival, &at)?;
    let rate = curve(CurveKind::Rate, &at)?;
    let band = curve(CurveKind::Survival, &looks)?;
    let in_five = looks.iter().map(|&t| plan.waiting_on(t).map(|on| on.bite_in_five));
    let in_five = in_five.collect::<Result<Vec<_>, _>>().map_err(|e| e.to_string())?;
    let advice = plan.advice();
    Ok(json!({
        "bitten_by": still.iter().map(|point| 1.0 - point.mean).collect::<Vec<_>>(),
        "rate_per_hour": rate.iter().map(|point| point.mean).collect::<Vec<_>>(),
        "still_90": band.iter().map(|point| [point.low, point.high]).collect::<Vec<_>>(),
        "bite_in_five": in_five,
        "best_rate_per_hour": advice.best_rate_per_hour,
        "best_min": or_null(advice.best_min),
        "hold_until_min": or_null(advice.hold_until_min),
        "recast_by_min": or_null(advice.recast_by_min),
        "next_leave_min": advice.next_leave_min,
    }))
}
