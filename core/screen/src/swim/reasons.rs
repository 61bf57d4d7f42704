//! The reasons for a cast to a cell, and the objections to it.

use super::SwimScreen;
use crate::Arg;
use crate::figures::whole_reached;
use restwater_swim::{Against, NextSpot, Reason};

/// Fish that showed less than this long ago are the first reason, minutes.
const LATELY_MIN: f64 = 15.0;

impl SwimScreen<'_> {
    /// What was seen there just now comes first. What spots of this kind hold is left out until the record can tell, as on the
    /// Bank, and so is that this one wasn't fished, if it is said to be untried.
    pub(super) fn reasons(&self, next: &NextSpot) -> Vec<String> {
        let early = self.is_early();
        let is_told = |r: &Reason| matches!(r, Reason::FishHere { .. } | Reason::NotTried { .. });
        let untried = !early && next.reasons.iter().any(|r| matches!(r, Reason::NotTried { .. }));
        let bitten = self.bites_without_a_spot() > 0;
        let says = |r: &&Reason| match r {
            Reason::NeverDisturbed => !untried,
            // Where to start is no question once there was a bite, wherever it was.
            Reason::UsualStart { .. } => !bitten,
            r => !(early && is_told(r)),
        };
        let seen_lately = |r: &&Reason| match r {
            Reason::LinersHere { .. } => true,
            Reason::ShownNear { minutes_ago, .. } | Reason::Fed { minutes_ago } => *minutes_ago <= LATELY_MIN,
            _ => false,
        };
        let said = || next.reasons.iter().filter(says);
        let seen = said().filter(seen_lately).chain(said().filter(|r| !seen_lately(r)));
        let planned =
            (self.planned && self.ring == Some(next.cell)).then(|| self.words.say("swim-go-in-plan"));
        let mut lines: Vec<String> = planned.into_iter().collect();
        lines.extend(seen.map(|r| self.reason_at(next, r)));
        let stays = self.stays_at(next);
        let says = |a: &&Against| match a {
            Against::FishAway { .. } => !early,
            // The bait is the rod's own.
            Against::BaitOut => !stays,
            _ => true,
        };
        let mut against = next.against.iter().filter(says).map(|a| self.against(a));
        if !lines.is_empty()
            && let Some(first) = against.next()
        {
            lines.push(self.words.say_with("swim-but", &[("against", Arg::Text(&first))]));
        }
        lines.extend(against);
        lines
    }

    /// Whether too few bites came for the Bank to tell anything.
    pub(super) fn is_early(&self) -> bool {
        u64::from(self.next.bites) < restwater_compare::FEWEST_BITES
    }

    /// Whoever stays casts to the spot of the last cast: how far the bites were from the middle of its cell doesn't matter there.
    fn reason_at(&self, next: &NextSpot, reason: &Reason) -> String {
        match reason {
            Reason::NearLastBites { bites, minutes_ago, .. } if self.stays_at(next) => self.words.say_with(
                "reason-near-stay",
                &[
                    ("bites", Arg::Count(*bites as usize)),
                    ("minutes", Arg::Text(&whole_reached(*minutes_ago))),
                ],
            ),
            reason => self.reason(reason),
        }
    }

    /// Whether the rod's next cast goes to the spot of its last one, in this cell.
    fn stays_at(&self, next: &NextSpot) -> bool {
        self.stay.is_some() && self.ring == Some(next.cell)
    }
}
