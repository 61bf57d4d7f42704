//! A session's match: the rules in force, the details entered for fish, and what the scales showed.

use super::{MatchSetup, Stamp};
use restwater_log::{FishSaid, OtherPeg, Side};
use restwater_match_day::clock::{ClockError, Phase};
use restwater_match_day::weight::Weight;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// The match in force.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct MatchDay {
    /// The op that set it.
    pub op: Uuid,
    /// As it was set.
    pub setup: MatchSetup,
    /// The device whose wall clock its times are read by.
    pub(super) device: Uuid,
    /// What that clock would have shown at the session's start, judged by its state when the match was first
    /// set, in UTC ms.
    pub(super) wall_at_start_ms: i64,
}

impl MatchDay {
    /// What the phone's wall clock would show now if nobody had moved it since the match was set.
    ///
    /// All-in and all-out are times of day by the organiser's clock, and `offset_ms` says how far that is
    /// from the phone's. They are tied to the time line once, by what the phone's clock showed when the match
    /// was first set. So neither setting the clock later, by hand or by a network, nor changing a rule later
    /// moves them. A match that is called off and set again is tied again, and so is one set by another phone.
    pub fn phone_ms(&self, now: &Stamp) -> i64 {
        self.wall_at_start_ms.saturating_add(now.at_ms)
    }

    /// The place of a time of the organiser's clock on the time line of the session.
    pub(super) fn line_ms(&self, signal_ms: i64) -> i64 {
        signal_ms.saturating_sub(self.setup.offset_ms).saturating_sub(self.wall_at_start_ms)
    }

    /// The state of the match.
    pub fn phase(&self, now: &Stamp) -> Result<Phase, ClockError> {
        Ok(self.setup.clock()?.phase(self.phone_ms(now)))
    }

    /// Milliseconds left to fish: before all-in the whole match, after all-out 0.
    pub fn left_ms(&self, now: &Stamp) -> Result<i64, ClockError> {
        Ok(self.setup.clock()?.left_ms(self.phone_ms(now)))
    }

    /// Converts a time of [`MatchDay::phone_ms`] to the phone's wall clock as it is set now, for display and
    /// alarms.
    pub fn wall_ms(&self, phone_ms: i64, now: &Stamp) -> i64 {
        now.wall_at(phone_ms.saturating_sub(self.wall_at_start_ms))
    }
}

/// The details entered for a fish.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SaidFish {
    /// The op that says it.
    pub op: Uuid,
    /// The details.
    pub said: FishSaid,
}

/// What another angler's nets weigh.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OtherNet {
    /// The op that says it.
    pub op: Uuid,
    /// When.
    pub at: Stamp,
    /// Whose.
    pub peg: OtherPeg,
    /// How much.
    pub shown: Weight,
    /// Whether it is a guess by eye.
    pub guessed: bool,
}

/// A net on the scales.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NetScales {
    /// The op that says it.
    pub op: Uuid,
    /// When.
    pub at: Stamp,
    /// Name of the net.
    pub net: String,
    /// What the scales showed.
    pub shown: Weight,
}

/// How many pegs of the section there are on either side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Section {
    /// To the left.
    pub left: u8,
    /// To the right.
    pub right: u8,
}

impl Section {
    /// Whether a peg belongs to it.
    pub fn has(self, peg: OtherPeg) -> bool {
        let last = match peg.side {
            Side::Left => self.left,
            Side::Right => self.right,
            Side::Across => 0,
        };
        (1..=last).contains(&peg.place)
    }

    /// Its pegs in the order in which the scales pass them, from the left.
    pub fn pegs(self) -> Vec<OtherPeg> {
        let left = (1..=self.left).rev().map(|place| OtherPeg { side: Side::Left, place });
        left.chain((1..=self.right).map(|place| OtherPeg { side: Side::Right, place })).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_section_lists_exactly_its_own_pegs_from_the_left() {
        let section = Section { left: 2, right: 1 };
        let peg = |side, place| OtherPeg { side, place };
        assert_eq!(section.pegs(), [peg(Side::Left, 2), peg(Side::Left, 1), peg(Side::Right, 1)]);
        assert!(section.pegs().into_iter().all(|peg| section.has(peg)));
        for other in [peg(Side::Left, 3), peg(Side::Right, 2), peg(Side::Across, 1), peg(Side::Left, 0)] {
            assert!(!section.has(other));
        }
    }
}
