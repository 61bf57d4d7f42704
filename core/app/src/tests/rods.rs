//! Two and three rods, which can be told apart while standing.

use super::*;
use restwater_screen::{KeyWeight, SetupTap};

pub(super) fn with_rods(rods: u8) -> Phone {
    let mut phone = Phone::new();
    phone.tap(-5_000, &Action::Setup { tap: SetupTap::Rods { rods } }).unwrap();
    phone.tap(0, &START).unwrap();
    phone.look();
    phone
}

fn labels(phone: &mut Phone, ms: i64) -> Vec<String> {
    phone.bank(ms).rods.into_iter().map(|rod| rod.label).collect()
}

#[test]
fn the_rod_that_is_due_first_and_the_one_with_a_fish_on_are_marked() {
    let mut phone = with_rods(3);
    assert_eq!(labels(&mut phone, 0), ["Rod 1: in", "Rod 2: in", "Rod 3: in"]);
    phone.tap(MIN, &Action::Cast { rod: 2 }).unwrap();
    assert_eq!(labels(&mut phone, MIN), ["Rod 1: in", "Rod 2", "Rod 3: in"], "one rod alone has no first");
    phone.tap(3 * MIN, &Action::Cast { rod: 1 }).unwrap();
    assert_eq!(labels(&mut phone, 4 * MIN), ["Rod 1", "Rod 2: due first", "Rod 3: in"]);
    let first: Vec<bool> = phone.bank(4 * MIN).rods.iter().map(|rod| rod.first).collect();
    assert_eq!(first, [false, true, false], "where there is no room for words");
    let spoken = |phone: &mut Phone, ms| phone.bank(ms).rods[1].spoken.clone();
    assert_eq!(spoken(&mut phone, 4 * MIN), "Rod 2, out 3 minutes, due first");
    // A fish on is shown at its rod. Only one bait is left out, so none is due first.
    phone.tap(9 * MIN, &Action::Bite { rod: 2 }).unwrap();
    assert_eq!(labels(&mut phone, 9 * MIN), ["Rod 1", "Rod 2: FISH ON", "Rod 3: in"]);
    phone.open();
    assert_eq!(labels(&mut phone, 10 * MIN), ["Rod 1", "Rod 2: FISH ON", "Rod 3: in"]);
}

#[test]
fn a_fish_on_another_rod_is_an_alert_until_that_rod_is_chosen() {
    let mut phone = with_rods(2);
    for rod in [1, 2] {
        phone.tap(i64::from(rod) * MIN, &Action::Cast { rod }).unwrap();
    }
    let alerts = |phone: &mut Phone, ms| -> Vec<String> {
        phone.bank(ms).rods.into_iter().map(|rod| rod.alert).collect()
    };
    phone.tap(9 * MIN, &Action::Bite { rod: 2 }).unwrap();
    phone.tap(10 * MIN, &Action::ChooseRod { rod: 1 }).unwrap();
    assert_eq!(alerts(&mut phone, 10 * MIN), ["", "FISH ON"]);
    phone.tap(11 * MIN, &Action::ChooseRod { rod: 2 }).unwrap();
    assert_eq!(alerts(&mut phone, 11 * MIN), ["", ""], "its own keys ask what came of it");
}

fn chosen(bank: &BankView) -> u8 {
    bank.rods.iter().find(|rod| rod.chosen).unwrap().rod
}

/// The sub-label of a key and the action that it sends.
fn key(bank: &BankView, key: Key) -> Option<(String, Option<Action>)> {
    let view = bank.keys.iter().find(|view| view.key == key)?;
    Some((view.sub.clone().unwrap_or_default(), view.tap.action().cloned()))
}

