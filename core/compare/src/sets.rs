//! Comparing two sets of sessions: bites for the time a bait was out.
//!
//! The exact limits and tests of two rates ([`super::poisson_rates`]) treat all bites of a set as one even
//! flow. Days differ more than that, so the verdict also depends on a second test that permutes whole days
//! between the sets ([`super::permutation`]), in which one good day is one day's luck.

use super::belief::{Belief, belief};
use super::binomial::Limits;
use super::error::CompareError;
use super::permutation::{PermutationP, Stratum, permutation_p};
use super::poisson_rates::{RateRatio, Tally, conditional_test, garwood, rate_ratio};
use super::verdict::{CLEAR_BELOW, CLEAR_FROM, FEWEST_BITES, LEANS_FROM, Verdict};

/// Level of every interval.
const LEVEL: f64 = 0.95;
/// With fewer days in either set there is no verdict.
pub const FEWEST_DAYS: usize = 3;

/// Log-sd of how keen the fish are from day to day. An assumption, not a fact.
const DAY_SD: f64 = 0.5;

/// The counts of one session for these comparisons.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DayTally {
    /// Casts that are in.
    pub casts: usize,
    /// Bites.
    pub bites: u64,
    /// Hours with a bait out, up to the bite.
    pub hours_out: f64,
    /// Fish in the net.
    pub landed: u64,
    /// Hours from its beginning to its end; `None` while it is open.
    pub hours: Option<f64>,
}

impl DayTally {
    /// Whether it says anything about bites: a bait was out. Other sessions are not compared.
    pub fn tells(&self) -> bool {
        self.hours_out > 0.0 || self.bites > 0
    }
}

/// A rate with its exact limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rate {
    /// The number counted.
    pub count: u64,
    /// The hours in which it was counted.
    pub hours: f64,
    /// Rate per hour.
    pub per_hour: f64,
    /// Exact 95 % limits of it (Garwood 1936).
    pub limits: Limits,
}

/// A set of sessions.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SetRates {
    /// Sessions.
    pub days: usize,
    /// Those of them that have ended.
    pub ended: usize,
    /// Casts of all sessions.
    pub casts: usize,
    /// Bites an hour with a bait out; `None` without any time out.
    pub bites: Option<Rate>,
    /// Fish landed for each hour of session, over sessions that have ended; `None` without such sessions.
    pub landed: Option<Rate>,
}

/// The rates of a set.
pub fn set_rates(days: &[DayTally]) -> SetRates {
    let bites = days.iter().map(|day| day.bites).sum();
    let out: f64 = days.iter().map(|day| day.hours_out).sum();
    let over: Vec<(u64, f64)> = days.iter().filter_map(|day| Some((day.landed, day.hours?))).collect();
    let landed = over.iter().map(|(n, _)| n).sum();
    let hours: f64 = over.iter().map(|(_, hours)| hours).sum();
    SetRates {
        days: days.len(),
        ended: over.len(),
        casts: days.iter().map(|day| day.casts).sum(),
        bites: rate(bites, out),
        landed: rate(landed, hours),
    }
}

fn rate(count: u64, hours: f64) -> Option<Rate> {
    if !(hours.is_finite() && hours > 0.0) {
        return None;
    }
    let limits = garwood(count, LEVEL).ok()?;
    let limits = Limits { low: limits.low / hours, high: limits.high / hours };
    Some(Rate { count, hours, per_hour: count as f64 / hours, limits })
}

/// The result of comparing two sets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SetsFinding {
    /// Ratio of A to B with its exact limits.
    pub ratio: RateRatio,
    /// Exact two-sided p, with all bites of a set treated as one even flow.
    pub exact_p: f64,
    /// Two-sided p from permuting whole days.
    pub days_p: PermutationP,
    /// Which set is better, or neither, allowing for days that differ.
    pub belief: Belief,
    /// The verdict, which never says that something works.
    pub verdict: Verdict,
}

