//! Research only: a grid posterior over simple wait shapes.
use super::angler::Angler;
use super::day::{Cast, DAY};
use std::sync::Arc;

pub const BIN: f64 = 0.5;
pub const NB: usize = 120;

#[derive(Clone, Copy, Debug)]
pub struct Tune {
    pub lean: f64,
    pub lean_half: f64,
    pub a0: f64,
    pub cap: f64,
    pub two: f64,
    pub constant: f64,
    pub broad: f64,
    pub by_share: bool,
    pub contamination: f64,
    pub even: bool,
    pub kappa: f64,
    pub cmean: f64,
    pub single: f64,
    pub qpow: f64,
    pub future: f64,
    pub place: f64,
    pub place_sd: f64,
}

pub struct Grid {
    n: usize,
    prior: Vec<f32>,
    log_f: Vec<f32>,
    log_s: Vec<f32>,
    value: Vec<f32>,
    cdf: Vec<f32>,
}

fn phi(x: f64) -> f64 {
    let z = x.abs() / std::f64::consts::SQRT_2;
    let t = 1.0 / (1.0 + 0.5 * z);
    let p = [-1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587, -0.82215223, 0.17087277];
    let s = p.iter().rev().fold(0.0, |a, c| a * t + c);
    let tail = 0.5 * t * (-z * z + s).exp();
    if x >= 0.0 { 1.0 - tail } else { tail }
}

fn window(m: f64, s: f64) -> Vec<f64> {
    (0..=NB).map(|i| if i == 0 { 0.0 } else { phi((i as f64 * BIN / m).ln() / (s / m)) }).collect()
}
fn expo(m: f64) -> Vec<f64> {
    (0..=NB).map(|i| 1.0 - (-(i as f64) * BIN / m).exp()).collect()
}
/// Weibull with median m and sd about s.
fn weib(m: f64, s: f64) -> Vec<f64> {
    // coefficient of variation of a Weibull is about 1.1/k for k in 1.5..10
    let k = (m / s * 1.15).max(1.0);
    let scale = m / std::f64::consts::LN_2.powf(1.0 / k);
    (0..=NB).map(|i| 1.0 - (-(i as f64 * BIN / scale).powf(k)).exp()).collect()
}
fn gamma2(m: f64) -> Vec<f64> {
    (0..=NB).map(|i| { let x = i as f64 * BIN * 2.0 / m; 1.0 - (1.0 + x) * (-x).exp() }).collect()
}

