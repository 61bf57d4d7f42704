//! Weight from length, fitted to the angler's own fish.
//!
//! W = a L^b, fitted as ln W = ln a + b ln L by ordinary least squares (Le Cren, J. Anim. Ecol.
//! 20:201-219 (1951)). Lengths in centimetres, weights in grams. Fork length and total length give
//! different fits and are never mixed.

use serde::{Deserialize, Serialize};

/// A length-weight curve.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LengthWeight {
    /// Grams at one centimetre.
    pub a: f64,
    /// Exponent.
    pub b: f64,
}

/// A curve fitted to fish.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Fit {
    /// The curve through the medians.
    pub curve: LengthWeight,
    /// Residual standard deviation of ln W, with n - 2 degrees of freedom.
    pub residual_sd_log: f64,
    /// Share of the variance of ln W that the curve explains.
    pub r2: f64,
    /// Shortest and longest fish it was fitted to, cm: beyond them it is a guess.
    pub range_cm: [f64; 2],
    /// Fish it was fitted to.
    pub fish: usize,
}

/// Why no curve can be fitted.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum FitError {
    /// Lengths and weights don't pair.
    #[error("{lengths} lengths and {weights} weights don't pair: give each fish both")]
    Unpaired {
        /// How many lengths.
        lengths: usize,
        /// How many weights.
        weights: usize,
    },
    /// Too few fish.
    #[error("a curve needs three fish or more, not {0}: measure and weigh some more")]
    TooFew(usize),
    /// A length or a weight that is not positive.
    #[error("{0} is no length or weight of a fish: mend that entry")]
    NotPositive(f64),
    /// All fish have the same length.
    #[error("all fish are of one length: a curve needs small and large ones")]
    OneLength,
}

/// Fits the curve to fish of `length_cm` and `weight_g`.
pub fn fit(length_cm: &[f64], weight_g: &[f64]) -> Result<Fit, FitError> {
    if length_cm.len() != weight_g.len() {
        return Err(FitError::Unpaired { lengths: length_cm.len(), weights: weight_g.len() });
    }
    if length_cm.len() < 3 {
        return Err(FitError::TooFew(length_cm.len()));
    }
    if let Some(&bad) = length_cm.iter().chain(weight_g).find(|v| !(v.is_finite() && **v > 0.0)) {
        return Err(FitError::NotPositive(bad));
    }
    let x: Vec<f64> = length_cm.iter().map(|&l| libm::log(l)).collect();
    let y: Vec<f64> = weight_g.iter().map(|&w| libm::log(w)).collect();
    let (sxx, sxy, syy, mean_x, mean_y) = sums(&x, &y);
    if sxx <= 1e-12 {
        return Err(FitError::OneLength);
    }
    let b = sxy / sxx;
    let ln_a = mean_y - b * mean_x;
    let residual: f64 = x.iter().zip(&y).map(|(x, y)| (y - ln_a - b * x) * (y - ln_a - b * x)).sum();
    let r2 = if syy > 0.0 { 1.0 - residual / syy } else { 1.0 };
    let low = length_cm.iter().copied().fold(f64::INFINITY, f64::min);
    let high = length_cm.iter().copied().fold(0.0, f64::max);
    Ok(Fit {
        curve: LengthWeight { a: libm::exp(ln_a), b },
        residual_sd_log: (residual / (x.len() as f64 - 2.0)).sqrt(),
        r2,
        range_cm: [low, high],
        fish: x.len(),
    })
}

/// Centred sums of squares and products, and the means.
fn sums(x: &[f64], y: &[f64]) -> (f64, f64, f64, f64, f64) {
    let n = x.len() as f64;
    let (mean_x, mean_y) = (x.iter().sum::<f64>() / n, y.iter().sum::<f64>() / n);
    let (mut sxx, mut sxy, mut syy) = (0.0, 0.0, 0.0);
    for (x, y) in x.iter().zip(y) {
        let (dx, dy) = (x - mean_x, y - mean_y);
        sxx += dx * dx;
        sxy += dx * dy;
        syy += dy * dy;
    }
    (sxx, sxy, syy, mean_x, mean_y)
}

impl LengthWeight {
    /// From a curve published as log10 W = `log10_a` + `b` log10 L with L in millimetres.
    pub fn from_log10_mm(log10_a: f64, b: f64) -> Self {
        Self { a: libm::pow(10.0, log10_a) * libm::pow(10.0, b), b }
    }