/// Whoever nets a fish taps the LANDED that is shown.
#[test]
fn the_pad_is_that_of_the_rod_with_the_fish_wherever_its_bite_was_logged() {
    for rods in [2, 3] {
        for outside in [false, true] {
            let mut phone = with_rods(rods);
            for rod in 1..=rods {
                phone.tap(i64::from(rod) * MIN, &Action::Cast { rod }).unwrap();
            }
            assert_eq!(chosen(&phone.bank(4 * MIN)), 1);
            if outside {
                phone.app().act_outside(Key::Bite, Some(rods), &at(9 * MIN)).unwrap();
            } else {
                phone.tap(9 * MIN, &Action::Bite { rod: rods }).unwrap();
            }
            phone.open();
            let bank = phone.bank(10 * MIN);
            assert_eq!((chosen(&bank), bank.state), (rods, BankState::FishOn));
            assert_eq!(phone.app().watch(&at(10 * MIN)).rod, rods, "the lock screen asks for the same");
            let (sub, tap) = key(&bank, Key::Landed).unwrap();
            assert_eq!(sub, format!("Rod {rods}"));
            phone.tap(11 * MIN, &tap.unwrap()).unwrap();
            let bank = phone.bank(12 * MIN);
            assert_eq!((bank.rods[0].state, bank.rods[0].digits.as_str()), (BankState::Out, "11:00"));
            assert_eq!((chosen(&bank), bank.state), (rods, BankState::Landed), "its fish may be entered");
            // UNDO brings the fish back, and its pad, whatever was chosen meanwhile.
            phone.tap(13 * MIN, &Action::ChooseRod { rod: 1 }).unwrap();
            phone.tap(14 * MIN, &Action::Undo).unwrap();
            assert_eq!(chosen(&phone.bank(14 * MIN)), rods);
        }
    }
}

#[test]
fn landed_is_the_fishs_while_the_angler_looks_at_another_rod() {
    for rods in [2, 3] {
        let mut phone = with_rods(rods);
        for rod in 1..=rods {
            phone.tap(i64::from(rod) * MIN, &Action::Cast { rod }).unwrap();
        }
        let before = phone.bank(4 * MIN);
        assert_eq!(
            key(&before, Key::LandedLate).unwrap().0,
            "Rod 1: bite 2 min ago",
            "nothing says which fish it is"
        );
        assert_eq!(key(&before, Key::Bite).unwrap().0, "tip pulled round");
        phone.tap(9 * MIN, &Action::Bite { rod: 2 }).unwrap();
        phone.tap(10 * MIN, &Action::ChooseRod { rod: 1 }).unwrap();
        let bank = phone.bank(10 * MIN);
        assert_eq!((chosen(&bank), bank.state), (1, BankState::Out));
        for own in [Key::Bite, Key::WoundIn, Key::Cast] {
            assert_eq!(key(&bank, own).unwrap().0, "Rod 1");
        }
        for late in [Key::LandedLate, Key::LostLate] {
            assert_eq!(key(&bank, late).unwrap().0, "Rod 2");
        }
        let solid = |bank: &BankView| -> Vec<Key> {
            bank.keys.iter().filter(|view| view.weight == KeyWeight::Solid).map(|view| view.key).collect()
        };
        assert_eq!(solid(&bank), [Key::LandedLate]);
        let landed = bank.keys.iter().find(|view| view.key == Key::LandedLate).unwrap();
        assert_eq!(landed.spoken, "Rod 2: Landed. The fish is in the net.");
        phone.tap(11 * MIN, landed.tap.action().unwrap()).unwrap();
        let bank = phone.bank(12 * MIN);
        assert_eq!(bank.rods[0].state, BankState::Out);
        assert_eq!(
            phone.app().session().unwrap().casts[0].bite,
            None,
            "no bite was added to the cast of rod 1"
        );
        assert_eq!(
            (chosen(&bank), bank.state),
            (2, BankState::Landed),
            "no other LANDED comes up under the thumb"
        );
    }
}

#[test]
fn a_landed_fish_does_not_lead_away_from_another_that_is_on() {
    let mut phone = with_rods(2);
    for rod in [1, 2] {
        phone.tap(i64::from(rod) * MIN, &Action::Cast { rod }).unwrap();
    }
    for rod in [1, 2] {
        phone.tap(i64::from(rod + 8) * MIN, &Action::Bite { rod }).unwrap();
    }
    let bank = phone.bank(11 * MIN);
    assert_eq!((chosen(&bank), key(&bank, Key::Landed).unwrap().0), (2, "Rod 2".to_owned()));
    // A friend lands the other fish on the lock screen.
    phone.app().act_outside(Key::Landed, Some(1), &at(12 * MIN)).unwrap();
    assert_eq!(chosen(&phone.bank(12 * MIN)), 2);
    // CAST is not what comes next while a fish is on the other rod.
    phone.tap(13 * MIN, &Action::ChooseRod { rod: 1 }).unwrap();
    let bank = phone.bank(13 * MIN);
    assert!(bank.keys.iter().all(|view| view.weight != KeyWeight::Solid), "{:?}", bank.state);
    assert_eq!(key(&bank, Key::Cast).unwrap().0, "Rod 1");
}

