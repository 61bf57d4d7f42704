//! Backups, the check, and salvaging a damaged log.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use restwater_exchange::{Incoming, Progress, preview_backup, restore};
use restwater_log::Op;
use restwater_session::fold;
use restwater_store::{FILE_NAME, SnapshotRow, Store, StoreError, backups};
use restwater_tests::importing::{imported_at, no_ids};
use restwater_tests::invented::{BEGIN_MS, log_of};
use rusqlite::Connection;
use std::fs;
use std::ops::ControlFlow;
use tempfile::TempDir;
use uuid::Uuid;

fn on(_: u64, _: u64) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

fn store_of(ops: &[Op]) -> (TempDir, Store) {
    let dir = tempfile::tempdir().unwrap();
    let mut store = Store::open(dir.path(), ops[0].device).unwrap();
    store.append(ops, None).unwrap();
    (dir, store)
}

#[test]
fn a_backup_is_verified_and_restores_as_an_import() {
    let ops = log_of(1, 3, 200);
    let (dir, mut store) = store_of(&ops[..500]);
    let kept = dir.path().join("backups");
    let backup = store.backup(&kept, BEGIN_MS, &mut on).unwrap().unwrap();
    assert_eq!(backups(&kept).unwrap(), vec![backup.clone()]);
    store.append(&ops[500..], None).unwrap();
    let (_other, mut fresh) = store_of(&log_of(2, 1, 5));
    let incoming =
        Incoming { id: Uuid::from_u128(1), source: "backup".into(), at: imported_at(BEGIN_MS * 2) };
    let mut go = |_: Progress| ControlFlow::Continue(());
    let before = fs::read(&backup.path).unwrap();
    let tally = restore(&mut fresh, &backup.path, &incoming, &mut no_ids, &mut go).unwrap();
    assert_eq!((tally.new, tally.is_whole()), (500, true));
    assert_eq!(fresh.imports().unwrap()[0].ops, 500);
    let tally = restore(&mut store, &backup.path, &incoming, &mut no_ids, &mut go).unwrap();
    assert_eq!((tally.new, tally.known), (0, 500), "what was logged since the backup stays");
    assert_eq!(store.count().unwrap(), 600);
    assert!(fs::read(&backup.path).unwrap() == before, "a backup is only read");
    assert_eq!(fs::read_dir(&kept).unwrap().count(), 1, "nothing is left beside it");
}

#[test]
fn backups_are_thinned_and_a_cancelled_one_leaves_nothing() {
    let ops = log_of(3, 1, 40);
    let (dir, store) = store_of(&ops);
    let kept = dir.path().join("backups");
    for n in 0..100 {
        store.backup(&kept, BEGIN_MS + n * 1_800_000, &mut on).unwrap().unwrap();
    }
    let left = backups(&kept).unwrap();
    assert!((25..=30).contains(&left.len()), "{}", left.len());
    assert_eq!(left[0].wall_ms, BEGIN_MS + 99 * 1_800_000);
    fs::write(kept.join("notes.txt"), "mine").unwrap();
    let (_big, store) = store_of(&log_of(4, 4, 2_000));
    let given_up = store.backup(&kept, BEGIN_MS * 2, &mut |_, _| ControlFlow::Break(())).unwrap();
    assert_eq!(given_up, None);
    assert_eq!(backups(&kept).unwrap(), left);
    assert_eq!(fs::read_dir(&kept).unwrap().count(), left.len() + 1);
}

#[test]
fn check_finds_a_wrong_projection_and_rebuild_repairs_it() {
    let ops = log_of(5, 3, 50);
    let (dir, mut store) = store_of(&ops);
    let mut folded = |id: Uuid, ops: &[Op], _: u32| serde_json::to_vec(&fold(id, ops)).ok();
    for row in store.sessions().unwrap() {
        let body = folded(row.id, &store.ops_of(row.id).unwrap(), 1).unwrap();
        let snapshot = SnapshotRow { session: row.id, ops: row.ops, last: row.last, version: 1, body };
        store.put_snapshot(&snapshot).unwrap();
    }
    let report = store.check(&mut folded).unwrap();
    assert!(report.is_clean(), "{report:?}");
    assert_eq!(report.ops, 150);
    let rows = store.sessions().unwrap();
    store.pause().unwrap();
    let conn = Connection::open(dir.path().join(FILE_NAME)).unwrap();
    conn.execute("UPDATE session SET ops = ops + 1 WHERE id = ?1", [rows[0].id.as_bytes()]).unwrap();
    conn.execute(
        "UPDATE snapshot SET body = x'7b7d' WHERE session = (SELECT no FROM session WHERE id = ?1)",
        [rows[1].id.as_bytes()],
    )
    .unwrap();
    drop(conn);
    let report = store.check(&mut folded).unwrap();
    assert_eq!((report.sessions.clone(), report.snapshots.clone()), (vec![rows[0].id], vec![rows[1].id]));
    assert!(report.is_repairable() && !report.is_clean());
    store.rebuild().unwrap();
    assert!(store.check(&mut folded).unwrap().is_clean());
    assert_eq!(store.sessions().unwrap(), rows);
    assert_eq!(store.recent_snapshots(9).unwrap(), vec![]);
}

