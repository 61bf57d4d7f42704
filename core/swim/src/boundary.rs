//! Where the swim ends: half-way to the next pegs, at the far bank or half-way to it.

use super::error::{SwimError, positive};
use super::frame::Point;
use serde::{Deserialize, Serialize};

/// What bounds a swim on a straight bank. Half-way to each neighbour, and half-way across where the
/// far bank is pegged too, is common practice (no source); the venue's rules decide.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Neighbours {
    /// Distance to the next peg on the left, metres; `None` at an end peg.
    pub left_peg_m: Option<f64>,
    /// Distance to the next peg on the right, metres; `None` at an end peg.
    pub right_peg_m: Option<f64>,
    /// Distance to the far bank, metres.
    pub far_bank_m: f64,
    /// Whether the far bank is pegged.
    pub far_bank_pegged: bool,
}

impl Neighbours {
    /// The outline: a rectangle in the peg frame, anticlockwise. The open side of an end peg extends sideways
    /// as far as the far edge is out.
    pub fn outline(&self) -> Result<Vec<Point>, SwimError> {
        let far = positive("the distance to the far bank", self.far_bank_m)?;
        let far = if self.far_bank_pegged { far / 2.0 } else { far };
        let side = |peg: Option<f64>| {
            peg.map_or(Ok(far), |m| positive("the distance to the next peg", m).map(|m| m / 2.0))
        };
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
    use crate::planar::ring_area_m2;

    #[test]
    fn half_way_to_each_neighbour() {
        let n = Neighbours {
            left_peg_m: Some(20.0),
            right_peg_m: Some(12.0),
            far_bank_m: 90.0,
            far_bank_pegged: true,
        };
        assert_eq!(ring_area_m2(&n.outline().unwrap()), 16.0 * 45.0);
        let end = Neighbours { left_peg_m: None, far_bank_pegged: false, ..n };
        assert_eq!(end.outline().unwrap()[0], Point { x: -90.0, y: 0.0 });
        assert!(Neighbours { far_bank_m: 0.0, ..n }.outline().is_err());
        assert!(Neighbours { right_peg_m: Some(-3.0), ..n }.outline().is_err());
    }
}
