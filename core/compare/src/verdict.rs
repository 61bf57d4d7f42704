//! The verdict on a change, and why no stronger one is possible.

use super::Factor;
use super::alternation::Side;
use super::belief::Belief;
use serde::{Deserialize, Serialize};

/// The verdict on a change. It never says that something works.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Verdict {
    /// "Can't tell yet": the default.
    CantTellYet,
    /// "Leans to ...".
    LeansTo(Side),
    /// "... clearly better here today".
    ClearlyBetterHereToday(Side),
}

/// Why no stronger verdict is possible.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Reason {
    /// Fewer than three bites on both sides together.
    TooFewBites,
    /// Fewer than three casts on one side.
    TooFewCasts,
    /// Changed once only: the change can't be told from the drift of the day.
    ChangedOnce,
    /// Too few switches for any outcome to be clear.
    TooFewSwitches,
    /// This was always changed together with it: the two can't be told apart.
    ChangedTogether(Factor),
    /// Striking cast by cast, but not block by block: the bites came in clumps.
    BitesInClumps,
    /// Striking at one look, but the screen is read all day: not enough yet for that.
    ReadAllDay,
    /// Striking now, but not without the two newest blocks.
    NotHeldYet,
    /// Striking by itself, but not among as many changes as were looked at.
    ManyLooks,
    /// The sides were left out for different times, and the minutes and the like-for-like waits
    /// don't say the same.
    LeftForDifferentTimes,
}

/// Probability from which the app says "leans to".
pub const LEANS_FROM: f64 = 0.8;
/// The least probability of being the better side, if the sides differ at all, that "clearly better" needs.
/// Whether they differ is judged by both p-values.
pub const CLEAR_FROM: f64 = 0.95;
/// For "clearly better", both the block p and the anytime-valid p must be below this, each adjusted for the
/// other changes.
pub const CLEAR_BELOW: f64 = 0.05;
/// With fewer bites on both sides together there is no verdict.
pub const FEWEST_BITES: u64 = 3;
/// With fewer casts on either side there is no verdict.
pub const FEWEST_CASTS: usize = 3;

/// With fewer switches there is no verdict, since the change can't be separated from the hours of the day.
pub const FEWEST_SWITCHES: usize = 4;

/// The input of a verdict.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Evidence {
    /// Bites on both sides together.
    pub bites: u64,
    /// Casts on the side that has fewer.
    pub fewest_casts: usize,
    /// Switches made.
    pub switches: usize,
    /// Which side is better, or neither: the more cautious of its two versions.
    pub belief: Belief,
    /// Holm-adjusted block p, held through the newest switches.
    pub block_p: f64,
    /// Anytime-valid p, times k (k + 1) for the k-th change.
    pub any_look_p: f64,
    /// Whether something else was always changed with it.
    pub changed_together: bool,
}

/// The verdict by the thresholds above.
pub fn verdict(e: &Evidence) -> Verdict {
    if e.bites < FEWEST_BITES || e.fewest_casts < FEWEST_CASTS || e.switches < FEWEST_SWITCHES {
        return Verdict::CantTellYet;
    }
    let (side, p) = e.belief.better();
    if p < LEANS_FROM || p.is_nan() {
        Verdict::CantTellYet
    } else if is_clear(e.belief, e.block_p, e.any_look_p) && !e.changed_together {
        Verdict::ClearlyBetterHereToday(side)
    } else {
        Verdict::LeansTo(side)
    }
}

/// Whether it is clear by the figures alone.
pub(crate) fn is_clear(belief: Belief, block_p: f64, any_look_p: f64) -> bool {
    let of_two = belief.a_if_any();
    belief.better().1 >= LEANS_FROM
        && of_two.max(1.0 - of_two) >= CLEAR_FROM
        && block_p < CLEAR_BELOW
        && any_look_p < CLEAR_BELOW
}

#[cfg(test)]
mod tests {
    use super::*;

    const STRONG: Evidence = Evidence {
        bites: 12,
        fewest_casts: 8,
        switches: 8,
        belief: Belief { a: 0.97, b: 0.01 },
        block_p: 0.03,
        any_look_p: 0.04,
        changed_together: false,
    };

    #[test]
    fn the_verdict_follows_the_thresholds() {
        let say = |change: fn(&mut Evidence)| {
            let mut e = STRONG;
            change(&mut e);
            verdict(&e)
        };
        assert_eq!(say(|_| ()), Verdict::ClearlyBetterHereToday(Side::A));
        let believed = |a, b| verdict(&Evidence { belief: Belief { a, b }, ..STRONG });
        assert_eq!(believed(0.03, 0.97), Verdict::ClearlyBetterHereToday(Side::B));
        assert_eq!(believed(0.85, 0.05), Verdict::LeansTo(Side::A));
        assert_eq!(believed(0.85, 0.04), Verdict::ClearlyBetterHereToday(Side::A));
        assert_eq!(believed(0.8, 0.1), Verdict::LeansTo(Side::A));
        assert_eq!(believed(0.79, 0.01), Verdict::CantTellYet);
        assert_eq!(believed(0.1, 0.85), Verdict::LeansTo(Side::B));
        assert_eq!(believed(f64::NAN, f64::NAN), Verdict::CantTellYet);
        assert_eq!(say(|e| e.block_p = 0.05), Verdict::LeansTo(Side::A));
        assert_eq!(say(|e| e.any_look_p = 0.05), Verdict::LeansTo(Side::A));
        assert_eq!(say(|e| e.changed_together = true), Verdict::LeansTo(Side::A));
        assert_eq!(say(|e| e.bites = 2), Verdict::CantTellYet);
        assert_eq!(say(|e| e.fewest_casts = 2), Verdict::CantTellYet);
        assert_eq!(say(|e| e.switches = 3), Verdict::CantTellYet);
    }
}
