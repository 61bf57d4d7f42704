//! What the swim, the peg's place and the weather refuse.

use super::{Refused, figure, say};
use crate::Wording;
use restwater_sky::conditions::ConditionsError;
use restwater_sky::daylight::SkyError;
use restwater_swim::{EarthError, GeoJsonError, SwimError};

impl Refused for SwimError {
    fn said(&self, words: &Wording) -> String {
        let n = |value: f64| figure(words, value);
        match self {
            Self::NotANumber { value, .. } | Self::NotPositive { value, .. } => {
                say(words, "figure", &[("value", &n(*value))])
            }
            Self::BearingBehind(deg) => say(words, "bearing-behind", &[("deg", &n(*deg))]),
            Self::RangeTooLong { range_m, limit_m } => {
                let (metres, most) = (words.figure(*range_m, 0), words.figure(*limit_m, 0));
                say(words, "range-too-long", &[("metres", &metres), ("most", &most)])
            }
            Self::BandWithoutWidth { from_m, to_m } => {
                say(words, "band-no-width", &[("from", &n(*from_m)), ("to", &n(*to_m))])
            }
            Self::BandsOverlap { before_to_m, from_m } => {
                say(words, "bands-overlap", &[("from", &n(*from_m)), ("to", &n(*before_to_m))])
            }
            Self::SameMarkTwice(name) => say(words, "same-mark", &[("name", name)]),
            Self::MarksOnOneBearing(name, other) => {
                say(words, "marks-on-one", &[("name", name), ("other", other)])
            }
            Self::TooFewCorners(corners) => say(words, "few-corners", &[("value", &corners.to_string())]),
            Self::OutlineCrosses { x, y, .. } => {
                let metres = words.figure(libm::hypot(*x, *y), 0);
                say(words, "outline-crosses", &[("metres", &metres)])
            }
            Self::NoWater => say(words, "no-water", &[]),
            Self::OutsideSwim { bearing_deg, range_m } => {
                let (metres, deg) = (words.figure(*range_m, 1), words.figure(*bearing_deg, 0));
                say(words, "outside-swim", &[("metres", &metres), ("deg", &deg.replace('-', "−"))])
            }
            Self::EndsBeforeStart { .. } => say(words, "ends-before-start", &[]),
            Self::FanWithoutWidth { from_deg, to_deg } => {
                say(words, "fan-no-width", &[("from", &n(*from_deg)), ("to", &n(*to_deg))])
            }
            Self::NoRoomToDraw { .. } => say(words, "no-room", &[]),
            Self::NoSuchCell { .. } => say(words, "no-such-cell", &[]),
        }
    }
}

impl Refused for EarthError {
    fn said(&self, words: &Wording) -> String {
        let of = |case, value: f64| say(words, case, &[("value", &figure(words, value))]);
        match self {
            Self::Latitude(deg) => of("bad-latitude", *deg),
            Self::Longitude(deg) => of("bad-longitude", *deg),
            Self::Azimuth(deg) => of("bad-azimuth", *deg),
            Self::AtPole(deg) => of("at-pole", *deg),
            Self::TooFar { what, metres, limit } => {
                let (metres, most) = (words.figure(*metres, 0), words.figure(*limit, 0));
                say(words, "too-far", &[("name", what), ("metres", &metres), ("most", &most)])
            }
        }
    }
}

impl Refused for GeoJsonError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::NotGeoJson(_) => say(words, "not-geojson", &[]),
            Self::PegNeeded => say(words, "peg-needed", &[]),
            Self::TooMuch { .. } => say(words, "too-much", &[]),
            Self::Earth(error) => error.said(words),
            Self::Swim(error) => error.said(words),
        }
    }
}

impl Refused for ConditionsError {
    fn said(&self, words: &Wording) -> String {
        let celsius =
            |case, tenths: i16| say(words, case, &[("t", &figure(words, f64::from(tenths) / 10.0))]);
        match self {
            Self::Air(tenths) => celsius("no-air", *tenths),
            Self::Water(tenths) => celsius("no-lake", *tenths),
            Self::Cloud(oktas) => say(words, "no-cloud", &[("value", &oktas.to_string())]),
            Self::CalmFromSomewhere => say(words, "calm-from", &[]),
        }
    }
}

impl Refused for SkyError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::NoPlace { lat, lon } => {
                let args = [("lat", &*figure(words, *lat)), ("lon", &figure(words, *lon))];
                say(words, "no-place", &args)
            }
            Self::NoDate => say(words, "no-date", &[]),
        }
    }
}
