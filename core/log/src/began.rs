//! The order of sessions and who owns each: both follow from the entry that began the session, never from the
//! wall clock.

use super::{Op, OpOrder, Payload};
use uuid::Uuid;

/// How a session began, as far as its entries show. An undone entry counts too, since undoing it doesn't
/// change its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Began {
    /// Order of its earliest `SessionStarted`; of its earliest entry if it has none (yet).
    pub order: OpOrder,
    /// Wall time of that entry.
    pub wall_ms: i64,
    /// The device that began it, or `None` if no `SessionStarted` is known.
    pub device: Option<Uuid>,
}

impl Began {
    /// The beginning according to one entry.
    pub fn of(op: &Op) -> Self {
        let started = matches!(op.payload, Payload::SessionStarted(_));
        Self { order: op.order(), wall_ms: op.at.wall_ms, device: started.then_some(op.device) }
    }

    /// The beginning according to all these entries, or `None` if there are none.
    pub fn of_all<'a>(ops: impl IntoIterator<Item = &'a Op>) -> Option<Self> {
        ops.into_iter().fold(None, Self::and_of)
    }

    /// The beginning so far, combined with one more entry.
    #[must_use]
    pub fn and_of(so_far: Option<Self>, op: &Op) -> Option<Self> {
        let told = Self::of(op);
        Some(so_far.map_or(told, |so_far| so_far.and(told)))
    }

    /// Combines two beginnings; their order doesn't matter.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        // A start takes precedence over any other entry, then the earlier entry over the later.
        let rank = |began: &Self| (began.device.is_none(), began.order);
        if rank(&other) < rank(&self) { other } else { self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Hlc, Moment, SessionSetup};

    fn op(ms: u64, device: u128, payload: Payload) -> Op {
        let at = Moment {
            wall_ms: 7,
            offset_min: 0,
            zone: String::new(),
            mono_ms: 0,
            boot: String::new(),
            approx_s: 0,
        };
        Op {
            id: Uuid::from_u128(u128::from(ms)),
            device: Uuid::from_u128(device),
            hlc: Hlc { ms, count: 0 },
            at,
            session: Uuid::from_u128(50),
            payload,
            amends: None,
            group: None,
        }
    }

    #[test]
    fn a_session_begins_with_its_earliest_start_in_any_order_of_entries() {
        let start = || Payload::SessionStarted(SessionSetup::default());
        let note = || Payload::Noted { text: "early".into() };
        let all = [op(10, 1, note()), op(20, 2, start()), op(30, 1, start()), op(5, 3, note())];
        let began = Began::of_all(&all).unwrap();
        assert_eq!((began.order.0.ms, began.device), (20, Some(Uuid::from_u128(2))));
        assert_eq!(Began::of_all(all.iter().rev()), Some(began));
        let unknown = Began::of_all([&all[0], &all[3]]).unwrap();
        assert_eq!((unknown.order.0.ms, unknown.device), (5, None));
        assert_eq!(Began::of_all([]), None);
    }
}
