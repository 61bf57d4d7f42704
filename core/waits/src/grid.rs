//! The posterior of one piece on a grid: quadrature by equal steps in whitened coordinates, placed
//! first by the curvature at the top and then by the moments found there (Naylor and Smith 1982).
//!
//! Equal steps of one standard deviation integrate a normal density to nine digits. The error comes from what
//! is beyond the outermost step, and from the difference between the posterior and a normal density.

use super::evidence::Evidence;
use super::laplace::{Family, LN_CONCENTRATION, Piece, top};
use super::matrix;
use super::normal_table;
use super::prior::Priors;
use super::special::{LN_SQRT_TWO_PI, ln_gamma};
use super::table::Table;
use libm::{exp, log};

/// How fine a grid is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Fineness {
    /// Nodes along shape, scale and never-bite share.
    pub nodes: [usize; 3],
    /// How many standard deviations the grid reaches either side.
    pub reach: f64,
    /// Steps of the tables of standard laws; 0 for none, if only the likelihood is needed.
    pub table: usize,
}

/// The grid from which the moments for the final grid are taken.
const AIM: Fineness = Fineness { nodes: [7, 7, 5], reach: 3.2, table: 0 };

/// Nodes with one shape and scale; `shares` runs over the never-bite shares.
#[derive(Debug, Clone)]
pub(crate) struct Node {
    /// Which table of the piece.
    pub table: usize,
    /// ln concentration.
    pub ln_concentration: f64,
    /// ln scale.
    pub ln_scale: f64,
    /// First and last entry in the lists of shares and weights.
    pub first: usize,
    pub last: usize,
}

/// The posterior of one piece.
#[derive(Debug, Clone)]
pub(crate) struct Grid {
    pub piece: Piece,
    pub tables: Vec<Table>,
    pub nodes: Vec<Node>,
    /// Never-bite share of each entry.
    pub shares: Vec<f64>,
    /// Weight of each entry; they sum to 1 within the piece.
    pub weights: Vec<f64>,
    /// ln of the integral of likelihood times prior.
    pub ln_evidence: f64,
}

/// The place of a grid: a centre and a lower triangular spread.
struct Frame {
    centre: [f64; 3],
    spread: [[f64; 3]; 3],
}

impl Grid {
    /// The posterior of a piece on a coarse grid around its top, without tables.
    pub fn aim(piece: Piece, priors: &Priors, evidence: &Evidence) -> Self {
        let (centre, covariance) = top(piece, priors, evidence);
        Self::build(piece, priors, evidence, AIM, &frame(centre, &covariance))
    }

    /// The same posterior on a finer grid placed by the moments of this one.
    pub fn refined(&self, priors: &Priors, evidence: &Evidence, fineness: Fineness) -> Self {
        let (centre, covariance) = self.moments();
        Self::build(self.piece, priors, evidence, fineness, &frame(centre, &covariance))
    }

    fn build(piece: Piece, priors: &Priors, evidence: &Evidence, fineness: Fineness, frame: &Frame) -> Self {
        let active = piece.active();
        let axis = |i: usize| steps(if active[i] { fineness.nodes[i] } else { 1 }, fineness.reach);
        let (shapes, scales, shares) = (axis(0), axis(1), axis(2));
        let l = &frame.spread;
        let mut grid = Self {
            piece,
            tables: Vec::with_capacity(shapes.len()),
            nodes: Vec::with_capacity(shapes.len() * scales.len()),
            shares: Vec::with_capacity(shapes.len() * scales.len() * shares.len()),
            weights: Vec::with_capacity(shapes.len() * scales.len() * shares.len()),
            ln_evidence: 0.0,
        };
        for &u in &shapes {
            let s = frame.centre[0] + l[0][0] * u;
            if active[0] && !(LN_CONCENTRATION.0..=LN_CONCENTRATION.1).contains(&s) {
                continue;
            }
            let row = Row::new(piece, priors, evidence, s, fineness.table);
            for &v in &scales {
                let scale = frame.centre[1] + l[1][0] * u + l[1][1] * v;
                let x = frame.centre[2] + l[2][0] * u + l[2][1] * v;
                let first = grid.shares.len();
                row.evaluate(scale, shares.iter().map(|w| x + l[2][2] * w), &mut grid);
                let node = Node {
                    table: grid.tables.len(),
                    ln_concentration: s,
                    ln_scale: scale,
                    first,
                    last: grid.shares.len(),
                };
                grid.nodes.push(node);
            }
            grid.tables.push(row.table);
        }
        grid.normalise(ln_volume(&[&shapes, &scales, &shares], l, active));
        grid
    }

