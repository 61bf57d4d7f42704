//! Named cases and laws of the fold.

mod any_day;

use super::catch;
use super::waits::{all_waits_ms, waits_of_cast};
use super::written::{SESSION, Written, second};
use super::{DoubtKind, EndCause, Rhythm, RodState, Session, check, fold, rhythm, waits_of};
use any_day::{any_day, any_payload};
use proptest::prelude::*;
use restwater_log::{
    FishWeight, Op, Payload, Rig, WeightUnit, canonical_bytes, effective, history, op_from_bytes, sorted,
};

const CAST: Payload = Payload::Cast { rod: 1 };
const BITE: Payload = Payload::Bite { rod: 1 };
const WOUND_IN: Payload = Payload::WoundIn { rod: 1 };
const LANDED: Payload = Payload::Landed { rod: 1, fish: None };

fn of(day: &Written) -> Session {
    fold(SESSION, &day.ops)
}

fn kinds(session: &Session) -> Vec<DoubtKind> {
    session.doubts.iter().map(|d| d.kind).collect()
}

#[test]
fn a_bite_ends_the_wait_and_the_outcome_ends_the_cast() {
    let mut day = Written::new(1);
    day.log(60, CAST);
    day.log(60 + 840, BITE);
    day.log(60 + 900, LANDED);
    let session = of(&day);
    assert_eq!(session.casts[0].end.as_ref().unwrap().cause, EndCause::Landed { fish: None });
    assert_eq!(
        waits_of(&session).iter().map(|w| (w.minutes(), w.is_bite())).collect::<Vec<_>>(),
        [(14.0, true)]
    );
    assert!(kinds(&session).is_empty());
}

#[test]
fn a_forgotten_end_is_closed_by_the_next_cast_and_marked() {
    let mut day = Written::new(1);
    day.log(60, CAST);
    day.log(60 + 720, CAST);
    let session = of(&day);
    assert_eq!(session.casts[0].end.as_ref().unwrap().cause, EndCause::EndNotSeen);
    assert_eq!(kinds(&session), [DoubtKind::EndNotSeen]);
    assert_eq!(waits_of(&session), [], "an end that was not seen says nothing of the bite");
    assert!(matches!(session.rods[0].state, RodState::Out { cast: 1 }));
}

#[test]
fn a_bite_and_then_a_cast_leaves_the_outcome_unseen() {
    let mut day = Written::new(1);
    day.log(60, CAST);
    day.log(600, BITE);
    day.log(900, CAST);
    let session = of(&day);
    assert_eq!(session.casts[0].end.as_ref().unwrap().cause, EndCause::OutcomeNotSeen);
    assert!(waits_of(&session)[0].is_bite());
}

#[test]
fn rigs_carry_over_and_each_rod_has_its_own() {
    let mut day = Written::new(2);
    let rig = Rig { bait: Some("bread".into()), popup_mm: Some(450), ..Rig::default() };
    day.log(10, Payload::RigSet { rod: 2, rig: rig.clone() });
    day.log(60, CAST);
    day.log(70, Payload::Cast { rod: 2 });
    day.log(600, Payload::WoundIn { rod: 2 });
    day.log(700, Payload::Cast { rod: 2 });
    let session = of(&day);
    assert_eq!(session.casts[0].rig, Rig::default());
    assert_eq!(session.casts[2].rig, rig);
    assert!(matches!(session.rods[0].state, RodState::Out { cast: 0 }));
}

#[test]
fn a_time_set_back_moves_the_bite_and_is_marked() {
    let mut day = Written::new(1);
    day.log(60, CAST);
    let bite = day.log(60 + 960, BITE);
    day.amend(60 + 970, bite, Payload::TimeSet { back_s: 60 });
    day.amend(60 + 980, bite, Payload::TimeSet { back_s: 120 });
    let session = of(&day);
    assert_eq!(waits_of(&session)[0].minutes(), 14.0);
    assert_eq!(kinds(&session), [DoubtKind::Approximate]);
}

#[test]
fn a_wait_across_a_reboot_is_measured_by_the_wall_clock() {
    let mut day = Written::new(1);
    day.log(60, CAST);
    day.reboot();
    day.log(60 + 600, WOUND_IN);
    assert_eq!(waits_of(&of(&day))[0].minutes(), 10.0);
}

