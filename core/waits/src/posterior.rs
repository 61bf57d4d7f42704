//! The wait posterior: exponential, Weibull, log-normal and gamma waits, each with and without a share
//! of casts that would never get a bite, averaged by their evidence.

use super::evidence::{Evidence, WeighedWaits};
use super::grid::{Grid, Node};
use super::laplace::{Family, Piece};
use super::leave_time::Means;
use super::record::{Accuracy, Record, Settings, checked_pace};
use super::renewal::Costs;
use super::shapes::Shapes;
use super::wait_law::Law;
use super::{Advice, BiteError, LeavePlan, Wait, WaitingOn};
use libm::{exp, log};
use std::sync::{Arc, OnceLock};

/// Entries below this weight are left out of sums over leave times; together they have less than 1 in 1,000.
const NEGLIGIBLE: f64 = 1e-7;

/// Pieces whose evidence is this far below the best, in ln, are left out: a share below 1 in 60,000.
const HOPELESS: f64 = 11.0;

/// One of the models the posterior averages over.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ModelShare {
    /// Which law.
    pub model: super::Model,
    /// Whether every cast would get a bite in the end: the model has no share of casts that never would.
    pub somebody_always: bool,
    /// Posterior probability.
    pub probability: f64,
    /// ln of its evidence, the prior weight of the model not included.
    pub ln_evidence: f64,
}

/// What is known about waits after a record. The order of the casts matters only as far as the day may have changed.
///
/// Advice comes from the plan, which is updated cast by cast. The wait distributions are computed only on
/// demand, so that a tap does not pay for curves that nobody looks at.
#[derive(Debug, Clone)]
pub struct WaitPosterior {
    settings: Settings,
    costs: Costs,
    waits: WeighedWaits,
    /// Computed from the waits on first use, like the distributions.
    evidence: OnceLock<Evidence>,
    /// Longest wait of the whole record.
    longest_min: f64,
    pub(crate) plan: LeavePlan,
    grids: OnceLock<GridSet>,
}

/// The pieces of the posterior, each on its grid.
#[derive(Debug, Clone)]
pub(crate) struct GridSet {
    pub(crate) grids: Vec<Grid>,
    /// Posterior probability of each grid.
    pub(crate) shares: Vec<f64>,
    ln_evidence: f64,
}

impl WaitPosterior {
    /// The posterior of a record.
    pub fn new(record: &Record, settings: &Settings) -> Result<Self, BiteError> {
        Self::with_shapes(record, settings, Shapes::usual())
    }

    /// The posterior with other beliefs about shapes before the first cast.
    pub fn with_shapes(record: &Record, settings: &Settings, shapes: Arc<Shapes>) -> Result<Self, BiteError> {
        settings.check()?;
        let costs = record.costs()?;
        let waits = record.weighed_waits()?;
        let counted = record.earlier.iter().filter(|day| day.weight > 0.0).flat_map(|day| day.waits);
        let longest = record.today.iter().chain(counted).map(|w| w.minutes()).fold(0.0, f64::max);
        Ok(Self {
            settings: *settings,
            costs,
            waits,
            evidence: OnceLock::new(),
            longest_min: longest,
            plan: LeavePlan::with_shapes(record, settings, shapes)?,
            grids: OnceLock::new(),
        })
    }

    /// Adds a finished cast of today that was not in fed water.
    pub fn add(&mut self, wait: Wait) {
        self.add_by_feed(wait, false);
    }

    /// Adds a finished cast of today.
    pub fn add_by_feed(&mut self, wait: Wait, fed: bool) {
        self.plan.add_by_feed(wait, fed);
        self.waits.add(wait, 1.0);
        self.evidence = OnceLock::new();
        self.longest_min = self.longest_min.max(wait.minutes());
        self.grids = OnceLock::new();
    }

    /// Updates what a cast costs besides its wait, and the habit, both in minutes.
    pub fn set_pace(
        &mut self,
        turn_round_min: f64,
        bite_extra_min: f64,
        habit_min: Option<f64>,
    ) -> Result<(), BiteError> {
        let costs = checked_pace(turn_round_min, bite_extra_min, habit_min)?;
        self.costs = costs;
        // The refinement of a grid depends on the rates.
        self.grids = OnceLock::new();
        self.plan.set_pace(costs, habit_min);
        Ok(())
    }

    /// Advice on the next cast: see [`LeavePlan::advice`].
    pub fn advice(&self) -> Advice {
        self.plan.advice()
    }

    /// Whether to leave a cast in that has waited `so_far` minutes: see [`LeavePlan::waiting_on`].
    pub fn waiting_on(&self, so_far: f64) -> Result<WaitingOn, BiteError> {
        self.plan.waiting_on(so_far)
    }

