//! The shapes of the wait that the posterior weighs.
//!
//! The posterior must be quick on a phone and must not be misled by bites in two bunches, by a sharp end of
//! the bites, or by a single stray one. So it weighs a fixed set of simple shapes: a constant rate, widely
//! spread waits (exponential and gamma), one bunch (log-normal), bites spread evenly over one stretch, and
//! two bunches. Each but the first comes with several shares of casts that get a bite at all.

pub(crate) use super::curves::POINTS;
use super::curves::{Curves, MadeOf, SHARES, transposed};
use super::day_effects::{DayEffects, Family};
use super::drift::{Drift, Stop};
use super::kinds::Kinds;
use super::wait_law::Law;
use libm::{exp, log};
use std::sync::{Arc, OnceLock};

/// Shapes below this weight are left out of means, if the largest weight is 1.
pub(crate) const NEGLIGIBLE: f64 = 1e-5;

/// Shapes that count, with their weights, which sum to 1.
pub(crate) type Likely = Vec<(usize, f32)>;

/// Shares of casts with a bite in the first and in the second of two bunches.
const TWO_SHARES: [(f64, f64); 5] = [(0.2, 0.2), (0.2, 0.5), (0.4, 0.2), (0.4, 0.5), (0.6, 0.3)];
/// The weight of a bunch of twice the width is smaller by this power of two. Set by simulation (docs/advice.md).
const WIDTH_POWER: f64 = 0.7;
/// How many steps of the grid of constant rates a changing rate moves at once. Four steps change it by nearly
/// a half; a smaller change would not show within a day.
const PACES_A_MOVE: usize = 4;
/// Ends of the stretches with even bites, minutes.
const EDGES: [f64; 20] = [
    0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 23.0, 26.0, 30.0, 35.0,
    40.0,
];

/// The prior weights of shapes before the first cast.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShapePriors {
    /// Probability of a constant rate, every cast getting a bite in the end.
    pub constant: f64,
    /// Probability of widely spread waits (exponential and gamma of shape 2), with some casts getting no
    /// bite.
    pub broad: f64,
    /// Probability of one stretch of even bites.
    pub even: f64,
    /// Probability of two bunches. One bunch has the rest.
    pub two: f64,
    /// Typical wait of a bunch (median, minutes) and the standard deviation of its ln.
    pub place: (f64, f64),
    /// Typical mean wait at a constant rate (minutes) and the standard deviation of its ln.
    pub pace: (f64, f64),
    /// Share of casts with a stray bite that no shape accounts for, even over an hour.
    pub stray: f64,
}

/// The priors in use. Reasons: bites on cold stillwaters come a few per hour and waits run to 40 minutes or
/// so (common practice, no source), so a bunch is put near 11 minutes, nineteen in twenty between 3 and 45,
/// and a constant rate near one in 15, between 4 and 60. The simplest assumption, that length does not matter
/// much, gets the most weight.
pub const SHAPE_PRIORS: ShapePriors = ShapePriors {
    constant: 0.5,
    broad: 0.1,
    even: 0.092,
    two: 0.15,
    place: (10.5, 0.7),
    pace: (15.0, 0.7),
    stray: 0.01,
};

