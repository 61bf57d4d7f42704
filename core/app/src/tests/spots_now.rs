//! What the Bank says of the spots at once, after a cast that has just ended.

use super::spots::{DRY, aimed, two_spots};
use super::*;

/// The casts in a row without a bite at the spot, as the Bank counts them.
fn dry_casts(phone: &mut Phone, ms: i64) -> Option<u32> {
    let more = phone.bank(ms).advice.more;
    let said = more.iter().find_map(|line| line.split(" min over ").nth(1))?;
    said.split(' ').next()?.parse().ok()
}

#[test]
fn a_cast_that_was_just_wound_in_counts_at_once() {
    let (mut phone, now) = two_spots(6);
    phone.tap(now, &aimed(DRY)).unwrap();
    assert_eq!(dry_casts(&mut phone, now + 5_000), Some(6));
    // On the clock of the session a minute begins with its start.
    phone.tap(now + 10_000, &CAST).unwrap();
    phone.tap(now + 18 * MIN + 17_000, &WOUND_IN).unwrap();
    let casts = [18, 40, 70].map(|s| dry_casts(&mut phone, now + 18 * MIN + s * 1_000));
    assert_eq!(casts, [Some(7); 3]);
}

#[test]
fn a_bite_that_was_just_missed_counts_at_once() {
    let (mut phone, now) = two_spots(6);
    phone.tap(now, &aimed(DRY)).unwrap();
    phone.tap(now + 10_000, &CAST).unwrap();
    phone.tap(now + 6 * MIN + 12_000, &BITE).unwrap();
    phone.tap(now + 6 * MIN + 31_000, &Action::Missed { rod: 1 }).unwrap();
    let at_once = phone.bank(now + 6 * MIN + 32_000).advice;
    let later = phone.bank(now + 7 * MIN + 1_000).advice;
    assert_eq!(at_once.more, later.more, "a minute later nothing else is known");
}
