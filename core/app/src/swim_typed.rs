//! What is typed on the Swim screen: a name for the next mark or for an old one, and where the peg lies.

use super::{App, AppError};
use restwater_log::{Moment, Payload};
use restwater_session::Logged;
use restwater_session::{LandmarkKind, NotNow, Session};
use restwater_swim::{EarthError, PegOnEarth, Place};
use uuid::Uuid;

/// As typed so far; not part of the log, and nothing has to be typed.
#[derive(Debug, Clone, Default)]
pub(super) struct Typed {
    pub(super) name: String,
    pub(super) lat: Option<String>,
    pub(super) lon: Option<String>,
    pub(super) out: Option<String>,
}

/// Fields of the Swim screen that are typed and not yet logged.
pub(super) const TYPED: [&str; 4] = ["name", "lat", "lon", "out"];

impl Typed {
    /// Keeps what was typed.
    pub(super) fn take(&mut self, field: &str, value: &str) {
        match field {
            "name" => value.clone_into(&mut self.name),
            "lat" => self.lat = Some(value.to_owned()),
            "lon" => self.lon = Some(value.to_owned()),
            _ => self.out = Some(value.to_owned()),
        }
    }

    /// The three of the peg's place as the screen shows them: typed, or as they were set before.
    pub(super) fn place(&self, session: &Session) -> [String; 3] {
        let e7 = |n: i64| restwater_screen::trimmed(n as f64 / 1e7, 7);
        let set = session.peg_place.map(|peg| {
            let out = restwater_screen::trimmed(f64::from(peg.straight_out_cdeg) / 100.0, 2);
            [e7(peg.lat_e7), e7(peg.lon_e7), out]
        });
        let [lat, lon, out] = set.unwrap_or_default();
        [self.lat.clone().unwrap_or(lat), self.lon.clone().unwrap_or(lon), self.out.clone().unwrap_or(out)]
    }
}

impl App {
    /// SET PLACE: the peg lies where it was typed.
    pub(super) fn place_peg_as_typed(&mut self, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let [lat, lon, out] = self.swim.typed.place(session);
        let lat = degrees("latitude", &lat, ['N', 'S'])?;
        let lon = degrees("longitude", &lon, ['E', 'W'])?;
        let out = degrees("bearing", &out, ['\0', '\0'])?;
        let peg = peg_placed(lat, lon, out)?;
        let id = session.id;
        self.write(id, peg, None, at)?;
        (self.swim.typed.lat, self.swim.typed.lon, self.swim.typed.out) = (None, None, None);
        Ok(self.say_what("notice-logged", "peg_placed"))
    }

    /// A mark, feature or hazard gets the name that was typed.
    pub(super) fn rename(&mut self, id: &str, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let name = self.swim.typed.name.trim().to_owned();
        if name.is_empty() {
            return Err(AppError::NothingTyped);
        }
        let (id, payload) = renamed(session, id, name).ok_or_else(|| AppError::unknown("rename", id))?;
        let (session, kind) = (session.id, payload.kind().to_owned());
        self.write(session, payload, Some(id), at)?;
        self.swim.typed.name.clear();
        Ok(self.say_what("notice-logged", &kind))
    }

    /// A mark, feature, hazard or the outline is taken away again. One tap of UNDO brings it back.
    pub(super) fn remove(&mut self, id: &str, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let (session, payload) =
            (session.id, removal(session, id).ok_or_else(|| AppError::unknown("remove", id))?);
        self.write(session, payload, None, at)?;
        Ok(self.words.say("notice-removed"))
    }
}

/// The same thing with another name, and the entry that it replaces.
fn renamed(session: &Session, id: &str, name: String) -> Option<(Uuid, Payload)> {
    let id: Uuid = id.parse().ok()?;
    if let Some(mark) = session.marks.iter().find(|m| m.id == id) {
        return Some((id, Payload::MarkSet { name, bearing_cdeg: mark.bearing_cdeg }));
    }
    let thing = session.landmarks.iter().find(|l| l.id == id)?;
    let (bearing_cdeg, range_cm) = (thing.bearing_cdeg, thing.range_cm);
    let payload = match thing.what {
        LandmarkKind::Feature(feature) => {
            Payload::FeatureSet { feature: feature.logged(), name, bearing_cdeg, range_cm }
        }
        LandmarkKind::Hazard { clear_cm } => Payload::HazardSet { name, bearing_cdeg, range_cm, clear_cm },
    };
    Some((id, payload))
}

