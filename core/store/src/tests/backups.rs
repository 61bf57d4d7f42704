//! Rolling backups on a real file system.

use super::*;
use crate::append::{Adding, Hashed};
use std::ops::ControlFlow;

const MINUTE_MS: i64 = 60_000;
/// 10 January 2026, 08:00 UTC.
const MORNING: i64 = 1_768_032_000_000;

fn go(_: u64, _: u64) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

/// A store of more pages than one step of a backup copies, so that a step ends with more to come.
fn of_many_pages(dir: &Path) -> Store {
    let mut store = open(dir);
    let note = |n: u64| Op {
        payload: Payload::Noted { text: "n".repeat(2_000) },
        ..op(u128::from(n), 9, 1_000 * n)
    };
    store.append(&(1..=900).map(note).collect::<Vec<_>>(), None).unwrap();
    store
}

#[test]
fn a_backup_holds_every_entry_and_the_latest_is_listed_first() {
    let dir = tempfile::tempdir().unwrap();
    let store = of_many_pages(dir.path());
    let folder = dir.path().join("backups");
    assert_eq!(backups(&folder).unwrap(), [], "there is no folder yet");
    let mut steps = Vec::new();
    let mut watch = |left, all| {
        steps.push((left, all));
        ControlFlow::Continue(())
    };
    let first = store.backup(&folder, MORNING, &mut watch).unwrap().unwrap();
    assert!(steps.len() >= 2 && steps.iter().all(|(left, all)| left < all), "{steps:?}");
    assert!(steps.windows(2).all(|two| two[1].0 < two[0].0), "{steps:?}");
    let later = store.backup(&folder, MORNING + 60 * MINUTE_MS + 999, &mut go).unwrap().unwrap();
    assert_eq!(later.wall_ms, MORNING + 60 * MINUTE_MS, "to the second");
    fs::write(folder.join("notes.txt"), "another file").unwrap();
    assert_eq!(backups(&folder).unwrap(), [later, first.clone()]);
    let copy = tempfile::tempdir().unwrap();
    fs::copy(&first.path, copy.path().join(FILE_NAME)).unwrap();
    let copied = Store::open(copy.path(), Uuid::from_u128(2)).unwrap();
    assert_eq!(copied.ops_of(Uuid::from_u128(9)).unwrap(), store.ops_of(Uuid::from_u128(9)).unwrap());
    // A file in place of the folder is an error and not an empty list.
    assert!(backups(&folder.join("notes.txt")).is_err());
}

#[test]
fn a_backup_that_is_cancelled_leaves_nothing() {
    let dir = tempfile::tempdir().unwrap();
    let store = of_many_pages(dir.path());
    let folder = dir.path().join("backups");
    assert_eq!(store.backup(&folder, MORNING, &mut |_, _| ControlFlow::Break(())).unwrap(), None);
    assert_eq!(fs::read_dir(&folder).unwrap().count(), 0);
}

/// Otherwise the rot would be copied until no sound backup is left.
#[test]
fn a_damaged_entry_is_not_backed_up_and_the_sound_backups_stay() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    store.append(&[op(1, 9, 1_000), op(2, 9, 2_000)], None).unwrap();
    let folder = dir.path().join("backups");
    let sound = store.backup(&folder, MORNING, &mut go).unwrap().unwrap();
    store.conn().unwrap().execute("UPDATE op SET sha256 = zeroblob(32) WHERE seq = 2", []).unwrap();
    let error = store.backup(&folder, MORNING + MINUTE_MS, &mut go).unwrap_err();
    assert!(matches!(&error, StoreError::Damaged(why) if why.contains("1 intact entries of 2")), "{error:?}");
    assert_eq!(backups(&folder).unwrap(), [sound]);
    assert!(!folder.join("backup.part").exists());
}

#[test]
fn of_the_backups_of_one_hour_the_latest_stays() {
    let dir = tempfile::tempdir().unwrap();
    let store = open(dir.path());
    let folder = dir.path().join("backups");
    let times = |folder: &Path| backups(folder).unwrap().iter().map(|b| b.wall_ms).collect::<Vec<_>>();
    for minute in [0, 1, 70] {
        store.backup(&folder, MORNING + minute * MINUTE_MS, &mut go).unwrap();
    }
    assert_eq!(times(&folder), [MORNING + 70 * MINUTE_MS, MORNING + MINUTE_MS]);
    // The one just made stays, though the clock went back and made it the oldest.
    store.backup(&folder, MORNING, &mut go).unwrap();
    assert_eq!(times(&folder), [MORNING + 70 * MINUTE_MS, MORNING + MINUTE_MS, MORNING]);
}

#[test]
fn the_device_that_a_copied_store_goes_on_with_is_still_its_own_after_reopening() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    store.append(&[start(1, 9, 1_000, 1)], None).unwrap();
    store.change_device(Uuid::from_u128(7)).unwrap();
    assert_eq!(store.device(), Uuid::from_u128(7));
    assert_eq!(store.written_before(None).unwrap(), None, "it has written nothing");
    drop(store);
    let store = open(dir.path());
    assert_eq!(store.device(), Uuid::from_u128(7));
    assert_eq!(store.written_before(None).unwrap(), None);
}

/// An import adds entry by entry; what it brought is said once it is committed.
#[test]
fn what_was_added_in_a_transaction_is_said_and_a_clash_leaves_no_session() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    store.append(&[op(1, 9, 1_000)], None).unwrap();
    let brought = {
        let mut conn = store.conn().unwrap();
        let tx = conn.transaction().unwrap();
        let mut adding = Adding::begin(&tx).unwrap();
        let mut add = |op: &Op| {
            let bytes = canonical_bytes(op).unwrap();
            adding.add(op, Hashed::of(&bytes)).unwrap()
        };
        assert_eq!(add(&op(2, 9, 5_000)), Added::New);
        assert_eq!(add(&op(1, 9, 1_000)), Added::Known);
        assert_eq!(add(&op(1, 77, 9_000)), Added::Clash);
        let brought = adding.finish().unwrap();
        tx.commit().unwrap();
        brought
    };
    assert_eq!(brought.last_hlc(), Hlc { ms: 5_000, count: 0 });
    assert_eq!(brought.and(brought).last_hlc(), brought.last_hlc());
    store.saw(brought);
    assert_eq!(store.last_hlc(), brought.last_hlc());
    let sessions: Vec<u128> = store.sessions().unwrap().iter().map(|row| row.id.as_u128()).collect();
    assert_eq!(sessions, [9], "none of the entry that was not added");
}
