//! The angler's habit of winding in, compared with the bites of the day.

use super::cast::{Cast, EndCause};
use super::model::Session;
use super::waits::{is_all_out, wait_of, waits_of};
use restwater_waits::{BITES_TO_TELL, Habit, Wait};

/// How many casts must have been wound in by choice before they are compared with the bites.
const ENOUGH: usize = 3;

/// Wind-ins that came before any bite of the day, as counts that can be checked against the list of casts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HabitBeforeBites {
    /// How many casts were wound in that early.
    pub early: u32,
    /// How many casts the angler chose to wind in.
    pub all: u32,
    /// The whole minute by which the early ones were in.
    pub by_min: u32,
    /// The whole minute that every bite came after.
    pub after_min: u32,
}

/// The finished casts of the session with their minutes, each with whether the angler chose to wind it in: all-out, a bite or the
/// end of the session end others.
fn by_choice(session: &Session) -> impl Iterator<Item = (Wait, bool)> {
    let chosen = |cast: &Cast| {
        let wound_in = cast.end.as_ref().filter(|end| end.cause == EndCause::WoundIn);
        wound_in.is_some_and(|end| !is_all_out(session, cast, end.at.at_ms, None))
    };
    let casts = session.casts.iter().filter_map(move |cast| Some((wait_of(session, cast)?, chosen(cast))));
    casts.filter(|(wait, _)| wait.minutes() > 0.0)
}

/// How long the angler leaves casts today, if enough of them were wound in by choice.
pub fn habit_of(session: &Session) -> Option<Habit> {
    let casts: Vec<(Wait, bool)> = by_choice(session).collect();
    if casts.iter().filter(|(_, chosen)| *chosen).count() < ENOUGH {
        return None;
    }
    let casts = casts.into_iter().filter_map(|(wait, chosen)| Wait::new(wait.minutes(), chosen).ok());
    Habit::of(&casts.collect::<Vec<Wait>>())
}

/// The wind-ins that came before any bite of the day. It needs enough evidence: three casts wound in by choice, at least half of
/// them so early, the number of bites that any claim needs, and at least a whole minute between these wind-ins and the first bite.
pub fn habit_before_bites(session: &Session) -> Option<HabitBeforeBites> {
    let wound_in: Vec<f64> =
        by_choice(session).filter(|(_, chosen)| *chosen).map(|(wait, _)| wait.minutes()).collect();
    if wound_in.len() < ENOUGH {
        return None;
    }
    let bites: Vec<f64> =
        waits_of(session).into_iter().filter(|wait| wait.is_bite()).map(Wait::minutes).collect();
    if (bites.len() as f64) < BITES_TO_TELL {
        return None;
    }
    let first = bites.into_iter().fold(f64::INFINITY, f64::min);
    // A bite at 14:00 came after 13, not after 14; a cast wound in at 12:01 was in by 13, not by 12.
    let after = libm::ceil(first) - 1.0;
    let early: Vec<f64> =
        wound_in.iter().map(|minutes| libm::ceil(*minutes)).filter(|by| *by < after).collect();
    let by = early.iter().copied().fold(0.0, f64::max);
    (2 * early.len() >= wound_in.len()).then_some(HabitBeforeBites {
        early: early.len() as u32,
        all: wound_in.len() as u32,
        by_min: by as u32,
        after_min: after as u32,
    })
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

    const HABIT: [(i64, bool); 3] = [(720, false), (700, false), (715, false)];

    fn with_bites(bites: &[i64]) -> Session {
        let bites: Vec<(i64, bool)> = bites.iter().map(|out| (*out, true)).collect();
        day(&[&HABIT[..], &bites].concat())
    }

    fn found_of(early: u32, all: u32, by_min: u32, after_min: u32) -> HabitBeforeBites {
        HabitBeforeBites { early, all, by_min, after_min }
    }

    /// The middle of seven wind-ins was at 12 min, while three of them came after 19.
    #[test]
    fn wind_ins_that_came_late_are_not_counted_among_the_early_ones() {
        let late = [(1_150, false), (1_200, false), (1_260, false)];
        let casts =
            [&HABIT[..], &[(700, false)], &late, &[(855, true), (1_000, true), (1_200, true)]].concat();
        assert_eq!(habit_before_bites(&day(&casts)), Some(found_of(4, 7, 12, 14)));
        let mostly_late = [&HABIT[..2], &late, &[(855, true), (1_000, true), (1_200, true)]].concat();
        assert_eq!(habit_before_bites(&day(&mostly_late)), None, "two of five are no habit");
    }

    #[test]
    fn a_cast_wound_in_seconds_after_a_minute_was_not_in_by_it() {
        let casts = [(721, false), (700, false), (715, false), (855, true), (1_000, true), (1_200, true)];
        assert_eq!(habit_before_bites(&day(&casts)), Some(found_of(3, 3, 13, 14)));
    }

    #[test]
    fn a_habit_before_every_bite_is_found_to_the_minute() {
        let found = habit_before_bites(&with_bites(&[855, 1_000, 1_200]));
        assert_eq!(found, Some(found_of(3, 3, 12, 14)), "the first came at 14:15");
    }

    #[test]
    fn a_bite_on_the_minute_did_not_come_after_it() {
        let found = habit_before_bites(&with_bites(&[840, 1_000, 1_200]));
        assert_eq!(found, Some(found_of(3, 3, 12, 13)), "the first came at 14:00");
        assert_eq!(
            habit_before_bites(&with_bites(&[780, 1_000, 1_200])),
            None,
            "12 and after 12 is no minute"
        );
        assert_eq!(habit_before_bites(&with_bites(&[781, 1_000, 1_200])), Some(found_of(3, 3, 12, 13)));
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
