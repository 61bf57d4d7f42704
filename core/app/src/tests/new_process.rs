//! What a new process shows and does: the phone ends the app's process when it likes, and the angler does not notice.

use super::rods::with_rods;
use super::*;
use restwater_log::{OtherPeg, Side};
use restwater_screen::{BenchTap, BookTap, FeedTap, FishTap, MatchTap, PlanTap};
use restwater_session::{NotNow, fold};

/// Two rods out, the second one chosen.
fn second_chosen() -> Phone {
    let mut phone = with_rods(2);
    phone.tap(MIN, &Action::Cast { rod: 1 }).unwrap();
    phone.tap(2 * MIN, &Action::Cast { rod: 2 }).unwrap();
    phone.tap(3 * MIN, &Action::ChooseRod { rod: 2 }).unwrap();
    phone
}

fn watched(phone: &mut Phone, ms: i64) -> u8 {
    phone.app().watch(&at(ms)).rod
}

#[test]
fn the_chosen_rod_stays_chosen() {
    let mut phone = second_chosen();
    phone.open();
    assert_eq!(watched(&mut phone, 4 * MIN), 2);
    phone.tap(5 * MIN, &Action::ChooseRod { rod: 1 }).unwrap();
    phone.open();
    assert_eq!(watched(&mut phone, 6 * MIN), 1);
}

#[test]
fn a_new_session_begins_with_the_first_rod() {
    let mut phone = second_chosen();
    phone.tap(4 * MIN, &Action::EndSession).unwrap();
    phone.tap(5 * MIN, &START).unwrap();
    phone.open();
    assert_eq!(watched(&mut phone, 6 * MIN), 1);
    // The session before is the current one again: so is its rod.
    phone.tap(7 * MIN, &Action::Undo).unwrap();
    phone.tap(8 * MIN, &Action::Undo).unwrap();
    phone.open();
    assert_eq!(watched(&mut phone, 9 * MIN), 2);
}

/// A key that was shown for a rod before the process ended.
fn outside(phone: &mut Phone, ms: i64, key: Key, rod: u8) -> Result<Update, AppError> {
    phone.app().act_outside(key, Some(rod), &at(ms))
}

#[test]
fn a_key_outside_the_app_is_for_the_rod_that_it_was_shown_for() {
    let mut phone = second_chosen();
    phone.tap(4 * MIN, &Action::ChooseRod { rod: 1 }).unwrap();
    phone.open();
    assert!(outside(&mut phone, 5 * MIN, Key::Bite, 2).unwrap().changed);
    assert_eq!(watched(&mut phone, 6 * MIN), 2, "the keys are those of the fish");
    assert!(outside(&mut phone, 7 * MIN, Key::Lost, 2).unwrap().changed);
    assert!(outside(&mut phone, 8 * MIN, Key::WoundIn, 1).unwrap().changed);
    // The phone's button and a voice name no rod.
    assert!(phone.app().act_outside(Key::Cast, None, &at(9 * MIN)).unwrap().changed);
    assert_eq!(phone.undoes().as_deref(), Some("cast 22:22"));
}

#[test]
fn a_key_outside_the_app_that_is_not_offered_is_refused_with_the_reason() {
    let mut phone = second_chosen();
    let mut refused = |minute, key, rod| {
        let before = phone.app().ops().len();
        let error = outside(&mut phone, minute * MIN, key, rod).unwrap_err();
        assert_eq!((error.kind(), phone.app().ops().len()), (ErrorKind::NotNow, before));
        phone.app().message(&error)
    };
    assert_eq!(refused(4, Key::Landed, 1), "No fish is on rod 1. Tap BITE first.");
    assert_eq!(refused(5, Key::Away, 2), "You are not away. Tap AWAY first.", "it only ends a break");
    assert_eq!(refused(6, Key::Cast, 3), "There is no rod 3. This session has 2.");
    outside(&mut phone, 7 * MIN, Key::Bite, 2).unwrap();
    let second = outside(&mut phone, 7 * MIN + 400, Key::Bite, 2).unwrap();
    assert!(second.repeated && !second.changed, "a cold thumb's second tap is no fault");
    let mut refused = |minute, key, rod| {
        let error = outside(&mut phone, minute * MIN, key, rod).unwrap_err();
        phone.app().message(&error)
    };
    assert_eq!(refused(8, Key::Cast, 2), "A fish is on rod 2. Tap LANDED, LOST or MISSED first.");
    phone.tap(10 * MIN, &Action::EndSession).unwrap();
    let error = outside(&mut phone, 11 * MIN, Key::Bite, 2).unwrap_err();
    assert_eq!(phone.app().message(&error), "No session is open. Start one first.");
    let error = outside(&mut phone, 12 * MIN, Key::Start, 2).unwrap_err();
    assert_eq!(error.kind(), ErrorKind::BadInput, "no key of the lock screen");
}

