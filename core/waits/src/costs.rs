//! What a cast costs besides its wait, and the bites per minute that follow for a leave time.
//!
//! R(t) = F(t) / (M(t) + c + d F(t)), with F the share bitten by t, M(t) the mean of the wait or t,
//! c the turn-round and d the extra time of a bite (renewal-reward theorem; Ross, Introduction to
//! Probability Models; age replacement in Barlow and Hunter 1960 is the same mathematics).

use super::BiteError;
use super::error::{not_negative, positive};

/// What a cast costs besides waiting.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Costs {
    /// Turn-round: minutes from winding in to the next splash.
    pub turn_round_min: f64,
    /// Extra minutes a bite costs: playing, unhooking, rebaiting.
    pub bite_extra_min: f64,
}

impl Costs {
    /// Checks the costs.
    pub fn new(turn_round_min: f64, bite_extra_min: f64) -> Result<Self, BiteError> {
        Ok(Self {
            turn_round_min: positive("the turn-round", turn_round_min)?,
            bite_extra_min: not_negative("the extra time of a bite", bite_extra_min)?,
        })
    }

    /// Bites per minute where a share `bitten` of casts has a bite and a cast waits `waiting` minutes
    /// on average.
    #[inline]
    pub fn rate(self, bitten: f64, waiting: f64) -> f64 {
        bitten / (waiting + self.turn_round_min + self.bite_extra_min * bitten)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bad_costs_are_refused() {
        assert!(Costs::new(0.0, 1.0).is_err());
        assert!(Costs::new(2.0, -1.0).is_err());
        assert!(Costs::new(f64::NAN, 1.0).is_err());
    }
}