    /// Turns log posteriors into weights.
    fn normalise(&mut self, ln_volume: f64) {
        let top = self.weights.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        if !top.is_finite() {
            // Nothing on this grid is possible: the piece gets no weight.
            self.ln_evidence = f64::NEG_INFINITY;
            self.weights.fill(0.0);
            return;
        }
        let mut sum = 0.0;
        for weight in &mut self.weights {
            *weight = exp(*weight - top);
            sum += *weight;
        }
        for weight in &mut self.weights {
            *weight /= sum;
        }
        self.ln_evidence = top + log(sum) + ln_volume;
    }

    /// Mean and covariance of (ln concentration, ln scale, logit share).
    fn moments(&self) -> ([f64; 3], [[f64; 3]; 3]) {
        let mut mean = [0.0; 3];
        let mut square = [[0.0; 3]; 3];
        for node in &self.nodes {
            for i in node.first..node.last {
                let w = self.weights[i];
                let p = self.shares[i];
                let x = if self.piece.never { log(p / (1.0 - p)) } else { 0.0 };
                let at = [node.ln_concentration, node.ln_scale, x];
                for a in 0..3 {
                    mean[a] += w * at[a];
                    for b in 0..=a {
                        square[a][b] += w * at[a] * at[b];
                    }
                }
            }
        }
        let mut covariance = [[0.0; 3]; 3];
        for a in 0..3 {
            for b in 0..=a {
                covariance[a][b] = square[a][b] - mean[a] * mean[b];
                covariance[b][a] = covariance[a][b];
            }
            if !self.piece.active()[a] {
                covariance[a] = [0.0; 3];
                for row in &mut covariance {
                    row[a] = 0.0;
                }
                covariance[a][a] = 1.0;
            }
        }
        (mean, covariance)
    }
}

fn frame(centre: [f64; 3], covariance: &[[f64; 3]; 3]) -> Frame {
    let spread = matrix::cholesky(covariance).unwrap_or_else(|| {
        let mut diagonal = [[0.0; 3]; 3];
        for i in 0..3 {
            diagonal[i][i] = covariance[i][i].abs().sqrt().max(1e-3);
        }
        diagonal
    });
    Frame { centre, spread }
}

/// Equal steps from -reach to reach; a single one in the middle if the coordinate is missing.
fn steps(count: usize, reach: f64) -> Vec<f64> {
    if count < 2 {
        return vec![0.0];
    }
    let h = 2.0 * reach / (count - 1) as f64;
    (0..count).map(|i| h * i as f64 - reach).collect()
}

fn ln_volume(axes: &[&[f64]; 3], spread: &[[f64; 3]; 3], active: [bool; 3]) -> f64 {
    (0..3)
        .filter(|&i| active[i] && axes[i].len() > 1)
        .map(|i| log((axes[i][1] - axes[i][0]) * spread[i][i]))
        .sum()
}

/// The most nodes along the never-bite share.
const MOST_SHARES: usize = 32;
/// Steps of the gamma table if it is needed only for the likelihood.
const GAMMA_TAIL_STEPS: usize = 64;

fn table_for(family: Family, s: f64, steps: usize) -> Table {
    match (family, steps) {
        (Family::Gamma, 0) => Table::new(family, s, GAMMA_TAIL_STEPS),
        (_, 0) => Table::none(),
        _ => Table::new(family, s, steps),
    }
}

/// All nodes of one shape, for which everything that depends on the shape alone is computed once.
struct Row<'a> {
    piece: Piece,
    priors: &'a Priors,
    evidence: &'a Evidence,
    s: f64,
    k: f64,
    table: Table,
    /// Weibull: weighted sum of t^k over the bites, then over all casts.
    powers_bites: f64,
    powers_all: f64,
    /// Weibull: t^k of each cast without a bite, by group.
    powers: Vec<Vec<f64>>,
    ln_gamma: f64,
}

