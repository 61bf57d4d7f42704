//! Export and import of marks and outlines as GeoJSON (RFC 7946).
//!
//! Unless the position of the peg is given, positions are left out: every geometry is then `null` (an
//! unlocated feature, RFC 7946 section 3.2), and bearings, ranges and outlines are properties in the peg
//! frame, which is enough to read the file back. Outer rings run anticlockwise (section 3.1.6), numbers have
//! at most seven decimals (about a centimetre), and what crosses the 180th meridian is cut there (section
//! 3.1.9).

use super::cells::Swim;
use super::earth::{EarthError, PegOnEarth, Place, wrapped};
use super::error::SwimError;
use super::frame::{Point, Spot, bearing_range, point_at};
use super::input::{AimingMark, Feature, FeatureKind, Hazard, KeptBack};
use super::planar::{check_outline, ring_area_m2};
use super::sector::{AnnularSector, CHORD_ERROR_M};
use super::water::Water;
use ::geojson::{FeatureCollection, GeoJson, Geometry, GeometryValue, JsonObject, Position};
use serde_json::{Value, json};

/// Why a GeoJSON file can't be read or written, and what to do.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum GeoJsonError {
    /// Not GeoJSON.
    #[error("this is not a GeoJSON feature collection ({0})")]
    NotGeoJson(String),
    /// Positions without a peg to tie them to.
    #[error("this file holds positions")]
    PegNeeded,
    /// More than a swim has.
    #[error("this file holds more than {most} {of}")]
    TooMuch {
        /// The limit.
        most: usize,
        /// Of what.
        of: &'static str,
    },
    /// A place that can't be used.
    #[error(transparent)]
    Earth(#[from] EarthError),
    /// An outline that can't be used.
    #[error(transparent)]
    Swim(#[from] SwimError),
}

/// The contents of a file.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ImportedSwim {
    /// Aiming marks.
    pub marks: Vec<AimingMark>,
    /// The boundary, if the file had one.
    pub boundary: Option<Vec<Point>>,
    /// Features.
    pub features: Vec<Feature>,
    /// Hazards.
    pub hazards: Vec<Hazard>,
    /// Names or kinds of what could not be used.
    pub skipped: Vec<String>,
}

/// The parts of a day that are added to the map of its swim.
#[derive(Debug, Clone, Default)]
pub struct DayOnMap {
    /// Data of the session, as properties of its peg.
    pub session: JsonObject,
    /// Feed and sightings at a place, each with its properties, including its `kind`.
    pub seen: Vec<(Spot, JsonObject)>,
}

/// The kinds of [`DayOnMap::seen`]. They belong to a day and are not read back into another.
pub const FED: &str = "fed";
/// Fish that showed themselves.
pub const FISH_SHOWING: &str = "fish showing";
/// A fish that was landed, where its cast went.
pub const FISH_LANDED: &str = "fish landed";

impl Swim {
    /// The swim as GeoJSON with what happened on a day; with positions only if a peg is given.
    pub fn day_to_geojson(&self, peg: Option<&PegOnEarth>, day: &DayOnMap) -> Result<String, GeoJsonError> {
        let out = Writer { swim: self, peg, day };
        let collection = FeatureCollection { bbox: None, features: out.features()?, foreign_members: None };
        Ok(GeoJson::from(collection).to_string())
    }
}

struct Writer<'a> {
    swim: &'a Swim,
    peg: Option<&'a PegOnEarth>,
    day: &'a DayOnMap,
}

