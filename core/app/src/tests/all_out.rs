//! What ends a wait that nobody ended: all-out in a match; a doubt where the bait may have been in long before END.

use super::match_day::{in_match, tap as match_tap};
use super::rods::with_rods;
use super::swim_screen::{choose, scene, swim};
use super::*;
use restwater_screen::{MatchTap, MendTap, PhoneTap, RuleTap, SwimKey, SwimTap, SwimView};
use restwater_session::{DoubtKind, waits_of};
use restwater_swim::{LabelRole, LineRole};

/// All-out, by the phone's clock.
pub(super) const ALL_OUT: i64 = 316 * MIN + 40_000;

fn waits(phone: &mut Phone) -> Vec<(f64, bool)> {
    let waits = waits_of(phone.app().session().unwrap());
    waits.iter().map(|wait| ((wait.minutes() * 100.0).round() / 100.0, wait.is_bite())).collect()
}

/// He pulls the bait in at the signal, weighs in, and taps END when he thinks of it.
#[test]
fn all_out_ends_the_wait_and_the_fishing() {
    let mut phone = in_match();
    phone.tap(300 * MIN, &CAST).unwrap();
    assert_eq!(phone.bank(310 * MIN).strip.elapsed_min, Some(10.0));
    assert!((phone.bank(340 * MIN).strip.elapsed_min.unwrap() - 16.67).abs() < 0.01);
    phone.tap(370 * MIN, &Action::EndSession).unwrap();
    assert_eq!(waits(&mut phone), [(16.67, false)]);
    assert_eq!(phone.app().session().unwrap().fished_min(), Some(300.0));
    assert_eq!(phone.app().session().unwrap().doubts, []);
    let opened = restwater_screen::BookTap::Open { session: phone.app().session().unwrap().id };
    phone.tap(371 * MIN, &Action::Book { tap: opened }).unwrap();
    let line = phone.leaf(Which::Book, 372 * MIN, "session").lines[0].clone();
    assert!(line.value.starts_with("17 min"), "{}", line.value);
}

#[test]
fn a_fish_hooked_before_all_out_counts_and_so_does_a_bite_that_was_logged_after_it() {
    let mut phone = in_match();
    for (at_ms, action) in [(300 * MIN, CAST), (316 * MIN, BITE), (319 * MIN, LANDED)] {
        phone.tap(at_ms, &action).unwrap();
    }
    assert_eq!(waits(&mut phone), [(16.0, true)]);
    // Fished on for pleasure: what is cast after all-out has nothing to do with it.
    phone.tap(320 * MIN, &CAST).unwrap();
    phone.tap(350 * MIN, &WOUND_IN).unwrap();
    assert_eq!(waits(&mut phone), [(16.0, true), (30.0, false)]);
    let mut phone = in_match();
    phone.tap(300 * MIN, &CAST).unwrap();
    phone.tap(ALL_OUT + 20_000, &BITE).unwrap();
    assert_eq!(waits(&mut phone), [(17.0, true)], "the bait was out: there was a bite on it");
}

#[test]
fn the_time_to_land_a_fish_is_shown_only_while_a_fish_is_on() {
    let mut phone = in_match();
    let line = |phone: &mut Phone, ms| phone.bank(ms).header.length;
    phone.tap(300 * MIN, &CAST).unwrap();
    phone.tap(316 * MIN, &BITE).unwrap();
    assert!(
        line(&mut phone, ALL_OUT + MIN).ends_with("to land a fish"),
        "{}",
        line(&mut phone, ALL_OUT + MIN)
    );
    phone.tap(ALL_OUT + 2 * MIN, &LANDED).unwrap();
    assert_eq!(line(&mut phone, ALL_OUT + 3 * MIN), "match over");
}

#[test]
fn no_alarm_of_a_rod_rings_after_all_out() {
    let mut phone = in_match();
    phone.tap(290 * MIN, &Action::Phone { tap: PhoneTap::Alarm { alarm: Alarm::After(20) } }).unwrap();
    phone.tap(300 * MIN, &CAST).unwrap();
    let rods = |phone: &mut Phone, ms| {
        let watch = phone.app().watch(&at(ms));
        watch.alarms.into_iter().chain(watch.due).filter(|alarm| alarm.rod.is_some()).count()
    };
    assert_eq!(rods(&mut phone, 310 * MIN), 0, "it would ring at 320 min");
    assert_eq!(rods(&mut phone, 330 * MIN), 0);
    phone.tap(331 * MIN, &WOUND_IN).unwrap();
    phone.tap(332 * MIN, &CAST).unwrap();
    assert_eq!(rods(&mut phone, 333 * MIN), 1, "a cast of another fishing");
}