/// The set of shapes.
#[derive(Debug, Clone)]
pub struct Shapes {
    /// Minutes at which each shape is tabulated; the first is 0.
    pub(crate) times: Vec<f64>,
    /// Prior weight of each, the highest 1.
    pub(crate) prior: Vec<f64>,
    /// Share of casts with a bite by each time, one row for each shape.
    pub(crate) bitten: Vec<f32>,
    /// The same with one row for each time, in the order in which a likelihood reads it.
    pub(crate) bitten_at: Vec<f32>,
    /// Mean of the smaller of wait and time, one row for each shape.
    pub(crate) waiting: Vec<f32>,
    /// What each shape is made of.
    pub(crate) made_of: Vec<MadeOf>,
    /// Share bitten by each time, one row for each of the curves that shapes are made of.
    pub(crate) curves: Vec<f32>,
    /// Share of casts that ever get a bite.
    pub(crate) ever: Vec<f64>,
    /// How many shapes are constant rates; these come first.
    pub(crate) constant: usize,
    /// See [`ShapePriors::stray`].
    pub(crate) stray: f64,
    /// The shapes grouped into families; see [`Family`].
    pub(crate) families: Vec<Family>,
    /// The position of each curve among those that differ only in place.
    pub(crate) stops: Vec<Stop>,
    /// The first shape of each form: constant rates, broad waits, one bunch, even bites, two bunches.
    pub(crate) forms: Vec<usize>,
    /// The kinds of shapes that a club's weights distinguish, computed when first needed.
    kinds: OnceLock<Kinds>,
    /// How weight moves on a changing day, computed for the first cast.
    drift: OnceLock<Drift>,
    /// The day effects, computed for the first book.
    day_effects: OnceLock<DayEffects>,
}

/// A shape before its share of casts with a bite is set: its weight, and its curve.
type Weighed = (f64, usize);
/// The position of a curve among those that differ only in place: which of them belong together, and the
/// step.
type Place = (usize, usize);
/// A shape: weight, share of casts that ever get a bite, what it is made of, keenness (see [`Family`]).
type Shape = (f64, f64, MadeOf, [f64; 2]);

static USUAL: OnceLock<Arc<Shapes>> = OnceLock::new();

impl Shapes {
    /// The shapes with their usual weights, built once.
    pub fn usual() -> Arc<Self> {
        Arc::clone(USUAL.get_or_init(|| Arc::new(Self::new(&SHAPE_PRIORS))))
    }

    /// Builds the shapes.
    pub fn new(priors: &ShapePriors) -> Self {
        let times = times();
        let one = 1.0 - priors.constant - priors.broad - priors.even - priors.two;
        let mut shapes = Self {
            prior: Vec::new(),
            bitten: Vec::new(),
            bitten_at: Vec::new(),
            waiting: Vec::new(),
            made_of: Vec::new(),
            curves: Vec::new(),
            ever: Vec::new(),
            constant: 0,
            stray: priors.stray,
            families: Vec::new(),
            stops: Vec::new(),
            forms: Vec::new(),
            kinds: OnceLock::new(),
            drift: OnceLock::new(),
            day_effects: OnceLock::new(),
            times,
        };
        let mut curves = Curves::new(&shapes.times);
        let constant = Self::constant(priors, &mut curves);
        shapes.stop_at((0..constant.len()).map(|i| (i % PACES_A_MOVE, i / PACES_A_MOVE)), 1);
        shapes.add(priors.constant, constant.len(), vec![constant]);
        shapes.constant = shapes.count();
        let broad = Self::broad(priors, &mut curves);
        let paces = |(law, shapes): (usize, &Vec<Shape>)| {
            (0..shapes.len() / SHARES.len()).map(move |step| (law, step))
        };
        shapes.stop_at(broad.iter().enumerate().flat_map(paces), SHARES.len());
        shapes.add(priors.broad, SHARES.len(), broad);
        let (places, bunches): (Vec<_>, Vec<_>) = Self::bunches(priors, &mut curves).into_iter().unzip();
        shapes.stop_at(places.into_iter(), SHARES.len());
        shapes.add(one, SHARES.len(), bunches.into_iter().map(shared).collect());
        let (places, even): (Vec<_>, Vec<_>) = Self::even(priors, &mut curves).into_iter().unzip();
        shapes.stop_at(places.into_iter(), SHARES.len());
        shapes.add(priors.even, SHARES.len(), even.into_iter().map(shared).collect());
        let two = Self::two(priors, &mut curves);
        shapes.add(priors.two, TWO_SHARES.len(), two);
        shapes.fill(&curves);
        shapes
    }

