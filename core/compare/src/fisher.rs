//! Landed against lost: Fisher's exact test of a two by two table.

use super::binomial::{Alternative, Limits, TIE_SLACK};
use super::error::{CompareError, inner_probability};
use super::tails::ln_choose;

/// Counts of two groups and two outcomes: `[[landed_a, lost_a], [landed_b, lost_b]]`.
pub type TwoByTwo = [[u64; 2]; 2];

/// The first cell given all margins, under any odds ratio: Fisher's noncentral hypergeometric law.
struct Conditional {
    low: u64,
    observed: u64,
    /// ln weight at odds ratio 1 of each value from `low` up.
    ln_weights: Vec<f64>,
}

/// Largest support that is added up value by value.
const MOST_VALUES: u64 = 100_000;
/// Largest count in a cell, so that margins can't overflow.
const LARGEST_CELL: u64 = 1 << 40;

impl Conditional {
    fn new(table: TwoByTwo) -> Result<Self, CompareError> {
        let [[a, b], [c, d]] = table;
        if let Some(&huge) = [a, b, c, d].iter().find(|&&n| n > LARGEST_CELL) {
            return Err(CompareError::TooMany(huge));
        }
        let (row, other, column) = (a + b, c + d, a + c);
        let low = column.saturating_sub(other);
        let high = row.min(column);
        if high - low > MOST_VALUES {
            return Err(CompareError::TooMany(high - low));
        }
        let ln_weights = (low..=high)
            .map(|x| ln_choose(row as f64, x as f64) + ln_choose(other as f64, (column - x) as f64))
            .collect();
        Ok(Self { low, observed: a, ln_weights })
    }

    /// Probability of each value at this ln odds ratio.
    fn probabilities(&self, ln_odds: f64) -> Vec<f64> {
        let logs: Vec<f64> = self
            .ln_weights
            .iter()
            .enumerate()
            .map(|(i, w)| w + (self.low + i as u64) as f64 * ln_odds)
            .collect();
        let top = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let weights: Vec<f64> = logs.iter().map(|l| libm::exp(l - top)).collect();
        let total: f64 = weights.iter().sum();
        weights.into_iter().map(|w| w / total).collect()
    }

    fn place(&self) -> usize {
        (self.observed - self.low) as usize
    }

    fn at_least(&self, ln_odds: f64) -> f64 {
        self.probabilities(ln_odds)[self.place()..].iter().sum::<f64>().min(1.0)
    }

    fn at_most(&self, ln_odds: f64) -> f64 {
        self.probabilities(ln_odds)[..=self.place()].iter().sum::<f64>().min(1.0)
    }

    fn mean(&self, ln_odds: f64) -> f64 {
        self.probabilities(ln_odds).iter().enumerate().map(|(i, p)| (self.low + i as u64) as f64 * p).sum()
    }

    fn lowest(&self) -> bool {
        self.place() == 0
    }

    fn highest(&self) -> bool {
        self.place() + 1 == self.ln_weights.len()
    }
}

/// p-value of Fisher's exact test. Two-sided: all tables no likelier than the observed one (as R's
/// fisher.test). A table with an empty margin gives 1. (Fisher, The Design of Experiments, 1935.)
pub fn fisher_test(table: TwoByTwo, alternative: Alternative) -> Result<f64, CompareError> {
    let law = Conditional::new(table)?;
    Ok(match alternative {
        Alternative::Greater => law.at_least(0.0),
        Alternative::Less => law.at_most(0.0),
        Alternative::TwoSided => {
            let p = law.probabilities(0.0);
            let limit = p[law.place()] * TIE_SLACK;
            p.iter().filter(|&&q| q <= limit).sum::<f64>().min(1.0)
        }
    })
}

/// Odds ratio of a two by two table, conditional on its margins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OddsRatio {
    /// Conditional maximum likelihood estimate; infinite when the observed table is the extreme one,
    /// `None` when the margins allow one table only.
    pub estimate: Option<f64>,
    /// Exact limits from the two one-sided tests.
    pub limits: Limits,
}

/// Conditional maximum likelihood odds ratio with exact limits at `confidence` (Fisher, JRSS
/// 98:39-54, 1935; Cornfield 1956; as R's fisher.test).
pub fn odds_ratio(table: TwoByTwo, confidence: f64) -> Result<OddsRatio, CompareError> {
    let tail = 0.5 * (1.0 - inner_probability(confidence)?);
    let law = Conditional::new(table)?;
    let low = if law.lowest() { 0.0 } else { root(|u| law.at_least(u) - tail) };
    let high = if law.highest() { f64::INFINITY } else { root(|u| tail - law.at_most(u)) };
    let estimate = match (law.lowest(), law.highest()) {
        (true, true) => None,
        (true, false) => Some(0.0),
        (false, true) => Some(f64::INFINITY),
        (false, false) => Some(root(|u| law.mean(u) - law.observed as f64)),
    };
    Ok(OddsRatio { estimate, limits: Limits { low, high } })
}

/// exp of the zero of a rising function of the ln odds ratio.
fn root(f: impl Fn(f64) -> f64) -> f64 {
    super::tails::crossing_above_zero(1.0, 0.0, |odds| f(libm::log(odds)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn empty_margins_give_a_p_of_one() {
        assert_eq!(fisher_test([[0, 0], [3, 4]], Alternative::TwoSided), Ok(1.0));
        let ratio = odds_ratio([[0, 0], [3, 4]], 0.95).unwrap();
        assert_eq!(ratio.estimate, None);
        assert_eq!(ratio.limits, Limits { low: 0.0, high: f64::INFINITY });
    }

    #[test]
    fn the_extreme_table_has_an_open_limit() {
        let ratio = odds_ratio([[4, 0], [0, 4]], 0.95).unwrap();
        assert_eq!(ratio.estimate, Some(f64::INFINITY));
        assert_eq!(ratio.limits.high, f64::INFINITY);
        assert!(ratio.limits.low > 1.0);
    }

    proptest! {
        #[test]
        fn swapping_groups_inverts_the_odds(a in 0u64..12, b in 0u64..12, c in 0u64..12, d in 0u64..12) {
            let (table, swapped) = ([[a, b], [c, d]], [[c, d], [a, b]]);
            let p = fisher_test(table, Alternative::TwoSided).unwrap();
            prop_assert!((0.0..=1.0).contains(&p));
            prop_assert!((p - fisher_test(swapped, Alternative::TwoSided).unwrap()).abs() < 1e-9);
            let (one, two) = (odds_ratio(table, 0.95).unwrap(), odds_ratio(swapped, 0.95).unwrap());
            if let (Some(x), Some(y)) = (one.estimate, two.estimate)
                && x > 0.0 && x.is_finite()
            {
                prop_assert!((x * y - 1.0).abs() < 1e-9);
                prop_assert!(one.limits.contains(x));
                prop_assert!((one.limits.low * two.limits.high - 1.0).abs() < 1e-8);
            }
        }
    }
}
