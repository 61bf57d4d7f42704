//! Texts typed on the Swim screen: a name for the next mark or for an existing one, and the position of the
//! peg.

use super::typed::degrees;
use super::{App, AppError, WhatTyped};
use restwater_log::{Moment, Payload};
use restwater_screen::SwimThing;
use restwater_session::Logged;
use restwater_session::{LandmarkKind, NotNow, Session};
use restwater_swim::{EarthError, PegOnEarth, Place};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// The texts typed so far; not part of the log, and all optional.
#[derive(Debug, Clone, Default, Serialize, Deserialize)]
pub(super) struct Typed {
    pub(super) name: String,
    pub(super) lat: Option<String>,
    pub(super) lon: Option<String>,
    pub(super) out: Option<String>,
}

impl Typed {
    /// The three fields of the peg's position as the screen shows them: typed, or as they were set before.
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
    /// SET PLACE: logs the typed position of the peg.
    pub(super) fn place_peg_as_typed(&mut self, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let [lat, lon, out] = self.swim.typed.place(session);
        let lat = degrees(WhatTyped::Latitude, &lat)?;
        let lon = degrees(WhatTyped::Longitude, &lon)?;
        let out = degrees(WhatTyped::Bearing, &out)?;
        let peg = peg_placed(lat, lon, out)?;
        let id = session.id;
        self.write(id, peg, None, at)?;
        (self.swim.typed.lat, self.swim.typed.lon, self.swim.typed.out) = (None, None, None);
        Ok(self.say_what("notice-logged", "peg_placed"))
    }

    /// Gives a mark, feature or hazard the name that was typed.
    pub(super) fn rename(&mut self, id: Uuid, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let name = self.swim.typed.name.trim().to_owned();
        if name.is_empty() {
            return Err(AppError::NothingTyped);
        }
        let payload = renamed(session, id, name).ok_or(AppError::NoSuchEntry)?;
        let (session, kind) = (session.id, payload.kind().to_owned());
        self.write(session, payload, Some(id), at)?;
        self.swim.typed.name.clear();
        Ok(self.say_what("notice-logged", &kind))
    }

    /// Removes a mark, feature, hazard or the outline. One tap of UNDO restores it.
    pub(super) fn remove(&mut self, thing: SwimThing, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let (session, payload) = (session.id, removal(session, thing).ok_or(AppError::NoSuchEntry)?);
        self.write(session, payload, None, at)?;
        Ok(self.words.say("notice-removed"))
    }
}

/// The same thing with another name.
fn renamed(session: &Session, id: Uuid, name: String) -> Option<Payload> {
    if let Some(mark) = session.marks.iter().find(|m| m.id == id) {
        return Some(Payload::MarkSet { name, bearing_cdeg: mark.bearing_cdeg });
    }
    let thing = session.landmarks.iter().find(|l| l.id == id)?;
    let (bearing_cdeg, range_cm) = (thing.bearing_cdeg, thing.range_cm);
    Some(match thing.what {
        LandmarkKind::Feature(feature) => {
            Payload::FeatureSet { feature: feature.logged(), name, bearing_cdeg, range_cm }
        }
        LandmarkKind::Hazard { clear_cm } => Payload::HazardSet { name, bearing_cdeg, range_cm, clear_cm },
    })
}

fn removal(session: &Session, thing: SwimThing) -> Option<Payload> {
    let SwimThing::Set { id } = thing else {
        return (!session.outline_cm.is_empty()).then(|| Payload::OutlineSet { corners_cm: Vec::new() });
    };
    let there = session.marks.iter().any(|m| m.id == id) || session.landmarks.iter().any(|l| l.id == id);
    there.then(|| Payload::Removed { targets: vec![id] })
}

/// The entry for a peg at a position, if that is possible.
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

#[cfg(test)]
mod tests {
    use super::*;

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
