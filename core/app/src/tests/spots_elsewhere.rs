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