impl Grid {
    pub fn new(tune: Tune, turn: f64, extra: f64) -> Self {
        let mut parts: Vec<(f64, Vec<f64>)> = Vec::new();
        let mut push_group = |weight: f64, group: Vec<(f64, Vec<f64>)>| {
            let total: f64 = group.iter().map(|g| g.0).sum();
            parts.extend(group.into_iter().map(|(w, c)| (w / total * weight, c)));
        };
        let scale = |c: &Vec<f64>, q: f64| c.iter().map(|x| x * q).collect::<Vec<f64>>();
        let shares: [f64; 10] = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.97];
        // prior on the place of a window: log-normal about 12 min
        let place = |m: f64| (-(m / tune.place).ln().powi(2) / (2.0 * tune.place_sd * tune.place_sd)).exp();
        // constant
        let means: Vec<f64> = (0..18).map(|i| 3.0 * 1.25f64.powi(i)).collect();
        push_group(tune.constant, means.iter().map(|&m| ((-(m / tune.cmean).ln().powi(2) / (2.0 * 0.7 * 0.7)).exp(), expo(m))).collect());
        // exponential/gamma with share
        let mut g = Vec::new();
        for &m in means.iter().take(14) {
            for &q in &shares {
                let w = place(m) * q.powf(tune.qpow);
                g.push((w, scale(&expo(m), q)));
                g.push((w, scale(&gamma2(m), q)));
            }
        }
        push_group(tune.broad, g);
        // windows
        let mut wins = Vec::new();
        for s in [0.7, 1.2, 2.0, 3.5, 6.0] {
            let step = (s * 0.8f64).max(0.5);
            let mut m = f64::max(1.0, s * 1.0);
            while m < 42.0 {
                wins.push((place(m) * step / m, window(m, s)));
                if tune.even { wins.push((place(m) * step / m, weib(m, s))); }
                m += step;
            }
        }
        let mut g = Vec::new();
        for (w, c) in &wins {
            for &q in &shares {
                g.push((*w * q.powf(tune.qpow), scale(c, q)));
            }
        }
        push_group(1.0 - tune.constant - tune.broad - tune.two - tune.single, g);
        // even stretches
        let stretch = |a: f64, b: f64| (0..=NB).map(|i| ((i as f64 * BIN - a) / (b - a)).clamp(0.0, 1.0)).collect::<Vec<f64>>();
        let edges = [0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 23.0, 26.0, 30.0, 35.0, 40.0];
        if tune.single > 0.0 {
            let mut g = Vec::new();
            for (i, &a) in edges.iter().enumerate() {
                for &b in &edges[i + 1..] {
                    if b - a < 1.5 || b - a > 16.0 { continue; }
                    for &q in &shares { g.push((place(0.5 * (a + b)) / (i as f64 + 3.0), scale(&stretch(a, b), q))); }
                }
            }
            push_group(tune.single, g);
        }
        if tune.two > 0.0 {
            let mut few = Vec::new();
            for w in [3.0, 6.0] {
                let mut a = 0.0f64;
                while a + w <= 34.0 {
                    few.push((place(a + 0.5 * w) * w / (a + 0.5 * w), a, a + w, stretch(a, a + w)));
                    a += 0.5 * w;
                }
            }
            let mut g = Vec::new();
            for a in &few {
                for b in &few {
                    if b.1 < a.2 + 2.0 { continue; }
                    for (p, q) in [(0.2, 0.2), (0.2, 0.5), (0.4, 0.2), (0.4, 0.5), (0.6, 0.3)] {
                        let c: Vec<f64> = a.3.iter().zip(&b.3).map(|(x, y)| p * x + q * y).collect();
                        g.push((a.0 * b.0, c));
                    }
                }
            }
            push_group(tune.two, g);
        }
        let n = parts.len();
        let mut grid = Self { n, prior: vec![0.0; n], log_f: vec![0.0; n * NB], log_s: vec![0.0; n * (NB + 1)], value: vec![0.0; n * (NB + 1)], cdf: vec![0.0; n * (NB + 1)] };
        let eps = tune.contamination;
        for (k, (w, c)) in parts.iter().enumerate() {
            grid.prior[k] = w.ln() as f32;
            let mut out = 0.0;
            let mut best = 0.0f64;
            let mut rates = vec![0.0; NB + 1];
            for b in 0..NB {
                let f = (c[b + 1] - c[b]) * (1.0 - eps) + eps * BIN / 60.0;
                grid.log_f[b * n + k] = f.ln() as f32;
            }
            for i in 0..=NB {
                let x = c[i] * (1.0 - eps) + eps * i as f64 * BIN / 60.0;
                grid.log_s[i * n + k] = (1.0 - x).max(1e-9).ln() as f32;
                if i > 0 {
                    out += BIN * (1.0 - 0.5 * (c[i] + c[i - 1]));
                    rates[i] = c[i] / (out + turn + extra * c[i]);
                    best = best.max(rates[i]);
                }
            }
            for i in 0..=NB {
                grid.cdf[i * n + k] = c[i] as f32;
                grid.value[i * n + k] = if tune.by_share { rates[i] / best } else { rates[i] } as f32;
            }
        }
        grid
    }
    pub fn len(&self) -> usize { self.n }
}

pub struct Proto {
    grid: Arc<Grid>,
    tune: Tune,
    start: Vec<f32>,
    weight: Vec<f32>,
    p: Vec<f32>,
    curve: Vec<f32>,
    bites: f64,
    book_bites: f64,
    days: f64,
}

