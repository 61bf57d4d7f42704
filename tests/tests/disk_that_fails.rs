//! Power cuts and a full disk. One test per process: SQLite's default VFS is shared by all threads.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use restwater_log::Payload;
use restwater_store::{Durability, Store, StoreError};
use restwater_tests::invented::Phone;
use restwater_tests::powercut::{on_disk, run, set_room};

#[test]
fn nothing_acknowledged_is_lost_and_the_test_can_fail() {
    let safe = run(1, 60, 40, Durability::PowerCut).unwrap();
    assert_eq!((safe.cuts, safe.lost, safe.broken), (40, 0, 0), "{safe:?}");
    assert!(safe.entries > 1_000, "{safe:?}");
    let control = run(1, 60, 40, Durability::None).unwrap();
    assert!(control.harmed > 0, "with synchronous=OFF the cuts must do harm: {control:?}");
    a_full_disk();
}

/// A tap on a full disk is refused for that reason; what was there stays, and with room again logging goes
/// on.
fn a_full_disk() {
    let dir = tempfile::tempdir().unwrap();
    let mut phone = Phone::new(2);
    phone.begin();
    Store::open(dir.path(), phone.device()).unwrap().append(phone.ops(), None).unwrap();
    let (refusals, _) = on_disk(None, || {
        let mut store = Store::open(dir.path(), phone.device()).unwrap();
        let mut refusals = 0;
        for room in [0, 100, 5_000, 9_000, 13_000] {
            set_room(Some(room));
            let kept = store.count().unwrap();
            let op = phone.log(Payload::Noted { text: "x".repeat(9_000) }, None);
            match store.append(std::slice::from_ref(&op), None) {
                Ok(()) => assert_eq!(store.count().unwrap(), kept + 1),
                Err(StoreError::NoSpace) => {
                    refusals += 1;
                    assert_eq!(store.count().unwrap(), kept);
                    set_room(None);
                    store.append(&[op], None).unwrap();
                }
                Err(other) => panic!("{other}"),
            }
        }
        set_room(None);
        assert!(store.check(&mut |_, _, _| None).unwrap().is_clean());
        assert_eq!(store.count().unwrap(), 6);
        refusals
    });
    assert!(refusals >= 3, "{refusals}");
}
