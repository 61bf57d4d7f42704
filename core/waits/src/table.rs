//! Tables of one standard law: share still waiting and mean wait by ln(t / scale).
//!
//! A node of the grid is a shape and a scale; all nodes of one shape read the same table, shifted.

use super::laplace::Family;
use super::normal_table;
use super::special::{ln_gamma, normal_upper, upper_fraction};
use libm::{exp, log};

/// One point of a table.
#[derive(Debug, Clone, Copy, Default)]
struct Point {
    /// Share bitten and its slope in z.
    bitten: f64,
    bitten_slope: f64,
    /// Mean of the wait or t, in units of the scale, and its slope in z.
    mean: f64,
    mean_slope: f64,
    /// ln of the share still waiting, and its slope (gamma only).
    ln_still: f64,
    ln_still_slope: f64,
}

/// The standard law of one shape.
#[derive(Debug, Clone)]
pub(crate) struct Table {
    low: f64,
    step: f64,
    points: Vec<Point>,
    /// ln F falls with this slope below the table.
    lower_power: f64,
}

impl Table {
    /// The table of a family at ln concentration `s`, in this many steps.
    pub fn new(family: Family, s: f64, steps: usize) -> Self {
        let k = exp(s);
        match family {
            Family::Exponential | Family::Weibull => weibull(k, steps),
            Family::LogNormal => log_normal(k, steps),
            Family::Gamma => gamma(k * k, steps),
        }
    }

    /// An empty table, for grids that need only the likelihood.
    pub fn none() -> Self {
        Self { low: 0.0, step: 1.0, points: Vec::new(), lower_power: 1.0 }
    }

    fn empty(low: f64, high: f64, lower_power: f64, steps: usize) -> Self {
        let step = (high - low) / steps as f64;
        Self { low, step, points: vec![Point::default(); steps + 1], lower_power }
    }

    fn steps(&self) -> usize {
        self.points.len() - 1
    }

    fn z(&self, i: usize) -> f64 {
        self.low + self.step * i as f64
    }

    /// Share bitten and mean wait (in units of the scale) at z = ln(t / scale).
    #[inline]
    pub fn read(&self, z: f64) -> (f64, f64) {
        let u = (z - self.low) / self.step;
        if u < 0.0 {
            let bitten = self.points[0].bitten * exp(self.lower_power * (z - self.low));
            return (bitten, exp(z) * (1.0 - bitten / (1.0 + self.lower_power)));
        }
        let i = u as usize;
        if i >= self.steps() {
            let last = &self.points[self.steps()];
            return (last.bitten, last.mean);
        }
        let (a, b) = (&self.points[i], &self.points[i + 1]);
        let [h0, h1, k0, k1] = hermite(u - i as f64, self.step);
        (
            a.bitten * h0 + b.bitten * h1 + a.bitten_slope * k0 + b.bitten_slope * k1,
            a.mean * h0 + b.mean * h1 + a.mean_slope * k0 + b.mean_slope * k1,
        )
    }

    /// ln of the share still waiting at z; gamma tables only.
    #[inline]
    pub fn ln_still(&self, z: f64) -> f64 {
        let u = (z - self.low) / self.step;
        if u < 0.0 {
            return -self.points[0].bitten * exp(self.lower_power * (z - self.low));
        }
        let i = u as usize;
        if i >= self.steps() {
            let last = &self.points[self.steps()];
            return last.ln_still + last.ln_still_slope * (z - self.z(self.steps()));
        }
        let (a, b) = (&self.points[i], &self.points[i + 1]);
        let [h0, h1, k0, k1] = hermite(u - i as f64, self.step);
        a.ln_still * h0 + b.ln_still * h1 + a.ln_still_slope * k0 + b.ln_still_slope * k1
    }
}

/// Weights of cubic Hermite interpolation at a fraction f of a step: values, then slopes.
#[inline]
fn hermite(f: f64, step: f64) -> [f64; 4] {
    let g = 1.0 - f;
    let h1 = f * f * (3.0 - 2.0 * f);
    [1.0 - h1, h1, f * g * g * step, -f * f * g * step]
}

