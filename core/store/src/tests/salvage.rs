//! A damaged store, and a salvage that is interrupted anywhere.

use super::*;
use crate::salvage::{Step, salvage_stopping};

/// A damaged store of 200 entries, some of them only in the write-ahead log, as a killed app leaves them.
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
fn a_salvage_interrupted_anywhere_loses_nothing_and_is_continued() {
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
            // The new store was complete: the next opening puts it in its place.
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
fn a_second_salvage_in_the_same_millisecond_also_moves_its_file_aside() {
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

#[test]
fn a_salvage_keeps_all_settings_except_those_to_forget() {
    let setting = |forget: &[&str]| {
        let dir = tempfile::tempdir().unwrap();
        let mut store = open(dir.path());
        for n in 1..=200 {
            store.append(&[op(n, 50, 10 * n as u64)], None).unwrap();
        }
        store.set_setting("hand", "left").unwrap();
        store.pause().unwrap();
        drop(store);
        // The last page contains entries, so the settings are still intact.
        let file = dir.path().join(FILE_NAME);
        let mut bytes = fs::read(&file).unwrap();
        let last = bytes.len() - 4_096;
        bytes[last..].fill(0xff);
        fs::write(&file, bytes).unwrap();
        Store::salvage(dir.path(), Uuid::from_u128(9), 0, forget).unwrap();
        open(dir.path()).setting("hand").unwrap()
    };
    assert_eq!(setting(&[]).as_deref(), Some("left"));
    assert_eq!(setting(&["hand"]), None);
}

/// An entry of a later version has a field that is unknown here. Its bytes must stay the same, so that it
/// remains the same entry everywhere.
#[test]
fn an_entry_is_saved_with_its_unknown_fields() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    let entry = op(1, 50, 10);
    store.append(&[op(2, 50, 20)], None).unwrap();
    let mut value: serde_json::Value = serde_json::from_slice(&canonical_bytes(&entry).unwrap()).unwrap();
    value["payload"]["later"] = 1.into();
    let body = serde_json::to_vec(&value).unwrap();
    {
        let mut conn = store.conn().unwrap();
        let tx = conn.transaction().unwrap();
        let mut adding = Adding::begin(&tx).unwrap();
        assert_eq!(adding.add(&entry, Hashed::of(&body)).unwrap(), Added::New);
        adding.finish().unwrap();
        tx.commit().unwrap();
    }
    store.pause().unwrap();
    drop(store);
    let file = dir.path().join(FILE_NAME);
    let mut bytes = fs::read(&file).unwrap();
    bytes[100..4_096].fill(0x5A);
    fs::write(&file, bytes).unwrap();
    Store::salvage(dir.path(), Uuid::from_u128(9), 0, &[]).unwrap();
    let mut found = Vec::new();
    each_op_of_file::<StoreError>(&file, &mut |row| {
        found.push(row.unwrap().to_vec());
        Ok(())
    })
    .unwrap();
    assert_eq!(found.len(), 2);
    assert!(
        found.contains(&body),
        "{:?}",
        found.iter().map(|b| String::from_utf8_lossy(b)).collect::<Vec<_>>()
    );
}

/// A folder with the name of an older backup can't be removed like a file, but the new backup is made anyway.
#[test]
fn a_backup_succeeds_even_if_an_older_one_can_not_be_removed() {
    let dir = tempfile::tempdir().unwrap();
    let mut store = open(dir.path());
    store.append(&[op(1, 50, 10)], None).unwrap();
    let backups = dir.path().join("backups");
    for name in ["restwater-20010101T000000Z.db", "restwater-20010101T000010Z.db"] {
        fs::create_dir_all(backups.join(name)).unwrap();
    }
    let made =
        store.backup(&backups, 1_768_032_000_000, &mut |_, _| std::ops::ControlFlow::Continue(())).unwrap();
    assert!(made.unwrap().path.exists());
}
