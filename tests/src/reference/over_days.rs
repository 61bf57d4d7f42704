//! One question asked over days.

use super::Topic;
use super::case::{number, numbers};
use restwater_compare::over_days::{DayOfQuestion, compared, question};
use restwater_compare::{CastRow, Factor};
use restwater_waits::Wait;
use serde_json::{Value, json};

/// See [`Topic`].
pub const TOPIC: Topic = Topic { name: "over_days", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    let between = number(case, "between")?;
    let days = case["input"]["days"].as_array().ok_or("no days")?;
    let days = days.iter().map(|day| of_day(day, between)).collect::<Result<Vec<_>, _>>()?;
    let found = question(&days, 1, 1);
    if found.days != days.len() {
        return Err("a day does not count".into());
    }
    Ok(json!({
        "e_minutes": found.stakes.minutes,
        "e_waits": found.stakes.waits,
        "e_casts": found.stakes.casts,
        "belief": [found.belief.a, found.belief.b],
    }))
}

fn of_day(day: &Value, between: f64) -> Result<DayOfQuestion, String> {
    let (times, events) = (numbers(day, "time")?, numbers(day, "event")?);
    let sides = day["side"].as_str().ok_or("no sides")?;
    let mut at_min = 0.0;
    let mut rows = Vec::new();
    for ((side, minutes), bite) in sides.chars().zip(times).zip(events) {
        let wait = Wait::new(minutes, bite != 0.0).map_err(|e| e.to_string())?;
        let setup = [(Factor::Colour, side.to_string())].into();
        rows.push(CastRow { rod: 1, at_min, wait, twitched: false, setup });
        at_min += minutes + between;
    }
    compared(&rows).first().map(|asked| asked.day(&rows)).ok_or_else(|| "nothing was compared".into())
}
