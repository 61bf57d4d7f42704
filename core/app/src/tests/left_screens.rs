//! What was chosen on a screen ends when the screen is left: the Bank and its keys are about now.

use super::*;
use restwater_log::{FishWeight, WeightUnit};
use restwater_screen::{FishTap, FishView, KeyTap};
use restwater_session::catch;

fn weights(phone: &mut Phone) -> Vec<Option<u32>> {
    let count = |weight: FishWeight| match weight {
        FishWeight::Weighed { count, unit: WeightUnit::Grams } => count,
        other => panic!("{other:?}"),
    };
    catch(phone.app().session().unwrap()).into_iter().map(|fish| fish.weight.map(count)).collect()
}

/// Two fish landed, the minute of the second.
fn two_fish() -> (Phone, i64) {
    let mut phone = started();
    phone.land(0);
    phone.land(20 * MIN);
    let weights = restwater_screen::PhoneTap::Weights { unit: WeightUnit::Grams };
    phone.tap(32 * MIN, &Action::Phone { tap: weights }).unwrap();
    (phone, 33 * MIN)
}

/// EARLIER, as it is on the screen of a fish.
fn earlier(view: &FishView) -> Action {
    let key = view.small.iter().find(|key| key.tag == "earlier").unwrap();
    key.tap.action().unwrap().clone()
}

/// Opens the number pad by the Bank's WEIGH and types a figure in kilograms, as it is on the pad.
fn weigh_on_the_bank(phone: &mut Phone, now: i64, digit: &str) -> String {
    let key = phone.bank(now).keys.into_iter().find(|key| key.key == Key::Weigh).unwrap();
    assert_eq!(key.tap, KeyTap::Open { which: Which::Weight });
    let title = phone.pad(now).title;
    type_weight(phone, now, digit);
    title
}

fn type_weight(phone: &mut Phone, now: i64, digit: &str) {
    let key = phone.pad(now).pad.into_iter().find(|key| key.label == digit).unwrap();
    phone.tap(now + 1_000, key.tap.action().unwrap()).unwrap();
    let weighed = phone.pad(now + 1_000).weighed;
    assert!(weighed.closes, "the Bank opens");
    phone.tap(now + 2_000, weighed.tap.action().unwrap()).unwrap();
}

/// An earlier fish is weighed; then the Bank's row is about the latest fish again, and so are the screens behind its keys.
#[test]
fn after_an_earlier_fish_is_weighed_weigh_on_the_bank_is_about_the_latest() {
    let (mut phone, now) = two_fish();
    let key = earlier(&phone.fish(now));
    phone.tap(now, &key).unwrap();
    assert!(phone.fish(now).title.starts_with("Fish 1, "), "{}", phone.fish(now).title);
    type_weight(&mut phone, now + 1_000, "3");
    assert_eq!(weights(&mut phone), [Some(3_000), None]);
    let title = phone.fish(now + 10_000).title;
    assert!(title.starts_with("Fish 2, "), "WHICH? opens {title}");
    let title = weigh_on_the_bank(&mut phone, now + 10_000, "5");
    assert!(title.starts_with("Fish 2, "), "{title}");
    assert_eq!(weights(&mut phone), [Some(3_000), Some(5_000)]);
}

/// BACK and the phone's own back send the same action, whether a digit was typed before or not.
#[test]
fn back_from_an_earlier_fish_leads_to_a_bank_whose_keys_are_about_the_latest() {
    for digit in [false, true] {
        let (mut phone, now) = two_fish();
        let key = earlier(&phone.fish(now));
        phone.tap(now, &key).unwrap();
        if digit {
            phone.tap(now + 1_000, &Action::Fish { cast: None, tap: FishTap::Digit { digit: 7 } }).unwrap();
        }
        phone.tap(now + 2_000, &Action::Back).unwrap();
        weigh_on_the_bank(&mut phone, now + 10_000, "5");
        assert_eq!(weights(&mut phone), [None, Some(5_000)]);
    }
}

/// Feed goes to the present aim on the map, even if the map was left at an earlier moment.
#[test]
fn a_map_left_at_an_earlier_moment_shows_now_to_the_keys_of_the_bank() {
    let mut phone = started();
    let cell = restwater_swim::CellId { column: 2, row: 2 };
    phone.tap(24 * MIN, &Action::Swim { tap: restwater_screen::SwimTap::Cell { cell } }).unwrap();
    phone.tap(25 * MIN, &CAST).unwrap();
    let press = |phone: &mut Phone, ms: i64, which: Which, tag: &str| {
        let (Screen::Feed(view) | Screen::Seen(view)) = phone.app().screen(which, &at(ms)).unwrap() else {
            panic!()
        };
        let key = view.classes.iter().chain(&view.small).find(|key| key.tag == tag).unwrap();
        phone.tap(ms, key.tap.action().unwrap()).map(|_| view.title)
    };
    press(&mut phone, 26 * MIN, Which::Feed, "place").unwrap();
    phone.tap(30 * MIN, &Action::Replay { steps_back: 2 }).unwrap();
    phone.tap(31 * MIN, &Action::Back).unwrap();
    let title = press(&mut phone, 32 * MIN, Which::Feed, "handful").unwrap();
    assert_eq!(title, "Feed at the aim on the map");
    assert!(phone.app().session().unwrap().fed[0].said.place.is_some());
    phone.tap(33 * MIN, &Action::Replay { steps_back: 2 }).unwrap();
    phone.tap(34 * MIN, &Action::Back).unwrap();
    press(&mut phone, 35 * MIN, Which::Seen, "rolled").unwrap();
    assert_eq!(phone.app().session().unwrap().shown.len(), 1);
}
