//! The geographic position of the swim: WGS 84, geodesics after Karney.
//!
//! C. F. F. Karney, "Algorithms for geodesics", J. Geodesy 87 (2013) 43-55, by `geographiclib-rs`.

use super::frame::{Point, bearing_range};
use geographiclib_rs::{DirectGeodesic, Geodesic, InverseGeodesic};
use serde::{Deserialize, Serialize};

/// A peg nearer to a pole than this has no useful bearings, degrees of latitude.
const POLE_LIMIT_DEG: f64 = 89.9;
/// Anything further from the peg than this can't belong to its swim, metres.
const FARTHEST_M: f64 = 5000.0;

/// Why a place on the earth can't be used, and what to do.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum EarthError {
    /// Not a number, or off the globe.
    #[error("an impossible latitude of {0}")]
    Latitude(f64),
    /// Not a number, or off the globe.
    #[error("an impossible longitude of {0}")]
    Longitude(f64),
    /// Not a number.
    #[error("an impossible azimuth of {0}")]
    Azimuth(f64),
    /// Bearings from a pole mean nothing.
    #[error("a peg at latitude {0} is too near the pole for bearings")]
    AtPole(f64),
    /// Too far from the peg to be part of its swim.
    #[error("{what} is {metres:.0} m from the peg, further than {limit:.0} m")]
    TooFar {
        /// What.
        what: String,
        /// How far.
        metres: f64,
        /// The limit.
        limit: f64,
    },
}

/// A place on the earth (WGS 84).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Place {
    /// Degrees north.
    pub lat_deg: f64,
    /// Degrees east, -180 to 180.
    pub lon_deg: f64,
}

impl Place {
    /// A place; longitudes of -540 to 540 degrees are brought into -180 to 180.
    pub fn new(lat_deg: f64, lon_deg: f64) -> Result<Self, EarthError> {
        if !(lat_deg.is_finite() && lat_deg.abs() <= 90.0) {
            return Err(EarthError::Latitude(lat_deg));
        }
        if !(lon_deg.is_finite() && lon_deg.abs() <= 540.0) {
            return Err(EarthError::Longitude(lon_deg));
        }
        Ok(Self { lat_deg, lon_deg: wrapped(lon_deg) })
    }
}

/// Degrees brought into -180 to 180; those already there stay as they are.
pub(crate) fn wrapped(degrees: f64) -> f64 {
    if degrees.abs() <= 180.0 { degrees } else { (degrees + 180.0).rem_euclid(360.0) - 180.0 }
}

/// A course along the shortest line between two places.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Course {
    /// Length, metres.
    pub metres: f64,
    /// Azimuth at the start, degrees clockwise from north.
    pub azimuth_deg: f64,
    /// Azimuth at the end, forward.
    pub end_azimuth_deg: f64,
}

/// The place reached from another, and the forward azimuth there (the direct problem).
pub fn place_from(from: Place, azimuth_deg: f64, metres: f64) -> (Place, f64) {
    let (lat_deg, lon_deg, azimuth): (f64, f64, f64) =
        Geodesic::wgs84().direct(from.lat_deg, from.lon_deg, azimuth_deg, metres);
    (Place { lat_deg, lon_deg: wrapped(lon_deg) }, azimuth)
}

/// The course from one place to another (the inverse problem).
pub fn course(from: Place, to: Place) -> Course {
    let (metres, azimuth_deg, end_azimuth_deg, _): (f64, f64, f64, f64) =
        Geodesic::wgs84().inverse(from.lat_deg, from.lon_deg, to.lat_deg, to.lon_deg);
    Course { metres, azimuth_deg, end_azimuth_deg }
}

/// The peg on the earth: where it is and which way straight out looks.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct PegOnEarth {
    /// The rod rest.
    pub place: Place,
    /// Azimuth of straight out, degrees clockwise from north.
    pub straight_out_deg: f64,
}

impl PegOnEarth {
    /// A peg; refused within a tenth of a degree of a pole.
    pub fn new(place: Place, straight_out_deg: f64) -> Result<Self, EarthError> {
        if place.lat_deg.abs() > POLE_LIMIT_DEG {
            return Err(EarthError::AtPole(place.lat_deg));
        }
        if !straight_out_deg.is_finite() {
            return Err(EarthError::Azimuth(straight_out_deg));
        }
        Ok(Self { place, straight_out_deg: straight_out_deg.rem_euclid(360.0) })
    }

    /// The place of a point of the peg frame.
    pub fn place_of(&self, p: Point) -> Place {
        let (bearing, range) = bearing_range(p);
        place_from(self.place, self.straight_out_deg + bearing, range).0
    }

    /// The point of the peg frame at a place; refused more than 5 km away. `what` names it in the error.
    pub fn point_of(&self, place: Place, what: &str) -> Result<Point, EarthError> {
        let course = course(self.place, place);
        if course.metres > FARTHEST_M {
            let what = what.to_owned();
            return Err(EarthError::TooFar { what, metres: course.metres, limit: FARTHEST_M });
        }
        Ok(super::frame::point_at(course.azimuth_deg - self.straight_out_deg, course.metres))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn places_off_the_globe_are_refused() {
        assert!(matches!(Place::new(90.1, 0.0), Err(EarthError::Latitude(_))));
        assert!(matches!(Place::new(f64::NAN, 0.0), Err(EarthError::Latitude(_))));
        assert!(matches!(Place::new(0.0, 600.0), Err(EarthError::Longitude(_))));
        let pole = Place::new(90.0, 0.0).unwrap();
        assert!(matches!(PegOnEarth::new(pole, 0.0), Err(EarthError::AtPole(_))));
        let peg = Place::new(52.0, -1.0).unwrap();
        assert!(matches!(PegOnEarth::new(peg, f64::INFINITY), Err(EarthError::Azimuth(_))));
    }

    #[test]
    fn geodesics_from_the_poles_have_an_answer() {
        // From the north pole every azimuth leads south: 1 km down the meridian 180 - azimuth.
        let pole = Place::new(90.0, 0.0).unwrap();
        let (there, _) = place_from(pole, 30.0, 1000.0);
        assert!((there.lon_deg - 150.0).abs() < 1e-9 && there.lat_deg < 90.0);
        assert!((course(pole, there).metres - 1000.0).abs() < 1e-6);
    }

    proptest! {
        #[test]
        fn points_of_the_peg_frame_survive_the_round_trip(
            lat in -80.0..80.0f64, lon in -180.0..180.0f64, out in 0.0..360.0f64, x in -200.0..200.0f64, y in 0.0..250.0f64
        ) {
            let peg = PegOnEarth::new(Place::new(lat, lon).unwrap(), out).unwrap();
            let place = peg.place_of(Point { x, y });
            prop_assert!(place.lon_deg.abs() <= 180.0);
            let back = peg.point_of(place, "a point").unwrap();
            let off = back.distance(Point { x, y });
            prop_assert!(off < 1e-6);
        }
    }
}
