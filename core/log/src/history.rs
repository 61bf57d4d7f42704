//! The steps of undo and redo, derived from the log itself, so that they survive a restart and a merge.

use super::effect::voided;
use super::{Hlc, Op, Payload};
use std::collections::HashSet;
use uuid::Uuid;

/// One step of undo: one op, or the ops of one group.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// The ops that are undone together.
    pub ops: Vec<Uuid>,
    /// The kind of op that the label names: the first one's, or the outcome of a bite that was logged with
    /// the bite.
    pub kind: String,
    /// Wall time of that op.
    pub wall_ms: i64,
    /// Minutes east of UTC then.
    pub offset_min: i16,
    /// Hybrid clock reading of the last of them.
    pub hlc: Hlc,
    group: Uuid,
}

/// Undo and redo of one device, the next one last.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct History {
    /// The entries that undo would undo, latest last.
    pub undo: Vec<Entry>,
    /// The entries that redo would restore, latest undone last, each with the op that undid it.
    pub redo: Vec<(Entry, Uuid)>,
}

/// Replays the ops of `device`, which must be sorted: a new entry clears redo, undo moves an entry to redo,
/// and redo moves it back. Undoing and redoing an import have keys of their own and are not steps here;
/// entries that are gone with an undone import are not offered.
pub fn history(ordered: &[&Op], device: Uuid) -> History {
    let mut history = History::default();
    for op in ordered.iter().filter(|op| op.device == device && op.is_step_of_undo()) {
        match &op.payload {
            Payload::Undone { targets } => history.step(op, targets),
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

/// The ops of imports that are undone at present.
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
                kind: kind_of(op).to_owned(),
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

/// The kind that a label names an op by. A set-up that amends that of a START is a correction: UNDO undoes the correction, not
/// the START.
fn kind_of(op: &Op) -> &str {
    match op.payload {
        Payload::SessionStarted(_) if op.amends.is_some() => "session_corrected",
        _ => op.payload.kind(),
    }
}

#[cfg(test)]
mod tests {
    use super::super::effect::sorted;
    use super::*;
    use crate::testing::{MINE, THEIRS, cast, id, op, undone};

    fn of(ops: &[Op]) -> History {
        history(&sorted(ops), MINE)
    }

    fn undo(history: &History) -> Vec<Vec<Uuid>> {
        history.undo.iter().map(|entry| entry.ops.clone()).collect()
    }

    fn grouped(n: u64, group: u64, payload: Payload) -> Op {
        Op { group: Some(id(group)), ..op(n, payload) }
    }

    #[test]
    fn only_this_phones_entries_are_undone_latest_first() {
        let theirs = Op { device: THEIRS, ..cast(2) };
        let found = of(&[cast(1), theirs, cast(3)]);
        assert_eq!(undo(&found), [[id(1)], [id(3)]]);
        assert_eq!(found.redo, []);
        let last = &found.undo[1];
        assert_eq!((last.kind.as_str(), last.wall_ms, last.hlc.ms), ("cast", 180_000, 180_000));
    }

    #[test]
    fn undo_moves_an_entry_to_redo_and_a_new_entry_clears_redo() {
        let pressed = of(&[cast(1), cast(2), undone(3, 2)]);
        assert_eq!(undo(&pressed), [[id(1)]]);
        assert_eq!(pressed.redo.iter().map(|(e, by)| (e.ops[0], *by)).collect::<Vec<_>>(), [(id(2), id(3))]);
        let back = of(&[cast(1), cast(2), undone(3, 2), undone(4, 3)]);
        assert_eq!((undo(&back), back.redo.len()), (vec![vec![id(1)], vec![id(2)]], 0));
        let on = of(&[cast(1), cast(2), undone(3, 2), cast(4)]);
        assert_eq!(
            (undo(&on), on.redo.len()),
            (vec![vec![id(1)], vec![id(4)]], 0),
            "a new entry clears redo"
        );
    }

    #[test]
    fn a_group_is_one_entry_named_after_the_outcome_of_its_bite() {
        let ops = [
            grouped(1, 1, Payload::Bite { rod: 1 }),
            grouped(2, 1, Payload::Lost { rod: 1 }),
            grouped(3, 3, Payload::Cast { rod: 1 }),
            grouped(4, 3, Payload::Noted { text: String::new() }),
        ];
        let found = of(&ops);
        assert_eq!(undo(&found), [[id(1), id(2)], [id(3), id(4)]]);
        let [bite, cast] = &found.undo[..] else { panic!("{found:?}") };
        assert_eq!((bite.kind.as_str(), bite.wall_ms, bite.hlc.ms), ("lost", 120_000, 120_000));
        assert_eq!((cast.kind.as_str(), cast.wall_ms, cast.hlc.ms), ("cast", 180_000, 240_000));
        assert_eq!(
            of(&[ops[0].clone(), ops[1].clone(), undone(5, 2)]).undo,
            [],
            "either takes the group back"
        );
    }

    #[test]
    fn undoing_an_import_is_no_step_of_undo_and_hides_the_imported_entries() {
        let import = id(99);
        let taken = op(3, Payload::ImportUndone { import, targets: vec![id(1)] });
        let found = of(&[cast(1), cast(2), taken.clone()]);
        assert_eq!((undo(&found), found.redo.len()), (vec![vec![id(2)]], 0));
        let brought_back = op(4, Payload::ImportRedone { import, targets: vec![id(3)] });
        assert_eq!(undo(&of(&[cast(1), cast(2), taken.clone(), brought_back])), [[id(1)], [id(2)]]);
        let after_undo = of(&[
            cast(1),
            cast(2),
            undone(5, 1),
            op(6, Payload::ImportUndone { import, targets: vec![id(5)] }),
        ]);
        assert_eq!(after_undo.redo, [], "nor is an undo offered that went with an import");
    }
}
