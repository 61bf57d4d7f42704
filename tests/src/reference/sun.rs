//! Light at the water.

use super::Topic;
use super::case::{number, text};
use restwater_sky::daylight::{Place, daylight};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic { name: "sun", compute, tolerance };

/// Sunrise and sunset are compared with the tolerance of the same class of algorithm if a case names it.
fn tolerance(path: &str) -> Option<&'static str> {
    match path {
        _ if path.starts_with("civil_") => Some("abs_s_civil"),
        "sunrise_s" | "sunset_s" => Some("abs_s_spa_class"),
        _ if path.ends_with("_utc") || path.ends_with("_local") => Some("abs_s"),
        _ => None,
    }
}

fn compute(case: &Value) -> Result<Value, String> {
    let input = &case["input"];
    if input["utc"].is_string() { of_the_report(case) } else { at_a_place(case) }
}

const DAY_S: f64 = 86_400.0;

/// UTC milliseconds of "YYYY-MM-DD" or "YYYY-MM-DDTHH:MM:SSZ" (days from civil, Hinnant 2014).
fn utc_ms(text: &str) -> Result<i64, String> {
    let bad = || format!("{text} is not a moment");
    let field = |from: usize, to: usize| -> Result<i64, String> {
        text.get(from..to).and_then(|f| f.parse().ok()).ok_or_else(bad)
    };
    let (year, month, day) = (field(0, 4)?, field(5, 7)?, field(8, 10)?);
    let from_march = (month + 9) % 12;
    let year = if month <= 2 { year - 1 } else { year };
    let days = 365 * year + year / 4 - year / 100 + year / 400 + (153 * from_march + 2) / 5 + day - 719_469;
    let clock =
        if text.len() > 10 { 3600 * field(11, 13)? + 60 * field(14, 16)? + field(17, 19)? } else { 0 };
    Ok((days * 86_400 + clock) * 1000)
}

/// "HH:MM:SS.ff" of seconds since midnight.
fn clock(seconds: f64) -> String {
    let hundredths = (seconds.rem_euclid(DAY_S) * 100.0).round() as i64;
    let (h, rest) = (hundredths / 360_000, hundredths % 360_000);
    format!("{:02}:{:02}:{:02}.{:02}", h, rest / 6_000, rest / 100 % 60, rest % 100)
}

/// How many seconds after `start` an event is; an error if it doesn't happen that day.
fn after(start: i64, event: Option<i64>) -> Result<f64, String> {
    event.map(|ms| (ms - start) as f64 / 1000.0).ok_or_else(|| "no such event on that day".to_owned())
}

/// The report's rise, transit and set are those of the UTC day, converted to the local time of the place. So
/// its sunset is the one before the sunrise.
fn of_the_report(case: &Value) -> Result<Value, String> {
    let place = Place { lat: number(case, "lat")?, lon: number(case, "lon")? };
    let utc = text(case, "utc")?;
    let offset_h = case["expected"]["utc_offset_h"].as_f64().ok_or("no offset")?;
    let start = utc_ms(&utc[..10])?;
    let local = |event| after(start, event).map(|s| clock(s + 3600.0 * offset_h));
    let day = daylight(start, place).map_err(|e| e.to_string())?;
    Ok(json!({
        "sunrise_local": local(day.sunrise)?,
        "sunset_local": local(day.sunset)?,
        "transit_local": local(day.noon)?,
        "utc_offset_h": offset_h,
    }))
}

fn at_a_place(case: &Value) -> Result<Value, String> {
    let place = Place { lat: number(case, "lat")?, lon: number(case, "lon")? };
    let start = utc_ms(text(case, "date")?)?;
    let day = daylight(start, place).map_err(|e| e.to_string())?;
    let (sunrise, sunset) = (after(start, day.sunrise)?, after(start, day.sunset)?);
    let (dawn, dusk) = (after(start, day.civil_dawn)?, after(start, day.civil_dusk)?);
    Ok(json!({
        "sunrise_utc": clock(sunrise),
        "sunset_utc": clock(sunset),
        "solar_noon_utc": clock(after(start, day.noon)?),
        "civil_dawn_utc": clock(dawn),
        "civil_dusk_utc": clock(dusk),
        "sunrise_s": sunrise,
        "sunset_s": sunset,
        "civil_dawn_s": dawn,
        "civil_dusk_s": dusk,
    }))
}
