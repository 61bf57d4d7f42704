//! "This spot" on the Waits screen: a bearing and a range are a place only from one peg.

use super::learning::screens;
use super::*;

const DAY: i64 = 24 * 60 * MIN;
const SPOT: i32 = -1_200;

impl Phone {
    /// A session of `casts` casts of 15 min on one spot and a cast on another; a peg without a name is none.
    fn spot_day(&mut self, day: i64, (water, peg): (&str, &str), casts: i64) -> i64 {
        let zero = day * DAY;
        self.boots += 1;
        self.tap(zero, &typed(TypedInto::Water, water)).unwrap();
        self.tap(zero + 1_000, &typed(TypedInto::Peg, peg)).unwrap();
        self.tap(zero + 2_000, &START).unwrap();
        for i in 0..=casts {
            let splash = zero + MIN + i * 20 * MIN;
            let cdeg = if i < casts { SPOT } else { -SPOT };
            self.tap(splash - 10_000, &tackle(TackleTap::Bearing { cdeg })).unwrap();
            self.tap(splash, &CAST).unwrap();
            self.tap(splash + 15 * MIN, &WOUND_IN).unwrap();
        }
        zero + MIN + (casts + 1) * 20 * MIN
    }
}

fn counts(phone: &mut Phone, now: i64) -> String {
    screens(phone, now).0.counts
}

#[test]
fn casts_of_another_water_or_peg_are_not_casts_at_this_spot() {
    let mut phone = Phone::new();
    let places = [("Alder Pool", "14"), ("Mill pool", "15"), ("Mill pool", ""), ("Mill pool", "14")];
    for (day, place) in (0..).zip(places) {
        let end = phone.spot_day(day, place, 4);
        phone.tap(end, &Action::EndSession).unwrap();
    }
    let now = phone.spot_day(4, ("Mill pool", "14"), 3);
    assert!(counts(&mut phone, now).starts_with("No bites in 24 casts"), "{}", counts(&mut phone, now));
    let rows = screens(&mut phone, now).0.rows;
    let spots = rows.iter().find(|row| row.tag == "spot").unwrap();
    let here = spots.choices.iter().find(|choice| choice.label.contains("12° left")).unwrap_or_else(|| {
        panic!("{:?}", spots.choices.iter().map(|choice| choice.label.as_str()).collect::<Vec<_>>())
    });
    phone.tap(now, &here.action.clone()).unwrap();
    assert!(counts(&mut phone, now).starts_with("No bites in 7 casts"), "{}", counts(&mut phone, now));
    let rows = screens(&mut phone, now).0.rows;
    let sessions = rows.iter().find(|row| row.tag == "sessions").unwrap();
    assert_eq!(sessions.value, "with the one before", "the one from this peg");
}

/// Without a peg nobody knows whether an earlier day was from it.
#[test]
fn at_a_peg_without_a_name_this_spot_is_today_alone() {
    let mut phone = Phone::new();
    let end = phone.spot_day(0, ("Mill pool", ""), 4);
    phone.tap(end, &Action::EndSession).unwrap();
    let now = phone.spot_day(1, ("Mill pool", ""), 3);
    let spots = screens(&mut phone, now).0.rows.into_iter().find(|row| row.tag == "spot").unwrap();
    let here = spots.choices.into_iter().find(|choice| choice.label.contains("12° left")).unwrap();
    phone.tap(now, &here.action).unwrap();
    assert!(counts(&mut phone, now).starts_with("No bites in 3 casts"), "{}", counts(&mut phone, now));
}
