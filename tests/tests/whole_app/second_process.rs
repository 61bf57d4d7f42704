//! A second process on the same store is refused and does no harm.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use restwater_store::{Store, StoreError};
use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};
use uuid::Uuid;

#[test]
fn the_second_is_refused_and_may_follow_once_the_first_has_ended() {
    let dir = tempfile::tempdir().unwrap();
    let mut first = Command::new(env!("CARGO_BIN_EXE_crash"))
        .args(["child", "taps", "1"])
        .arg(dir.path())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(first.stdout.take().unwrap()).lines();
    assert_eq!(lines.next().unwrap().unwrap(), "ready");
    assert!(matches!(Store::open(dir.path(), Uuid::nil()), Err(StoreError::Busy)));
    let told = lines.next().unwrap().unwrap();
    assert!(told.starts_with("tap "), "the first goes on undisturbed: {told}");
    first.kill().unwrap();
    first.wait().unwrap();
    let acknowledged = 2 + lines.count() as u64; // the start of the session and the first tap, then the rest
    let store = Store::open(dir.path(), Uuid::nil()).unwrap();
    assert!(store.count().unwrap() >= acknowledged);
    assert!(store.check(&mut |_, _, _| None).unwrap().is_clean());
}
