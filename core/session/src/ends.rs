//! Which END counts when more than one phone of the angler has tapped END.

use super::Stamp;
use super::at_the_water::Made;
use super::time_line::set_back_ms;
use restwater_log::{Effective, Payload};
use uuid::Uuid;

/// The entries of a session that count, each with its stamp: all but such ENDs.
pub(super) fn that_count<'a>(
    entries: &'a [Effective<'a>],
    stamps: &'a [Stamp],
) -> Vec<(&'a Effective<'a>, &'a Stamp)> {
    let overruled = overruled(entries, stamps);
    entries.iter().zip(stamps).filter(|(entry, _)| !overruled.contains(&entry.op.id)).collect()
}

/// The ENDs that don't count. A session belongs to the phone that began it, which alone says when it ended. Another phone, from
/// which the day is ended in the Book, is believed only if the phone that began it neither ended it nor logged anything
/// afterwards that is logged in an open session. Of several such ENDs the first one counts. A break that is entered later counts as
/// made at the time to which it
/// was set back. `entries` are those in force, in the order of the log.
fn overruled(entries: &[Effective], stamps: &[Stamp]) -> Vec<Uuid> {
    let is_end = |entry: &Effective| matches!(entry.payload, Payload::SessionEnded);
    let Some(own) = entries.iter().find(|entry| matches!(entry.payload, Payload::SessionStarted(_))) else {
        return Vec::new();
    };
    let is_own = |entry: &Effective| entry.op.device == own.op.device;
    let own_end = entries.iter().any(|entry| is_end(entry) && is_own(entry));
    let placed = || entries.iter().zip(stamps);
    let at_ms = |(entry, stamp): (&Effective, &Stamp)| stamp.at_ms.saturating_sub(set_back_ms(entry));
    let goes_on = |place: usize, end_ms: i64| {
        placed()
            .skip(place)
            .any(|one| is_own(one.0) && Made::of(one.0.payload).keeps_open() && at_ms(one) >= end_ms)
    };
    let mut believed = false;
    let mut counts = |place: usize, end_ms: i64| {
        let first = !own_end && !believed && !goes_on(place, end_ms);
        believed |= first;
        first
    };
    let others = placed().enumerate().filter(|(_, (entry, _))| is_end(entry) && !is_own(entry));
    others.filter_map(|(place, end)| (!counts(place, at_ms(end))).then_some(end.0.op.id)).collect()
}

#[cfg(test)]
mod tests {
    use super::super::fold;
    use super::super::written::{SESSION, Written};
    use restwater_log::{Op, Payload, SessionSetup};
    use uuid::Uuid;

    const HOME: Uuid = Uuid::from_u128(77);

    fn day() -> Written {
        let mut day = Written::new(1);
        day.log(0, Payload::SessionStarted(SessionSetup { rods: 1, ..SessionSetup::default() }));
        day.log(60, Payload::Cast { rod: 1 });
        day
    }

    /// The same entries, with those ids written by the other phone.
    fn by_home(ops: &[Op], ids: &[Uuid]) -> Vec<Op> {
        let of = |op: &Op| if ids.contains(&op.id) { Op { device: HOME, ..op.clone() } } else { op.clone() };
        ops.iter().map(of).collect()
    }

    fn ended_s(ops: &[Op]) -> Option<i64> {
        fold(SESSION, ops).ended.map(|at| at.at_ms / 1_000)
    }

    #[test]
    fn the_first_end_of_other_phones_counts_if_the_own_phone_was_silent_from_then_on() {
        let mut day = day();
        let ends = [600, 900].map(|second| day.log(second, Payload::SessionEnded));
        assert_eq!(ended_s(&by_home(&day.ops, &ends)), Some(600));
        day.log(1_200, Payload::Noted { text: "mist".into() });
        assert_eq!(ended_s(&by_home(&day.ops, &ends)), Some(600), "a note may be written at home");
        day.log(1_300, Payload::Liner { rod: 1 });
        assert_eq!(ended_s(&by_home(&day.ops, &ends)), None, "the bait is still out");
    }

    #[test]
    fn the_end_of_the_own_phone_counts_before_and_after_those_of_others() {
        let seconds = [600, 900, 1_200];
        for own in 0..seconds.len() {
            let mut day = day();
            let mut others = seconds.map(|second| day.log(second, Payload::SessionEnded)).to_vec();
            others.remove(own);
            assert_eq!(ended_s(&by_home(&day.ops, &others)), Some(seconds[own]));
        }
    }
}