    /// ln of the probability density of the record under priors and models together.
    pub fn ln_evidence(&self) -> f64 {
        self.grids().ln_evidence
    }

    /// The models with their posterior probabilities.
    pub fn models(&self) -> Vec<ModelShare> {
        let of = |(grid, &probability): (&Grid, &f64)| ModelShare {
            model: match grid.piece.family {
                Family::Exponential => super::Model::Exponential,
                Family::Weibull => super::Model::Weibull,
                Family::LogNormal => super::Model::LogNormal,
                Family::Gamma => super::Model::Gamma,
            },
            somebody_always: !grid.piece.never,
            probability,
            ln_evidence: grid.ln_evidence,
        };
        let GridSet { grids, shares, .. } = self.grids();
        grids.iter().zip(shares).map(of).collect()
    }

    /// Posterior mean of a function of the law of the wait and the never-bite share.
    pub fn expect(&self, of: impl Fn(&Law, f64) -> f64) -> f64 {
        let mut sum = 0.0;
        self.each_law(|weight, law, never| sum += weight * of(law, never));
        sum
    }

    /// Calls `take` with every law of the posterior: its probability, the law of the wait of casts that
    /// do get a bite, and the share that never would.
    pub fn each_law(&self, mut take: impl FnMut(f64, &Law, f64)) {
        let GridSet { grids, shares, .. } = self.grids();
        for (grid, share) in grids.iter().zip(shares) {
            for node in &grid.nodes {
                let law = law(grid.piece.family, node);
                for i in node.first..node.last {
                    let weight = share * grid.weights[i];
                    if weight > 0.0 {
                        take(weight, &law, grid.shares[i]);
                    }
                }
            }
        }
    }

    /// The grids of this record, built when first needed.
    pub(crate) fn grids(&self) -> &GridSet {
        self.grids.get_or_init(|| match self.settings.accuracy {
            Accuracy::Refined => self.refined(),
            accuracy => self.build(accuracy),
        })
    }

    fn evidence(&self) -> &Evidence {
        self.evidence.get_or_init(|| self.waits.evidence())
    }

    fn refined(&self) -> GridSet {
        let mut built = self.build(Accuracy::Refined);
        let mut before = self.answer(&built, Accuracy::Refined);
        for finer in [Accuracy::Fine, Accuracy::Finest] {
            built = self.build(finer);
            let after = self.answer(&built, finer);
            let moved = before.iter().zip(&after).any(|(a, b)| (a - b).abs() > 0.005 * b.abs());
            if !moved {
                break;
            }
            before = after;
        }
        built
    }

    /// The figures that refinement must not change: the best rate, and the ends of the band.
    fn answer(&self, built: &GridSet, accuracy: Accuracy) -> [f64; 3] {
        let band = super::leave_time::band(&self.means(built, accuracy), self.settings.near_best);
        [band.best_rate, band.from, band.until.unwrap_or(f64::MAX)]
    }

    fn build(&self, accuracy: Accuracy) -> GridSet {
        let priors = self.settings.priors;
        let families = [Family::Exponential, Family::Weibull, Family::LogNormal, Family::Gamma];
        let mut aims: Vec<(f64, Grid)> = Vec::new();
        let models = families.into_iter().zip(priors.models).zip(priors.somebody_always);
        for ((family, model_weight), always) in models {
            for never in [false, true] {
                let weight = model_weight * if never { 1.0 - always } else { always };
                if weight > 0.0 {
                    let grid = Grid::aim(Piece { family, never }, &priors, self.evidence());
                    aims.push((log(weight / priors.models.iter().sum::<f64>()), grid));
                }
            }
        }
        let most = aims.iter().map(|(w, g)| w + g.ln_evidence).fold(f64::NEG_INFINITY, f64::max);
        aims.retain(|(w, g)| w + g.ln_evidence > most - HOPELESS);
        let mut grids = Vec::with_capacity(aims.len());
        let mut ln_weights = Vec::new();
        for (weight, aim) in aims {
            let grid = aim.refined(&priors, self.evidence(), accuracy.fineness());
            ln_weights.push(weight + grid.ln_evidence);
            grids.push(grid);
        }
        let top = ln_weights.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let sum: f64 = ln_weights.iter().map(|l| exp(l - top)).sum();
        let shares = ln_weights.iter().map(|l| exp(l - top) / sum).collect();
        GridSet { grids, shares, ln_evidence: top + log(sum) }
    }

    /// The leave times considered, closer together where they are short.
    fn times(&self, count: usize) -> Vec<f64> {
        let end = self.settings.horizon_min.max((1.5 * self.longest_min).min(240.0));
        (1..=count)
            .map(|i| {
                let u = i as f64 / count as f64;
                end * u * u.sqrt()
            })
            .collect()
    }

