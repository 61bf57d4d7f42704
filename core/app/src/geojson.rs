//! Export and import of marks and outlines as GeoJSON (RFC 7946).

use super::day_on_map::day_on_map;
use super::swim::SwimState;
use super::{App, AppError};
use restwater_exchange::ExchangeError;
use restwater_log::{Moment, Payload};
use restwater_screen::{Arg, MapTally};
use restwater_session::Logged;
use restwater_session::{NotNow, Session, check_swim, peg_on_earth, swim_of};
use restwater_swim::{GeoJsonError, ImportedSwim, Point, swim_from_geojson};
use serde_json::Value;
use std::fs::File;
use std::io::Read;
use std::path::Path;

/// A larger file can't be a swim.
const LARGEST_BYTES: usize = 2_000_000;
/// A file with more things than this can't be a swim.
const MOST_THINGS: usize = 400;
/// An outline with more corners than this isn't drawn.
const MOST_CORNERS: usize = 500;

/// What a file would add, each thing with its name.
#[derive(Default)]
struct Additions {
    payloads: Vec<Payload>,
    adds: Vec<String>,
    already: Vec<String>,
    skipped: Vec<String>,
    counts: [usize; 3],
    outline: bool,
}

impl App {
    /// The swim of the session as GeoJSON, and how many things are in it. Positions are left out unless
    /// requested, and then the peg's position is needed.
    pub(super) fn export_geojson(&self, with_position: bool) -> Result<(String, u64), AppError> {
        let session = self.session().ok_or(NotNow::NoSession)?;
        let peg = with_position.then(|| peg_on_earth(session).ok_or(GeoJsonError::PegNeeded)).transpose()?;
        let swim = swim_of(session)?;
        let input = swim.input();
        let phone = self.journal.store().session(session.id)?.and_then(|row| row.began.device);
        let day = day_on_map(session, phone);
        let things = swim.columns().marks.len() + input.features.len() + input.hazards.len() + day.seen.len();
        Ok((swim.day_to_geojson(peg.as_ref(), &day)?, things as u64))
    }