/// What one tap without a look does, on a button or by voice.
#[test]
fn the_key_that_is_due_next_keeps_to_the_hours_of_the_match() {
    let mut phone = in_match();
    let next = |phone: &mut Phone, ms| phone.app().watch(&at(ms)).next;
    assert_eq!(next(&mut phone, 300 * MIN), Some(Key::Cast));
    phone.tap(300 * MIN, &CAST).unwrap();
    assert_eq!(next(&mut phone, 310 * MIN), Some(Key::Bite));
    assert_eq!(next(&mut phone, ALL_OUT + 1_000), Some(Key::WoundIn), "no bite after all-out");
    phone.tap(ALL_OUT + 20_000, &WOUND_IN).unwrap();
    assert_eq!(next(&mut phone, ALL_OUT + 60_000), None, "and no cast");
    phone.tap(ALL_OUT + 120_000, &Action::EndSession).unwrap();
    assert_eq!(next(&mut phone, ALL_OUT + 180_000), None);
}

/// Without a match nobody knows when the bait came in: END an hour later is a doubt, which is corrected like any other.
#[test]
fn a_bait_still_out_long_before_end_is_a_doubt() {
    let fished = |end: i64| {
        let mut phone = started();
        for start in [0, 15, 30, 45] {
            phone.tap(start * MIN, &CAST).unwrap();
            phone.tap((start + 13) * MIN, &WOUND_IN).unwrap();
        }
        phone.tap(60 * MIN, &CAST).unwrap();
        phone.tap(70 * MIN, &Action::Liner { rod: 1 }).unwrap();
        phone.tap(end * MIN, &Action::EndSession).unwrap();
        phone
    };
    assert_eq!(fished(95).app().session().unwrap().doubts, [], "25 min after the liner");
    let mut phone = fished(130);
    let doubts = phone.app().session().unwrap().doubts.clone();
    assert_eq!(doubts.iter().map(|doubt| doubt.kind).collect::<Vec<_>>(), [DoubtKind::StillOut]);
    let op = doubts[0].op;
    assert_eq!(waits(&mut phone), [(13.0, false); 4], "what is doubted is no hour without a bite");
    let Screen::Mend(view) = phone.app().screen(Which::Mend, &at(131 * MIN)).unwrap() else { panic!() };
    assert_eq!(
        view.lines[0].why,
        "Still out when the session ended, long after its last entry: the bait may have been in before that."
    );
    phone.tap(132 * MIN, &view.lines[0].open).unwrap();
    phone.tap(133 * MIN, &Action::Mend { op, tap: MendTap::After { minutes: 14 } }).unwrap();
    assert_eq!(phone.app().session().unwrap().doubts, []);
    assert_eq!(waits(&mut phone).last(), Some(&(14.0, false)));
    phone.tap(134 * MIN, &Action::Undo).unwrap();
    phone.tap(135 * MIN, &Action::Mend { op, tap: MendTap::Confirm }).unwrap();
    assert_eq!(phone.app().session().unwrap().doubts, []);
    assert_eq!(waits(&mut phone).last(), Some(&(70.0, false)));
}

/// CAST, and END at home three hours later: with too few casts to know the usual time of one, two hours are long.
#[test]
fn the_only_cast_still_out_hours_before_end_is_a_doubt_too() {
    let fished = |end: i64| {
        let mut phone = started();
        phone.tap(5 * MIN, &CAST).unwrap();
        phone.tap(end * MIN, &Action::EndSession).unwrap();
        phone
    };
    let mut phone = fished(120);
    assert_eq!(phone.app().session().unwrap().doubts, [], "115 min");
    assert_eq!(waits(&mut phone), [(115.0, false)]);
    let mut phone = fished(185);
    let doubts = phone.app().session().unwrap().doubts.clone();
    assert_eq!(doubts.iter().map(|doubt| doubt.kind).collect::<Vec<_>>(), [DoubtKind::StillOut]);
    assert_eq!(waits(&mut phone), []);
    phone.tap(186 * MIN, &Action::Mend { op: doubts[0].op, tap: MendTap::Confirm }).unwrap();
    assert_eq!(waits(&mut phone), [(180.0, false)]);
}

