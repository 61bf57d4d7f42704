//! Simulation-based calibration (Talts and others 2018): truths are drawn from the prior, and casts from the
//! truth. If a posterior is computed correctly, the truth is equally likely to be anywhere in it, so that its
//! ranks are uniform.
//!
//! A rank is the weight of what is below the truth, with a random part of what equals it, since beliefs are
//! lists of values. Earlier days and changing days need the core's internals: `core/waits/src/calibrated.rs`
//! tests the same for them.

use super::goal::Goal;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use restwater_compare::alternation::Side;
use restwater_compare::poisson_rates::Tally;
use restwater_compare::tails::gamma_cdf;
use restwater_compare::{Belief, belief, belief_of_waits};
use restwater_waits::{FED_PRIOR, Record, SHAPE_PRIORS, Settings, ShapeLaw, Wait, WaitPosterior};
use std::fmt::Write as _;

/// Bins of a histogram of ranks.
const PARTS: usize = 20;
/// The number of shapes that represent a belief.
const LAWS: usize = 8_000;
/// Casts of a day.
const CASTS: usize = 14;
/// Minutes at which a shape is evaluated.
const LOOKED_AT: f64 = 20.0;
/// Powers of the hazard of fed casts, in eighths; the others have the same from the end (docs/advice.md).
const EIGHTHS: [f64; 7] = [5.0, 6.0, 7.0, 8.0, 9.0, 11.0, 13.0];

/// Draws a truth and a day from it, and returns the rank of the truth; `None` if the app says nothing about
/// such a day.
type Draw = fn(&Believed, &mut ChaCha8Rng) -> Option<f64>;

/// Everything for which truths are drawn.
pub const OF: [(&str, Draw); 5] = [
    ("shapes: share bitten by 20 min", shape),
    ("feed: how much quicker", feed),
    ("feed: share of fed casts bitten by 20 min", fed_shape),
    ("a change, by its minutes", by_minutes),
    ("a change, wait for wait", by_waits),
];

/// Ranks of one posterior.
#[derive(Debug, Clone)]
pub struct Ranks {
    /// Of what quantity.
    pub of: &'static str,
    /// How many there are in each bin.
    pub parts: [f64; PARTS],
}

impl Ranks {
    /// Truths drawn.
    pub fn count(&self) -> f64 {
        self.parts.iter().sum()
    }

    /// How probable it is that ranks are at least this uneven by luck (chi-square).
    pub fn p(&self) -> f64 {
        let even = self.count() / PARTS as f64;
        let chi: f64 = self.parts.iter().map(|n| (n - even).powi(2) / even).sum();
        1.0 - gamma_cdf(0.5 * (PARTS - 1) as f64, 0.5 * chi)
    }
}

/// The belief about shapes before a cast.
pub struct Believed(Vec<(f64, ShapeLaw)>);

impl Default for Believed {
    fn default() -> Self {
        let plan = WaitPosterior::new(&Record::of_today(&[]), &settings());
        Self(plan.map(|plan| plan.laws(LAWS)).unwrap_or_default())
    }
}

/// A day that does not change, for which shapes are drawn.
fn settings() -> Settings {
    Settings { changing: 0.0, ..Settings::default() }
}

