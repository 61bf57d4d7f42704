//! What the Bank and the lock screen say outside the hours of a match: whose bait is still in the water, and what is not weighed.

use super::match_day::{tap, weighed_in};
use super::*;
use restwater_screen::{AdviceView, KeyWeight, MatchTap, RuleTap};
use restwater_session::DoubtKind;

/// Before all-in, and after all-out.
const BEFORE: i64 = 5 * MIN;
const AFTER: i64 = 320 * MIN;

/// A session of two rods at 22:13, all-in at 22:30 and all-out five hours later, two nets.
fn two_rods() -> Phone {
    let mut phone = Phone::new();
    phone.tap(-5_000, &Action::Setup { tap: SetupTap::Rods { rods: 2 } }).unwrap();
    phone.tap(0, &START).unwrap();
    for (i, rule) in (1..).zip([RuleTap::Begin, RuleTap::Nets { count: 2 }]) {
        phone.tap(i * 2_000, &tap(MatchTap::Rule { rule })).unwrap();
    }
    phone
}

/// The advice; the lock screen shows its headline.
fn advice(phone: &mut Phone, ms: i64) -> AdviceView {
    let advice = phone.bank(ms).advice;
    assert_eq!(phone.app().watch(&at(ms)).text, advice.headline);
    advice
}

#[test]
fn after_all_out_the_rod_whose_bait_is_still_out_is_named_whichever_is_chosen() {
    let mut phone = two_rods();
    for rod in [1, 2] {
        phone.tap(300 * MIN + i64::from(rod), &Action::Cast { rod }).unwrap();
    }
    assert_eq!(advice(&mut phone, AFTER).headline, "All out: wind in.");
    phone.tap(AFTER, &WOUND_IN).unwrap();
    let said = advice(&mut phone, AFTER + MIN);
    assert_eq!((said.headline.as_str(), said.tone), ("All out: wind in rod 2.", AdviceTone::Past));
    phone.tap(AFTER + 2 * MIN, &Action::WoundIn { rod: 2 }).unwrap();
    let said = advice(&mut phone, AFTER + 3 * MIN);
    assert_eq!((said.headline.as_str(), said.tone), ("All out.", AdviceTone::Quiet));
}

#[test]
fn after_all_out_a_fish_on_the_other_rod_is_landed_before_anything_is_weighed() {
    let mut phone = two_rods();
    phone.tap(300 * MIN, &Action::Cast { rod: 2 }).unwrap();
    phone.tap(316 * MIN, &Action::Bite { rod: 2 }).unwrap();
    phone.tap(316 * MIN + 1_000, &Action::ChooseRod { rod: 1 }).unwrap();
    let said = advice(&mut phone, AFTER);
    assert_eq!(said.headline, "All out: a fish is on rod 2.");
    assert_eq!(said.detail, "Land it first.");
    phone.tap(AFTER + MIN, &Action::ChooseRod { rod: 2 }).unwrap();
    assert_eq!(advice(&mut phone, AFTER + MIN).headline, "Fish on.");
    phone.tap(AFTER + 2 * MIN, &Action::Landed { rod: 2, fish: None }).unwrap();
    phone.tap(AFTER + 3 * MIN, &Action::ChooseRod { rod: 1 }).unwrap();
    assert_eq!(advice(&mut phone, AFTER + 4 * MIN).headline, "All out.");
}

#[test]
fn weighed_in_is_shown_once_every_net_was_on_the_scales() {
    let mut phone = two_rods();
    let detail = |phone: &mut Phone, minute: i64| advice(phone, AFTER + minute * MIN).detail;
    assert_eq!(detail(&mut phone, 0), "Weigh in under Match. END closes the session.");
    phone.tap(AFTER, &weighed_in("Net 2", 900)).unwrap();
    assert_eq!(detail(&mut phone, 1), "Not weighed yet: Net 1. END closes the session.");
    phone.tap(AFTER + 2 * MIN, &weighed_in("Net 1", 500)).unwrap();
    assert_eq!(detail(&mut phone, 3), "Weighed in. END closes the session.");
    // A third net, added afterwards, was not.
    phone.tap(AFTER + 4 * MIN, &tap(MatchTap::Rule { rule: RuleTap::Nets { count: 4 } })).unwrap();
    assert_eq!(detail(&mut phone, 5), "Not weighed yet: Net 3, Net 4. END closes the session.");
}

