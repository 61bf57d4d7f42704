//! The net of an earlier fish, entered later.

use super::match_day::{FISHING, in_match};
use super::*;
use restwater_screen::FishTap;
use restwater_session::own_count::catch_by_net;

fn fish(tap: FishTap) -> Action {
    Action::Fish { cast: None, tap }
}

fn net(name: &str) -> Action {
    fish(FishTap::Net { name: name.into() })
}

fn nets(phone: &mut Phone) -> Vec<u8> {
    let of = |net: Option<String>| net.and_then(|net| net.strip_prefix("Net ")?.parse().ok()).unwrap_or(0);
    catch_by_net(phone.app().session().unwrap()).into_iter().map(|fish| of(fish.net)).collect()
}

/// Four fish in Net 1 and a fifth in Net 2; the time after them.
fn five_fish() -> (Phone, i64) {
    let mut phone = in_match();
    for i in 0..5 {
        let start = FISHING + i * 15 * MIN;
        for (after, action) in [(0, CAST), (10, BITE), (12, LANDED)] {
            phone.tap(start + after * MIN, &action).unwrap();
        }
    }
    let now = FISHING + 75 * MIN;
    phone.tap(now, &net("Net 2")).unwrap();
    assert_eq!(nets(&mut phone), [1, 1, 1, 1, 2]);
    (phone, now + MIN)
}

#[test]
fn the_net_of_an_earlier_fish_is_said_of_that_fish_alone() {
    let (mut phone, now) = five_fish();
    phone.tap(now, &fish(FishTap::Meant { back: 3 })).unwrap();
    phone.tap(now + 1_000, &net("Net 2")).unwrap();
    assert_eq!(nets(&mut phone), [1, 2, 1, 1, 2]);
    let view = phone.view(now + 2_000);
    assert!(view.nets[0].holds.starts_with("3 fish"), "{}", view.nets[0].holds);
    assert!(view.nets[1].holds.starts_with("2 fish") && view.nets[1].in_use, "{}", view.nets[1].holds);
    phone.tap(now + 3_000, &Action::Undo).unwrap();
    assert_eq!(nets(&mut phone), [1, 1, 1, 1, 2], "one UNDO");
}

#[test]
fn the_net_of_the_latest_fish_is_that_of_those_to_come_and_one_put_back_between_changes_nothing() {
    let (mut phone, now) = five_fish();
    phone.tap(now, &fish(FishTap::Meant { back: 2 })).unwrap();
    phone.tap(now + 1_000, &fish(FishTap::PutBack { back: true })).unwrap();
    phone.tap(now + 2_000, &fish(FishTap::Meant { back: 3 })).unwrap();
    phone.tap(now + 3_000, &net("Net 2")).unwrap();
    assert_eq!(nets(&mut phone), [1, 2, 0, 1, 2]);
    phone.tap(now + 4_000, &fish(FishTap::Meant { back: 0 })).unwrap();
    phone.tap(now + 5_000, &net("Net 1")).unwrap();
    assert_eq!(nets(&mut phone), [1, 2, 0, 1, 1]);
    assert!(phone.view(now + 6_000).nets[0].in_use);
}
