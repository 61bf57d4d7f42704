//! The plan for a day: the lines in force of the entries that wrote them, and the plan that a session goes by.

use super::model::{Session, TakenPlan};
use super::step::Step;
use restwater_log::{Payload, PlanKey, PlanLine};
use std::collections::BTreeMap;

/// A plan as it is written: each line once, in the order in which a day comes to them.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Plan {
    lines: BTreeMap<PlanKey, PlanLine>,
}

impl Plan {
    /// Takes a line in; it replaces the one before it.
    pub fn set(&mut self, line: &PlanLine) {
        self.lines.insert(named_alike(line.key()), line.clone());
    }

    /// Takes a line out.
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

/// A peg is one peg however it is written.
fn named_alike(key: PlanKey) -> PlanKey {
    match key {
        PlanKey::Peg { peg } => PlanKey::Peg { peg: peg.trim().to_lowercase() },
        other => other,
    }
}

impl Session {
    /// A plan is taken up or dropped; the last word holds.
    pub(super) fn take_plan(&mut self, step: &Step) {
        let Payload::PlanTaken { day, lines } = step.payload else {
            self.plan = None;
            return;
        };
        // A file from elsewhere may say a line twice: the later one holds, as at home.
        let mut plan = Plan::default();
        for line in lines {
            plan.set(line);
        }
        let lines = plan.lines().cloned().collect();
        self.plan = Some(TakenPlan { op: step.op.id, day: *day, lines });
    }
}
