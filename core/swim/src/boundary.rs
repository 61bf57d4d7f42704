//! Where the swim ends: half-way to the next pegs, at the far bank or half-way to it.

use super::error::{SwimError, positive};
use super::frame::{LONGEST_RANGE_M, Point};
use serde::{Deserialize, Serialize};

/// How far a side extends that nothing bounds, metres: beyond every cast.
const OPEN_M: f64 = LONGEST_RANGE_M + 10.0;

/// What bounds a swim on a straight bank. Half-way to each neighbour, and half-way across where the
/// far bank is pegged too, is common practice (no source); the venue's rules decide.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Neighbours {
    /// Distance to the next peg on the left, metres; `None` at an end peg.
    pub left_peg_m: Option<f64>,
    /// Distance to the next peg on the right, metres; `None` at an end peg.
    pub right_peg_m: Option<f64>,
    /// Distance to the far bank, metres; `None` if it is not known.
    pub far_bank_m: Option<f64>,
    /// Whether the far bank is pegged, which counts only if its distance is known.
    pub far_bank_pegged: bool,
}

impl Neighbours {
    /// The outline: a rectangle in the peg frame, anticlockwise. A side that nothing bounds extends beyond every cast: the open
    /// side of an end peg, and the far side while the far bank is not known.
    pub fn outline(&self) -> Result<Vec<Point>, SwimError> {
        let end = |what, given: Option<f64>, halved: bool| {
            given.map_or(Ok(OPEN_M), |m| positive(what, m).map(|m| if halved { m / 2.0 } else { m }))
        };
        let far = end("the distance to the far bank", self.far_bank_m, self.far_bank_pegged)?;
        let side = |peg| end("the distance to the next peg", peg, true);
        let (left, right) = (side(self.left_peg_m)?, side(self.right_peg_m)?);
        Ok(vec![
            Point { x: -left, y: 0.0 },
            Point { x: right, y: 0.0 },
            Point { x: right, y: far },
            Point { x: -left, y: far },
        ])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frame::point_at;
    use crate::planar::{ring_area_m2, ring_contains};

    #[test]
    fn half_way_to_each_neighbour() {
        let n = Neighbours {
            left_peg_m: Some(20.0),
            right_peg_m: Some(12.0),
            far_bank_m: Some(90.0),
            far_bank_pegged: true,
        };
        assert_eq!(ring_area_m2(&n.outline().unwrap()), 16.0 * 45.0);
        assert!(Neighbours { far_bank_m: Some(0.0), ..n }.outline().is_err());
        assert!(Neighbours { right_peg_m: Some(-3.0), ..n }.outline().is_err());
    }

    #[test]
    fn what_nobody_gave_bounds_no_cast() {
        let n =
            Neighbours { left_peg_m: Some(20.0), right_peg_m: None, far_bank_m: None, far_bank_pegged: true };
        let outline = n.outline().unwrap();
        let holds = |bearing_deg, range_m| ring_contains(&outline, point_at(bearing_deg, range_m));
        assert!(holds(0.0, LONGEST_RANGE_M) && holds(89.0, LONGEST_RANGE_M));
        assert!(holds(-10.0, 57.0) && !holds(-10.0, 58.0), "10 m to the left is half-way to the next peg");
        let near = Neighbours { far_bank_m: Some(30.0), far_bank_pegged: false, ..n }.outline().unwrap();
        assert!(ring_contains(&near, point_at(80.0, 150.0)), "along the open bank");
        assert!(!ring_contains(&near, point_at(0.0, 31.0)));
    }
}
