//! Two phones that swap files end up with the same sessions; one import is one undo.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use proptest::prelude::*;
use restwater_exchange::{
    ExchangeError, Incoming, Place, Progress, Selection, export, import, redo_import, undo_import,
};
use restwater_log::{Op, canonical_bytes, effective, sorted};
use restwater_session::fold;
use restwater_store::Store;
use restwater_tests::importing::{imported_at, no_ids};
use restwater_tests::invented::{BEGIN_MS, Phone};
use restwater_tests::merge::{Variants, merge};
use std::collections::BTreeSet;
use std::ops::ControlFlow;
use tempfile::TempDir;
use uuid::Uuid;

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn store_of(ops: &[Op], device: u128) -> (TempDir, Store) {
    let dir = tempfile::tempdir().unwrap();
    let mut store = Store::open(dir.path(), Uuid::from_u128(device)).unwrap();
    store.append(ops, None).unwrap();
    (dir, store)
}

fn everything(store: &Store) -> Vec<u8> {
    let mut bytes = Vec::new();
    export(store, Selection::Everything, Place::Included, &mut bytes, &mut go).unwrap();
    bytes
}

fn give(from: &Store, to: &mut Store, import_id: u128) -> u64 {
    let incoming =
        Incoming { id: Uuid::from_u128(import_id), source: "Robin".into(), at: imported_at(BEGIN_MS * 2) };
    import(to, &everything(from)[..], &incoming, &mut no_ids, &mut go).unwrap().new
}

/// Two phones that logged the same session, one of which also logged another.
fn two_phones(seed: u64, taps: usize) -> (Vec<Op>, Vec<Op>) {
    let (mut one, mut other) = (Phone::new(seed), Phone::new(seed + 1));
    let session = one.begin();
    other.join(session);
    for _ in 0..taps {
        one.tap();
        other.tap();
    }
    other.begin();
    other.tap();
    // Each has its own kit, which is sent along and never mixed with the other's.
    one.evening();
    other.evening();
    (one.ops().to_vec(), other.ops().to_vec())
}

fn variants(ops: &[Op]) -> Variants {
    ops.iter().map(|op| (op.id, BTreeSet::from([canonical_bytes(op).unwrap()]))).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    #[test]
    fn whichever_way_and_however_often_they_swap_the_logs_end_the_same(
        seed in 0_u64..1_000_000, taps in 0_usize..30, swaps in proptest::collection::vec(any::<bool>(), 0..4),
    ) {
        let (mine, theirs) = two_phones(seed, taps);
        let (_a, mut one) = store_of(&mine, 1);
        let (_b, mut other) = store_of(&theirs, 2);
        for (n, to_other) in (10..).zip(&swaps) {
            if *to_other { give(&one, &mut other, n) } else { give(&other, &mut one, n) };
        }
        give(&one, &mut other, 1);
        give(&other, &mut one, 2);
        prop_assert_eq!(give(&one, &mut other, 3), 0, "a further swap brings nothing");
        prop_assert_eq!(everything(&one), everything(&other));
        let law = merge(&variants(&mine), &variants(&theirs));
        prop_assert_eq!(law.len(), mine.len() + theirs.len());
        for row in one.sessions().unwrap() {
            let ops = one.ops_of(row.id).unwrap();
            prop_assert_eq!(&ops, &other.ops_of(row.id).unwrap());
            prop_assert!(variants(&ops).iter().all(|(id, v)| law[id] == *v));
            prop_assert_eq!(fold(row.id, &ops), fold(row.id, &other.ops_of(row.id).unwrap()));
        }
    }

    #[test]
    fn undoing_an_import_voids_exactly_what_it_brought(seed in 0_u64..1_000_000, taps in 1_usize..30) {
        let (mine, theirs) = two_phones(seed, taps);
        let (_a, mut one) = store_of(&mine, 1);
        let (_b, other) = store_of(&theirs, 2);
        let session = mine[0].session;
        let before = in_force(&one, session);
        give(&other, &mut one, 1);
        let merged = in_force(&one, session);
        let mut phone = Phone::new(seed + 9);
        let import_id = Uuid::from_u128(1);
        let at = phone.tick();
        let changed = undo_import(&mut one, import_id, &at, &mut || phone.new_id()).unwrap();
        // The shared session, the one that only the other phone has, and its kit.
        prop_assert_eq!(changed.len(), 3);
        prop_assert_eq!(in_force(&one, session), before.clone());
        prop_assert!(one.imports().unwrap()[0].undone);
        let again = undo_import(&mut one, import_id, &at, &mut || phone.new_id());
        prop_assert!(matches!(again, Err(ExchangeError::NoSuchImport(_))));
        // What was undone is not exported, nor is the entry that undid it; once restored, it is exported
        // again.
        let (_c, mut third) = store_of(&[], 3);
        give(&one, &mut third, 5);
        prop_assert_eq!(in_force(&third, session), before);
        redo_import(&mut one, import_id, &at, &mut || phone.new_id()).unwrap();
        prop_assert_eq!(in_force(&one, session), merged.clone());
        give(&one, &mut third, 6);
        prop_assert_eq!(in_force(&third, session), merged);
    }
}

