//! Two hundred random sets of waits: every figure agrees with R's survival and stats packages.
#![allow(clippy::unwrap_used, clippy::panic, clippy::print_stdout)]

use restwater_tests::r_agreement::{SETS, compare_with_r, have_r, sets, table};

#[test]
fn two_hundred_sets_agree_with_r() {
    let sets = sets(20);
    assert_eq!(sets.len(), SETS);
    if !have_r() {
        println!("not run: no Rscript");
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let agreement = compare_with_r(dir.path(), &sets).unwrap();
    assert!(agreement.differing.is_empty(), "{}", table(&agreement));
    assert!(agreement.agreed > 20 * SETS);
}