/// The ranks of `truths` truths, each drawn from the prior.
pub fn ranks((of, draw): &(&'static str, Draw), truths: u64, run: u64) -> Ranks {
    let believed = Believed::default();
    let mut parts = [0.0; PARTS];
    for truth in 0..truths {
        let mut rng = ChaCha8Rng::seed_from_u64(run ^ 0x005B_C000);
        rng.set_stream(truth);
        if let Some(rank) = draw(&believed, &mut rng) {
            parts[((rank * PARTS as f64) as usize).min(PARTS - 1)] += 1.0;
        }
    }
    Ranks { of, parts }
}

/// The rank of a value in a belief.
fn rank(believed: impl Iterator<Item = (f64, f64)>, truth: f64, rng: &mut ChaCha8Rng) -> f64 {
    let (mut below, mut equal, mut all) = (0.0, 0.0, 0.0);
    for (weight, value) in believed {
        all += weight;
        if value < truth {
            below += weight;
        } else if value == truth {
            equal += weight;
        }
    }
    (below + rng.random::<f64>() * equal) / all
}

impl Believed {
    fn draw(&self, rng: &mut ChaCha8Rng) -> &ShapeLaw {
        let all: f64 = self.0.iter().map(|(weight, _)| weight).sum();
        let mut left = rng.random::<f64>() * all;
        let found = self.0.iter().find(|(weight, _)| {
            left -= weight;
            left <= 0.0
        });
        &found.unwrap_or(&self.0[0]).1
    }
}

/// A cast that is left for `leave` minutes: its hazard is that of the law times `power`, and a few casts have
/// a stray bite.
fn cast(law: &ShapeLaw, power: f64, leave: f64, rng: &mut ChaCha8Rng) -> Wait {
    let u: f64 = rng.random();
    let wait = if rng.random::<f64>() < SHAPE_PRIORS.stray {
        60.0 * u
    } else {
        bitten_after(|t| 1.0 - (1.0 - law.bitten_by(t)).powf(power), u, leave)
    };
    Wait::new(wait.min(leave).max(1e-6), wait < leave).unwrap_or_else(|_| unreachable!("a time above 0"))
}

/// When the share with a bite reaches `u`, by bisection; at least `leave` if it doesn't by then.
fn bitten_after(bitten: impl Fn(f64) -> f64, u: f64, leave: f64) -> f64 {
    if bitten(leave) <= u {
        return leave;
    }
    let (mut low, mut high) = (0.0, leave);
    for _ in 0..40 {
        let middle = 0.5 * (low + high);
        if bitten(middle) > u { high = middle } else { low = middle }
    }
    high
}

/// A day fished by the advice.
fn shape(believed: &Believed, rng: &mut ChaCha8Rng) -> Option<f64> {
    let law = believed.draw(rng);
    let mut plan = WaitPosterior::new(&Record::of_today(&[]), &settings()).ok()?;
    for _ in 0..CASTS {
        plan.add(cast(law, 1.0, plan.next_leave(), rng));
    }
    let laws = plan.laws(LAWS);
    let of = |law: &ShapeLaw| law.bitten_by(LOOKED_AT);
    Some(rank(laws.iter().map(|(weight, law)| (*weight, of(law))), of(law), rng))
}

/// A day with half of its casts in fed water, with the ratio of the hazards and the shape.
fn fed_day<'a>(believed: &'a Believed, rng: &mut ChaCha8Rng) -> Option<(WaitPosterior, &'a ShapeLaw, usize)> {
    let law = believed.draw(rng);
    let mut left: f64 = rng.random::<f64>() * FED_PRIOR.0.iter().sum::<f64>();
    let times = FED_PRIOR.0.iter().position(|p| {
        left -= p;
        left <= 0.0
    })?;
    let mut plan = WaitPosterior::new(&Record::of_today(&[]), &settings()).ok()?;
    for i in 0..2 * CASTS {
        let fed = i % 2 == 1;
        let power = EIGHTHS[if fed { times } else { EIGHTHS.len() - 1 - times }] / 8.0;
        plan.add_by_feed(cast(law, power, LOOKED_AT, rng), fed);
    }
    plan.feed_counts().then_some((plan, law, times))
}

fn feed(believed: &Believed, rng: &mut ChaCha8Rng) -> Option<f64> {
    let (plan, _, times) = fed_day(believed, rng)?;
    let believed = plan.fed_times()?;
    Some(rank(believed.iter().enumerate().map(|(i, (_, p))| (*p, i as f64)), times as f64, rng))
}

fn fed_shape(believed: &Believed, rng: &mut ChaCha8Rng) -> Option<f64> {
    let (mut plan, law, times) = fed_day(believed, rng)?;
    plan.next_is_fed(true);
    // The core computes powers by square roots and in single precision, so agreement to six figures counts as
    // equal.
    let rounded = |share: f64| (share * 1e6).round();
    let truth = rounded(1.0 - (1.0 - law.bitten_by(LOOKED_AT)).powf(EIGHTHS[times] / 8.0));
    let laws = plan.laws(LAWS);
    Some(rank(laws.iter().map(|(weight, law)| (*weight, rounded(law.bitten_by(LOOKED_AT)))), truth, rng))
}

/// ln of the ratio of the rates of two sides: zero, or from a narrow or a wide normal law (docs/advice.md).
fn ln_ratio(rng: &mut ChaCha8Rng) -> f64 {
    let slab: f64 = rng.random();
    match slab {
        s if s < 0.5 => 0.0,
        s if s < 0.75 => 0.4 * super::luck::normal(rng),
        _ => 1.2 * super::luck::normal(rng),
    }
}

