//! Named cases of the time line.

use super::super::written::{SESSION, Written, second};
use super::super::{DoubtKind, Session, fold, waits_of};
use super::*;
use restwater_log::{effective, sorted};

const MIN: i64 = 60;

/// A moment of a phone that was started at second `boot_s` of the day, its wall clock off by `off_s`.
fn booted(s: i64, boot: &str, boot_s: i64, off_s: i64) -> Moment {
    let shown = second(s + off_s);
    Moment { mono_ms: (s - boot_s) * 1_000, boot: boot.into(), ..shown }
}

/// The place of each entry in seconds, and how far off that may be.
fn places(day: &Written) -> Vec<(i64, i64)> {
    let ordered = sorted(&day.ops);
    let (_, stamps) = TimeLine::of(&effective(&ordered));
    stamps.iter().map(|s| (s.at_ms / 1_000, s.uncertain_ms / 1_000)).collect()
}

fn noted() -> Payload {
    Payload::Noted { text: String::new() }
}

#[test]
fn a_clock_that_is_set_moves_nothing_within_a_boot() {
    let mut day = Written::new(1);
    day.log(600, noted());
    for (s, off_s) in [(700, -7_200), (800, 31_536_000), (900, 0)] {
        day.write(Moment { wall_ms: second(s + off_s).wall_ms, ..second(s) }, noted(), None, None);
    }
    assert_eq!(places(&day), [(0, 0), (600, 0), (700, 0), (800, 0), (900, 0)]);
}

#[test]
fn the_wall_clock_measures_across_a_reboot_and_the_span_is_marked_uncertain() {
    let mut day = Written::new(1);
    day.write(booted(900, "second", 800, 0), noted(), None, None);
    assert_eq!(places(&day), [(0, 0), (900, 2)]);
    // Set back by two hours afterwards: either reading of this boot may have been right.
    day.write(booted(1_000, "second", 800, -7_200), noted(), None, None);
    assert_eq!(places(&day), [(0, 0), (900, 7_200), (1_000, 7_200)]);
}

#[test]
fn a_reboot_into_1970_comes_after_earlier_entries_and_is_placed_once_the_clock_is_right() {
    let mut day = Written::new(1);
    day.log(600, noted());
    let to_1970 = -second(0).wall_ms / 1_000;
    day.write(booted(900, "second", 840, to_1970), noted(), None, None);
    let uncertain = FORTNIGHT_MS / 1_000;
    assert_eq!(places(&day), [(0, 0), (600, 0), (660, uncertain)], "a minute on, at least");
    // Another boot with the right clock: the first boot's clock counts again.
    let mut later = Written::new(1);
    later.ops.clone_from(&day.ops);
    later.write(booted(2_000, "third", 1_900, 0), noted(), None, None);
    assert_eq!(places(&later)[3], (2_000, 2));
    // Or the network sets the clock within the second boot.
    day.write(booted(1_200, "second", 840, 0), noted(), None, None);
    assert_eq!(places(&day), [(0, 0), (600, 0), (900, 2), (1_200, 2)]);
}

#[test]
fn a_reboot_into_next_year_does_not_add_a_year() {
    let mut day = Written::new(1);
    day.log(600, noted());
    day.write(booted(900, "second", 840, 365 * 86_400), noted(), None, None);
    assert_eq!(places(&day)[2].0, 660);
}

#[test]
fn another_phone_is_placed_by_the_wall_clock_before_or_after() {
    let mut day = Written::new(1);
    day.log(600, noted());
    let mut other = Written::by(0xD2);
    // It has the same name for its boot, and another monotonic clock.
    for s in [-60, 630] {
        other.write(Moment { mono_ms: s * 1_000 + 77, ..second(s) }, noted(), None, None);
    }
    day.ops.extend(other.ops);
    assert_eq!(places(&day), [(-60, 0), (0, 2), (600, 2), (630, 0)]);
}

#[test]
fn now_is_on_the_same_line() {
    let mut day = Written::new(1);
    day.log(600, noted());
    let session = fold(SESSION, &day.ops);
    let place = |session: &Session, moment| {
        let stamp = session.time_line.place(day.device, &moment);
        (stamp.at_ms / 1_000, stamp.uncertain_ms / 1_000, stamp.run)
    };
    assert_eq!(place(&session, second(700)), (700, 0, Some(0)));
    assert_eq!(place(&session, Moment { wall_ms: 0, ..second(700) }), (700, 0, Some(0)));
    assert_eq!(place(&session, booted(900, "second", 800, 0)), (900, 2, None));
    assert_eq!(place(&Session { time_line: TimeLine::default(), ..session.clone() }, second(700)).0, 0);
}

#[test]
fn a_wait_during_which_the_clock_was_reset_is_marked_once() {
    let mut day = Written::new(1);
    day.log(60, Payload::Cast { rod: 1 });
    let to_1970 = -second(0).wall_ms / 1_000;
    day.write(booted(20 * MIN, "second", 15 * MIN, to_1970), Payload::Bite { rod: 1 }, None, None);
    day.write(booted(21 * MIN, "second", 15 * MIN, to_1970), Payload::Lost { rod: 1 }, None, None);
    let session = fold(SESSION, &day.ops);
    let bite = session.casts[0].bite.as_ref().map(|(at, _)| at.ms_since(&session.casts[0].start));
    assert_eq!(bite, Some(5 * MIN * 1_000), "at least");
    assert_eq!(waits_of(&session), [], "which is no wait");
    assert_eq!(session.doubts.iter().map(|d| d.kind).collect::<Vec<_>>(), [DoubtKind::ClockMoved]);
}

#[test]
fn extreme_clocks_saturate() {
    let mut day = Written::new(1);
    let odd = [(i64::MIN, i64::MAX), (i64::MAX, i64::MIN), (0, 0)];
    for ((wall_ms, mono_ms), boot) in odd.into_iter().zip(["x", "y", ""]) {
        day.write(Moment { wall_ms, mono_ms, boot: boot.into(), ..second(0) }, noted(), None, None);
    }
    let places = places(&day);
    assert!(places.windows(2).all(|p| p[0].0 <= p[1].0), "{places:?}");
}