/// Powers are computed by multiplication from step to step, including half steps.
fn weibull(k: f64, steps: usize) -> Table {
    let mut table = Table::empty((-14.0 / k).max(-9.5), 3.6 / k, k, steps);
    let half = 0.5 * table.step;
    let (time_factor, hazard_factor) = (exp(half), exp(k * half));
    let (mut time, mut hazard) = (exp(table.low), exp(k * table.low));
    // Below the table S is 1 - (t / scale)^k very nearly.
    let mut mean = time * (1.0 - hazard / (1.0 + k));
    let mut left = time * exp(-hazard);
    for i in 0..=steps {
        if i > 0 {
            let mid = time * time_factor * exp(-hazard * hazard_factor);
            time *= time_factor * time_factor;
            hazard *= hazard_factor * hazard_factor;
            let here = time * exp(-hazard);
            mean += table.step / 6.0 * (left + 4.0 * mid + here);
            left = here;
        }
        let still = left / time;
        table.points[i] = Point {
            bitten: if hazard < 1e-3 { hazard * (1.0 - 0.5 * hazard) } else { 1.0 - still },
            bitten_slope: k * hazard * still,
            mean,
            mean_slope: left,
            ..Point::default()
        };
    }
    table
}

fn log_normal(k: f64, steps: usize) -> Table {
    let mut table = Table::empty((-7.0 / k).max(-9.5), 7.0 / k, k * 7.0, steps);
    let sigma = 1.0 / k;
    let mean_factor = exp(0.5 * sigma * sigma);
    let factor = exp(table.step);
    let mut time = exp(table.low);
    for i in 0..=steps {
        let w = k * table.z(i);
        let (still, density) = normal_table::upper_and_density(w);
        table.points[i] = Point {
            bitten: 1.0 - still,
            bitten_slope: k * density,
            mean: time * still + mean_factor * normal_upper(sigma - w),
            mean_slope: time * still,
            ..Point::default()
        };
        time *= factor;
    }
    table
}

/// Gamma of shape a and mean 1: the upper tail is summed downwards by Simpson's rule from a continued
/// fraction, so that it stays exact where it is small.
fn gamma(a: f64, steps: usize) -> Table {
    let root = a.sqrt();
    let low = (-(5.7 / root + 16.0 / a)).max(-9.5);
    let high = log((a + 9.0 * root + 40.0) / a);
    let mut table = Table::empty(low, high, a, steps);
    let constant = a * log(a) - ln_gamma(a);
    // x f(x) as a function of z, x = a e^z.
    let density = |z: f64, e: f64| exp(constant + a * (z - e));
    let last = exp(high);
    let mut right = density(high, last);
    let mut still = right * upper_fraction(a, a * last);
    for i in (0..=steps).rev() {
        let z = table.z(i);
        let e = exp(z);
        let here = density(z, e);
        if i < steps {
            let mid_z = z + 0.5 * table.step;
            still += table.step / 6.0 * (here + 4.0 * density(mid_z, exp(mid_z)) + right);
        }
        right = here;
        let bitten = 1.0 - still;
        table.points[i] = Point {
            bitten,
            bitten_slope: here,
            mean: e * still + bitten - here / a,
            mean_slope: e * still,
            ln_still: log(still),
            ln_still_slope: -here / still,
        };
    }
    table
}

#[cfg(test)]
mod tests {
    use super::super::wait_law::{Law, WaitLaw};
    use super::*;

    #[test]
    fn tables_agree_with_the_laws() {
        for s in [-1.2, -0.5, 0.0, 0.4, 1.0, 2.0, 3.0] {
            let k = exp(s);
            let scale = 14.0;
            let laws = [
                (Family::Weibull, Law::Weibull { shape: k, scale }),
                (Family::LogNormal, Law::LogNormal { mu: log(scale), sigma: 1.0 / k }),
                (Family::Gamma, Law::Gamma { shape: k * k, rate: k * k / scale }),
            ];
            for (family, law) in laws {
                let table = Table::new(family, s, 128);
                for t in [0.1, 0.7, 3.0, 9.0, 13.0, 15.0, 22.0, 60.0] {
                    let z = log(t / scale);
                    let (bitten, mean) = table.read(z);
                    let near = |a: f64, b: f64, limit: f64| {
                        assert!((a - b).abs() < limit, "{family:?} s {s} t {t}: {a} {b}");
                    };
                    near(bitten, law.bitten_by(t), 2e-5);
                    near(mean * scale, law.mean_until(t), 2e-5 * t.max(1.0));
                    // Below e^-30 the table only has to be practically zero.
                    let exact = law.ln_survival(t);
                    if family == Family::Gamma && exact > -30.0 {
                        near(table.ln_still(z), exact, 2e-5 + 1e-3 * exact.abs());
                    }
                }
            }
        }
    }
}
