//! Maximum likelihood fits of wait models to right-censored waits.
//!
//! The log-likelihood is the sum over bites of ln f(t) and over the other casts of ln S(t), in minutes.
//! Weibull, log-normal and log-logistic are location-scale models of ln t and share one Newton search
//! (Kalbfleisch and Prentice, The Statistical Analysis of Failure Time Data, chapter 3).

use super::Wait;
use super::error::BiteError;
use super::location_scale::{self, Spread};
use super::special::ln_gamma_upper;
use super::special::{digamma, ln_gamma, trigamma};
use super::wait_law::Law;
use libm::{exp, log};

/// A model that can be fitted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Model {
    /// Constant rate.
    Exponential,
    /// Weibull.
    Weibull,
    /// Log-normal.
    LogNormal,
    /// Gamma.
    Gamma,
    /// Log-logistic.
    LogLogistic,
}

impl Model {
    /// The model's name in the literature.
    pub fn name(self) -> &'static str {
        match self {
            Self::Exponential => "exponential",
            Self::Weibull => "Weibull",
            Self::LogNormal => "log-normal",
            Self::Gamma => "gamma",
            Self::LogLogistic => "log-logistic",
        }
    }
}

/// A fitted model.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// The law at the maximum.
    pub law: Law,
    /// Log-likelihood there.
    pub ln_likelihood: f64,
    /// Inverse of the observed information, on these scales: exponential ln rate; Weibull
    /// (ln shape, ln scale); log-normal (mu, ln sigma); gamma (ln shape, ln rate);
    /// log-logistic (ln alpha, ln beta).
    pub covariance: Vec<Vec<f64>>,
}

impl Fit {
    /// Akaike's information criterion: 2 parameters - 2 ln likelihood.
    pub fn aic(&self) -> f64 {
        2.0 * self.covariance.len() as f64 - 2.0 * self.ln_likelihood
    }
}

/// Weibull waits of two groups that share a shape: an accelerated failure time model,
/// ln t = intercept + effect (in the second group) + spread x extreme-value error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TwoGroupFit {
    /// ln scale of the first group.
    pub intercept: f64,
    /// ln of how much longer waits in the second group are.
    pub effect: f64,
    /// 1 / shape.
    pub spread: f64,
    /// Standard error of the intercept.
    pub intercept_error: f64,
    /// Standard error of the effect.
    pub effect_error: f64,
    /// Log-likelihood at the maximum.
    pub ln_likelihood: f64,
    /// Twice the gain in log-likelihood over one common law: chi-squared on one degree of freedom.
    pub likelihood_ratio: f64,
}

impl TwoGroupFit {
    /// How many times as long the second group waits.
    pub fn time_ratio(&self) -> f64 {
        exp(self.effect)
    }

    /// Hazard of the second group over that of the first.
    pub fn hazard_ratio(&self) -> f64 {
        exp(-self.effect / self.spread)
    }
}

/// Fits one model. At least one bite is needed, two with different times if there is a shape.
pub fn fit(model: Model, waits: &[Wait]) -> Result<Fit, BiteError> {
    check(waits, if model == Model::Exponential { 1 } else { 2 })?;
    match model {
        Model::Exponential => Ok(exponential(waits)),
        Model::Gamma => gamma(waits),
        Model::Weibull => one_group(waits, Spread::ExtremeValue, model),
        Model::LogNormal => one_group(waits, Spread::Normal, model),
        Model::LogLogistic => one_group(waits, Spread::Logistic, model),
    }
}

