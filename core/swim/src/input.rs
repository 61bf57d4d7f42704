//! The input of the swim: marks, bands, casts, kept-back water and so on, as records. All times are
//! milliseconds on the session's time line.
//!
//! Fields are public so that the session can fill them; [`super::Swim::new`] checks them all and refuses
//! impossible values with a [`super::SwimError`].

use super::error::{SwimError, finite};
use super::frame::{LONGEST_RANGE_M, Point, Spot, check_bearing};
use super::range::metres;
use super::scatter::{Disturbance, Scatter};
use serde::{Deserialize, Serialize};

/// Something on the far side that a cast is aimed at.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct AimingMark {
    /// Stable id.
    pub id: String,
    /// What the angler calls it.
    pub name: String,
    /// Degrees clockwise from straight out.
    pub bearing_deg: f64,
}

/// A stretch of range.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Band {
    /// Near edge, metres from the rod rest.
    pub from_m: f64,
    /// Far edge, metres.
    pub to_m: f64,
}

/// The left and right edge of the fan, degrees clockwise from straight out.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Fan {
    /// Left edge.
    pub from_deg: f64,
    /// Right edge.
    pub to_deg: f64,
}

impl Band {
    /// Refuses a band without width, and one that nobody casts to.
    pub fn check(self) -> Result<(), SwimError> {
        finite("the near edge of a band", self.from_m)?;
        finite("the far edge of a band", self.to_m)?;
        if self.from_m < 0.0 || self.to_m - self.from_m < 0.01 {
            return Err(SwimError::BandWithoutWidth { from_m: self.from_m, to_m: self.to_m });
        }
        if self.to_m > LONGEST_RANGE_M {
            return Err(SwimError::RangeTooLong { range_m: self.to_m, limit_m: LONGEST_RANGE_M });
        }
        Ok(())
    }
}

impl Fan {
    /// Refuses edges behind the peg, and a fan without width.
    pub fn check(self) -> Result<(), SwimError> {
        check_bearing(self.from_deg)?;
        check_bearing(self.to_deg)?;
        if self.to_deg - self.from_deg < 0.1 {
            return Err(SwimError::FanWithoutWidth { from_deg: self.from_deg, to_deg: self.to_deg });
        }
        Ok(())
    }
}

/// One cast as the swim sees it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct CastAt {
    /// Where it was meant to land.
    pub spot: Spot,
    /// Whether the line was clipped up.
    pub clipped: bool,
    /// Weight of the lead or the loaded feeder, grams; `None` if it was not logged.
    pub lead_g: Option<f64>,
    /// Splash, milliseconds.
    pub start_ms: i64,
    /// Its end, milliseconds; `None` while it is out.
    pub end_ms: Option<i64>,
    /// From when its bait waits, milliseconds: the splash, or later if it takes time to settle.
    pub waits_from_ms: i64,
    /// Until when it is known to have waited, milliseconds; `None` while it is out.
    pub waits_to_ms: Option<i64>,
    /// Whether its end was seen; otherwise the cast says nothing about bites.
    pub end_seen: bool,
    /// Bites, whatever came of them.
    pub bites: u32,
    /// When the (first) bite came, milliseconds; the end of the cast if it is not known.
    pub bite_ms: Option<i64>,
    /// Liners.
    pub liners: u32,
    /// Fish lost.
    pub lost: u32,
    /// Fish landed.
    pub landed: u32,
}

impl CastAt {
    /// When its bite came, if it had one.
    pub(crate) fn bite_time(&self) -> i64 {
        self.bite_ms.or(self.end_ms).unwrap_or(self.start_ms)
    }
}

/// Water the angler has decided to rest: a sector of the fan.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct KeptBack {
    /// Left and right edge.
    pub fan: Fan,
    /// Near and far edge.
    pub band: Band,
    /// Since when, milliseconds.
    pub since_ms: i64,
    /// Until when; `None` while it is kept back.
    pub released_ms: Option<i64>,
}

/// What kind of thing is in the water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum FeatureKind {
    /// A rise of the bottom.
    Bar,
    /// A step down.
    DropOff,
    /// A hole.
    Hole,
    /// Weed.
    Weed,
    /// Silt.
    Silt,
    /// Gravel.
    Gravel,
    /// Clay.
    Clay,
    /// An island or its margin.
    Island,
    /// Fish seen.
    FishSeen,
    /// Anything else.
    Other,
}

/// A feature of the bottom or the surface.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Feature {
    /// What the angler calls it.
    pub name: String,
    /// Its kind.
    pub kind: FeatureKind,
    /// Where it is.
    pub spot: Spot,
}

/// A snag or anything else a lead should stay clear of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Hazard {
    /// What the angler calls it.
    pub name: String,
    /// Where it is.
    pub spot: Spot,
    /// How far to stay clear of it, metres.
    pub clear_m: f64,
}

/// Feed that went in.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct FedAt {
    /// Where.
    pub spot: Spot,
    /// When, milliseconds.
    pub at_ms: i64,
    /// Its assumed weight, mg.
    pub mg: u64,
}