/// The rank of the truth among "B is better", "no difference" and "A is better".
fn rank_of_change(belief: Belief, truth: f64, rng: &mut ChaCha8Rng) -> f64 {
    let sides = [(belief.b, -1.0), (belief.same(), 0.0), (belief.a, 1.0)];
    let sign = if truth == 0.0 { 0.0 } else { truth.signum() };
    rank(sides.into_iter(), sign, rng)
}

/// A number of bites, each of which falls to A by the odds; the visible ln r scatters if spells pull the
/// sides apart.
#[allow(clippy::unnecessary_wraps, reason = "as the others")]
fn by_minutes(_: &Believed, rng: &mut ChaCha8Rng) -> Option<f64> {
    let truth = ln_ratio(rng);
    let scatter = [0.0, 0.05, 0.2][rng.random_range(0..3)];
    let shows = truth + f64::sqrt(scatter) * super::luck::normal(rng);
    let (in_a, in_b) = (60.0 + 60.0 * rng.random::<f64>(), 60.0 + 60.0 * rng.random::<f64>());
    let bites = rng.random_range(4..20);
    let share = in_a * shows.exp() / (in_a * shows.exp() + in_b);
    let a = (0..bites).filter(|_| rng.random::<f64>() < share).count() as u64;
    let tally = |bites, time| Tally { bites, time };
    Some(rank_of_change(belief(tally(a, in_a), tally(bites - a, in_b), scatter), truth, rng))
}

/// Casts left until they have a bite: the partial likelihood uses only the order of the bites.
#[allow(clippy::unnecessary_wraps, reason = "as the others")]
fn by_waits(_: &Believed, rng: &mut ChaCha8Rng) -> Option<f64> {
    let truth = ln_ratio(rng);
    let mut side = |side: Side| -> Vec<Wait> {
        let keen = if side == Side::A { truth.exp() } else { 1.0 };
        (0..8).filter_map(|_| Wait::new(-12.0 / keen * (1.0 - rng.random::<f64>()).ln(), true).ok()).collect()
    };
    let (a, b) = (side(Side::A), side(Side::B));
    Some(rank_of_change(belief_of_waits(&[(a, b)], 0.0), truth, rng))
}

/// The ranks of every posterior, and how probable they are by luck.
pub fn table(rows: &[Ranks]) -> String {
    let mut text = String::from(
        "| posterior | truths | p of even ranks | ranks in each twentieth |\n|---|---|---|---|\n",
    );
    for row in rows {
        let parts = row.parts.map(|n| format!("{n:.0}")).join(" ");
        let _ = writeln!(text, "| {} | {:.0} | {:.3} | {parts} |", row.of, row.count(), row.p());
    }
    text
}

/// The goals: ranks no more uneven than by luck.
pub fn goals(rows: &[Ranks]) -> Vec<Goal> {
    let of = |row: &Ranks| Goal {
        text: format!(
            "{}: ranks of {:.0} truths even, p = {:.3} (goal: above 0.01)",
            row.of,
            row.count(),
            row.p()
        ),
        held: row.p() > 0.01,
    };
    rows.iter().map(of).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn even_ranks_pass_and_heaped_ones_do_not() {
        let even = Ranks { of: "even", parts: [50.0; PARTS] };
        assert!(even.p() > 0.999 && even.count() == 1000.0);
        let mut parts = [50.0; PARTS];
        (parts[0], parts[19]) = (100.0, 100.0);
        assert!(Ranks { of: "heaped at the ends", parts }.p() < 1e-6);
    }

    /// An overconfident posterior is noticed: here the belief leaves out the scatter in the data.
    #[test]
    fn a_belief_that_is_too_sure_is_noticed() {
        let mut parts = [0.0; PARTS];
        for truth in 0..2_000 {
            let mut rng = ChaCha8Rng::seed_from_u64(1);
            rng.set_stream(truth);
            let truth = ln_ratio(&mut rng);
            let shows = truth + super::super::luck::normal(&mut rng);
            let share = shows.exp() / (shows.exp() + 1.0);
            let a = (0..16).filter(|_| rng.random::<f64>() < share).count() as u64;
            let tally = |bites| Tally { bites, time: 60.0 };
            let rank = rank_of_change(belief(tally(a), tally(16 - a), 0.0), truth, &mut rng);
            parts[((rank * PARTS as f64) as usize).min(PARTS - 1)] += 1.0;
        }
        assert!(Ranks { of: "too sure", parts }.p() < 0.01);
    }
}
