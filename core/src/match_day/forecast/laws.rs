//! Laws of the wait drawn from what is known of it.

use super::WaitSurvival;
use crate::bite::{Law, WaitLaw, WaitPosterior};
use crate::compare::chance::Chance;

/// A law drawn from the posterior.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnLaw {
    /// Wait of casts that do get a bite.
    pub law: Law,
    /// Share of casts that never would.
    pub never: f64,
}

impl WaitSurvival for DrawnLaw {
    fn survival(&self, minutes: f64) -> f64 {
        1.0 - (1.0 - self.never) * self.law.bitten_by(minutes)
    }
}

/// Enough laws for ranges that don't move by what was drawn.
pub const LAWS: usize = 200;

/// Draws [`LAWS`] laws from the posterior, each as often as its probability asks, as (times, law).
pub fn drawn_laws(posterior: &WaitPosterior, seed: u64) -> Vec<(f64, DrawnLaw)> {
    let (mut weights, mut laws) = (Vec::new(), Vec::new());
    posterior.each_law(|weight, &law, never| {
        weights.push(weight);
        laws.push(DrawnLaw { law, never });
    });
    let picked = systematic(&weights, LAWS, &mut Chance::new(seed, 2));
    picked.into_iter().map(|(i, times)| (times as f64, laws[i])).collect()
}

/// Systematic draws: (place, times), each place as often as its weight asks, to within one.
pub(super) fn systematic(weights: &[f64], n: usize, chance: &mut Chance) -> Vec<(usize, usize)> {
    let step = weights.iter().sum::<f64>() / n as f64;
    let mut next = step * chance.uniform();
    let (mut so_far, mut drawn) = (0.0, 0);
    let mut picked = Vec::new();
    for (i, weight) in weights.iter().enumerate() {
        so_far += weight;
        let mut times = 0;
        while next < so_far && drawn < n {
            times += 1;
            drawn += 1;
            next += step;
        }
        if times > 0 {
            picked.push((i, times));
        }
    }
    picked
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bite::{Record, Settings, Wait};
    use proptest::prelude::*;

    #[test]
    fn drawn_laws_average_to_the_posterior() {
        let today: Vec<Wait> =
            [(6.0, true), (9.0, true), (12.0, false), (12.0, false), (4.0, true), (11.0, true)]
                .into_iter()
                .map(|(m, b)| Wait::new(m, b).unwrap())
                .collect();
        let posterior = WaitPosterior::new(&Record::of_today(&today), &Settings::default()).unwrap();
        let laws = drawn_laws(&posterior, 1);
        assert_eq!(laws.iter().map(|l| l.0).sum::<f64>(), LAWS as f64);
        for minutes in [5.0, 10.0, 20.0] {
            let drawn = laws.iter().map(|(w, l)| w * l.survival(minutes)).sum::<f64>() / LAWS as f64;
            let exact = posterior.expect(|law, never| 1.0 - (1.0 - never) * law.bitten_by(minutes));
            assert!((drawn - exact).abs() < 0.03, "{minutes}: {drawn} {exact}");
        }
        assert_eq!(laws, drawn_laws(&posterior, 1));
    }

    proptest! {
        #[test]
        fn each_as_often_as_its_weight_asks(
            weights in prop::collection::vec(0.0f64..1.0, 1..30), seed in 0u64..100,
        ) {
            prop_assume!(weights.iter().sum::<f64>() > 0.01);
            let picked = systematic(&weights, 100, &mut Chance::new(seed, 0));
            let total: f64 = weights.iter().sum();
            prop_assert!(picked.iter().map(|p| p.1).sum::<usize>() >= 99);
            for (i, times) in picked {
                prop_assert!((times as f64 - 100.0 * weights[i] / total).abs() <= 1.0 + 1e-9);
            }
        }
    }
}
