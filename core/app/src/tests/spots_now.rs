//! What the Bank says of the spots at once: after a cast that has just ended, and when another rod goes out.

use super::spots::{BITES, DRY, aimed, move_to, two_spots};
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

/// The other rod goes out after this one, to where this one was to move.
#[test]
fn a_rod_is_not_sent_onto_a_bait_that_went_out_after_its_own() {
    let (mut phone, now) = {
        let mut phone = super::rods::with_rods(2);
        let mut now = MIN;
        for _ in 0..6 {
            now = phone.fish_at(now, BITES);
            now = phone.fish_at(now, DRY);
        }
        (phone, now)
    };
    phone.tap(now, &aimed(DRY)).unwrap();
    phone.tap(now + 10_000, &CAST).unwrap();
    let good = move_to(&mut phone).expect("the dry spot is to be left");
    let session = phone.app().session().unwrap().clone();
    let swim = restwater_session::swim_of(&session).unwrap();
    let spot = crate::spots::spot_at(&session, &swim, good, 1, &session.casts.last().unwrap().start).unwrap();
    phone.tap(now + MIN, &Action::SetSpot { rod: 2, spot }).unwrap();
    phone.tap(now + 2 * MIN, &Action::Cast { rod: 2 }).unwrap();
    let to = move_to(&mut phone);
    assert_ne!(to, Some(good));
    phone.tap(now + 3 * MIN, &Action::ChooseRod { rod: 1 }).unwrap();
    let said = phone.bank(now + 4 * MIN).advice.more[0].clone();
    phone.tap(now + 12 * MIN, &Action::WoundIn { rod: 2 }).unwrap();
    assert_eq!(move_to(&mut phone), Some(good), "the water is free again");
    phone.tap(now + 12 * MIN + 5_000, &Action::ChooseRod { rod: 1 }).unwrap();
    assert_ne!(phone.bank(now + 13 * MIN).advice.more[0], said);
}
