//! Simulation-based calibration (Talts and others 2018) of parts that need the internals of this crate:
//! truths are drawn from the prior and casts from the truth, and the rank of the truth in the posterior must
//! then be uniform. The rest is part `sbc` of `./dev sim`.

use super::book::UNLIKE_TODAY;
use super::day_effects::SCATTERS;
use super::drift::CHANGES;
use super::shapes::{POINTS, SHAPE_PRIORS, Shapes, between};
use super::{EarlierDay, Record, Settings, Wait, WaitPosterior};
use std::sync::Arc;

const PARTS: usize = 20;
/// 99 % point of chi-square with 19 degrees of freedom, from statistical tables.
const UNEVEN: f64 = 36.19;
const LEAVE: f64 = 20.0;

/// SplitMix64 (Steele, Lea and Flood 2014).
struct Draws(u64);

impl Draws {
    fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn of(&mut self, weights: impl Iterator<Item = f64> + Clone) -> usize {
        let mut left = self.uniform() * weights.clone().sum::<f64>();
        let last = weights.clone().count() - 1;
        weights
            .enumerate()
            .find(|(_, weight)| {
                left -= weight;
                left < 0.0
            })
            .map_or(last, |(i, _)| i)
    }

    /// A cast on that shape, left for twenty minutes.
    fn cast(&mut self, shapes: &Shapes, shape: usize) -> Wait {
        let u = self.uniform();
        let row = &shapes.bitten[shape * POINTS..][..POINTS];
        let bitten = |t: f64| between(row, shapes.place(t));
        let wait = if self.uniform() < shapes.stray {
            60.0 * u
        } else if bitten(LEAVE) <= u {
            LEAVE
        } else {
            let (mut low, mut high) = (0.0, LEAVE);
            for _ in 0..40 {
                let middle = 0.5 * (low + high);
                if bitten(middle) > u { high = middle } else { low = middle }
            }
            high
        };
        Wait::new(wait.clamp(1e-6, LEAVE), wait < LEAVE).unwrap()
    }
}

/// The rank of the truth, by the share of casts bitten in twenty minutes.
fn rank(shapes: &Shapes, weights: &[f64], truth: usize, draws: &mut Draws) -> f64 {
    let of = |shape: usize| between(&shapes.bitten[shape * POINTS..][..POINTS], shapes.place(LEAVE));
    let at = of(truth);
    let sum = |is: &dyn Fn(f64) -> bool| -> f64 {
        weights.iter().enumerate().filter(|(shape, _)| is(of(*shape))).map(|(_, w)| w).sum()
    };
    (sum(&|v| v < at) + draws.uniform() * sum(&|v| v == at)) / weights.iter().sum::<f64>()
}

/// Draws the rank of each of this many truths, and fails if the ranks are less uniform than chance allows.
fn even(truths: u64, mut draw: impl FnMut(&mut Draws) -> f64) {
    let mut parts = [0.0_f64; PARTS];
    for truth in 0..truths {
        let mut draws = Draws(0x00CA_11B0 + truth * 0x1_0000_0001);
        parts[((draw(&mut draws) * PARTS as f64) as usize).min(PARTS - 1)] += 1.0;
    }
    let even = truths as f64 / PARTS as f64;
    let chi: f64 = parts.iter().map(|n| (n - even).powi(2) / even).sum();
    assert!(chi < UNEVEN, "chi-square {chi}: {parts:?}");
}

fn plan(shapes: &Arc<Shapes>, today: &[Wait], earlier: &[EarlierDay], changing: f64) -> WaitPosterior {
    let settings = Settings { changing, ..Settings::default() };
    WaitPosterior::with_shapes(&Record { earlier, ..Record::of_today(today) }, &settings, Arc::clone(shapes))
        .unwrap()
}

#[test]
fn the_posterior_of_a_day_that_may_change_is_calibrated() {
    let shapes = Arc::new(Shapes::new(&SHAPE_PRIORS));
    even(1_000, |draws| {
        let mut shape = draws.of(shapes.prior.iter().copied());
        let changes = draws.uniform() < CHANGES;
        let mut today = Vec::new();
        for _ in 0..16 {
            let cast = draws.cast(&shapes, shape);
            today.push(cast);
            if changes {
                shape = shapes.drift().moved(shape, cast, draws.uniform());
            }
        }
        rank(&shapes, &plan(&shapes, &today, &[], CHANGES).weights, shape, draws)
    });
}

#[test]
fn the_prior_from_earlier_days_is_calibrated() {
    let shapes = Arc::new(Shapes::new(&SHAPE_PRIORS));
    let weight = 0.8;
    even(600, |draws| {
        let water = draws.of(shapes.prior.iter().copied());
        let scatter = draws.of(SCATTERS.iter().map(|(_, believed)| *believed));
        let day = |unlike: f64, draws: &mut Draws| {
            if draws.uniform() < unlike {
                return draws.of(shapes.prior.iter().copied());
            }
            let mut here = vec![0.0; shapes.count()];
            here[water] = 1.0;
            draws.of(shapes.day_effects().moved(scatter, here).iter().copied())
        };
        let casts = |shape: usize, many: usize, draws: &mut Draws| -> Vec<Wait> {
            (0..many).map(|_| draws.cast(&shapes, shape)).collect()
        };
        let book: Vec<Vec<Wait>> = (0..4)
            .map(|_| {
                let shape = day(1.0 - weight, draws);
                casts(shape, 8, draws)
            })
            .collect();
        let truth = day(UNLIKE_TODAY, draws);
        let today = casts(truth, 4, draws);
        let earlier: Vec<EarlierDay> = book.iter().map(|waits| EarlierDay { waits, weight }).collect();
        rank(&shapes, &plan(&shapes, &today, &earlier, 0.0).weights, truth, draws)
    });
}
