//! Scores of claims: chances of something that happens or doesn't, and forecast numbers.

use super::super::share::Share;
use crate::second_methods::negative_binomial::bites_to_come;
use restwater_match_day::forecast::Forecast;
use statrs::distribution::Discrete;

/// The forecaster to beat: bites are a Poisson count, and the prior of its rate is worth one bite in 20
/// minutes.
const GAMMA_BEFORE: [f64; 2] = [1.0, 20.0];
/// Bins of the histogram of ranks.
pub const PARTS: usize = 5;
/// Chances are scored as if none were nearer to 0 or 1 than this.
const SUREST: f64 = 1e-4;

/// Chances, and how often the event happened.
#[derive(Debug, Clone, Copy, Default)]
pub struct Chances {
    /// Claimed.
    pub claimed: Share,
    /// Came.
    pub came: Share,
    /// Sum of -ln of the probability given to what happened.
    score: f64,
}

impl Chances {
    /// One chance.
    pub fn add(&mut self, chance: f64, came: bool) {
        self.claimed.add(chance, 1.0);
        self.came.add(f64::from(u8::from(came)), 1.0);
        let given = if came { chance } else { 1.0 - chance };
        self.score -= given.clamp(SUREST, 1.0).ln();
    }

    /// Claimed minus observed.
    pub fn off(&self) -> f64 {
        self.claimed.value() - self.came.value()
    }

    /// Whether there are enough casts to distinguish five points from zero.
    pub fn tells(&self) -> bool {
        self.came.days() >= 100.0 && self.came.error() <= 0.02
    }

    /// The total loss, in nats, relative to somebody who knows how often it happens.
    pub fn lost(&self) -> f64 {
        let p = self.came.value();
        let part = |p: f64| if p > 0.0 { -p * p.ln() } else { 0.0 };
        if self.came.days() == 0.0 { 0.0 } else { self.score - self.came.days() * (part(p) + part(1.0 - p)) }
    }
}

/// Forecast numbers of bites, and those that came.
#[derive(Debug, Clone, Default)]
pub struct Coming {
    /// Whether the range contained the number.
    pub held: Share,
    /// How probable that is by the forecast itself: numbers are whole, so more than eight in ten.
    pub nominal: Share,
    /// Forecast mean divided by the number that came.
    pub mean: Share,
    /// Continuous ranked probability score divided by that of the gamma-Poisson forecaster (Gneiting and
    /// Raftery 2007).
    pub crps: Share,
    /// Where the numbers fell within the forecast, in bins that should be equal (Czado, Gneiting and Held
    /// 2009).
    pub parts: [f64; PARTS],
}

impl Coming {
    /// One forecast, made `clock` minutes into a day with `bites` so far.
    pub fn add(&mut self, foretold: &Forecast, came: usize, bites: usize, clock: f64, ahead: f64) {
        let below = below(&foretold.bite_counts, came.max(foretold.bites.high as usize) + 2);
        let (low, high) = (foretold.bites.low as usize, foretold.bites.high as usize);
        self.held.add(f64::from(u8::from((low..=high).contains(&came))), 1.0);
        self.nominal.add(below[high + 1] - below[low], 1.0);
        self.mean.add(foretold.mean_bites, came as f64);
        for part in 0..PARTS {
            let edge = |i: usize| within(i as f64 / PARTS as f64, below[came], below[came + 1]);
            self.parts[part] += edge(part + 1) - edge(part);
        }
        let [shape, rate] = GAMMA_BEFORE;
        if let Some(simple) = bites_to_come(shape + bites as f64, rate + clock, ahead) {
            let counts: Vec<f64> =
                (0..foretold.bite_counts.len().max(came + 1) as u64 + 40).map(|k| simple.pmf(k)).collect();
            self.crps.add(crps(&foretold.bite_counts, came), crps(&counts, came));
        }
    }
}

/// How far `level` is on the way from `low` to `high`.
fn within(level: f64, low: f64, high: f64) -> f64 {
    if high > low { ((level - low) / (high - low)).clamp(0.0, 1.0) } else { f64::from(u8::from(level > low)) }
}

/// Chance of fewer than each number, from zero on.
fn below(counts: &[f64], many: usize) -> Vec<f64> {
    let mut sum = 0.0;
    let mut all = vec![0.0];
    for k in 0..many {
        sum += counts.get(k).copied().unwrap_or(0.0);
        all.push(sum.min(1.0));
    }
    all
}

/// Continuous ranked probability score of a count.
fn crps(counts: &[f64], came: usize) -> f64 {
    let below = below(counts, counts.len().max(came + 1));
    (0..below.len() - 1).map(|k| (below[k + 1] - f64::from(u8::from(came <= k))).powi(2)).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_chance_that_is_right_loses_nothing() {
        let mut chances = Chances::default();
        for i in 0..100 {
            chances.add(0.25, i % 4 == 0);
        }
        assert!(chances.off().abs() < 1e-12 && chances.lost().abs() < 1e-9);
        let mut wrong = Chances::default();
        for i in 0..100 {
            wrong.add(0.5, i % 4 == 0);
        }
        // Relative entropy of a quarter with respect to a half.
        let lost = 0.25 * 0.5_f64.ln() + 0.75 * 1.5_f64.ln();
        assert!((wrong.lost() / 100.0 - lost).abs() < 1e-9);
    }

    /// By hand: 0, 1 and 2 with probabilities of a half, a quarter and a quarter.
    #[test]
    fn the_ranked_score_is_a_sum_over_thresholds() {
        let counts = [0.5, 0.25, 0.25];
        assert!((crps(&counts, 0) - (0.25 + 0.0625)).abs() < 1e-12);
        assert!((crps(&counts, 2) - (0.25 + 0.5625)).abs() < 1e-12);
        assert!((crps(&counts, 4) - (0.25 + 0.5625 + 1.0 + 1.0)).abs() < 1e-12);
    }

    #[test]
    fn a_rank_is_spread_over_the_parts_that_a_number_covers() {
        let spread: Vec<f64> = (0..5)
            .map(|i| within(f64::from(i + 1) / 5.0, 0.5, 0.7) - within(f64::from(i) / 5.0, 0.5, 0.7))
            .collect();
        for (found, wanted) in spread.iter().zip([0.0, 0.0, 0.5, 0.5, 0.0]) {
            assert!((found - wanted).abs() < 1e-9, "{spread:?}");
        }
    }
}
