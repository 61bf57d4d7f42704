//! Whether waits changed over the day: a rank trend for censored waits.

use super::chance::Chance;
use super::error::CompareError;
use super::permutation::{TiedBites, log_rank_scores};
use restwater_waits::Wait;

/// Up to this many casts every order is looked at (5,040 orders).
const ALL_UP_TO: usize = 7;
/// Orders drawn beyond that.
const DRAWS: u32 = 5_000;

/// A trend of the waits over the order of the casts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trend {
    /// Correlation of log-rank score and place in time: above 0 bites come readier later in the day.
    pub correlation: f64,
    /// Two-sided permutation p.
    pub p: f64,
    /// Whether all orders were looked at.
    pub all: bool,
}

/// Log-rank scores of the waits (censored ones included) against the rank of their time of day: the score
/// test of a proportional-hazards model in the rank of time, its p by permutation of the casts. `None` where
/// the times or the waits are all alike.
pub fn rank_trend(at_min: &[f64], waits: &[Wait], seed: u64) -> Result<Option<Trend>, CompareError> {
    if let Some(bad) = at_min.iter().find(|t| !t.is_finite()) {
        return Err(CompareError::NotATime(*bad));
    }
    if at_min.is_empty() || at_min.len() != waits.len() {
        return Err(CompareError::EmptyGroup);
    }
    let scores = log_rank_scores(waits, TiedBites::Together);
    Ok(permuted_correlation(&ranks(at_min), &scores, seed))
}

/// Ranks from 1, mean ranks at ties.
fn ranks(values: &[f64]) -> Vec<f64> {
    let below = |v: f64| values.iter().filter(|x| **x < v).count() as f64;
    let same = |v: f64| values.iter().filter(|x| **x == v).count() as f64;
    values.iter().map(|&v| below(v) + 0.5 * (same(v) + 1.0)).collect()
}

/// Correlation of two lists and its two-sided permutation p: every order of a short list, drawn orders
/// (the observed one counted among them) of a longer one.
fn permuted_correlation(x: &[f64], y: &[f64], seed: u64) -> Option<Trend> {
    let (x, y) = (centred(x), centred(y));
    let spread = (x.iter().map(|v| v * v).sum::<f64>() * y.iter().map(|v| v * v).sum::<f64>()).sqrt();
    if spread.is_nan() || spread <= 1e-12 {
        return None;
    }
    let product = |deck: &[usize]| -> f64 { deck.iter().zip(&x).map(|(&i, v)| v * y[i]).sum() };
    let mut deck: Vec<usize> = (0..x.len()).collect();
    let observed = product(&deck);
    let limit = observed.abs() * (1.0 - 1e-9);
    let (mut striking, mut total) = (0_u32, 0_u32);
    let mut take = |deck: &[usize]| {
        striking += u32::from(product(deck).abs() >= limit);
        total += 1;
    };
    let all = x.len() <= ALL_UP_TO;
    if all {
        every_order(&mut deck, 0, &mut take);
    } else {
        take(&deck);
        let mut chance = Chance::new(seed, 0);
        for _ in 0..DRAWS {
            chance.shuffle(&mut deck);
            take(&deck);
        }
    }
    Some(Trend { correlation: observed / spread, p: f64::from(striking) / f64::from(total), all })
}

fn centred(values: &[f64]) -> Vec<f64> {
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    values.iter().map(|v| v - mean).collect()
}

fn every_order(deck: &mut [usize], from: usize, take: &mut impl FnMut(&[usize])) {
    if from == deck.len() {
        return take(deck);
    }
    for i in from..deck.len() {
        deck.swap(from, i);
        every_order(deck, from + 1, take);
        deck.swap(from, i);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// R's `cor.test(x, y, method = "spearman", exact = TRUE)`; with ranks on both sides this is Spearman's test.
    #[test]
    fn with_ranks_it_is_the_exact_test_of_spearman() {
        let x = [1.0, 2.0, 3.0, 4.0, 5.0];
        let up = permuted_correlation(&x, &x, 1).unwrap();
        assert!(up.all && (up.correlation - 1.0).abs() < 1e-12);
        assert!((up.p - 2.0 / 120.0).abs() < 1e-12);
        let one_swap = permuted_correlation(&x, &[2.0, 1.0, 3.0, 4.0, 5.0], 1).unwrap();
        assert!((one_swap.correlation - 0.9).abs() < 1e-12);
        assert!((one_swap.p - 10.0 / 120.0).abs() < 1e-12);
    }

    #[test]
    fn waits_that_shorten_are_a_rising_trend_and_drawn_orders_repeat() {
        let at: Vec<f64> = (0..12).map(|i| 20.0 * f64::from(i)).collect();
        let waits: Vec<Wait> = (0..12).map(|i| Wait::new(20.0 - f64::from(i), i != 0).unwrap()).collect();
        let trend = rank_trend(&at, &waits, 3).unwrap().unwrap();
        assert!(!trend.all && trend.correlation > 0.8 && trend.p < 0.01, "{trend:?}");
        assert_eq!(rank_trend(&at, &waits, 3), Ok(Some(trend)));
    }

    #[test]
    fn waits_all_alike_have_no_trend_and_bad_input_is_refused() {
        let same = vec![Wait::new(9.0, false).unwrap(); 5];
        assert_eq!(rank_trend(&[0.0, 1.0, 2.0, 3.0, 4.0], &same, 1), Ok(None));
        assert!(rank_trend(&[], &[], 1).is_err());
        assert!(rank_trend(&[f64::NAN], &same[..1], 1).is_err());
    }
}