#[test]
fn an_entry_that_makes_no_sense_is_kept_as_a_doubt() {
    let mut day = Written::new(1);
    day.log(10, BITE);
    day.log(20, LANDED);
    day.log(30, WOUND_IN);
    day.log(40, CAST);
    day.log(50, BITE);
    day.log(60, BITE);
    assert_eq!(
        kinds(&of(&day)),
        [DoubtKind::NothingOut, DoubtKind::NoFishOn, DoubtKind::NothingOut, DoubtKind::SecondBite]
    );
}

#[test]
fn undo_and_redo_are_read_from_the_log() {
    let mut day = Written::new(1);
    day.log(60, CAST);
    let bite = day.log(600, BITE);
    let undo = day.undo(605, &[bite]);
    assert!(matches!(of(&day).rods[0].state, RodState::Out { .. }));
    let ordered = sorted(&day.ops);
    let past = history(&ordered, day.device);
    assert_eq!(past.undo.last().unwrap().kind, "cast");
    assert_eq!(past.redo.last().map(|(entry, by)| (entry.ops.clone(), *by)), Some((vec![bite], undo)));
    day.undo(610, &[undo]);
    assert!(matches!(of(&day).rods[0].state, RodState::FishOn { .. }));
    day.undo(615, &[bite]);
    assert!(matches!(of(&day).rods[0].state, RodState::Out { .. }));
}

#[test]
fn a_corrected_payload_replaces_one_of_its_own_kind_only() {
    let mut day = Written::new(1);
    day.log(60, CAST);
    day.log(600, BITE);
    let landed = day.log(660, LANDED);
    let fish = Some(FishWeight::Weighed { unit: WeightUnit::Drams, count: 1_100 });
    day.amend(700, landed, Payload::Landed { rod: 1, fish: fish.clone() });
    assert_eq!(of(&day).casts[0].end.as_ref().unwrap().cause, EndCause::Landed { fish: fish.clone() });
    // An amendment of another kind, from this version or a later one, changes nothing and doesn't revert the
    // previous one.
    day.amend(710, landed, Payload::Lost { rod: 1 });
    day.amend(720, landed, Payload::Unknown { kind: "photographed".into(), payload: None });
    assert_eq!(of(&day).casts[0].end.as_ref().unwrap().cause, EndCause::Landed { fish });
}

#[test]
fn the_rhythm_is_a_guess_until_three_turn_rounds_were_seen() {
    let mut day = Written::new(1);
    let mut s = 0;
    for i in 0..4 {
        day.log(s, CAST);
        s += 600;
        day.log(s, WOUND_IN);
        s += 60 + 30 * i;
    }
    let default = rhythm(&of(&Written::new(1)), 2.0, 3.0);
    assert_eq!(
        default,
        Rhythm { turn_round_min: 2.0, settle_min: 0.0, bite_extra_min: 3.0, turn_rounds: 0, bites: 0 }
    );
    let learned = rhythm(&of(&day), 2.0, 3.0);
    assert_eq!((learned.turn_round_min, learned.turn_rounds), (1.5, 3));
}

