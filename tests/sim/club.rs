//! A club's prior: the first day of an angler who has taken the start of a club that fishes the same water, or another.

use super::angler::Habit;
use super::day::{Bank, fish};
use super::luck::Luck;
use super::restwater::{Restwater, wait};
use super::share::{Share, oracle};
use super::water::Water;
use super::waters::tuned;
use restwater_waits::{OWN_SHARE, Shapes, Wait};
use std::sync::Arc;

/// Anglers of the clubs.
pub const CLUBS: [usize; 3] = [5, 50, 500];
/// Days that each of them has logged.
const DAYS_EACH: usize = 12;
/// For how long their anglers leave their casts, each always the same.
const HABITS: [f64; 4] = [10.0, 15.0, 20.0, 30.0];
/// How many days the Dirichlet prior of the weights counts for, and how many steps the fit takes, as in the SQL of
/// docs/pooling.md.
pub const PRIOR_DAYS: f64 = 5.0;
/// See [`PRIOR_DAYS`].
pub const TIMES: usize = 20;

/// What a club's start is worth on the first day on one water, as shares of the oracle's bites.
#[derive(Debug, Clone, Default)]
pub struct Begun {
    /// Without a club.
    pub without: Share,
    /// With a club of each size on this water.
    pub right: [Share; CLUBS.len()],
    /// With a club of 50 of another water: several waters in turn.
    pub wrong: Share,
    /// The same as the worst of those waters has it, with its name.
    pub worst: (Share, &'static str),
}

/// A club of fifty that fishes elsewhere: the name of its water, and its start.
pub type Elsewhere = (&'static str, Arc<Shapes>);

/// The clubs that fish elsewhere: bites at once or not at all, late, or steady and slow.
pub fn elsewhere(run: u64) -> Vec<Elsewhere> {
    const OF: [&str; 3] = ["early 0-5", "window 25±2", "constant 30"];
    let waters = tuned().into_iter().filter(|water| OF.contains(&water.name));
    waters.map(|water| (water.name, start(&water, CLUBS[1], run))).collect()
}

/// The weights of the kinds fitted over days: the most likely under a Dirichlet prior about `base`, by expectation and
/// maximisation (Dempster, Laird and Rubin 1977).
pub fn fitted(days: &[Vec<f64>], base: &[f64]) -> Vec<f64> {
    let likely: Vec<Vec<f64>> = days.iter().map(|day| day.iter().map(|ln| ln.exp()).collect()).collect();
    let mut weights = base.to_vec();
    for _ in 0..TIMES {
        let mut sums: Vec<f64> = base.iter().map(|b| PRIOR_DAYS * b).collect();
        for day in &likely {
            let of: Vec<f64> = day.iter().zip(&weights).map(|(likely, w)| w * likely).collect();
            let whole: f64 = of.iter().sum();
            sums.iter_mut().zip(of).for_each(|(sum, of)| *sum += of / whole);
        }
        let whole: f64 = sums.iter().sum();
        weights = sums.into_iter().map(|sum| sum / whole).collect();
    }
    weights
}

/// The days of a club on a water, each by kind.
pub fn days(water: &Water, anglers: usize, run: u64) -> Vec<Vec<f64>> {
    let shapes = Shapes::usual();
    let one = |number: usize| {
        let luck = Luck::of_day(water.seed(run) ^ 0x00C1_0B00, number as u64);
        let mut habit = Habit(HABITS[number / DAYS_EACH % HABITS.len()]);
        let log = fish(water, &luck, &mut habit, Bank::all_in()).log;
        let waits: Vec<Wait> = log.iter().filter_map(wait).collect();
        shapes.day_by_kind(&waits)
    };
    (0..anglers * DAYS_EACH).map(one).collect()
}

/// The shapes of an angler who has taken the start of a club on that water; as usual where it can't be used.
pub fn start(water: &Water, anglers: usize, run: u64) -> Arc<Shapes> {
    let shapes = Shapes::usual();
    let weights = fitted(&days(water, anglers, run), shapes.kind_weights());
    shapes.of_club(&weights, OWN_SHARE).unwrap_or(shapes)
}

/// Fishes first days on a water with clubs of it and of the others.
pub fn begun(water: &Water, others: &[Elsewhere], first: u64, run: u64) -> Begun {
    let mut knows = oracle(water, run);
    let lucks: Vec<Luck> = (0..first).map(|day| Luck::of_day(water.seed(run) ^ 0x0F15_7DA1, day)).collect();
    let best: Vec<usize> =
        lucks.iter().map(|luck| fish(water, luck, &mut knows, Bank::all_in()).bites).collect();
    let of = |mut angler: Restwater| {
        let mut share = Share::default();
        for (luck, &best) in lucks.iter().zip(&best) {
            super::angler::Angler::begin(&mut angler, &[]);
            share.add(fish(water, luck, &mut angler, Bank::all_in()).bites as f64, best as f64);
        }
        share
    };
    let mut found = Begun {
        without: of(Restwater::default()),
        right: CLUBS.map(|anglers| of(Restwater::of_club(start(water, anglers, run)))),
        ..Begun::default()
    };
    for (name, start) in others.iter().filter(|(name, _)| *name != water.name) {
        let share = of(Restwater::of_club(Arc::clone(start)));
        found.wrong.join(&share);
        if found.worst.1.is_empty() || share.value() < found.worst.0.value() {
            found.worst = (share, name);
        }
    }
    found
}
