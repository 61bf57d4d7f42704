//! A rod that was put away takes no part in a forecast, until it is cast again.

use super::learning::screens;
use super::match_day::tap;
use super::rods::with_rods;
use super::*;
use restwater_screen::{MatchTap, RuleTap};

/// What the rods of a day are forecast to do: casts left and bites to come of the match, casts and bites on the Waits screen.
fn forecast(phone: &mut Phone, ms: i64) -> [String; 4] {
    let view = phone.view(ms);
    let lines = || view.lines.iter().chain(&view.coming);
    let of = |label: &str| lines().find(|line| line.label.starts_with(label)).unwrap().value.clone();
    let waits = screens(phone, ms).0.forecast.unwrap();
    let [casts, bites] = [0, 1].map(|line| waits.lines[line].value.clone());
    [of("Casts "), of("Bites to come"), casts, bites]
}

/// A match on one rod: four fish from 60 min on, after a cast of ten minutes by `first`. Until when it was fished.
fn a_match(rods: u8, first: RodNumber) -> (Phone, i64) {
    let mut phone = with_rods(rods);
    phone.tap(2_000, &tap(MatchTap::Rule { rule: RuleTap::Begin })).unwrap();
    phone.tap(18 * MIN, &Action::Cast { rod: first }).unwrap();
    phone.tap(28 * MIN, &Action::WoundIn { rod: first }).unwrap();
    let mut now = 60 * MIN;
    for _ in 0..4 {
        phone.land(now);
        now += 15 * MIN;
    }
    phone.tap(now, &CAST).unwrap();
    (phone, now + 5 * MIN)
}

#[test]
fn a_rod_that_was_wound_in_long_ago_is_not_forecast_until_it_is_cast() {
    let (mut one, now) = a_match(1, 1);
    let alone = forecast(&mut one, now);
    let (mut two, _) = a_match(2, 2);
    assert_eq!(forecast(&mut two, now), alone, "rod 2 is put away");
    two.tap(now, &Action::Cast { rod: 2 }).unwrap();
    let both = forecast(&mut two, now + MIN);
    assert!(both.iter().zip(&alone).all(|(both, one)| both != one), "{both:?} {alone:?}");
    // Wound in for a while, it will go out again.
    two.tap(now + 2 * MIN, &Action::WoundIn { rod: 2 }).unwrap();
    assert_ne!(forecast(&mut two, now + 12 * MIN)[0], forecast(&mut one, now + 12 * MIN)[0]);
}

#[test]
fn a_rod_that_was_never_cast_is_forecast_only_while_the_other_may_just_have_begun() {
    let (mut one, now) = a_match(1, 1);
    let (mut two, _) = a_match(2, 1);
    assert_eq!(forecast(&mut two, now), forecast(&mut one, now));
    assert_ne!(forecast(&mut two, 40 * MIN)[0], forecast(&mut one, 40 * MIN)[0]);
}

/// A break: both are in, and both will be cast again.
#[test]
fn rods_that_are_in_together_are_not_put_away() {
    let mut phone = with_rods(2);
    phone.tap(2_000, &tap(MatchTap::Rule { rule: RuleTap::Begin })).unwrap();
    for rod in [1, 2] {
        phone.tap(18 * MIN + i64::from(rod), &Action::Cast { rod }).unwrap();
        phone.tap(28 * MIN + i64::from(rod), &Action::WoundIn { rod }).unwrap();
    }
    let low = |text: &str| text.split(' ').find_map(|word| word.parse::<u32>().ok()).unwrap();
    let casts = low(&forecast(&mut phone, 100 * MIN)[0]);
    let mut alone = with_rods(1);
    alone.tap(2_000, &tap(MatchTap::Rule { rule: RuleTap::Begin })).unwrap();
    let one = low(&forecast(&mut alone, 100 * MIN)[0]);
    assert!(casts > one + one / 2, "{casts} {one}");
}
