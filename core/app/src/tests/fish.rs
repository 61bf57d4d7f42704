//! Fish on the bank, with no match set.

use super::*;
use restwater_log::{FishWeight, WeightUnit};
use restwater_screen::{FishTap, KeyTap, KeyView, PhoneTap};
use restwater_session::{CaughtFish, catch};

fn fish(tap: FishTap) -> Action {
    Action::Fish { cast: None, tap }
}

fn class(name: &str) -> Action {
    fish(FishTap::Class { name: name.into() })
}

impl Phone {
    fn land_on(&mut self, ms: i64, rod: u8) {
        for (after, action) in [
            (0, Action::Cast { rod }),
            (10 * MIN, Action::Bite { rod }),
            (11 * MIN, Action::Landed { rod, fish: None }),
        ] {
            self.tap(ms + after, &action).unwrap();
        }
    }

    fn key(&mut self, ms: i64, key: Key) -> Option<KeyView> {
        self.bank(ms).keys.into_iter().find(|view| view.key == key)
    }

    /// Taps a key of the Bank that sends an action.
    fn press(&mut self, ms: i64, key: Key) -> Update {
        let KeyTap::Send { action } = self.key(ms, key).unwrap().tap else { panic!("{key:?} sends nothing") };
        self.tap(ms, &action).unwrap()
    }

    fn caught(&mut self) -> Vec<CaughtFish> {
        catch(self.app().session().unwrap())
    }
}

#[test]
fn a_fish_slipped_back_takes_one_tap_after_landed_and_one_undo_reverts_it() {
    let mut phone = started();
    phone.land_on(0, 1);
    let now = 12 * MIN;
    assert_eq!(phone.bank(now).state, BankState::Landed);
    assert_eq!(phone.key(now, Key::PutBack).unwrap().label, "PUT BACK");
    let update = phone.press(now, Key::PutBack);
    assert!(update.changed && phone.caught()[0].put_back);
    assert_eq!(phone.key(now, Key::PutBack).unwrap().label, "PUT BACK");
    phone.tap(now + 2_000, &Action::Undo).unwrap();
    assert!(!phone.caught()[0].put_back);
    assert_eq!(phone.app().session().unwrap().doubts, []);
}

/// Solid ink means the next key: what was chosen looks different, and says so to a screen reader by its state.
#[test]
fn what_is_chosen_of_a_fish_is_not_drawn_as_the_next_key() {
    use restwater_screen::KeyWeight;
    let mut phone = started();
    phone.land_on(0, 1);
    let now = 12 * MIN;
    phone.tap(now, &class("Roach")).unwrap();
    phone.press(now + 1_000, Key::PutBack);
    let of = |weight, phone: &mut Phone| -> Vec<Key> {
        let keys = phone.bank(now + 2_000).keys.into_iter().filter(|key| key.weight == weight);
        keys.map(|key| key.key).collect()
    };
    assert_eq!(of(KeyWeight::Solid, &mut phone), [Key::Cast]);
    assert_eq!(of(KeyWeight::Chosen, &mut phone), [Key::FishClass, Key::PutBack]);
    let Screen::Fish(view) = phone.app().screen(Which::Fish, &at(now + 2_000)).unwrap() else { panic!() };
    let keys = || view.classes.iter().chain(&view.small);
    assert!(keys().all(|key| key.weight != KeyWeight::Solid));
    assert!(keys().filter(|key| key.weight == KeyWeight::Chosen).count() >= 2);
}

#[test]
fn details_are_optional_and_their_row_disappears_with_the_next_cast() {
    let mut phone = started();
    phone.land_on(0, 1);
    assert_eq!(phone.key(12 * MIN, Key::Cast).unwrap().weight, restwater_screen::KeyWeight::Solid);
    phone.tap(13 * MIN, &CAST).unwrap();
    assert!(phone.key(13 * MIN, Key::PutBack).is_none());
    // Details can still be entered afterwards, even when the session is over.
    phone.tap(14 * MIN, &class("Roach")).unwrap();
    phone.tap(15 * MIN, &Action::EndSession).unwrap();
    phone.tap(16 * MIN, &fish(FishTap::PutBack { back: true })).unwrap();
    let fish = &phone.caught()[0];
    assert_eq!((fish.class.as_deref(), fish.put_back), (Some("Roach"), true));
}

