//! Multiple comparisons: the more changes are looked at, the likelier one of them looks good by chance.

/// Holm's step-down adjustment (Holm, Scand. J. Statist. 6:65-70, 1979): adjusted p-values in the order
/// given. Rejecting those below 0.05 keeps the chance of any false rejection at 5 %, whatever the dependence
/// between the tests. NaN counts as 1.
pub fn holm(p: &[f64]) -> Vec<f64> {
    let clean = |x: f64| if x.is_nan() { 1.0 } else { x.clamp(0.0, 1.0) };
    let order = restwater_sorting::places(p.len(), &|i, j| clean(p[i]).total_cmp(&clean(p[j])));
    let mut adjusted = vec![1.0; p.len()];
    let mut so_far: f64 = 0.0;
    for (rank, &i) in order.iter().enumerate() {
        so_far = so_far.max(clean(p[i]) * (p.len() - rank) as f64).min(1.0);
        adjusted[i] = so_far;
    }
    adjusted
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// R documentation of p.adjust, method "holm": the rule (n - i + 1) p_(i), running maximum.
    /// Worked by hand: 0.01 x 4, 0.02 x 3, 0.03 x 2, 0.04 x 1 -> 0.04, 0.06, 0.06, 0.06.
    #[test]
    fn a_worked_example() {
        let adjusted = holm(&[0.04, 0.01, 0.03, 0.02]);
        for (x, y) in adjusted.iter().zip([0.06, 0.04, 0.06, 0.06]) {
            assert!((x - y).abs() < 1e-15);
        }
        assert!(holm(&[]).is_empty());
        assert_eq!(holm(&[f64::NAN]), [1.0]);
    }

    proptest! {
        #[test]
        fn adjusted_values_are_never_smaller_and_keep_their_order(p in prop::collection::vec(0.0f64..=1.0, 1..12)) {
            let adjusted = holm(&p);
            for i in 0..p.len() {
                prop_assert!(adjusted[i] >= p[i] - 1e-15 && adjusted[i] <= 1.0);
                for j in 0..p.len() {
                    prop_assert!(p[i] > p[j] || adjusted[i] <= adjusted[j]);
                }
            }
            let smallest = p.iter().copied().fold(1.0, f64::min);
            let least = adjusted.iter().copied().fold(1.0, f64::min);
            prop_assert!((least - (smallest * p.len() as f64).min(1.0)).abs() < 1e-12);
        }
    }
}
