use super::*;
use crate::fold;
use crate::written::{SESSION, Written, stamp};
use proptest::prelude::*;
use restwater_log::{MatchSetup, Moment, Op, Payload, Reach, SessionSetup, Weight, WeightUnit};
use uuid::Uuid;

const CAST: Payload = Payload::Cast { rod: 1 };

fn wraps(hundredths: u32) -> Reach {
    Reach::Wraps { hundredths, span_tenth_mm: 36_576 }
}

fn bread() -> Rig {
    Rig { bait: Some("bread".into()), popup_mm: Some(457), ..Rig::default() }
}

fn start_at(hundredths: u32) -> PlanSpot {
    PlanSpot { mark: None, bearing_cdeg: None, reach: Some(wraps(hundredths)) }
}

fn taken(lines: Vec<PlanLine>) -> Payload {
    Payload::PlanTaken { day: 19_675, lines }
}

fn whole_plan() -> Payload {
    taken(vec![
        PlanLine::Peg { peg: "14".into(), note: "bread to the island".into() },
        PlanLine::Peg { peg: "22".into(), note: String::new() },
        PlanLine::Rig { rod: 1, rig: bread() },
        PlanLine::Start { spot: start_at(1_400) },
        PlanLine::Leave { minutes: 20 },
        PlanLine::Move { at: MoveAt::AllIn { minutes: 90 } },
    ])
}

/// A day at peg 14 that follows the whole plan.
fn planned() -> Written {
    let mut day = Written::by(0xD1);
    let setup = SessionSetup { peg: Some("14".into()), ..SessionSetup::default() };
    day.log(0, Payload::SessionStarted(setup));
    day.log(0, whole_plan());
    day
}

fn kinds(day: &Written, s: i64) -> Vec<&'static str> {
    let session = fold(SESSION, &day.ops);
    let kind = |due: &PlanDue| match due {
        PlanDue::Peg { .. } => "peg",
        PlanDue::Rig { .. } => "rig",
        PlanDue::Start { .. } => "start",
        PlanDue::Leave { .. } => "leave",
        PlanDue::Move { .. } => "move",
    };
    plan_due(&session, &stamp(s)).iter().map(kind).collect()
}

#[test]
fn each_line_is_due_at_its_time_but_not_while_a_fish_is_on() {
    let mut day = planned();
    assert_eq!(kinds(&day, 60), ["peg", "rig", "start"]);
    day.log(70, Payload::RigSet { rod: 1, rig: Rig { hook_size: Some(12), ..bread() } });
    assert_eq!(kinds(&day, 80), ["peg", "start"], "what was planned of the rig is on the line");
    day.log(100, CAST);
    assert_eq!(kinds(&day, 200), ["leave"]);
    day.log(600, Payload::Bite { rod: 1 });
    assert_eq!(kinds(&day, 610), [""; 0]);
    day.log(660, Payload::Lost { rod: 1 });
    assert_eq!(kinds(&day, 700), [""; 0], "nothing is out");
    for s in [1_000, 2_000, 3_000] {
        day.log(s, CAST);
    }
    assert_eq!(kinds(&day, 3_100), [""; 0], "the fourth cast is no first one");
    assert_eq!(kinds(&day, 90 * 60 - 1), [""; 0]);
    assert_eq!(kinds(&day, 90 * 60), ["move"]);
    assert_eq!(kinds(&day, 120 * 60), [""; 0], "it has been read by then");
    day.log(95 * 60, Payload::SessionEnded);
    assert_eq!(kinds(&day, 96 * 60), [""; 0]);
}

#[test]
fn another_peg_has_no_peg_line_and_a_dropped_plan_has_no_lines() {
    let mut day = planned();
    let setup = SessionSetup { peg: Some("7".into()), ..SessionSetup::default() };
    day.log(10, Payload::SessionStarted(setup));
    assert_eq!(kinds(&day, 60), ["rig", "start"]);
    let dropped = day.log(70, Payload::PlanDropped);
    assert_eq!(kinds(&day, 80), [""; 0]);
    assert!(plan_outcomes(&fold(SESSION, &day.ops)).is_empty());
    day.undo(90, &[dropped]);
    assert_eq!(kinds(&day, 95), ["rig", "start"]);
}

