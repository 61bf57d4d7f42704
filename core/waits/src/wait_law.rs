//! Distributions of the wait: the five that are fitted, and the shapes used to check the leave time.

use super::special::{
    LN_SQRT_TWO_PI, gamma_lower, gamma_quantile, ln_gamma, ln_gamma_upper, ln_normal_upper, normal_quantile,
    normal_upper,
};
use libm::{exp, log, log1p, pow};

/// A distribution of the wait in minutes.
pub trait WaitLaw {
    /// Share of casts with a bite by `minutes`.
    fn bitten_by(&self, minutes: f64) -> f64;
    /// Density of bites at `minutes`, per minute.
    fn density(&self, minutes: f64) -> f64;
    /// Mean of the wait or `minutes`, whichever is less: the integral of the share still waiting.
    fn mean_until(&self, minutes: f64) -> f64;
    /// Mean wait; infinite if some casts never get a bite.
    fn mean(&self) -> f64;
    /// A typical time, from which a search may start.
    fn typical(&self) -> f64;
    /// The time by which every wait has ended, if there is one.
    fn last(&self) -> Option<f64> {
        None
    }
}

/// A distribution of the wait that can be fitted to a record.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Law {
    /// Bites at a constant `rate` per minute.
    Exponential {
        /// Bites per minute.
        rate: f64,
    },
    /// S(t) = exp(-(t / scale)^shape).
    Weibull {
        /// Above 1 the hazard rises, below 1 it falls.
        shape: f64,
        /// Minutes.
        scale: f64,
    },
    /// ln t is normal with mean `mu` and standard deviation `sigma`.
    LogNormal {
        /// Mean of ln minutes.
        mu: f64,
        /// Standard deviation of ln minutes.
        sigma: f64,
    },
    /// Gamma with `shape` and `rate`.
    Gamma {
        /// Shape.
        shape: f64,
        /// Per minute.
        rate: f64,
    },
    /// S(t) = 1 / (1 + (t / alpha)^beta).
    LogLogistic {
        /// Median in minutes.
        alpha: f64,
        /// Shape.
        beta: f64,
    },
}

impl Law {
    /// Log of the share still waiting at `minutes`.
    pub fn ln_survival(&self, minutes: f64) -> f64 {
        if minutes <= 0.0 {
            return 0.0;
        }
        match *self {
            Self::Exponential { rate } => -rate * minutes,
            Self::Weibull { shape, scale } => -pow(minutes / scale, shape),
            Self::LogNormal { mu, sigma } => ln_normal_upper((log(minutes) - mu) / sigma),
            Self::Gamma { shape, rate } => ln_gamma_upper(shape, rate * minutes),
            Self::LogLogistic { alpha, beta } => -log1p(pow(minutes / alpha, beta)),
        }
    }

    /// Log of the density at `minutes` > 0, per minute.
    pub fn ln_density(&self, minutes: f64) -> f64 {
        match *self {
            Self::Exponential { rate } => log(rate) - rate * minutes,
            Self::Weibull { shape, scale } => {
                let z = shape * log(minutes / scale);
                log(shape) + z - exp(z) - log(minutes)
            }
            Self::LogNormal { mu, sigma } => {
                let z = (log(minutes) - mu) / sigma;
                -0.5 * z * z - LN_SQRT_TWO_PI - log(sigma * minutes)
            }
            Self::Gamma { shape, rate } => {
                shape * log(rate) + (shape - 1.0) * log(minutes) - rate * minutes - ln_gamma(shape)
            }
            Self::LogLogistic { alpha, beta } => {
                let z = beta * log(minutes / alpha);
                log(beta) + z - 2.0 * log1p(exp(z)) - log(minutes)
            }
        }
    }

    /// Time by which a share `p` of casts has had its bite, 0 < p < 1.
    pub fn quantile(&self, p: f64) -> f64 {
        match *self {
            Self::Exponential { rate } => -log1p(-p) / rate,
            Self::Weibull { shape, scale } => scale * pow(-log1p(-p), 1.0 / shape),
            Self::LogNormal { mu, sigma } => exp(mu + sigma * normal_quantile(p)),
            Self::Gamma { shape, rate } => gamma_quantile(shape, p) / rate,
            Self::LogLogistic { alpha, beta } => alpha * pow(p / (1.0 - p), 1.0 / beta),
        }
    }
}

impl WaitLaw for Law {
    fn bitten_by(&self, minutes: f64) -> f64 {
        match *self {
            _ if minutes <= 0.0 => 0.0,
            Self::LogNormal { mu, sigma } => normal_upper((mu - log(minutes)) / sigma),
            Self::Gamma { shape, rate } => gamma_lower(shape, rate * minutes),
            _ => -libm::expm1(self.ln_survival(minutes)),
        }
    }

