//! A comparison of two rates that may be read at any moment of the day.
//!
//! An ordinary p-value is meant for one look at a number of casts that was fixed in advance. Read after every cast, it falls
//! below 0.05 sooner or later far more often than one time in twenty, and the more casts the more often (Armitage, McPherson and
//! Rowe 1969). The figure here is made for reading all day. Imagine somebody who believes that the rates are equal and offers
//! fair odds on every bite: the figure is the present value of one unit staked against them (an e-value). It seldom becomes large
//! if they are right: it ever reaches 20 with probability 1/20 at most (Ville 1939). One over it is a p-value at every look at
//! once. Ramdas, Grünwald, Vovk and Shafer 2023 (Game-theoretic statistics and safe anytime-valid inference, Statistical Science
//! 38) give the general account; mixtures over the size of the effect go back to Robbins 1970.
//!
//! The bet is on the ratio r of the rates, with a normal prior on ln r about 0. With x bites in all, of which x_A in
//! T_A of T minutes, and the common rate integrated out under its right-Haar prior on both sides,
//!
//!   e = E_r [ r^x_A (T / (r T_A + T_B))^x ],
//!
//! which does not depend on the unit of time. With that prior the bound of Ville holds at looks that do not
//! depend on the unit of time either (Hendriksen, de Heide and Grünwald 2021, on groups and optional
//! stopping); ours are after casts, so what the figure does at several rates and lengths of day is also
//! simulated, below and in `./dev sim`. It assumes constant rates; bites in clumps are handled by the block
//! test.

use super::poisson_rates::Tally;
use libm::{exp, log};

/// Standard deviation of ln r: nineteen ratios in twenty within a factor of seven. A belief, not a fact.
const LN_RATIO_SD: f64 = 1.0;
/// Steps of the mean over r on either side, a tenth of a standard deviation each.
const STEPS: i32 = 45;

/// Anytime-valid p of equal rates: one over the e-value, at most 1. 1 if a side has had no time.
pub fn any_look_p(a: Tally, b: Tally) -> f64 {
    if !(a.time > 0.0 && b.time > 0.0) {
        return 1.0;
    }
    exp(-ln_e_value(a, b)).min(1.0)
}

/// The same if many changes are looked at as they come; `place` is the position of this one, from 1. The
/// error of a day is divided among them, alpha / (k (k + 1)) for the k-th (the sum over all k is alpha), so
/// that however many are still to come, any of them is falsely clear on at most one day in twenty.
/// Multiplying by the number so far would give every new one a full share in addition to those already read.
pub fn any_look_p_in_order(a: Tally, b: Tally, place: usize) -> f64 {
    let k = place.max(1) as f64;
    (k * (k + 1.0) * any_look_p(a, b)).min(1.0)
}

fn ln_e_value(a: Tally, b: Tally) -> f64 {
    ln_mean(Ratios::All, |ln_r| ln_bet(a, b, ln_r))
}

/// Ratios over which the mean is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Ratios {
    /// All.
    All,
    /// Those below one.
    Lower,
    /// Those above one.
    Higher,
}

/// The logarithm of the value of one unit staked on a ratio.
pub(crate) fn ln_bet(a: Tally, b: Tally, ln_r: f64) -> f64 {
    let (x_a, x, share) = (a.bites as f64, (a.bites + b.bites) as f64, a.time / (a.time + b.time));
    x_a * ln_r - x * log(1.0 + share * libm::expm1(ln_r))
}