#[test]
fn a_cast_into_water_that_is_kept_back_by_then_counts_as_the_move() {
    let mut day = planned();
    let spot = Spot { mark: None, bearing_cdeg: 0, reach: wraps(1_400), clipped: true };
    day.log(10, Payload::SpotSet { rod: 1, spot });
    day.log(100, CAST);
    let kept =
        day.log(200, Payload::KeptBack { from_cdeg: -500, to_cdeg: 500, from_cm: 5_000, to_cm: 6_000 });
    assert_eq!(kinds(&day, 90 * 60), ["leave", "move"], "the cast before it was kept back is none");
    day.log(91 * 60, Payload::Released { kept });
    day.log(92 * 60, CAST);
    assert_eq!(kinds(&day, 93 * 60), ["leave"]);
    let session = fold(SESSION, &day.ops);
    let outcomes = plan_outcomes(&session);
    let moved = outcomes.iter().find_map(|outcome| match outcome {
        PlanOutcome::Move { at_ms, first, .. } => {
            Some((*at_ms / MINUTE_MS, first.map(|at| at.at_ms / MINUTE_MS)))
        }
        _ => None,
    });
    assert_eq!(moved, Some((90, Some(92))));
}

/// 20 wraps of 2 m end where the square behind begins, and the map has the cast in that one.
#[test]
fn a_cast_on_the_far_or_right_border_of_kept_back_water_is_no_move() {
    for (bearing_cdeg, cm, moved) in [(0, 4_000, false), (500, 3_500, false), (-500, 3_000, true)] {
        let mut day = planned();
        day.log(10, Payload::KeptBack { from_cdeg: -500, to_cdeg: 500, from_cm: 3_000, to_cm: 4_000 });
        let spot = Spot { mark: None, bearing_cdeg, reach: Reach::Metres { cm }, clipped: true };
        day.log(20, Payload::SpotSet { rod: 1, spot });
        day.log(100, CAST);
        assert_eq!(kinds(&day, 90 * 60).contains(&"move"), !moved, "{bearing_cdeg}, {cm} cm");
        let session = fold(SESSION, &day.ops);
        let into = |outcome: &PlanOutcome| matches!(outcome, PlanOutcome::Move { first: Some(_), .. });
        assert_eq!(plan_outcomes(&session).iter().any(into), moved, "{bearing_cdeg}, {cm} cm");
    }
}

#[test]
fn the_plan_is_compared_with_the_day() {
    let mut day = planned();
    let spot = |hundredths| Spot { mark: None, bearing_cdeg: 0, reach: wraps(hundredths), clipped: true };
    day.log(5, Payload::RigSet { rod: 1, rig: Rig { bait: Some("corn".into()), ..Rig::default() } });
    day.log(10, Payload::SpotSet { rod: 1, spot: spot(1_600) });
    day.log(100, CAST);
    day.log(100 + 12 * 60, Payload::WoundIn { rod: 1 });
    day.log(1_000, CAST);
    let session = fold(SESSION, &day.ops);
    let outcomes = plan_outcomes(&session);
    let corn = &session.casts[0].rig;
    assert_eq!(
        outcomes,
        [
            PlanOutcome::Pegs { liked: vec!["14", "22"], drawn: Some("14"), got: true },
            PlanOutcome::Rig { rod: 1, rig: &bread(), first: Some(corn), kept: false },
            PlanOutcome::Start { spot: &start_at(1_400), first: Some(&session.casts[0]), kept: false },
            PlanOutcome::Leave { minutes: 20, left_min: vec![12] },
            PlanOutcome::Move { at_ms: 90 * MINUTE_MS, offset_min: 0, first: None },
        ]
    );
    day.log(10, Payload::SpotSet { rod: 1, spot: spot(1_400) });
    assert!(
        !matches!(plan_outcomes(&session)[2], PlanOutcome::Start { kept: true, .. }),
        "the first cast counts"
    );
}

