mod backups;
mod migration;
mod rot;
mod salvage;

use super::*;
use restwater_log::{Moment, Op, Payload, canonical_bytes};
use std::fs;
use std::path::Path;

fn op(n: u128, session: u128, ms: u64) -> Op {
    Op {
        id: Uuid::from_u128(n),
        device: Uuid::from_u128(1),
        hlc: Hlc { ms, count: 0 },
        at: Moment {
            wall_ms: i64::try_from(ms).unwrap(),
            offset_min: 0,
            zone: String::new(),
            mono_ms: 0,
            boot: "b".into(),
            approx_s: 0,
        },
        session: Uuid::from_u128(session),
        payload: Payload::Cast { rod: 1 },
        amends: None,
        group: None,
    }
}

fn open(dir: &Path) -> Store {
    Store::open(dir, Uuid::from_u128(1)).unwrap()
}

/// Every file of a directory with its bytes.
fn bytes_of(dir: &Path) -> Vec<(String, Vec<u8>)> {
    let mut files: Vec<_> = fs::read_dir(dir)
        .unwrap()
        .map(|e| e.unwrap().path())
        .filter(|p| p.is_file() && p.file_name().unwrap() != "restwater.lock")
        .map(|p| (p.file_name().unwrap().to_string_lossy().into_owned(), fs::read(&p).unwrap()))
        .collect();
    files.sort();
    files
}

/// Asserts that opening fails and leaves the directory unchanged; returns the error.
fn refused(dir: &Path) -> StoreError {
    let before = bytes_of(dir);
    let error = Store::open(dir, Uuid::from_u128(2)).unwrap_err();
    assert!(bytes_of(dir) == before, "{error} changed the directory");
    error
}

#[test]
fn the_pragmas_are_those_that_durability_needs() {
    let dir = tempfile::tempdir().unwrap();
    let store = open(dir.path());
    let conn = store.conn().unwrap();
    let pragma = |name: &str| -> String {
        conn.query_row(&format!("SELECT CAST({name} AS TEXT) FROM pragma_{name}"), [], |r| r.get(0)).unwrap()
    };
    assert_eq!(pragma("journal_mode"), "wal");
    assert_eq!(pragma("synchronous"), "2", "FULL");
    assert_eq!(pragma("foreign_keys"), "1");
    let one = |sql: &str| -> i64 { conn.query_row(sql, [], |r| r.get(0)).unwrap() };
    assert_eq!(one("PRAGMA application_id"), 0x5273_7477);
    assert_eq!(one("PRAGMA user_version"), i64::from(KNOWN_VERSION));
    let apple = i64::from(cfg!(target_vendor = "apple"));
    assert_eq!(one("PRAGMA fullfsync"), apple);
    assert_eq!(one("PRAGMA checkpoint_fullfsync"), apple);
    let mode: String = conn.query_row("PRAGMA locking_mode", [], |r| r.get(0)).unwrap();
    assert_eq!(mode, "exclusive");
}

#[test]
fn appended_ops_are_there_after_reopening_in_the_order_of_the_log() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    let unknown =
        Op { payload: Payload::Unknown { kind: "ice_heard".into(), payload: None }, ..op(4, 50, 25) };
    store.append(&[op(3, 50, 30), op(1, 50, 10), op(9, 60, 40)], None).unwrap();
    store.append(&[op(2, 50, 20), unknown.clone(), op(1, 50, 10)], None).unwrap();
    drop(store);
    let store = Store::open(dir.path(), Uuid::from_u128(99)).unwrap();
    assert_eq!(store.device(), Uuid::from_u128(1), "the device of the first opening");
    assert_eq!(store.last_hlc(), Hlc { ms: 40, count: 0 });
    let ops = store.ops_of(Uuid::from_u128(50)).unwrap();
    assert_eq!(ops, vec![op(1, 50, 10), op(2, 50, 20), unknown, op(3, 50, 30)]);
    assert_eq!(store.ops_of(Uuid::from_u128(51)).unwrap(), vec![]);
    let rows = store.sessions().unwrap();
    assert_eq!(
        rows.iter().map(|r| (r.id.as_u128(), r.began.wall_ms, r.ops)).collect::<Vec<_>>(),
        vec![(60, 40, 1), (50, 10, 4)]
    );
    assert_eq!(rows[1].last, op(3, 50, 30).order());
}

