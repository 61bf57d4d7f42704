//! Permutation p-values: how often a random assignment of the same outcomes to the sides would look as
//! striking. All arrangements are used if they are few, seeded draws if they are many.

use super::chance::Chance;
use super::error::CompareError;
use restwater_waits::Wait;

/// Up to this many arrangements, all are enumerated; beyond that, `DRAWS` are drawn.
const ALL_UP_TO: u64 = 100_000;
/// Draws of the Monte Carlo version; the observed arrangement counts as one more.
const DRAWS: u32 = 9_999;

/// Units (casts, or blocks of casts) of one stratum, each with its score; the first `on_a` are on side A.
/// Labels are permuted only within a stratum.
#[derive(Debug, Clone, PartialEq)]
pub struct Stratum {
    /// Scores, those of side A first.
    pub scores: Vec<f64>,
    /// How many of them are on side A.
    pub on_a: usize,
}

/// A permutation p-value of the sum of scores on side A.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PermutationP {
    /// The observed sum of scores on side A.
    pub observed: f64,
    /// Share of arrangements at least as far from zero, observed one included.
    pub two_sided: f64,
    /// Share with a sum at most the observed one.
    pub lower: f64,
    /// Share with a sum at least the observed one.
    pub upper: f64,
    /// Number of arrangements used.
    pub arrangements: u64,
    /// True when these are all arrangements; false when they were drawn.
    pub all: bool,
}

/// Which arrangements were at least as extreme.
#[derive(Default)]
struct Count {
    two_sided: u64,
    lower: u64,
    upper: u64,
    arrangements: u64,
}

impl Count {
    fn take(&mut self, sum: f64, observed: f64, slack: f64) {
        self.arrangements += 1;
        self.two_sided += u64::from(sum.abs() >= observed.abs() - slack);
        self.lower += u64::from(sum <= observed + slack);
        self.upper += u64::from(sum >= observed - slack);
    }

    fn share(&self, observed: f64, all: bool) -> PermutationP {
        let n = self.arrangements as f64;
        PermutationP {
            observed,
            two_sided: self.two_sided as f64 / n,
            lower: self.lower as f64 / n,
            upper: self.upper as f64 / n,
            arrangements: self.arrangements,
            all,
        }
    }
}

/// Number of ways to choose `k` of `n`, `None` beyond 2^63.
pub fn arrangements(n: usize, k: usize) -> Option<u64> {
    let k = k.min(n.checked_sub(k)?);
    let mut total: u128 = 1;
    for i in 0..k {
        total = total * (n - i) as u128 / (i + 1) as u128;
        if total > i64::MAX as u128 {
            return None;
        }
    }
    u64::try_from(total).ok()
}

/// Permutation p of the sum of scores on side A, permuting labels within each stratum. Exact up to 100,000
/// arrangements, otherwise 9,999 seeded draws with the observed arrangement added (Phipson and Smyth 2010),
/// so that p is never 0. Sums within rounding of the observed one count as ties with it.
pub fn permutation_p(strata: &[Stratum], seed: u64) -> Result<PermutationP, CompareError> {
    for stratum in strata {
        if stratum.on_a > stratum.scores.len() {
            let (successes, trials) = (stratum.on_a as u64, stratum.scores.len() as u64);
            return Err(CompareError::MoreThanAll { successes, trials });
        }
        if let Some(&bad) = stratum.scores.iter().find(|s| !s.is_finite()) {
            return Err(CompareError::NotATime(bad));
        }
    }
    let all =
        strata.iter().try_fold(1u64, |product, s| product.checked_mul(arrangements(s.scores.len(), s.on_a)?));
    let observed = strata.iter().map(|s| s.scores[..s.on_a].iter().sum::<f64>()).sum();
    match all {
        Some(n) if n <= ALL_UP_TO => Ok(every(strata, observed)),
        _ => Ok(drawn(strata, observed, seed)),
    }
}

/// Rounding slack for ties of sums of these scores.
fn slack(strata: &[Stratum]) -> f64 {
    1e-10 * strata.iter().flat_map(|s| &s.scores).map(|x| x.abs()).sum::<f64>()
}

fn every(strata: &[Stratum], observed: f64) -> PermutationP {
    let slack = slack(strata);
    let mut sums = vec![0.0];
    for stratum in strata {
        let mut here = Vec::new();
        each_choice(stratum.scores.len(), stratum.on_a, |chosen| {
            here.push(chosen.iter().map(|&i| stratum.scores[i]).sum::<f64>());
        });
        sums = sums.iter().flat_map(|s| here.iter().map(move |h| s + h)).collect();
    }
    let mut count = Count::default();
    for sum in sums {
        count.take(sum, observed, slack);
    }
    count.share(observed, true)
}

fn drawn(strata: &[Stratum], observed: f64, seed: u64) -> PermutationP {
    let slack = slack(strata);
    let mut chance = Chance::new(seed, 0);
    let mut count = Count::default();
    count.take(observed, observed, slack);
    let mut decks: Vec<Vec<f64>> = strata.iter().map(|s| s.scores.clone()).collect();
    for _ in 0..DRAWS {
        let mut sum = 0.0;
        for (deck, stratum) in decks.iter_mut().zip(strata) {
            // Only the first `on_a` places need to be drawn.
            for i in 0..stratum.on_a {
                let j = i + chance.below(deck.len() - i);
                deck.swap(i, j);
                sum += deck[i];
            }
        }
        count.take(sum, observed, slack);
    }
    count.share(observed, false)
}

