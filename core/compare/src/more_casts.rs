//! How many more casts it would take: assurance, the chance of a clear answer averaged over the posterior.
//!
//! Power at the rates that happened to be seen promises too much, since striking rates are partly luck and
//! fall back later. So each future has a truth of its own, drawn from the posterior, including "no
//! difference" (Spiegelhalter and Freedman 1986; O'Hagan, Stevens and Campbell 2005).

use super::alternation::{AlternationPlan, Side};
use super::any_look::any_look_p_in_order;
use super::belief::{Believed, belief, spell_variance};
use super::blocks::{Block, HELD_FOR, SidedCast, blocks};
use super::chance::Chance;
use super::permutation::arrangements;
use super::poisson_rates::Tally;
use super::tails::normal_two_sided;
use super::verdict::{FEWEST_SWITCHES, is_clear};
use libm::exp;
use restwater_waits::Wait;

/// The required chance of a clear answer.
pub const WANTED_POWER: f64 = 0.8;
/// The most further casts that are tried.
pub const MOST_CASTS: usize = 200;
/// Further casts for which a day has room.
pub const DAY_CASTS: usize = 40;
/// Simulated futures for each number.
const FUTURES: u64 = 200;
/// Shape of the gamma prior of a rate of bites: one half and no time, the invariant prior of Jeffreys (1946) for a Poisson
/// rate. It is worth half a bite, does not depend on the unit of time and treats both sides alike.
pub(crate) const JEFFREYS_SHAPE: f64 = 0.5;

/// The numbers for which the p-values of a change are adjusted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Looks {
    /// Changes looked at in the session.
    pub looked_at: usize,
    /// Which of them this one is, in the order they came, from 1.
    pub place: usize,
}

/// How many further casts, alternated A B B A on one rod and spot, would most likely settle it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MoreCasts {
    /// Further casts, whole fours; `None` when 200 don't give the required chance.
    pub casts: Option<usize>,
    /// Chance of a clear answer after `casts`, otherwise after the casts of a day, averaged over the
    /// posterior.
    pub assurance: f64,
    /// Minutes these casts would be out, on average (turn-rounds not counted).
    pub minutes: f64,
}

