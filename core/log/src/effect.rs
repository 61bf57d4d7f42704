//! Which ops of a log are in force, at what time and with what payload, once undo and mending are
//! taken into account.

use super::{EndSaid, Moment, Op, Payload};
use std::collections::{HashMap, HashSet};
use uuid::Uuid;

/// An op in force.
#[derive(Debug, Clone, PartialEq)]
pub struct Effective<'a> {
    /// The op as it was written.
    pub op: &'a Op,
    /// When it happened, as mended.
    pub at: Moment,
    /// What it says, as mended.
    pub payload: &'a Payload,
    /// What is said of it afterwards beside that: how the cast ended, that it is right as it stands.
    pub said: Said,
}

/// What is said of an entry afterwards.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Said {
    /// How the cast ended, the seconds from its splash, and the op that says so.
    pub end: Option<(EndSaid, Option<u32>, Uuid)>,
    /// It is right as it stands.
    pub confirmed: bool,
}

/// The ops in the order of the log, each id once.
pub fn sorted<'a>(ops: impl IntoIterator<Item = &'a Op>) -> Vec<&'a Op> {
    let mut refs: Vec<&Op> = ops.into_iter().collect();
    refs.sort_by_key(|op| op.order());
    let mut seen = HashSet::with_capacity(refs.len());
    refs.retain(|op| seen.insert(op.id));
    refs
}

/// The ops in force, in the order of the log, out of ops already [`sorted`]. Their moments name the boot of their device.
pub fn effective<'a>(ordered: &[&'a Op]) -> Vec<Effective<'a>> {
    let void = voided(ordered);
    let mut times: HashMap<Uuid, u32> = HashMap::new();
    // The last payload of each kind that amends an op: one of another kind, as of a later version, does not revert it.
    let mut payloads: HashMap<(Uuid, &str), &Payload> = HashMap::new();
    let mut said: HashMap<Uuid, Said> = HashMap::new();
    let in_force = ordered.iter().filter(|op| !void.contains(&op.id));
    for op in in_force.clone() {
        let Some(target) = op.amends else { continue };
        match op.payload {
            Payload::TimeSet { back_s } => {
                times.insert(target, back_s);
            }
            Payload::CastEndSet { end, after_s } => {
                said.entry(target).or_default().end = Some((end, after_s, op.id));
            }
            Payload::Confirmed => said.entry(target).or_default().confirmed = true,
            _ => {
                payloads.insert((target, op.payload.kind()), &op.payload);
            }
        }
    }
    in_force
        .filter(|op| op.amends.is_none() && op.payload.voids().is_none())
        .map(|op| {
            let at = op.at.on_device(op.device);
            Effective {
                op,
                at: match times.get(&op.id) {
                    Some(&back_s) => at.set_back(back_s),
                    None => at,
                },
                payload: payloads.get(&(op.id, op.payload.kind())).copied().unwrap_or(&op.payload),
                said: said.get(&op.id).copied().unwrap_or_default(),
            }
        })
        .collect()
}

/// The ids that an op in force puts out of force: an undo, a removal, an import taken back. Read from the latest op back, so that
/// an undo that is itself undone has no say; an op can only point at what came before it.
pub(crate) fn voided(ordered: &[&Op]) -> HashSet<Uuid> {
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