/// Calls `take` with every choice of `k` of 0..n, in lexicographic order.
fn each_choice(n: usize, k: usize, mut take: impl FnMut(&[usize])) {
    let mut chosen: Vec<usize> = (0..k).collect();
    loop {
        take(&chosen);
        let Some(i) = (0..k).rev().find(|&i| chosen[i] < n - k + i) else { return };
        chosen[i] += 1;
        for j in i + 1..k {
            chosen[j] = chosen[j - 1] + 1;
        }
    }
}

/// Log-rank scores of pooled waits: bite (1 or 0) less the pooled Nelson-Aalen cumulative hazard at its end, bites at the
/// same time taken together (mid-ranks; Callaert 2003). They add up to zero, and the sum over one side is its observed
/// less expected bites.
pub fn log_rank_scores(waits: &[Wait]) -> Vec<f64> {
    let order = restwater_sorting::places(waits.len(), &|i, j| {
        waits[i].minutes().total_cmp(&waits[j].minutes()).then(waits[j].is_bite().cmp(&waits[i].is_bite()))
    });
    let mut scores = vec![0.0; waits.len()];
    let mut hazard = 0.0;
    let mut start = 0;
    while start < order.len() {
        let minutes = waits[order[start]].minutes();
        let tied = order[start..].iter().take_while(|&&i| waits[i].minutes() == minutes).count();
        let bites = order[start..start + tied].iter().filter(|&&i| waits[i].is_bite()).count();
        let out = order.len() - start;
        hazard += bites as f64 / out as f64;
        for &i in &order[start..start + tied] {
            scores[i] = if waits[i].is_bite() { 1.0 - hazard } else { -hazard };
        }
        start += tied;
    }
    scores
}

#[cfg(test)]
mod tests {
    use super::super::log_rank::log_rank;
    use super::*;
    use proptest::prelude::*;

    fn wait(minutes: f64, bite: bool) -> Wait {
        Wait::new(minutes, bite).unwrap()
    }

    #[test]
    fn numbers_of_arrangements() {
        assert_eq!(arrangements(15, 7), Some(6435));
        assert_eq!(arrangements(3, 4), None);
        assert_eq!(arrangements(0, 0), Some(1));
        assert_eq!(arrangements(2_000, 1_000), None);
    }

    #[test]
    fn impossible_strata_are_refused() {
        assert!(permutation_p(&[Stratum { scores: vec![1.0], on_a: 2 }], 1).is_err());
        assert!(permutation_p(&[Stratum { scores: vec![f64::NAN], on_a: 1 }], 1).is_err());
    }

    #[test]
    fn the_drawn_p_comes_near_the_exact_one() {
        let strata = [
            Stratum { scores: vec![1.3, -0.4, 0.9, -1.1, 0.2, -0.9], on_a: 3 },
            Stratum { scores: vec![0.7, 0.1, -0.5, -0.3, 0.6, -0.6], on_a: 3 },
        ];
        let exact = permutation_p(&strata, 1).unwrap();
        assert!(exact.all && exact.arrangements == 400);
        let drawn = drawn(&strata, exact.observed, 1);
        let error = (exact.two_sided * (1.0 - exact.two_sided) / f64::from(DRAWS)).sqrt();
        assert!((drawn.two_sided - exact.two_sided).abs() < 5.0 * error);
        assert_eq!(drawn, super::drawn(&strata, exact.observed, 1));
    }

    /// All 2^n ways of labelling, those with the right number on A kept.
    fn brute(scores: &[f64], on_a: usize) -> (f64, f64, f64) {
        let observed: f64 = scores[..on_a].iter().sum();
        let (mut two, mut low, mut high, mut n) = (0.0, 0.0, 0.0, 0.0);
        for mask in 0u32..1 << scores.len() {
            if mask.count_ones() as usize != on_a {
                continue;
            }
            let sum: f64 =
                scores.iter().enumerate().filter(|(i, _)| mask >> i & 1 == 1).map(|(_, s)| s).sum();
            n += 1.0;
            two += f64::from(u8::from(sum.abs() >= observed.abs() - 1e-9));
            low += f64::from(u8::from(sum <= observed + 1e-9));
            high += f64::from(u8::from(sum >= observed - 1e-9));
        }
        (two / n, low / n, high / n)
    }

    proptest! {
        #[test]
        fn the_exact_p_agrees_with_brute_force(
            scores in prop::collection::vec(-8i32..8, 2..11), share in 0.0f64..1.0,
        ) {
            let scores: Vec<f64> = scores.into_iter().map(|s| f64::from(s) / 4.0).collect();
            let on_a = (scores.len() as f64 * share) as usize;
            let (two, low, high) = brute(&scores, on_a);
            let p = permutation_p(&[Stratum { scores, on_a }], 0).unwrap();
            prop_assert!(p.all);
            prop_assert!((p.two_sided - two).abs() < 1e-12);
            prop_assert!((p.lower - low).abs() < 1e-12);
            prop_assert!((p.upper - high).abs() < 1e-12);
        }

        #[test]
        fn scores_add_up_to_zero_and_sides_to_the_excess(
            list in prop::collection::vec((0u32..40, any::<bool>()), 2..30), cut in 1usize..29,
        ) {
            let waits: Vec<Wait> = list.iter().map(|&(q, e)| wait(f64::from(q) / 2.0, e)).collect();
            let cut = cut.min(waits.len() - 1);
            let scores = log_rank_scores(&waits);
            prop_assert!(scores.iter().sum::<f64>().abs() < 1e-9);
            let test = log_rank(&waits[..cut], &waits[cut..]).unwrap();
            prop_assert!((scores[..cut].iter().sum::<f64>() - test.excess()).abs() < 1e-9);
        }
    }
}
