//! The share of casts still without a bite after each minute, with no shape assumed (Kaplan-Meier).
//!
//! Conventions: at equal times bites come before casts wound in; a quantile is the smallest time at
//! which the curve is at or below the level (R's `quantile` averages where S is exactly one half).

use super::error::open_share;
use super::special::normal_quantile;
use super::{BiteError, Wait};

/// One bite time of the curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// Minutes from the splash.
    pub minutes: f64,
    /// Casts still waiting just before.
    pub at_risk: usize,
    /// Bites at this time.
    pub bites: usize,
    /// Kaplan-Meier estimate of the share still without a bite after it.
    pub survival: f64,
    /// Variance of ln S: Greenwood's sum of d / (n (n - d)) up to here, or its version for clusters; infinite
    /// once the curve reaches zero.
    pub greenwood_sum: f64,
}

/// How limits for the curve are made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Limits {
    /// On the scale of ln(-ln S): stays within 0..1 and is the better of the two in small samples
    /// (Kalbfleisch and Prentice; Borgan and Liestol 1990).
    #[default]
    LogLog,
    /// S plus or minus z standard errors, cut to 0..1.
    Plain,
}

/// Kaplan-Meier curve of a set of waits (Kaplan and Meier 1958; Greenwood 1926).
#[derive(Debug, Clone, PartialEq)]
pub struct SurvivalCurve {
    steps: Vec<Step>,
    waits: usize,
    longest: f64,
}

impl SurvivalCurve {
    /// The curve of `waits`, in any order. Sorts once; O(n log n).
    pub fn new(waits: &[Wait]) -> Result<Self, BiteError> {
        if waits.is_empty() {
            return Err(BiteError::NoWaits);
        }
        let keys = sorted_keys(waits);
        let longest = keys.last().map_or(0.0, |&key| minutes_of(key));
        Ok(Self { steps: steps(&keys), waits: waits.len(), longest })
    }

    /// The same curve with limits that allow for casts of one cluster (an hour, say) being alike: `clusters`
    /// names the cluster of each wait. The variance of ln S is the sum over clusters of the squared influence
    /// of their casts, times G / (G - 1) for G clusters (Ying and Wei 1994; the infinitesimal jackknife of
    /// R's survfit), and never below Greenwood's, to which it is equal if every cast is a cluster. With fewer
    /// than two clusters it is Greenwood's.
    pub fn in_clusters(waits: &[Wait], clusters: &[usize]) -> Result<Self, BiteError> {
        let mut curve = Self::new(waits)?;
        let count = clusters.iter().max().map_or(0, |last| last + 1);
        if count < 2 || clusters.len() != waits.len() {
            return Ok(curve);
        }
        let mut influence = vec![0.0; count];
        let order =
            restwater_sorting::places(waits.len(), &|i, j| waits[i].minutes().total_cmp(&waits[j].minutes()));
        let mut out: Vec<usize> = vec![0; count];
        for &cluster in clusters {
            out[cluster] += 1;
        }
        let mut gone = order.iter().peekable();
        for step in &mut curve.steps {
            while let Some(&&i) = gone.peek().filter(|&&&i| waits[i].minutes() < step.minutes) {
                out[clusters[i]] -= 1;
                gone.next();
            }
            let (n, d) = (step.at_risk as f64, step.bites as f64);
            // A cast that is still out adds d / (n (n - d)) if it has no bite at this time, and -1 / n if it
            // has.
            let term = d / (n * (n - d));
            influence.iter_mut().zip(&out).for_each(|(sum, out)| *sum += term * *out as f64);
            for &i in gone.clone().take_while(|&&i| waits[i].minutes() == step.minutes) {
                if waits[i].is_bite() {
                    influence[clusters[i]] -= term + 1.0 / n;
                }
            }
            let squares: f64 = influence.iter().map(|x| x * x).sum();
            step.greenwood_sum = step.greenwood_sum.max(squares * count as f64 / (count as f64 - 1.0));
        }
        Ok(curve)
    }