#[test]
fn a_planned_start_at_a_mark_is_kept_by_a_cast_at_the_mark_of_that_name() {
    let mut day = Written::new(1);
    let mark = day.log(1, Payload::MarkSet { name: "Gate".into(), bearing_cdeg: 300 });
    let spot = PlanSpot { mark: Some("gate ".into()), bearing_cdeg: None, reach: None };
    day.log(2, taken(vec![PlanLine::Start { spot }]));
    let aimed = Spot { mark: Some(mark), bearing_cdeg: 300, reach: wraps(900), clipped: false };
    day.log(3, Payload::SpotSet { rod: 1, spot: aimed });
    day.log(4, CAST);
    let session = fold(SESSION, &day.ops);
    assert!(matches!(plan_outcomes(&session)[0], PlanOutcome::Start { kept: true, .. }));
}

/// The day begins at 22:13:20 by the phone.
#[test]
fn a_time_of_day_is_after_the_start_or_shortly_before_it() {
    let move_min = |minute| {
        let mut day = Written::new(1);
        day.log(1, taken(vec![PlanLine::Move { at: MoveAt::Clock { minute } }]));
        let session = fold(SESSION, &day.ops);
        let start = session.started.as_ref().unwrap();
        move_ms(&session, MoveAt::Clock { minute }, start).unwrap()
    };
    let second = 1_000;
    assert_eq!(move_min(22 * 60 + 30), 16 * MINUTE_MS + 40 * second);
    assert_eq!(move_min(60), 2 * HOUR_MS + 46 * MINUTE_MS + 40 * second, "of the next day");
    assert_eq!(move_min(22 * 60), -13 * MINUTE_MS - 20 * second, "it was late already");
}

#[test]
fn in_a_match_minutes_count_from_all_in_and_times_of_day_are_the_organisers() {
    let mut day = Written::new(1);
    let begun_ms = day.ops[0].at.wall_ms;
    let (all_in_ms, all_out_ms) = (begun_ms + HOUR_MS, begun_ms + 5 * HOUR_MS);
    day.log(
        5,
        Payload::MatchSet(MatchSetup {
            all_in_ms,
            all_out_ms,
            offset_ms: 60_000,
            unit: WeightUnit::Drams,
            mark: Weight::Drams(16),
            rules: restwater_log::MatchRules::default(),
            classes: Vec::new(),
        }),
    );
    let session = fold(SESSION, &day.ops);
    let start = session.started.as_ref().unwrap();
    let all_in = HOUR_MS - MINUTE_MS;
    assert_eq!(move_ms(&session, MoveAt::AllIn { minutes: 90 }, start), Some(all_in + 90 * MINUTE_MS));
    assert_eq!(
        move_ms(&session, MoveAt::Clock { minute: 22 * 60 + 30 }, start),
        Some(15 * MINUTE_MS + 40_000),
        "the organiser's clock is a minute ahead"
    );
}

fn any_line() -> impl Strategy<Value = PlanLine> {
    prop_oneof![
        ("[12]", "[ab]{0,2}").prop_map(|(peg, note)| PlanLine::Peg { peg, note }),
        (1..4_u8, 8..12_u8).prop_map(|(rod, size)| PlanLine::Rig {
            rod,
            rig: Rig { hook_size: Some(size), ..Rig::default() }
        }),
        (1_000..1_500_u32).prop_map(|n| PlanLine::Start { spot: start_at(n) }),
        (1..60_u16).prop_map(|minutes| PlanLine::Leave { minutes }),
        (0..200_u16).prop_map(|minutes| PlanLine::Move { at: MoveAt::AllIn { minutes } }),
        (0..1_440_u16).prop_map(|minute| PlanLine::Move { at: MoveAt::Clock { minute } }),
    ]
}

