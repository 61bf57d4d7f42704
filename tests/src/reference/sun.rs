//! The sun: light at the water by the core's crate, and the second opinion after Meeus.

use super::Topic;
use super::case::{number, text};
use crate::second_methods::meeus::{ThreeDays, low_accuracy_sun, rise_transit_set};
use restwater_sky::daylight::{Air, Place, daylight, sun_at};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic { name: "sun", compute, tolerance };

/// Sunrise and sunset are compared with the tolerance of the same class of algorithm if a case names it.
fn tolerance(path: &str) -> Option<&'static str> {
    match path {
        "zenith_refracted_deg" | "azimuth_deg" => Some("abs_deg"),
        _ if path.starts_with("civil_") => Some("abs_s_civil"),
        "sunrise_s" | "sunset_s" => Some("abs_s_spa_class"),
        _ if path.ends_with("_utc") || path.ends_with("_local") => Some("abs_s"),
        _ => None,
    }
}

fn compute(case: &Value) -> Result<Value, String> {
    let input = &case["input"];
    if input["jde"].is_number() {
        return Ok(low_accuracy(number(case, "jde")?));
    }
    if input["ra_hms"].is_array() {
        return rise_and_set(case);
    }
    if input["utc"].is_string() { position_and_events(case) } else { at_a_place(case) }
}

fn low_accuracy(jde: f64) -> Value {
    let sun = low_accuracy_sun(jde);
    json!({
        "T": sun.t,
        "L0": sun.mean_longitude,
        "M": sun.mean_anomaly,
        "C": sun.centre,
        "true_longitude": sun.true_longitude,
        "R": sun.distance_au,
        "apparent_longitude": sun.apparent_longitude,
        "epsilon_corrected": sun.obliquity,
        "ra_deg": sun.right_ascension,
        "dec_deg": sun.declination,
    })
}

/// [a, b, c] as a + b / 60 + c / 3600.
fn sexagesimal(value: &Value) -> Result<f64, String> {
    let part = |i: usize| value[i].as_f64().ok_or_else(|| format!("{value} is not three numbers"));
    Ok(part(0)? + part(1)? / 60.0 + part(2)? / 3600.0)
}

fn rise_and_set(case: &Value) -> Result<Value, String> {
    let input = &case["input"];
    let three = |key: &str, factor: f64| -> Result<[f64; 3], String> {
        let at = |i: usize| sexagesimal(&input[key][i]).map(|v| v * factor);
        Ok([at(0)?, at(1)?, at(2)?])
    };
    let body = ThreeDays { right_ascension: three("ra_hms", 15.0)?, declination: three("dec_dms", 1.0)? };
    let theta0 = 15.0 * sexagesimal(&input["theta0_hms"])?;
    let (lat, lon) = (number(case, "lat_deg")?, number(case, "lon_west_deg")?);
    let found =
        rise_transit_set(&body, theta0, lat, lon, number(case, "h0_deg")?, number(case, "delta_t_s")?);
    let found = found.map_err(|e| e.to_string())?;
    Ok(json!({
        "rise_day_fraction": found.rise,
        "transit_day_fraction": found.transit,
        "set_day_fraction": found.set,
    }))
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

/// Seconds after `start`, or why there is none.
fn after(start: i64, event: Option<i64>) -> Result<f64, String> {
    event.map(|ms| (ms - start) as f64 / 1000.0).ok_or_else(|| "no such event on that day".to_owned())
}

/// The report's rise, transit and set are those of the UTC day, shown by the clock at the place: its
/// sunset is the one before the sunrise.
fn position_and_events(case: &Value) -> Result<Value, String> {
    let place = Place { lat: number(case, "lat")?, lon: number(case, "lon")? };
    let air = Air {
        height_m: number(case, "elevation_m")?,
        pressure_hpa: number(case, "pressure_hpa")?,
        temperature_c: number(case, "temperature_c")?,
    };
    let utc = text(case, "utc")?;
    let delta_t = number(case, "delta_t_s")?;
    let sun = sun_at(utc_ms(utc)?, place, air, Some(delta_t)).map_err(|e| e.to_string())?;
    let offset_h = case["expected"]["utc_offset_h"].as_f64().ok_or("no offset")?;
    let start = utc_ms(&utc[..10])?;
    let local = |event| after(start, event).map(|s| clock(s + 3600.0 * offset_h));
    let day = daylight(start, place).map_err(|e| e.to_string())?;
    Ok(json!({
        "zenith_refracted_deg": sun.zenith_deg,
        "azimuth_deg": sun.azimuth_deg,
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