/// Three baits that all-out brought in after five minutes are nobody's habit.
#[test]
fn a_cast_that_all_out_ended_was_not_wound_in_by_choice() {
    let mut phone = with_rods(3);
    phone.tap(2_000, &match_tap(MatchTap::Rule { rule: RuleTap::Begin })).unwrap();
    for rod in 1..=3 {
        let splash = (20 + 20 * i64::from(rod)) * MIN;
        phone.tap(splash, &Action::Cast { rod }).unwrap();
        phone.tap(splash + 8 * MIN, &Action::Bite { rod }).unwrap();
        phone.tap(splash + 9 * MIN, &Action::Missed { rod }).unwrap();
    }
    for rod in 1..=3 {
        phone.tap(ALL_OUT - 5 * MIN + i64::from(rod) * 2_000, &Action::Cast { rod }).unwrap();
    }
    for rod in 1..=3 {
        phone.tap(ALL_OUT + i64::from(rod) * 20_000, &Action::WoundIn { rod }).unwrap();
    }
    let session = phone.app().session().unwrap();
    assert_eq!(waits_of(session).len(), 6);
    assert_eq!(restwater_session::habit_before_bites(session), None);
    assert_eq!(restwater_session::habit_of(session), None);
}

/// The match is over: no water is proposed, on the screen or in the picture, and no key asks for a cast.
#[test]
fn after_all_out_the_swim_proposes_no_cast() {
    let cast_here = |view: &SwimView| view.keys.iter().find(|k| k.key == SwimKey::CastHere).unwrap().clone();
    let mut phone = in_match();
    phone.tap(300 * MIN, &CAST).unwrap();
    phone.tap(312 * MIN, &WOUND_IN).unwrap();
    let before = swim(&mut phone, 314 * MIN);
    assert!(
        before.headline.starts_with("Next: ") || before.headline.starts_with("Stay: "),
        "{}",
        before.headline
    );
    assert!(cast_here(&before).solid);
    let over = ALL_OUT + 60_000;
    let after = swim(&mut phone, over);
    assert_eq!((after.headline.as_str(), after.why.as_str()), ("All out.", ""));
    assert_eq!(after.others, Vec::<String>::new());
    assert!(after.list.iter().all(|line| !line.starts_with("Then: ")), "{:?}", after.list);
    // Whoever fishes on for pleasure still may.
    assert!(cast_here(&after).enabled && after.keys.iter().all(|key| !key.solid));
    for small in [false, true] {
        let picture = scene(&mut phone, over, small);
        assert!(
            !picture.line_role.contains(&LineRole::NextRing)
                && !picture.label_role.contains(&LabelRole::Next)
        );
    }
    let bank = phone.bank(over);
    assert!(
        bank.keys
            .iter()
            .all(|key| key.key != Key::Cast || key.weight == restwater_screen::KeyWeight::Outline)
    );
    let cell = restwater_swim::CellId { column: 0, row: 0 };
    phone.tap(over + 1_000, &choose(SwimTap::Cell { cell })).unwrap();
    let picked = swim(&mut phone, over + 2_000);
    assert!(
        !picked.headline.starts_with("All out") && !picked.headline.contains(": "),
        "{}",
        picked.headline
    );
    // An earlier moment is shown as it was.
    phone.tap(over + 3_000, &Action::Replay { steps_back: 1 }).unwrap();
    let earlier = swim(&mut phone, over + 4_000);
    assert!(earlier.others.iter().any(|line| !line.is_empty()), "{earlier:?}");
}

#[test]
fn after_all_out_the_match_says_that_it_is_over() {
    let mut phone = in_match();
    phone.tap(300 * MIN, &CAST).unwrap();
    phone.tap(312 * MIN, &WOUND_IN).unwrap();
    let over = ALL_OUT + 60 * MIN;
    assert_eq!(phone.bank(over).header.length, "match over");
    let casts = |phone: &mut Phone, ms| phone.view(ms).lines;
    assert!(casts(&mut phone, 314 * MIN).iter().any(|line| line.label == "Winding in to recast"));
    assert_eq!(casts(&mut phone, over), [], "no cast is left, and none is too late");
}

