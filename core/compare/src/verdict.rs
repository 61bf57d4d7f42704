//! The words: what may be said of a change, and why not more.

use super::Factor;
use super::alternation::Side;
use super::belief::Belief;
use serde::{Deserialize, Serialize};

/// What is said of a change. It never says that something works.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Verdict {
    /// "Can't tell yet": the default.
    CantTellYet,
    /// "Leans to ...".
    LeansTo(Side),
    /// "... clearly better here today".
    ClearlyBetterHereToday(Side),
}

/// Why no more can be said.
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
    /// Striking cast by cast, not block by block: the bites came in clumps.
    BitesInClumps,
    /// Striking at one look, but the screen is read all day: not enough yet for that.
    ReadAllDay,
    /// Striking now, but not before the two newest switches: it has to hold.
    NotHeldYet,
    /// Striking alone, not among as many changes as were looked at.
    ManyLooks,
    /// The sides were left out for different times, and the minutes and the like-for-like waits
    /// don't say the same.
    LeftForDifferentTimes,
}

/// Probability from which the app says "leans to".
pub const LEANS_FROM: f64 = 0.8;
/// Probability that "clearly better" needs at least of being the better side, should they differ at all. That they do is
/// what both p-values are for.
pub const CLEAR_FROM: f64 = 0.95;
/// Both p-values that "clearly better" must stay below: of blocks and of any look, each raised for the
/// number of changes looked at.
pub const CLEAR_BELOW: f64 = 0.05;
/// Bites on both sides together below which nothing is said.
pub const FEWEST_BITES: u64 = 3;
/// Casts on each side below which nothing is said.
pub const FEWEST_CASTS: usize = 3;

/// Switches below which nothing is said: with fewer, the hours of the day can't be told from the change.
pub const FEWEST_SWITCHES: usize = 4;

/// What the words are made from.
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
    /// Anytime-valid p, times the number of changes looked at.
    pub any_look_p: f64,
    /// Whether something else was always changed with it.
    pub changed_together: bool,
}

/// Puts the evidence into words by the thresholds above.
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
    fn the_words_follow_their_thresholds() {
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
