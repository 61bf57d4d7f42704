//! What a plan does on its day: its rigs and its spot are on the rods, the ring is at its range, and its minutes count until
//! the record can tell.

use super::*;
use restwater_log::PlanLine;
use restwater_screen::{PlanTap, SwimKey, SwimView};

const MORNING: i64 = 12 * 60 * MIN;

fn plan(tap: PlanTap) -> Action {
    Action::Plan { tap }
}

fn bait(name: &str) -> TackleTap {
    TackleTap::Bait { name: name.into() }
}

fn swim_at(phone: &mut Phone, ms: i64) -> SwimView {
    match phone.app().screen(Which::Swim, &at(ms)).unwrap() {
        Screen::Swim(view) => view,
        other => panic!("{other:?}"),
    }
}

/// In the evening: bread on rod 1, 14 wraps, 20 minutes; in the morning START.
fn begun(rods: u8) -> Phone {
    let mut phone = Phone::new();
    let reach = Reach::Wraps { hundredths: 1_400, span_tenth_mm: 36_576 };
    let lines = [
        plan(PlanTap::Rig { rod: 1, change: bait("bread") }),
        plan(PlanTap::Rig { rod: 2, change: bait("corn") }),
        plan(PlanTap::Reach { reach }),
        plan(PlanTap::Leave { minutes: Some(20) }),
    ];
    for (s, action) in (0..).zip(lines) {
        phone.tap(s * 1_000, &action).unwrap();
    }
    let setup = SessionSetup { rods, ..SessionSetup::default() };
    phone.tap(MORNING, &Action::StartSession { setup: Some(setup) }).unwrap();
    phone
}

#[test]
fn start_puts_the_plan_on_the_rods_and_one_undo_takes_it_all_back() {
    let mut phone = begun(2);
    for restarted in [false, true] {
        if restarted {
            phone.open();
        }
        let bank = phone.bank(MORNING + MIN);
        let session = phone.app().session().unwrap();
        let baits: Vec<_> = session.rods.iter().map(|rod| rod.rig.bait.clone()).collect();
        assert_eq!(baits, [Some("bread".to_owned()), Some("corn".to_owned())]);
        let spot = session.rods[0].spot.clone().unwrap();
        assert_eq!(spot.reach, Reach::Wraps { hundredths: 1_400, span_tenth_mm: 36_576 });
        assert_eq!(session.rods[1].spot, None, "the first cast is one cast");
        let said = std::iter::once(&bank.advice.detail).chain(&bank.advice.more);
        assert!(said.clone().all(|line| !line.starts_with("Plan")), "{:?}", said.collect::<Vec<_>>());
    }
    phone.tap(MORNING + 2 * MIN, &Action::Undo).unwrap();
    assert!(phone.app().session().is_none_or(|session| !session.is_open()));
}

#[test]
fn until_the_first_cast_the_ring_lies_at_the_planned_range_and_says_so() {
    let mut phone = begun(2);
    for (rod, restarted) in [(1, false), (2, false), (1, true)] {
        if restarted {
            phone.open();
        }
        phone.tap(MORNING + MIN, &Action::ChooseRod { rod }).unwrap();
        let view = swim_at(&mut phone, MORNING + 2 * MIN);
        assert_eq!(view.headline, "Next: Straight out, 14 wraps of 12 ft (51.2 m)", "rod {rod}");
        assert!(view.why.starts_with("As you planned; "), "{}", view.why);
        let solid = |key: &&screen::SwimKeyView| key.solid;
        assert_eq!(view.keys.iter().find(solid).unwrap().key, SwimKey::CastHere);
    }
    phone.tap(MORNING + 3 * MIN, &CAST).unwrap();
    let cast = phone.app().session().unwrap().casts[0].clone();
    assert_eq!((cast.rig.bait.as_deref(), cast.spot.unwrap().bearing_cdeg), (Some("bread"), 0));
    assert!(!swim_at(&mut phone, MORNING + 4 * MIN).why.contains("planned"));
    // Who casts there by the key has that range, not the middle of its square.
    let mut other = begun(2);
    other.tap(MORNING + MIN, &Action::ChooseRod { rod: 2 }).unwrap();
    other.tap(MORNING + 2 * MIN, &Action::CastHere).unwrap();
    let rods = &other.app().session().unwrap().rods;
    assert_eq!(rods[1].spot.as_ref().map(|spot| spot.reach), rods[0].spot.as_ref().map(|spot| spot.reach));
}

#[test]
fn while_it_cannot_tell_the_plans_minutes_are_the_headline_and_casts_left_count_by_them() {
    let mut phone = begun(1);
    phone.tap(MORNING + MIN, &CAST).unwrap();
    for restarted in [false, true] {
        if restarted {
            phone.open();
        }
        let bank = phone.bank(MORNING + 10 * MIN);
        assert_eq!(bank.advice.headline, "Your plan: 20 min. Can't tell yet.");
        let said = std::iter::once(&bank.advice.detail).chain(&bank.advice.more);
        assert!(said.clone().all(|line| !line.contains("leave the first casts")), "two orders");
        assert!(said.clone().all(|line| !line.contains("30 min")), "{:?}", said.collect::<Vec<_>>());
    }
    let late = phone.bank(MORNING + 22 * MIN);
    assert_eq!(late.advice.headline, "Past the 20 min of your plan. Can't tell yet.");
    let lines = phone.app().session().unwrap().plan.as_ref().unwrap().lines.clone();
    assert!(lines.contains(&PlanLine::Leave { minutes: 20 }));
    let mut by_record = started();
    by_record.tap(MIN, &CAST).unwrap();
    assert_eq!(by_record.bank(10 * MIN).advice.headline, "Can't tell yet. Try 30 min.");
}

/// A match of five hours; the plan leaves casts 20 min, the record alone would try 30.
#[test]
fn casts_left_in_a_match_count_by_the_plan_until_the_record_can_tell() {
    let mut phone = match_day::in_match();
    let casts_left = |phone: &mut Phone, ms: i64| {
        let view = phone.view(ms);
        let line = view.lines.iter().find(|line| line.label == "Casts after this one").unwrap();
        let note = view.coming_figures.lines.iter().find(|note| note.contains("can't tell"));
        let note = note.unwrap_or_else(|| panic!("{:?}", view.coming_figures));
        (note.clone(), line.value.clone())
    };
    phone.tap(match_day::FISHING, &CAST).unwrap();
    let without = casts_left(&mut phone, match_day::FISHING + MIN);
    assert!(without.0.contains(" 30 min and then "), "{}", without.0);
    phone.tap(match_day::FISHING + 2 * MIN, &plan(PlanTap::Day { day: today() })).unwrap();
    phone.tap(match_day::FISHING + 3 * MIN, &plan(PlanTap::Leave { minutes: Some(20) })).unwrap();
    phone.tap(match_day::FISHING + 4 * MIN, &plan(PlanTap::Today { takes: true })).unwrap();
    let with = casts_left(&mut phone, match_day::FISHING + 5 * MIN);
    assert!(with.0.ends_with(" 20 min and then 20 min."), "{}", with.0);
    let most = |value: &str| value.rsplit(' ').next().unwrap().parse::<u32>().unwrap();
    assert!(most(&with.1) > most(&without.1), "{} against {}", with.1, without.1);
}

fn today() -> i32 {
    i32::try_from(at(0).local_ms().div_euclid(24 * 60 * MIN)).unwrap()
}
