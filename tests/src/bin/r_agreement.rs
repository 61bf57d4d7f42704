//! Compares the core with R on random waits: `cargo run -p restwater-tests --bin r_agreement`.
#![allow(clippy::print_stdout)]

use restwater_tests::r_agreement::{compare_with_r, have_r, sets, table};
use std::process::ExitCode;

fn main() -> ExitCode {
    let seed = std::env::args().nth(1).and_then(|s| s.parse().ok()).unwrap_or(20);
    if !have_r() {
        eprintln!("no Rscript here: install r-base-core and r-cran-survival");
        return ExitCode::from(2);
    }
    let outcome = tempfile::tempdir()
        .map_err(|e| e.to_string())
        .and_then(|dir| compare_with_r(dir.path(), &sets(seed)));
    match outcome {
        Ok(agreement) => {
            print!("{}", table(&agreement));
            if agreement.differing.is_empty() && agreement.agreed > 0 {
                ExitCode::SUCCESS
            } else {
                ExitCode::FAILURE
            }
        }
        Err(why) => {
            eprintln!("{why}");
            ExitCode::FAILURE
        }
    }
}
