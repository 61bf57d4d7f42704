//! "Is it me or the lake?": an angler's fish compared with those of the neighbours, at any moment of the day.
//!
//! If all catch at one rate, the next fish is the angler's with probability 1 / (1 + k), where k neighbours
//! are watched, whatever was caught before: given that somebody catches a fish, the exposures cancel, as in
//! the conditional test of two rates (Przyborowski and Wilenski 1940). A bet on every fish at these odds,
//! averaged over ratios of the rates as in `any_look`, is a test martingale, so one over its value is a
//! p-value at every look (Ville 1939).
//!
//! A neighbour is known to be watched once a fish of theirs is logged. That fish starts the count and isn't
//! part of it, because the count waited for it. After it, a process without memory starts again.
//!
//! Bites come in bursts, and a burst is one piece of luck rather than many. So everything is computed a
//! second time with at most one fish an angler in [`BURST_MIN`], and the verdict has to hold in both
//! versions.

use super::any_look::{Ratios, ln_bet, ln_mean};
use super::poisson_rates::Tally;
use super::verdict::CLEAR_BELOW;
use libm::{exp, log};

/// Minutes after a fish in which another of the same angler belongs to the same burst. A guess.
const BURST_MIN: f64 = 5.0;
/// Rates count as alike if neither is this many times the other. The project's own choice, no source.
const ALIKE: f64 = 2.0;

/// What can be said.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BesideVerdict {
    /// Nothing yet: the default.
    CantTellYet,
    /// The neighbours catch more, each, than the angler.
    TheyCatchMore,
    /// The angler catches more.
    ICatchMore,
    /// Neither catches twice as much as the other.
    Alike,
}

/// What was counted, and the verdict.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BesideOthers {
    /// Minute of the fish that started the count.
    pub since_min: f64,
    /// The angler's fish since then.
    pub mine: u64,
    /// The neighbours' fish, without the first of each.
    pub theirs: u64,
    /// Neighbours for whom a fish was logged.
    pub neighbours: usize,
    /// Anytime-valid p of equal rates, the larger of the two versions.
    pub equal_p: f64,
    /// Anytime-valid p of rates that differ by the factor of two or more, likewise.
    pub unlike_p: f64,
    /// The verdict.
    pub verdict: BesideVerdict,
}

/// The fish while a certain number of neighbours was watched: the angler's and theirs, each with its share of
/// the time.
type Stage = (Tally, Tally);

/// One way of counting the fish.
struct Reading {
    stages: Vec<Stage>,
}

/// Compares the minutes at which the angler landed fish with those at which each neighbour did, in any order.
/// `None` if no neighbour did.
pub fn beside_others(mine: &[f64], others: &[Vec<f64>]) -> Option<BesideOthers> {
    let since_min = others.iter().flatten().copied().reduce(f64::min)?;
    let in_bursts: Vec<Vec<f64>> = others.iter().map(|times| bursts(times)).collect();
    let each = Reading::of(mine, others);
    let burst = Reading::of(&bursts(mine), &in_bursts);
    let equal_p = each.equal_p().max(burst.equal_p());
    let unlike_p = each.unlike_p().max(burst.unlike_p());
    let more = each.more().filter(|more| burst.more() == Some(*more));
    let verdict = match more.filter(|_| equal_p <= CLEAR_BELOW) {
        _ if unlike_p <= CLEAR_BELOW => BesideVerdict::Alike,
        Some(more) => more,
        None => BesideVerdict::CantTellYet,
    };
    let (mine, theirs) = each.fish();
    let neighbours = others.iter().filter(|times| !times.is_empty()).count();
    Some(BesideOthers { since_min, mine, theirs, neighbours, equal_p, unlike_p, verdict })
}

/// The first fish of each burst.
fn bursts(times: &[f64]) -> Vec<f64> {
    let mut sorted = times.to_vec();
    restwater_sorting::by(&mut sorted, f64::total_cmp);
    let mut firsts: Vec<f64> = Vec::new();
    for at in sorted {
        if firsts.last().is_none_or(|first| at - first >= BURST_MIN) {
            firsts.push(at);
        }
    }
    firsts
}

