//! Casts left and bites to come are two figures of one simulation: a cast ends with its bite, so each bite takes a cast.

use super::match_day::{FISHING, in_match, tap};
use super::rods::with_rods;
use super::*;
use restwater_screen::{MatchTap, MatchView, RuleTap};

/// The figures of "2 to 4, about 3": the lower end, the upper end and the middle.
fn figures(view: &MatchView, label: &str) -> Option<[u32; 3]> {
    let mut lines = view.lines.iter().chain(&view.coming);
    let value = &lines.find(|line| line.label.starts_with(label))?.value;
    let numbers: Vec<u32> =
        value.split(|c: char| !c.is_ascii_digit()).filter_map(|n| n.parse().ok()).collect();
    match numbers[..] {
        [one] => Some([one; 3]),
        [low, high, likely] => Some([low, high, likely]),
        _ => None,
    }
}

/// Reads both every four minutes, with `out` baits in the water, and returns the widest range of casts that was seen.
fn agree(phone: &mut Phone, minutes: std::ops::Range<i64>, out: u32) -> u32 {
    let mut widest = 0;
    for minute in minutes.step_by(4) {
        let view = phone.view(minute * MIN);
        let casts = figures(&view, "Casts ").unwrap_or_else(|| panic!("{minute} min: {:?}", view.lines));
        let [low, high, likely] = casts;
        assert!(low <= likely && likely <= high, "{casts:?}");
        widest = widest.max(high - low);
        let Some(bites) = figures(&view, "Bites to come") else { continue };
        for (bites, casts) in bites.into_iter().zip(casts) {
            assert!(bites <= casts + out, "{minute} min: {:?} {:?}", view.lines, view.coming);
        }
    }
    widest
}

#[test]
fn no_more_bites_are_to_come_than_casts_allow() {
    let mut phone = in_match();
    let from = FISHING / MIN;
    let mut now = FISHING;
    // Bites in most casts and long before their time is up, as on a day when fish feed.
    for i in 0..14 {
        if i % 4 == 3 {
            phone.tap(now, &CAST).unwrap();
            phone.tap(now + 18 * MIN, &WOUND_IN).unwrap();
        } else {
            phone.land(now);
        }
        let (at, next) = (now / MIN, now + 20 * MIN);
        agree(&mut phone, at + 19..at + 20, 0);
        now = next;
    }
    phone.tap(now, &CAST).unwrap();
    agree(&mut phone, now / MIN..from + 5 * 60 - 10, 1);
}

#[test]
fn casts_left_are_a_range_with_its_middle() {
    let mut phone = in_match();
    let mut now = FISHING;
    for i in 0..6 {
        phone.land(now);
        if i % 2 == 0 {
            phone.tap(now + 14 * MIN, &CAST).unwrap();
            phone.tap(now + 32 * MIN, &WOUND_IN).unwrap();
        }
        now += 34 * MIN;
    }
    assert!(agree(&mut phone, now / MIN..now / MIN + 40, 0) > 0, "every cast lasts its whole time");
}

#[test]
fn each_of_several_baits_that_are_out_may_have_its_bite() {
    let mut phone = with_rods(2);
    phone.tap(2_000, &tap(MatchTap::Rule { rule: RuleTap::Begin })).unwrap();
    let mut now = 60 * MIN;
    for _ in 0..5 {
        phone.land(now);
        now += 15 * MIN;
    }
    phone.tap(now, &CAST).unwrap();
    phone.tap(now + MIN, &Action::Cast { rod: 2 }).unwrap();
    agree(&mut phone, now / MIN + 2..now / MIN + 60, 2);
}
