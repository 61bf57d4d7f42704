//! What a version that doesn't know some kinds of entry does with a file that contains them: it keeps them
//! unread, reads the rest as always, and passes every byte on. One fixture has breaks, feed and fish that
//! show, one what other anglers land and weigh and the rule on dead fish, two have a plan: as written in
//! a kit, and as taken over by a day; and one has a club's start.
//!
//! Each is a file as written when its kinds were introduced. It must never be regenerated: it also binds this
//! version and every later one to the meaning of those entries.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use restwater_app::{App, read_day};
use restwater_exchange::{Incoming, Place, Progress, Selection, export, import, read_op_file};
use restwater_log::{ClubDays, Op, Payload, PlanLine, Side, canonical_bytes};
use restwater_match_day::weight::Weight;
use restwater_screen::{Wording, plan_words};
use restwater_session::{DoubtKind, Section, Session, fold, waits_of};
use restwater_store::Store;
use restwater_tests::importing::{imported_at, no_ids};
use restwater_tests::phone::Seeded;
use std::ops::ControlFlow;
use uuid::Uuid;

/// A file, and the kinds that the previous version doesn't know.
struct Fixture {
    file: &'static [u8],
    kinds: &'static [&'static str],
}

const BETWEEN_CASTS: Fixture = Fixture {
    file: include_bytes!("../../fixtures/between_casts.restwater.json-seq"),
    kinds: &["away", "returned", "fed", "feeder_set", "fish_shown"],
};
const OTHER_ANGLERS: Fixture = Fixture {
    file: include_bytes!("../../fixtures/other_anglers.restwater.json-seq"),
    kinds: &["other_net_told", "section_set", "match_rule_said", "neighbour_caught"],
};
const PLAN_OF_A_DAY: Fixture = Fixture {
    file: include_bytes!("../../fixtures/plan_of_a_day.restwater.json-seq"),
    kinds: &["plan_taken", "plan_dropped"],
};
/// The entries of a kit: they belong to no day and are in a file of their own.
const PLANS_IN_A_KIT: Fixture = Fixture {
    file: include_bytes!("../../fixtures/plans_in_a_kit.restwater.json-seq"),
    kinds: &["plan_set", "plan_cleared"],
};

/// A club's start taken and left again, in a kit.
const CLUB_IN_A_KIT: Fixture = Fixture {
    file: include_bytes!("../../fixtures/club_in_a_kit.restwater.json-seq"),
    kinds: &["club_taken", "club_left"],
};

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn incoming(n: u128) -> Incoming {
    Incoming { id: Uuid::from_u128(n), source: "Robin".into(), at: imported_at(1_800_000_000_000) }
}

/// The entries of a file with their bytes.
fn entries(fixture: &Fixture) -> Vec<(Op, Vec<u8>)> {
    let mut all = Vec::new();
    let tally =
        read_op_file(fixture.file, |op, bytes| all.push((op.clone(), bytes.to_vec())), &mut go).unwrap();
    assert!(tally.is_whole() && tally.newer == 0, "{tally:?}");
    all
}

/// The same entry as the previous version reads it: a kind that it doesn't know, with its payload as written.
fn as_before((op, bytes): &(Op, Vec<u8>), kinds: &[&str]) -> Op {
    let kind = op.payload.kind().to_owned();
    if !kinds.contains(&kind.as_str()) {
        return op.clone();
    }
    let written: serde_json::Value = serde_json::from_slice(bytes).unwrap();
    assert_eq!(written["kind"], kind.as_str());
    Op { payload: Payload::Unknown { kind, payload: written.get("payload").cloned() }, ..op.clone() }
}

fn session_of(ops: &[Op]) -> Session {
    fold(ops[0].session, ops)
}

/// The session of a file that has each of its kinds.
fn session_in(fixture: &Fixture) -> Session {
    let ops: Vec<Op> = entries(fixture).into_iter().map(|(op, _)| op).collect();
    for kind in fixture.kinds {
        assert!(ops.iter().any(|op| op.payload.kind() == *kind), "{kind}");
    }
    session_of(&ops)
}