/// A new process, to which the shell gives back what the screens were about.
fn restored(phone: &mut Phone) -> bool {
    let subject = phone.app().subject().unwrap();
    phone.open();
    phone.app().restore_subject(&subject).unwrap()
}

#[test]
fn what_is_typed_in_the_book_goes_to_the_session_that_was_opened() {
    let mut phone = started();
    let first = phone.app().session().unwrap().id;
    phone.tap(MIN, &Action::EndSession).unwrap();
    phone.tap(20 * MIN, &START).unwrap();
    phone.tap(21 * MIN, &Action::Book { tap: BookTap::Open { session: first } }).unwrap();
    assert!(restored(&mut phone));
    phone.tap(22 * MIN, &typed(TypedInto::Plan, "begin on the far bank")).unwrap();
    let ops = phone.app().journal.store().ops_of(first).unwrap();
    assert_eq!(fold(first, &ops).next_time.len(), 1);
}

#[test]
fn the_weight_goes_to_the_fish_that_was_chosen_and_keeps_its_digits() {
    let mut phone = started();
    for minute in [1, 11, 21] {
        phone.tap(minute * MIN, &CAST).unwrap();
        phone.tap((minute + 5) * MIN, &BITE).unwrap();
        phone.tap((minute + 6) * MIN, &LANDED).unwrap();
    }
    let fish = |tap| Action::Fish { cast: None, tap };
    phone.tap(40 * MIN, &fish(FishTap::Meant { back: 1 })).unwrap();
    phone.tap(41 * MIN, &fish(FishTap::Digit { digit: 3 })).unwrap();
    let pad = |phone: &mut Phone| phone.app().screen(Which::Weight, &at(42 * MIN)).unwrap();
    let before = pad(&mut phone);
    assert!(restored(&mut phone));
    assert_eq!(pad(&mut phone), before);
    phone.tap(43 * MIN, &fish(FishTap::Weighed)).unwrap();
    let caught = restwater_session::catch(phone.app().session().unwrap());
    assert_eq!(caught.iter().map(|fish| fish.weight.is_some()).collect::<Vec<_>>(), [false, true, false]);
}

#[test]
fn the_typed_position_of_the_peg_and_the_feed_by_hand_stay() {
    let mut phone = started();
    phone.tap(MIN, &typed(TypedInto::PegLatitude, "52.1")).unwrap();
    phone.tap(2 * MIN, &Action::Feed { tap: FeedTap::Digit { digit: 7 } }).unwrap();
    let seen = |phone: &mut Phone| {
        [Which::Swim, Which::FeedWeight].map(|which| phone.app().screen(which, &at(3 * MIN)).unwrap())
    };
    let before = seen(&mut phone);
    assert!(restored(&mut phone));
    assert_eq!(seen(&mut phone), before);
}

#[test]
fn what_can_not_be_meant_any_more_is_not_restored() {
    let mut phone = started();
    let first = phone.app().session().unwrap().id;
    assert!(!phone.app().restore_subject("").unwrap());
    phone.tap(MIN, &Action::EndSession).unwrap();
    let of_the_first = phone.app().subject().unwrap();
    phone.tap(20 * MIN, &START).unwrap();
    assert!(!phone.app().restore_subject(&of_the_first).unwrap(), "the screens are about another session");
    phone.tap(21 * MIN, &Action::Book { tap: BookTap::Open { session: first } }).unwrap();
    let opened = phone.app().subject().unwrap().replace(&first.to_string(), &Uuid::from_u128(7).to_string());
    assert!(!phone.app().restore_subject(&opened).unwrap(), "the opened session is gone");
    assert_eq!(phone.app().subject().unwrap().matches(&first.to_string()).count(), 1, "nothing has changed");
}