    /// Scales the weights, and computes the rows of all shapes.
    fn fill(&mut self, curves: &Curves) {
        let top = self.prior.iter().copied().fold(0.0, f64::max);
        self.prior.iter_mut().for_each(|p| *p /= top);
        self.bitten = vec![0.0; self.count() * POINTS];
        self.waiting = vec![0.0; self.count() * POINTS];
        let (bitten, waiting) = (self.bitten.as_chunks_mut().0, self.waiting.as_chunks_mut().0);
        for ((of, bitten), waiting) in self.made_of.iter().zip(bitten).zip(waiting) {
            curves.write(of, bitten, waiting);
        }
        self.bitten_at = transposed(&self.bitten);
        self.curves = curves.rows();
    }

    /// The position of a time: the point before it, and the fraction of the way to the next. Beyond the last
    /// time nothing is known.
    pub(crate) fn place(&self, minutes: f64) -> (usize, f64) {
        let after = self.times.partition_point(|&t| t < minutes).clamp(1, POINTS - 1);
        let (a, b) = (self.times[after - 1], self.times[after]);
        (after - 1, ((minutes - a) / (b - a)).clamp(0.0, 1.0))
    }

    /// How many shapes there are.
    pub fn count(&self) -> usize {
        self.prior.len()
    }

    /// The kinds that a club's weights distinguish.
    pub(crate) fn kinds(&self) -> &Kinds {
        let form = |shape: usize| self.forms.partition_point(|&first| first <= shape) - 1;
        let one = |shape| (form(shape), &self.bitten[shape * POINTS..][..POINTS], self.ever[shape]);
        self.kinds.get_or_init(|| Kinds::new(&self.times, &self.prior, (0..self.count()).map(one)))
    }

    /// The same shapes with other weights before the first cast.
    pub(crate) fn with_prior(&self, mut prior: Vec<f64>) -> Self {
        let top = prior.iter().copied().fold(0.0, f64::max);
        for weight in &mut prior {
            *weight /= top;
        }
        // How weight moves on a changing day depends on the prior.
        Self { prior, drift: OnceLock::new(), ..self.clone() }
    }

    /// How weight moves on a day that changes.
    pub(crate) fn drift(&self) -> &Drift {
        self.drift.get_or_init(|| Drift::new(&self.prior, &self.stops))
    }

    /// Stores the positions of the curves that are added next: the track and the step on it.
    fn stop_at(&mut self, places: impl Iterator<Item = Place>, shares: usize) {
        let (mut first, tracks) =
            (self.count(), self.stops.iter().map(|stop| stop.track + 1).max().unwrap_or(0));
        for (track, step) in places {
            self.stops.push(Stop { track: tracks + track, step, first, shares });
            first += shares;
        }
    }

    /// The day effects.
    pub(crate) fn day_effects(&self) -> &DayEffects {
        self.day_effects.get_or_init(|| DayEffects::new(&self.families))
    }

    /// Adds a group of this total weight, family by family; `row` is that of [`Family::row`].
    fn add(&mut self, weight: f64, row: usize, group: Vec<Vec<Shape>>) {
        self.forms.push(self.count());
        let sum: f64 = group.iter().flatten().map(|shape| shape.0).sum();
        for family in group {
            let keenness: Vec<[f64; 2]> = family.iter().map(|shape| shape.3).collect();
            self.families.push(Family { first: self.count(), row, keenness });
            for (w, ever, made_of, _) in family {
                self.prior.push(weight * w / sum);
                self.ever.push(ever);
                self.made_of.push(made_of);
            }
        }
    }

    fn constant(priors: &ShapePriors, curves: &mut Curves) -> Vec<Shape> {
        let of = |mean: f64| {
            let curve = curves.add_law(&Law::Exponential { rate: 1.0 / mean });
            (bell(mean, priors.pace), 1.0, MadeOf::one(curve, 1.0), [log(mean), 0.0])
        };
        paces(1.1, 43).map(of).collect()
    }