#[test]
fn a_different_op_with_a_known_id_makes_the_whole_append_fail() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    store.append(&[op(1, 50, 10)], None).unwrap();
    let error = store.append(&[op(2, 50, 20), op(1, 50, 11)], None).unwrap_err();
    assert!(matches!(error, StoreError::Clash(id) if id == Uuid::from_u128(1)));
    assert_eq!(store.ops_of(Uuid::from_u128(50)).unwrap(), vec![op(1, 50, 10)]);
    assert_eq!(store.last_hlc(), Hlc { ms: 10, count: 0 });
    let far = Op { at: Moment { wall_ms: 1 << 53, ..op(3, 50, 30).at }, ..op(3, 50, 30) };
    assert!(matches!(store.append(&[far], None), Err(StoreError::OutOfRange(_))));
}

#[test]
fn a_snapshot_is_returned_only_while_it_fits() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    let session = Uuid::from_u128(50);
    let row = SnapshotRow { session, ops: 1, last: op(1, 50, 10).order(), version: 3, body: vec![1, 2] };
    store.append(&[op(1, 50, 10)], Some(&row)).unwrap();
    assert_eq!(store.snapshot(session).unwrap(), Some(row.clone()));
    assert_eq!(store.recent_snapshots(5).unwrap(), vec![row.clone()]);
    store.append(&[op(2, 50, 5)], None).unwrap();
    assert_eq!(store.snapshot(session).unwrap(), None, "an op came in before the last one");
    assert_eq!(store.recent_snapshots(5).unwrap(), vec![]);
    let fits = SnapshotRow { ops: 2, ..row };
    store.put_snapshot(&fits).unwrap();
    assert_eq!(store.snapshot(session).unwrap(), Some(fits));
    assert_eq!(store.snapshot(Uuid::from_u128(51)).unwrap(), None);
}

#[test]
fn settings_are_kept() {
    let dir = tempfile::tempdir().unwrap();
    let store = open(dir.path());
    assert_eq!(store.setting("hand").unwrap(), None);
    store.set_setting("hand", "left").unwrap();
    store.set_setting("hand", "right").unwrap();
    drop(store);
    assert_eq!(open(dir.path()).setting("hand").unwrap().as_deref(), Some("right"));
}

#[test]
fn pause_leaves_one_complete_file_and_closes_it() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    store.append(&[op(1, 50, 10)], None).unwrap();
    store.pause().unwrap();
    let names: Vec<_> = bytes_of(dir.path()).into_iter().map(|(name, _)| name).collect();
    assert_eq!(names, vec![FILE_NAME]);
    let other = open(dir.path());
    assert_eq!(other.ops_of(Uuid::from_u128(50)).unwrap().len(), 1);
    assert!(matches!(store.resume(), Err(StoreError::Busy)));
    drop(other);
    store.append(&[op(2, 50, 20)], None).unwrap();
    store.pause().unwrap();
    store.pause().unwrap();
    store.resume().unwrap();
    assert_eq!(store.ops_of(Uuid::from_u128(50)).unwrap().len(), 2);
}

#[test]
fn a_store_that_is_open_elsewhere_is_busy() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    store.append(&[op(1, 50, 10)], None).unwrap();
    assert!(matches!(refused(dir.path()), StoreError::Busy));
    store.append(&[op(2, 50, 20)], None).unwrap();
}

#[test]
fn a_file_that_is_no_store_is_foreign_and_stays_unchanged() {
    for bytes in [&b"PK\x03\x04 a zip by mistake"[..], b"x", &[0; 5_000]] {
        let dir = tempfile::tempdir().unwrap();
        fs::write(dir.path().join(FILE_NAME), bytes).unwrap();
        assert!(matches!(refused(dir.path()), StoreError::Foreign(_)));
    }
    let dir = tempfile::tempdir().unwrap();
    let other = Connection::open(dir.path().join(FILE_NAME)).unwrap();
    other.execute_batch("CREATE TABLE t (x); INSERT INTO t VALUES (1);").unwrap();
    drop(other);
    assert!(matches!(refused(dir.path()), StoreError::Foreign(_)));
    let dir = tempfile::tempdir().unwrap();
    fs::create_dir(dir.path().join(FILE_NAME)).unwrap();
    assert!(matches!(refused(dir.path()), StoreError::Foreign(_)));
}