/// Fits Weibull waits of two groups; `second[i]` says whether wait i belongs to the second.
pub fn fit_two_groups(waits: &[Wait], second: &[bool]) -> Result<TwoGroupFit, BiteError> {
    if waits.len() != second.len() {
        return Err(BiteError::GroupsDontMatch { waits: waits.len(), groups: second.len() });
    }
    check(waits, 2)?;
    for side in [false, true] {
        let bites = waits.iter().zip(second).filter(|(w, s)| w.is_bite() && **s == side).count();
        if bites == 0 {
            return Err(BiteError::TooFewBites { needed: 1, found: 0 });
        }
    }
    let name = Model::Weibull.name();
    let both = location_scale::maximise(Spread::ExtremeValue, waits, Some(second), name)?;
    let common = location_scale::maximise(Spread::ExtremeValue, waits, None, name)?;
    Ok(TwoGroupFit {
        intercept: both.intercept,
        effect: both.effect,
        spread: exp(both.ln_spread),
        intercept_error: both.covariance[0][0].sqrt(),
        effect_error: both.covariance[1][1].sqrt(),
        ln_likelihood: both.ln_likelihood,
        likelihood_ratio: 2.0 * (both.ln_likelihood - common.ln_likelihood),
    })
}

fn check(waits: &[Wait], needed: usize) -> Result<(), BiteError> {
    if waits.is_empty() {
        return Err(BiteError::NoWaits);
    }
    if waits.iter().any(|w| w.is_bite() && w.minutes() <= 0.0) {
        return Err(BiteError::BiteAtZero);
    }
    let found = waits.iter().filter(|w| w.is_bite()).count();
    if found < needed { Err(BiteError::TooFewBites { needed, found }) } else { Ok(()) }
}

fn exponential(waits: &[Wait]) -> Fit {
    let bites = waits.iter().filter(|w| w.is_bite()).count() as f64;
    let total: f64 = waits.iter().map(|w| w.minutes()).sum();
    let rate = bites / total;
    Fit {
        law: Law::Exponential { rate },
        ln_likelihood: bites * (log(rate) - 1.0),
        covariance: vec![vec![1.0 / bites]],
    }
}

fn one_group(waits: &[Wait], spread: Spread, model: Model) -> Result<Fit, BiteError> {
    let found = location_scale::maximise(spread, waits, None, model.name())?;
    let (location, ln_spread) = (found.intercept, found.ln_spread);
    let (vl, vs, cov) = (found.covariance[0][0], found.covariance[2][2], found.covariance[0][2]);
    let (law, covariance) = match model {
        Model::Weibull => (
            Law::Weibull { shape: exp(-ln_spread), scale: exp(location) },
            vec![vec![vs, -cov], vec![-cov, vl]],
        ),
        Model::LogLogistic => (
            Law::LogLogistic { alpha: exp(location), beta: exp(-ln_spread) },
            vec![vec![vl, -cov], vec![-cov, vs]],
        ),
        _ => (Law::LogNormal { mu: location, sigma: exp(ln_spread) }, vec![vec![vl, cov], vec![cov, vs]]),
    };
    Ok(Fit { law, ln_likelihood: found.ln_likelihood, covariance })
}

/// What the gamma likelihood needs of the record, in units of the mean time so that the search
/// does not depend on the unit.
struct GammaRecord {
    bites: f64,
    sum_ln: f64,
    sum: f64,
    censored: Vec<f64>,
}

impl GammaRecord {
    fn new(waits: &[Wait], unit: f64) -> Self {
        let mut record = Self { bites: 0.0, sum_ln: 0.0, sum: 0.0, censored: Vec::new() };
        for wait in waits {
            let t = wait.minutes() / unit;
            if wait.is_bite() {
                record.bites += 1.0;
                record.sum_ln += log(t);
                record.sum += t;
            } else if t > 0.0 {
                record.censored.push(t);
            }
        }
        record.censored.sort_unstable_by(f64::total_cmp);
        record
    }

    fn censored_part(&self, shape: f64, rate: f64) -> f64 {
        self.censored.iter().map(|t| ln_gamma_upper(shape, rate * t)).sum()
    }

    fn ln_likelihood(&self, ln_shape: f64, ln_rate: f64) -> f64 {
        let (a, r) = (exp(ln_shape), exp(ln_rate));
        self.bites * (a * ln_rate - ln_gamma(a)) + (a - 1.0) * self.sum_ln - r * self.sum
            + self.censored_part(a, r)
    }