#[test]
fn the_class_used_last_is_one_tap_and_the_others_follow_it() {
    let mut phone = started();
    phone.land_on(0, 1);
    let which = phone.key(12 * MIN, Key::FishClass).unwrap();
    assert_eq!((which.label.as_str(), which.tap), ("WHICH?", KeyTap::Open { which: Which::Fish }));
    phone.tap(12 * MIN, &class("  Crucian ")).unwrap();
    phone.tap(13 * MIN, &Action::EndSession).unwrap();
    // The next day it is offered: the names are the angler's own.
    let day = 24 * 60 * MIN;
    phone.open();
    phone.tap(day, &START).unwrap();
    phone.land_on(day + MIN, 1);
    let now = day + 13 * MIN;
    assert_eq!(phone.key(now, Key::FishClass).unwrap().label, "CRUCIAN");
    phone.press(now, Key::FishClass);
    assert_eq!(phone.caught()[0].class.as_deref(), Some("Crucian"));
    let said = phone.key(now, Key::FishClass).unwrap();
    assert_eq!(
        said.tap,
        KeyTap::Open { which: Which::Fish },
        "what is said is changed on the screen of the fish"
    );
    let labels: Vec<String> = phone.fish(now).classes.into_iter().map(|key| key.label).collect();
    assert_eq!(labels[..2], ["CRUCIAN", "SILVER"]);
    assert_eq!(labels.len(), 10);
}

#[test]
fn six_pounds_twelve_takes_six_taps_with_the_one_that_opens_the_pad() {
    let mut phone = started();
    phone.land_on(0, 1);
    let mut now = 12 * MIN;
    assert_eq!(phone.key(now, Key::Weigh).unwrap().tap, KeyTap::Open { which: Which::Weight });
    let mut taps = 1;
    for label in ["6", "LB", "1", "2"] {
        now += 300;
        let key = phone.pad(now).pad.into_iter().find(|key| key.label == label).unwrap();
        assert!(key.enabled, "{label}");
        phone.tap(now, key.tap.action().unwrap()).unwrap();
        taps += 1;
    }
    let weighed = phone.pad(now).weighed;
    assert_eq!((weighed.label.as_str(), weighed.enabled, weighed.closes), ("6 lb\u{a0}12 oz", true, true));
    phone.tap(now + 300, weighed.tap.action().unwrap()).unwrap();
    assert_eq!(taps + 1, 6);
    assert_eq!(
        phone.caught()[0].weight,
        Some(FishWeight::Weighed { unit: WeightUnit::Drams, count: 6 * 256 + 12 * 16 })
    );
    assert_eq!(phone.key(now + 1_000, Key::Weigh).unwrap().label, "6 lb\u{a0}12 oz");
}

#[test]
fn a_weight_may_be_a_guess_or_left_out_or_in_kilograms() {
    let mut phone = started();
    phone.land_on(0, 1);
    let mut now = 12 * MIN;
    let mut tap = |phone: &mut Phone, tap| {
        now += 1_000;
        phone.tap(now, &tap).unwrap();
    };
    tap(&mut phone, Action::Phone { tap: PhoneTap::Weights { unit: WeightUnit::Grams } });
    for typed in
        [FishTap::NextUnit, FishTap::Digit { digit: 3 }, FishTap::Digit { digit: 5 }, FishTap::Guessed]
    {
        tap(&mut phone, fish(typed));
    }
    assert_eq!(phone.caught()[0].weight, Some(FishWeight::Guessed { unit: WeightUnit::Grams, count: 350 }));
    tap(&mut phone, fish(FishTap::NoWeight));
    let fish = &phone.caught()[0];
    assert!(fish.weight.is_none() && fish.is_said);
    let typed_again = phone.pad(now).figure;
    assert_eq!(typed_again, "0 kg");
}

