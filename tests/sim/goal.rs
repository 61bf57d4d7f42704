//! The goals of the advice and of the words, each held or missed.

use super::change::Said;
use super::share::{Catches, Line};
use super::water::Kind;

/// One goal.
#[derive(Debug, Clone)]
pub struct Goal {
    /// What is asked, with the figure found.
    pub text: String,
    /// Whether it holds.
    pub held: bool,
}

impl Goal {
    fn at_least(what: &str, found: f64, least: f64) -> Self {
        let text =
            format!("{what}: {:.1} % of the oracle's, at least {:.0} % asked", 100.0 * found, 100.0 * least);
        Self { text, held: found >= least }
    }
}

/// What is asked from the sixth bite on.
fn after_sixth(kind: Kind) -> Option<f64> {
    match kind {
        Kind::NarrowWindow => Some(0.98),
        Kind::ConstantRate => Some(0.97),
        Kind::EarlyOnly | Kind::TwoPeaked => Some(0.90),
        _ => None,
    }
}

/// What is asked of whole first days.
fn whole(kind: Kind) -> Option<f64> {
    match kind {
        Kind::NarrowWindow => Some(0.93),
        Kind::ConstantRate => Some(0.95),
        _ => None,
    }
}

/// The goals of the advice.
pub fn of_advice(all: &[Catches]) -> Vec<Goal> {
    let mut goals = Vec::new();
    for catches in all {
        let (water, advice) = (&catches.water, &catches.lines[0]);
        let name = water.name;
        if let Some(least) = after_sixth(water.kind) {
            let found = advice.after_sixth.value();
            goals.push(Goal::at_least(&format!("{name}, from the sixth bite on"), found, least));
        }
        if let Some(least) = whole(water.kind) {
            goals.push(Goal::at_least(&format!("{name}, first day"), advice.whole.value(), least));
        }
        if let Some(share) = advice.with_book {
            goals.push(Goal::at_least(&format!("{name}, five days in the book"), share.value(), 0.95));
        }
    }
    let worst = |angler: usize| {
        let whole = |line: &Line| line.whole.value();
        all.iter().map(|c| whole(&c.lines[angler])).fold(f64::INFINITY, f64::min)
    };
    let others = all.first().map_or(0, |c| c.lines.len());
    for other in 1..others {
        let (ours, theirs) = (worst(0), worst(other));
        let name = &all[0].lines[other].angler;
        let text = format!(
            "worst share over all waters, first days: {:.1} % against {:.1} % of {name}",
            100.0 * ours,
            100.0 * theirs
        );
        goals.push(Goal { text, held: ours > theirs });
    }
    goals
}

/// False "clearly better" on at most one day in twenty.
pub fn of_changes(rows: &[(String, f64, Said)]) -> Vec<Goal> {
    rows.iter()
        .filter(|(_, effect, _)| *effect == 1.0)
        .map(|(name, _, said)| {
            let (p, _) = said.share(said.clear);
            let text = format!("{name}: \"clearly better\" on {:.1} % of days, at most 5 % asked", 100.0 * p);
            Goal { text, held: p <= 0.05 }
        })
        .collect()
}
