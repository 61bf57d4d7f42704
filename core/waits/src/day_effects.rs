//! How much days of one water differ, and how a day effect moves between the shapes of one form.

use libm::exp;

/// Standard deviations of a day's effect on the log scale, each with its prior probability: none at all, a
/// quarter, more than half. A guess, checked by simulation (docs/advice.md).
pub(crate) const SCATTERS: [(f64, f64); 3] = [(0.0, 0.4), (0.25, 0.3), (0.6, 0.3)];
/// Shapes of one form, with their positions on the axes along which a day effect moves.
#[derive(Debug, Clone)]
pub(crate) struct Family {
    /// The first of them.
    pub first: usize,
    /// For each: ln of the rate or ln of the odds of a bite, or both if both can move.
    pub keenness: Vec<[f64; 2]>,
}

impl Family {
    /// The probability that a day moves from each member to each other, row by row, for one scatter.
    fn steps(&self, sd: f64) -> Vec<f32> {
        let n = self.keenness.len();
        let mut rows = Vec::with_capacity(n * n);
        for from in &self.keenness {
            let start = rows.len();
            for to in &self.keenness {
                let (x, y) = ((from[0] - to[0]) / sd, (from[1] - to[1]) / sd);
                rows.push(exp(-0.5 * (x * x + y * y)));
            }
            let sum: f64 = rows[start..].iter().sum();
            for p in &mut rows[start..] {
                *p /= sum;
            }
        }
        rows.into_iter().map(|p| p as f32).collect()
    }
}

/// The transition probabilities of a day effect within every family, by scatter; `None` for no scatter.
#[derive(Debug)]
pub(crate) struct DayEffects(pub(crate) Vec<Option<Vec<Vec<f32>>>>);

impl DayEffects {
    pub(crate) fn new(families: &[Family]) -> Self {
        let of = |(sd, _): &(f64, f64)| {
            (*sd > 0.0).then(|| families.iter().map(|family| family.steps(*sd)).collect())
        };
        Self(SCATTERS.iter().map(of).collect())
    }
}
