//! Landed against lost: Fisher's exact test of a two by two table.

use super::binomial::{Alternative, TIE_SLACK};
use super::error::CompareError;
use super::tails::ln_choose;

/// Counts of two groups and two outcomes: `[[landed_a, lost_a], [landed_b, lost_b]]`.
pub type TwoByTwo = [[u64; 2]; 2];

/// The first cell given all margins if the groups don't differ: the hypergeometric law.
struct Conditional {
    low: u64,
    observed: u64,
    /// ln weight of each value from `low` up.
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

    /// Probability of each value.
    fn probabilities(&self) -> Vec<f64> {
        let top = self.ln_weights.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let weights: Vec<f64> = self.ln_weights.iter().map(|l| libm::exp(l - top)).collect();
        let total: f64 = weights.iter().sum();
        weights.into_iter().map(|w| w / total).collect()
    }

    fn place(&self) -> usize {
        (self.observed - self.low) as usize
    }

    fn at_least(&self) -> f64 {
        self.probabilities()[self.place()..].iter().sum::<f64>().min(1.0)
    }

    fn at_most(&self) -> f64 {
        self.probabilities()[..=self.place()].iter().sum::<f64>().min(1.0)
    }
}

/// p-value of Fisher's exact test. Two-sided: all tables no likelier than the observed one (as R's
/// fisher.test). A table with an empty margin gives 1. (Fisher, The Design of Experiments, 1935.)
pub fn fisher_test(table: TwoByTwo, alternative: Alternative) -> Result<f64, CompareError> {
    let law = Conditional::new(table)?;
    Ok(match alternative {
        Alternative::Greater => law.at_least(),
        Alternative::Less => law.at_most(),
        Alternative::TwoSided => {
            let p = law.probabilities();
            let limit = p[law.place()] * TIE_SLACK;
            p.iter().filter(|&&q| q <= limit).sum::<f64>().min(1.0)
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn empty_margins_give_a_p_of_one() {
        assert_eq!(fisher_test([[0, 0], [3, 4]], Alternative::TwoSided), Ok(1.0));
    }

    proptest! {
        #[test]
        fn swapping_groups_changes_nothing(a in 0u64..12, b in 0u64..12, c in 0u64..12, d in 0u64..12) {
            let (table, swapped) = ([[a, b], [c, d]], [[c, d], [a, b]]);
            let p = fisher_test(table, Alternative::TwoSided).unwrap();
            prop_assert!((0.0..=1.0).contains(&p));
            prop_assert!((p - fisher_test(swapped, Alternative::TwoSided).unwrap()).abs() < 1e-9);
        }
    }
}
