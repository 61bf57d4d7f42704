//! The end of a cast that was corrected more than once, perhaps on two phones of the angler that did not know of each other.
//!
//! A correction contains the kind of the end and the minutes to it, but the angler says one of them: a tap on a kind takes the
//! minutes along, or proposes some where nobody saw the end, and a tap on minutes takes the kind along. On one phone the last
//! correction therefore counts as it is. One of another phone counts for what was said with it.

use super::Stamp;
use super::cast::EndCause;
use restwater_log::{EndSaid, Op, OpOrder, Payload};
use std::collections::HashMap;
use uuid::Uuid;

/// What was entered about the end of a cast.
#[derive(Debug, Clone)]
pub(super) struct Correction {
    pub(super) end: EndSaid,
    /// Seconds from the splash; unchanged if `None`.
    pub(super) after_s: Option<u32>,
    pub(super) op: Uuid,
    device: Uuid,
    /// Where in the log it was entered, and when: the end must be before that.
    pub(super) order: OpOrder,
    pub(super) at: Stamp,
}

impl Correction {
    pub(super) fn of(op: &Op, at: Stamp) -> Option<Self> {
        let Payload::CastEndSet { end, after_s } = op.payload else { return None };
        Some(Self { end, after_s, op: op.id, device: op.device, order: op.order(), at })
    }
}

/// The kind of an end as a correction names it, or `None` if the end was not seen.
pub fn end_said(cause: &EndCause) -> Option<EndSaid> {
    match cause {
        EndCause::Landed { .. } => Some(EndSaid::Landed),
        EndCause::Lost => Some(EndSaid::Lost),
        EndCause::Missed => Some(EndSaid::Missed),
        EndCause::WoundIn | EndCause::SessionEnded => Some(EndSaid::WoundIn),
        EndCause::OutcomeNotSeen | EndCause::EndNotSeen => None,
    }
}

/// All corrections of an end in one, which has the place of the last in the log. `logged` is the end before them.
pub(super) fn in_one<'c>(
    logged: &EndCause,
    all: impl IntoIterator<Item = &'c Correction>,
) -> Option<Correction> {
    // Minutes that are entered for an end that nobody saw are those of a cast that was wound in.
    let logged = end_said(logged).unwrap_or(EndSaid::WoundIn);
    let mut by: HashMap<Uuid, EndSaid> = HashMap::new();
    let mut now: Option<Correction> = None;
    for said in all {
        let own = by.get(&said.device).copied().unwrap_or(logged);
        let alone = by.keys().all(|device| *device == said.device);
        by.insert(said.device, said.end);
        now = Some(match now {
            Some(before) if !alone => joined(&before, said, own),
            _ => said.clone(),
        });
    }
    now
}

/// A correction after those of another phone, where its own phone's last word on the kind was `own`.
fn joined(before: &Correction, said: &Correction, own: EndSaid) -> Correction {
    let (end, after_s) = if said.end == before.end {
        (said.end, said.after_s.or(before.after_s))
    } else if said.end == own && said.after_s != before.after_s {
        // The minutes are new, and the kind is what the phone knew: it had not heard of the other one.
        (before.end, said.after_s)
    } else {
        (said.end, before.after_s.or(said.after_s))
    };
    Correction { end, after_s, ..said.clone() }
}

#[cfg(test)]
mod tests {
    use super::super::written::{SESSION, Written};
    use super::super::{catch, fold, waits_of};
    use super::*;
    use proptest::prelude::*;

    const KINDS: [EndSaid; 4] = [EndSaid::WoundIn, EndSaid::Landed, EndSaid::Lost, EndSaid::Missed];

    /// A cast of which nobody saw the end, and its corrections.
    fn day(said: &[(EndSaid, Option<u32>)]) -> Written {
        let mut day = Written::new(1);
        let cast = day.log(60, Payload::Cast { rod: 1 });
        day.log(2_400, Payload::Cast { rod: 1 });
        for (place, (end, after_s)) in (0..).zip(said) {
            day.amend(3_000 + place, cast, Payload::CastEndSet { end: *end, after_s: *after_s });
        }
        day
    }

    #[test]
    fn a_kind_and_minutes_of_two_phones_are_joined_in_either_order() {
        let (kind, minutes) = ((EndSaid::Landed, Some(2_280)), (EndSaid::WoundIn, Some(1_200)));
        for said in [[kind, minutes], [minutes, kind]] {
            let mut day = day(&said);
            day.ops.last_mut().unwrap().device = Uuid::from_u128(77);
            let session = fold(SESSION, &day.ops);
            assert_eq!((catch(&session).len(), waits_of(&session)[0].minutes()), (1, 20.0), "{said:?}");
        }
    }

    proptest! {
        #[test]
        fn on_one_phone_the_last_correction_counts_as_it_is(
            said in prop::collection::vec((0_usize..4, prop::option::of(60_u32..2_000)), 1..6)
        ) {
            let said: Vec<_> = said.iter().map(|(kind, after_s)| (KINDS[*kind], *after_s)).collect();
            let last = day(&said[said.len() - 1..]);
            let of = |day: &Written| {
                let session = fold(SESSION, &day.ops);
                let end = session.casts[0].end.clone().unwrap();
                (end.cause, waits_of(&session)[0])
            };
            prop_assert_eq!(of(&day(&said)), of(&last));
        }
    }
}