    /// Median weight in grams of fish of `cm`.
    pub fn grams(self, cm: f64) -> Result<f64, FitError> {
        if !(cm.is_finite() && cm > 0.0) {
            return Err(FitError::NotPositive(cm));
        }
        Ok(self.a * libm::pow(cm, self.b))
    }
}

impl Fit {
    /// Mean weight in grams of fish of `cm`: the median times exp(s^2 / 2), since ln W is assumed normal
    /// around the curve.
    pub fn mean_grams(&self, cm: f64) -> Result<f64, FitError> {
        let s = self.residual_sd_log;
        Ok(self.curve.grams(cm)? * libm::exp(0.5 * s * s))
    }

    /// Whether a fish of `cm` is longer or shorter than every fish that the curve was fitted to.
    pub fn beyond(&self, cm: f64) -> bool {
        cm < self.range_cm[0] || cm > self.range_cm[1]
    }
}

/// Where a starting curve comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CurveSource {
    /// From memory, unverified: shown as such.
    FromMemory,
    /// Giannetto, Pompei, Lorenzoni and Tigano, J. Appl. Ichthyol. (2012): a standard weight, that is
    /// the 75th percentile of 64 913 perch, so heavier than the mean fish.
    PerchStandardWeight,
}

/// A curve to begin with, until the angler's own fish give a better one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StartingCurve {
    /// Scientific name.
    pub species: &'static str,
    /// The curve, total length.
    pub curve: LengthWeight,
    /// Where it comes from.
    pub source: CurveSource,
}

/// Starting curves, all editable. Those from memory are round values near the weights of fish of these
/// builds; no verifiable source was found for them.
pub fn starting_curves() -> Vec<StartingCurve> {
    let recalled = |species, a, b| StartingCurve {
        species,
        curve: LengthWeight { a, b },
        source: CurveSource::FromMemory,
    };
    vec![
        recalled("Cyprinus carpio", 0.016, 3.0),
        recalled("Abramis brama", 0.008, 3.08),
        recalled("Rutilus rutilus", 0.0075, 3.1),
        recalled("Scardinius erythrophthalmus", 0.009, 3.1),
        recalled("Tinca tinca", 0.014, 3.02),
        recalled("Carassius carassius", 0.016, 3.05),
        StartingCurve {
            species: "Perca fluviatilis",
            curve: LengthWeight::from_log10_mm(-5.3493, 3.2152),
            source: CurveSource::PerchStandardWeight,
        },
    ]
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp)]
mod tests {
    use super::*;

    #[test]
    fn an_exact_curve_is_found_again() {
        let lengths = [20.0, 25.0, 30.0, 40.0];
        let curve = LengthWeight { a: 0.012, b: 3.05 };
        let weights: Vec<f64> = lengths.iter().map(|&l| curve.grams(l).unwrap()).collect();
        let fit = fit(&lengths, &weights).unwrap();
        assert!((fit.curve.b - 3.05).abs() < 1e-10 && (fit.curve.a - 0.012).abs() < 1e-11);
        assert!(fit.residual_sd_log < 1e-10 && (fit.r2 - 1.0).abs() < 1e-12);
        assert!(fit.beyond(19.0) && !fit.beyond(33.0));
        assert!((fit.mean_grams(30.0).unwrap() / weights[2] - 1.0).abs() < 1e-9);
    }

    #[test]
    fn fish_that_make_no_curve_are_refused() {
        assert_eq!(fit(&[20.0], &[1.0, 2.0]), Err(FitError::Unpaired { lengths: 1, weights: 2 }));
        assert_eq!(fit(&[20.0, 30.0], &[100.0, 300.0]), Err(FitError::TooFew(2)));
        assert_eq!(fit(&[20.0, 0.0, 30.0], &[1.0, 2.0, 3.0]), Err(FitError::NotPositive(0.0)));
        assert!(matches!(fit(&[20.0, f64::NAN, 30.0], &[1.0, 2.0, 3.0]), Err(FitError::NotPositive(_))));
        assert_eq!(fit(&[20.0; 4], &[1.0, 2.0, 3.0, 4.0]), Err(FitError::OneLength));
        assert!(LengthWeight { a: 0.01, b: 3.0 }.grams(-2.0).is_err());
    }

    #[test]
    fn starting_curves_weigh_fish_like_fish() {
        for start in starting_curves() {
            let grams = start.curve.grams(30.0).unwrap();
            assert!((200.0..700.0).contains(&grams), "{}: {grams} g at 30 cm", start.species);
        }
    }
}
