//! Geodesics.

use super::Topic;
use super::case::{number, text};
use restwater_swim::{Place, course, place_from, point_at};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic {
    name: "geodesy",
    compute,
    tolerance: |path| match path.split('.').next() {
        Some("s12_m" | "planar_e_n") => Some("abs_m"),
        Some("azi1" | "azi2" | "lat2" | "lon2") => Some("abs_deg"),
        _ => None,
    },
};

fn compute(case: &Value) -> Result<Value, String> {
    match text(case, "kind")? {
        "inverse+direct" => inverse_and_direct(case),
        "direct" => direct(case),
        other => Err(format!("no such kind: {other}")),
    }
}

/// The course between two places; following it from the first must lead to the second.
fn inverse_and_direct(case: &Value) -> Result<Value, String> {
    let (a, b) = (place(case, "lat1", "lon1")?, place(case, "lat2", "lon2")?);
    let c = course(a, b);
    let (there, azimuth) = place_from(a, c.azimuth_deg, c.metres);
    let off = (there.lat_deg - b.lat_deg).abs().max((there.lon_deg - b.lon_deg).abs());
    if off > 1e-10 || (azimuth - c.end_azimuth_deg).abs() > 1e-9 {
        return Err(format!("the direct problem leads {off:e} degrees beside the second place"));
    }
    Ok(json!({"azi1": c.azimuth_deg, "azi2": c.end_azimuth_deg, "s12_m": c.metres}))
}

fn direct(case: &Value) -> Result<Value, String> {
    let from = place(case, "lat1", "lon1")?;
    let (azimuth, metres) = (number(case, "azi1")?, number(case, "s12_m")?);
    let (to, azi2) = place_from(from, azimuth, metres);
    let flat = point_at(azimuth, metres);
    Ok(json!({
        "lat2": to.lat_deg, "lon2": to.lon_deg, "azi2": azi2,
        "planar_e_n": [flat.x, flat.y],
    }))
}

fn place(case: &Value, lat: &str, lon: &str) -> Result<Place, String> {
    Place::new(number(case, lat)?, number(case, lon)?).map_err(|e| e.to_string())
}