    /// The bite times in order.
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }

    /// How many waits the curve is computed from.
    pub fn waits(&self) -> usize {
        self.waits
    }

    /// The longest wait, with or without a bite, in minutes. Beyond it nothing is known.
    pub fn longest_min(&self) -> f64 {
        self.longest
    }

    /// Share still without a bite after `minutes`.
    pub fn survival_at(&self, minutes: f64) -> f64 {
        let after = self.steps.partition_point(|s| s.minutes <= minutes);
        after.checked_sub(1).map_or(1.0, |i| self.steps[i].survival)
    }

    /// Smallest bite time by which a share `p` of casts has had its bite; `None` if the curve doesn't fall
    /// that far.
    pub fn quantile(&self, p: f64) -> Option<f64> {
        self.first_at_or_below(1.0 - p, |step| Some(step.survival))
    }

    /// Limits of the quantile: where the limits of the curve cross the level (Brookmeyer and Crowley
    /// 1982). An end that isn't reached is `None`.
    pub fn quantile_limits(
        &self,
        p: f64,
        kind: Limits,
        level: f64,
    ) -> Result<(Option<f64>, Option<f64>), BiteError> {
        let z = two_sided_z(level)?;
        let low = self.first_at_or_below(1.0 - p, |step| step.limits(kind, z).map(|(low, _)| low));
        let high = self.first_at_or_below(1.0 - p, |step| step.limits(kind, z).map(|(_, high)| high));
        Ok((low, high))
    }

    /// Pointwise limits at every step; `None` if the curve is at zero and they are undefined.
    pub fn limits(&self, kind: Limits, level: f64) -> Result<Vec<Option<(f64, f64)>>, BiteError> {
        let z = two_sided_z(level)?;
        Ok(self.steps.iter().map(|step| step.limits(kind, z)).collect())
    }

    fn first_at_or_below(&self, level: f64, of: impl Fn(&Step) -> Option<f64>) -> Option<f64> {
        // Products of ratios have rounding errors, but a level that is reached exactly must count as reached.
        let level = level + 1e-9;
        self.steps.iter().find(|step| of(step).is_some_and(|s| s <= level)).map(|step| step.minutes)
    }
}

impl Step {
    /// Greenwood's standard error of the survival; `None` if the curve is at zero.
    pub fn standard_error(&self) -> Option<f64> {
        (self.at_risk > self.bites).then(|| self.survival * self.greenwood_sum.sqrt())
    }

    fn limits(&self, kind: Limits, z: f64) -> Option<(f64, f64)> {
        let error = self.standard_error()?;
        Some(match kind {
            Limits::Plain => ((self.survival - z * error).max(0.0), (self.survival + z * error).min(1.0)),
            Limits::LogLog => {
                let hazard = -libm::log(self.survival);
                let spread = libm::exp(z * self.greenwood_sum.sqrt() / hazard);
                (libm::exp(-hazard * spread), libm::exp(-hazard / spread))
            }
        })
    }
}

fn two_sided_z(level: f64) -> Result<f64, BiteError> {
    open_share("the confidence level", level).map(|level| normal_quantile(0.5 + 0.5 * level))
}

/// Times as integers that sort as the times do, with a last bit that puts bites first.
fn sorted_keys(waits: &[Wait]) -> Vec<u64> {
    // Adding zero turns a minus zero, whose bits would sort last, into zero.
    let mut keys: Vec<u64> =
        waits.iter().map(|w| (w.minutes() + 0.0).to_bits() << 1 | u64::from(!w.is_bite())).collect();
    keys.sort_unstable();
    keys
}

fn minutes_of(key: u64) -> f64 {
    f64::from_bits(key >> 1)
}

