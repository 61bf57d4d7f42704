//! Sums over the shapes that count, each by its weight.
//!
//! Only rates are summed shape by shape. All else is linear in the share bitten and is summed by curves (see [`super::curves`]).

use super::costs::Costs;
use super::curves::MadeOf;
use super::fed::FedShapes;
use super::leave_time::Means;
use super::shapes::{Likely, POINTS};
use std::sync::Arc;

/// Shapes below this weight hardly matter for what exploring would show.
pub(crate) const LIGHTEST: f32 = 3e-5;

/// Results that follow from the weights of a record.
#[derive(Debug, Clone)]
pub(crate) struct Derived {
    pub likely: Likely,
    /// The shapes if they aren't the posterior's own, but those for casts in fed water or in other water.
    pub(crate) own: Option<Arc<FedShapes>>,
    pub means: Means,
    /// The point in time to leave the next cast for.
    pub leave: usize,
}

/// The rows of the shapes that count.
#[derive(Clone, Copy)]
pub(crate) struct Rows<'a> {
    pub(crate) bitten: &'a [[f32; POINTS]],
    pub(crate) waiting: &'a [[f32; POINTS]],
    pub(crate) ever: &'a [f64],
    pub(crate) curves: &'a [[f32; POINTS]],
    /// Without it every shape is a curve of its own.
    pub(crate) made_of: Option<&'a [MadeOf]>,
}

impl<'a> Rows<'a> {
    /// Share of casts with a bite by each time.
    pub(crate) fn bitten(self, shape: usize) -> &'a [f32; POINTS] {
        &self.bitten[shape]
    }

    /// Mean of the smaller of wait and time.
    pub(crate) fn waiting(self, shape: usize) -> &'a [f32; POINTS] {
        &self.waiting[shape]
    }

    /// Bites per minute by leave time.
    pub(crate) fn rates(self, shape: usize, costs: Costs) -> [f32; POINTS] {
        let (bitten, waiting) = (self.bitten(shape), self.waiting(shape));
        std::array::from_fn(|i| single_rate(bitten[i], waiting[i], costs))
    }

    fn made_of(self, shape: usize) -> MadeOf {
        self.made_of.map_or(MadeOf::one(shape, 1.0), |all| all[shape])
    }
}

/// As [`Costs::rate`], of the figures as they are kept.
#[inline]
fn single_rate(bitten: f32, waiting: f32, costs: Costs) -> f32 {
    bitten / (waiting + costs.turn_round_min as f32 + costs.bite_extra_min as f32 * bitten)
}

/// The sums over the shapes that are made of a curve, each weighted by its share of it.
#[derive(Debug, Clone)]
pub(crate) struct OfCurve {
    curve: usize,
    /// Their weights.
    weight: f64,
    /// Their weights times their rates at the best leave time.
    fresh: f64,
    /// The weights of those that are heavy enough for exploring.
    explored: f64,
    /// The weights of these times their rates, by leave time.
    pub(crate) rates: [f32; POINTS],
}

/// Sums over the shapes that count.
pub(crate) struct Sums<'a> {
    rows: Rows<'a>,
    costs: Costs,
    /// By curve, of those that count.
    pub(crate) curves: Vec<OfCurve>,
    /// Where each curve is in that list.
    slots: Vec<Option<u32>>,
    /// Mean bites per minute by leave time.
    pub(crate) rate: [f32; POINTS],
    /// The weights of all shapes that are heavy enough for exploring.
    explored: f64,
}

impl<'a> Sums<'a> {
    pub(crate) fn new(rows: Rows<'a>, costs: Costs, likely: &[(usize, f32)]) -> Self {
        let slots = vec![None; rows.curves.len()];
        let mut sums = Self { rows, costs, curves: Vec::new(), slots, rate: [0.0; POINTS], explored: 0.0 };
        for &(shape, weight) in likely {
            sums.add(shape, weight);
        }
        sums
    }

