//! What the figures of a match and of the waits claim: whose clock a time is by, what is a guess, and bounds that hold.

use super::match_day::{FISHING, in_match, tap, weight};
use super::*;
use restwater_screen::{ChartKind, MatchTap, MatchView, Signal, WaitsView};

/// All-in, 22:30 by the organiser, sounds when the phone shows 22:40:20.
const HEARD: i64 = 27 * MIN;

fn value(view: &MatchView, label: &str) -> String {
    let mut lines = view.lines.iter().chain(&view.coming);
    lines.find(|line| line.label.starts_with(label)).map(|line| line.value.clone()).unwrap()
}

/// Minutes of the day, of the last time in a sentence.
fn clock(says: &str) -> i64 {
    let time = says.rsplit(' ').find(|word| word.contains(':')).unwrap_or_else(|| panic!("{says}"));
    let (hours, minutes) = time.split_once(':').unwrap();
    60 * hours.parse::<i64>().unwrap() + minutes.parse::<i64>().unwrap()
}

fn waits(phone: &mut Phone, ms: i64) -> WaitsView {
    match phone.app().screen(Which::Waits, &at(ms)).unwrap() {
        Screen::Waits(view) => view,
        other => panic!("{other:?}"),
    }
}

/// Four fish, then the Match page with a bait out.
fn four_fish(phone: &mut Phone, from: i64) -> MatchView {
    for i in 0..4 {
        phone.land(from + 15 * i * MIN);
        phone.tap(from + (15 * i + 12) * MIN, &weight(1_024)).unwrap();
    }
    phone.tap(from + 60 * MIN, &CAST).unwrap();
    phone.view(from + 61 * MIN)
}

#[test]
fn the_last_cast_and_all_out_are_by_the_organisers_clock_and_the_sunset_by_the_phones() {
    let late = |heard: Option<i64>| {
        let mut phone = in_match();
        let peg = Action::PlacePeg { lat_e7: 524_862_000, lon_e7: -18_904_000, straight_out_cdeg: 0 };
        phone.tap(15_000, &peg).unwrap();
        if let Some(heard) = heard {
            phone.tap(heard, &tap(MatchTap::Heard { signal: Signal::AllIn })).unwrap();
        }
        let view = four_fish(&mut phone, HEARD + MIN);
        assert_eq!(view.says, "to all-out at 03:30.");
        let light = value(&view, "Light");
        (clock(&value(&view, "Winding in to recast")), light)
    };
    let (on_time, light) = late(None);
    assert!(!light.contains("by the phone"), "{light}");
    // The organiser is ten minutes and some seconds behind: the last cast is as long before all-out as it would be otherwise.
    let (behind, light) = late(Some(HEARD));
    assert!((behind - on_time).abs() <= 1, "{behind} against {on_time}");
    assert!(light.contains("by the phone"), "{light}");
}

#[test]
fn a_guessed_turn_round_is_called_a_guess_until_three_are_timed() {
    let mut phone = in_match();
    let guess = |view: &MatchView| {
        view.coming_figures.lines.iter().any(|line| line.contains("between casts until three are timed"))
    };
    let mut now = FISHING;
    for _ in 0..3 {
        phone.land(now);
        now += 40 * MIN;
    }
    assert!(guess(&phone.view(now)), "gaps after fish are no turn-rounds");
    for _ in 0..4 {
        phone.tap(now, &CAST).unwrap();
        phone.tap(now + 10 * MIN, &WOUND_IN).unwrap();
        now += 12 * MIN;
    }
    assert!(!guess(&phone.view(now)));
}

#[test]
fn a_cast_that_is_out_is_not_among_those_left_and_none_is_called_this_one() {
    let mut phone = in_match();
    let view = four_fish(&mut phone, FISHING);
    let label = |view: &MatchView, start: &str| view.lines.iter().any(|line| line.label.starts_with(start));
    let how = |view: &MatchView, says: &str| view.coming_figures.lines.iter().any(|line| line.contains(says));
    assert!(label(&view, "Casts after this one") && how(&view, "This cast is left "), "{view:?}");
    phone.tap(FISHING + 62 * MIN, &WOUND_IN).unwrap();
    let view = phone.view(FISHING + 63 * MIN);
    assert!(label(&view, "Casts left") && how(&view, "The next cast is left "), "{view:?}");
}

/// 9:10, 10:40 and 14:20; the longest wait is 15:24.
#[test]
fn bounds_in_minutes_hold_for_the_seconds_too() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    let mut now = MIN;
    for seconds in [550, 640, 860] {
        phone.tap(now, &CAST).unwrap();
        phone.tap(now + seconds * 1_000, &BITE).unwrap();
        phone.tap(now + seconds * 1_000 + MIN, &Action::Lost { rod: 1 }).unwrap();
        now += 30 * MIN;
    }
    phone.tap(now, &CAST).unwrap();
    phone.tap(now + 924_000, &WOUND_IN).unwrap();
    let view = waits(&mut phone, now + 20 * MIN);
    let says = &view.charts.iter().find(|chart| chart.kind == ChartKind::LeaveTime).unwrap().notes[0];
    assert!(says.contains("came between 9 and 15 min."), "{says}");
    assert!(says.contains("Past 16 min: not tried."), "{says}");
}

/// A cast that has just gone out, after bites that all came late: such a chance is small, but a few bites don't make it none.
#[test]
fn a_small_chance_is_not_called_none() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    let mut now = MIN;
    for _ in 0..9 {
        phone.tap(now, &CAST).unwrap();
        phone.tap(now + 30 * MIN, &BITE).unwrap();
        phone.tap(now + 31 * MIN, &Action::Lost { rod: 1 }).unwrap();
        now += 33 * MIN;
    }
    phone.tap(now, &CAST).unwrap();
    let more = phone.bank(now + 30_000).advice.more.join(" ");
    assert!(more.contains("in the next five minutes: below 1\u{a0}%."), "{more}");
}
