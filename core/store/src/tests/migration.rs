//! Schemas and files of earlier versions.

use super::*;
use crate::schema::{migrate_to, version};

#[test]
fn each_step_of_migration_reaches_its_version_with_the_schema_as_shipped() {
    let shipped = [
        include_str!("../fixtures/schema-1.txt"),
        include_str!("../fixtures/schema-2.txt"),
        include_str!("../fixtures/schema-3.txt"),
    ];
    assert_eq!(shipped.len(), KNOWN_VERSION as usize);
    let mut conn = Connection::open_in_memory().unwrap();
    for (target, schema) in (1..).zip(shipped) {
        migrate_to(&mut conn, target).unwrap();
        if target == 1 {
            conn.execute(include_str!("../sql/set_device.sql"), [Uuid::from_u128(1).as_bytes()]).unwrap();
        }
        assert_eq!(version(&conn).unwrap(), target);
        assert_eq!(schema_text(&conn), schema);
        migrate_to(&mut conn, target).unwrap();
    }
}

/// The schema without comments and white space, one object on each line.
fn schema_text(conn: &Connection) -> String {
    let mut statement =
        conn.prepare("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY type, name").unwrap();
    let rows = statement.query_map([], |row| row.get::<_, String>(0)).unwrap();
    let mut text = String::new();
    for sql in rows {
        let sql = sql.unwrap();
        let bare: Vec<&str> = sql.lines().map(|l| l.split("--").next().unwrap_or_default()).collect();
        text.push_str(&bare.join(" ").split_whitespace().collect::<Vec<_>>().join(" "));
        text.push('\n');
    }
    text
}

#[test]
fn every_shipped_file_opens_with_all_its_contents() {
    let shipped = [
        &include_bytes!("../fixtures/store-1.db")[..],
        include_bytes!("../fixtures/store-2.db"),
        include_bytes!("../fixtures/store-3.db"),
    ];
    assert_eq!(shipped.len(), KNOWN_VERSION as usize);
    for (bytes, version_of_file) in shipped.into_iter().zip(1_u8..) {
        assert_eq!(bytes[63], version_of_file, "user_version in the header");
        let dir = tempfile::tempdir().unwrap();
        fs::write(dir.path().join(FILE_NAME), bytes).unwrap();
        let mut store = Store::open(dir.path(), Uuid::from_u128(99)).unwrap();
        assert_eq!(version(&store.conn().unwrap()).unwrap(), KNOWN_VERSION);
        assert_eq!(store.device(), Uuid::from_u128(1));
        assert_eq!(store.ops_of(Uuid::from_u128(50)).unwrap(), vec![op(1, 50, 10), op(2, 50, 20)]);
        assert!(store.check(&mut |_, _, _| None).unwrap().is_clean(), "the projections follow from the log");
        assert_eq!(store.setting("hand").unwrap().as_deref(), Some("left"));
        assert_eq!(store.snapshot(Uuid::from_u128(50)).unwrap().unwrap().body, b"folded");
        store.append(&[op(3, 50, 30)], None).unwrap();
    }
}

#[test]
fn a_store_of_schema_2_gets_the_beginnings_of_its_sessions_from_its_log() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join(FILE_NAME);
    let mut conn = Connection::open(&path).unwrap();
    migrate_to(&mut conn, 2).unwrap();
    conn.execute(include_str!("../sql/set_device.sql"), [Uuid::from_u128(1).as_bytes()]).unwrap();
    let later_set_back = Op { at: Moment { wall_ms: 5, ..op(3, 50, 30).at }, ..op(3, 50, 30) };
    let ops = [start(1, 50, 10, 1), start(2, 60, 20, 2), later_set_back, op(4, 70, 40)];
    for (no, op) in (1..).zip(&ops) {
        let (session, order) = (op.session.into_bytes(), order_bytes(op.order()));
        conn.execute(
            "INSERT INTO session (no, id, first_wall_ms, ops, last_order) VALUES (?1, ?2, 5, 1, ?3)
             ON CONFLICT (id) DO UPDATE SET ops = ops + 1, last_order = ?3",
            (no, session, order),
        )
        .unwrap();
        let bytes = canonical_bytes(op).unwrap();
        // The last entry is damaged. That is found when it is read, and is no reason to refuse the whole log.
        let sha = if no == 4 { [0; 32] } else { Hashed::of(&bytes).sha256 };
        conn.execute(
            "INSERT INTO op (session, id, sha256, body) SELECT no, ?2, ?3, ?4 FROM session WHERE id = ?1",
            (session, op.id.into_bytes(), sha, bytes),
        )
        .unwrap();
    }
    drop(conn);
    let store = open(dir.path());
    let rows = store.sessions().unwrap();
    let told: Vec<_> =
        rows.iter().map(|row| (row.id.as_u128(), row.began.order.0.ms, row.own.is_some())).collect();
    assert_eq!(told, [(70, 40, false), (60, 20, false), (50, 10, true)]);
    assert_eq!(rows[2].began, restwater_log::Began::of(&ops[0]));
    assert_eq!(rows[2].own, Some(ops[2].order()));
    let own = store.session_of_before(store.device(), None).unwrap().unwrap();
    assert_eq!(own.id.as_u128(), 50);
}

/// Writes the fixtures of the present schema. To be run once, when a schema is shipped.
#[test]
#[ignore = "not a check: writes the fixtures of a new schema into the tree; run by hand when a schema is shipped"]
fn write_fixtures_of_this_schema() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    store.append(&[op(1, 50, 10), op(2, 50, 20)], None).unwrap();
    store.set_setting("hand", "left").unwrap();
    let session = Uuid::from_u128(50);
    let last = op(2, 50, 20).order();
    store.put_snapshot(&SnapshotRow { session, ops: 2, last, version: 1, body: b"folded".to_vec() }).unwrap();
    let schema = schema_text(&store.conn().unwrap());
    store.pause().unwrap();
    let fixtures = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/fixtures");
    fs::copy(dir.path().join(FILE_NAME), fixtures.join(format!("store-{KNOWN_VERSION}.db"))).unwrap();
    fs::write(fixtures.join(format!("schema-{KNOWN_VERSION}.txt")), schema).unwrap();
}