    fn density(&self, minutes: f64) -> f64 {
        if minutes <= 0.0 { 0.0 } else { exp(self.ln_density(minutes)) }
    }

    fn mean_until(&self, minutes: f64) -> f64 {
        if minutes <= 0.0 {
            return 0.0;
        }
        let still = minutes * exp(self.ln_survival(minutes));
        // The part of the mean from waits that end before `minutes`.
        let ended = match *self {
            Self::Exponential { rate } => return self.bitten_by(minutes) / rate,
            Self::Weibull { shape, scale } => {
                self.mean() * gamma_lower(1.0 + 1.0 / shape, pow(minutes / scale, shape))
            }
            Self::LogNormal { mu, sigma } => {
                self.mean() * normal_upper((mu + sigma * sigma - log(minutes)) / sigma)
            }
            Self::Gamma { shape, rate } => self.mean() * gamma_lower(shape + 1.0, rate * minutes),
            Self::LogLogistic { .. } => {
                return simpson(|t| exp(self.ln_survival(t)), minutes);
            }
        };
        still + ended
    }

    fn mean(&self) -> f64 {
        match *self {
            Self::Exponential { rate } => 1.0 / rate,
            Self::Weibull { shape, scale } => scale * exp(ln_gamma(1.0 + 1.0 / shape)),
            Self::LogNormal { mu, sigma } => exp(mu + 0.5 * sigma * sigma),
            Self::Gamma { shape, rate } => shape / rate,
            Self::LogLogistic { alpha, beta } => {
                let u = std::f64::consts::PI / beta;
                if beta > 1.0 { alpha * u / libm::sin(u) } else { f64::INFINITY }
            }
        }
    }

    fn typical(&self) -> f64 {
        self.quantile(0.5)
    }
}

/// Composite Simpson from 0 to `end` in the square root of t, which tames steep starts.
fn simpson(f: impl Fn(f64) -> f64, end: f64) -> f64 {
    const PANELS: u32 = 2000;
    let h = end.sqrt() / f64::from(PANELS);
    let at = |i: u32| {
        let u = f64::from(i) * h;
        2.0 * u * f(u * u)
    };
    let inner: f64 = (1..PANELS).map(|i| at(i) * if i % 2 == 1 { 4.0 } else { 2.0 }).sum();
    (at(0) + inner + at(PANELS)) * h / 3.0
}

/// A law in which only a share of casts ever gets a bite.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WithNobodyHome<L> {
    /// The law of the casts that get one.
    pub law: L,
    /// The share of casts that never would, 0..1.
    pub never: f64,
}

impl<L: WaitLaw> WaitLaw for WithNobodyHome<L> {
    fn bitten_by(&self, minutes: f64) -> f64 {
        (1.0 - self.never) * self.law.bitten_by(minutes)
    }
    fn density(&self, minutes: f64) -> f64 {
        (1.0 - self.never) * self.law.density(minutes)
    }
    fn mean_until(&self, minutes: f64) -> f64 {
        self.never * minutes.max(0.0) + (1.0 - self.never) * self.law.mean_until(minutes)
    }
    fn mean(&self) -> f64 {
        if self.never > 0.0 { f64::INFINITY } else { self.law.mean() }
    }
    fn typical(&self) -> f64 {
        self.law.typical()
    }
}

/// Waits spread evenly between two times.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Even {
    /// Earliest bite, minutes.
    pub low: f64,
    /// Latest bite, minutes.
    pub high: f64,
}

impl WaitLaw for Even {
    fn bitten_by(&self, minutes: f64) -> f64 {
        ((minutes - self.low) / (self.high - self.low)).clamp(0.0, 1.0)
    }
    fn density(&self, minutes: f64) -> f64 {
        if (self.low..=self.high).contains(&minutes) { 1.0 / (self.high - self.low) } else { 0.0 }
    }
    fn mean_until(&self, minutes: f64) -> f64 {
        let within = (minutes.min(self.high) - self.low).max(0.0);
        minutes.min(self.low).max(0.0) + within - within * within / (2.0 * (self.high - self.low))
    }
    fn mean(&self) -> f64 {
        0.5 * (self.low + self.high)
    }
    fn typical(&self) -> f64 {
        self.mean()
    }
    fn last(&self) -> Option<f64> {
        Some(self.high)
    }
}

/// Every bite after the same wait.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Always {
    /// Minutes.
    pub minutes: f64,
}

impl WaitLaw for Always {
    fn bitten_by(&self, minutes: f64) -> f64 {
        if minutes >= self.minutes { 1.0 } else { 0.0 }
    }
    fn density(&self, _: f64) -> f64 {
        0.0
    }
    fn mean_until(&self, minutes: f64) -> f64 {
        minutes.clamp(0.0, self.minutes)
    }
    fn mean(&self) -> f64 {
        self.minutes
    }
    fn typical(&self) -> f64 {
        self.minutes
    }
    fn last(&self) -> Option<f64> {
        Some(self.minutes)
    }
}

