//! What the version before, which knows no breaks, no feed and no fish that show, does with a file that holds them: it keeps
//! them unread, reads the rest as it always did, and passes every byte on.
//!
//! `tests/fixtures/between_casts.restwater.json-seq` is such a file as it was written when those kinds came in. It may never be
//! made again: it also holds this version and every later one to what those entries meant.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use restwater_app::{Action, App, read_day};
use restwater_exchange::{Incoming, Place, Progress, Selection, export, import, read_op_file};
use restwater_log::{Op, Payload, canonical_bytes};
use restwater_session::{DoubtKind, Session, fold, waits_of};
use restwater_store::Store;
use restwater_tests::phone::Seeded;
use std::ops::ControlFlow;
use uuid::Uuid;

const FILE: &[u8] = include_bytes!("../../fixtures/between_casts.restwater.json-seq");
/// The kinds that the version before doesn't know.
const NEW_KINDS: [&str; 5] = ["away", "returned", "fed", "feeder_set", "fish_shown"];

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn incoming(n: u128) -> Incoming {
    Incoming { id: Uuid::from_u128(n), source: "Robin".into(), wall_ms: 1_800_000_000_000, offset_min: 0 }
}

/// The entries of the file with their bytes.
fn entries() -> Vec<(Op, Vec<u8>)> {
    let mut all = Vec::new();
    let tally = read_op_file(FILE, |op, bytes| all.push((op.clone(), bytes.to_vec())), &mut go).unwrap();
    assert!(tally.is_whole() && tally.newer == 0, "{tally:?}");
    all
}

/// The same entry as the version before reads it: a kind that it doesn't know, with its payload as it was written.
fn as_before((op, bytes): &(Op, Vec<u8>)) -> Op {
    let kind = op.payload.kind().to_owned();
    if !NEW_KINDS.contains(&kind.as_str()) {
        return op.clone();
    }
    let written: serde_json::Value = serde_json::from_slice(bytes).unwrap();
    assert_eq!(written["kind"], kind.as_str());
    Op { payload: Payload::Unknown { kind, payload: written.get("payload").cloned() }, ..op.clone() }
}

fn session_of(ops: &[Op]) -> Session {
    fold(ops[0].session, ops)
}

#[test]
fn the_fixture_means_what_it_meant_when_it_was_written() {
    let ops: Vec<Op> = entries().into_iter().map(|(op, _)| op).collect();
    for kind in NEW_KINDS {
        assert!(ops.iter().any(|op| op.payload.kind() == kind), "{kind}");
    }
    let session = session_of(&ops);
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
fn the_version_before_keeps_the_new_kinds_unread_and_passes_on_every_byte() {
    let entries = entries();
    let older: Vec<Op> = entries.iter().map(as_before).collect();
    for (op, (_, bytes)) in older.iter().zip(&entries) {
        assert_eq!(&canonical_bytes(op).unwrap(), bytes);
    }
    // The rest of the day is what it is without them, and each of them is a doubt that says so.
    let session = session_of(&older);
    assert_eq!((session.casts.len(), waits_of(&session).len()), (2, 2));
    assert_eq!((session.breaks.len(), session.fed.len(), session.shown.len()), (0, 0, 0));
    let newer = session.doubts.iter().filter(|doubt| doubt.kind == DoubtKind::Newer).count();
    assert_eq!(newer, entries.iter().filter(|(op, _)| NEW_KINDS.contains(&op.payload.kind())).count());
    // Its log gives the same file, and a phone of this version that takes it in has the whole day.
    let (theirs, ours) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let mut store = Store::open(theirs.path(), older[0].device).unwrap();
    store.append(&older, None).unwrap();
    let mut passed_on = Vec::new();
    export(&store, Selection::Everything, Place::Included, &mut passed_on, &mut go).unwrap();
    assert_eq!(passed_on, FILE);
    let mut store = Store::open(ours.path(), Uuid::from_u128(9)).unwrap();
    import(&mut store, &passed_on[..], &incoming(1), &mut go).unwrap();
    let read = session_of(&store.ops_of(older[0].session).unwrap());
    let meant: Vec<Op> = entries.into_iter().map(|(op, _)| op).collect();
    assert_eq!(read, session_of(&meant));
}

#[test]
fn a_day_of_today_holds_no_kind_that_the_fixture_lacks_of_those() {
    let day = read_day(include_str!("../../days/feeder.jsonl")).unwrap();
    let dir = tempfile::tempdir().unwrap();
    let mut app = App::open(dir.path(), Box::new(Seeded::new(1)), &day[0].at).unwrap();
    for tap in &day {
        if let Some(action) = &tap.action {
            app.act(action, &tap.at).unwrap();
        }
    }
    app.act(&Action::Undo, &day.last().unwrap().at).unwrap();
    let kinds: Vec<&str> = app.ops().iter().map(|op| op.payload.kind()).collect();
    assert!(NEW_KINDS.iter().all(|kind| kinds.contains(kind)), "{kinds:?}");
}