    /// One family for each law: a day may be quicker, and may have fish on more of its spots.
    fn broad(priors: &ShapePriors, curves: &mut Curves) -> Vec<Vec<Shape>> {
        let mut of = |law: fn(f64) -> Law| {
            let with_shares = |mean: f64| {
                let shapes = shared((bell(mean, priors.place), curves.add_law(&law(mean))));
                shapes.into_iter().map(move |(w, ever, made_of, at)| (w, ever, made_of, [at[0], log(mean)]))
            };
            paces(1.25, 14).flat_map(with_shares).collect()
        };
        vec![
            of(|mean| Law::Exponential { rate: 1.0 / mean }),
            of(|mean| Law::Gamma { shape: 2.0, rate: 2.0 / mean }),
        ]
    }

    /// Log-normal bunches, whose places are in steps proportional to their width. Wider bunches have less
    /// weight, set by simulation (docs/advice.md).
    fn bunches(priors: &ShapePriors, curves: &mut Curves) -> Vec<(Place, Weighed)> {
        let mut list = Vec::new();
        for (width, sd) in [0.7_f64, 1.2, 2.0, 3.5, 6.0].into_iter().enumerate() {
            let step = (0.8 * sd).max(0.5);
            let (mut place, mut steps) = (f64::max(1.0, sd), 0);
            while place < 42.0 {
                let law = Law::LogNormal { mu: log(place), sigma: sd / place };
                let weight = bell(place, priors.place) * step / place * libm::pow(sd, -WIDTH_POWER);
                list.push(((width, steps), (weight, curves.add_law(&law))));
                place += step;
                steps += 1;
            }
        }
        list
    }

    fn even(priors: &ShapePriors, curves: &mut Curves) -> Vec<(Place, Weighed)> {
        let mut list = Vec::new();
        for (i, &from) in EDGES.iter().enumerate() {
            for (j, &until) in
                EDGES.iter().enumerate().filter(|(_, u)| **u - from > 1.5 && **u - from <= 16.0)
            {
                // Steps between the edges grow with time, so each is weighted by the interval it represents.
                let weight = bell(0.5 * (from + until), priors.place) / (i as f64 + 3.0);
                let curve = curves.add(|t| ((t - from) / (until - from)).clamp(0.0, 1.0));
                list.push(((j - i, i), (weight, curve)));
            }
        }
        list
    }

    fn two(priors: &ShapePriors, curves: &mut Curves) -> Vec<Vec<Shape>> {
        let mut few = Vec::new();
        for sd in [1.2_f64, 3.0] {
            let step = 1.5 * sd;
            let mut place = f64::max(1.5, sd);
            while place < 36.0 {
                let law = Law::LogNormal { mu: log(place), sigma: sd / place };
                let curve = curves.add_law(&law);
                few.push((bell(place, priors.place) * step / place, place, sd, curve));
                place += step;
            }
        }
        let mut list = Vec::new();
        for &(weight, place, sd, first) in &few {
            for &(other, _, _, second) in few.iter().filter(|f| f.1 - place >= 1.5 * (f.2 + sd)) {
                let of = |(p, q): (f64, f64)| {
                    let both = MadeOf { curves: [first, second], shares: [p, q] };
                    // Two axes that a day moves along together.
                    let keenness =
                        [ln_odds(p), ln_odds(q / (1.0 - p))].map(|k| k / core::f64::consts::SQRT_2);
                    (weight * other, p + q, both, keenness)
                };
                list.push(TWO_SHARES.into_iter().map(of).collect());
            }
        }
        list
    }
}

/// A curve with each of the shares of casts that get a bite.
fn shared((weight, curve): Weighed) -> Vec<Shape> {
    let of = |share: f64| (weight, share, MadeOf::one(curve, share), [ln_odds(share), 0.0]);
    SHARES.into_iter().map(of).collect()
}

