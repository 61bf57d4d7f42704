//! What a page has to say where it is looked at: limits beside the clock, casts that count in no wait, words an angler would say.

use super::learning::screens;
use super::match_day::{FISHING, in_match, tap, weighed_in, weight};
use super::*;
use restwater_log::{FeedKind, FeedMeasure, OtherPeg, Side, WeightUnit};
use restwater_screen::{CautionsTap, FeedTap, FishTap, MatchTap, PhoneTap};

/// Lands a fish of that weight in drams into a net.
fn land_into(phone: &mut Phone, ms: i64, net: &str, drams: i64) {
    phone.land(ms);
    phone.tap(ms + 12 * MIN, &weight(drams)).unwrap();
    phone.tap(ms + 13 * MIN, &Action::Fish { cast: None, tap: FishTap::Net { name: net.into() } }).unwrap();
}

#[test]
fn the_match_says_which_net_is_at_its_limit_right_after_the_time_left() {
    let mut phone = in_match();
    assert_eq!(phone.view(FISHING).limit_says, "");
    // 80 % of 30 lb is 24 lb.
    land_into(&mut phone, FISHING, "Net 1", 25 * 256);
    let now = FISHING + 15 * MIN;
    assert_eq!(phone.view(now).limit_says, "Net 1 is near its limit.");
    land_into(&mut phone, now, "Net 1", 5 * 256);
    let now = now + 15 * MIN;
    assert_eq!(phone.view(now).limit_says, "Net 1 may be at its limit.");
    land_into(&mut phone, now, "Net 1", 256);
    let now = now + 15 * MIN;
    assert_eq!(phone.view(now).limit_says, "Net 1 is over its limit.");
    land_into(&mut phone, now, "Net 2", 26 * 256);
    let now = now + 15 * MIN;
    assert_eq!(phone.view(now).limit_says, "Net 1 is over its limit. Net 2 is near its limit.");
    // No more fish go into what was weighed in.
    let over = 331 * MIN;
    phone.tap(over, &weighed_in("Net 2", 26 * 256)).unwrap();
    assert_eq!(phone.view(over + MIN).limit_says, "Net 1 is over its limit.");
}

#[test]
fn what_was_to_come_is_called_the_result_once_it_has_come() {
    let mut phone = in_match();
    phone.land(FISHING);
    assert_eq!(phone.view(FISHING + 20 * MIN).to_coming.label, "Forecast");
    let over = phone.view(331 * MIN);
    assert_eq!((over.to_coming.label.as_str(), over.to_coming.sub.as_str()), ("Result", "weight, place"));
}

#[test]
fn the_pegs_of_a_section_are_named_as_an_angler_points_at_them() {
    let mut phone = in_match();
    phone.tap(FISHING, &tap(MatchTap::Section { left: 4, right: 2 })).unwrap();
    let mut title = |side, place| {
        phone.tap(FISHING + MIN, &tap(MatchTap::ScalesPeg { peg: OtherPeg { side, place } })).unwrap();
        phone.view(FISHING + MIN).weigh_in.unwrap().title
    };
    let said = [(Side::Left, 1), (Side::Left, 2), (Side::Left, 3), (Side::Left, 4), (Side::Right, 1)];
    assert_eq!(
        said.map(|(side, place)| title(side, place)),
        [
            "Weigh-in: Next peg left",
            "Weigh-in: 2nd peg left",
            "Weigh-in: 3rd peg left",
            "Weigh-in: 4th peg left",
            "Weigh-in: Next peg right"
        ]
    );
}

