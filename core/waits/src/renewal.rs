//! Bites per minute of a fixed leave time, and the best one, for a given law of the wait.
//!
//! R(t) = F(t) / (M(t) + c + d F(t)), with F the share bitten by t, M(t) the mean of the wait or t,
//! c the turn-round and d the extra time of a bite (renewal-reward theorem; Ross, Introduction to
//! Probability Models; age replacement in Barlow and Hunter 1960 is the same mathematics).

use super::error::{not_negative, positive};
use super::wait_law::WaitLaw;
use super::{BiteError, SurvivalCurve};

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

/// The best leave time of a law.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BestLeave {
    /// Best at a time at which longer and shorter are both worse.
    Interior {
        /// Minutes.
        minutes: f64,
        /// Bites per minute there.
        rate: f64,
    },
    /// Best at the last possible bite: never wind in before it.
    AtTheLast {
        /// Minutes.
        minutes: f64,
        /// Bites per minute there.
        rate: f64,
    },
    /// Longer is always better: no reason to wind in.
    Never {
        /// Bites per minute that longer and longer waits approach.
        limit: f64,
    },
}

/// Bites per minute of leaving every cast for `minutes`.
pub fn rate_at(law: &impl WaitLaw, costs: Costs, minutes: f64) -> f64 {
    costs.rate(law.bitten_by(minutes), law.mean_until(minutes))
}

/// The best leave time: the highest of all points at which h (M + c) = F, where h is the hazard (d drops out,
/// since 1 / R is (M + c) / F + d), compared with the end of the law.
pub fn best_leave(law: &impl WaitLaw, costs: Costs) -> BestLeave {
    const POINTS: u32 = 4000;
    let typical = law.typical();
    let (first, end) = (typical * 1e-6, law.last().unwrap_or(typical * 1e4));
    let growth = libm::pow(end / first, 1.0 / f64::from(POINTS));
    let at_the_end = rate_at(law, costs, end);
    let mut best: Option<(f64, f64)> = None;
    let mut left = first;
    let mut rising = marginal(law, costs, left) > 0.0;
    for _ in 0..POINTS {
        let right = (left * growth).min(end);
        let still = marginal(law, costs, right) > 0.0;
        if rising && !still && right < end {
            let t = crossing(law, costs, left, right);
            let rate = rate_at(law, costs, t);
            if best.is_none_or(|(_, top)| rate > top) {
                best = Some((t, rate));
            }
        }
        (left, rising) = (right, still);
    }
    let limit = 1.0 / (law.mean() + costs.turn_round_min + costs.bite_extra_min);
    match (best, law.last()) {
        (Some((minutes, rate)), Some(_)) if rate > at_the_end => BestLeave::Interior { minutes, rate },
        (_, Some(minutes)) => BestLeave::AtTheLast { minutes, rate: at_the_end },
        (Some((minutes, rate)), None) if rate > limit => BestLeave::Interior { minutes, rate },
        _ => BestLeave::Never { limit },
    }
}

/// Sign of the slope of R: f (M + c) - F S.
fn marginal(law: &impl WaitLaw, costs: Costs, t: f64) -> f64 {
    let bitten = law.bitten_by(t);
    law.density(t) * (law.mean_until(t) + costs.turn_round_min) - bitten * (1.0 - bitten)
}

fn crossing(law: &impl WaitLaw, costs: Costs, mut left: f64, mut right: f64) -> f64 {
    for _ in 0..200 {
        let mid = 0.5 * (left + right);
        if mid <= left || mid >= right {
            break;
        }
        if marginal(law, costs, mid) > 0.0 { left = mid } else { right = mid }
    }
    0.5 * (left + right)
}

/// Bites per minute if casts are left until each bite time of a Kaplan-Meier curve, in order.
pub fn empirical_rates(curve: &SurvivalCurve, costs: Costs) -> Vec<(f64, f64)> {
    let (mut area, mut last, mut survival) = (0.0, 0.0, 1.0);
    curve
        .steps()
        .iter()
        .map(|step| {
            area += survival * (step.minutes - last);
            (last, survival) = (step.minutes, step.survival);
            (step.minutes, costs.rate(1.0 - step.survival, area))
        })
        .collect()
}

/// The best leave time by the curve itself, which is always at a bite; `None` without bites.
pub fn best_empirical(curve: &SurvivalCurve, costs: Costs) -> Option<(f64, f64)> {
    empirical_rates(curve, costs).into_iter().reduce(|best, next| if next.1 > best.1 { next } else { best })
}

#[cfg(test)]
mod tests {
    use super::super::wait_law::{Law, Lomax, TwoRates, WithNobodyHome};
    use super::*;

    #[test]
    fn the_extra_time_of_a_bite_does_not_move_the_best_time() {
        let law = WithNobodyHome { law: Law::LogNormal { mu: 2.3, sigma: 0.5 }, never: 0.3 };
        let best = |d| match best_leave(&law, Costs::new(2.0, d).unwrap()) {
            BestLeave::Interior { minutes, .. } => minutes,
            other => panic!("{other:?}"),
        };
        assert!((best(0.0) - best(6.0)).abs() < 1e-9);
    }

    #[test]
    fn a_longer_turn_round_makes_longer_waits_best() {
        let law = Lomax { shape: 2.0, scale: 20.0 };
        let best = |c| match best_leave(&law, Costs::new(c, 0.0).unwrap()) {
            BestLeave::Interior { minutes, .. } => minutes,
            other => panic!("{other:?}"),
        };
        assert!(best(1.0) < best(2.0) && best(2.0) < best(5.0));
        // Two constant rates: an early bite or a long wait.
        let mixed = TwoRates { weight: 0.5, first: 0.5, second: 0.005 };
        assert!(matches!(best_leave(&mixed, Costs::new(1.0, 0.0).unwrap()), BestLeave::Interior { .. }));
    }

    #[test]
    fn a_rising_hazard_gives_no_reason_to_wind_in() {
        let law = Law::Gamma { shape: 3.0, rate: 0.2 };
        assert!(matches!(best_leave(&law, Costs::new(2.0, 3.0).unwrap()), BestLeave::Never { .. }));
    }

    #[test]
    fn bad_costs_are_refused() {
        assert!(Costs::new(0.0, 1.0).is_err());
        assert!(Costs::new(2.0, -1.0).is_err());
        assert!(Costs::new(f64::NAN, 1.0).is_err());
    }
}