#[test]
fn breaks_feed_and_fish_that_show_mean_what_they_meant_when_they_were_written() {
    let session = session_in(&BETWEEN_CASTS);
    let away: Vec<i64> = session
        .breaks
        .iter()
        .map(|rest| (rest.to.as_ref().unwrap().at_ms - rest.from.at_ms) / 60_000)
        .collect();
    assert_eq!(away, [30]);
    let fed: Vec<(u64, bool)> =
        session.feedings().iter().map(|f| (restwater_session::feed_mg(&f.amount), f.with_cast)).collect();
    assert_eq!(fed, [(60_000, false), (30_000, true), (113_398, false)]);
    assert_eq!(session.shown.len(), 1);
    assert_eq!((session.casts.len(), session.doubts.len()), (2, 0));
}

#[test]
fn other_nets_section_rule_and_neighbours_fish_mean_what_they_meant_when_they_were_written() {
    let session = session_in(&OTHER_ANGLERS);
    let nets: Vec<_> =
        session.others.iter().map(|net| (net.peg.side, net.peg.place, net.shown, net.guessed)).collect();
    assert_eq!(
        nets,
        [(Side::Left, 1, Weight::Drams(2_048), true), (Side::Right, 1, Weight::Drams(1_280), false)]
    );
    assert_eq!(session.section, Some(Section { left: 2, right: 1 }));
    assert_eq!(session.match_rule, "dead fish don't count");
    let fish: Vec<(i64, Side)> =
        session.neighbours.iter().map(|fish| (fish.at.at_ms / 60_000, fish.side)).collect();
    assert_eq!(fish, [(30, Side::Left), (40, Side::Across)]);
    assert_eq!((session.casts.len(), session.doubts.len()), (1, 0));
}

#[test]
fn a_plan_means_what_it_meant_when_it_was_written() {
    let session = session_in(&PLAN_OF_A_DAY);
    let said: Vec<String> = plan_words(&Wording::new(), &session);
    assert_eq!(
        said,
        [
            "one of pegs 14, 22. You drew 14.",
            "rod 1 with bread, 18 in pop-up: as planned.",
            "start at 14 wraps. You started at 16 wraps.",
            "leave the first casts 20 min. The first 3 were left 16, 25, 20 min.",
            "kept-back water at 12:30. First cast there 12:47.",
        ]
    );
    assert!(session.doubts.iter().all(|doubt| doubt.kind != DoubtKind::Newer));
    let kit: Vec<Op> = entries(&PLANS_IN_A_KIT).into_iter().map(|(op, _)| op).collect();
    let plans = restwater_kit::fold(&kit, &[], &[]).plans;
    assert_eq!(plans.len(), 1, "one day is planned");
    let lines: Vec<PlanLine> =
        plans.into_values().flat_map(|p| p.lines().cloned().collect::<Vec<_>>()).collect();
    assert_eq!(Some(lines), session.plan.map(|plan| plan.lines), "and adopted as it was");
}

#[test]
fn a_plan_is_kept_unread_and_passed_on_byte_by_byte() {
    let session = kept_unread_and_passed_on(&PLAN_OF_A_DAY);
    assert_eq!((session.casts.len(), waits_of(&session).len()), (3, 3));
    assert_eq!((session.plan, session.kept_back.len()), (None, 1));
    kept_unread_and_passed_on(&PLANS_IN_A_KIT);
    let entries = entries(&PLANS_IN_A_KIT);
    let older: Vec<Op> = entries.iter().map(|entry| as_before(entry, PLANS_IN_A_KIT.kinds)).collect();
    assert!(restwater_kit::fold(&older, &[], &[]).plans.is_empty(), "the kit is as it was");
}

#[test]
fn a_clubs_start_means_what_it_meant_and_is_kept_unread_by_the_version_before() {
    kept_unread_and_passed_on(&CLUB_IN_A_KIT);
    let ops: Vec<Op> = entries(&CLUB_IN_A_KIT).into_iter().map(|(op, _)| op).collect();
    let Payload::ClubTaken(start) = &ops[0].payload else { panic!("{:?}", ops[0].payload) };
    assert_eq!((start.name.as_str(), start.shapes, start.anglers), ("Alder AC", 1, 52));
    assert_eq!((start.days, start.waters, start.fitted.len()), (611, 9, 4));
    assert_eq!(start.fitted[1].days_of, ClubDays::Water { water: "Alder Pool".into() });
    assert_eq!(start.fitted[1].weights, [0, 1_000_000, 0]);
    assert_eq!(start.fitted[2].days_of, ClubDays::Month { month: 11 });
    assert_eq!(start.fitted[3].days_of, ClubDays::WaterTemperature { from: 40, until: 70 });
    assert_eq!(ops[1].payload, Payload::ClubLeft);
}