impl Reading {
    /// Counts in chronological order; a neighbour is watched from their first fish on.
    fn of(mine: &[f64], others: &[Vec<f64>]) -> Self {
        let theirs =
            others.iter().enumerate().flat_map(|(i, times)| times.iter().map(move |at| (*at, Some(i))));
        let mut fish: Vec<(f64, Option<usize>)> = theirs.chain(mine.iter().map(|at| (*at, None))).collect();
        restwater_sorting::by(&mut fish, |a, b| a.0.total_cmp(&b.0));
        let mut stages: Vec<Stage> = Vec::new();
        let mut watched = vec![false; others.len()];
        for (_, whose) in fish {
            if let Some(new) = whose.filter(|i| !watched[*i]) {
                watched[new] = true;
                let neighbours = watched.iter().filter(|is| **is).count() as f64;
                stages.push((Tally { bites: 0, time: 1.0 }, Tally { bites: 0, time: neighbours }));
            } else if let Some((mine, theirs)) = stages.last_mut() {
                let side = if whose.is_some() { theirs } else { mine };
                side.bites += 1;
            }
        }
        Self { stages }
    }

    fn fish(&self) -> (u64, u64) {
        self.stages.iter().fold((0, 0), |(mine, theirs), (a, b)| (mine + a.bites, theirs + b.bites))
    }

    /// Who caught more than their share.
    fn more(&self) -> Option<BesideVerdict> {
        let share = |(a, b): &Stage| (a.bites + b.bites) as f64 * a.time / (a.time + b.time);
        let due: f64 = self.stages.iter().map(share).sum();
        let mine = self.fish().0 as f64;
        if mine > due {
            Some(BesideVerdict::ICatchMore)
        } else {
            (mine < due).then_some(BesideVerdict::TheyCatchMore)
        }
    }

    fn ln_bet(&self, ln_r: f64) -> f64 {
        self.stages.iter().map(|(a, b)| ln_bet(*a, *b, ln_r)).sum()
    }

    fn equal_p(&self) -> f64 {
        exp(-ln_mean(Ratios::All, |ln_r| self.ln_bet(ln_r))).min(1.0)
    }

    /// The larger p of two hypotheses: that the angler's rate is at least [`ALIKE`] times theirs, and the
    /// reverse.
    fn unlike_p(&self) -> f64 {
        let bound = log(ALIKE);
        self.against(Ratios::Lower, bound).max(self.against(Ratios::Higher, -bound))
    }