    /// Gradient and the three second derivatives in (ln shape, ln rate): exact for the bites, by
    /// central differences for the censored part.
    fn slopes(&self, u: f64, v: f64) -> ([f64; 2], [f64; 3]) {
        const H: f64 = 1e-4;
        let (a, r) = (exp(u), exp(v));
        let da = self.bites * (v - digamma(a)) + self.sum_ln;
        let mut gradient = [a * da, self.bites * a - r * self.sum];
        let mut second = [a * da - a * a * self.bites * trigamma(a), self.bites * a, -r * self.sum];
        if self.censored.is_empty() {
            return (gradient, second);
        }
        let c = |i: f64, j: f64| self.censored_part(exp(u + i * H), exp(v + j * H));
        let (mid, up, down, right, left) = (c(0., 0.), c(1., 0.), c(-1., 0.), c(0., 1.), c(0., -1.));
        gradient[0] += (up - down) / (2.0 * H);
        gradient[1] += (right - left) / (2.0 * H);
        second[0] += (up - 2.0 * mid + down) / (H * H);
        second[1] += (c(1., 1.) - c(1., -1.) - c(-1., 1.) + c(-1., -1.)) / (4.0 * H * H);
        second[2] += (right - 2.0 * mid + left) / (H * H);
        (gradient, second)
    }
}

fn gamma(waits: &[Wait]) -> Result<Fit, BiteError> {
    let unsettled = BiteError::NotSettled { model: Model::Gamma.name() };
    let unit = waits.iter().map(|w| w.minutes()).sum::<f64>() / waits.len() as f64;
    let record = GammaRecord::new(waits, unit);
    let (mut u, mut v) = (0.0, log(record.bites / waits.len() as f64));
    let mut best = record.ln_likelihood(u, v);
    for _ in 0..200 {
        let (g, h) = record.slopes(u, v);
        let (step, settled) = ascent(g, h);
        let mut factor = 1.0;
        let moved = loop {
            let (nu, nv) = (u + factor * step[0], v + factor * step[1]);
            let value = record.ln_likelihood(nu, nv);
            if value >= best - 1e-12 * best.abs() {
                (u, v, best) = (nu, nv, value);
                break factor * (step[0].abs() + step[1].abs());
            }
            factor *= 0.5;
            if factor < 1e-10 {
                break 0.0;
            }
        };
        if u.abs() > 14.0 {
            return Err(unsettled);
        }
        if settled && moved < 1e-9 {
            let det = h[0] * h[2] - h[1] * h[1];
            let covariance = vec![vec![-h[2] / det, h[1] / det], vec![h[1] / det, -h[0] / det]];
            let law = Law::Gamma { shape: exp(u), rate: exp(v) / unit };
            let ln_likelihood = best - record.bites * log(unit);
            return Ok(Fit { law, ln_likelihood, covariance });
        }
    }
    Err(unsettled)
}