impl Writer<'_> {
    fn features(&self) -> Result<Vec<::geojson::Feature>, GeoJsonError> {
        let input = self.swim.input();
        let mut peg = feature(self.point(Point { x: 0.0, y: 0.0 }), json!({"kind": "peg"}));
        for (name, value) in &self.day.session {
            peg.set_property(name, value.clone());
        }
        let mut all = vec![peg];
        all.push(self.outline("swim", self.swim.water()));
        if let Some(ring) = &input.boundary {
            let ring = check_outline(ring)?;
            let mut boundary = self.outline("boundary", &Water::of_ring(&ring));
            let frame: Vec<[f64; 2]> = ring.iter().map(|p| [round(p.x, 3), round(p.y, 3)]).collect();
            boundary.set_property("peg_frame_m", json!(frame));
            all.push(boundary);
        }
        let far = self.swim.bands().last().map_or(0.0, |b| b.to_m);
        for mark in &self.swim.columns().marks {
            let line = [Point { x: 0.0, y: 0.0 }, point_at(mark.bearing_deg, far)];
            let said = json!({"kind": "aiming mark", "id": mark.id, "name": mark.name, "bearing_deg": mark.bearing_deg});
            all.push(feature(self.line(line), said));
        }
        for f in &input.features {
            let said = json!({"kind": "feature", "name": f.name, "what": f.kind, "bearing_deg": f.spot.bearing_deg, "range_m": f.spot.range_m});
            all.push(feature(self.point(f.spot.point()), said));
        }
        for h in &input.hazards {
            let said = json!({"kind": "hazard", "name": h.name, "clear_m": h.clear_m, "bearing_deg": h.spot.bearing_deg, "range_m": h.spot.range_m});
            all.push(feature(self.point(h.spot.point()), said));
        }
        for (spot, said) in &self.day.seen {
            let mut seen = feature(self.point(spot.point()), Value::Object(said.clone()));
            seen.set_property("bearing_deg", round(spot.bearing_deg, 2));
            seen.set_property("range_m", round(spot.range_m, 2));
            all.push(seen);
        }
        all.extend(input.kept_back.iter().filter(|k| k.released_ms.is_none()).map(|k| self.kept_back(k)));
        Ok(all)
    }

    fn kept_back(&self, kept: &KeptBack) -> ::geojson::Feature {
        let sector = AnnularSector {
            from_deg: kept.fan.from_deg,
            to_deg: kept.fan.to_deg,
            inner_m: kept.band.from_m,
            outer_m: kept.band.to_m,
        };
        self.outline("kept back", &self.swim.water().and(&Water::of_ring(&sector.ring(CHORD_ERROR_M))))
    }

    fn outline(&self, kind: &str, water: &Water) -> ::geojson::Feature {
        let said = json!({"kind": kind, "area_m2": round(water.area_m2(), 2)});
        feature(self.peg.map(|peg| polygons(peg, water)), said)
    }

    fn point(&self, p: Point) -> Option<GeometryValue> {
        self.peg.map(|peg| GeometryValue::Point { coordinates: position(peg.place_of(p)) })
    }

    fn line(&self, line: [Point; 2]) -> Option<GeometryValue> {
        let peg = self.peg?;
        let [a, b] = line.map(|p| unwrapped(peg, p));
        let edge = if a.x.max(b.x) > 180.0 { 180.0 } else { -180.0 };
        if (a.x > edge) == (b.x > edge) || a.x == b.x {
            return Some(GeometryValue::LineString { coordinates: vec![degrees(a), degrees(b)] });
        }
        let lat = a.y + (edge - a.x) / (b.x - a.x) * (b.y - a.y);
        let (near, far) = if a.x.abs() <= 180.0 { (edge, -edge) } else { (-edge, edge) };
        let at = |lon: f64| Position::from(vec![lon, round(lat, 7)]);
        let (first, second) = (vec![degrees(a), at(near)], vec![at(far), degrees(b)]);
        Some(GeometryValue::MultiLineString { coordinates: vec![first, second] })
    }
}

fn feature(value: Option<GeometryValue>, said: Value) -> ::geojson::Feature {
    let properties = match said {
        Value::Object(map) => Some(map),
        _ => None,
    };
    ::geojson::Feature {
        bbox: None,
        geometry: value.map(Geometry::new),
        id: None,
        properties,
        foreign_members: None,
    }
}

/// One polygon or several: water may have several pieces, and the 180th meridian may cut it.
fn polygons(peg: &PegOnEarth, water: &Water) -> GeometryValue {
    let mut all = Vec::new();
    for (outer, holes) in water.polygons() {
        let turned = |ring: &[Point]| -> Vec<Point> { ring.iter().map(|p| unwrapped(peg, *p)).collect() };
        let outer = turned(&outer);
        let lons = || outer.iter().map(|p| p.x);
        let (west, east) = (lons().fold(f64::INFINITY, f64::min), lons().fold(f64::NEG_INFINITY, f64::max));
        if west >= -180.0 && east <= 180.0 {
            let holes = holes.iter().map(|h| closed(&turned(h), false));
            all.push(std::iter::once(closed(&outer, true)).chain(holes).collect());
            continue;
        }
        let holes: Vec<Vec<Point>> = holes.iter().map(|h| turned(h)).collect();
        let whole = Water::of_ring(&outer).without(&Water::of_any(holes.iter().map(Vec::as_slice)));
        all.extend(cut_at_date_line(&whole, west, east));
    }
    match all.len() {
        1 => GeometryValue::Polygon { coordinates: all.remove(0) },
        _ => GeometryValue::MultiPolygon { coordinates: all },
    }
}