/// To cast after all-out breaks the rules, and the key in the corner is the one that a cold thumb hits.
#[test]
fn after_all_out_the_wide_key_is_end_and_it_is_next_once_the_nets_are_weighed() {
    use restwater_screen::{BankState, KeyWeight};
    let mut phone = in_match();
    phone.tap(300 * MIN, &CAST).unwrap();
    let end = |phone: &mut Phone, ms| {
        let bank = phone.bank(ms);
        (bank.state, bank.keys[0].key, phone.bank_key(ms, Key::End).weight)
    };
    assert_eq!(end(&mut phone, ALL_OUT + MIN).0, BankState::Out, "the bait is still out");
    phone.tap(ALL_OUT + 2 * MIN, &WOUND_IN).unwrap();
    assert_eq!(end(&mut phone, ALL_OUT + 3 * MIN), (BankState::Over, Key::End, KeyWeight::Outline));
    phone.open();
    assert_eq!(
        end(&mut phone, ALL_OUT + 3 * MIN),
        (BankState::Over, Key::End, KeyWeight::Outline),
        "after a restart"
    );
    for (what, step) in super::clock_steps::STEPS {
        let now = super::clock_steps::stepped(step, ALL_OUT + 3 * MIN);
        let Screen::Bank(bank) = phone.app().screen(Which::Bank, &now).unwrap() else { panic!() };
        assert_eq!(bank.state, BankState::Over, "{what}");
    }
    assert_eq!(phone.bank_key(ALL_OUT + 3 * MIN, Key::Cast).weight, KeyWeight::Outline);
    assert!(phone.bank_key(ALL_OUT + 3 * MIN, Key::Cast).enabled, "for pleasure afterwards");
    let watch = phone.app().watch(&at(ALL_OUT + 3 * MIN));
    assert_eq!(
        watch.keys.iter().map(|key| key.key).collect::<Vec<_>>(),
        [Key::Undo],
        "no cast without a look"
    );
    for net in phone.app().session().unwrap().match_day.clone().unwrap().setup.rules.nets {
        let unit = restwater_log::WeightUnit::Drams;
        let weighed = MatchTap::WeighedIn { net: net.name, unit, count: 160 };
        phone.tap(ALL_OUT + 10 * MIN, &match_tap(weighed)).unwrap();
        phone.look();
    }
    assert_eq!(end(&mut phone, ALL_OUT + 11 * MIN), (BankState::Over, Key::End, KeyWeight::Solid));
    phone.tap(ALL_OUT + 12 * MIN, &CAST).unwrap();
    assert_eq!(phone.bank(ALL_OUT + 13 * MIN).state, BankState::Out);
    // A fish hooked before all-out: what is entered about it comes first, as long as fish may be landed.
    let mut phone = in_match();
    for (at_ms, action) in [(300 * MIN, CAST), (316 * MIN, BITE), (319 * MIN, LANDED)] {
        phone.tap(at_ms, &action).unwrap();
    }
    let landing =
        i64::from(phone.app().session().unwrap().match_day.clone().unwrap().setup.rules.landing_min) * MIN;
    assert_eq!(phone.bank(320 * MIN).state, BankState::Landed);
    assert_eq!(phone.bank(ALL_OUT + landing + 1_000).state, BankState::Over);
}

/// AWAY with the rods in, and all-out comes meanwhile: what is next is the weigh-in and END, not a cast.
#[test]
fn whoever_is_away_at_all_out_is_offered_no_cast() {
    let mut phone = in_match();
    phone.tap(300 * MIN, &CAST).unwrap();
    phone.tap(308 * MIN, &WOUND_IN).unwrap();
    phone.tap(310 * MIN, &Action::Away).unwrap();
    assert_eq!(phone.bank(312 * MIN).state, BankState::Away);
    for restarted in [false, true] {
        if restarted {
            phone.open();
        }
        let bank = phone.bank(ALL_OUT + MIN);
        assert_eq!(bank.advice.headline, "All out.");
        assert_eq!(bank.advice.detail, "Weigh in under Match. END closes the session.");
        assert_eq!((bank.state, bank.keys[0].key), (BankState::Over, Key::End));
        let returned = bank.keys.iter().find(|key| key.key == Key::Away).unwrap();
        assert_eq!(returned.label, "I'M BACK", "the break can still be ended");
        let watch = phone.app().watch(&at(ALL_OUT + MIN));
        assert!(watch.keys.iter().all(|key| key.key != Key::Cast), "{:?}", watch.keys);
        assert_eq!(watch.next, None);
    }
}