/// Fish that showed themselves: rolled, bubbled, topped.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct ShownAt {
    /// Where.
    pub spot: Spot,
    /// When, milliseconds.
    pub at_ms: i64,
}

/// Everything the swim is computed from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SwimInput {
    /// Aiming marks, in any order.
    pub marks: Vec<AimingMark>,
    /// Bands, in any order, not overlapping; empty takes the default bands. Gaps are filled.
    pub bands: Vec<Band>,
    /// Edges of the fan; `None` takes 25 degrees either side, widened to hold marks and spots.
    pub fan: Option<Fan>,
    /// Outline of the swim in the peg frame, metres; `None` if nothing bounds the fan.
    pub boundary: Option<Vec<Point>>,
    /// Casts, in any order.
    pub casts: Vec<CastAt>,
    /// Spots that rods are sent to, whether or not a cast went there yet.
    pub sent: Vec<Spot>,
    /// When bites came on casts whose spot isn't known, milliseconds.
    pub other_bites_ms: Vec<i64>,
    /// Kept-back water, now and earlier.
    pub kept_back: Vec<KeptBack>,
    /// Features.
    pub features: Vec<Feature>,
    /// Hazards.
    pub hazards: Vec<Hazard>,
    /// Feed, in any order.
    pub fed: Vec<FedAt>,
    /// Fish that showed themselves, in any order.
    pub shown: Vec<ShownAt>,
    /// Minutes after which water counts as rested; the angler's own hypothesis.
    pub rest_target_min: f64,
    /// The longest range that can be cast today, metres (wind, rod); `None` where not known.
    pub castable_m: Option<f64>,
    /// Where to start while nothing has bitten yet; `None` for no habit.
    pub usual_start: Option<Band>,
    /// How near to a bite counts as near, metres.
    pub near_m: f64,
    /// For how long a bite counts as one of the last, minutes.
    pub bite_memory_min: f64,
    /// Scatter of casts.
    pub scatter: Scatter,
    /// How far a lead or feeder disturbs the water round it.
    pub disturbance: Disturbance,
}

impl Default for SwimInput {
    /// An empty swim. Rest target 45 min, near 15 m, bite memory 60 min: guesses, of which the angler can
    /// change the rest target. Start at 35-40 yd: common practice, no source.
    fn default() -> Self {
        Self {
            marks: Vec::new(),
            bands: Vec::new(),
            fan: None,
            boundary: None,
            casts: Vec::new(),
            sent: Vec::new(),
            other_bites_ms: Vec::new(),
            kept_back: Vec::new(),
            features: Vec::new(),
            hazards: Vec::new(),
            fed: Vec::new(),
            shown: Vec::new(),
            rest_target_min: 45.0,
            castable_m: None,
            usual_start: Some(Band { from_m: metres(35.0), to_m: metres(40.0) }),
            near_m: 15.0,
            bite_memory_min: 60.0,
            scatter: Scatter::default(),
            disturbance: Disturbance::default(),
        }
    }
}

impl SwimInput {
    /// Where the angler fishes, feeds or saw fish: the fan and the bands reach there unless they are given.
    pub fn spots(&self) -> impl Iterator<Item = Spot> + '_ {
        let casts = self.casts.iter().map(|cast| cast.spot).chain(self.sent.iter().copied());
        casts.chain(self.fed.iter().map(|fed| fed.spot)).chain(self.shown.iter().map(|shown| shown.spot))
    }

    /// The swim seen in a mirror: left for right.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let mut m = self.clone();
        let flip = |fan: Fan| Fan { from_deg: -fan.to_deg, to_deg: -fan.from_deg };
        m.marks.iter_mut().for_each(|k| k.bearing_deg = -k.bearing_deg);
        m.casts.iter_mut().for_each(|c| c.spot = c.spot.mirrored());
        m.sent.iter_mut().for_each(|s| *s = s.mirrored());
        m.kept_back.iter_mut().for_each(|k| k.fan = flip(k.fan));
        m.features.iter_mut().for_each(|f| f.spot = f.spot.mirrored());
        m.hazards.iter_mut().for_each(|h| h.spot = h.spot.mirrored());
        m.fed.iter_mut().for_each(|f| f.spot = f.spot.mirrored());
        m.shown.iter_mut().for_each(|s| s.spot = s.spot.mirrored());
        m.fan = m.fan.map(flip);
        m.boundary =
            m.boundary.map(|ring| ring.into_iter().rev().map(|p| Point { x: -p.x, y: p.y }).collect());
        m
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mirror_of_a_mirror_is_the_swim() {
        let spot = Spot { bearing_deg: 12.0, range_m: 30.0 };
        let input = SwimInput {
            fan: Some(Fan { from_deg: -20.0, to_deg: 35.0 }),
            boundary: Some(vec![
                Point { x: -5.0, y: 1.0 },
                Point { x: 9.0, y: 1.0 },
                Point { x: 0.0, y: 60.0 },
            ]),
            sent: vec![spot],
            ..SwimInput::default()
        };
        assert_ne!(input.mirrored(), input);
        assert_eq!(input.mirrored().mirrored(), input);
    }
}