fn any_entry() -> impl Strategy<Value = Payload> {
    let rod = 1..3_u8;
    prop_oneof![
        3 => prop::collection::vec(any_line(), 0..5).prop_map(taken),
        1 => Just(Payload::PlanDropped),
        4 => rod.clone().prop_map(|rod| Payload::Cast { rod }),
        2 => rod.clone().prop_map(|rod| Payload::Bite { rod }),
        2 => rod.clone().prop_map(|rod| Payload::Lost { rod }),
        2 => rod.prop_map(|rod| Payload::WoundIn { rod }),
        1 => Just(Payload::KeptBack { from_cdeg: -500, to_cdeg: 500, from_cm: 100, to_cm: 9_000 }),
    ]
}

proptest! {
    /// What is due is a function of the log and the moment. It depends neither on the order in which the
    /// entries came nor on what the wall clock has shown since the start.
    #[test]
    fn what_is_due_depends_only_on_the_log_and_the_moment(
        entries in prop::collection::vec((any_entry(), 1..1_500_i64, -900_000_000_000..900_000_000_000_i64), 1..20),
        by_second in any::<Vec<bool>>(),
        later_s in 0..8_000_i64,
        moved_ms in -900_000_000_000..900_000_000_000_i64,
    ) {
        let mut day = Written::new(2);
        let mut moved = Written::new(2);
        let mut s = 0;
        for (entry, after, jump) in entries {
            s += after;
            day.log(s, entry.clone());
            let at = crate::written::second(s);
            moved.write(Moment { wall_ms: at.wall_ms.saturating_add(jump), ..at }, entry, None, None);
        }
        let now = stamp(s + later_s);
        let session = fold(SESSION, &day.ops);
        let due = plan_due(&session, &now);
        prop_assert_eq!(&due, &plan_due(&session, &now));
        let (mut first, mut second): (Vec<Op>, Vec<Op>) = (Vec::new(), Vec::new());
        for (i, op) in day.ops.iter().enumerate() {
            let side = if by_second.get(i).copied().unwrap_or(i % 2 == 0) { &mut second } else { &mut first };
            side.push(op.clone());
        }
        second.reverse();
        second.extend(first);
        let shuffled = fold(SESSION, &second);
        prop_assert_eq!(&due, &plan_due(&shuffled, &now));
        prop_assert_eq!(plan_outcomes(&session), plan_outcomes(&shuffled));
        let mut shown = now.clone();
        let wall_ms = &mut std::sync::Arc::make_mut(&mut shown.shown).wall_ms;
        *wall_ms = wall_ms.saturating_add(moved_ms);
        let by_moved_clock = fold(SESSION, &moved.ops);
        prop_assert_eq!(&due, &plan_due(&by_moved_clock, &shown), "a clock that is set brings nothing early");
        if session.rods.iter().any(|rod| matches!(rod.state, RodState::FishOn { .. })) {
            prop_assert!(due.is_empty());
        }
    }

    /// A later line replaces the same line before it, and nothing else.
    #[test]
    fn the_latest_entry_of_a_line_counts(lines in prop::collection::vec(any_line(), 0..12)) {
        let mut plan = crate::Plan::default();
        for line in &lines {
            plan.set(line);
        }
        let kept: Vec<&PlanLine> = plan.lines().collect();
        for line in &lines {
            let last = lines.iter().rev().find(|other| other.key() == line.key()).unwrap();
            prop_assert!(kept.contains(&last));
        }
        let keys: std::collections::BTreeSet<_> = lines.iter().map(PlanLine::key).collect();
        prop_assert_eq!(kept.len(), keys.len());
    }
}

#[test]
fn a_plan_taken_later_by_the_other_phone_counts() {
    let mut day = planned();
    let mut other = Written::by(0xD2);
    other.log(30, taken(vec![PlanLine::Leave { minutes: 5 }]));
    day.ops.extend(other.ops);
    let session = fold(SESSION, &day.ops);
    assert_eq!(
        session.plan.as_ref().map(|plan| plan.lines.clone()),
        Some(vec![PlanLine::Leave { minutes: 5 }])
    );
    assert_ne!(session.plan.map(|plan| plan.op), Some(Uuid::nil()));
}