/// Once the bait is to come in, no minute is drawn until which it should be held, and no rod is to be recast first.
#[test]
fn after_all_out_the_strip_has_no_band_and_no_rod_is_due_first() {
    let mut phone = with_rods(2);
    phone.tap(2_000, &match_tap(MatchTap::Rule { rule: RuleTap::Begin })).unwrap();
    for cast in 0..6 {
        let splash = (20 + 20 * cast) * MIN;
        phone.tap(splash, &CAST).unwrap();
        phone.tap(splash + 8 * MIN, &BITE).unwrap();
        phone.tap(splash + 9 * MIN, &LANDED).unwrap();
    }
    phone.tap(310 * MIN, &CAST).unwrap();
    phone.tap(311 * MIN, &Action::Cast { rod: 2 }).unwrap();
    let drawn = |phone: &mut Phone, ms| {
        let bank = phone.bank(ms);
        let strip = bank.strip;
        let band = strip.hold_min.is_some() || strip.recast_min.is_some() || strip.window_min.is_some();
        (band, bank.rods.iter().any(|rod| rod.first))
    };
    assert_eq!(drawn(&mut phone, 312 * MIN), (true, true));
    assert_eq!(phone.bank(ALL_OUT + MIN).advice.headline, "All out: wind in.");
    assert_eq!(drawn(&mut phone, ALL_OUT + MIN), (false, false));
    phone.tap(ALL_OUT + 2 * MIN, &WOUND_IN).unwrap();
    assert_eq!(drawn(&mut phone, ALL_OUT + 3 * MIN), (false, false));
    phone.tap(ALL_OUT + 4 * MIN, &Action::WoundIn { rod: 2 }).unwrap();
    assert_eq!(drawn(&mut phone, ALL_OUT + 5 * MIN), (false, false));
}

/// The bait of the other rod is still out: nothing is to be cast with the one that is in, and END would leave that bait in the water.
#[test]
fn after_all_out_no_cast_is_offered_while_another_bait_is_to_be_wound_in() {
    let mut phone = with_rods(2);
    phone.tap(2_000, &match_tap(MatchTap::Rule { rule: RuleTap::Begin })).unwrap();
    phone.tap(300 * MIN, &CAST).unwrap();
    phone.tap(301 * MIN, &Action::Cast { rod: 2 }).unwrap();
    phone.tap(312 * MIN, &WOUND_IN).unwrap();
    let casts = |phone: &mut Phone, ms| {
        let lock = phone.app().watch(&at(ms)).keys.iter().any(|key| key.key == Key::Cast);
        let bank = phone.bank(ms).keys[..2].iter().any(|key| key.key == Key::Cast);
        (bank, lock)
    };
    assert_eq!(casts(&mut phone, 313 * MIN), (true, true));
    assert_eq!(casts(&mut phone, ALL_OUT + MIN), (false, false));
    let bank = phone.bank(ALL_OUT + MIN);
    assert_eq!(bank.advice.headline, "All out: wind in rod 2.");
    let solid = bank.keys.iter().any(|key| key.weight == restwater_screen::KeyWeight::Solid);
    assert!(!solid, "END comes after the bait");
    phone.tap(ALL_OUT + MIN, &Action::ChooseRod { rod: 2 }).unwrap();
    assert_eq!(casts(&mut phone, ALL_OUT + 2 * MIN), (false, false), "it is to be wound in");
    phone.tap(ALL_OUT + 3 * MIN, &Action::WoundIn { rod: 2 }).unwrap();
    assert_eq!(casts(&mut phone, ALL_OUT + 4 * MIN), (false, false));
}

/// Hooked before all-out and landed after it: its details can be entered, but the lock screen has no key that would cast again.
#[test]
fn the_lock_screen_offers_no_cast_for_a_fish_that_was_landed_after_all_out() {
    let mut phone = in_match();
    for (ms, action) in [(300 * MIN, CAST), (316 * MIN, BITE), (ALL_OUT + 2 * MIN, LANDED)] {
        phone.tap(ms, &action).unwrap();
    }
    let now = ALL_OUT + 3 * MIN;
    assert_eq!(phone.bank(now).state, BankState::Landed);
    let keys: Vec<Key> = phone.app().watch(&at(now)).keys.iter().map(|key| key.key).collect();
    assert_eq!(keys, [Key::Undo]);
}
