//! Geodesics, areas on the ellipsoid and east-north-up.

use super::Topic;
use super::case::{number, text};
use restwater_swim::{Place, course, earth_centred, east_north_up, place_from, point_at, ring_on_earth};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic {
    name: "geodesy",
    compute,
    tolerance: |path| match path.split('.').next() {
        Some("s12_m" | "enu_m" | "ecef_m" | "planar_e_n") => Some("abs_m"),
        Some("azi1" | "azi2" | "lat2" | "lon2") => Some("abs_deg"),
        _ => None,
    },
};

fn compute(case: &Value) -> Result<Value, String> {
    match text(case, "kind")? {
        "inverse+direct" => inverse_and_direct(case),
        "direct" => direct(case),
        "enu" => {
            let (of, from) = (place(case, "lat", "lon")?, place(case, "lat0", "lon0")?);
            let (h, h0) = (number(case, "h")?, number(case, "h0")?);
            Ok(json!({"enu_m": east_north_up(of, h, from, h0), "ecef_m": earth_centred(of, h)}))
        }
        "polygon" => {
            let list = case["input"]["lat_lon"].as_array().ok_or("lat_lon is not a list")?;
            let corner = |v: &Value| match (v[0].as_f64(), v[1].as_f64()) {
                (Some(lat), Some(lon)) => Place::new(lat, lon).map_err(|e| e.to_string()),
                _ => Err(format!("{v} is not a place")),
            };
            let ring = list.iter().map(corner).collect::<Result<Vec<_>, _>>()?;
            let (perimeter, area) = ring_on_earth(&ring);
            Ok(json!({"perimeter_m": perimeter, "area_m2_ccw_positive": area}))
        }
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
        "enu_m": east_north_up(to, 0.0, from, 0.0), "planar_e_n": [flat.x, flat.y],
    }))
}

fn place(case: &Value, lat: &str, lon: &str) -> Result<Place, String> {
    Place::new(number(case, lat)?, number(case, lon)?).map_err(|e| e.to_string())
}