impl<'a> Row<'a> {
    fn new(piece: Piece, priors: &'a Priors, evidence: &'a Evidence, s: f64, table: usize) -> Self {
        let k = exp(s);
        let weibull = matches!(piece.family, Family::Weibull | Family::Exponential);
        let mut row = Self {
            piece,
            priors,
            evidence,
            s,
            k,
            table: table_for(piece.family, s, table),
            powers_bites: 0.0,
            powers_all: 0.0,
            powers: Vec::new(),
            ln_gamma: if piece.family == Family::Gamma { ln_gamma(k * k) } else { 0.0 },
        };
        if weibull {
            row.powers_bites = evidence.bite_times.iter().map(|&(y, w)| w * exp(k * y)).sum();
            row.powers_all = row.powers_bites;
            for (weight, times) in &evidence.censored {
                let powers: Vec<f64> = times.iter().map(|&y| exp(k * y)).collect();
                row.powers_all += weight * powers.iter().sum::<f64>();
                row.powers.push(powers);
            }
        }
        row
    }

    /// Appends never-bite shares and log posteriors of the nodes at one scale.
    fn evaluate(&self, ln_scale: f64, logits: impl Iterator<Item = f64>, grid: &mut Grid) {
        let mut base = self.bites(ln_scale);
        let first = grid.shares.len();
        if !self.piece.never {
            base += self.without(ln_scale);
            grid.shares.push(0.0);
            grid.weights.push(base + self.piece.ln_prior(self.priors, [self.s, ln_scale, 0.0]));
            return;
        }
        for x in logits {
            let p = 1.0 / (1.0 + exp(-x));
            let ln_prior = self.piece.ln_prior(self.priors, [self.s, ln_scale, x]);
            grid.shares.push(p);
            grid.weights.push(base + ln_prior + self.evidence.bites * libm::log1p(-p));
        }
        self.without_shares(ln_scale, &grid.shares[first..], &mut grid.weights[first..]);
    }

    /// Log density of the bites, never-bite share apart.
    fn bites(&self, l: f64) -> f64 {
        let (e, k, s) = (self.evidence, self.k, self.s);
        match self.piece.family {
            Family::Exponential | Family::Weibull => {
                e.bites * (s - k * l) + (k - 1.0) * e.sum_ln - exp(-k * l) * self.powers_bites
            }
            Family::LogNormal => {
                let square = e.sum_ln_squared - 2.0 * l * e.sum_ln + e.bites * l * l;
                e.bites * (s - LN_SQRT_TWO_PI) - e.sum_ln - 0.5 * k * k * square
            }
            Family::Gamma => {
                let a = k * k;
                let ln_rate = 2.0 * s - l;
                e.bites * (a * ln_rate - self.ln_gamma) + (a - 1.0) * e.sum_ln - exp(ln_rate) * e.sum
            }
        }
    }

    /// Sum of ln S over the casts without a bite.
    fn without(&self, l: f64) -> f64 {
        match self.piece.family {
            Family::Exponential | Family::Weibull => {
                -exp(-self.k * l) * (self.powers_all - self.powers_bites)
            }
            Family::LogNormal => self.sum_without(|y| normal_table::ln_upper_and_mills(self.k * (y - l)).0),
            Family::Gamma => self.sum_without(|y| self.table.ln_still(y - l)),
        }
    }

    fn sum_without(&self, ln_still: impl Fn(f64) -> f64) -> f64 {
        let groups = self.evidence.censored.iter();
        groups.map(|(weight, times)| weight * times.iter().map(|&y| ln_still(y)).sum::<f64>()).sum()
    }

    /// Adds the sum of ln(p + (1 - p) S) over the casts without a bite to each share's log posterior.
    fn without_shares(&self, l: f64, shares: &[f64], ln: &mut [f64]) {
        let mut products = [1.0; MOST_SHARES];
        let products = &mut products[..shares.len()];
        let factor = exp(-self.k * l);
        for (group, (weight, times)) in self.evidence.censored.iter().enumerate() {
            for (i, &y) in times.iter().enumerate() {
                let still = match self.piece.family {
                    Family::Exponential | Family::Weibull => exp(-factor * self.powers[group][i]),
                    Family::LogNormal => normal_table::upper(self.k * (y - l)),
                    Family::Gamma => exp(self.table.ln_still(y - l)),
                };
                for (product, p) in products.iter_mut().zip(shares) {
                    *product *= p + (1.0 - p) * still;
                }
                // Shares are above e^-16, so sixteen factors never underflow.
                if i % 16 == 15 {
                    fold(products, *weight, ln);
                }
            }
            fold(products, *weight, ln);
        }
    }
}

fn fold(products: &mut [f64], weight: f64, ln: &mut [f64]) {
    for (product, ln) in products.iter_mut().zip(ln) {
        *ln += weight * log(product.max(1e-300));
        *product = 1.0;
    }
}
