//! The progress of an alternating test, judged by the casts made since it began.

use super::alternation::Alternation;
use super::model::Session;
use super::rows::value_of;
use super::{Cast, RodState};
use restwater_compare::Factor;
use restwater_compare::{AlternationPlan, Side};

/// How far a test has come.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Progress {
    /// The sides planned, in order.
    pub sides: Vec<Side>,
    /// How many of them have been cast.
    pub done: usize,
    /// Casts made meanwhile with something else or to another spot: they don't count.
    pub off_plan: usize,
    /// Whether the last of the casts counted is still out.
    pub last_is_out: bool,
}

impl Alternation {
    /// Goes through the casts made since it began: a cast counts if it has the next planned value and is on
    /// the test's spot.
    pub fn progress(&self, session: &Session) -> Progress {
        let first = if self.b_first { Side::B } else { Side::A };
        let sides: Vec<Side> = AlternationPlan::new(first, usize::from(self.casts)).sides().collect();
        let (mut done, mut off_plan, mut last_is_out) = (0, 0, false);
        for (place, cast) in session.casts.iter().enumerate().skip(self.after_cast) {
            if cast.rod != self.rod || done >= sides.len() {
                continue;
            }
            if self.fits(cast, sides[done]) {
                done += 1;
                last_is_out = matches!(session.rod(self.rod).map(|r| &r.state),
                    Some(RodState::Out { cast } | RodState::FishOn { cast }) if *cast == place);
            } else {
                off_plan += 1;
            }
        }
        Progress { sides, done, off_plan, last_is_out }
    }

    fn fits(&self, cast: &Cast, side: Side) -> bool {
        let value = |factor| value_of(factor, &cast.rig, cast.spot.as_ref());
        let here = self.spot.is_none() || value(Factor::Spot) == self.spot;
        here && value(self.factor).as_deref() == Some(self.value(side))
    }
}

#[cfg(test)]
mod tests {
    use super::super::written::{SESSION, Written};
    use super::*;
    use crate::fold;
    use restwater_log::{Payload, Rig};
    use uuid::Uuid;

    fn begin(day: &mut Written, s: i64) -> Uuid {
        day.log(
            s,
            Payload::AlternationStarted {
                rod: 1,
                factor: restwater_log::Factor::Colour,
                a: "white".into(),
                b: "pink".into(),
                b_first: true,
                casts: 4,
            },
        )
    }

    fn cast(day: &mut Written, s: i64, colour: &str) {
        let rig = Rig { colour: Some(colour.into()), ..Rig::default() };
        day.log(s, Payload::RigSet { rod: 1, rig });
        day.log(s + 10, Payload::Cast { rod: 1 });
        day.log(s + 400, Payload::WoundIn { rod: 1 });
    }

    #[test]
    fn casts_off_the_plan_do_not_advance_it() {
        let mut day = Written::new(1);
        cast(&mut day, 0, "white");
        begin(&mut day, 450);
        for (start, colour) in (500..).step_by(500).zip(["pink", "pink", "white", "white", "pink"]) {
            cast(&mut day, start, colour);
        }
        let session = fold(SESSION, &day.ops);
        let progress = session.alternation.as_ref().unwrap().progress(&session);
        assert_eq!(progress.sides, [Side::B, Side::A, Side::A, Side::B]);
        assert_eq!((progress.done, progress.off_plan, progress.last_is_out), (4, 1, false));
    }

    #[test]
    fn a_forgotten_cast_from_before_the_test_is_none_of_its_casts() {
        let mut day = Written::new(1);
        cast(&mut day, 0, "white");
        let last = day.ops.iter().rev().find(|op| matches!(op.payload, Payload::Cast { .. })).unwrap().id;
        begin(&mut day, 3_600);
        cast(&mut day, 3_700, "pink");
        let end = restwater_log::EndSaid::WoundIn;
        day.log(5_000, Payload::CastAdded { after: last, lag_s: 600, wait_s: 1_200, end });
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.casts.len(), 3);
        let progress = session.alternation.as_ref().unwrap().progress(&session);
        assert_eq!((progress.done, progress.off_plan), (1, 0));
    }

    #[test]
    fn a_test_ends_by_its_op_by_undo_or_with_the_session() {
        let mut day = Written::new(1);
        let begun = begin(&mut day, 10);
        let running = |day: &Written| fold(SESSION, &day.ops).alternation.is_some();
        assert!(running(&day));
        let ended = day.log(20, Payload::AlternationEnded);
        assert!(!running(&day));
        day.undo(30, &[ended]);
        assert!(running(&day), "undoing the end brings it back");
        day.undo(40, &[begun]);
        assert!(!running(&day));
        begin(&mut day, 50);
        day.log(60, Payload::SessionEnded);
        assert!(!running(&day));
    }
}