    /// What importing this file would add. Changes nothing.
    pub(super) fn look_at_geojson(&self, text: &str) -> Result<MapTally, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        Ok(self.tally_of(&self.additions(session, text)?))
    }

    /// Imports the marks, features, hazards and outline of the file that are not here yet, as entries that
    /// one tap of UNDO removes together.
    pub(super) fn import_geojson(&mut self, text: &str, at: &Moment) -> Result<MapTally, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let (id, found) = (session.id, self.additions(session, text)?);
        let tally = self.tally_of(&found);
        if !found.payloads.is_empty() {
            self.write_all(id, found.payloads, at)?;
            self.swim = SwimState::default();
            self.last_tap = None;
        }
        Ok(tally)
    }

    fn tally_of(&self, found: &Additions) -> MapTally {
        MapTally {
            says: self.says_of(found),
            adds: found.adds.clone(),
            already: found.already.clone(),
            skipped: found.skipped.clone(),
            entries: found.payloads.len() as u64,
        }
    }

    fn additions(&self, session: &Session, text: &str) -> Result<Additions, AppError> {
        if text.len() > LARGEST_BYTES {
            return Err(GeoJsonError::TooMuch { most: LARGEST_BYTES, of: "bytes" }.into());
        }
        let got = swim_from_geojson(text, peg_on_earth(session).as_ref())?;
        let things = got.marks.len() + got.features.len() + got.hazards.len();
        if things > MOST_THINGS {
            return Err(GeoJsonError::TooMuch { most: MOST_THINGS, of: "marks, features and hazards" }.into());
        }
        let mut found = Additions { skipped: got.skipped.clone(), ..Additions::default() };
        self.add_marks(session, &got, &mut found)?;
        self.add_things(session, &got, &mut found)?;
        self.add_outline(session, got.boundary.as_deref(), &mut found)?;
        Ok(found)
    }

    fn add_marks(
        &self,
        session: &Session,
        got: &ImportedSwim,
        found: &mut Additions,
    ) -> Result<(), AppError> {
        let mut bearings: Vec<i32> = session.marks.iter().map(|m| m.bearing_cdeg).collect();
        for mark in &got.marks {
            let bearing_cdeg = hundredths(mark.bearing_deg) as i32;
            if bearings.contains(&bearing_cdeg) {
                found.already.push(mark.name.clone());
                continue;
            }
            bearings.push(bearing_cdeg);
            found.counts[0] += 1;
            found.adds.push(self.words.say_with("geojson-mark", &[("name", Arg::Text(&mark.name))]));
            found.payloads.push(Payload::MarkSet { name: short(&mark.name)?, bearing_cdeg });
        }
        Ok(())
    }

    fn add_things(
        &self,
        session: &Session,
        got: &ImportedSwim,
        found: &mut Additions,
    ) -> Result<(), AppError> {
        for f in &got.features {
            let (bearing_cdeg, range_cm) =
                (hundredths(f.spot.bearing_deg) as i32, hundredths(f.spot.range_m) as u32);
            let payload = Payload::FeatureSet {
                feature: f.kind.logged(),
                name: short(&f.name)?,
                bearing_cdeg,
                range_cm,
            };
            self.add_thing(session, payload, (&f.name, "geojson-feature", 1), found);
        }
        for h in &got.hazards {
            let (bearing_cdeg, range_cm) =
                (hundredths(h.spot.bearing_deg) as i32, hundredths(h.spot.range_m) as u32);
            let clear_cm = hundredths(h.clear_m.clamp(0.1, 100.0)) as u32;
            let payload = Payload::HazardSet { name: short(&h.name)?, bearing_cdeg, range_cm, clear_cm };
            self.add_thing(session, payload, (&h.name, "geojson-hazard", 2), found);
        }
        Ok(())
    }

    fn add_thing(
        &self,
        session: &Session,
        payload: Payload,
        said: (&str, &str, usize),
        found: &mut Additions,
    ) {
        let (name, id, count) = said;
        if here(session, &payload) || found.payloads.contains(&payload) {
            found.already.push(name.to_owned());
            return;
        }
        found.counts[count] += 1;
        found.adds.push(self.words.say_with(id, &[("name", Arg::Text(name))]));
        found.payloads.push(payload);
    }

    fn add_outline(
        &self,
        session: &Session,
        ring: Option<&[Point]>,
        found: &mut Additions,
    ) -> Result<(), AppError> {
        let Some(ring) = ring else { return Ok(()) };
        if ring.len() > MOST_CORNERS {
            return Err(GeoJsonError::TooMuch { most: MOST_CORNERS, of: "corners" }.into());
        }
        let corners_cm: Vec<(i32, i32)> =
            ring.iter().map(|p| (hundredths(p.x) as i32, hundredths(p.y) as i32)).collect();
        let outline = self.words.say_with("geojson-outline", &[("corners", Arg::Count(corners_cm.len()))]);
        let now: Option<Vec<(i32, i32)>> = swim_of(session)?
            .input()
            .boundary
            .as_ref()
            .map(|b| b.iter().map(|p| (hundredths(p.x) as i32, hundredths(p.y) as i32)).collect());
        if now.as_ref() == Some(&corners_cm) {
            found.already.push(outline);
            return Ok(());
        }
        let payload = Payload::OutlineSet { corners_cm };
        check_swim(session, &payload, None)?;
        found.outline = true;
        found.adds.push(outline);
        found.payloads.push(payload);
        Ok(())
    }

    fn says_of(&self, found: &Additions) -> String {
        if found.payloads.is_empty() {
            return self.words.say("geojson-nothing");
        }
        let [marks, features, hazards] = found.counts;
        let counts = [("geojson-marks", marks), ("geojson-features", features), ("geojson-hazards", hazards)];
        let mut parts: Vec<String> = counts
            .iter()
            .filter(|(_, n)| *n > 0)
            .map(|(id, n)| self.words.say_with(id, &[("n", Arg::Count(*n))]))
            .collect();
        if found.outline {
            parts.push(self.words.say("geojson-an-outline"));
        }
        self.words.say_with("geojson-adds", &[("what", Arg::Text(&self.words.listed(&parts)))])
    }
}

/// The text of a file that is GeoJSON by its contents, whatever its name; `None` for any other file.
pub(super) fn geojson_in(file: &Path) -> Result<Option<String>, ExchangeError> {
    let mut bytes = Vec::new();
    File::open(file)?.take(LARGEST_BYTES as u64 + 1).read_to_end(&mut bytes)?;
    let Ok(text) = String::from_utf8(bytes) else { return Ok(None) };
    let text = text.trim_start_matches('\u{feff}');
    if !text.trim_start().starts_with('{') {
        return Ok(None);
    }
    // A file that is too long was cut off and can't be parsed. It is still recognised by its beginning, so
    // that it is refused as too long.
    let kind = match serde_json::from_str::<Value>(text) {
        Ok(value) => value.get("type").and_then(Value::as_str).map(str::to_owned),
        Err(_) if text.len() > LARGEST_BYTES => Some("FeatureCollection".to_owned()),
        Err(_) => None,
    };
    let ours = kind.is_some_and(|kind| kind == "FeatureCollection" || kind == "Feature");
    Ok(ours.then(|| text.to_owned()))
}

/// Checks that a name is short enough for the log.
fn short(name: &str) -> Result<String, AppError> {
    let (count, most) = (name.chars().count(), super::action::LONGEST_TEXT);
    if count > most {
        return Err(AppError::TooLong { field: "name", count, most });
    }
    Ok(name.to_owned())
}

fn hundredths(x: f64) -> f64 {
    libm::round(x * 100.0)
}

/// Whether the session has this feature or hazard already.
fn here(session: &Session, payload: &Payload) -> bool {
    let place = match payload {
        Payload::FeatureSet { name, bearing_cdeg, range_cm, .. }
        | Payload::HazardSet { name, bearing_cdeg, range_cm, .. } => {
            (name.as_str(), *bearing_cdeg, *range_cm)
        }
        _ => return false,
    };
    session.landmarks.iter().any(|l| (l.name.as_str(), l.bearing_cdeg, l.range_cm) == place)
}
