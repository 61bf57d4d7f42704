//! The angler's habit of winding in, compared with the bites of the day.

use super::cast::{Cast, EndCause};
use super::model::Session;
use super::waits::{is_all_out, wait_of, waits_of};
use restwater_waits::{BITES_TO_TELL, Wait};

/// How many casts must have been wound in by choice before the habit is compared with the bites.
const ENOUGH: usize = 3;

/// A habit of winding in before any bite of the day came.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HabitBeforeBites {
    /// The minute the angler winds in at.
    pub habit_min: u32,
    /// The whole minute that every bite came after.
    pub after_min: u32,
}

/// The waits that the angler ended by choice, minutes: not those that all-out ended.
fn by_choice(session: &Session) -> Vec<f64> {
    let by_choice = |cast: &&Cast| {
        let wound_in = cast.end.as_ref().filter(|end| end.cause == EndCause::WoundIn);
        wound_in.is_some_and(|end| !is_all_out(session, cast, end.at.at_ms))
    };
    let casts = session.casts.iter().filter(by_choice);
    casts.filter_map(|cast| wait_of(session, cast)).map(Wait::minutes).filter(|m| *m > 0.0).collect()
}

/// When the angler usually winds in today: the median of the waits ended by choice, if there are at least
/// two.
pub fn habit_min(session: &Session) -> Option<f64> {
    let mut minutes = by_choice(session);
    if minutes.len() < 2 { None } else { super::rhythm::median(&mut minutes) }
}

/// Whether the habit ends casts earlier than any bite of the day came. It needs enough evidence: three casts
/// wound in by choice, the number of bites that any claim needs, and at least a whole minute between the
/// habit and the first bite.
pub fn habit_before_bites(session: &Session) -> Option<HabitBeforeBites> {
    if by_choice(session).len() < ENOUGH {
        return None;
    }
    let bites: Vec<f64> =
        waits_of(session).into_iter().filter(|wait| wait.is_bite()).map(Wait::minutes).collect();
    if (bites.len() as f64) < BITES_TO_TELL {
        return None;
    }
    let first = bites.into_iter().fold(f64::INFINITY, f64::min);
    // A bite at 14:00 came after 13, not after 14.
    let (habit, after) = (libm::round(habit_min(session)?), libm::ceil(first) - 1.0);
    (habit < after).then_some(HabitBeforeBites { habit_min: habit as u32, after_min: after as u32 })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fold;
    use crate::written::{SESSION, Written};
    use restwater_log::Payload;

    /// A day of casts: how many seconds each was out, and whether a bite ended it.
    fn day(casts: &[(i64, bool)]) -> Session {
        let mut day = Written::new(1);
        let mut at = 0;
        for (out, bite) in casts {
            at += 60;
            day.log(at, Payload::Cast { rod: 1 });
            at += out;
            if *bite {
                day.log(at, Payload::Bite { rod: 1 });
                at += 30;
                day.log(at, Payload::Missed { rod: 1 });
            } else {
                day.log(at, Payload::WoundIn { rod: 1 });
            }
        }
        fold(SESSION, &day.ops)
    }

    const HABIT: [(i64, bool); 3] = [(720, false), (725, false), (715, false)];

    fn with_bites(bites: &[i64]) -> Session {
        let bites: Vec<(i64, bool)> = bites.iter().map(|out| (*out, true)).collect();
        day(&[&HABIT[..], &bites].concat())
    }

    #[test]
    fn a_habit_before_every_bite_is_found_to_the_minute() {
        let found = habit_before_bites(&with_bites(&[855, 1_000, 1_200]));
        assert_eq!(found, Some(HabitBeforeBites { habit_min: 12, after_min: 14 }), "the first came at 14:15");
    }

    #[test]
    fn a_bite_on_the_minute_did_not_come_after_it() {
        let found = habit_before_bites(&with_bites(&[840, 1_000, 1_200]));
        assert_eq!(found, Some(HabitBeforeBites { habit_min: 12, after_min: 13 }), "the first came at 14:00");
        assert_eq!(
            habit_before_bites(&with_bites(&[780, 1_000, 1_200])),
            None,
            "12 and after 12 is no minute"
        );
        assert_eq!(
            habit_before_bites(&with_bites(&[781, 1_000, 1_200])),
            Some(HabitBeforeBites { habit_min: 12, after_min: 13 })
        );
    }

    #[test]
    fn it_needs_enough_casts_and_bites_and_a_whole_minute_between() {
        assert_eq!(habit_before_bites(&with_bites(&[855, 1_000])), None, "two bites tell nothing");
        let two = day(&[(720, false), (725, false), (855, true), (1_000, true), (1_200, true)]);
        assert_eq!(habit_before_bites(&two), None, "two casts wound in are no habit");
        assert_eq!(
            habit_before_bites(&with_bites(&[300, 855, 1_000, 1_200])),
            None,
            "one bite came before it"
        );
    }
}
