//! Plane geometry of the swim: sectors, bearings, rings and their intersections.

use super::Topic;
use super::case::{number, text};
use restwater_swim::planar::{ring_area_m2, ring_centroid};
use restwater_swim::{AnnularSector, Point, Water, point_at};
use serde_json::{Value, json};

pub const TOPIC: Topic = Topic { name: "planar", compute, tolerance: |_| None };

/// Chord error for areas accurate to one part in a hundred thousand, metres.
const FINE_M: f64 = 1e-6;

fn compute(case: &Value) -> Result<Value, String> {
    let n = |key| number(case, key);
    match text(case, "kind")? {
        "annular_sector" => {
            let s = sector(&case["input"])?;
            let c = s.centroid();
            Ok(json!({
                "area_m2": s.area_m2(), "centroid_e_n": [c.x, c.y],
                "width_deg": s.width_deg(),
            }))
        }
        "bearing_range" => {
            let p = point_at(n("bearing")?, n("range_m")?);
            Ok(json!({"east_m": p.x, "north_m": p.y}))
        }
        "polygon" => {
            let ring = points(&case["input"]["e_n"])?;
            let c = ring_centroid(&ring);
            Ok(json!({
                "signed_area_ccw": ring_area_m2(&ring), "centroid": [c.x, c.y],
            }))
        }
        "annular_sector_overlap" => {
            let (a, b) = (water(&case["input"]["a"])?, water(&case["input"]["b"])?);
            Ok(json!({"overlap_m2": a.and(&b).area_m2()}))
        }
        other => Err(format!("no such kind: {other}")),
    }
}

fn sector(value: &Value) -> Result<AnnularSector, String> {
    let n = |key: &str| value[key].as_f64().ok_or_else(|| format!("{key} is not a number"));
    Ok(AnnularSector {
        from_deg: n("bearing_from")?,
        to_deg: n("bearing_to_clockwise")?,
        inner_m: n("r_inner")?,
        outer_m: n("r_outer")?,
    })
}

/// A sector as water, moved to its origin.
fn water(value: &Value) -> Result<Water, String> {
    let at = point(&value["origin_e_n"])?;
    let ring = sector(value)?.ring(FINE_M);
    let moved: Vec<Point> = ring.iter().map(|p| Point { x: p.x + at.x, y: p.y + at.y }).collect();
    Ok(Water::of_ring(&moved))
}

fn points(value: &Value) -> Result<Vec<Point>, String> {
    value.as_array().ok_or("the ring is not a list")?.iter().map(point).collect()
}

fn point(value: &Value) -> Result<Point, String> {
    match (value[0].as_f64(), value[1].as_f64()) {
        (Some(x), Some(y)) => Ok(Point { x, y }),
        _ => Err(format!("{value} is not a point")),
    }
}
