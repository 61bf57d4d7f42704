//! A session's match: the rules in force, the details entered for fish, and what the scales showed.

use super::{MatchSetup, Stamp};
use restwater_log::{FishSaid, Moment, OtherPeg, Side, clocks_forward_min};
use restwater_match_day::clock::{ClockError, MatchClock, Phase};
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
    /// What to add to a time of that clock to get the true one: not zero if the clock had been reset to 1970 and a later entry
    /// shows by how much.
    pub(super) put_right_ms: i64,
    pub(super) local: LocalTime,
}

/// The local time that all-in and all-out were set by, and whether the clocks have changed since.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct LocalTime {
    /// The phone's offset from UTC and its zone when they were set.
    set: (i16, String),
    /// Until when the phone is known to have had that time, in ms on the time line.
    until_ms: i64,
    /// By how many minutes the clocks had been put forward at the next entry with another offset.
    forward_min: Option<i64>,
}

impl LocalTime {
    /// Of times that were set at a moment, which is at this place on the time line.
    pub(super) fn set_at(moment: &Moment, at_ms: i64) -> Self {
        let Moment { offset_min, zone, .. } = moment;
        Self { set: (*offset_min, zone.clone()), until_ms: at_ms, forward_min: None }
    }

    /// By how much the clocks have been put forward by then; in another zone nobody put them forward.
    fn forward_min(&self, shown: &Moment) -> i64 {
        if shown.zone == self.set.1 { clocks_forward_min(self.set.0, shown.offset_min) } else { 0 }
    }

    /// Notes what a later entry of the phone shows.
    pub(super) fn note(&mut self, moment: &Moment, at_ms: i64) {
        match self.forward_min(moment) {
            _ if self.forward_min.is_some() => {}
            0 => self.until_ms = self.until_ms.max(at_ms),
            min => self.forward_min = Some(min),
        }
    }
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
    fn line_ms(&self, signal_ms: i64) -> i64 {
        signal_ms.saturating_sub(self.setup.offset_ms).saturating_sub(self.wall_at_start_ms)
    }

    /// All-in and all-out by the organiser's clock. Both are times of day, so over a change of the clocks they are those of the new
    /// time. When the clocks changed isn't known exactly; a signal that was due while the phone still had the old time stays.
    fn signals_ms(&self, now: Option<&Stamp>) -> (i64, i64) {
        let since = || now.map_or(0, |now| self.local.forward_min(&now.shown));
        let forward_ms = self.local.forward_min.unwrap_or_else(since) * 60_000;
        let moved = |ms: i64| {
            if self.line_ms(ms) > self.local.until_ms { ms.saturating_sub(forward_ms) } else { ms }
        };
        let (all_in, all_out) = (moved(self.setup.all_in_ms), moved(self.setup.all_out_ms));
        // A match that is shorter than the change goes by its length.
        if all_in < all_out { (all_in, all_out) } else { (self.setup.all_in_ms, self.setup.all_out_ms) }
    }

    /// All-in by the organiser's clock.
    pub fn all_in_ms(&self, now: &Stamp) -> i64 {
        self.signals_ms(Some(now)).0
    }

    /// All-out by the organiser's clock.
    pub fn all_out_ms(&self, now: &Stamp) -> i64 {
        self.signals_ms(Some(now)).1
    }

    /// All-in and all-out on the time line, for what runs at `now`; without it, judged by the entries alone.
    pub(super) fn on_line_ms(&self, now: Option<&Stamp>) -> (i64, i64) {
        let (all_in, all_out) = self.signals_ms(now);
        (self.line_ms(all_in), self.line_ms(all_out))
    }

    /// The match clock, for the times of [`MatchDay::phone_ms`].
    pub fn clock(&self, now: &Stamp) -> Result<MatchClock, ClockError> {
        let (all_in_ms, all_out_ms) = self.signals_ms(Some(now));
        MatchClock::new(all_in_ms, all_out_ms, self.setup.rules.landing_min, self.setup.offset_ms)
    }

    /// The set-up with its times as they are now: what a change of a rule starts from.
    pub fn setup_at(&self, now: &Stamp) -> MatchSetup {
        let (all_in_ms, all_out_ms) = self.signals_ms(Some(now));
        MatchSetup { all_in_ms, all_out_ms, ..self.setup.clone() }
    }

    /// The same as it is shown.
    pub fn setup_shown(&self, now: &Stamp) -> MatchSetup {
        let setup = self.setup_at(now);
        let (all_in_ms, all_out_ms) = (self.shown_ms(setup.all_in_ms), self.shown_ms(setup.all_out_ms));
        MatchSetup { all_in_ms, all_out_ms, ..setup }
    }

    /// A time of the match's clock as it is shown: by the true time, if that clock had been reset.
    pub fn shown_ms(&self, ms: i64) -> i64 {
        ms.saturating_add(self.put_right_ms)
    }

    /// The state of the match.
    pub fn phase(&self, now: &Stamp) -> Result<Phase, ClockError> {
        let clock = self.clock(now)?;
        Ok(if self.is_weeks_ago(clock, now) { Phase::Over } else { clock.phase(self.phone_ms(now)) })
    }

    /// Milliseconds left to fish: before all-in the whole match, after all-out 0.
    pub fn left_ms(&self, now: &Stamp) -> Result<i64, ClockError> {
        let clock = self.clock(now)?;
        Ok(if self.is_weeks_ago(clock, now) { 0 } else { clock.left_ms(self.phone_ms(now)) })
    }

    /// Whether the phone was restarted after more weeks than a match lasts, so that the line doesn't say how long ago it was.
    fn is_weeks_ago(&self, clock: MatchClock, now: &Stamp) -> bool {
        !now.is_on_the_line() && now.shown.wall_ms > self.shown_ms(clock.all_out_phone_ms())
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
