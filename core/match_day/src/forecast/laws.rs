//! How many laws represent a posterior, and drawing indices in proportion to weights.

use restwater_compare::chance::Chance;

/// Enough laws that the ranges hardly depend on the draw.
pub const LAWS: usize = 200;

/// Systematic sampling: (index, times), each index in proportion to its weight to within one.
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
        fn each_index_is_drawn_in_proportion_to_its_weight(
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