/// A shell keeps texts that were not sent by this: the same for the same place, another one for another place.
#[test]
fn a_text_is_about_the_session_or_the_day_that_it_would_be_written_to() {
    let mut phone = started();
    let first = phone.app().session().unwrap().id;
    let about = |phone: &mut Phone, which| phone.app().about(which, &at(30 * MIN));
    let book = about(&mut phone, Which::Book);
    phone.tap(MIN, &Action::EndSession).unwrap();
    assert_eq!(about(&mut phone, Which::Book), book, "the page still shows it");
    phone.tap(20 * MIN, &START).unwrap();
    assert_ne!(about(&mut phone, Which::Book), book);
    assert_ne!(about(&mut phone, Which::Conditions), book);
    phone.tap(21 * MIN, &Action::Book { tap: BookTap::Open { session: first } }).unwrap();
    assert_eq!(about(&mut phone, Which::Book), book);
    assert_ne!(about(&mut phone, Which::Conditions), book);
    let days = at(0).wall_ms / 86_400_000;
    let bench = about(&mut phone, Which::Bench);
    phone.tap(22 * MIN, &Action::Plan { tap: PlanTap::Day { day: days as i32 + 5 } }).unwrap();
    assert_ne!(about(&mut phone, Which::Bench), bench);
}

#[test]
fn each_page_of_the_plan_names_its_day() {
    let mut phone = Phone::new();
    let days = at(0).wall_ms / 86_400_000;
    phone.tap(0, &Action::Plan { tap: PlanTap::Day { day: days as i32 + 5 } }).unwrap();
    for set in [false, true] {
        if set {
            phone.tap(MIN, &Action::Plan { tap: PlanTap::Bearing { cdeg: 500 } }).unwrap();
        }
        for language in ["en-GB", "de-DE", "fr-FR"] {
            phone.app().set_language(language);
            let Screen::Bench(bench) = phone.app().screen(Which::Bench, &at(2 * MIN)).unwrap() else {
                panic!()
            };
            let leaf = |id: &str| bench.leaves.iter().find(|leaf| leaf.id == id).unwrap();
            let day = &leaf("plan").rows[0].value;
            for page in ["plan-pegs", "plan-start", "plan-rig-1"] {
                assert!(leaf(page).says.contains(day.as_str()), "{page}: {} of {day}", leaf(page).says);
            }
        }
    }
}

/// The first tap has to start the process and seems to do nothing, so it is tapped once more a second later.
#[test]
fn the_key_that_ends_a_break_begins_none_when_it_is_tapped_again() {
    let mut phone = started();
    phone.tap(MIN, &Action::Away).unwrap();
    phone.app().act_outside(Key::Away, Some(1), &at(10 * MIN)).unwrap();
    let error = phone.app().act_outside(Key::Away, Some(1), &at(10 * MIN + 1_000)).unwrap_err();
    assert!(matches!(error, AppError::NotNow(NotNow::NotAway)), "{error:?}");
    assert!(phone.app().session().unwrap().away().is_none());
}

/// A backup brings back a newer session of two rods, while the second rod of the older one was chosen.
#[test]
fn the_rod_chosen_is_one_of_the_session_that_a_restore_shows() {
    let mut phone = second_chosen();
    phone.tap(4 * MIN, &Action::EndSession).unwrap();
    phone.tap(5 * MIN, &START).unwrap();
    let file = phone.all_of_it(6 * MIN);
    let mut old = second_chosen();
    old.take(&file, 7 * MIN);
    assert_eq!(watched(&mut old, 8 * MIN), 1, "{:?}", old.app().session().unwrap().id);
}

/// A neighbour's net must not be logged as the angler's own, nor one hooklength as another.
#[test]
fn what_is_on_the_scales_and_on_the_bench_stays() {
    let mut phone = super::match_day::in_match();
    let peg = OtherPeg { side: Side::Left, place: 2 };
    let taps = [
        MatchTap::Section { left: 2, right: 2 },
        MatchTap::ScalesPeg { peg },
        MatchTap::ScalesDigit { digit: 8 },
    ];
    for (second, tap) in (20_000..).zip(taps) {
        phone.tap(second * 1_000, &Action::Match { tap }).unwrap();
    }
    phone.bench(20_010_000, BenchTap::Length { tenth_mm: 3_048 }).unwrap();
    let seen = |phone: &mut Phone| (phone.view(20_020_000).weigh_in, phone.leaves(Which::Bench, 20_020_000));
    let before = seen(&mut phone);
    assert!(restored(&mut phone));
    let after = seen(&mut phone);
    assert_eq!(after, before);
    let scales = after.0.expect("the weigh-in");
    assert!(scales.title.contains("2nd peg left"), "{}", scales.title);
    // A shell of an earlier version kept less.
    let mut kept: serde_json::Value = serde_json::from_str(&phone.app().subject().unwrap()).unwrap();
    for name in ["scales", "bench", "book", "casts", "files"] {
        kept.as_object_mut().unwrap().remove(name).unwrap();
    }
    assert!(phone.app().restore_subject(&kept.to_string()).unwrap());
}