    /// p against a ratio and all beyond it, by bets on the ratios on this side of it. The further beyond the
    /// truth is, the less such a bet gains, so it is a supermartingale under all of them.
    fn against(&self, ratios: Ratios, bound: f64) -> f64 {
        let at_bound = self.ln_bet(bound);
        exp(-ln_mean(ratios, |ln_r| self.ln_bet(bound + ln_r) - at_bound)).min(1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chance::Chance;
    use proptest::prelude::*;

    /// Minutes of fish that come at a rate per hour over some hours; with bursts, each bite may bring more
    /// within minutes.
    fn fish(chance: &mut Chance, an_hour: f64, hours: f64, burst: f64) -> Vec<f64> {
        let (mut at, mut times) = (0.0, Vec::new());
        loop {
            at += 60.0 / an_hour * chance.exponential();
            if at > 60.0 * hours {
                return times;
            }
            let mut next = at;
            times.push(next);
            // `burst` more on average, one or two minutes apart.
            while burst > 0.0 && chance.exponential() > log(1.0 + 1.0 / burst) {
                next += 1.5 * chance.exponential();
                times.push(next);
            }
        }
    }

    /// Whether one of these verdicts is ever given on a day that is read after every fish.
    fn ever(mine: &[f64], others: &[Vec<f64>], said: &[BesideVerdict]) -> bool {
        let looks = mine.iter().chain(others.iter().flatten());
        looks.copied().any(|now| {
            let by = |times: &[f64]| times.iter().copied().filter(|at| *at <= now).collect::<Vec<f64>>();
            let others: Vec<Vec<f64>> = others.iter().map(|times| by(times)).collect();
            beside_others(&by(mine), &others).is_some_and(|found| said.contains(&found.verdict))
        })
    }

    fn share(days: u64, rates: (f64, f64), neighbours: usize, burst: f64, said: &[BesideVerdict]) -> f64 {
        let of_day = |day: &u64| {
            let mut chance = Chance::new(77, *day);
            let mine = fish(&mut chance, rates.0, 5.0, burst);
            let others: Vec<_> = (0..neighbours).map(|_| fish(&mut chance, rates.1, 5.0, burst)).collect();
            ever(&mine, &others, said)
        };
        (0..days).filter(of_day).count() as f64 / days as f64
    }

    const MORE: [BesideVerdict; 2] = [BesideVerdict::TheyCatchMore, BesideVerdict::ICatchMore];

    /// Invented days, seeded: all catch alike, single fish and bursts, read after every fish of five hours.
    #[test]
    fn at_equal_rates_one_side_is_said_to_catch_more_on_at_most_one_day_in_twenty() {
        for (an_hour, neighbours, burst) in
            [(2.0, 1, 0.0), (6.0, 2, 0.0), (12.0, 1, 0.0), (3.0, 3, 0.0), (2.0, 1, 2.0), (3.0, 2, 2.0)]
        {
            let share = share(150, (an_hour, an_hour), neighbours, burst, &MORE);
            assert!(share <= 0.05, "{share} with {neighbours} at {an_hour} in bursts of {burst}");
        }
    }

    #[test]
    fn rates_that_differ_by_the_bound_are_called_alike_on_at_most_one_day_in_twenty() {
        for rates in [(12.0, 6.0), (6.0, 12.0), (20.0, 10.0)] {
            let share = share(120, rates, 1, 0.0, &[BesideVerdict::Alike]);
            assert!(share <= 0.05, "{share} at {rates:?}");
        }
    }

    #[test]
    fn the_truth_is_found_if_there_are_enough_fish() {
        let they = share(100, (1.0, 6.0), 2, 0.0, &[BesideVerdict::TheyCatchMore]);
        let i = share(100, (6.0, 1.0), 2, 0.0, &[BesideVerdict::ICatchMore]);
        let alike = share(40, (20.0, 20.0), 2, 0.0, &[BesideVerdict::Alike]);
        assert!(they > 0.5 && i > 0.5 && alike > 0.5, "{they} {i} {alike}");
    }

    #[test]
    fn the_first_fish_of_each_neighbour_starts_the_count_and_is_not_in_it() {
        assert!(beside_others(&[5.0], &[vec![], vec![]]).is_none());
        let found = beside_others(&[5.0, 25.0], &[vec![20.0], vec![40.0, 60.0]]).unwrap();
        assert_eq!((found.since_min, found.mine, found.theirs, found.neighbours), (20.0, 1, 1, 2));
        assert_eq!(found.verdict, BesideVerdict::CantTellYet);
    }

    fn reading(stages: &[(u64, u64, f64)]) -> Reading {
        let of = |(mine, theirs, k): &(u64, u64, f64)| {
            (Tally { bites: *mine, time: 1.0 }, Tally { bites: *theirs, time: *k })
        };
        Reading { stages: stages.iter().map(of).collect() }
    }

    /// The mean over ratios by `scipy.integrate.quad` 1.14.1, and the same for the halves of the prior.
    #[test]
    fn the_figures_agree_with_scipys_quadrature() {
        let reading = reading(&[(2, 9, 1.0), (1, 8, 2.0)]);
        assert!((reading.equal_p() - 0.120_573_1).abs() < 1e-5, "{}", reading.equal_p());
        // Here the steps of the prior leave out the bound itself, which makes it a slightly different prior.
        let far = reading.against(Ratios::Lower, log(ALIKE));
        assert!((far - 0.001_103_05).abs() < 5e-5, "{far}");
        assert_eq!(reading.unlike_p(), 1.0, "a factor of two the other way is not ruled out");
    }

    #[test]
    fn a_burst_is_one_fish_in_the_second_reading() {
        assert_eq!(bursts(&[3.0, 1.0, 5.9, 6.0, 30.0]), [1.0, 6.0, 30.0]);
        // Twelve fish of a neighbour in five minutes show that there was a shoal, not that I fish badly.
        let theirs: Vec<f64> =
            std::iter::once(0.0).chain((0..12).map(|i| 40.0 + 0.4 * f64::from(i))).collect();
        assert_eq!(beside_others(&[20.0], &[theirs]).unwrap().verdict, BesideVerdict::CantTellYet);
    }

    proptest! {
        #[test]
        fn the_order_in_which_fish_are_given_does_not_matter(
            mine in proptest::collection::vec(0.0f64..300.0, 0..20), theirs in proptest::collection::vec(0.0f64..300.0, 1..20),
        ) {
            let turned = |times: &[f64]| times.iter().rev().copied().collect::<Vec<f64>>();
            let found = beside_others(&mine, std::slice::from_ref(&theirs)).unwrap();
            prop_assert_eq!(found, beside_others(&turned(&mine), &[turned(&theirs)]).unwrap());
            prop_assert!(found.equal_p > 0.0 && found.equal_p <= 1.0 && found.unlike_p > 0.0 && found.unlike_p <= 1.0);
        }
    }
}
