//! How likely one wait is under each of the shapes.

use super::Wait;
use super::shapes::{POINTS, Shapes};

/// The likelihood of a wait under a shape, as a position in the shape's row.
pub(crate) struct Likelihood {
    point: usize,
    /// With a bite: one over the step in minutes. Without: how far into the step the cast ended.
    x: f64,
    /// The contribution of stray bites: their density, or the share of casts without one.
    stray: f64,
    shape: f64,
    bite: bool,
}

impl Likelihood {
    pub(crate) fn new(shapes: &Shapes, wait: Wait) -> Self {
        let minutes = wait.minutes();
        let times = &shapes.times;
        let point = times.partition_point(|&t| t <= minutes).clamp(1, POINTS - 1) - 1;
        let step = times[point + 1] - times[point];
        let (x, stray) = if wait.is_bite() {
            (1.0 / step, shapes.stray / 60.0)
        } else {
            (((minutes - times[point]) / step).min(1.0), shapes.stray * (1.0 - minutes / 60.0).max(0.0))
        };
        Self { point, x, stray, shape: 1.0 - shapes.stray, bite: wait.is_bite() }
    }

    /// Shares bitten by the times before and after, of all shapes.
    pub(crate) fn rows<'a>(&self, shapes: &'a Shapes) -> (&'a [f32], &'a [f32]) {
        let n = shapes.count();
        shapes.bitten_at[self.point * n..][..2 * n].split_at(n)
    }

    /// Multiplies weights by how likely each shape makes the wait, and also those of a day that changes, if there are any.
    pub(crate) fn weigh(&self, shapes: &Shapes, weights: &mut [f64], moving: &mut [f64]) {
        let (before, after) = self.rows(shapes);
        if moving.is_empty() {
            for ((weight, a), b) in weights.iter_mut().zip(before).zip(after) {
                *weight *= self.of(*a, *b);
            }
            return;
        }
        for (((weight, moving), a), b) in weights.iter_mut().zip(moving).zip(before).zip(after) {
            let likely = self.of(*a, *b);
            *weight *= likely;
            *moving *= likely;
        }
    }

    /// The same among the casts that meet fish, for rows of shares bitten by the times before and after, and one over the share
    /// of casts that meet them. In single precision: the weights of spots have no more.
    pub(crate) fn among(&self, before: &[f32], after: &[f32], over: &[f32]) -> Vec<f32> {
        let (shape, x, stray) = (self.shape as f32, self.x as f32, self.stray as f32);
        let rows = before.iter().zip(after).zip(over);
        if self.bite {
            rows.map(|((a, b), over)| shape * (b - a) * x * over + stray).collect()
        } else {
            let none = |((a, b), over): ((&f32, &f32), &f32)| {
                let left = shape * (1.0 - (a + (b - a) * x) * over) + stray;
                if left > 1e-6 { left } else { 1e-6 }
            };
            rows.map(none).collect()
        }
    }

    #[inline]
    pub(crate) fn of(&self, before: f32, after: f32) -> f64 {
        let (a, b) = (f64::from(before), f64::from(after));
        if self.bite {
            self.shape * (b - a) * self.x + self.stray
        } else {
            higher(self.shape * (1.0 - a - (b - a) * self.x) + self.stray, 1e-6)
        }
    }
}

/// The higher of two numbers. Unlike `f64::max` it need not look whether one isn't a number, and is one instruction.
#[inline]
fn higher(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

/// The highest of weights, 0 for none.
pub(crate) fn heaviest(weights: &[f64]) -> f64 {
    // Several at a time, none of which has to wait for the one before.
    let (chunks, rest) = weights.as_chunks::<8>();
    let mut top = [0.0; 8];
    for chunk in chunks {
        top.iter_mut().zip(chunk).for_each(|(top, w)| *top = higher(*top, *w));
    }
    top.into_iter().chain(rest.iter().copied()).fold(0.0, higher)
}