fn steps(keys: &[u64]) -> Vec<Step> {
    let mut out = Vec::with_capacity(keys.iter().filter(|key| *key & 1 == 0).count());
    let (mut survival, mut greenwood_sum) = (1.0, 0.0);
    let mut i = 0;
    while i < keys.len() {
        let key = keys[i];
        if key & 1 == 1 {
            i += 1;
            continue;
        }
        let at_risk = keys.len() - i;
        let bites = keys[i..].iter().take_while(|&&k| k == key).count();
        i += bites;
        let (n, d) = (at_risk as f64, bites as f64);
        survival *= (n - d) / n;
        greenwood_sum += d / (n * (n - d));
        out.push(Step { minutes: minutes_of(key), at_risk, bites, survival, greenwood_sum });
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn waits(list: &[(f64, bool)]) -> Vec<Wait> {
        list.iter().map(|&(m, b)| Wait::new(m, b).unwrap()).collect()
    }

    #[test]
    fn no_waits_is_an_error() {
        assert_eq!(SurvivalCurve::new(&[]), Err(BiteError::NoWaits));
    }

    #[test]
    fn without_bites_the_curve_stays_at_one() {
        let curve = SurvivalCurve::new(&waits(&[(5.0, false), (9.0, false)])).unwrap();
        assert_eq!(curve.steps().len(), 0);
        assert_eq!(curve.survival_at(9.0), 1.0);
        assert_eq!(curve.quantile(0.5), None);
    }

    #[test]
    fn at_equal_times_bites_come_before_winding_in() {
        let curve = SurvivalCurve::new(&waits(&[(4.0, false), (4.0, true)])).unwrap();
        assert_eq!(curve.steps()[0].at_risk, 2);
        assert_eq!(curve.survival_at(4.0), 0.5);
    }

    #[test]
    fn minus_zero_sorts_as_zero() {
        let curve = SurvivalCurve::new(&waits(&[(-0.0, true), (3.0, true)])).unwrap();
        assert_eq!(curve.longest_min(), 3.0);
        assert_eq!(curve.survival_at(0.0), 0.5);
    }

    /// If every cast is a cluster, the sum of squared influences is Greenwood's (as in R's survfit); two
    /// identical casts in one cluster count as one.
    #[test]
    fn clusters_of_one_give_greenwoods_sum_and_twins_count_once() {
        let list = [
            (6.0, true),
            (6.0, true),
            (6.0, false),
            (7.0, true),
            (9.0, false),
            (10.0, true),
            (13.0, true),
            (16.0, false),
        ];
        let waits = waits(&list);
        let alone: Vec<usize> = (0..waits.len()).collect();
        let plain = SurvivalCurve::new(&waits).unwrap();
        let single = SurvivalCurve::in_clusters(&waits, &alone).unwrap();
        for (a, b) in plain.steps().iter().zip(single.steps()) {
            assert!((8.0 / 7.0 * a.greenwood_sum - b.greenwood_sum).abs() < 1e-12, "{a:?} {b:?}");
        }
        let twice: Vec<Wait> = waits.iter().chain(&waits).copied().collect();
        let pairs: Vec<usize> = alone.iter().chain(&alone).copied().collect();
        let twins = SurvivalCurve::in_clusters(&twice, &pairs).unwrap();
        for (a, b) in single.steps().iter().zip(twins.steps()) {
            assert!(
                (a.greenwood_sum - b.greenwood_sum).abs() < 1e-12 && (a.survival - b.survival).abs() < 1e-12
            );
        }
        assert_eq!(SurvivalCurve::in_clusters(&waits, &[0; 8]).unwrap(), plain);
    }

    fn any_waits() -> impl Strategy<Value = Vec<Wait>> {
        proptest::collection::vec((0u32..40, any::<bool>()), 1..60)
            .prop_map(|v| v.iter().map(|&(m, b)| Wait::new(f64::from(m), b).unwrap()).collect())
    }

    proptest! {
        #[test]
        fn the_curve_falls_and_stays_within_its_limits(waits in any_waits()) {
            let curve = SurvivalCurve::new(&waits).unwrap();
            let mut last = 1.0;
            for (step, limits) in curve.steps().iter().zip(curve.limits(Limits::LogLog, 0.95).unwrap()) {
                prop_assert!(step.survival <= last);
                last = step.survival;
                if let Some((low, high)) = limits {
                    prop_assert!(0.0 <= low && low <= step.survival && step.survival <= high && high <= 1.0);
                }
            }
        }

        #[test]
        fn seconds_give_sixty_times_minutes(waits in any_waits()) {
            let seconds: Vec<Wait> =
                waits.iter().map(|w| Wait::new(w.minutes() * 60.0, w.is_bite()).unwrap()).collect();
            let (a, b) = (SurvivalCurve::new(&waits).unwrap(), SurvivalCurve::new(&seconds).unwrap());
            prop_assert_eq!(a.quantile(0.5).map(|t| t * 60.0), b.quantile(0.5));
        }

        #[test]
        fn the_order_of_the_casts_does_not_matter(waits in any_waits()) {
            let mut turned = waits.clone();
            turned.reverse();
            prop_assert_eq!(SurvivalCurve::new(&waits).unwrap(), SurvivalCurve::new(&turned).unwrap());
        }
    }
}