/// Whether the map counts the minutes of each cast that has ended as its waits are counted.
fn counted_alike(session: &Session) -> bool {
    session.casts.iter().filter(|cast| cast.end.is_some()).all(|cast| {
        let (from_ms, to_ms) = all_waits_ms(session, cast);
        let on_map = to_ms.unwrap().saturating_sub(from_ms).max(0) as f64 / 60_000.0;
        let waits: f64 = waits_of_cast(session, cast).iter().map(|wait| wait.minutes()).sum();
        (on_map - waits).abs() < 1e-6
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(10_000))]
    #[test]
    fn any_order_of_arrival_folds_to_the_same_session(ops in any_day(), seed in any::<u64>()) {
        let mut shuffled = ops.clone();
        shuffled.sort_by_key(|op| op.id.as_u128().wrapping_mul(u128::from(seed) | 1));
        shuffled.extend(ops.iter().take(5).cloned());
        prop_assert_eq!(fold(SESSION, &shuffled), fold(SESSION, &ops));
    }

    #[test]
    fn any_subset_folds_without_panic_and_never_counts_a_cast_twice(ops in any_day(), keep in any::<u64>()) {
        let some: Vec<Op> = ops.iter().enumerate().filter(|(i, _)| keep >> (i % 64) & 1 == 1).map(|(_, op)| op.clone()).collect();
        let session = fold(SESSION, &some);
        let lost = session.casts.iter().filter(|c| c.hooklength_lost.is_some()).count();
        prop_assert_eq!(session.losses.len(), lost, "one loss a cast");
        let mut ids: Vec<_> = session.casts.iter().map(|c| c.op).collect();
        ids.dedup();
        prop_assert_eq!(ids.len(), session.casts.len());
        let running = session.rods.iter().filter(|r| !matches!(r.state, RodState::Ready { .. })).count();
        prop_assert_eq!(session.casts.iter().filter(|c| c.end.is_none()).count(), running);
        for wait in waits_of(&session) {
            prop_assert!(wait.minutes() >= 0.0);
        }
        let landed = session.casts.iter().filter(|c| c.end.as_ref().is_some_and(|e| matches!(e.cause, EndCause::Landed { .. })));
        prop_assert_eq!(catch(&session).len(), landed.count());
        prop_assert!(counted_alike(&session));
        let mut settling = session.clone();
        (settling.setup.settle_s, settling.setup.twitch_restarts) = (45, true);
        prop_assert!(counted_alike(&settling));
        let mut nets: Vec<_> = session.scales.iter().map(|s| &s.net).collect();
        nets.sort();
        nets.dedup();
        prop_assert_eq!(nets.len(), session.scales.len());
    }

    #[test]
    fn every_op_is_read_back_from_its_canonical_bytes(ops in any_day()) {
        for op in ops {
            let bytes = canonical_bytes(&op).unwrap();
            let read = op_from_bytes(&bytes).unwrap();
            prop_assert_eq!(&read, &op);
            prop_assert_eq!(canonical_bytes(&read).unwrap(), bytes);
        }
    }

    /// One phone undoes an entry of either phone, before or after the two logs are merged: the result is the
    /// same, and as if the entry had never been written.
    #[test]
    fn undo_after_a_merge_voids_only_the_entry_it_points_at(ops in any_day(), pick in any::<prop::sample::Index>()) {
        let ordered = sorted(&ops);
        let in_force = effective(&ordered);
        prop_assume!(!in_force.is_empty());
        let target = in_force[pick.index(in_force.len())].op.id;
        let mut undoing = Written::by(0xD1);
        undoing.ops = ops.iter().filter(|op| op.device == undoing.device).cloned().collect();
        undoing.undo(100_000, &[target]);
        let others = || ops.iter().filter(|op| op.device != undoing.device);
        let merged: Vec<Op> = undoing.ops.iter().chain(others()).cloned().collect();
        let other_way: Vec<Op> = others().chain(&undoing.ops).cloned().collect();
        let without: Vec<Op> = ops.iter().filter(|op| op.id != target).cloned().collect();
        prop_assert_eq!(fold(SESSION, &merged), fold(SESSION, &other_way));
        prop_assert_eq!(fold(SESSION, &merged), fold(SESSION, &without));
    }

    #[test]
    fn undo_then_redo_is_as_if_nothing_happened(ops in any_day(), pick in any::<prop::sample::Index>()) {
        let mut day = Written::by(0xD3);
        day.ops = ops.clone();
        let ordered = sorted(&ops);
        let in_force = effective(&ordered);
        prop_assume!(!in_force.is_empty());
        let target = in_force[pick.index(in_force.len())].op.id;
        let undo = day.undo(100_000, &[target]);
        day.undo(100_001, &[undo]);
        prop_assert_eq!(fold(SESSION, &day.ops), fold(SESSION, &ops));
    }

    #[test]
    fn what_is_allowed_makes_no_new_doubt(payloads in proptest::collection::vec(any_payload(), 1..60)) {
        let mut day = Written::new(2);
        for (payload, s) in payloads.into_iter().zip((10..).step_by(10)) {
            let before = of(&day);
            // Mending doesn't follow the rules for taps, and a cast that is added is marked as doubtful on
            // purpose.
            let mends = matches!(payload, Payload::TimeSet { .. } | Payload::CastEndSet { .. } | Payload::CastAdded { .. } | Payload::Confirmed);
            if mends || check(Some(&before), &payload).is_err() {
                continue;
            }
            day.log(s, payload);
            let odd = |s: &Session| s.doubts.iter().filter(|d| !matches!(d.kind, DoubtKind::EndNotSeen | DoubtKind::OutcomeNotSeen | DoubtKind::LongGap | DoubtKind::StillOut | DoubtKind::LateEnd)).count();
            prop_assert_eq!(odd(&of(&day)), odd(&before));
        }
    }
}

#[test]
fn moments_of_the_day_are_a_second_apart() {
    assert_eq!(second(1).since(&second(0)).ms, 1_000);
}