/// The session as the previous version reads it, with one doubt for each entry that it keeps unread; its log
/// gives the same file, and a phone of this version that imports it has the whole day.
fn kept_unread_and_passed_on(fixture: &Fixture) -> Session {
    let entries = entries(fixture);
    let older: Vec<Op> = entries.iter().map(|entry| as_before(entry, fixture.kinds)).collect();
    for (op, (_, bytes)) in older.iter().zip(&entries) {
        assert_eq!(&canonical_bytes(op).unwrap(), bytes);
    }
    let session = session_of(&older);
    let newer = session.doubts.iter().filter(|doubt| doubt.kind == DoubtKind::Newer).count();
    assert_eq!(newer, entries.iter().filter(|(op, _)| fixture.kinds.contains(&op.payload.kind())).count());
    let (theirs, ours) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let mut store = Store::open(theirs.path(), older[0].device).unwrap();
    store.append(&older, None).unwrap();
    let mut passed_on = Vec::new();
    export(&store, Selection::Everything, Place::Included, &mut passed_on, &mut go).unwrap();
    assert_eq!(passed_on, fixture.file);
    let mut store = Store::open(ours.path(), Uuid::from_u128(9)).unwrap();
    import(&mut store, &passed_on[..], &incoming(1), &mut no_ids, &mut go).unwrap();
    let read = session_of(&store.ops_of(older[0].session).unwrap());
    let meant: Vec<Op> = entries.into_iter().map(|(op, _)| op).collect();
    assert_eq!(read, session_of(&meant));
    session
}

#[test]
fn breaks_feed_and_fish_that_show_are_kept_unread_and_passed_on_byte_by_byte() {
    let session = kept_unread_and_passed_on(&BETWEEN_CASTS);
    assert_eq!((session.casts.len(), waits_of(&session).len()), (2, 2));
    assert_eq!((session.breaks.len(), session.fed.len(), session.shown.len()), (0, 0, 0));
}

#[test]
fn other_nets_section_rule_and_neighbours_fish_are_kept_unread_and_passed_on_byte_by_byte() {
    let session = kept_unread_and_passed_on(&OTHER_ANGLERS);
    assert_eq!((session.casts.len(), waits_of(&session).len()), (1, 1));
    assert!(session.match_day.is_some(), "the match is as it was");
    assert_eq!((session.others.len(), session.section, session.neighbours.len()), (0, None, 0));
    assert_eq!(session.match_rule, "");
}

/// The kinds of entry that result from a day file.
fn kinds_of_a_day(text: &str) -> Vec<String> {
    let day = read_day(text).unwrap();
    let dir = tempfile::tempdir().unwrap();
    let mut app = App::open(dir.path(), Box::new(Seeded::new(1)), &day[0].at).unwrap();
    for tap in &day {
        if let Some(action) = &tap.action {
            app.act(action, &tap.at).unwrap();
        }
    }
    app.ops().iter().map(|op| op.payload.kind().to_owned()).collect()
}

#[test]
fn days_of_today_hold_the_kinds_that_the_fixtures_have() {
    let feeder = kinds_of_a_day(include_str!("../../days/feeder.jsonl"));
    assert!(BETWEEN_CASTS.kinds.iter().all(|kind| feeder.iter().any(|k| k == kind)), "{feeder:?}");
    let mut others = kinds_of_a_day(include_str!("../../days/section.jsonl"));
    others.extend(kinds_of_a_day(include_str!("../../days/neighbours.jsonl")));
    assert!(OTHER_ANGLERS.kinds.iter().all(|kind| others.iter().any(|k| k == kind)), "{others:?}");
    let plan = kinds_of_a_day(include_str!("../../days/plan.jsonl"));
    assert!(PLAN_OF_A_DAY.kinds.iter().all(|kind| plan.iter().any(|k| k == kind)), "{plan:?}");
}
