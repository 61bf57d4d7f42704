//! The second method for the sun, after Meeus, computes the examples of his book.

use super::Topic;
use super::case::number;
use crate::second_methods::meeus::{ThreeDays, low_accuracy_sun, rise_transit_set};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic { name: "meeus", compute, tolerance: |_| None };

fn compute(case: &Value) -> Result<Value, String> {
    if case["input"]["jde"].is_number() { Ok(low_accuracy(number(case, "jde")?)) } else { rise_and_set(case) }
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