#[test]
fn a_torn_store_is_set_aside_and_everything_intact_is_saved() {
    let ops = log_of(6, 4, 250);
    let (dir, mut store) = store_of(&ops);
    store.set_setting("hand", "left").unwrap();
    store.pause().unwrap();
    drop(store);
    let path = dir.path().join(FILE_NAME);
    let whole = fs::read(&path).unwrap();
    let pages = whole.len() / 4_096;
    // First a page in the middle is overwritten, then the schema page, then the end is cut off.
    for damage in 0..3 {
        let mut bytes = whole.clone();
        match damage {
            0 => bytes[pages / 2 * 4_096..(pages / 2 + 1) * 4_096].fill(0x5a),
            1 => bytes[100..4_096].fill(0x5a),
            _ => bytes.truncate(pages * 3 / 4 * 4_096),
        }
        let dir = tempfile::tempdir().unwrap();
        fs::write(dir.path().join(FILE_NAME), &bytes).unwrap();
        let report = Store::salvage(dir.path(), Uuid::from_u128(9), BEGIN_MS, &[]).unwrap();
        let store = Store::open(dir.path(), Uuid::from_u128(9)).unwrap();
        assert!(fs::read(&report.set_aside).unwrap() == bytes, "the damaged file stays as it was");
        assert_eq!(store.count().unwrap(), report.saved);
        if let Some(lost) = report.lost {
            assert_eq!(report.saved + lost, 1_000);
        }
        let saved: Vec<Op> =
            store.sessions().unwrap().iter().flat_map(|row| store.ops_of(row.id).unwrap()).collect();
        assert!(saved.iter().all(|op| ops.contains(op)));
        match damage {
            0 => assert!(report.lost.is_some_and(|lost| lost <= 12), "{report:?}"),
            1 => assert_eq!((report.saved, report.lost), (1_000, None), "every entry is in the bytes"),
            _ => assert!(report.saved >= 600, "{report:?}"),
        }
        assert!(store.check(&mut |_, _, _| None).unwrap().is_clean());
        if damage == 0 {
            assert_eq!(store.device(), ops[0].device);
            assert_eq!(store.setting("hand").unwrap().as_deref(), Some("left"));
        }
    }
}

#[test]
fn a_foreign_file_is_not_salvaged() {
    let dir = tempfile::tempdir().unwrap();
    assert!(matches!(Store::salvage(dir.path(), Uuid::nil(), 0, &[]), Err(StoreError::Foreign(_))));
    fs::write(dir.path().join(FILE_NAME), "mine").unwrap();
    assert!(matches!(Store::salvage(dir.path(), Uuid::nil(), 0, &[]), Err(StoreError::Foreign(_))));
    assert_eq!(fs::read(dir.path().join(FILE_NAME)).unwrap(), b"mine");
}

/// A file that only looks like a log: in place of the table of entries it has a view that never ends.
#[test]
fn a_backup_with_a_view_for_its_entries_is_cut_off_at_once() {
    let (dir, store) = store_of(&log_of(8, 1, 20));
    let backup = store.backup(&dir.path().join("backups"), BEGIN_MS, &mut on).unwrap().unwrap();
    let conn = Connection::open(&backup.path).unwrap();
    conn.execute_batch(
        "PRAGMA foreign_keys = OFF; DROP TABLE op;
         CREATE VIEW op AS WITH RECURSIVE n(seq) AS (SELECT 1 UNION ALL SELECT seq + 1 FROM n)
         SELECT seq, 1 AS session, x'00' AS id, x'00' AS sha256, x'00' AS body FROM n WHERE seq < 0;",
    )
    .unwrap();
    drop(conn);
    let mut go = |_: Progress| ControlFlow::Continue(());
    let tally = preview_backup(&store, &backup.path, BEGIN_MS, &mut go).unwrap();
    assert_eq!((tally.whole, tally.is_whole()), (0, false));
}

/// Damage to an old entry is reported when a backup is made: the backup is not kept as verified, and earlier
/// ones stay.
#[test]
fn a_log_with_rot_is_not_backed_up_as_verified() {
    let (dir, store) = store_of(&log_of(9, 1, 20));
    let kept = dir.path().join("backups");
    let good = store.backup(&kept, BEGIN_MS, &mut on).unwrap().unwrap();
    let device = store.device();
    drop(store);
    let conn = Connection::open(dir.path().join(FILE_NAME)).unwrap();
    let rotten = "UPDATE op SET body = CAST(replace(CAST(body AS TEXT), 'at', 'aT') AS BLOB) WHERE seq = 3";
    assert_eq!(conn.execute(rotten, []).unwrap(), 1);
    drop(conn);
    let store = Store::open(dir.path(), device).unwrap();
    let error = store.backup(&kept, BEGIN_MS + 3_600_000, &mut on).unwrap_err();
    assert!(matches!(error, StoreError::Damaged(_)), "{error}");
    assert_eq!(backups(&kept).unwrap(), [good]);
}
