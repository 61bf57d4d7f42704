//! A club's prior: the days of an angler who has taken the start of a club that knows the water, doesn't know it, or knew it
//! as it was once.

use super::angler::{Angler, Habit};
use super::day::{Bank, Cast, fish};
use super::luck::Luck;
use super::on_two_threads;
use super::restwater::{Restwater, wait};
use super::share::{Share, oracle};
use super::water::Water;
use super::waters::{tuned, unseen};
use restwater_waits::{FittedTo, Shapes, Wait};
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

/// The waters of the clubs that fish a single one: bites at once or not at all, late, or steady and slow.
const EXTREME: [&str; 3] = ["early 0-5", "window 25±2", "constant 30"];
/// How many waters a club of several fishes.
const SEVERAL: usize = 12;
/// Days fished one after another with a book, by an angler whose club knew the water as it was once.
pub const ON: usize = 3;
/// Every fourth day begins such a book.
const EVERY: u64 = 4;

/// What a club's start is worth on one water. Every day is fished with and without it, with the same luck.
#[derive(Debug, Clone, Default)]
pub struct Begun {
    /// First days without a club, as a share of the oracle's bites.
    pub without: Share,
    /// The same with a club of each size on this water.
    pub right: [Share; CLUBS.len()],
    /// What the one of fifty gains on a day without a club, as a share of the oracle's bites.
    pub gains: Share,
    /// What a club of fifty costs which fishes one extreme water, and not this one.
    pub elsewhere: Share,
    /// The same for the worst of them, with its name.
    pub worst: (Share, &'static str),
    /// What a club of fifty costs which fishes several waters, and not this one.
    pub several: Share,
    /// What a club of fifty costs which has days on this water that were as on an extreme one: it has changed since. On the
    /// first day, and on those after it with a book.
    pub changed: [Share; ON],
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

/// What is known of the waters of other clubs: the days of a club of fifty on each.
pub struct Others(Vec<(Water, Vec<Vec<f64>>)>);

impl Others {
    /// Fishes these days.
    pub fn new(run: u64) -> Self {
        let waters: Vec<Water> = tuned().into_iter().chain(unseen()).collect();
        let known = on_two_threads(&waters, |water| days(water, CLUBS[1], run));
        Self(waters.into_iter().zip(known).collect())
    }

    /// The weights of the clubs that fish one extreme water, other than this one, with its name.
    fn extreme(&self, water: &Water) -> Vec<(&'static str, Vec<f64>)> {
        let others = self.0.iter().filter(|(of, _)| EXTREME.contains(&of.name) && of.name != water.name);
        others.map(|(of, days)| (of.name, fitted(days, Shapes::usual().kind_weights()))).collect()
    }

    /// The weights of a club that fishes several waters other than this one, which depend on it.
    fn several(&self, water: &Water, run: u64) -> Vec<f64> {
        let mut others: Vec<usize> = (0..self.0.len()).filter(|i| self.0[*i].0.name != water.name).collect();
        // Uniform numbers: one day's luck is enough.
        let luck = Luck::of_day(water.seed(run) ^ 0x00D1_FFE2, 0);
        for i in 0..SEVERAL {
            let from = i + (luck.cast(i).u[0] * (others.len() - i) as f64) as usize;
            others.swap(i, from);
        }
        let each = CLUBS[1] * DAYS_EACH / SEVERAL;
        let days: Vec<Vec<f64>> =
            others[..SEVERAL].iter().flat_map(|i| self.0[*i].1[..each].to_vec()).collect();
        fitted(&days, Shapes::usual().kind_weights())
    }
}

/// An angler who has taken the start of a club with these weights; without one where they can't be used.
fn angler(weights: &[f64], fitted: FittedTo) -> Restwater {
    let shapes = Shapes::usual();
    Restwater::of_club(shapes.of_club(weights, fitted).unwrap_or_else(|_| Arc::clone(&shapes)))
}

/// Bites of days that an angler fishes one after another, the earlier ones in the book.
fn bites(water: &Water, angler: &mut dyn Angler, lucks: &[Luck]) -> Vec<f64> {
    let mut book: Vec<Vec<Cast>> = Vec::new();
    let mut one = |luck: &Luck| {
        angler.begin(&book);
        let caught = fish(water, luck, angler, Bank::all_in());
        book.push(caught.log);
        caught.bites as f64
    };
    lucks.iter().map(&mut one).collect()
}

/// Fishes days on a water with clubs that know it, and with others.
pub fn begun(water: &Water, others: &Others, first: u64, run: u64) -> Begun {
    let usual = Shapes::usual();
    let known = days(water, CLUBS[CLUBS.len() - 1], run);
    let mut right = CLUBS.map(|anglers| {
        angler(&fitted(&known[..anglers * DAYS_EACH], usual.kind_weights()), FittedTo::ThisWater)
    });
    let extreme = others.extreme(water);
    let of = |fitted| extreme.iter().map(|(_, weights)| angler(weights, fitted)).collect::<Vec<_>>();
    let (mut elsewhere, mut changed) = (of(FittedTo::AllWaters), of(FittedTo::ThisWater));
    let mut several = angler(&others.several(water, run), FittedTo::AllWaters);
    let (mut knows, mut without) = (oracle(water, run), Restwater::default());

    let mut found = Begun::default();
    let mut each = vec![Share::default(); extreme.len()];
    for day in 0..first {
        let luck = |on: u64| Luck::of_day(water.seed(run) ^ 0x0F15_7DA1, day * 10 + on);
        let lucks: Vec<Luck> = (0..if day % EVERY == 0 { ON as u64 } else { 1 }).map(luck).collect();
        let best: Vec<f64> =
            lucks.iter().map(|luck| fish(water, luck, &mut knows, Bank::all_in()).bites as f64).collect();
        let usual = bites(water, &mut without, &lucks);
        let first_day = |angler: &mut Restwater| bites(water, angler, &lucks[..1])[0];
        found.without.add(usual[0], best[0]);
        let known = right.each_mut().map(first_day);
        found.right.iter_mut().zip(known).for_each(|(share, bites)| share.add(bites, best[0]));
        found.gains.add(known[1] - usual[0], best[0]);
        found.several.add(usual[0] - first_day(&mut several), best[0]);
        let costs: Vec<f64> = elsewhere.iter_mut().map(|angler| usual[0] - first_day(angler)).collect();
        each.iter_mut().zip(&costs).for_each(|(share, cost)| share.add(*cost, best[0]));
        found.elsewhere.add(mean(costs.iter()), best[0]);
        let then: Vec<Vec<f64>> = changed.iter_mut().map(|angler| bites(water, angler, &lucks)).collect();
        for (on, (usual, best)) in usual.iter().zip(&best).enumerate() {
            found.changed[on].add(usual - mean(then.iter().map(|bites| &bites[on])), *best);
        }
    }
    let named = each.into_iter().zip(extreme.iter().map(|(name, _)| *name));
    found.worst = named.max_by(|(a, _), (b, _)| a.value().total_cmp(&b.value())).unwrap_or_default();
    found
}

/// The mean of the clubs of a day, which share its luck: their days are not independent.
fn mean<'a>(of: impl ExactSizeIterator<Item = &'a f64>) -> f64 {
    let clubs = of.len() as f64;
    of.sum::<f64>() / clubs
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_club_that_knows_only_what_is_usual_costs_nothing_on_any_day() {
        let water = tuned()[2];
        let lucks: Vec<Luck> = (0..2).map(|day| Luck::of_day(water.seed(3), day)).collect();
        let without = bites(&water, &mut Restwater::default(), &lucks);
        for fitted in [FittedTo::ThisWater, FittedTo::AllWaters] {
            let mut with = angler(Shapes::usual().kind_weights(), fitted);
            assert_eq!(bites(&water, &mut with, &lucks), without, "{fitted:?}");
        }
    }

    #[test]
    fn a_larger_club_has_the_days_of_a_smaller_one() {
        let water = tuned()[7];
        let (small, large) = (days(&water, 1, 3), days(&water, 2, 3));
        assert_eq!((small.len(), large.len()), (DAYS_EACH, 2 * DAYS_EACH));
        assert_eq!(small, large[..DAYS_EACH]);
    }

    /// Days of one kind alone, by hand: after many steps it has all weight but the share of the prior that the other kinds
    /// keep, (5 x base) / (5 + days).
    #[test]
    fn days_of_one_kind_leave_the_others_the_weight_of_five_days() {
        let ln = vec![0.0, -50.0, -50.0];
        let weights = fitted(&vec![ln; 45], &[0.5, 0.3, 0.2]);
        for (found, wanted) in weights.iter().zip([0.95, 0.03, 0.02]) {
            assert!((found - wanted).abs() < 1e-9, "{weights:?}");
        }
    }

    #[test]
    fn the_other_waters_of_a_club_do_not_include_the_one_that_is_fished() {
        let waters = tuned();
        // One kind for each water, so that the weights say which waters the club fishes.
        let usual = Shapes::usual();
        let day =
            |kind: usize| (0..usual.kind_names().len()).map(move |k| if k == kind { 0.0 } else { -50.0 });
        let known =
            waters.iter().enumerate().map(|(i, water)| (*water, vec![day(i).collect(); 600])).collect();
        let others = Others(known);
        for (i, water) in waters.iter().enumerate().take(5) {
            let weights = others.several(water, 3);
            let fished: Vec<usize> = (0..waters.len()).filter(|k| weights[*k] > 0.05).collect();
            assert_eq!(fished.len(), SEVERAL);
            assert!(!fished.contains(&i));
        }
    }
}