/// Continues the casts so far in simulations, with truths drawn from the posterior, exponential waits, casts
/// left for at most `leave_min`, and sides alternated A B B A on the first rod that was switched. The answer
/// counts as clear by the figures of the verdict: a lean, a probability of 0.95 if the sides differ at all,
/// and block p and anytime-valid p below 0.05 after adjustment for the other changes. Here the block p is a
/// normal approximation from the exact mean and variance of the permutation distribution, not below its least
/// possible value, since that costs only one pass for each future; the findings themselves always use the
/// arrangements.
pub fn more_casts(
    casts: &[SidedCast],
    tallies: [Tally; 2],
    leave_min: f64,
    looks: Looks,
    seed: u64,
) -> MoreCasts {
    let timed = tallies.iter().all(|t| t.time > 0.0);
    if !(timed && leave_min > 0.0 && leave_min.is_finite()) {
        return MoreCasts { casts: None, assurance: 0.0, minutes: 0.0 };
    }
    // In an alternation spells affect both sides alike, and so will those to come.
    let alternated = blocks(casts).len() > FEWEST_SWITCHES;
    let scatter = if alternated { 0.0 } else { spell_variance(casts) };
    let believed = Believed::new(tallies[0], tallies[1], scatter);
    let future = Future { casts, tallies, believed, leave_min, looks };
    // The chance rises with the casts, so the answer is found by bisection. The largest number comes first:
    // if that is not enough, nothing is.
    let most = future.after(MOST_CASTS, seed);
    if most.assurance < WANTED_POWER {
        return future.after(DAY_CASTS, seed);
    }
    let (mut low, mut high) = (1, MOST_CASTS / 4);
    let mut last = MoreCasts { casts: Some(MOST_CASTS), ..most };
    while low < high {
        let middle = usize::midpoint(low, high);
        let here = future.after(4 * middle, seed);
        if here.assurance >= WANTED_POWER {
            last = MoreCasts { casts: Some(4 * middle), ..here };
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    last
}

struct Future<'a> {
    casts: &'a [SidedCast],
    tallies: [Tally; 2],
    believed: Believed,
    leave_min: f64,
    looks: Looks,
}

impl Future<'_> {
    /// Simulates the futures with `n` further casts.
    fn after(&self, n: usize, seed: u64) -> MoreCasts {
        let (mut clear, mut minutes) = (0u64, 0.0);
        for stream in 0..FUTURES {
            let mut chance = Chance::new(seed, stream);
            let rates = self.rates(&mut chance);
            let day = self.fish_on(n, rates, &mut chance);
            minutes += day[self.casts.len()..].iter().map(|c| c.wait.minutes()).sum::<f64>();
            clear += u64::from(self.is_clear(&day));
        }
        let n = FUTURES as f64;
        MoreCasts { casts: None, assurance: clear as f64 / n, minutes: minutes / n }
    }

    /// Draws a truth from the posterior: bites per minute on either side. The rate of B is a gamma draw,
    /// given the apparent ratio.
    fn rates(&self, chance: &mut Chance) -> [f64; 2] {
        let [a, b] = self.tallies;
        let (ln_r, showed) = self.believed.draw(chance);
        let bites = JEFFREYS_SHAPE + (a.bites + b.bites) as f64;
        let on_b = chance.gamma(bites) / (exp(showed) * a.time + b.time);
        [on_b * exp(ln_r), on_b]
    }

    /// The casts so far and `n` more.
    fn fish_on(&self, n: usize, rates: [f64; 2], chance: &mut Chance) -> Vec<SidedCast> {
        let mut day = self.casts.to_vec();
        let Some(like) = self.casts.iter().max_by(|x, y| x.at_min.total_cmp(&y.at_min)) else { return day };
        let mut at_min = like.at_min + like.wait.minutes() + 1.0;
        // Alternation starts with the side that was not fished last.
        for side in AlternationPlan::new(like.side.other(), n).sides() {
            let bite_at = chance.exponential() / rates[usize::from(side == Side::B)];
            let minutes = bite_at.min(self.leave_min);
            let Ok(wait) = Wait::new(minutes, bite_at <= self.leave_min) else { continue };
            day.push(SidedCast { at_min, wait, side, ..*like });
            at_min += minutes + 1.0;
        }
        day
    }

    fn is_clear(&self, day: &[SidedCast]) -> bool {
        let tally = |side| {
            let of = || day.iter().filter(move |c| c.side == side).map(|c| c.wait);
            let bites = of().filter(|w| w.is_bite()).count() as u64;
            Tally { bites, time: of().map(Wait::minutes).sum() }
        };
        let (in_a, in_b) = (tally(Side::A), tally(Side::B));
        is_clear(
            belief(in_a, in_b, spell_variance(day)),
            self.looks.looked_at as f64 * held_p(&blocks(day)),
            any_look_p_in_order(in_a, in_b, self.looks.place),
        )
    }
}

/// The largest approximate p with up to the newest [`HELD_FOR`] blocks left out.
fn held_p(blocks: &[Block]) -> f64 {
    (0..=HELD_FOR.min(blocks.len())).map(|n| approximate_p(&blocks[..blocks.len() - n])).fold(0.0, f64::max)
}

