//! Alternation plans: A B B A on one spot, so that a steady drift of the day affects both sides alike.

use serde::{Deserialize, Serialize};

/// One of the two sides of a change: A is the old value, B the one that replaced it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Side {
    /// What was there before.
    A,
    /// What replaced it.
    B,
}

impl Side {
    /// The other side.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::A => Self::B,
            Self::B => Self::A,
        }
    }
}

/// An A B B A plan: in each four casts both sides have the same mean place in time, so a drift that
/// goes straight up or down over them cancels.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct AlternationPlan {
    /// The side of the first cast.
    pub first: Side,
    /// Casts planned, a multiple of four.
    pub casts: usize,
}

impl AlternationPlan {
    /// A plan of at least `casts` casts, rounded up to whole fours (at least one four).
    pub fn new(first: Side, casts: usize) -> Self {
        Self { first, casts: casts.div_ceil(4).max(1).saturating_mul(4) }
    }

    /// The side of cast number `i`, from 0; `None` once the plan is finished.
    pub fn side(self, i: usize) -> Option<Side> {
        (i < self.casts).then(|| match i % 4 {
            0 | 3 => self.first,
            _ => self.first.other(),
        })
    }

    /// All sides in order.
    pub fn sides(self) -> impl Iterator<Item = Side> {
        (0..self.casts).filter_map(move |i| self.side(i))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn abba() {
        let letters: String =
            AlternationPlan::new(Side::A, 5).sides().map(|s| if s == Side::A { 'A' } else { 'B' }).collect();
        assert_eq!(letters, "ABBAABBA");
        assert_eq!(AlternationPlan::new(Side::B, 0).casts, 4);
    }

    proptest! {
        #[test]
        fn both_sides_have_the_same_mean_time(casts in 0usize..200) {
            let plan = AlternationPlan::new(Side::A, casts);
            let places = |side| plan.sides().enumerate().filter(move |&(_, s)| s == side).map(|(i, _)| i);
            prop_assert_eq!(places(Side::A).count(), places(Side::B).count());
            prop_assert_eq!(places(Side::A).sum::<usize>(), places(Side::B).sum::<usize>());
        }
    }
}