/// Cuts water in degrees (x east, y north, unwrapped) at the meridian it crosses.
fn cut_at_date_line(whole: &Water, west: f64, east: f64) -> Vec<Vec<Vec<Position>>> {
    let edge = if east > 180.0 { 180.0 } else { -180.0 };
    // Not larger than needed, since the precision of the boolean operations depends on the whole extent.
    let lats: Vec<f64> = whole.rings().iter().flatten().map(|p| p.y).collect();
    let margin = east - west;
    let low = lats.iter().copied().fold(f64::INFINITY, f64::min) - margin;
    let high = lats.iter().copied().fold(f64::NEG_INFINITY, f64::max) + margin;
    let side = |from: f64, to: f64| {
        let corner = |x: f64, y: f64| Point { x, y };
        let half = [corner(from, low), corner(to, low), corner(to, high), corner(from, high)];
        whole.and(&Water::of_ring(&half))
    };
    let mut pieces = Vec::new();
    for (half, west_of_edge) in [(side(west - margin, edge), true), (side(edge, east + margin), false)] {
        // One half is beyond the edge of the map and is moved to its other side.
        let shift = match (edge > 0.0, west_of_edge) {
            (true, false) => -360.0,
            (false, true) => 360.0,
            _ => 0.0,
        };
        let moved = |ring: &[Point]| -> Vec<Point> {
            ring.iter().map(|p| Point { x: (p.x + shift).clamp(-180.0, 180.0), y: p.y }).collect()
        };
        for (outer, holes) in half.polygons() {
            let holes = holes.iter().map(|h| closed(&moved(h), false));
            pieces.push(std::iter::once(closed(&moved(&outer), true)).chain(holes).collect());
        }
    }
    pieces
}

/// Longitude (x) and latitude (y) of a point, the longitude within half a turn of the peg's.
fn unwrapped(peg: &PegOnEarth, p: Point) -> Point {
    let place = peg.place_of(p);
    Point { x: peg.place.lon_deg + wrapped(place.lon_deg - peg.place.lon_deg), y: place.lat_deg }
}

fn degrees(p: Point) -> Position {
    Position::from(vec![round(wrapped(p.x), 7), round(p.y, 7)])
}

fn position(place: Place) -> Position {
    Position::from(vec![round(place.lon_deg, 7), round(place.lat_deg, 7)])
}

/// A ring as positions: first repeated at the end, anticlockwise for outer rings and clockwise for holes.
fn closed(ring: &[Point], outer: bool) -> Vec<Position> {
    let mut ring: Vec<Point> = ring.iter().map(|p| Point { x: round(p.x, 7), y: round(p.y, 7) }).collect();
    ring.dedup();
    if (ring_area_m2(&ring) > 0.0) != outer {
        ring.reverse();
    }
    ring.iter().chain(ring.first()).map(|p| Position::from(vec![p.x, p.y])).collect()
}

fn round(x: f64, decimals: i32) -> f64 {
    let unit = libm::pow(10.0, f64::from(decimals));
    (x * unit).round() / unit
}

/// Reads marks and outlines. Features without one of our kinds are classified by their geometry: a polygon is
/// the boundary, a point or the end of a line an aiming mark.
pub fn swim_from_geojson(text: &str, peg: Option<&PegOnEarth>) -> Result<ImportedSwim, GeoJsonError> {
    let parsed: GeoJson =
        text.parse().map_err(|e: ::geojson::Error| GeoJsonError::NotGeoJson(e.to_string()))?;
    let collection = match parsed {
        GeoJson::FeatureCollection(collection) => collection,
        GeoJson::Feature(f) => FeatureCollection { bbox: None, features: vec![f], foreign_members: None },
        GeoJson::Geometry(_) => return Err(GeoJsonError::NotGeoJson("a bare geometry".to_owned())),
    };
    let mut got = ImportedSwim::default();
    for (i, f) in collection.features.iter().enumerate() {
        Reader { peg, f, name: name_of(f, i) }.read(&mut got)?;
    }
    Ok(got)
}

fn name_of(f: &::geojson::Feature, i: usize) -> String {
    let said = |key: &str| f.property(key).and_then(Value::as_str).map(str::to_owned);
    said("name").or_else(|| said("kind")).unwrap_or_else(|| format!("{}", i + 1))
}

struct Reader<'a> {
    peg: Option<&'a PegOnEarth>,
    f: &'a ::geojson::Feature,
    name: String,
}

