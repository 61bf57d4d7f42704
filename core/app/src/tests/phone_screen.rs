//! What belongs to the phone: the scheme at dusk, and the way back to the Bank.

use super::*;
use restwater_screen::PhoneTap;

#[test]
fn the_night_scheme_switches_on_at_dusk_if_that_was_chosen() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    // 14 November 2023, 22:13 UTC, on the Greenwich meridian: long after dusk.
    let scheme = |phone: &mut Phone, ms| phone.app().settings(&at(ms)).scheme;
    let dusk = Action::Phone { tap: PhoneTap::NightAtDusk };
    phone.tap(1_000, &dusk).unwrap();
    assert_eq!(scheme(&mut phone, 1_000), Scheme::Day, "the peg is not on the map: the sun can't be known");
    let peg = Action::PlacePeg { lat_e7: 520_000_000, lon_e7: 0, straight_out_cdeg: 0 };
    phone.tap(2_000, &peg).unwrap();
    assert_eq!(scheme(&mut phone, 2_000), Scheme::Night);
    assert_eq!(scheme(&mut phone, 13 * 60 * MIN), Scheme::Day, "11:13 of the next day");
    phone.open();
    assert_eq!(scheme(&mut phone, 3_000), Scheme::Night, "chosen for good");
    phone.tap(4_000, &Action::Set { hand: None, scheme: Some(Scheme::Day) }).unwrap();
    assert_eq!(scheme(&mut phone, 4_000), Scheme::Day, "the day was chosen");
    phone.tap(5_000, &Action::Set { hand: None, scheme: Some(Scheme::Night) }).unwrap();
    phone.tap(6_000, &dusk).unwrap();
    assert_eq!(scheme(&mut phone, 13 * 60 * MIN), Scheme::Day, "by day it is light again");
}

#[test]
fn back_to_the_bank_writes_nothing_and_a_second_tap_does_not_cast() {
    let mut phone = Phone::new();
    phone.tap(0, &START).unwrap();
    let back = phone.tap(MIN, &Action::Back).unwrap();
    assert!(!back.changed && !back.repeated);
    let cast = phone.tap(MIN + 400, &CAST).unwrap();
    assert!(cast.repeated && !cast.changed && !cast.notice.is_empty());
    assert!(phone.tap(MIN + 900, &CAST).unwrap().changed);
}

#[test]
fn a_key_that_opens_writes_nothing_and_a_second_tap_logs_nothing_of_what_has_opened() {
    let mut phone = Phone::new();
    let opened = phone.tap(0, &Action::Opened).unwrap();
    assert!(!opened.changed && !opened.repeated && opened.notice.is_empty());
    let start = phone.tap(400, &START).unwrap();
    assert!(start.repeated && !start.changed && !start.notice.is_empty(), "the set-up has only just come up");
    let start = phone.tap(900, &START).unwrap();
    assert!(start.changed);
    let cast = phone.tap(1_300, &CAST).unwrap();
    assert!(cast.repeated && !cast.changed, "the Bank has only just come up");
    assert!(phone.tap(1_800, &CAST).unwrap().changed);
}