    fn add(&mut self, shape: usize, weight: f32) {
        let rates = self.rows.rates(shape, self.costs);
        for (mean, rate) in self.rate.iter_mut().zip(&rates) {
            *mean += weight * rate;
        }
        let (explored, weight) = (weight > LIGHTEST, f64::from(weight));
        if explored {
            self.explored += weight;
        }
        self.rows.made_of(shape).each(|curve, share| {
            let (sums, weight) = (self.of(curve), weight * share);
            sums.weight += weight;
            if explored {
                sums.explored += weight;
                for (sum, rate) in sums.rates.iter_mut().zip(&rates) {
                    *sum += weight as f32 * rate;
                }
            }
        });
    }

    fn of(&mut self, curve: usize) -> &mut OfCurve {
        let slot = *self.slots[curve].get_or_insert_with(|| {
            self.curves.push(OfCurve { curve, weight: 0.0, fresh: 0.0, explored: 0.0, rates: [0.0; POINTS] });
            self.curves.len() as u32 - 1
        });
        &mut self.curves[slot as usize]
    }

    /// Share bitten by each time.
    pub(crate) fn curve(&self, of: &OfCurve) -> &'a [f32; POINTS] {
        &self.rows.curves[of.curve]
    }

    /// The sum of the curves, each weighted by `weight`.
    fn mixed(&self, weight: impl Fn(&OfCurve) -> f64) -> [f64; POINTS] {
        let mut mixed = [0.0; POINTS];
        for of in &self.curves {
            let weight = weight(of);
            for (sum, bitten) in mixed.iter_mut().zip(self.curve(of)) {
                *sum += weight * f64::from(*bitten);
            }
        }
        mixed
    }

    /// Mean of the smaller of wait and time over the shapes that are heavy enough for exploring, times their weight.
    pub(crate) fn exploring_waiting(&self, times: &[f64]) -> [f64; POINTS] {
        waiting(times, self.explored, &self.mixed(|of| of.explored))
    }

    /// Posterior means by leave time; `known` of the times are within the horizon.
    pub(crate) fn means(&mut self, likely: &[(usize, f32)], times: &[f64], known: usize) -> Means {
        let best = top(&self.rate);
        let (mut all, mut all_fresh, mut ever) = (0.0, 0.0, 0.0);
        for &(shape, weight) in likely {
            let weight = f64::from(weight);
            let rate = single_rate(self.rows.bitten(shape)[best], self.rows.waiting(shape)[best], self.costs);
            let fresh = weight * f64::from(rate);
            all += weight;
            all_fresh += fresh;
            ever += weight * self.rows.ever[shape];
            self.rows.made_of(shape).each(|curve, share| self.of(curve).fresh += fresh * share);
        }
        let bitten = self.mixed(|of| of.weight);
        let fresh = self.mixed(|of| of.fresh);
        Means {
            times: times[1..].to_vec(),
            rate: self.rate[1..].iter().map(|&r| f64::from(r)).collect(),
            waiting: waiting(times, all, &bitten)[1..].to_vec(),
            bitten: bitten[1..].to_vec(),
            ever,
            fresh: fresh[1..].iter().map(|fresh| all_fresh - fresh).collect(),
            known,
        }
    }
}

/// The integral of the share still waiting, by shapes of that weight together.
fn waiting(times: &[f64], weight: f64, bitten: &[f64; POINTS]) -> [f64; POINTS] {
    let (mut sum, mut out) = (0.0, [0.0; POINTS]);
    for i in 1..POINTS {
        sum += (times[i] - times[i - 1]) * (weight - 0.5 * (bitten[i] + bitten[i - 1]));
        out[i] = sum;
    }
    out
}

/// The index of the first maximum.
pub(crate) fn top(values: &[f32]) -> usize {
    let mut best = 0;
    for (i, v) in values.iter().enumerate() {
        if *v > values[best] {
            best = i;
        }
    }
    best
}
