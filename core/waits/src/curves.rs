//! The few curves that all shapes are made of.
//!
//! The share bitten of a shape is a multiple of one curve, or the sum of multiples of two. Whatever is linear in the share bitten
//! needn't be summed shape by shape: the weights of the shapes are summed for each curve first, and the curves are then summed
//! once.

use super::wait_law::Law;

/// Points in time at which the shapes are known, the splash included.
pub(crate) const POINTS: usize = 121;
/// Shares of casts that get a bite at all.
pub(crate) const SHARES: [f64; 10] = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.97];

/// Share bitten by each time.
pub(crate) type Curve = [f64; POINTS];

/// Times by which the transposition goes on at once, so that what it reads stays in the cache.
const BLOCK: usize = 16;

/// Which curves a shape is made of, and the share of each. A shape of one curve has it twice, the second time with a share of 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct MadeOf {
    pub curves: [usize; 2],
    pub shares: [f64; 2],
}

impl MadeOf {
    /// A share of one curve.
    pub(crate) fn one(curve: usize, share: f64) -> Self {
        Self { curves: [curve; 2], shares: [share, 0.0] }
    }

    /// Calls `take` with each curve and its share.
    #[inline]
    pub(crate) fn each(self, mut take: impl FnMut(usize, f64)) {
        take(self.curves[0], self.shares[0]);
        if self.shares[1] != 0.0 {
            take(self.curves[1], self.shares[1]);
        }
    }
}

/// The curves while shapes are made of them: for each the share bitten by each time, and the integral of that.
#[derive(Debug)]
pub(crate) struct Curves {
    times: Curve,
    list: Vec<[Curve; 2]>,
}

impl Curves {
    /// None yet.
    pub(crate) fn new(times: &[f64]) -> Self {
        Self { times: std::array::from_fn(|i| times[i]), list: Vec::new() }
    }

    /// Adds a curve and returns its number.
    pub(crate) fn add(&mut self, bitten_by: impl Fn(f64) -> f64) -> usize {
        let times = &self.times;
        let bitten = times.map(bitten_by);
        let (mut sum, mut area) = (0.0, [0.0; POINTS]);
        for i in 1..POINTS {
            sum += (times[i] - times[i - 1]) * 0.5 * (bitten[i] + bitten[i - 1]);
            area[i] = sum;
        }
        self.list.push([bitten, area]);
        self.list.len() - 1
    }

    /// Adds the curve of a law, and returns its number.
    pub(crate) fn add_law(&mut self, law: &Law) -> usize {
        self.add(|t| law.bitten_by(t))
    }

    /// Writes the share bitten by each time, and the mean of the smaller of wait and time, of a shape.
    pub(crate) fn write(&self, of: &MadeOf, bitten: &mut [f32; POINTS], waiting: &mut [f32; POINTS]) {
        let [p, q] = of.shares;
        let [[first, area], [second, other]] = of.curves.map(|curve| &self.list[curve]);
        if q == 0.0 {
            for i in 0..POINTS {
                bitten[i] = (p * first[i]) as f32;
                waiting[i] = (self.times[i] - p * area[i]) as f32;
            }
            return;
        }
        for i in 0..POINTS {
            bitten[i] = (p * first[i] + q * second[i]) as f32;
            waiting[i] = (self.times[i] - (p * area[i] + q * other[i])) as f32;
        }
    }

    /// Share bitten by each time, one row for each curve.
    pub(crate) fn rows(&self) -> Vec<f32> {
        self.list.iter().flat_map(|[bitten, _]| bitten.map(|b| b as f32)).collect()
    }
}

/// From one row for each shape to one row for each time.
pub(crate) fn transposed(rows: &[f32]) -> Vec<f32> {
    let mut out = vec![0.0; rows.len()];
    let (rows, _) = rows.as_chunks::<POINTS>();
    for first in (0..POINTS).step_by(BLOCK) {
        let until = POINTS.min(first + BLOCK);
        for (shape, row) in rows.iter().enumerate() {
            for (i, b) in row[first..until].iter().enumerate() {
                out[(first + i) * rows.len() + shape] = *b;
            }
        }
    }
    out
}
