//! Casts in pairs, each with or without a bite: the safe test of two proportions.
//!
//! The casts of a stratum are paired in order, the first of A with the first of B. If both have the same
//! chance of a bite, whatever it is and however it changes from pair to pair, then for any two chances a and
//! b chosen beforehand
//!
//!   p_a(y_A) p_b(y_B) / (p_m(y_A) p_m(y_B)),  m = (a + b) / 2,
//!
//! is a fair bet or worse (Turner, Ly and Grünwald 2024, Generic e-variables for exact sequential k-sample
//! tests, with one cast a side in each block). The odds of a and b differ by the ratio r, over which the mean
//! is taken last; their middle is the proportion in the earlier pairs.

use super::curve::{Curve, ln_product};
use libm::exp;

/// A pair of casts: whether that of A had a bite, and that of B.
pub(super) type Pair = [bool; 2];

/// The present value of one unit staked against "they are alike".
pub(super) fn e_value<'a>(days: impl Iterator<Item = &'a [Pair]>) -> f64 {
    let (mut bites, mut casts) = (0.5, 1.0);
    let mut bets: Vec<(Pair, f64)> = Vec::new();
    for pair in days.flatten() {
        bets.push((*pair, bites / (casts - bites)));
        bites += pair.iter().filter(|bite| **bite).count() as f64;
        casts += 2.0;
    }
    let paid = |u: f64| {
        let lean = exp(0.5 * u);
        ln_product(bets.iter().map(|(pair, odds)| pays(*pair, *odds, lean)))
    };
    exp(Curve::of(paid).ln_e_value())
}

/// What the bet on one ratio pays; `odds` are the odds of a bite in the middle between the two sides, and
/// `lean` is the square root of the ratio.
fn pays(pair: Pair, odds: f64, lean: f64) -> f64 {
    let chance = |odds: f64| odds / (1.0 + odds);
    let (a, b) = (chance(odds * lean), chance(odds / lean));
    let middle = 0.5 * (a + b);
    let of = |p: f64, bite: bool| if bite { p } else { 1.0 - p };
    of(a, pair[0]) * of(b, pair[1]) / (of(middle, pair[0]) * of(middle, pair[1]))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Over all four outcomes: whatever the common chance is, the mean payment of any bet is at most one.
    #[test]
    fn the_bet_on_a_pair_is_fair_or_worse_whatever_the_chance_of_a_bite() {
        for p in [0.01, 0.2, 0.5, 0.8, 0.99_f64] {
            for (odds, u) in [(0.3, 1.0), (1.0, -0.7), (4.0, 2.5), (9.0, -3.0)] {
                let outcomes = [[false, false], [false, true], [true, false], [true, true]];
                let chance =
                    |pair: Pair| -> f64 { pair.iter().map(|b| if *b { p } else { 1.0 - p }).product() };
                let mean: f64 =
                    outcomes.iter().map(|pair| chance(*pair) * pays(*pair, odds, exp(0.5 * u))).sum();
                assert!(mean <= 1.0 + 1e-12 && mean > 0.2, "{mean} at {p}, {odds}, {u}");
            }
        }
    }

    #[test]
    fn more_pairs_that_differ_in_one_direction_pay_more() {
        let grown = |pairs: &[Pair]| e_value([pairs].into_iter());
        let (one_way, both_ways) = (vec![[true, false]; 12], [[true, false], [false, true]].repeat(6));
        assert!(grown(&one_way) > 20.0 && grown(&both_ways) < 1.0);
        assert!((grown(&one_way) - grown(&[[false, true]; 12])).abs() < 1e-9 * grown(&one_way));
        assert!((grown(&[]) - 1.0).abs() < 1e-12);
    }
}
