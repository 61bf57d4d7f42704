//! After the weigh-in what the scales showed takes the place of the own count, on every screen.

use super::day_card::leaf;
use super::match_day::{FISHING, in_match, weighed_in, weight};
use super::*;
use restwater_screen::{NetView, NetWarning};

const OVER: i64 = 331 * MIN;

/// A fish of 4 lb in Net 1 and one that is in no class and was not weighed in Net 2.
fn after_all_out() -> Phone {
    let mut phone = in_match();
    phone.land(FISHING);
    phone.tap(FISHING + 12 * MIN, &weight(1_024)).unwrap();
    phone.land(FISHING + 30 * MIN);
    let net = restwater_screen::FishTap::Net { name: "Net 2".into() };
    phone.tap(FISHING + 42 * MIN, &Action::Fish { cast: None, tap: net }).unwrap();
    phone
}

fn nets(phone: &mut Phone, ms: i64) -> Vec<NetView> {
    phone.view(ms).nets
}

fn forecast(phone: &mut Phone, ms: i64) -> (String, String) {
    let line = phone.view(ms).coming.into_iter().next().unwrap();
    (line.label, line.value)
}

fn card(phone: &mut Phone, ms: i64) -> Option<String> {
    let lines = leaf(phone, Which::Day, ms).lines;
    lines.into_iter().find(|line| line.label == "Weight").map(|line| line.detail)
}

#[test]
fn the_weight_weighed_in_replaces_the_estimate_of_its_net_and_of_no_other() {
    let mut phone = after_all_out();
    let before = nets(&mut phone, OVER);
    assert!(before[1].holds.starts_with("1 fish, about "), "{}", before[1].holds);
    assert_eq!(forecast(&mut phone, OVER).0, "Own count");
    phone.tap(OVER, &weighed_in("net 2", 7_600)).unwrap();
    let after = nets(&mut phone, OVER + MIN);
    assert_eq!(after[0], before[0]);
    assert_eq!(after[1].holds, "1 fish, 29 lb\u{a0}11 oz weighed in");
    assert_eq!(after[1].limit, "of 30 lb");
    assert_eq!((after[1].warning, after[1].says.as_str()), (NetWarning::Clear, ""), "it is known now");
    assert_eq!(after[1].shares, [7_600.0 / 7_680.0; 3]);
    assert_eq!(
        forecast(&mut phone, OVER + MIN),
        ("Weighed in, the rest by own count".into(), "33 lb\u{a0}11 oz".into()),
        "29 lb\u{a0}11 oz and the 4 lb of Net 1, whose fish was weighed"
    );
    assert_eq!(card(&mut phone, OVER + MIN).unwrap(), "33 lb\u{a0}11 oz, not every net weighed in");
}

#[test]
fn when_every_net_is_weighed_the_total_is_that_of_the_scales() {
    let mut phone = after_all_out();
    assert_eq!(card(&mut phone, OVER).unwrap().split_whitespace().next(), Some("about"));
    phone.tap(OVER, &weighed_in("Net 1", 1_032)).unwrap();
    phone.tap(OVER + MIN, &weighed_in("Net 2", 7_936)).unwrap();
    let after = nets(&mut phone, OVER + 2 * MIN);
    assert_eq!(after[1].says, "over the limit: counts 30 lb", "31 lb on the scales");
    assert_eq!(after[1].warning, NetWarning::AtLimit);
    assert!(after.iter().all(|net| !net.in_use), "no fish goes into a net that was weighed in");
    let total = "34 lb\u{a0}0 oz\u{a0}8 dr";
    assert_eq!(forecast(&mut phone, OVER + 2 * MIN), ("Weighed in".into(), total.into()));
    let notes = phone.view(OVER + 2 * MIN).notes;
    assert!(!notes.iter().any(|note| note.contains("counted as average")), "{notes:?}");
    phone.tap(OVER + 3 * MIN, &Action::EndSession).unwrap();
    assert_eq!(card(&mut phone, OVER + 4 * MIN).unwrap(), format!("{total} weighed in"));
    assert_eq!(nets(&mut phone, OVER + 4 * MIN), after);
    phone.tap(OVER + 5 * MIN, &Action::Undo).unwrap();
    phone.tap(OVER + 6 * MIN, &Action::Undo).unwrap();
    assert_eq!(forecast(&mut phone, OVER + 7 * MIN).0, "Weighed in, the rest by own count");
}

#[test]
fn the_fish_screen_names_the_weight_weighed_in_of_its_net() {
    let mut phone = after_all_out();
    phone.tap(OVER, &weighed_in("Net 2", 5_264)).unwrap();
    let says = phone.fish(OVER + MIN).says;
    assert!(says.contains(&"Net 2 weighed in 20 lb\u{a0}9 oz.".to_owned()), "{says:?}");
}

#[test]
fn the_pad_of_the_weigh_in_opens_with_the_weight_of_a_net_that_was_weighed() {
    let mut phone = after_all_out();
    phone.tap(OVER, &weighed_in("Net 1", 6_960)).unwrap();
    let page = phone.view(OVER + MIN).weigh_in.unwrap();
    assert_eq!((page.title.as_str(), page.figure.as_str()), ("Weigh-in: Net 1", "27 lb\u{a0}3 oz"));
    assert_eq!(
        (page.weighed.label.as_str(), page.weighed.sub.as_str()),
        ("27 lb\u{a0}3 oz", "Net 1 weighed in")
    );
    assert!(!page.weighed.enabled, "there is nothing to confirm");
    // A digit begins a new figure.
    phone
        .tap(OVER + 2 * MIN, &super::match_day::tap(restwater_screen::MatchTap::ScalesDigit { digit: 4 }))
        .unwrap();
    let page = phone.view(OVER + 2 * MIN).weigh_in.unwrap();
    assert_eq!((page.figure.as_str(), page.weighed.label.as_str()), ("4 lb", "4 lb"));
    assert!(page.weighed.enabled);
}

#[test]
fn the_pad_of_a_fish_opens_with_its_weight_and_its_key_names_it() {
    let mut phone = after_all_out();
    let latest = phone.fish(OVER).weigh;
    assert_eq!((latest.label.as_str(), latest.sub.as_str()), ("WEIGH", "or guess it"));
    phone.tap(OVER, &Action::Fish { cast: None, tap: restwater_screen::FishTap::Meant { back: 1 } }).unwrap();
    let first = phone.fish(OVER).weigh;
    assert_eq!((first.label.as_str(), first.sub.as_str()), ("4 lb", "tap to change"));
    let pad = phone.pad(OVER);
    assert_eq!(pad.figure, "4 lb");
    assert!(!pad.weighed.enabled);
    phone
        .tap(OVER, &Action::Fish { cast: None, tap: restwater_screen::FishTap::Digit { digit: 6 } })
        .unwrap();
    assert_eq!(phone.pad(OVER).figure, "6 lb");
}
