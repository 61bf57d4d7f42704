//! When entries happened, and how far back the time of one can be set: one rule for the Bank, which sets back the last one, and for
//! Mend.

use super::fold::fold_until;
use super::step::Step;
use super::time_line::stamp_of;
use super::{LastTimed, Session, Stamp, TimeLine};
use restwater_log::{Effective, Op, effective, sorted};
use std::collections::HashMap;
use uuid::Uuid;

impl LastTimed {
    /// An entry as the last one so far.
    pub(super) fn of(step: &Step, not_before: Option<Stamp>) -> Self {
        Self {
            op: step.op.id,
            rod: step.payload.rod(),
            at: step.at.clone(),
            tapped: step.tapped.clone(),
            payload: step.payload.clone(),
            not_before,
        }
    }

    /// The earlier entry that keeps this one from being set back by `back_s` seconds, or `None` if nothing does.
    pub fn in_the_way(&self, back_s: u32) -> Option<&Stamp> {
        self.not_before.as_ref().filter(|before| self.tapped.set_back(back_s).ms_since(before) < 0)
    }
}

/// An entry as it was when it was the last one, with what was logged before it, or `None` if nothing depends on its time.
pub fn timed(session: &Session, ops: &[Op], op: Uuid) -> Option<LastTimed> {
    fold_until(session.id, ops, op).last_timed.filter(|last| last.op == op)
}

/// When each entry of a session that is in force happened, with the times that the other screens show.
pub fn stamps_of(ops: &[Op]) -> HashMap<Uuid, Stamp> {
    let ordered = sorted(ops);
    let in_force = effective(&ordered);
    let (_, stamps) = TimeLine::of(&in_force);
    let tapped: Vec<(&Effective, &Stamp)> = in_force.iter().zip(&stamps).collect();
    tapped.iter().map(|(entry, stamp)| (entry.op.id, stamp_of(entry, stamp, &tapped))).collect()
}
