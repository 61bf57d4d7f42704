//! Two hundred random sets of waits: every figure agrees with R's survival and stats packages.
#![allow(clippy::unwrap_used, clippy::panic)]

use restwater_tests::r_agreement::{SETS, compare_with_r, sets, table};

#[test]
#[ignore = "needs R with its package survival: ./dev test runs it where they are installed"]
fn two_hundred_sets_agree_with_r() {
    let sets = sets(20);
    assert_eq!(sets.len(), SETS);
    let dir = tempfile::tempdir().unwrap();
    let agreement = compare_with_r(dir.path(), &sets).unwrap();
    assert!(agreement.differing.is_empty(), "{}", table(&agreement));
    assert!(agreement.agreed > 20 * SETS);
}