#[test]
fn a_wrong_digit_of_a_fish_is_rubbed_out_by_one_key() {
    let mut phone = started();
    phone.land_on(0, 1);
    let mut now = 12 * MIN;
    let key = |phone: &mut Phone, now, tag: &str| {
        let pad = phone.pad(now);
        let all = pad.pad.iter().chain(&pad.guess).chain([&pad.weighed]);
        all.clone().find(|key| key.tag == tag).unwrap().clone()
    };
    assert!(!key(&mut phone, now, "rub-out").enabled, "nothing is typed");
    let mut press = |phone: &mut Phone, tag: &str| {
        now += 1_000;
        let key = key(phone, now, tag);
        assert!(key.enabled, "{tag}");
        phone.tap(now, key.tap.action().unwrap()).unwrap();
        phone.pad(now).figure
    };
    press(&mut phone, "digit-8");
    press(&mut phone, "digit-0");
    assert_eq!(press(&mut phone, "unit"), "80 lb 0 oz");
    assert_eq!(press(&mut phone, "rub-out"), "8 lb");
    press(&mut phone, "unit");
    assert_eq!(press(&mut phone, "digit-4"), "8 lb 4 oz");
    press(&mut phone, "guess");
    let drams = 8 * 256 + 4 * 16;
    assert_eq!(phone.caught()[0].weight, Some(FishWeight::Guessed { unit: WeightUnit::Drams, count: drams }));
}

#[test]
fn with_two_rods_the_fish_is_that_of_the_chosen_rod() {
    let mut phone = Phone::new();
    phone.tap(-5_000, &Action::Setup { tap: SetupTap::Rods { rods: 2 } }).unwrap();
    phone.tap(0, &START).unwrap();
    phone.land_on(MIN, 1);
    phone.land_on(20 * MIN, 2);
    phone.tap(32 * MIN, &Action::ChooseRod { rod: 1 }).unwrap();
    phone.tap(33 * MIN, &class("Tench")).unwrap();
    phone.press(34 * MIN, Key::PutBack);
    let said: Vec<_> = phone.caught().into_iter().map(|fish| (fish.rod, fish.class, fish.put_back)).collect();
    assert_eq!(said, [(1, Some("Tench".to_owned()), true), (2, None, false)]);
}

#[test]
fn a_second_tap_on_landed_enters_no_detail_of_the_fish() {
    let mut phone = started();
    phone.tap(0, &CAST).unwrap();
    phone.tap(10 * MIN, &BITE).unwrap();
    phone.tap(11 * MIN, &LANDED).unwrap();
    let update = phone.press(11 * MIN + 400, Key::PutBack);
    assert!(update.repeated && !phone.caught()[0].is_said);
}

/// Without a fish there are no keys that do nothing: the screen says what to do and offers the key for it.
#[test]
fn without_a_fish_its_screen_offers_the_key_that_leads_to_one() {
    let mut phone = started();
    let offered = |phone: &mut Phone| {
        let view = phone.app().fish_screen();
        assert!(view.classes.is_empty() && view.small.is_empty() && view.weigh.enabled, "{view:?}");
        (view.weigh.label, view.weigh.tap)
    };
    let (label, tap) = offered(&mut phone);
    assert_eq!((label.as_str(), tap), ("CAST", Action::Cast { rod: 1 }.into()));
    phone.tap(0, &Action::Cast { rod: 1 }).unwrap();
    let (label, tap) = offered(&mut phone);
    assert_eq!(label, "LANDED");
    let KeyTap::Send { action } = tap else { panic!("{tap:?}") };
    phone.tap(10 * MIN, &action).unwrap();
    assert_eq!(phone.caught().len(), 1);
    let view = phone.app().fish_screen();
    assert_eq!(view.weigh.label, "WEIGH");
    assert!(!view.classes.is_empty());
}

/// A usual kind of fish has one key, in whatever language it was first logged.
#[test]
fn another_language_makes_no_second_key_and_no_second_class_of_a_usual_fish() {
    let mut phone = started();
    phone.land_on(0, 1);
    phone.tap(12 * MIN, &class("Carp")).unwrap();
    let before = phone.app().fish_screen().classes.len();
    phone.app().set_language("de-DE");
    phone.land_on(20 * MIN, 1);
    let keys = phone.app().fish_screen().classes;
    assert_eq!(keys.len(), before, "{keys:?}");
    phone.tap(33 * MIN, &class("Karpfen")).unwrap();
    let caught = phone.caught();
    assert_eq!(caught.iter().map(|fish| fish.class.as_deref()).collect::<Vec<_>>(), [Some("Carp"); 2]);
    phone.tap(34 * MIN, &class("Schleie")).unwrap();
    assert_eq!(phone.caught()[1].class.as_deref(), Some("Schleie"), "a new one is named as it is offered");
}