#[test]
fn before_all_in_a_bait_in_the_water_is_to_be_wound_in_and_the_headline_says_what_the_key_says() {
    let mut phone = two_rods();
    phone.tap(BEFORE - MIN, &CAST).unwrap();
    let said = advice(&mut phone, BEFORE);
    assert_eq!((said.headline.as_str(), said.tone), ("Before all-in: wind in.", AdviceTone::Past));
    assert_eq!(said.detail, "No bait may be in the water before all-in.");
    let solid = phone.bank(BEFORE).keys.into_iter().find(|key| key.weight == KeyWeight::Solid).unwrap();
    assert_eq!(solid.key, Key::WoundIn);
    phone.tap(BEFORE, &Action::ChooseRod { rod: 2 }).unwrap();
    assert_eq!(advice(&mut phone, BEFORE).headline, "Before all-in: wind in rod 1.");
    phone.tap(BEFORE + MIN, &WOUND_IN).unwrap();
    let said = advice(&mut phone, BEFORE + 2 * MIN);
    assert!(said.headline.starts_with("Can't tell yet."), "{}", said.headline);
    // From all-in on a cast is as any other.
    phone.tap(20 * MIN, &CAST).unwrap();
    assert!(advice(&mut phone, 21 * MIN).headline.starts_with("Can't tell yet. Try "));
}

/// The time left to forecast is that of the match, until the angler chooses another.
#[test]
fn the_forecast_of_the_waits_is_for_the_time_left_of_the_match() {
    let mut phone = two_rods();
    let left = |phone: &mut Phone, ms: i64| {
        let forecast = super::learning::screens(phone, ms).0.forecast;
        forecast.map(|forecast| (forecast.left.value, forecast.says))
    };
    let value = |phone: &mut Phone, ms: i64| left(phone, ms).map(|(value, _)| value);
    // 3:30 is all-out; before all-in the whole match is left.
    assert_eq!(value(&mut phone, BEFORE).as_deref(), Some("300 min"));
    assert_eq!(value(&mut phone, 137 * MIN).as_deref(), Some("179 min"), "179 min 40 s");
    assert_eq!(phone.view(137 * MIN).digits, "2:59:40");
    assert_eq!(left(&mut phone, AFTER), None);
    let choose = Action::Waits { tap: restwater_screen::WaitsTap::TimeLeft { minutes: 90 } };
    phone.tap(AFTER + MIN, &choose).unwrap();
    assert_eq!(value(&mut phone, AFTER + 2 * MIN).as_deref(), Some("90 min"));
    let mut plain = super::rods::with_rods(2);
    assert_eq!(value(&mut plain, 137 * MIN).as_deref(), Some("60 min"), "no match: the usual proposal");
}

/// The angler fishes on after the match, goes home, and taps END the next day.
#[test]
fn a_bait_left_out_after_the_match_does_not_make_the_night_fished() {
    let mut phone = two_rods();
    phone.tap(20 * MIN, &CAST).unwrap();
    phone.tap(40 * MIN, &WOUND_IN).unwrap();
    phone.tap(330 * MIN, &CAST).unwrap();
    phone.tap(900 * MIN, &Action::EndSession).unwrap();
    // START is at 22:13:20, all-in at 22:30.
    let fished = phone.app().session().unwrap().fished_min().unwrap();
    assert!((fished - (330.0 - 16.0 - 40.0 / 60.0)).abs() < 0.01, "{fished}");
}

/// Every rod was in at all-out, and END was forgotten until the next day: it is as doubtful as after any other session.
#[test]
fn an_end_forgotten_after_a_match_is_a_late_end_and_one_after_the_weigh_in_is_not() {
    let late = |end_min: i64, weighed: Option<i64>| {
        let mut phone = two_rods();
        phone.tap(20 * MIN, &CAST).unwrap();
        phone.tap(310 * MIN, &WOUND_IN).unwrap();
        if let Some(ms) = weighed {
            phone.tap(ms * MIN, &weighed_in("Net 1", 1_000)).unwrap();
        }
        phone.tap(end_min * MIN, &Action::EndSession).unwrap();
        let session = phone.app().session().unwrap();
        session.doubts.iter().any(|doubt| doubt.kind == DoubtKind::LateEnd)
    };
    assert!(late(900, None));
    assert!(!late(420, None), "the scales come late after a match");
    assert!(!late(500, Some(450)), "packed up after the weigh-in");
    assert!(late(900, Some(450)));
}
