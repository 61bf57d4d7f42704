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
    /// How many follow one another that differ in the odds alone, before the rate changes.
    pub row: usize,
}

/// The probability that a day moves from each place to each other, row by row, for every scatter but the first, which is 0.
#[derive(Debug, Clone)]
struct Steps {
    places: Vec<[f64; 2]>,
    of: [Vec<f64>; SCATTERS.len() - 1],
}

impl Steps {
    fn new(places: Vec<[f64; 2]>) -> Self {
        let of = std::array::from_fn(|i| steps(&places, SCATTERS[i + 1].0));
        Self { places, of }
    }
}

fn steps(places: &[[f64; 2]], sd: f64) -> Vec<f64> {
    let mut rows = Vec::with_capacity(places.len() * places.len());
    for from in places {
        let start = rows.len();
        for to in places {
            let (x, y) = ((from[0] - to[0]) / sd, (from[1] - to[1]) / sd);
            rows.push(exp(-0.5 * (x * x + y * y)));
        }
        let sum: f64 = rows[start..].iter().sum();
        rows[start..].iter_mut().for_each(|p| *p /= sum);
    }
    rows
}

/// A family, and the steps by which a day moves within a row and from row to row. A step in both has the product of the two
/// weights.
#[derive(Debug, Clone)]
struct Within {
    first: usize,
    count: usize,
    row: usize,
    steps: [usize; 2],
}

/// The transition probabilities of a day effect within every family. Most families have the same places, whose steps are kept
/// once.
#[derive(Debug, Clone)]
pub(crate) struct DayEffects {
    steps: Vec<Steps>,
    families: Vec<Within>,
}

impl DayEffects {
    pub(crate) fn new(families: &[Family]) -> Self {
        let mut effects = Self { steps: Vec::new(), families: Vec::new() };
        for family in families {
            let (keenness, row) = (&family.keenness, family.row);
            let along = effects.steps_of(keenness[..row].to_vec());
            let across = effects.steps_of(keenness.iter().step_by(row).copied().collect());
            effects.families.push(Within {
                first: family.first,
                count: keenness.len(),
                row,
                steps: [along, across],
            });
        }
        effects
    }

    fn steps_of(&mut self, places: Vec<[f64; 2]>) -> usize {
        self.steps.iter().position(|steps| steps.places == places).unwrap_or_else(|| {
            self.steps.push(Steps::new(places));
            self.steps.len() - 1
        })
    }

    /// For each shape, the mean of `values` over the shapes to which a day effect may take it.
    pub(crate) fn means(&self, scatter: usize, values: &[f64]) -> Vec<f64> {
        let mut out = values.to_vec();
        self.apply(scatter, &mut out, |steps, n, from, to| steps[from * n + to]);
        out
    }

    /// Moves weights by the day effect.
    pub(crate) fn moved(&self, scatter: usize, weights: Vec<f64>) -> Vec<f64> {
        let mut out = weights;
        self.apply(scatter, &mut out, |steps, n, from, to| steps[to * n + from]);
        out
    }

    /// Each value becomes a sum over those of its row, and then over those in its place in the other rows.
    fn apply(&self, scatter: usize, values: &mut [f64], step: impl Fn(&[f64], usize, usize, usize) -> f64) {
        let Some(scatter) = scatter.checked_sub(1) else { return };
        for family in &self.families {
            let [along, across] = family.steps.map(|steps| &self.steps[steps].of[scatter]);
            let values = &mut values[family.first..][..family.count];
            let (n, rows) = (family.row, family.count / family.row);
            for row in values.chunks_mut(n) {
                let before = row.to_vec();
                for (i, value) in row.iter_mut().enumerate() {
                    *value = before.iter().enumerate().map(|(j, v)| step(along, n, i, j) * v).sum();
                }
            }
            if rows > 1 {
                let before = values.to_vec();
                for (i, row) in values.chunks_mut(n).enumerate() {
                    row.fill(0.0);
                    for (j, from) in before.chunks(n).enumerate() {
                        let step = step(across, rows, i, j);
                        row.iter_mut().zip(from).for_each(|(value, v)| *value += step * v);
                    }
                }
            }
        }
    }
}

#[cfg(test)]
mod tests;
