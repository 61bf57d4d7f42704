//! Curves to draw: posterior mean by waiting time, with pointwise credible bands.

use super::error::{open_share, positive};
use super::shapes::between;
use super::{BiteError, WaitPosterior};

/// Which curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CurveKind {
    /// Share of casts still without a bite.
    Survival,
    /// Share of the casts still waiting at this time that get a bite within the next minute.
    NextMinute,
    /// Bites per hour if every cast is left this long.
    Rate,
}

/// One point of a curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CurvePoint {
    /// Minutes from the splash.
    pub minutes: f64,
    /// Posterior mean.
    pub mean: f64,
    /// Lower end of the credible band at this time.
    pub low: f64,
    /// Upper end.
    pub high: f64,
}

impl WaitPosterior {
    /// A curve at the given waiting times, each with an equal-tailed credible interval of that level.
    pub fn curve(&self, kind: CurveKind, times: &[f64], level: f64) -> Result<Vec<CurvePoint>, BiteError> {
        let tail = 0.5 * (1.0 - open_share("the credible level", level)?);
        let mut values: Vec<(f64, f64)> = Vec::new();
        let mut out = Vec::with_capacity(times.len());
        for &minutes in times {
            positive("a waiting time of a curve", minutes)?;
            let mean = self.spread(kind, minutes, &mut values);
            values.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
            let total: f64 = values.iter().map(|v| v.1).sum();
            let end = |share: f64| quantile(&values, share * total).unwrap_or(mean);
            out.push(CurvePoint { minutes, mean, low: end(tail), high: end(1.0 - tail) });
        }
        Ok(out)
    }

    /// Fills `values` with (value, weight) of every likely shape at one time, and returns the mean.
    fn spread(&self, kind: CurveKind, minutes: f64, values: &mut Vec<(f64, f64)>) -> f64 {
        values.clear();
        let (shapes, costs, derived) = (&self.shapes, self.costs, self.derived());
        let rows = self.rows(derived.own.as_deref());
        let (here, next) = (shapes.place(minutes), shapes.place(minutes + 1.0));
        let (mut sum, mut weights) = (0.0, 0.0);
        for &(shape, weight) in &derived.likely {
            let (weight, bitten) = (f64::from(weight), between(rows.bitten(shape), here));
            let still = (1.0 - bitten).max(1e-12);
            let (value, counts) = match kind {
                CurveKind::Survival => (still, weight),
                // Only casts still waiting count.
                CurveKind::NextMinute => {
                    ((between(rows.bitten(shape), next) - bitten) / still, weight * still)
                }
                CurveKind::Rate => (60.0 * costs.rate(bitten, between(rows.waiting(shape), here)), weight),
            };
            sum += counts * value;
            weights += counts;
            values.push((value, counts));
        }
        sum / weights.max(1e-300)
    }
}

/// The value at which the cumulative weight of sorted values reaches `target`.
fn quantile(values: &[(f64, f64)], target: f64) -> Option<f64> {
    let mut sum = 0.0;
    for &(value, weight) in values {
        sum += weight;
        if sum >= target {
            return Some(value);
        }
    }
    values.last().map(|v| v.0)
}

#[cfg(test)]
mod tests {
    use super::super::Wait;
    use super::super::record::{Record, Settings};
    use super::*;

    #[test]
    fn curves_are_within_their_bands_and_survival_falls() {
        let waits: Vec<Wait> = (1..12).map(|i| Wait::new(f64::from(i) * 2.3, i % 3 != 0).unwrap()).collect();
        let posterior = WaitPosterior::new(&Record::of_today(&waits), &Settings::default()).unwrap();
        let times: Vec<f64> = (1..40).map(f64::from).collect();
        for kind in [CurveKind::Survival, CurveKind::NextMinute, CurveKind::Rate] {
            let curve = posterior.curve(kind, &times, 0.9).unwrap();
            for point in &curve {
                assert!(point.low <= point.mean && point.mean <= point.high, "{kind:?} {point:?}");
                assert!(point.low >= 0.0);
            }
        }
        let survival = posterior.curve(CurveKind::Survival, &times, 0.9).unwrap();
        assert!(survival.windows(2).all(|w| w[1].mean <= w[0].mean + 1e-6 && w[1].low <= w[0].low + 1e-6));
        let planned =
            1.0 - super::super::leave_time::at(&posterior.means().times, &posterior.means().bitten, 10.0);
        assert!((survival[9].mean - planned).abs() < 1e-3, "{} {planned}", survival[9].mean);
        let next = posterior.curve(CurveKind::NextMinute, &times, 0.9).unwrap();
        let share = (survival[9].mean - survival[10].mean) / survival[9].mean;
        assert!((next[9].mean - share).abs() < 1e-3, "{} {share}", next[9].mean);
        assert!(posterior.curve(CurveKind::Rate, &[0.0], 0.9).is_err());
        assert!(posterior.curve(CurveKind::Rate, &[1.0], 1.0).is_err());
    }
}
