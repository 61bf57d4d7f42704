//! The plan for a day, as its lines in force, and the plan that a session follows.

use super::model::{Session, TakenPlan};
use super::step::Step;
use restwater_log::{Payload, PlanKey, PlanLine};
use std::collections::BTreeMap;

/// A plan: each line once, in the order in which they become due.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Plan {
    lines: BTreeMap<PlanKey, PlanLine>,
}

impl Plan {
    /// Adds a line, which replaces the same line if there is one.
    pub fn set(&mut self, line: &PlanLine) {
        self.lines.insert(named_alike(line.key()), line.clone());
    }

    /// Removes a line.
    pub fn clear(&mut self, key: &PlanKey) {
        self.lines.remove(&named_alike(key.clone()));
    }

    /// Whether it has a line.
    pub fn has(&self, key: &PlanKey) -> bool {
        self.lines.contains_key(&named_alike(key.clone()))
    }

    /// Its lines.
    pub fn lines(&self) -> impl Iterator<Item = &PlanLine> {
        self.lines.values()
    }

    /// Whether nothing is planned.
    pub fn is_empty(&self) -> bool {
        self.lines.is_empty()
    }
}

/// Normalises the spelling of a peg's name, so that a peg has one key.
fn named_alike(key: PlanKey) -> PlanKey {
    match key {
        PlanKey::Peg { peg } => PlanKey::Peg { peg: peg.trim().to_lowercase() },
        other => other,
    }
}

impl Session {
    /// A plan is adopted or dropped; the latest entry counts.
    pub(super) fn take_plan(&mut self, step: &Step) {
        let Payload::PlanTaken { day, lines } = step.payload else {
            self.plan = None;
            return;
        };
        // A file from elsewhere may contain a line twice: the later one counts, as it does for entries
        // written here.
        let mut plan = Plan::default();
        for line in lines {
            plan.set(line);
        }
        let lines = plan.lines().cloned().collect();
        self.plan = Some(TakenPlan { op: step.op.id, day: *day, lines });
    }
}
