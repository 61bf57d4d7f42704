//! Which ops of a log are in force, at what time and with what payload, once undo and corrections are taken
//! into account.

use super::setup_amended::Amended;
use super::{Moment, Op, OpOrder, Payload, SessionSetup};
use std::borrow::Cow;
use std::collections::{HashMap, HashSet};
use uuid::Uuid;

/// An op in force.
#[derive(Debug, Clone, PartialEq)]
pub struct Effective<'a> {
    /// The op as it was written.
    pub op: &'a Op,
    /// When it happened: owned if it was corrected.
    pub at: Cow<'a, Moment>,
    /// Its payload, as corrected.
    pub payload: &'a Payload,
    /// The set-up of a START that was corrected: what each correction changed.
    pub setup: Option<SessionSetup>,
    /// What else was entered about it afterwards: how the cast ended, or that the entry is right.
    pub said: Said<'a>,
}

/// What was entered about an entry afterwards.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Said<'a> {
    /// The ops that say how the cast ended, in the order of the log.
    pub ends: Vec<&'a Op>,
    /// Where in the log the entry was confirmed to be right, for the last time.
    pub confirmed: Option<OpOrder>,
}

/// The ops in the order of the log, each id once.
pub fn sorted<'a>(ops: impl IntoIterator<Item = &'a Op>) -> Vec<&'a Op> {
    let mut refs: Vec<&Op> = ops.into_iter().collect();
    refs.sort_by_key(|op| op.order());
    let mut seen = HashSet::with_capacity(refs.len());
    refs.retain(|op| seen.insert(op.id));
    refs
}

/// The ops in force, in the order of the log. The input must be [`sorted`].
pub fn effective<'a>(ordered: &[&'a Op]) -> Vec<Effective<'a>> {
    let void = voided(ordered);
    let mut times: HashMap<Uuid, u32> = HashMap::new();
    // The last amending payload of each kind. One of another kind, for example from a later version, does not
    // revert it.
    let mut payloads: HashMap<(Uuid, &str), &Payload> = HashMap::new();
    let mut said: HashMap<Uuid, Said> = HashMap::new();
    let mut setups: HashMap<Uuid, Amended> = HashMap::new();
    let in_force = ordered.iter().filter(|op| !void.contains(&op.id));
    for op in in_force.clone() {
        let Some(target) = op.amends else { continue };
        match op.payload {
            Payload::TimeSet { back_s } => {
                times.insert(target, back_s);
            }
            Payload::CastEndSet { .. } => said.entry(target).or_default().ends.push(op),
            Payload::Confirmed => said.entry(target).or_default().confirmed = Some(op.order()),
            _ => {
                if let Payload::SessionStarted(setup) = &op.payload
                    && let Some(start) = start_of(ordered, target)
                {
                    setups.entry(target).or_insert_with(|| Amended::of(start)).take(op.device, setup);
                }
                payloads.insert((target, op.payload.kind()), &op.payload);
            }
        }
    }
    in_force
        .filter(|op| op.amends.is_none() && op.payload.voids().is_none())
        .map(|op| Effective {
            op,
            at: times.get(&op.id).map_or(Cow::Borrowed(&op.at), |&back_s| Cow::Owned(op.at.set_back(back_s))),
            payload: payloads.get(&(op.id, op.payload.kind())).copied().unwrap_or(&op.payload),
            setup: setups.remove(&op.id).map(Amended::into_setup),
            said: said.remove(&op.id).unwrap_or_default(),
        })
        .collect()
}

/// The set-up as a START was tapped.
fn start_of<'a>(ordered: &[&'a Op], start: Uuid) -> Option<&'a SessionSetup> {
    match &ordered.iter().find(|op| op.id == start)?.payload {
        Payload::SessionStarted(setup) => Some(setup),
        _ => None,
    }
}

/// The ids that are put out of force by an undo, a removal or an undone import. Ops are read from the latest
/// back, so an undo that is itself undone has no effect. This works because an op can only point at earlier
/// ones.
pub fn voided(ordered: &[&Op]) -> HashSet<Uuid> {
    let mut void: HashSet<Uuid> = HashSet::new();
    for op in ordered.iter().rev() {
        if let Some(targets) = op.payload.voids()
            && !void.contains(&op.id)
        {
            void.extend(targets.iter().filter(|id| **id != op.id));
        }
    }
    void
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::EndSaid;
    use crate::testing::{amending, cast, id, op, undone};

    fn in_force(ops: &[Op]) -> Vec<Effective<'_>> {
        effective(&sorted(ops))
    }

    fn ids(ops: &[Op]) -> Vec<Uuid> {
        in_force(ops).iter().map(|entry| entry.op.id).collect()
    }

    #[test]
    fn the_log_is_ordered_by_the_hybrid_clock_and_each_entry_counts_once() {
        let ops = [cast(3), cast(1), cast(2), cast(1)];
        assert_eq!(ids(&ops), [id(1), id(2), id(3)]);
    }

    #[test]
    fn undone_and_removed_entries_are_out_of_force_and_so_are_the_entries_that_undid_them() {
        assert_eq!(ids(&[cast(1), cast(2), undone(3, 1)]), [id(2)]);
        assert_eq!(ids(&[cast(1), cast(2), op(3, Payload::Removed { targets: vec![id(2)] })]), [id(1)]);
    }

    #[test]
    fn an_undo_that_is_undone_has_no_effect() {
        assert_eq!(ids(&[cast(1), undone(2, 1), undone(3, 2)]), [id(1)]);
        assert_eq!(ids(&[cast(1), undone(2, 1), undone(3, 2), undone(4, 3)]), [] as [Uuid; 0]);
        assert_eq!(ids(&[cast(1), undone(2, 2)]), [id(1)], "it does not undo itself");
    }

    #[test]
    fn the_last_amended_time_counts_unless_it_is_undone() {
        let set = |n, back_s| amending(n, 5, Payload::TimeSet { back_s });
        let at = |ops: &[Op]| in_force(ops)[0].at.wall_ms;
        assert_eq!(at(&[cast(5), set(6, 60), set(7, 120)]), 180_000);
        assert_eq!(at(&[cast(5), set(6, 60), set(7, 120), undone(8, 7)]), 240_000);
        assert_eq!(at(&[cast(5), set(6, 60), undone(8, 6)]), 300_000);
        assert_eq!(ids(&[cast(5), set(6, 60)]), [id(5)], "what amends is no entry of its own");
    }

    #[test]
    fn corrected_ends_and_confirmations_are_attached_to_the_entry() {
        let ended = amending(2, 1, Payload::CastEndSet { end: EndSaid::Lost, after_s: Some(90) });
        let (early, late) = (amending(4, 1, Payload::Confirmed), amending(5, 1, Payload::Confirmed));
        let confirmed = Some(late.order());
        let ops = [cast(1), ended, cast(3), early, late];
        let found = in_force(&ops);
        assert_eq!(found[0].said, Said { ends: vec![&ops[1]], confirmed });
        assert_eq!(found[1].said, Said::default());
    }

    #[test]
    fn a_payload_is_amended_only_by_its_own_kind() {
        let note = |n, text: &str| amending(n, 1, Payload::Noted { text: text.into() });
        let first = op(1, Payload::Noted { text: "wind".into() });
        let other = amending(4, 1, Payload::Cast { rod: 2 });
        let ops = [first, note(2, "wind, east"), note(3, "wind, south"), other];
        assert_eq!(*in_force(&ops)[0].payload, Payload::Noted { text: "wind, south".into() });
    }
}