/// Casts with two pop-ups, the second one thrown out again before anyone saw how it ended.
#[test]
fn heights_and_changes_say_how_many_casts_count_in_neither() {
    let mut phone = started();
    let mut now = MIN;
    for (mm, end) in
        [(457, Some(BITE)), (457, Some(WOUND_IN)), (610, None), (610, Some(WOUND_IN)), (457, Some(WOUND_IN))]
    {
        phone.tap(now, &tackle(TackleTap::PopUp { mm })).unwrap();
        phone.tap(now + 2_000, &CAST).unwrap();
        now += 15 * MIN;
        let bitten = end == Some(BITE);
        if let Some(end) = end {
            phone.tap(now, &end).unwrap();
        }
        if bitten {
            phone.tap(now + MIN, &LANDED).unwrap();
        }
        now += 2 * MIN;
    }
    let not_seen = "The end of 1 cast was not seen: its wait doesn't count.";
    let (_, changes) = screens(&mut phone, now);
    assert!(!changes.changes.is_empty() && changes.warning.ends_with(not_seen), "{}", changes.warning);
    let heights = phone.leaf(Which::Bench, now, "heights");
    let counted: Vec<&str> =
        heights.lines.iter().map(|line| line.value.as_str()).filter(|value| value.contains("cast")).collect();
    assert_eq!(counted.len(), 2, "{counted:?}");
    assert_eq!(heights.notes[0], not_seen);
    // The same of this session alone.
    phone.bench(now, BenchTap::HeightsOf { all: false }).unwrap();
    assert_eq!(phone.leaf(Which::Bench, now, "heights").notes[0], not_seen);
    // A session in which each end was seen says nothing of it.
    phone.tap(now, &Action::EndSession).unwrap();
    phone.tap(now + MIN, &START).unwrap();
    assert_ne!(phone.leaf(Which::Bench, now + 2 * MIN, "heights").notes[0], not_seen);
}

#[test]
fn feed_that_was_changed_is_said_in_the_unit_it_is_weighed_in() {
    let titles = |unit| {
        let mut phone = started();
        phone.tap(0, &Action::Phone { tap: PhoneTap::Weights { unit } }).unwrap();
        let mut now = MIN;
        for fed in [0, 5, 0, 5, 1] {
            for _ in 0..fed {
                let tap = FeedTap::Measure { what: FeedKind::Loose, measure: FeedMeasure::Cup };
                phone.tap(now, &Action::Feed { tap }).unwrap();
                now += 2_000;
            }
            phone.tap(now, &CAST).unwrap();
            phone.tap(now + 10 * MIN, &WOUND_IN).unwrap();
            now += 45 * MIN;
        }
        let (_, changes) = screens(&mut phone, now);
        changes.changes.into_iter().map(|change| change.title.replace('\u{a0}', " ")).collect::<Vec<_>>()
    };
    let metric = titles(WeightUnit::Grams);
    assert_eq!(
        metric,
        [
            "Feed in the 30 min before: first without, then with",
            "Amount fed in the 30 min before: 100 g to 500 g after 500 g and over"
        ]
    );
    // 100 g are 3.5 oz and 500 g are 17.6 oz: an ounce is 28.349523125 g exactly (the agreement of 1959).
    assert_eq!(
        titles(WeightUnit::Drams),
        [
            "Feed in the 30 min before: first without, then with",
            "Amount fed in the 30 min before: about 4 oz to 1 lb 2 oz after about 1 lb 2 oz and over"
        ]
    );
}

#[test]
fn a_caution_is_tapped_as_read_where_it_ends() {
    let mut phone = started();
    let cards = |phone: &mut Phone| phone.leaves(Which::Cautions, MIN).leaves.split_off(1);
    let before = cards(&mut phone);
    assert!(
        before.iter().all(|card| card.keys_last == card.keys.iter().any(|key| key.tag.starts_with("seen-")))
    );
    let first = before.iter().find(|card| card.keys_last).unwrap().id.clone();
    phone.tap(MIN, &Action::Cautions { tap: CautionsTap::Seen { caution: first.clone() } }).unwrap();
    let after = cards(&mut phone);
    assert!(after.iter().any(|card| card.id == first && !card.keys_last && card.keys.is_empty()));
}