/// The value of a row at a place in time, interpolated.
pub(crate) fn between(row: &[f32], (point, part): (usize, f64)) -> f64 {
    let (a, b) = (f64::from(row[point]), f64::from(row[point + 1]));
    a + (b - a) * part
}

fn ln_odds(share: f64) -> f64 {
    log(share / (1.0 - share))
}

/// Mean waits from three minutes on, each `times` the one before.
fn paces(times: f64, count: i32) -> impl Iterator<Item = f64> {
    (0..count).map(move |i| 3.0 * libm::pow(times, f64::from(i)))
}

/// A bell in ln minutes.
fn bell(minutes: f64, (typical, sd): (f64, f64)) -> f64 {
    let z = log(minutes / typical) / sd;
    exp(-0.5 * z * z)
}

/// Half minutes up to half an hour, then longer and longer steps to three hours.
fn times() -> Vec<f64> {
    (0..POINTS)
        .map(|i| match i as f64 {
            i if i <= 60.0 => 0.5 * i,
            i if i <= 90.0 => 30.0 + (i - 60.0),
            i if i <= 102.0 => 60.0 + 2.5 * (i - 90.0),
            i => 90.0 + 5.0 * (i - 102.0),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_shape_is_a_distribution_and_the_priors_sum_to_one() {
        let shapes = Shapes::new(&SHAPE_PRIORS);
        let sum: f64 = shapes.prior.iter().sum();
        let top = shapes.prior.iter().copied().fold(0.0, f64::max);
        assert_eq!(top, 1.0);
        assert!(sum > 1.0);
        assert_eq!(shapes.bitten.len(), shapes.count() * POINTS);
        for (row, &ever) in shapes.bitten.chunks(POINTS).zip(&shapes.ever) {
            assert_eq!(row[0], 0.0);
            assert!(row.windows(2).all(|w| w[1] >= w[0] - 1e-6));
            assert!(f64::from(row[POINTS - 1]) <= ever + 1e-6);
        }
        for row in shapes.waiting.chunks(POINTS) {
            assert!(row.iter().zip(&shapes.times).all(|(w, t)| f64::from(*w) <= t + 1e-3));
        }
        assert_eq!(shapes.times[POINTS - 1], 180.0);
    }

    #[test]
    fn shapes_are_shares_of_their_curves() {
        let shapes = Shapes::new(&SHAPE_PRIORS);
        for (of, row) in shapes.made_of.iter().zip(shapes.bitten.chunks(POINTS)) {
            for (i, b) in row.iter().enumerate() {
                let mut sum = 0.0;
                of.each(|curve, share| sum += share * f64::from(shapes.curves[curve * POINTS + i]));
                assert!((f64::from(*b) - sum).abs() < 2e-7, "{of:?} {i}: {b} {sum}");
            }
        }
    }

    #[test]
    fn the_rows_by_time_equal_the_rows_by_shape() {
        let shapes = Shapes::new(&SHAPE_PRIORS);
        for (time, row) in shapes.bitten_at.chunks(shapes.count()).enumerate() {
            assert!(row.iter().enumerate().all(|(shape, b)| *b == shapes.bitten[shape * POINTS + time]));
        }
    }

    /// The mean of the smaller of wait and time, by the trapezoid rule from its definition.
    #[test]
    fn waits_are_the_integral_of_the_share_still_waiting() {
        let shapes = Shapes::new(&SHAPE_PRIORS);
        for (bitten, waiting) in shapes.bitten.chunks(POINTS).zip(shapes.waiting.chunks(POINTS)) {
            let mut sum = 0.0;
            for i in 1..POINTS {
                let still = 1.0 - 0.5 * (f64::from(bitten[i]) + f64::from(bitten[i - 1]));
                sum += (shapes.times[i] - shapes.times[i - 1]) * still;
                assert!((f64::from(waiting[i]) - sum).abs() < 2e-5, "{i}: {} {sum}", waiting[i]);
            }
        }
    }
}
