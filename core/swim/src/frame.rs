//! The peg frame: metres, origin at the rod rest, y straight out, x to the right; bearings in
//! degrees clockwise from straight out.

use super::error::{SwimError, finite, positive};
use serde::{Deserialize, Serialize};

/// The longest range accepted, metres. No cast from a bank comes near it (from memory); a longer
/// one is a slip of the fingers, such as yards entered as wraps.
pub const LONGEST_RANGE_M: f64 = 250.0;

/// A point in the peg frame, metres.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Point {
    /// To the right of straight out.
    pub x: f64,
    /// Straight out.
    pub y: f64,
}

impl Point {
    /// Distance to another point, metres.
    pub fn distance(self, other: Self) -> f64 {
        libm::hypot(self.x - other.x, self.y - other.y)
    }
}

/// The point at `bearing_deg` degrees clockwise from straight out (or from north, with x east and
/// y north) and `range_m` metres.
pub fn point_at(bearing_deg: f64, range_m: f64) -> Point {
    let b = bearing_deg.to_radians();
    Point { x: range_m * libm::sin(b), y: range_m * libm::cos(b) }
}

/// Bearing (degrees, -180 to 180) and range (metres) of a point; the origin has bearing 0.
pub fn bearing_range(p: Point) -> (f64, f64) {
    (libm::atan2(p.x, p.y).to_degrees(), libm::hypot(p.x, p.y))
}

/// Where a cast goes: a bearing and a range from the peg.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Spot {
    /// Degrees clockwise from straight out: negative is left.
    pub bearing_deg: f64,
    /// Metres from the rod rest.
    pub range_m: f64,
}

impl Spot {
    /// A spot at a bearing (-90 to 90 degrees) and a range (above 0, at most
    /// [`LONGEST_RANGE_M`] metres).
    pub fn new(bearing_deg: f64, range_m: f64) -> Result<Self, SwimError> {
        check_bearing(bearing_deg)?;
        if positive("a range", range_m)? > LONGEST_RANGE_M {
            return Err(SwimError::RangeTooLong { range_m, limit_m: LONGEST_RANGE_M });
        }
        Ok(Self { bearing_deg, range_m })
    }

    /// Where it lies in the peg frame.
    pub fn point(self) -> Point {
        point_at(self.bearing_deg, self.range_m)
    }

    /// The spot seen in a mirror: left for right.
    #[must_use]
    pub fn mirrored(self) -> Self {
        Self { bearing_deg: -self.bearing_deg, ..self }
    }
}

/// A bearing in front of the peg.
pub(crate) fn check_bearing(bearing_deg: f64) -> Result<(), SwimError> {
    if finite("a bearing", bearing_deg)?.abs() > 90.0 {
        return Err(SwimError::BearingBehind(bearing_deg));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_kilometre_and_a_bearing_behind_are_refused() {
        assert!(matches!(Spot::new(0.0, 1000.0), Err(SwimError::RangeTooLong { .. })));
        assert!(matches!(Spot::new(91.0, 30.0), Err(SwimError::BearingBehind(_))));
        assert!(matches!(Spot::new(f64::NAN, 30.0), Err(SwimError::NotANumber { .. })));
        assert!(matches!(Spot::new(0.0, 0.0), Err(SwimError::NotPositive { .. })));
    }

    proptest! {
        #[test]
        fn bearing_and_range_survive_the_round_trip(b in -90.0..90.0f64, r in 0.1..250.0f64) {
            let (bearing, range) = bearing_range(Spot::new(b, r).unwrap().point());
            prop_assert!((bearing - b).abs() < 1e-9);
            prop_assert!((range - r).abs() < 1e-9);
        }
    }
}