impl Proto {
    pub fn new(grid: Arc<Grid>, tune: Tune) -> Self {
        let n = grid.n;
        Self { start: grid.prior.clone(), weight: grid.prior.clone(), grid, tune, p: vec![0.0; n], curve: vec![0.0; NB + 1], bites: 0.0, book_bites: 0.0, days: 0.0 }
    }
    fn add(grid: &Grid, weight: &mut [f32], cast: &Cast, a: f32) {
        if !cast.end_seen { return; }
        let n = grid.n;
        let row = if cast.bite {
            let b = ((cast.minutes / BIN) as usize).min(NB - 1);
            &grid.log_f[b * n..(b + 1) * n]
        } else {
            let b = ((cast.minutes / BIN).round() as usize).min(NB);
            &grid.log_s[b * n..(b + 1) * n]
        };
        for (w, l) in weight.iter_mut().zip(row) { *w += a * l; }
    }
    fn curve(&mut self) {
        let n = self.grid.n;
        let top = self.weight.iter().copied().fold(f32::NEG_INFINITY, f32::max);
        let mut idx = Vec::with_capacity(n);
        let mut total = 0.0;
        self.p.clear();
        for (k, w) in self.weight.iter().enumerate() {
            let x = w - top;
            if x > -12.0 { let e = x.exp(); idx.push(k); self.p.push(e); total += e; }
        }
        let dense = idx.len() * 3 > n;
        if dense {
            self.p = self.weight.iter().map(|w| { let x = w - top; if x > -12.0 { x.exp() } else { 0.0 } }).collect();
        }
        for i in 0..=NB {
            let row = &self.grid.value[i * n..(i + 1) * n];
            let s: f32 = if dense {
                let mut acc = [0.0f32; 8];
                for (v, p) in row.chunks_exact(8).zip(self.p.chunks_exact(8)) { for j in 0..8 { acc[j] += v[j] * p[j]; } }
                acc.iter().sum()
            } else { idx.iter().zip(&self.p).map(|(&k, p)| row[k] * p).sum() };
            self.curve[i] = s / total;
        }
    }
}

impl Proto {
    /// Leaves the cast beyond `t` where what it may show is worth the minutes.
    fn look(&self, t: usize, clock: f64) -> usize {
        let g = &self.grid;
        let n = g.n;
        let top = self.weight.iter().copied().fold(f32::NEG_INFINITY, f32::max);
        let mut total = 0.0f32;
        let steps: Vec<usize> = [1, 2, 3, 4, 6, 8, 11, 14, 18, 22, 27, 32, 38, 44, 50, 60, 70].iter().map(|d| t + d).filter(|&x| x <= 90).collect();
        let mut gain = vec![0.0f32; steps.len()];
        for (k, w) in self.weight.iter().enumerate() {
            let x = w - top;
            if x < -9.0 { continue; }
            let w = x.exp();
            total += w;
            let (v0, c0) = (g.value[t * n + k], g.cdf[t * n + k]);
            let mut best = v0;
            for (j, &s) in steps.iter().enumerate() {
                best = best.max(g.value[s * n + k]);
                gain[j] += w * (g.cdf[s * n + k] - c0) * (best - v0);
            }
        }
        let horizon = DAY - clock + self.tune.future * self.days;
        let mut pick = (0.0, t);
        for (j, &s) in steps.iter().enumerate() {
            let cost = f64::from(self.curve[t] - self.curve[s]) * (s as f64 * BIN + 2.0);
            let net = self.tune.kappa * horizon * f64::from(gain[j] / total) - cost;
            if net > pick.0 { pick = (net, s); }
        }
        pick.1
    }
}

impl Angler for Proto {
    fn begin(&mut self, book: &[Vec<Cast>]) {
        self.weight.clone_from(&self.grid.prior);
        self.book_bites = 0.0;
        self.days = book.len() as f64;
        let n_bites: f64 = book.iter().flatten().filter(|c| c.bite).count() as f64;
        let a = if n_bites > 0.0 { self.tune.a0.min(self.tune.cap / n_bites) } else { 0.0 };
        for day in book { for c in day { Self::add(&self.grid, &mut self.weight, c, a as f32); } }
        self.book_bites = a * n_bites;
        self.bites = 0.0;
    }
    fn leave(&mut self, clock: f64) -> f64 {
        let _ = DAY;
        self.curve();
        let best = self.curve.iter().copied().fold(0.0, f32::max);
        let slack = self.tune.lean / (1.0 + (self.bites + self.book_bites) / self.tune.lean_half);
        let mut t = 0;
        for i in 1..=NB { if f64::from(self.curve[i]) >= f64::from(best) * (1.0 - slack) - 1e-9 { t = i; } }
        if self.tune.kappa > 0.0 && t < 90 { t = self.look(t, clock); }
        if t == NB { 300.0 } else { t as f64 * BIN }
    }
    fn learn(&mut self, cast: Cast) {
        if cast.bite && cast.end_seen { self.bites += 1.0; }
        let mut w = std::mem::take(&mut self.weight);
        Self::add(&self.grid, &mut w, &cast, 1.0);
        self.weight = w;
    }
}