#[test]
fn a_newer_file_is_refused_even_where_only_its_log_says_so() {
    let dir = tempfile::tempdir().unwrap();
    drop(open(dir.path()));
    let path = dir.path().join(FILE_NAME);
    let conn = Connection::open(&path).unwrap();
    conn.pragma_update(None, "user_version", KNOWN_VERSION + 1).unwrap();
    // Copied while open: the change is only in the log beside the file.
    let copy = tempfile::tempdir().unwrap();
    for name in [FILE_NAME, "restwater.db-wal"] {
        fs::copy(dir.path().join(name), copy.path().join(name)).unwrap();
    }
    drop(conn);
    for dir in [dir.path(), copy.path()] {
        let error = refused(dir);
        assert!(
            matches!(error, StoreError::Newer { found, known } if found == KNOWN_VERSION + 1 && known == KNOWN_VERSION)
        );
    }
    assert!(copy.path().join("restwater.db-wal").exists());
}

#[test]
fn a_cut_or_overwritten_file_is_damaged_and_stays_unchanged() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    let ops: Vec<Op> = (1..400).map(|n| op(n, n / 100, n as u64)).collect();
    store.append(&ops, None).unwrap();
    drop(store);
    let whole = fs::read(dir.path().join(FILE_NAME)).unwrap();
    let mut scribbled = whole.clone();
    scribbled[100..4_096].fill(0xa5);
    for bytes in [&whole[..70], &whole[..whole.len() / 2], &scribbled] {
        fs::write(dir.path().join(FILE_NAME), bytes).unwrap();
        let error = refused(dir.path());
        assert!(matches!(error, StoreError::Damaged(_)), "{error:?}");
    }
}

#[test]
fn a_changed_entry_is_damage_and_not_silently_read() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    store.append(&[op(1, 50, 10)], None).unwrap();
    drop(store);
    let mut bytes = fs::read(dir.path().join(FILE_NAME)).unwrap();
    let body = canonical_bytes(&op(1, 50, 10)).unwrap();
    let at = bytes.windows(body.len()).position(|w| w == body).unwrap();
    let rod = at + body.windows(7).position(|w| w == b"\"rod\":1").unwrap() + 6;
    bytes[rod] = b'2';
    fs::write(dir.path().join(FILE_NAME), bytes).unwrap();
    let error = open(dir.path()).ops_of(Uuid::from_u128(50)).unwrap_err();
    assert!(matches!(error, StoreError::Damaged(_)));
}

#[test]
fn read_only_files_and_directories_are_reported_as_such() {
    let dir = tempfile::tempdir().unwrap();
    drop(open(dir.path()));
    let set = |path: &Path, readonly: bool| {
        let mut rights = fs::metadata(path).unwrap().permissions();
        rights.set_readonly(readonly);
        fs::set_permissions(path, rights).unwrap();
    };
    let file = dir.path().join(FILE_NAME);
    set(&file, true);
    assert!(matches!(refused(dir.path()), StoreError::ReadOnly(_)));
    set(&file, false);
    set(dir.path(), true);
    assert!(matches!(refused(dir.path()), StoreError::ReadOnly(_)));
    set(dir.path(), false);
    drop(open(dir.path()));
}

#[test]
fn an_interrupted_creation_starts_again() {
    let dir = tempfile::tempdir().unwrap();
    fs::write(dir.path().join("restwater.db.new"), b"half").unwrap();
    fs::write(dir.path().join(FILE_NAME), b"").unwrap();
    let mut store = open(dir.path());
    store.append(&[op(1, 50, 10)], None).unwrap();
    assert!(!dir.path().join("restwater.db.new").exists());
}

/// The queries of opening use an index, so they cost the same in a log of many years.
#[test]
fn opening_reads_no_session_it_does_not_need() {
    let dir = tempfile::tempdir().unwrap();
    let store = Store::open(dir.path(), Uuid::from_u128(1)).unwrap();
    let conn = store.conn().unwrap();
    for (name, sql) in [
        ("last_order", include_str!("sql/last_order.sql")),
        ("session", include_str!("sql/session.sql")),
        ("session_of_before", include_str!("sql/session_of_before.sql")),
        ("next_device", include_str!("sql/next_device.sql")),
        ("written_before", include_str!("sql/written_before.sql")),
        ("kits", include_str!("sql/kits.sql")),
        ("ops_of", include_str!("sql/ops_of.sql")),
        ("snapshot", include_str!("sql/snapshot.sql")),
    ] {
        let mut plan = conn.prepare(&format!("EXPLAIN QUERY PLAN {sql}")).unwrap();
        let count = plan.parameter_count();
        let nothing = vec![rusqlite::types::Null; count];
        let steps = plan.query_map(rusqlite::params_from_iter(nothing), |row| row.get::<_, String>(3));
        let steps: Vec<String> = steps.unwrap().collect::<Result<_, _>>().unwrap();
        let whole = |step: &&String| {
            step.starts_with("SCAN") && !step.contains("INDEX") && !step.contains("CONSTANT")
        };
        assert_eq!(steps.iter().find(whole), None, "{name}: {steps:?}");
        assert!(
            name == "kits" || !steps.iter().any(|step| step.ends_with("B-TREE FOR ORDER BY")),
            "{name}: {steps:?}"
        );
    }
}