/// Newton's step where the surface is concave, otherwise a short step uphill.
fn ascent(g: [f64; 2], h: [f64; 3]) -> ([f64; 2], bool) {
    let det = h[0] * h[2] - h[1] * h[1];
    if h[0] < 0.0 && det > 0.0 {
        let step = [(h[1] * g[1] - h[2] * g[0]) / det, (h[1] * g[0] - h[0] * g[1]) / det];
        let longest = step[0].abs().max(step[1].abs());
        let cut = if longest > 1.5 { 1.5 / longest } else { 1.0 };
        return ([step[0] * cut, step[1] * cut], true);
    }
    let length = g[0].hypot(g[1]).max(1e-300);
    ([0.5 * g[0] / length, 0.5 * g[1] / length], false)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const ALL: [Model; 5] =
        [Model::Exponential, Model::Weibull, Model::LogNormal, Model::Gamma, Model::LogLogistic];

    fn wait(m: f64, b: bool) -> Wait {
        Wait::new(m, b).unwrap()
    }

    fn spread_out() -> Vec<Wait> {
        (1..40).map(|i| wait(f64::from(i * 7 % 31) + 0.5, i % 3 != 0)).collect()
    }

    #[test]
    fn a_record_that_cannot_be_fitted_is_refused_with_a_reason() {
        assert_eq!(fit(Model::Weibull, &[]), Err(BiteError::NoWaits));
        assert_eq!(
            fit(Model::Exponential, &[wait(5.0, false)]),
            Err(BiteError::TooFewBites { needed: 1, found: 0 })
        );
        assert_eq!(fit(Model::Gamma, &[wait(0.0, true), wait(3.0, true)]), Err(BiteError::BiteAtZero));
        let same = [wait(4.0, true), wait(4.0, true), wait(4.0, true)];
        for model in [Model::Weibull, Model::LogNormal, Model::LogLogistic, Model::Gamma] {
            assert_eq!(fit(model, &same), Err(BiteError::NotSettled { model: model.name() }));
        }
    }

    #[test]
    fn no_neighbour_of_the_maximum_is_better() {
        let waits = spread_out();
        for model in ALL {
            let found = fit(model, &waits).unwrap();
            let at =
                |law: Law| -> f64 {
                    waits
                        .iter()
                        .map(|w| {
                            if w.is_bite() {
                                law.ln_density(w.minutes())
                            } else {
                                law.ln_survival(w.minutes())
                            }
                        })
                        .sum()
                };
            assert!((at(found.law) - found.ln_likelihood).abs() < 1e-9, "{model:?}");
            for (i, j) in [(1.001, 1.0), (0.999, 1.0), (1.0, 1.001), (1.0, 0.999)] {
                let near = match found.law {
                    Law::Exponential { rate } => Law::Exponential { rate: rate * i * j },
                    Law::Weibull { shape, scale } => Law::Weibull { shape: shape * i, scale: scale * j },
                    Law::LogNormal { mu, sigma } => Law::LogNormal { mu: mu * i, sigma: sigma * j },
                    Law::Gamma { shape, rate } => Law::Gamma { shape: shape * i, rate: rate * j },
                    Law::LogLogistic { alpha, beta } => Law::LogLogistic { alpha: alpha * i, beta: beta * j },
                };
                assert!(at(near) < found.ln_likelihood, "{model:?}");
            }
        }
    }

    #[test]
    fn gamma_of_shape_one_and_weibull_of_shape_one_agree_with_the_exponential() {
        // Quantiles of an exponential: both richer models must give a shape near 1.
        let waits: Vec<Wait> =
            (0..400).map(|i| wait(-20.0 * libm::log1p(-(f64::from(i) + 0.5) / 400.0), true)).collect();
        for model in [Model::Gamma, Model::Weibull] {
            match fit(model, &waits).unwrap().law {
                Law::Gamma { shape, .. } | Law::Weibull { shape, .. } => {
                    assert!((shape - 1.0).abs() < 0.02, "{shape}");
                }
                other => panic!("{other:?}"),
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(40))]
        #[test]
        fn fits_do_not_depend_on_the_unit(
            v in proptest::collection::vec((1u32..60, any::<bool>()), 6..40),
            unit in 0.01f64..100.0,
        ) {
            let bites: std::collections::BTreeSet<u32> =
                v.iter().filter(|x| x.1).map(|x| x.0).collect();
            prop_assume!(bites.len() >= 2);
            let minutes: Vec<Wait> = v.iter().map(|&(m, b)| wait(f64::from(m), b)).collect();
            let other: Vec<Wait> = v.iter().map(|&(m, b)| wait(f64::from(m) * unit, b)).collect();
            let n = v.iter().filter(|x| x.1).count() as f64;
            for model in ALL {
                let (Ok(a), Ok(b)) = (fit(model, &minutes), fit(model, &other)) else { continue };
                let shift = n * log(unit);
                prop_assert!((a.ln_likelihood - b.ln_likelihood - shift).abs() < 1e-6, "{:?}", model);
                let (p, q) = (a.law.quantile(0.5) * unit, b.law.quantile(0.5));
                prop_assert!((p / q - 1.0).abs() < 1e-4, "{:?} {} {}", model, p, q);
            }
        }
    }
}
