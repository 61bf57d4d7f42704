//! The posterior as a short list of laws with weights, for whoever plays days forward.

use super::posterior::law;
use super::{Law, WaitPosterior, WithNobodyHome};

impl WaitPosterior {
    /// At most `most` laws that stand for the posterior: systematic picks at equal steps of its weight, so
    /// each law comes as often as its weight asks, to within one. Weights sum to 1; the same posterior gives
    /// the same list.
    pub fn laws(&self, most: usize) -> Vec<(f64, WithNobodyHome<Law>)> {
        let step = 1.0 / most.max(1) as f64;
        let (mut so_far, mut next) = (0.0, 0.5 * step);
        let mut picked: Vec<(f64, WithNobodyHome<Law>)> = Vec::new();
        let laid = self.laid();
        for (grid, share) in laid.grids.iter().zip(&laid.shares) {
            for node in &grid.nodes {
                for i in node.first..node.last {
                    so_far += share * grid.weights[i];
                    let mut weight = 0.0;
                    while next < so_far {
                        weight += step;
                        next += step;
                    }
                    if weight > 0.0 {
                        let law = law(grid.piece.family, node);
                        picked.push((weight, WithNobodyHome { law, never: grid.shares[i] }));
                    }
                }
            }
        }
        picked
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Record, Settings, Wait, WaitLaw, WaitPosterior};

    #[test]
    fn a_few_hundred_laws_say_what_the_whole_posterior_says() {
        let waits: Vec<Wait> = (1..14).map(|i| Wait::new(f64::from(i) * 1.7, i % 3 != 0).unwrap()).collect();
        let posterior = WaitPosterior::new(&Record::of_today(&waits), &Settings::default()).unwrap();
        let laws = posterior.laws(300);
        assert!(laws.len() <= 300);
        assert!((laws.iter().map(|l| l.0).sum::<f64>() - 1.0).abs() < 0.01);
        for minutes in [3.0, 10.0, 25.0] {
            let whole = posterior.expect(|law, p| (1.0 - p) * law.bitten_by(minutes));
            let few: f64 = laws.iter().map(|(w, law)| w * law.bitten_by(minutes)).sum();
            assert!((whole - few).abs() < 0.01, "{minutes}: {whole} {few}");
        }
    }
}