/// Normal approximation of the block p over the rod with the most blocks, from the exact variance of a
/// sum of k of n centred scores: k (n - k) / (n (n - 1)) times their sum of squares.
fn approximate_p(blocks: &[Block]) -> f64 {
    let longest = blocks.chunk_by(|x, y| x.rod == y.rod).max_by_key(|rod| rod.len()).unwrap_or(&[]);
    let (n, k) = (longest.len(), longest.iter().filter(|b| b.side == Side::A).count());
    let Some(all) = arrangements(n, k).or(Some(u64::MAX)).filter(|_| n >= 3) else { return 1.0 };
    let mean = longest.iter().map(|b| b.score).sum::<f64>() / n as f64;
    let squares: f64 = longest.iter().map(|b| (b.score - mean) * (b.score - mean)).sum();
    let (n, k) = (n as f64, k as f64);
    let variance = k * (n - k) / (n * (n - 1.0)) * squares;
    if variance <= 0.0 {
        return 1.0;
    }
    let sum: f64 = longest.iter().filter(|b| b.side == Side::A).map(|b| b.score - mean).sum();
    let least = if n == 2.0 * k { 2.0 } else { 1.0 } / all as f64;
    normal_two_sided(sum / libm::sqrt(variance)).max(least)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::blocks::block_test;

    const FIRST: Looks = Looks { looked_at: 1, place: 1 };

    fn start(rates: [f64; 2], n: usize, seed: u64) -> (Vec<SidedCast>, [Tally; 2]) {
        let mut chance = Chance::new(seed, 99);
        let mut tallies = [Tally { bites: 0, time: 0.0 }; 2];
        let casts: Vec<SidedCast> = AlternationPlan::new(Side::A, n)
            .sides()
            .enumerate()
            .map(|(i, side)| {
                let which = usize::from(side == Side::B);
                let bite_at = chance.exponential() / rates[which];
                let wait = Wait::new(bite_at.min(12.0), bite_at <= 12.0).unwrap();
                tallies[which].bites += u64::from(wait.is_bite());
                tallies[which].time += wait.minutes();
                SidedCast { rod: 1, at_min: 14.0 * i as f64, wait, side, stratum: 0 }
            })
            .collect();
        (casts, tallies)
    }

    #[test]
    fn a_large_difference_takes_few_casts_and_no_difference_more_than_a_day() {
        let (casts, _) = start([0.2, 0.02], 8, 1);
        let observed = |a, b| [Tally { bites: a, time: 40.0 }, Tally { bites: b, time: 40.0 }];
        let large = more_casts(&casts, observed(14, 1), 12.0, FIRST, 7);
        let none = more_casts(&casts, observed(3, 3), 12.0, FIRST, 7);
        assert!(large.casts.is_some_and(|n| n <= 60), "{large:?}");
        assert!(none.casts.is_none(), "{none:?}");
        assert!(large.assurance >= WANTED_POWER && large.minutes > 0.0);
        assert_eq!(large, more_casts(&casts, observed(14, 1), 12.0, FIRST, 7));
    }

    /// No number of casts can show a difference that does not exist, so the promised chance stays below the
    /// probability of a difference.
    #[test]
    fn the_promised_chance_stays_below_the_probability_of_a_difference() {
        let (casts, _) = start([0.2, 0.02], 8, 1);
        // That they differ at all, by scipy 1.17 (integrate.quad over the priors of the belief).
        for (a, b, differ) in [(14, 1, 0.9804), (8, 1, 0.7735), (3, 3, 0.4240)] {
            let tallies = [Tally { bites: a, time: 40.0 }, Tally { bites: b, time: 40.0 }];
            let after = more_casts(&casts, tallies, 12.0, FIRST, 7);
            // 200 futures: two standard errors are at most 0.07.
            assert!(after.assurance < differ + 0.07, "{a} to {b}: {after:?}");
            assert_eq!(after.casts.is_some(), differ > WANTED_POWER, "{a} to {b}: {after:?}");
        }
    }

    #[test]
    fn more_changes_never_take_fewer_casts() {
        let (casts, _) = start([0.15, 0.05], 8, 2);
        let tallies = [Tally { bites: 6, time: 40.0 }, Tally { bites: 1, time: 48.0 }];
        let n = |looks| {
            more_casts(&casts, tallies, 12.0, Looks { looked_at: looks, place: looks }, 7)
                .casts
                .unwrap_or(MOST_CASTS + 1)
        };
        assert!(n(1) <= n(4) && n(4) <= n(12));
    }

    #[test]
    fn no_leave_time_gives_no_figure() {
        let (casts, tallies) = start([0.1, 0.1], 4, 3);
        assert_eq!(more_casts(&casts, tallies, 0.0, FIRST, 1).casts, None);
        assert_eq!(more_casts(&[], tallies, 10.0, FIRST, 1).casts, None);
    }

    #[test]
    fn the_normal_p_is_near_the_arrangements() {
        let (mut total, mut worst) = (0.0, 0.0_f64);
        for seed in 0..40 {
            let (casts, _) = start([0.1, 0.04], 28, seed);
            let exact = block_test(&casts, 1).unwrap();
            let difference = approximate_p(&exact.blocks) - exact.p;
            total += difference;
            worst = worst.max(difference.abs());
        }
        assert!(worst < 0.08 && (total / 40.0).abs() < 0.02, "worst {worst}, mean {}", total / 40.0);
    }
}