fn start(n: u128, session: u128, ms: u64, device: u128) -> Op {
    let payload = Payload::SessionStarted(restwater_log::SessionSetup::default());
    Op { device: Uuid::from_u128(device), payload, ..op(n, session, ms) }
}

#[test]
fn sessions_are_ordered_by_their_beginning_and_selected_by_who_began_them() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    let theirs = |op: Op| Op { device: Uuid::from_u128(2), ..op };
    let early = |op: Op| Op { at: Moment { wall_ms: 0, ..op.at.clone() }, ..op };
    let kit = restwater_log::kit_of(Uuid::from_u128(1));
    let ops = [
        // Neither a tap with the clock set back nor an entry older than the start moves a session.
        start(1, 10, 1_000, 1),
        theirs(op(2, 10, 900)),
        early(op(3, 10, 1_100)),
        start(4, 20, 2_000, 2),
        op(5, 20, 9_000),
        start(6, 30, 3_000, 1),
        Op { session: kit, ..op(7, 0, 2_500) },
        theirs(op(8, 40, 4_000)),
    ];
    for op in &ops {
        store.append(std::slice::from_ref(op), None).unwrap();
    }
    let walk = |next: &dyn Fn(Option<SessionRow>) -> Option<SessionRow>| {
        let mut ids = Vec::new();
        let mut last = None;
        while let Some(row) = next(last) {
            ids.push(row.id.as_u128());
            last = Some(row);
        }
        ids
    };
    let place = |row: Option<SessionRow>| row.map(|row| row.began.order);
    let all: Vec<u128> = store.sessions().unwrap().iter().map(|row| row.id.as_u128()).collect();
    assert_eq!(all, [40, 30, kit.as_u128(), 20, 10]);
    assert_eq!(walk(&|last| store.session_of_before(Uuid::from_u128(1), place(last)).unwrap()), [30, 10]);
    assert_eq!(store.devices().unwrap(), [Uuid::from_u128(1), Uuid::from_u128(2)]);
    let written = walk(&|last| store.written_before(last.and_then(|row| row.own)).unwrap());
    assert_eq!(written, [20, 30, kit.as_u128(), 10]);
    assert_eq!(store.kits().unwrap().iter().map(|row| row.id).collect::<Vec<_>>(), [kit]);
    let first = store.session(Uuid::from_u128(10)).unwrap().unwrap();
    assert_eq!((first.began.wall_ms, first.began.device), (1_000, Some(Uuid::from_u128(1))));
    assert!(store.check(&mut |_, _, _| None).unwrap().is_clean());
    drop(store);
    // The same in one transaction and in another order.
    let other = tempfile::tempdir().unwrap();
    let mut store = open(other.path());
    let reversed: Vec<Op> = ops.iter().rev().cloned().collect();
    store.append(&reversed, None).unwrap();
    let all: Vec<u128> = store.sessions().unwrap().iter().map(|row| row.id.as_u128()).collect();
    assert_eq!(all, [40, 30, kit.as_u128(), 20, 10]);
    assert!(store.check(&mut |_, _, _| None).unwrap().is_clean());
}

#[test]
fn the_version_grows_with_every_entry_however_old() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    assert_eq!(store.version(), 0);
    store.append(&[op(1, 50, 100)], None).unwrap();
    let before = (store.version(), store.last_hlc());
    store.append(&[op(1, 50, 100)], None).unwrap();
    assert_eq!((store.version(), store.last_hlc()), before, "nothing new");
    store.append(&[op(2, 60, 10)], None).unwrap();
    assert!(store.version() > before.0 && store.last_hlc() == before.1);
    let version = store.version();
    drop(store);
    assert_eq!(open(dir.path()).version(), version);
}
