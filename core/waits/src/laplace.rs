//! The maximum of a posterior and its curvature there, from which the first grid is placed.
//!
//! Coordinates: s = ln concentration, l = ln scale, x = logit of the never-bite share. Concentration is the
//! Weibull shape, 1 / sigma of log-normal waits, the square root of the gamma shape; the scale is the Weibull
//! scale, the log-normal median, the gamma mean. For gamma waits the tail is computed by the cube-root
//! approximation of Wilson and Hilferty 1931, which is good enough to place the grid; the grid itself is
//! exact.

use super::evidence::Evidence;
use super::matrix;
use super::normal_table;
use super::prior::{Priors, ScalePrior, ln_normal};
use super::special::{LN_SQRT_TWO_PI, digamma, ln_gamma, trigamma};
use libm::{exp, log};

/// The family of a piece of the posterior.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Family {
    Exponential,
    Weibull,
    LogNormal,
    Gamma,
}

/// One piece of the posterior: a family, with or without a share of casts that never get a bite.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Piece {
    pub family: Family,
    pub never: bool,
}

/// Concentrations are kept between these: cv of e^1.6 to e^-4.
pub(crate) const LN_CONCENTRATION: (f64, f64) = (-1.6, 4.0);

impl Piece {
    pub fn scale_prior(self, priors: &Priors) -> ScalePrior {
        if self.family == Family::Exponential { priors.exponential_scale } else { priors.scale }
    }

    /// Which coordinates this piece has.
    pub fn active(self) -> [bool; 3] {
        [self.family != Family::Exponential, true, self.never]
    }

    /// Log prior density at a point, over the coordinates the piece has.
    pub fn ln_prior(self, priors: &Priors, at: [f64; 3]) -> f64 {
        let mut sum = self.scale_prior(priors).ln_density(at[1]);
        if self.family != Family::Exponential {
            sum += ln_normal(at[0], priors.concentration.0, priors.concentration.1);
        }
        if self.never {
            sum += ln_normal(at[2], priors.never.0, priors.never.1);
        }
        sum
    }
}

/// Value, gradient and Hessian.
#[derive(Clone, Copy, Default)]
struct Surface {
    value: f64,
    g: [f64; 3],
    h: [[f64; 3]; 3],
}

/// ln S of a family with its derivatives in (s, l): value, s, l, ss, sl, ll.
type Tail = [f64; 6];

/// Highest point of the posterior of a piece and the covariance that its curvature implies.
pub(crate) fn top(piece: Piece, priors: &Priors, evidence: &Evidence) -> ([f64; 3], [[f64; 3]; 3]) {
    let scale = piece.scale_prior(priors);
    let start_l = evidence.typical_ln.map_or(scale.mode(), |y| 0.5 * (y + scale.mode()));
    let s = if piece.family == Family::Exponential { 0.0 } else { priors.concentration.0 };
    let mut at = [s, start_l, priors.never.0];
    let mut here = surface(piece, priors, evidence, at);
    for _ in 0..60 {
        let (step, newton) = ascent(&here);
        let longest = step.iter().fold(0.0, |m: f64, v| m.max(v.abs()));
        let mut factor = if longest > 1.0 { 1.0 / longest } else { 1.0 };
        let moved = loop {
            let mut next = at;
            for i in 0..3 {
                next[i] += factor * step[i];
            }
            next[0] = next[0].clamp(LN_CONCENTRATION.0, LN_CONCENTRATION.1);
            let there = surface(piece, priors, evidence, next);
            if there.value >= here.value {
                let moved = (0..3).fold(0.0, |m: f64, i| m.max((next[i] - at[i]).abs()));
                (at, here) = (next, there);
                break moved;
            }
            factor *= 0.5;
            if factor < 1e-6 {
                break 0.0;
            }
        };
        if newton && moved < 1e-4 {
            break;
        }
    }
    (at, covariance(&here))
}

/// Newton's step, on a matrix made positive definite if it isn't.
fn ascent(here: &Surface) -> ([f64; 3], bool) {
    let mut ridge = 0.0;
    loop {
        if let Some(step) = matrix::solve(&negated(here, ridge), &here.g) {
            return (step, ridge == 0.0);
        }
        ridge = if ridge == 0.0 { 0.5 } else { ridge * 3.0 };
        if ridge > 1e9 {
            return ([0.0; 3], true);
        }
    }
}