/// Compares the sets by the days on which a bait was out. Returns an error if a set has no time out at all.
pub fn compare_sets(a: &[DayTally], b: &[DayTally], seed: u64) -> Result<SetsFinding, CompareError> {
    let fished = |days: &[DayTally]| days.iter().filter(|day| day.tells()).copied().collect::<Vec<_>>();
    let (a, b) = (&*fished(a), &*fished(b));
    let (x, y) = (tally(a), tally(b));
    let ratio = rate_ratio(x, y, LEVEL)?;
    let exact_p = conditional_test(x, y)?.two_sided;
    let belief = belief(x, y, day_variance(a, x) + day_variance(b, y));
    let pooled = (x.bites + y.bites) as f64 / (x.time + y.time);
    let excess = |day: &DayTally| day.bites as f64 - pooled * day.hours_out;
    let scores = a.iter().chain(b).map(excess).collect();
    let days_p = permutation_p(&[Stratum { scores, on_a: a.len() }], seed)?;
    let bites = x.bites + y.bites;
    let fewest = a.len().min(b.len());
    let verdict = words(bites, fewest, belief, days_p.two_sided);
    Ok(SetsFinding { ratio, exact_p, days_p, belief, verdict })
}

fn tally(days: &[DayTally]) -> Tally {
    Tally { bites: days.iter().map(|day| day.bites).sum(), time: days.iter().map(|day| day.hours_out).sum() }
}

/// Variance of the logarithm of a set's rate that differences between days alone would cause.
fn day_variance(days: &[DayTally], all: Tally) -> f64 {
    DAY_SD
        * DAY_SD
        * days.iter().map(|day| (day.hours_out / all.time) * (day.hours_out / all.time)).sum::<f64>()
}

