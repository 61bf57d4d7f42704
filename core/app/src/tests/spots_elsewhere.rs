//! A spot that is dry says when its own bait is to be wound in, and nothing of the casts after that.

use super::spots::{BITES, DRY, aimed, two_spots};
use super::*;
use restwater_screen::{MatchTap, MatchView, RuleTap};

/// A match in which both spots were fished six times in turn, and when the next cast is due.
fn a_match_over_two_spots() -> (Phone, i64) {
    let mut phone = started();
    phone.tap(2_000, &Action::Match { tap: MatchTap::Rule { rule: RuleTap::Begin } }).unwrap();
    let round = |phone: &mut Phone, now| {
        let now = phone.fish_at(now, BITES);
        phone.fish_at(now, DRY)
    };
    let now = (0..6).fold(17 * MIN, |now, _| round(&mut phone, now));
    (phone, now)
}

/// Bites still to come, the most that are likely.
fn most_bites(view: &MatchView) -> u32 {
    let line = view.coming.iter().find(|line| line.label == "Bites to come").expect("a line on bites");
    let last = line.value.split(|c: char| !c.is_ascii_digit()).filter_map(|digits| digits.parse().ok()).max();
    last.unwrap_or_else(|| panic!("{line:?}"))
}

#[test]
fn a_dry_spot_on_the_rod_does_not_end_the_bites_of_the_match() {
    let (mut phone, now) = a_match_over_two_spots();
    let to_come = most_bites(&phone.view(now));
    assert!(to_come > 3, "{to_come}");
    // Its spot is the dry one, with nothing out.
    phone.tap(now, &aimed(DRY)).unwrap();
    let ready = phone.view(now + 5_000);
    assert!(!ready.coming_says.contains("no more bites"), "{}", ready.coming_says);
    assert!(most_bites(&ready).abs_diff(to_come) <= 2, "{} against {to_come}", most_bites(&ready));
    // And with the bait out there, which costs some minutes at most.
    phone.tap(now + 10_000, &CAST).unwrap();
    for minutes in [1, 10] {
        let out = phone.view(now + minutes * MIN);
        assert!(
            most_bites(&out).abs_diff(to_come) <= 3,
            "{minutes} min: {} against {to_come}",
            most_bites(&out)
        );
        phone.open();
        assert_eq!(phone.view(now + minutes * MIN).coming_says, out.coming_says, "after a restart");
    }
}

#[test]
fn a_rod_that_is_in_is_sent_elsewhere_and_not_told_to_hold_a_bait_for_a_minute() {
    let (mut phone, now) = two_spots(6);
    phone.tap(now, &aimed(DRY)).unwrap();
    let ready = phone.bank(now + 5_000).advice;
    assert!(ready.headline.starts_with("Not here again. Cast to 20° left, "), "{ready:?}");
    assert!(ready.more[0].starts_with("Nothing here in 107 min over 6 casts. About "), "{ready:?}");
    // There the minutes are the figure.
    phone.tap(now + 10_000, &aimed(BITES)).unwrap();
    let there = phone.bank(now + 15_000).advice.headline;
    assert!(there.starts_with("Hold until "), "{there}");
    // With the bait out on the dry spot there is one minute, which is said once.
    phone.tap(now + 20_000, &aimed(DRY)).unwrap();
    phone.tap(now + 25_000, &CAST).unwrap();
    let out = phone.bank(now + 30_000).advice.headline;
    assert!(out.starts_with("Recast by "), "{out}");
}

/// The spot that a sentence of the Bank ends its instruction with: "Then move to the gate, 30 yd. Nothing here ...".
fn moved_to(bank: &str) -> String {
    let to = bank.strip_prefix("Then move to ").unwrap_or_else(|| panic!("{bank}"));
    to.split(". Nothing here").next().and_then(|to| to.split(". If nothing").next()).unwrap().to_owned()
}

/// Both screens are asked for the next cast at any minute of a wait.
#[test]
fn while_a_bait_is_out_the_swim_sends_the_next_cast_where_the_bank_does() {
    let mut phone = started();
    let mut now = MIN;
    for (bearing, minutes, bites) in [
        (0, 15, false),
        (0, 15, false),
        (-2_000, 4, true),
        (-2_000, 5, true),
        (0, 15, false),
        (2_000, 15, false),
        (-2_000, 7, true),
        (0, 15, false),
        (0, 15, false),
        (2_000, 15, false),
    ] {
        phone.tap(now, &aimed(bearing)).unwrap();
        phone.tap(now + 10_000, &CAST).unwrap();
        let end = now + 10_000 + minutes * MIN;
        phone.tap(end, if bites { &BITE } else { &WOUND_IN }).unwrap();
        if bites {
            phone.tap(end + 5_000, &LANDED).unwrap();
        }
        now = end + 2 * MIN;
    }
    phone.tap(now, &aimed(-2_000)).unwrap();
    phone.tap(now + 10_000, &CAST).unwrap();
    let mut compared = 0;
    for minutes in 1..12 {
        let ms = now + minutes * MIN;
        let Some(bank) = phone.bank(ms).advice.more.into_iter().find(|text| text.starts_with("Then ")) else {
            continue;
        };
        let bank = bank.replace('\u{a0}', " ");
        compared += 1;
        let swim = phone.the_swim(ms).headline.replace('\u{a0}', " ");
        if bank.starts_with("Then recast here") {
            assert!(swim.starts_with("Stay: "), "{minutes} min: {bank} but {swim}");
        } else {
            let to =
                swim.strip_prefix("Next: ").unwrap_or_else(|| panic!("{minutes} min: {bank} but {swim}"));
            assert!(moved_to(&bank).starts_with(to), "{minutes} min: {bank} but {swim}");
        }
    }
    assert!(compared > 5, "{compared}");
}

#[test]
fn no_rod_is_sent_onto_the_bait_of_another() {
    let mut phone = super::rods::with_rods(2);
    let on = |rod, cdeg| Action::Tackle { rod, tap: restwater_screen::TackleTap::Bearing { cdeg } };
    phone.tap(5_000, &on(1, DRY)).unwrap();
    phone.tap(10_000, &on(2, BITES)).unwrap();
    let mut taps = Vec::new();
    for cast in 0..3 {
        taps.push((1 + 20 * cast, CAST));
        taps.push((19 + 20 * cast, WOUND_IN));
    }
    for cast in 0..6 {
        taps.push((2 + 9 * cast, Action::Cast { rod: 2 }));
        taps.push((7 + 9 * cast, Action::Bite { rod: 2 }));
        taps.push((8 + 9 * cast, Action::Landed { rod: 2, fish: None }));
    }
    taps.push((58, Action::Cast { rod: 2 }));
    taps.sort_by_key(|(minute, _)| *minute);
    for (minute, action) in taps {
        phone.tap(minute * MIN, &action).unwrap();
    }
    phone.tap(60 * MIN, &Action::ChooseRod { rod: 1 }).unwrap();
    let bait = "20° left, 9.5 wraps of 12 ft (34.7 m)";
    for restarted in [false, true] {
        if restarted {
            phone.open();
        }
        let swim = phone.the_swim(61 * MIN).headline.replace('\u{a0}', " ");
        assert!(swim.starts_with("Next: ") && !swim.contains(bait), "{swim}");
    }
}
