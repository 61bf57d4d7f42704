//! How many more days of alternation like the last would settle a question: assurance, as for the casts of a day
//! ([`more_casts`](crate::more_casts)).
//!
//! Each future has a truth drawn from the posterior, including "no difference", and on each of its days
//! spells may pull the sides apart as on the last day that counted. Its days have as many casts as that day,
//! left as long and with its rate.

use super::curve::Curve;
use super::day::DayOfQuestion;
use super::{is_clear, share_of_error, stakes};
use crate::alternation::{AlternationPlan, Side};
use crate::blocks::{SidedCast, blocks, of_rod};
use crate::chance::Chance;
use crate::more_casts::JEFFREYS_SHAPE;
use crate::more_casts::WANTED_POWER;
use crate::permutation::Stratum;
use crate::poisson_rates::Tally;
use crate::tails::normal_two_sided;
use libm::{exp, sqrt};
use restwater_waits::Wait;

/// The most further days that are tried.
pub const MOST_DAYS: usize = 6;
/// Simulated futures.
const FUTURES: u64 = 120;
/// Minutes between two casts of a future; only the order of time matters, and how spells fade over it.
const BETWEEN_MIN: f64 = 3.0;

/// How many further days would most likely settle it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MoreDays {
    /// Days; `None` if six don't give the required chance.
    pub days: Option<usize>,
    /// Chance of a clear answer by the end of these days, otherwise of six, averaged over the posterior.
    pub assurance: f64,
}

/// Simulates the futures. `None` while no day counts, or if its casts were not left for any time. In the
/// futures bites come evenly, where minutes and waits give about the same result, so the stake by the minutes
/// represents both.
pub fn more_days(days: &[DayOfQuestion], place: usize, seed: u64) -> Option<MoreDays> {
    let counted: Vec<&DayOfQuestion> = days.iter().filter(|day| day.counts).collect();
    let like = *counted.last().filter(|day| day.leave_min > 0.0)?;
    let stakes = stakes(days);
    let start = State {
        minutes: counted.iter().map(|day| &day.minutes).sum(),
        blurred: counted.iter().map(|day| &day.minutes_blurred).sum(),
        blocks: counted.iter().filter_map(|day| day.blocks.as_ref()).fold(Blocks::default(), Blocks::with),
    };
    let wanted = share_of_error(place.max(1)) * stakes.minutes / stakes.decides;
    let (each, none) = start.blurred.weights();
    let mut settled = [0_u64; MOST_DAYS];
    for stream in 0..FUTURES {
        let mut chance = Chance::new(seed, stream);
        let ln_r = draw(&each, none, &mut chance);
        let mut state = start.clone();
        let clear_on = (0..MOST_DAYS).find(|_| {
            state.fish(like, ln_r, &mut chance);
            state.is_clear(wanted)
        });
        settled[clear_on.unwrap_or(MOST_DAYS)..].iter_mut().for_each(|n| *n += 1);
    }
    let share = |n: u64| n as f64 / FUTURES as f64;
    let enough = settled.iter().position(|n| share(*n) >= WANTED_POWER);
    let last = enough.unwrap_or(MOST_DAYS - 1);
    Some(MoreDays { days: enough.map(|day| day + 1), assurance: share(settled[last]) })
}

/// Draws the logarithm of a ratio from the posterior.
fn draw(each: &[(f64, f64)], none: f64, chance: &mut Chance) -> f64 {
    let all = none + each.iter().map(|(_, weight)| weight).sum::<f64>();
    let mut at = chance.uniform() * all - none;
    for (ln_r, weight) in each {
        if at < 0.0 {
            return 0.0;
        }
        at -= weight;
        if at < 0.0 {
            return *ln_r;
        }
    }
    0.0
}

/// The days so far and those of a future.
#[derive(Clone)]
struct State {
    minutes: Curve,
    blurred: Curve,
    blocks: Blocks,
}

/// Sum of the scores on A over the days, and its variance under permutation of the blocks.
#[derive(Clone, Copy, Default)]
struct Blocks {
    sum: f64,
    variance: f64,
}

impl Blocks {
    fn with(self, day: &Stratum) -> Self {
        let (n, k) = (day.scores.len() as f64, day.on_a as f64);
        let squares: f64 = day.scores.iter().map(|score| score * score).sum();
        Self {
            sum: self.sum + day.scores[..day.on_a].iter().sum::<f64>(),
            variance: self.variance + k * (n - k) / (n * (n - 1.0)) * squares,
        }
    }
}

impl State {
    /// Simulates one more day like another.
    fn fish(&mut self, like: &DayOfQuestion, ln_r: f64, chance: &mut Chance) {
        let [a, b] = like.sides;
        let showed = ln_r + sqrt(like.scatter) * chance.normal();
        let on_b =
            chance.gamma(JEFFREYS_SHAPE + (a.bites + b.bites) as f64) / (exp(ln_r) * a.minutes + b.minutes);
        let rates = [on_b * exp(showed), on_b];
        let (mut casts, mut tallies, mut at_min) = (Vec::new(), [Tally { bites: 0, time: 0.0 }; 2], 0.0);
        for side in AlternationPlan::new(Side::A, a.casts + b.casts).sides().take(a.casts + b.casts) {
            let which = usize::from(side == Side::B);
            let bite_at = chance.exponential() / rates[which];
            let minutes = bite_at.min(like.leave_min);
            let Ok(wait) = Wait::new(minutes, bite_at <= like.leave_min) else { continue };
            tallies[which].bites += u64::from(wait.is_bite());
            tallies[which].time += minutes;
            casts.push(SidedCast { rod: 1, at_min, wait, side, stratum: 0 });
            at_min += minutes + BETWEEN_MIN;
        }
        if tallies.iter().any(|tally| tally.time <= 0.0) {
            return;
        }
        let day = Curve::of_minutes(tallies[0], tallies[1]);
        self.blurred.add(&day.blurred(like.scatter));
        self.minutes.add(&day);
        if let Some(day) = of_rod(&blocks(&casts), 1) {
            self.blocks = self.blocks.with(&day);
        }
    }

    /// Whether the stake is as large as required and the other conditions are met, too.
    fn is_clear(&self, wanted: f64) -> bool {
        let any_look_p = wanted * exp(-self.minutes.ln_e_value());
        let Blocks { sum, variance } = self.blocks;
        let block_p = if variance > 0.0 { normal_two_sided(sum / sqrt(variance)) } else { 1.0 };
        is_clear(self.blurred.belief(), block_p, any_look_p)
    }
}