fn removal(session: &Session, id: &str) -> Option<Payload> {
    if id == "outline" {
        return (!session.outline_cm.is_empty()).then(|| Payload::OutlineSet { corners_cm: Vec::new() });
    }
    let id: Uuid = id.parse().ok()?;
    let there = session.marks.iter().any(|m| m.id == id) || session.landmarks.iter().any(|l| l.id == id);
    there.then(|| Payload::Undone { targets: vec![id] })
}

/// The entry for a peg at a place, where there can be one.
pub(super) fn peg_placed(lat_deg: f64, lon_deg: f64, out_deg: f64) -> Result<Payload, AppError> {
    if !(-180.0..=360.0).contains(&out_deg) {
        return Err(EarthError::Azimuth(out_deg).into());
    }
    if !(-180.0..=180.0).contains(&lon_deg) {
        return Err(EarthError::Longitude(lon_deg).into());
    }
    let peg = PegOnEarth::new(Place::new(lat_deg, lon_deg)?, out_deg)?;
    let e7 = |deg: f64| libm::round(deg * 1e7) as i64;
    Ok(Payload::PegPlaced {
        lat_e7: e7(peg.place.lat_deg),
        lon_e7: e7(peg.place.lon_deg),
        straight_out_cdeg: libm::round(peg.straight_out_deg * 100.0) as i32,
    })
}

/// Degrees as people write them: `52.1234`, `-1,25`, `1.25 W`, `52 7 24 N`, `52° 7.4' N`. The second of the two letters
/// counts backwards.
fn degrees(field: &'static str, text: &str, letters: [char; 2]) -> Result<f64, AppError> {
    let refused = || AppError::NotDegrees { field, value: text.trim().chars().take(40).collect() };
    let upper = text.trim().to_uppercase().replace(',', ".");
    let letter = upper.chars().find(|c| letters.contains(c));
    let bare: String = upper
        .chars()
        .filter(|c| Some(*c) != letter)
        .map(|c| if "°º'’′\"”″:".contains(c) { ' ' } else { c })
        .collect();
    // A second letter is no number, and refused as such.
    let parts: Option<Vec<f64>> = bare.split_whitespace().map(number).collect();
    let parts = parts.filter(|p| (1..=3).contains(&p.len())).ok_or_else(refused)?;
    let minutes_fit = parts[1..].iter().all(|p| (0.0..60.0).contains(p));
    let turned = bare.trim_start().starts_with('-');
    if !minutes_fit || (turned && letter.is_some()) {
        return Err(refused());
    }
    let size = parts[0].abs()
        + parts.get(1).copied().unwrap_or(0.0) / 60.0
        + parts.get(2).copied().unwrap_or(0.0) / 3_600.0;
    Ok(if turned || letter == Some(letters[1]) { -size } else { size })
}

/// A plain decimal number: no exponent, no name of infinity.
fn number(text: &str) -> Option<f64> {
    let plain = text.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | '-' | '+'));
    plain.then(|| text.parse().ok()).flatten()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn degrees_are_read_as_people_write_them() {
        let lat = |text: &str| degrees("latitude", text, ['N', 'S']).ok();
        assert_eq!(lat("52.5"), Some(52.5));
        assert_eq!(lat(" 52,5 N "), Some(52.5));
        assert_eq!(lat("n 52.5"), Some(52.5));
        assert_eq!(lat("52 30 s"), Some(-52.5));
        assert_eq!(lat("52° 7' 12\" N"), Some(52.12));
        assert_eq!(lat("-0 30"), Some(-0.5));
        for bad in ["", "north", "52.5 W", "52 61", "1 2 3 4", "1e9", "inf", "NaN", "-5 S", "5 N S", "52 -3"]
        {
            assert_eq!(lat(bad), None, "{bad}");
        }
    }

    #[test]
    fn a_peg_off_the_globe_or_at_a_pole_is_refused() {
        assert!(peg_placed(91.0, 0.0, 0.0).is_err());
        assert!(peg_placed(0.0, 180.5, 0.0).is_err());
        assert!(peg_placed(90.0, 0.0, 0.0).is_err());
        assert!(peg_placed(52.0, 0.0, 400.0).is_err());
        let Ok(Payload::PegPlaced { lat_e7, lon_e7, straight_out_cdeg }) = peg_placed(-17.0, -180.0, -90.0)
        else {
            panic!()
        };
        assert_eq!((lat_e7, lon_e7, straight_out_cdeg), (-170_000_000, -1_800_000_000, 27_000));
    }
}
