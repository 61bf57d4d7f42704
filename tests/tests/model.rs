//! Two hundred days of two phones, checked by the oracle. One test per process: on some days the power-cut
//! test's VFS is SQLite's default, which is shared by all threads.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use restwater_tests::model::{play, read, run, write};

/// Its own seeds: `./dev model` begins elsewhere.
const FIRST: u64 = 9_000_000;

#[test]
fn two_hundred_days_keep_every_promise() {
    let outcome = run(FIRST..FIRST + 200, true);
    let broken: Vec<String> = outcome
        .broken
        .iter()
        .map(|(day, broken)| format!("{}: {}\n{}", broken.promise, broken.why, write(day)))
        .collect();
    assert!(broken.is_empty(), "{} of 200 days broken:\n{}", broken.len(), broken.join("\n"));
    // A model that does nothing would keep every promise.
    assert!(outcome.steps > 4_000 && outcome.entries > 4_000 && outcome.refused > 400, "{outcome:?}");
    kept_days();
}

/// Days that once broke a promise.
fn kept_days() {
    let days = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("days/model");
    let mut played = 0;
    for file in std::fs::read_dir(days).unwrap() {
        let path = file.unwrap().path();
        played += 1;
        let day = read(&std::fs::read_to_string(&path).unwrap()).unwrap();
        if let Err(broken) = play(&day) {
            panic!("{}: {}: {}", path.display(), broken.promise, broken.why);
        }
    }
    assert!(played > 0, "no day was kept");
}
