//! How many laws stand for a posterior, and drawing places as often as their weights ask.

use restwater_compare::chance::Chance;

/// Enough laws for ranges that don't move by what was drawn.
pub const LAWS: usize = 200;

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
    use proptest::prelude::*;

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
