//! A damaged store, and a salvage that is ended anywhere.

use super::*;
use crate::salvage::{Step, salvage_stopping};

/// A damaged store of 200 entries, some of them in the write-ahead log alone, as a killed app leaves them.
fn damaged() -> tempfile::TempDir {
    let (made, dir) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    let mut store = open(made.path());
    for n in 1..=200 {
        store.append(&[op(n, 50, 10 * n as u64)], None).unwrap();
        if n == 150 {
            store.pause().unwrap();
        }
    }
    store.set_setting("hand", "left").unwrap();
    for name in [FILE_NAME, "restwater.db-wal"] {
        fs::copy(made.path().join(name), dir.path().join(name)).unwrap();
    }
    let file = dir.path().join(FILE_NAME);
    let mut bytes = fs::read(&file).unwrap();
    bytes[4_096..8_192].fill(0xff);
    fs::write(&file, bytes).unwrap();
    dir
}

#[test]
fn a_salvage_that_is_ended_anywhere_loses_nothing_and_is_gone_on_with() {
    let ended = |step| move |at: Step| if at == step { Err(StoreError::NoSpace) } else { Ok(()) };
    for step in [Step::Filling, Step::Whole, Step::LogSetAside, Step::SetAside] {
        let dir = damaged();
        let before = bytes_of(dir.path());
        let error = salvage_stopping(dir.path(), Uuid::from_u128(9), 77, &[], &mut ended(step)).unwrap_err();
        assert!(matches!(error, StoreError::NoSpace));
        let count = if step == Step::Filling {
            assert!(bytes_of(dir.path()) == before, "the damaged store is as it was");
            {
                Store::salvage(dir.path(), Uuid::from_u128(9), 78, &[]).unwrap();
                Store::open(dir.path(), Uuid::from_u128(9)).unwrap().count().unwrap()
            }
        } else {
            // The new store was whole: what opens the log next puts it in its place.
            open(dir.path()).count().unwrap()
        };
        assert_eq!(count, 200, "{step:?}");
        let store = open(dir.path());
        assert_eq!(store.device(), Uuid::from_u128(1), "{step:?}");
        assert!(store.check(&mut |_, _, _| None).unwrap().is_clean());
        drop(store);
        let after = bytes_of(dir.path());
        for (name, bytes) in &before {
            let end = name.strip_prefix(FILE_NAME).unwrap();
            let aside = after.iter().find(|(name, _)| {
                name.strip_suffix(end)
                    .is_some_and(|name| name.starts_with("restwater.db.damaged-7") && !name.ends_with("-wal"))
            });
            assert!(aside.is_some_and(|(_, kept)| kept == bytes), "{step:?} {name}: the damaged file stays");
        }
        assert!(!after.iter().any(|(name, _)| name.contains("sav")), "{step:?}");
    }
}

#[test]
fn a_second_salvage_in_the_same_millisecond_sets_its_file_aside_too() {
    let dir = damaged();
    for files in 1..=2 {
        Store::salvage(dir.path(), Uuid::from_u128(9), 0, &[]).unwrap();
        let aside = fs::read_dir(dir.path()).unwrap().filter(|entry| {
            let name = entry.as_ref().unwrap().file_name().into_string().unwrap();
            name.contains("damaged") && !name.ends_with("-wal")
        });
        assert_eq!(aside.count(), files);
    }
}