impl Reader<'_> {
    fn read(&self, got: &mut ImportedSwim) -> Result<(), GeoJsonError> {
        let said = self.f.properties.clone().unwrap_or_default();
        match said.get("kind").and_then(Value::as_str) {
            // These are derived from marks and boundary, or decided by the angler, so they are not read back.
            Some("peg" | "swim" | "kept back" | FED | FISH_SHOWING | FISH_LANDED) => Ok(()),
            Some("boundary") => self.boundary(&said, got),
            Some("aiming mark") => self.mark(&said, got),
            Some("feature") => self.thing(&said, got, false),
            Some("hazard") => self.thing(&said, got, true),
            _ => self.by_geometry(&said, got),
        }
    }

    fn by_geometry(&self, said: &JsonObject, got: &mut ImportedSwim) -> Result<(), GeoJsonError> {
        match self.f.geometry.as_ref().map(|g| &g.value) {
            Some(GeometryValue::Polygon { .. }) if got.boundary.is_none() => self.boundary(said, got),
            Some(GeometryValue::Point { .. } | GeometryValue::LineString { .. }) => self.mark(said, got),
            _ => {
                got.skipped.push(self.name.clone());
                Ok(())
            }
        }
    }

    fn boundary(&self, said: &JsonObject, got: &mut ImportedSwim) -> Result<(), GeoJsonError> {
        let frame =
            said.get("peg_frame_m").and_then(|v| serde_json::from_value::<Vec<[f64; 2]>>(v.clone()).ok());
        let ring = match (frame, self.f.geometry.as_ref().map(|g| &g.value)) {
            (Some(frame), _) => frame.iter().map(|&[x, y]| Point { x, y }).collect(),
            (None, Some(GeometryValue::Polygon { coordinates })) => {
                let outer = coordinates.first().map_or(&[][..], Vec::as_slice);
                outer.iter().map(|p| self.point(p)).collect::<Result<Vec<_>, _>>()?
            }
            _ => {
                got.skipped.push(self.name.clone());
                return Ok(());
            }
        };
        got.boundary = Some(check_outline(&ring)?);
        Ok(())
    }

    fn mark(&self, said: &JsonObject, got: &mut ImportedSwim) -> Result<(), GeoJsonError> {
        let Some((bearing_deg, _)) = self.place(said)? else {
            got.skipped.push(self.name.clone());
            return Ok(());
        };
        super::frame::check_bearing(bearing_deg)?;
        let id = said.get("id").and_then(Value::as_str).unwrap_or(&self.name).to_owned();
        got.marks.push(AimingMark { id, name: self.name.clone(), bearing_deg });
        Ok(())
    }

    fn thing(&self, said: &JsonObject, got: &mut ImportedSwim, hazard: bool) -> Result<(), GeoJsonError> {
        let Some((bearing_deg, range_m)) = self.place(said)? else {
            got.skipped.push(self.name.clone());
            return Ok(());
        };
        let (name, spot) = (self.name.clone(), super::frame::Spot::new(bearing_deg, range_m)?);
        if hazard {
            let clear_m = said.get("clear_m").and_then(Value::as_f64).unwrap_or(3.0);
            got.hazards.push(Hazard { name, spot, clear_m });
        } else {
            let kind = said.get("what").and_then(|v| serde_json::from_value(v.clone()).ok());
            got.features.push(Feature { name, kind: kind.unwrap_or(FeatureKind::Other), spot });
        }
        Ok(())
    }

    /// Bearing and range: from the properties, or from the geometry's point or the end of its line.
    fn place(&self, said: &JsonObject) -> Result<Option<(f64, f64)>, GeoJsonError> {
        let number = |key: &str| said.get(key).and_then(Value::as_f64);
        if let Some(bearing) = number("bearing_deg") {
            return Ok(Some((bearing, number("range_m").unwrap_or(0.0))));
        }
        let end = match self.f.geometry.as_ref().map(|g| &g.value) {
            Some(GeometryValue::Point { coordinates }) => Some(coordinates),
            Some(GeometryValue::LineString { coordinates }) => coordinates.last(),
            _ => None,
        };
        end.map(|p| self.point(p).map(bearing_range)).transpose()
    }

    fn point(&self, p: &Position) -> Result<Point, GeoJsonError> {
        let peg = self.peg.ok_or(GeoJsonError::PegNeeded)?;
        let &[lon, lat, ..] = p.as_slice() else {
            return Err(GeoJsonError::NotGeoJson(format!("{} has a position of one number", self.name)));
        };
        if lon.abs() > 180.0 {
            return Err(EarthError::Longitude(lon).into());
        }
        Ok(peg.point_of(Place::new(lat, lon)?, &self.name)?)
    }
}

#[cfg(test)]
mod tests;
