//! The time a bait takes to settle is part of what a cast costs, and of the clock of a match.

use super::match_day::tap as match_tap;
use super::*;
use restwater_screen::{MatchTap, MatchView, RuleTap};

/// A match of nine casts whose baits fished from one and the same moment on: with three minutes of settling, or cast three minutes
/// later without any.
fn fished(settle_min: i64) -> (Phone, i64) {
    let mut phone = Phone::new();
    let seconds = u32::try_from(60 * settle_min).unwrap();
    phone.tap(-5_000, &Action::Setup { tap: SetupTap::Settle { seconds } }).unwrap();
    phone.tap(0, &START).unwrap();
    phone.tap(2_000, &match_tap(MatchTap::Rule { rule: RuleTap::Begin })).unwrap();
    let mut fishes = 20 * MIN;
    for bite in [false, true, false, true, false, true, false, true, false] {
        phone.tap(fishes - settle_min * MIN, &CAST).unwrap();
        let end = fishes + if bite { 8 * MIN } else { 18 * MIN };
        if bite {
            phone.tap(end, &BITE).unwrap();
            phone.tap(end + MIN, &LANDED).unwrap();
        } else {
            phone.tap(end, &WOUND_IN).unwrap();
        }
        fishes = end + if bite { 8 * MIN } else { 5 * MIN };
    }
    (phone, fishes - 3 * MIN)
}

fn value(view: &MatchView, label: &str) -> String {
    view.lines.iter().find(|line| line.label.starts_with(label)).map(|line| line.value.clone()).unwrap()
}

/// "worth it until 03:12", in minutes of the day.
fn late(view: &MatchView) -> i64 {
    let value = value(view, "Winding in to recast");
    let clock = value.rsplit(' ').next().unwrap_or_else(|| panic!("{value}"));
    let (hours, minutes) = clock.split_once(':').unwrap_or_else(|| panic!("{value}"));
    60 * hours.parse::<i64>().unwrap() + minutes.parse::<i64>().unwrap()
}

#[test]
fn a_cast_that_settles_costs_what_one_cast_later_costs() {
    let ((mut settles, now), (mut later, same)) = (fished(3), fished(0));
    assert_eq!(now, same);
    let (bank, other) = (settles.bank(now), later.bank(now));
    assert_eq!(bank.strip.recast_min, other.strip.recast_min);
    assert_eq!(bank.advice, other.advice);
    let (view, other) = (settles.view(now), later.view(now));
    // Of two simulations, one of which begins three minutes later: within a cast of each other.
    let ends = |view: &MatchView| {
        let value = value(view, "Casts left");
        let numbers = value.split(|c: char| !c.is_ascii_digit()).filter_map(|n| n.parse().ok());
        let numbers: Vec<i64> = numbers.collect();
        [*numbers.iter().min().unwrap(), *numbers.iter().max().unwrap()]
    };
    let (ends, others) = (ends(&view), ends(&other));
    assert!(ends.iter().zip(&others).all(|(a, b)| (a - b).abs() <= 1), "{ends:?} {others:?}");
    assert_eq!(late(&view), late(&other) - 3, "a bait cast then fishes three minutes later");
}

/// What is shown as the time between two casts stays the time from wind-in to splash.
#[test]
fn the_turn_round_is_shown_without_the_settling() {
    let between = |settle_min: i64| {
        let (mut phone, now) = fished(settle_min);
        let figures = phone.view(now).coming_figures.lines.join(" ");
        let how = figures.split(" min between").next().unwrap().rsplit(' ').next().map(str::to_owned);
        how.unwrap()
    };
    assert_eq!((between(0).as_str(), between(3).as_str()), ("5", "2"));
}

/// The minutes in which it settles don't count as minutes of its wait: when they are over, as much is to come as when it was cast.
#[test]
fn a_bait_that_still_settles_has_its_whole_time_before_it() {
    let (mut phone, now) = fished(3);
    let casts = |phone: &mut Phone, ms| value(&phone.view(ms), "Casts ");
    let bites = |phone: &mut Phone, ms| phone.view(ms).coming.remove(0).value;
    phone.tap(now, &CAST).unwrap();
    let settling = (casts(&mut phone, now), bites(&mut phone, now));
    let fishing = (casts(&mut phone, now + 3 * MIN), bites(&mut phone, now + 3 * MIN));
    assert_eq!(settling, fishing, "not a minute less is left to fish");
}