/// Lomax: a constant rate that is itself gamma-distributed, S(t) = (1 + t / scale)^-shape.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lomax {
    /// Shape of the gamma distribution of the rate.
    pub shape: f64,
    /// Its rate, in minutes.
    pub scale: f64,
}

impl WaitLaw for Lomax {
    fn bitten_by(&self, minutes: f64) -> f64 {
        -libm::expm1(-self.shape * log1p(minutes.max(0.0) / self.scale))
    }
    fn density(&self, minutes: f64) -> f64 {
        self.shape / self.scale * exp(-(self.shape + 1.0) * log1p(minutes.max(0.0) / self.scale))
    }
    fn mean_until(&self, minutes: f64) -> f64 {
        let l = log1p(minutes.max(0.0) / self.scale);
        let k = self.shape - 1.0;
        if k == 0.0 { self.scale * l } else { -self.scale / k * libm::expm1(-k * l) }
    }
    fn mean(&self) -> f64 {
        if self.shape > 1.0 { self.scale / (self.shape - 1.0) } else { f64::INFINITY }
    }
    fn typical(&self) -> f64 {
        self.scale * (pow(2.0, 1.0 / self.shape) - 1.0)
    }
}

/// Two constant rates mixed: S(t) = weight exp(-first t) + (1 - weight) exp(-second t).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TwoRates {
    /// Share of casts with the first rate.
    pub weight: f64,
    /// Bites per minute.
    pub first: f64,
    /// Bites per minute.
    pub second: f64,
}

impl TwoRates {
    fn mixed(&self, of: impl Fn(f64) -> f64) -> f64 {
        self.weight * of(self.first) + (1.0 - self.weight) * of(self.second)
    }
}

impl WaitLaw for TwoRates {
    fn bitten_by(&self, minutes: f64) -> f64 {
        self.mixed(|rate| -libm::expm1(-rate * minutes.max(0.0)))
    }
    fn density(&self, minutes: f64) -> f64 {
        self.mixed(|rate| rate * exp(-rate * minutes.max(0.0)))
    }
    fn mean_until(&self, minutes: f64) -> f64 {
        self.mixed(|rate| -libm::expm1(-rate * minutes.max(0.0)) / rate)
    }
    fn mean(&self) -> f64 {
        self.mixed(|rate| 1.0 / rate)
    }
    fn typical(&self) -> f64 {
        std::f64::consts::LN_2 / self.first.max(self.second)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LAWS: [Law; 5] = [
        Law::Exponential { rate: 0.05 },
        Law::Weibull { shape: 1.7, scale: 14.0 },
        Law::LogNormal { mu: 2.5, sigma: 0.6 },
        Law::Gamma { shape: 2.6, rate: 0.19 },
        Law::LogLogistic { alpha: 11.5, beta: 2.6 },
    ];

    #[test]
    fn density_is_the_slope_of_the_share_bitten() {
        for law in LAWS {
            for t in [0.5, 4.0, 13.0, 40.0] {
                let h = 1e-4;
                let slope = (law.bitten_by(t + h) - law.bitten_by(t - h)) / (2.0 * h);
                assert!((slope - law.density(t)).abs() < 1e-8, "{law:?} {t}");
                assert!((law.bitten_by(t) + exp(law.ln_survival(t)) - 1.0).abs() < 1e-12, "{law:?} {t}");
            }
        }
    }

    #[test]
    fn mean_until_is_the_area_under_the_share_still_waiting() {
        for law in LAWS {
            for t in [0.5, 13.0, 60.0] {
                let area = simpson(|u| exp(law.ln_survival(u)), t);
                assert!((area - law.mean_until(t)).abs() < 1e-7 * t, "{law:?} {t}");
            }
        }
        let both = TwoRates { weight: 0.3, first: 0.2, second: 0.02 };
        let area = simpson(|u| 1.0 - both.bitten_by(u), 30.0);
        assert!((area - both.mean_until(30.0)).abs() < 1e-8);
        let even = Even { low: 5.0, high: 25.0 };
        assert!((even.mean_until(100.0) - 15.0).abs() < 1e-12);
        assert!((even.mean_until(4.0) - 4.0).abs() < 1e-12);
    }

    #[test]
    fn quantiles_invert() {
        for law in LAWS {
            for p in [0.02, 0.5, 0.9] {
                assert!((law.bitten_by(law.quantile(p)) - p).abs() < 1e-10, "{law:?} {p}");
            }
        }
    }
}
