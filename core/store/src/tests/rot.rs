//! Rows that the storage changed, and the same entries from elsewhere.

use super::*;

#[test]
fn a_row_whose_body_or_hash_changed_is_mended_by_the_entry_itself_and_by_no_other() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    let ops: Vec<Op> = (1..=3).map(|n| op(n, 9, 1_000 * n as u64)).collect();
    store.append(&ops, None).unwrap();
    let damage = |store: &Store, sql: &str| {
        assert_eq!(store.conn().unwrap().execute(sql, []).unwrap(), 1);
    };
    damage(&store, "UPDATE op SET body = CAST(replace(body, 'cast', 'cost') AS BLOB) WHERE seq = 1");
    damage(&store, "UPDATE op SET sha256 = zeroblob(32) WHERE seq = 2");
    let damaged = |store: &Store| store.check(&mut |_, _, _| None).unwrap().damaged_ops;
    assert_eq!(damaged(&store), 2);
    // An entry that merely has the same id is another one, whatever the state of ours.
    let others = [Payload::Bite { rod: 1 }, Payload::Lost { rod: 1 }, Payload::Missed { rod: 1 }];
    for (op, payload) in ops.iter().zip(others) {
        let other = Op { payload, ..op.clone() };
        assert!(matches!(store.append(&[other], None), Err(StoreError::Clash(_))));
    }
    assert_eq!(damaged(&store), 2);
    store.append(&ops, None).unwrap();
    assert_eq!(damaged(&store), 0);
    assert_eq!(store.ops_of(Uuid::from_u128(9)).unwrap(), ops);
}