    /// Posterior means by leave time.
    pub(crate) fn means(&self, built: &GridSet, accuracy: Accuracy) -> Means {
        let times = self.times(accuracy.times());
        let n = times.len();
        let ln_times: Vec<f64> = times.iter().map(|&t| log(t)).collect();
        let mut means = Means {
            times: times.clone(),
            rate: vec![0.0; n],
            bitten: vec![0.0; n],
            waiting: vec![0.0; n],
            ever: 0.0,
            fresh: Vec::new(),
            known: n,
        };
        let (mut bitten, mut waiting) = (vec![0.0; n], vec![0.0; n]);
        for (grid, share) in built.grids.iter().zip(&built.shares) {
            if *share < NEGLIGIBLE {
                continue;
            }
            for node in &grid.nodes {
                let total: f64 = grid.weights[node.first..node.last].iter().sum::<f64>() * share;
                if total < NEGLIGIBLE {
                    continue;
                }
                let scale = exp(node.ln_scale);
                let table = &grid.tables[node.table];
                for i in 0..n {
                    let (b, m) = table.read(ln_times[i] - node.ln_scale);
                    (bitten[i], waiting[i]) = (b, m * scale);
                }
                add_node(grid, node, *share, self.costs, (&bitten, &waiting), &mut means);
            }
        }
        means
    }
}

fn add_node(
    grid: &Grid,
    node: &Node,
    share: f64,
    costs: Costs,
    (bitten, waiting): (&[f64], &[f64]),
    means: &mut Means,
) {
    let (mut ever, mut never) = (0.0, 0.0);
    for i in node.first..node.last {
        let (weight, p) = (share * grid.weights[i], grid.shares[i]);
        ever += weight * (1.0 - p);
        never += weight * p;
        if weight < NEGLIGIBLE {
            continue;
        }
        let q = 1.0 - p;
        let out = means.rate.iter_mut().zip(&means.times).zip(bitten.iter().zip(waiting));
        for ((rate, t), (b, m)) in out {
            *rate += weight * costs.rate(q * b, p * t + q * m);
        }
    }
    means.ever += ever;
    for i in 0..bitten.len() {
        means.bitten[i] += ever * bitten[i];
        means.waiting[i] += ever * waiting[i] + never * means.times[i];
    }
}

/// The law of a node.
pub(crate) fn law(family: Family, node: &Node) -> Law {
    let (k, scale) = (exp(node.ln_concentration), exp(node.ln_scale));
    match family {
        Family::Exponential => Law::Exponential { rate: 1.0 / scale },
        Family::Weibull => Law::Weibull { shape: k, scale },
        Family::LogNormal => Law::LogNormal { mu: node.ln_scale, sigma: 1.0 / k },
        Family::Gamma => Law::Gamma { shape: k * k, rate: k * k / scale },
    }
}

#[cfg(test)]
mod tests {
    use super::super::prior::{PRIORS, Priors, ScalePrior};
    use super::super::{GammaPosterior, Model, WaitLaw, fit};
    use super::*;

    fn day(n: u32) -> Vec<Wait> {
        (0..n)
            .map(|i| {
                let u = (f64::from(i) * 0.618_034 + 0.2).fract();
                let t = 16.0 * libm::pow(-libm::log1p(-u), 0.7);
                Wait::new(t.min(20.0), t < 20.0).unwrap()
            })
            .collect()
    }

    fn only(model: usize, always: f64) -> Priors {
        let mut models = [0.0; 4];
        models[model] = 1.0;
        Priors { models, somebody_always: [always; 4], ..PRIORS }
    }

    fn posterior(waits: &[Wait], priors: Priors, accuracy: Accuracy) -> WaitPosterior {
        let settings = Settings { priors, accuracy, ..Settings::default() };
        WaitPosterior::new(&Record::of_today(waits), &settings).unwrap()
    }

    #[test]
    fn exponential_waits_without_a_never_bite_share_agree_with_the_closed_form() {
        let (shape, rate) = (2.0, 30.0);
        let priors = Priors { exponential_scale: ScalePrior::GammaRate { shape, rate }, ..only(0, 1.0) };
        for n in [0, 1, 6, 40] {
            let waits = day(n);
            let closed = GammaPosterior::new(shape, rate, 1.0, &waits).unwrap();
            for (accuracy, limit) in [(Accuracy::Reference, 1e-5), (Accuracy::Standard, 5e-3)] {
                let grid = posterior(&waits, priors, accuracy);
                let mean =
                    grid.expect(|law, _| if let Law::Exponential { rate } = law { *rate } else { 0.0 });
                assert!((mean / closed.mean() - 1.0).abs() < limit, "{n} {accuracy:?} {mean}");
                for t in [5.0, 20.0] {
                    let s = grid.expect(|law, _| 1.0 - law.bitten_by(t));
                    assert!((s - closed.survival(t)).abs() < limit, "{n} {accuracy:?} {t}");
                }
            }
        }
    }

