//! What undo and redo would take back, read from the log itself: it survives a restart and a merge.

use super::effect::voided;
use super::{Hlc, Op, Payload};
use std::collections::HashSet;
use uuid::Uuid;

/// What one press of undo takes back: one op, or the ops of one group.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// The ops taken back together.
    pub ops: Vec<Uuid>,
    /// Kind of the one that names them, for the label: the first, or what became of a bite that was logged with it.
    pub kind: String,
    /// Wall time of that one.
    pub wall_ms: i64,
    /// Minutes east of UTC then.
    pub offset_min: i16,
    /// Place of the last of them in the order of the log.
    pub hlc: Hlc,
    group: Uuid,
}

/// Undo and redo of one device, the next one last.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct History {
    /// What undo takes back, latest last.
    pub undo: Vec<Entry>,
    /// What redo brings back, latest undone last, each with the undo op that it points at.
    pub redo: Vec<(Entry, Uuid)>,
}

/// Replays what `device` did, out of ops already sorted: doing clears redo, undoing moves an entry over, redoing moves it back.
/// Taking an import back and bringing it back have keys of their own and are neither; what is gone with an import is not offered.
pub fn history(ordered: &[&Op], device: Uuid) -> History {
    let mut history = History::default();
    for op in ordered.iter().filter(|op| op.device == device) {
        match &op.payload {
            Payload::Undone { targets } => history.step(op, targets),
            Payload::ImportUndone { .. } | Payload::ImportRedone { .. } => {}
            _ => history.done(op),
        }
    }
    let gone = gone_with_an_import(ordered);
    if !gone.is_empty() {
        let is_there = |entry: &Entry| !entry.ops.iter().all(|id| gone.contains(id));
        history.undo.retain(is_there);
        history.redo.retain(|(entry, undo)| is_there(entry) && !gone.contains(undo));
    }
    history
}

/// The ops that an import which is taken back at present had brought.
fn gone_with_an_import(ordered: &[&Op]) -> HashSet<Uuid> {
    let taken_back = |op: &&&Op| matches!(op.payload, Payload::ImportUndone { .. });
    if !ordered.iter().any(|op| taken_back(&op)) {
        return HashSet::new();
    }
    let void = voided(ordered);
    let in_force = ordered.iter().filter(taken_back).filter(|op| !void.contains(&op.id));
    in_force.filter_map(|op| op.payload.voids()).flatten().copied().collect()
}

impl History {
    fn done(&mut self, op: &Op) {
        self.redo.clear();
        match self.undo.last_mut().filter(|last| last.group == op.entry()) {
            Some(last) => {
                last.ops.push(op.id);
                last.hlc = op.hlc;
                if matches!(op.payload, Payload::Landed { .. } | Payload::Lost { .. }) {
                    op.payload.kind().clone_into(&mut last.kind);
                    (last.wall_ms, last.offset_min) = (op.at.wall_ms, op.at.offset_min);
                }
            }
            None => self.undo.push(Entry {
                ops: vec![op.id],
                kind: op.payload.kind().to_owned(),
                wall_ms: op.at.wall_ms,
                offset_min: op.at.offset_min,
                hlc: op.hlc,
                group: op.entry(),
            }),
        }
    }

    fn step(&mut self, op: &Op, targets: &[Uuid]) {
        if let Some(i) = self.redo.iter().rposition(|(_, undo)| targets.contains(undo)) {
            let (entry, _) = self.redo.remove(i);
            self.undo.push(entry);
        } else if let Some(i) =
            self.undo.iter().rposition(|entry| entry.ops.iter().any(|id| targets.contains(id)))
        {
            let entry = self.undo.remove(i);
            self.redo.push((entry, op.id));
        }
    }
}