/// The logarithm of the mean of bets over the ratios, by the prior above or by the half of it on one side.
pub(crate) fn ln_mean(ratios: Ratios, ln_bet: impl Fn(f64) -> f64) -> f64 {
    let (from, to) = match ratios {
        Ratios::All => (-STEPS, STEPS),
        Ratios::Lower => (-STEPS, -1),
        Ratios::Higher => (1, STEPS),
    };
    let terms = || {
        (from..=to).map(|step| {
            let z = 0.1 * f64::from(step);
            let ln_weight = -0.5 * z * z;
            (ln_weight, ln_weight + ln_bet(LN_RATIO_SD * z))
        })
    };
    let top = terms().map(|(_, term)| term).fold(f64::NEG_INFINITY, f64::max);
    let (weights, sum) =
        terms().fold((0.0, 0.0), |(w, s), (ln_weight, term)| (w + exp(ln_weight), s + exp(term - top)));
    top + log(sum / weights)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chance::Chance;
    use proptest::prelude::*;

    fn tally(bites: u64, time: f64) -> Tally {
        Tally { bites, time }
    }

    #[test]
    fn the_error_of_a_day_is_spent_once_however_many_changes_come() {
        let (a, b) = (tally(40, 60.0), tally(2, 60.0));
        let alone = any_look_p(a, b);
        // The shares of the error, over the places where the figure is not cut off at one, never add up to
        // more than the whole.
        let uncut = |place: &usize| any_look_p_in_order(a, b, *place) < 1.0;
        let spent: f64 =
            (1..100_000).take_while(uncut).map(|place| alone / any_look_p_in_order(a, b, place)).sum();
        assert!(alone < 1e-2 && spent > 0.8 && spent < 1.0, "{alone} {spent}");
        assert!((any_look_p_in_order(a, b, 1) - 2.0 * alone).abs() < 1e-12);
        assert!((any_look_p_in_order(a, b, 3) - 12.0 * alone).abs() < 1e-12);
        assert_eq!(any_look_p_in_order(tally(1, 9.0), tally(1, 9.0), 1), 1.0);
    }

    #[test]
    fn without_bites_p_is_one() {
        assert!((any_look_p(tally(0, 50.0), tally(0, 10.0)) - 1.0).abs() < 1e-12);
        assert_eq!(any_look_p(tally(3, 0.0), tally(0, 10.0)), 1.0);
        assert!(any_look_p(tally(900, 10.0), tally(2, 1000.0)) < 1e-100);
    }

    /// The mean over r, computed independently with a finer step and a wider range.
    #[test]
    fn the_mean_over_ratios_is_fine_enough() {
        for (a, b) in [(tally(9, 50.0), tally(2, 60.0)), (tally(40, 90.0), tally(20, 80.0))] {
            let (x_a, x) = (a.bites as f64, (a.bites + b.bites) as f64);
            let (mut sum, mut weights) = (0.0, 0.0);
            for i in -8000..=8000 {
                let z = 0.001 * f64::from(i);
                let r: f64 = exp(LN_RATIO_SD * z);
                let weight = exp(-0.5 * z * z);
                weights += weight;
                sum += weight * exp(x_a * log(r) + x * log((a.time + b.time) / (r * a.time + b.time)));
            }
            assert!((any_look_p(a, b) - (weights / sum).min(1.0)).abs() < 1e-4 * weights / sum);
        }
    }

    /// Invented days, seeded: equal constant rates, sides changed cast by cast, read after every one of 150 casts.
    #[test]
    fn at_equal_rates_p_falls_below_0_05_at_any_look_on_at_most_one_day_in_twenty() {
        let days = 3_000;
        for (mean_wait, leave) in [(2.0, 20.0), (20.0, 20.0), (40.0, 8.0)] {
            let ever = (0..days).filter(|&day| {
                let mut chance = Chance::new(31, day);
                let mut sides = [tally(0, 0.0); 2];
                (0..150).any(|cast| {
                    let bite_at = mean_wait * chance.exponential();
                    let side = &mut sides[cast % 2];
                    side.time += bite_at.min(leave);
                    side.bites += u64::from(bite_at <= leave);
                    any_look_p(sides[0], sides[1]) <= 0.05
                })
            });
            let share = ever.count() as f64 / days as f64;
            // The bound is not far from the true rate either: at least a tenth of it is reached.
            assert!(share <= 0.05 && share > 0.005, "{share} at {mean_wait}");
        }
    }

    proptest! {
        #[test]
        fn sides_and_unit_of_time_do_not_matter(x in 0u64..60, y in 0u64..60, t in 1.0f64..300.0, u in 1.0f64..300.0) {
            let p = any_look_p(tally(x, t), tally(y, u));
            prop_assert!(p > 0.0 && p <= 1.0);
            prop_assert!((p - any_look_p(tally(y, u), tally(x, t))).abs() < 1e-9);
            prop_assert!((p - any_look_p(tally(x, 60.0 * t), tally(y, 60.0 * u))).abs() < 1e-9);
        }
    }
}