    #[test]
    fn the_evidence_of_exponential_waits_agrees_with_the_closed_form() {
        // Integral of rate^bites e^(-rate T) under the gamma prior.
        let (shape, rate) = (2.0, 30.0);
        let priors = Priors { exponential_scale: ScalePrior::GammaRate { shape, rate }, ..only(0, 1.0) };
        let waits = day(12);
        let closed = GammaPosterior::new(shape, rate, 1.0, &waits).unwrap();
        let ln_gamma = super::super::special::ln_gamma;
        let expected =
            shape * log(rate) - ln_gamma(shape) + ln_gamma(closed.shape) - closed.shape * log(closed.rate);
        let found = posterior(&waits, priors, Accuracy::Reference).ln_evidence();
        assert!((found - expected).abs() < 1e-7, "{found} {expected}");
    }

    #[test]
    fn with_flat_priors_and_many_casts_the_means_approach_the_fits() {
        let wide = ScalePrior::LogNormal { mean: 2.7, sd: 20.0 };
        let waits = day(2000);
        for (index, model) in [(1, Model::Weibull), (2, Model::LogNormal), (3, Model::Gamma)] {
            let priors = Priors { scale: wide, concentration: (0.0, 20.0), ..only(index, 1.0) };
            let found = posterior(&waits, priors, Accuracy::Fine);
            let fitted = fit(model, &waits).unwrap();
            for p in [0.25, 0.5] {
                let mean = found.expect(|law, _| law.quantile(p));
                let top = fitted.law.quantile(p);
                assert!((mean / top - 1.0).abs() < 2e-3, "{model:?} {p}: {mean} {top}");
            }
        }
    }

    #[test]
    fn coarser_settings_are_as_accurate_as_documented() {
        for n in [0, 3, 8, 15, 30] {
            let waits = day(n);
            let figures = |accuracy| {
                let found = posterior(&waits, PRIORS, accuracy);
                let [rate, from, _] = found.answer(found.grids(), accuracy);
                (rate, from)
            };
            let (rate, hold) = figures(Accuracy::Reference);
            let quick = figures(Accuracy::Quick);
            let standard = figures(Accuracy::Standard);
            assert!((quick.0 / rate - 1.0).abs() < 0.02, "{n} {} {rate}", quick.0);
            assert!((quick.1 / hold - 1.0).abs() < 0.1, "{n} {} {hold}", quick.1);
            assert!((standard.0 / rate - 1.0).abs() < 0.01, "{n} {} {rate}", standard.0);
            assert!((standard.1 / hold - 1.0).abs() < 0.06, "{n} {} {hold}", standard.1);
        }
    }

    #[test]
    fn known_exponential_waits_have_no_finite_best_time() {
        // The ratio of predictive means would give one; the mean of the rates must not.
        let waits = day(6);
        let found = posterior(&waits, only(0, 1.0), Accuracy::Fine);
        let means = found.means(found.grids(), Accuracy::Fine);
        let rate = &means.rate;
        assert!(rate.windows(2).all(|w| w[1] > w[0] - 1e-12));
        let band = super::super::leave_time::band(&means, 0.95);
        assert!(!band.inside && band.until.is_none());
    }

    #[test]
    fn model_probabilities_sum_to_one() {
        let found = posterior(&day(10), PRIORS, Accuracy::Quick);
        let sum: f64 = found.models().iter().map(|m| m.probability).sum();
        assert!((sum - 1.0).abs() < 1e-12);
        assert!((found.expect(|_, _| 1.0) - 1.0).abs() < 1e-9);
    }

    #[test]
    fn waits_of_seconds_and_of_hours_give_finite_answers() {
        let odd = [(0.0, true), (0.0, false), (1e-9, false), (400.0, false), (300.0, true)];
        let waits: Vec<Wait> = odd.iter().map(|&(m, b)| Wait::new(m, b).unwrap()).collect();
        let a = posterior(&waits, PRIORS, Accuracy::Quick).advice();
        assert!(a.best_rate_per_hour.is_finite() && a.next_leave_min.is_finite());
        let many: Vec<Wait> = (0..3000).map(|_| Wait::new(90.0, false).unwrap()).collect();
        let a = posterior(&many, PRIORS, Accuracy::Quick).advice();
        assert!(a.best_rate_per_hour.is_finite() && a.best_rate_per_hour < 0.2, "{a:?}");
    }
}