fn covariance(here: &Surface) -> [[f64; 3]; 3] {
    let mut ridge = 0.0;
    loop {
        if let Some(inverse) = matrix::inverse(&negated(here, ridge)) {
            return inverse;
        }
        ridge = if ridge == 0.0 { 0.5 } else { ridge * 3.0 };
        if ridge > 1e9 {
            return [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
        }
    }
}

fn negated(here: &Surface, ridge: f64) -> [[f64; 3]; 3] {
    let mut m = here.h;
    for (i, row) in m.iter_mut().enumerate() {
        for v in row.iter_mut() {
            *v = -*v;
        }
        row[i] += ridge;
    }
    m
}

fn surface(piece: Piece, priors: &Priors, evidence: &Evidence, at: [f64; 3]) -> Surface {
    let mut out = Surface { value: piece.ln_prior(priors, at), ..Surface::default() };
    let (slope, curve) = piece.scale_prior(priors).slopes(at[1]);
    (out.g[1], out.h[1][1]) = (slope, curve);
    let spread = |(mean, sd): (f64, f64), x: f64| ((mean - x) / (sd * sd), -1.0 / (sd * sd));
    (out.g[0], out.h[0][0]) = spread(priors.concentration, at[0]);
    (out.g[2], out.h[2][2]) = spread(priors.never, at[2]);
    bites(piece, evidence, at, &mut out);
    let p = if piece.never { 1.0 / (1.0 + exp(-at[2])) } else { 0.0 };
    let k = exp(at[0]);
    for (weight, times) in &evidence.censored {
        for &y in times {
            censored(&tail(piece.family, k, at[1], y), p, *weight, &mut out);
        }
    }
    settle(piece, &mut out);
    out
}

/// Leaves out the coordinates a piece doesn't have, and fills the lower half of the Hessian.
fn settle(piece: Piece, out: &mut Surface) {
    for (i, active) in piece.active().into_iter().enumerate() {
        if !active {
            out.g[i] = 0.0;
            for j in 0..3 {
                (out.h[i][j], out.h[j][i]) = (0.0, 0.0);
            }
            out.h[i][i] = -1.0;
        }
    }
    for i in 0..3 {
        for j in 0..i {
            out.h[i][j] = out.h[j][i];
        }
    }
}

fn add(out: &mut Surface, weight: f64, t: &Tail) {
    out.value += weight * t[0];
    out.g[0] += weight * t[1];
    out.g[1] += weight * t[2];
    out.h[0][0] += weight * t[3];
    out.h[0][1] += weight * t[4];
    out.h[1][1] += weight * t[5];
}

fn bites(piece: Piece, e: &Evidence, at: [f64; 3], out: &mut Surface) {
    let [s, l, x] = at;
    let (n, k) = (e.bites, exp(s));
    if piece.never {
        let p = 1.0 / (1.0 + exp(-x));
        out.value += n * libm::log1p(-p);
        out.g[2] -= n * p;
        out.h[2][2] -= n * p * (1.0 - p);
    }
    match piece.family {
        Family::Exponential | Family::Weibull => {
            let lag = e.sum_ln - n * l;
            add(out, 1.0, &[n * s + k * lag - e.sum_ln, n + k * lag, -k * n, k * lag, -k * n, 0.0]);
            for &(y, weight) in &e.bite_times {
                add(out, weight, &tail(piece.family, k, l, y));
            }
        }
        Family::LogNormal => {
            let kk = k * k;
            let lag = e.sum_ln - n * l;
            let square = e.sum_ln_squared - 2.0 * l * e.sum_ln + n * l * l;
            let value = n * (s - LN_SQRT_TWO_PI) - e.sum_ln - 0.5 * kk * square;
            add(out, 1.0, &[value, n - kk * square, kk * lag, -2.0 * kk * square, 2.0 * kk * lag, -kk * n]);
        }
        Family::Gamma => {
            let a = k * k;
            let scaled = e.sum * exp(-l);
            let value = n * (a * (log(a) - l) - ln_gamma(a)) + (a - 1.0) * e.sum_ln - a * scaled;
            let da = n * (log(a) + 1.0 - l - digamma(a)) + e.sum_ln - scaled;
            let daa = n * (1.0 / a - trigamma(a));
            let t: Tail = [
                value,
                2.0 * a * da,
                a * (scaled - n),
                4.0 * a * (da + a * daa),
                2.0 * a * (scaled - n),
                -a * scaled,
            ];
            add(out, 1.0, &t);
        }
    }
}

fn tail(family: Family, k: f64, l: f64, y: f64) -> Tail {
    match family {
        Family::Exponential | Family::Weibull => {
            let w = k * (y - l);
            let h = exp(w.min(500.0));
            [-h, -h * w, k * h, -h * (w + w * w), k * h * (1.0 + w), -k * k * h]
        }
        Family::LogNormal => {
            let z = k * (y - l);
            normal_tail(z, [z, -k, z, -k, 0.0])
        }
        Family::Gamma => {
            let e = exp((y - l) / 3.0);
            let z = 3.0 * k * (e - 1.0) + 1.0 / (3.0 * k);
            let rise = 3.0 * k * (e - 1.0);
            let fall = 1.0 / (3.0 * k);
            normal_tail(z, [rise - fall, -k * e, rise + fall, -k * e, k * e / 3.0])
        }
    }
}

/// ln Q(z) by the chain rule from z's derivatives s, l, ss, sl, ll.
fn normal_tail(z: f64, d: [f64; 5]) -> Tail {
    let (ln, m) = normal_table::ln_upper_and_mills(z);
    let second = -m * (m - z);
    [
        ln,
        -m * d[0],
        -m * d[1],
        second * d[0] * d[0] - m * d[2],
        second * d[0] * d[1] - m * d[3],
        second * d[1] * d[1] - m * d[4],
    ]
}

/// A cast without a bite: ln(p + (1 - p) S).
fn censored(t: &Tail, p: f64, weight: f64, out: &mut Surface) {
    if p == 0.0 {
        add(out, weight, t);
        return;
    }
    let s = exp(t[0]);
    let d = p + (1.0 - p) * s;
    let cq = (1.0 - p) * s / d;
    let cqq = cq * (1.0 - cq);
    let g = p * (1.0 - p) * (1.0 - s) / d;
    let cxq = -p * (1.0 - p) * s / (d * d);
    out.value += weight * log(d);
    out.g[0] += weight * cq * t[1];
    out.g[1] += weight * cq * t[2];
    out.g[2] += weight * g;
    out.h[0][0] += weight * (cqq * t[1] * t[1] + cq * t[3]);
    out.h[0][1] += weight * (cqq * t[1] * t[2] + cq * t[4]);
    out.h[1][1] += weight * (cqq * t[2] * t[2] + cq * t[5]);
    out.h[0][2] += weight * cxq * t[1];
    out.h[1][2] += weight * cxq * t[2];
    out.h[2][2] += weight * (g * (1.0 - 2.0 * p) - g * g);
}

#[cfg(test)]
mod tests {
    use super::super::Wait;
    use super::super::evidence::WeighedWaits;
    use super::super::prior::PRIORS;
    use super::*;

    const FAMILIES: [Family; 4] = [Family::Exponential, Family::Weibull, Family::LogNormal, Family::Gamma];

    fn evidence() -> Evidence {
        let mut waits = WeighedWaits::default();
        for (m, b) in [(12.0, true), (8.0, false), (15.0, true), (20.0, false), (9.0, true), (3.0, false)] {
            waits.add(Wait::new(m, b).unwrap(), 1.0);
            waits.add(Wait::new(m * 1.1, b).unwrap(), 0.5);
        }
        waits.evidence()
    }

    #[test]
    fn derivatives_are_differences() {
        let e = evidence();
        for family in FAMILIES {
            for never in [false, true] {
                let piece = Piece { family, never };
                let at = [if family == Family::Exponential { 0.0 } else { 0.4 }, 2.6, -0.9];
                let mid = surface(piece, &PRIORS, &e, at);
                for i in 0..3 {
                    if !piece.active()[i] {
                        continue;
                    }
                    let h = 1e-5;
                    let (mut up, mut down) = (at, at);
                    up[i] += h;
                    down[i] -= h;
                    let (up, down) = (surface(piece, &PRIORS, &e, up), surface(piece, &PRIORS, &e, down));
                    let slope = (up.value - down.value) / (2.0 * h);
                    assert!((slope - mid.g[i]).abs() < 1e-4 * (1.0 + slope.abs()), "{piece:?} g{i}");
                    for j in 0..3 {
                        if piece.active()[j] {
                            let second = (up.g[j] - down.g[j]) / (2.0 * h);
                            assert!(
                                (second - mid.h[i][j]).abs() < 1e-4 * (1.0 + second.abs()),
                                "{piece:?} h{i}{j}: {second} {}",
                                mid.h[i][j]
                            );
                        }
                    }
                }
            }
        }
    }

    #[test]
    fn the_top_is_flat() {
        for family in FAMILIES {
            for never in [false, true] {
                let piece = Piece { family, never };
                let (at, _) = top(piece, &PRIORS, &evidence());
                let here = surface(piece, &PRIORS, &evidence(), at);
                for g in here.g {
                    assert!(g.abs() < 1e-2, "{piece:?} {g}");
                }
            }
        }
    }
}
