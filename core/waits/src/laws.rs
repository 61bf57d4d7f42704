//! The posterior as a short weighted list of laws, for simulating days.

use super::WaitPosterior;
use super::fed::FedShapes;
use super::shapes::{POINTS, Shapes, between};
use std::sync::Arc;

/// One of the shapes of the wait that the posterior weighs.
#[derive(Debug, Clone)]
pub struct ShapeLaw {
    shapes: Arc<Shapes>,
    own: Option<Arc<FedShapes>>,
    shape: usize,
}

impl ShapeLaw {
    /// Share of casts with a bite by this many minutes.
    pub fn bitten_by(&self, minutes: f64) -> f64 {
        let bitten = self.own.as_ref().map_or(&self.shapes.bitten, |own| &own.bitten);
        between(&bitten[self.shape * POINTS..][..POINTS], self.shapes.place(minutes.max(0.0)))
    }
}

impl WaitPosterior {
    /// At most `most` shapes that represent the posterior behind the advice. They are a systematic sample at
    /// equal steps of cumulative weight, so each occurs in proportion to its weight to within one. The same
    /// record gives the same list.
    pub fn laws(&self, most: usize) -> Vec<(f64, ShapeLaw)> {
        let step = 1.0 / most.max(1) as f64;
        let (mut so_far, mut next) = (0.0, 0.5 * step);
        let mut picked = Vec::new();
        let derived = self.derived();
        for &(shape, weight) in &derived.likely {
            so_far += f64::from(weight);
            let mut weight = 0.0;
            while next < so_far {
                weight += step;
                next += step;
            }
            if weight > 0.0 {
                let own = derived.own.clone();
                picked.push((weight, ShapeLaw { shapes: Arc::clone(&self.shapes), own, shape }));
            }
        }
        picked
    }
}

#[cfg(test)]
mod tests {
    use super::super::{CurveKind, Record, Settings, Wait, WaitPosterior};

    #[test]
    fn a_few_hundred_laws_represent_the_posterior_of_the_advice() {
        let waits: Vec<Wait> = (1..14).map(|i| Wait::new(f64::from(i) * 1.7, i % 3 != 0).unwrap()).collect();
        let posterior = WaitPosterior::new(&Record::of_today(&waits), &Settings::default()).unwrap();
        let laws = posterior.laws(300);
        assert!(laws.len() <= 300);
        assert!((laws.iter().map(|l| l.0).sum::<f64>() - 1.0).abs() < 0.01);
        let times = [3.0, 10.0, 25.0];
        let shown = posterior.curve(CurveKind::Survival, &times, 0.9).unwrap();
        for (minutes, shown) in times.into_iter().zip(shown) {
            let few: f64 = laws.iter().map(|(w, law)| w * law.bitten_by(minutes)).sum();
            assert!((1.0 - shown.mean - few).abs() < 0.01, "{minutes}: {} {few}", 1.0 - shown.mean);
        }
    }
}