#[test]
fn a_fish_that_takes_on_the_drop_is_not_said_to_have_bitten_a_second_ago() {
    let mut phone = with_rods(1);
    phone.tap(MIN, &CAST).unwrap();
    let sub = |phone: &mut Phone, s: i64| key(&phone.bank(MIN + s * 1_000), Key::LandedLate).unwrap().0;
    let said = [1, 19, 20, 59, 120, 600].map(|s| sub(&mut phone, s));
    assert_eq!(
        said.map(|text| text.replace('\u{a0}', " ")),
        [
            "adds a bite just now",
            "adds a bite just now",
            "adds a bite 10 s ago",
            "adds a bite 20 s ago",
            "adds a bite 1 min ago",
            "adds a bite 2 min ago"
        ]
    );
}

#[test]
fn a_single_rod_shows_only_its_name() {
    let mut phone = with_rods(1);
    phone.tap(MIN, &CAST).unwrap();
    assert_eq!(labels(&mut phone, 2 * MIN), ["Rod 1"]);
    phone.tap(5 * MIN, &BITE).unwrap();
    assert_eq!(labels(&mut phone, 5 * MIN), ["Rod 1"]);
}

/// On a small screen the digits have no word beside them, and those of a rod that is in would be read as a wait.
#[test]
fn a_rod_that_is_in_says_so_in_place_of_digits() {
    let alerts = |phone: &mut Phone, ms| -> Vec<String> {
        phone.bank(ms).rods.into_iter().map(|rod| rod.alert).collect()
    };
    let mut phone = with_rods(2);
    assert_eq!(alerts(&mut phone, 0), ["in", "in"]);
    phone.tap(MIN, &CAST).unwrap();
    assert_eq!(alerts(&mut phone, 2 * MIN), ["", "in"]);
    phone.tap(3 * MIN, &WOUND_IN).unwrap();
    phone.tap(4 * MIN, &Action::Away).unwrap();
    assert_eq!(alerts(&mut phone, 5 * MIN), ["in", "in"]);
    phone.tap(6 * MIN, &Action::Returned).unwrap();
    assert_eq!(alerts(&mut phone, 6 * MIN), ["in", "in"]);
    let mut alone = with_rods(1);
    assert_eq!(alerts(&mut alone, 0), [""], "its clock says since when it is in");
}

/// Large digits say how long a bait has been out, or a fish on, and nothing else, on screens of any size.
#[test]
fn the_clock_of_a_rod_that_is_in_is_a_word_and_since_when() {
    for rods in [1, 2] {
        let mut phone = with_rods(rods);
        let said = |phone: &mut Phone, ms| {
            let rod = phone.bank(ms).rods.remove(0);
            (rod.word, rod.since)
        };
        let is = |word: &str, since: &str| (word.to_owned(), since.to_owned());
        assert_eq!(said(&mut phone, 0), is("in", "nothing cast yet"));
        phone.tap(MIN, &CAST).unwrap();
        assert_eq!(said(&mut phone, 10 * MIN), is("", "out since 22:14"));
        phone.tap(11 * MIN, &BITE).unwrap();
        assert_eq!(said(&mut phone, 11 * MIN), is("", "fish on since 22:24"));
        phone.tap(12 * MIN, &LANDED).unwrap();
        assert_eq!(said(&mut phone, 20 * MIN), is("in", "in since 22:25"));
    }
}

/// What was advised before END is no advice now.
#[test]
fn without_a_session_the_strip_has_no_band() {
    let mut phone = with_rods(1);
    let mut now = MIN;
    for _ in 0..6 {
        for (minutes, tap) in [(14, CAST), (1, BITE), (2, LANDED)] {
            phone.tap(now, &tap).unwrap();
            now += minutes * MIN;
        }
    }
    let band = |phone: &mut Phone, ms| {
        let strip = phone.bank(ms).strip;
        (
            strip.recast_min.is_some(),
            strip.hold_min.is_some(),
            strip.window_min.is_some(),
            strip.known_to_min.is_some(),
        )
    };
    assert!(band(&mut phone, now).0);
    phone.tap(now, &Action::EndSession).unwrap();
    assert_eq!(band(&mut phone, now + MIN), (false, false, false, false));
}