fn words(bites: u64, fewest_days: usize, belief: Belief, days_p: f64) -> Verdict {
    if bites < FEWEST_BITES || fewest_days < FEWEST_DAYS {
        return Verdict::CantTellYet;
    }
    let (side, p) = belief.better();
    // Random permutations of days differ as much with a probability of up to one in five, which is enough
    // only for a lean.
    if p >= CLEAR_FROM && days_p < CLEAR_BELOW {
        Verdict::ClearlyBetterHereToday(side)
    } else if p >= LEANS_FROM && days_p < 1.0 - LEANS_FROM {
        Verdict::LeansTo(side)
    } else {
        Verdict::CantTellYet
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Side;
    use proptest::prelude::*;

    fn day(bites: u64, hours_out: f64) -> DayTally {
        DayTally { casts: 10, bites, hours_out, landed: bites, hours: Some(hours_out + 1.0) }
    }

    #[test]
    fn each_rate_uses_its_own_time() {
        let open = DayTally { hours: None, ..day(2, 2.0) };
        let rates = set_rates(&[day(4, 4.0), open]);
        let bites = rates.bites.unwrap();
        assert_eq!((bites.count, bites.hours, bites.per_hour), (6, 6.0, 1.0));
        // Garwood, Biometrika 28 (1936), table: 6 events, 95 %: 2.20 and 13.06.
        assert!(
            (bites.limits.low * 6.0 - 2.20).abs() < 0.005 && (bites.limits.high * 6.0 - 13.06).abs() < 0.005
        );
        let landed = rates.landed.unwrap();
        assert_eq!((landed.count, landed.hours), (4, 5.0), "an open session has no length yet");
        assert_eq!((rates.days, rates.ended), (2, 1));
        assert_eq!(set_rates(&[]).bites, None);
    }

    #[test]
    fn whole_days_are_permuted() {
        // Three good days against three blank ones, alike in length: 2 of the 20 ways to deal differ as much.
        let (good, blank) = ([day(4, 4.0); 3], [day(0, 4.0); 3]);
        let found = compare_sets(&good, &blank, 1).unwrap();
        assert!(found.days_p.all && (found.days_p.two_sided - 0.1).abs() < 1e-12);
        // Days and slabs integrated by scipy 1.17 (integrate.quad): 0.9231.
        assert!(found.exact_p < 0.001 && (found.belief.a - 0.9231).abs() < 2e-3, "{:?}", found.belief);
        assert_eq!(found.verdict, Verdict::LeansTo(Side::A), "six days can't make it clear");
    }

    #[test]
    fn one_huge_day_is_one_days_luck() {
        let a = [day(30, 4.0), day(0, 4.0), day(0, 4.0), day(1, 4.0)];
        let b = [day(1, 4.0), day(2, 4.0), day(1, 4.0), day(2, 4.0)];
        let found = compare_sets(&a, &b, 1).unwrap();
        assert!(found.exact_p < 0.001, "taken as one even flow it would look certain");
        assert_eq!(found.verdict, Verdict::CantTellYet);
    }

    #[test]
    fn two_days_in_a_set_or_no_time_give_no_verdict() {
        let few = compare_sets(&[day(9, 4.0); 2], &[day(0, 4.0); 9], 1).unwrap();
        assert_eq!(few.verdict, Verdict::CantTellYet);
        assert!(matches!(compare_sets(&[], &[day(1, 1.0)], 1), Err(CompareError::NoExposure(_))));
        assert!(compare_sets(&[day(0, 0.0)], &[day(1, 1.0)], 1).is_err());
    }

    /// 12 bites in 4 h and four days without a cast against 3 bites in 20 h: one day is not a set.
    #[test]
    fn days_without_a_cast_are_not_dealt() {
        let none = DayTally { casts: 0, bites: 0, hours_out: 0.0, landed: 0, hours: Some(4.0) };
        let a = [day(12, 4.0), none, none, none, none];
        let b = [day(1, 4.0), day(1, 4.0), day(1, 4.0), day(0, 4.0), day(0, 4.0)];
        let (found, fished) = (compare_sets(&a, &b, 1).unwrap(), compare_sets(&a[..1], &b, 1).unwrap());
        assert_eq!(found, fished);
        assert_eq!(found.verdict, Verdict::CantTellYet);
    }

    #[test]
    fn many_days_that_differ_are_clear() {
        // The beliefs by scipy 1.17 (integrate.quad): eight days a side leave one chance in twenty for luck
        // with the days.
        for (n, believed, verdict) in
            [(8, 0.9442, Verdict::LeansTo(Side::A)), (10, 0.9805, Verdict::ClearlyBetterHereToday(Side::A))]
        {
            let found = compare_sets(&vec![day(4, 4.0); n], &vec![day(1, 4.0); n], 1).unwrap();
            assert!((found.belief.a - believed).abs() < 2e-3, "{:?}", found.belief);
            assert_eq!(found.verdict, verdict, "{n} days a side");
        }
    }

    proptest! {
        #[test]
        fn swapping_the_sets_swaps_the_verdict(
            a in prop::collection::vec((0..9_u64, 0.5..6.0_f64), 1..6),
            b in prop::collection::vec((0..9_u64, 0.5..6.0_f64), 1..6),
        ) {
            let of = |days: &[(u64, f64)]| days.iter().map(|(n, h)| day(*n, *h)).collect::<Vec<_>>();
            let (one, two) = (compare_sets(&of(&a), &of(&b), 1).unwrap(), compare_sets(&of(&b), &of(&a), 1).unwrap());
            prop_assert!((one.belief.a - two.belief.b).abs() < 1e-9);
            prop_assert!((one.days_p.two_sided - two.days_p.two_sided).abs() < 1e-9);
            let swapped = match two.verdict {
                Verdict::LeansTo(side) => Verdict::LeansTo(side.other()),
                Verdict::ClearlyBetterHereToday(side) => Verdict::ClearlyBetterHereToday(side.other()),
                Verdict::CantTellYet => Verdict::CantTellYet,
            };
            prop_assert_eq!(one.verdict, swapped);
        }
    }
}