/// Ids of the ops in force in a session.
fn in_force(store: &Store, session: Uuid) -> Vec<Uuid> {
    let ops = store.ops_of(session).unwrap();
    effective(&sorted(&ops)).iter().map(|e| e.op.id).collect()
}

#[test]
fn the_journal_of_imports_survives_a_restart() {
    let (mine, theirs) = two_phones(5, 10);
    let (dir, mut one) = store_of(&mine, 1);
    let (_b, other) = store_of(&theirs, 2);
    give(&other, &mut one, 1);
    drop(one);
    let mut one = Store::open(dir.path(), Uuid::from_u128(1)).unwrap();
    let rows = one.imports().unwrap();
    assert_eq!((rows.len(), rows[0].source.as_str(), rows[0].ops), (1, "Robin", theirs.len() as u64));
    let mut phone = Phone::new(6);
    let at = phone.tick();
    undo_import(&mut one, rows[0].id, &at, &mut || phone.new_id()).unwrap();
    drop(one);
    let mut one = Store::open(dir.path(), Uuid::from_u128(1)).unwrap();
    assert!(one.imports().unwrap()[0].undone);
    redo_import(&mut one, rows[0].id, &at, &mut || phone.new_id()).unwrap();
    assert!(!one.imports().unwrap()[0].undone);
}

/// A later file contains a part of an undone import: that part is restored, and the rest stays undone.
#[test]
fn a_file_restores_its_part_of_an_undone_import() {
    let (mine, theirs) = two_phones(5, 10);
    let (_a, mut one) = store_of(&mine, 1);
    let (_b, other) = store_of(&theirs, 2);
    give(&other, &mut one, 1);
    let mut phone = Phone::new(6);
    let (first, at) = (Uuid::from_u128(1), phone.tick());
    undo_import(&mut one, first, &at, &mut || phone.new_id()).unwrap();
    let their_own = theirs
        .iter()
        .map(|op| op.session)
        .find(|id| one.ops_of(*id).unwrap().len() == theirs.iter().filter(|op| op.session == *id).count() + 1)
        .unwrap();
    assert!(in_force(&one, their_own).is_empty());
    let mut file = Vec::new();
    export(&other, Selection::Session(their_own), Place::Included, &mut file, &mut go).unwrap();
    let incoming = Incoming { id: Uuid::from_u128(2), source: "Robin".into(), at: at.clone() };
    let tally = import(&mut one, &file[..], &incoming, &mut || phone.new_id(), &mut go).unwrap();
    let held = theirs.iter().filter(|op| op.session == their_own).count() as u64;
    assert_eq!((tally.new, tally.known, tally.brought_back), (0, held, held));
    assert_eq!(in_force(&one, their_own), in_force(&other, their_own));
    let shared = mine[0].session;
    let (_c, alone) = store_of(&mine, 3);
    assert_eq!(in_force(&one, shared), in_force(&alone, shared), "the rest is still taken back");
    let rows = one.imports().unwrap();
    assert_eq!((rows.len(), rows[0].undone), (1, true));
    redo_import(&mut one, first, &at, &mut || phone.new_id()).unwrap();
    let (_d, mut both) = store_of(&mine, 4);
    give(&other, &mut both, 3);
    for session in [shared, their_own] {
        assert_eq!(in_force(&one, session), in_force(&both, session));
    }
}
