//! `powercut N`: cuts the power N times and looks for every acknowledged entry, then shows with
//! `synchronous=OFF` that the same cuts do find losses if there are any.
#![allow(clippy::print_stdout)] // a command line tool

use restwater_store::Durability;
use restwater_tests::powercut::{Failed, Outcome, run};
use std::process::ExitCode;

const TAPS: usize = 80;
const CUTS_A_RUN: u64 = 25;

fn main() -> Result<ExitCode, Failed> {
    let cuts: u64 = std::env::args().nth(1).unwrap_or_else(|| "1000".into()).parse()?;
    let safe = many(cuts, Durability::PowerCut)?;
    println!(
        "powercut: {} cuts, {} acknowledged entries looked for, {} lost, {} stores broken",
        safe.cuts, safe.entries, safe.lost, safe.broken
    );
    let control = many(cuts.div_ceil(4), Durability::None)?;
    println!(
        "control with synchronous=OFF: {} cuts, {} harmed, {} entries lost, {} stores broken (losses are expected here)",
        control.cuts, control.harmed, control.lost, control.broken
    );
    let good = safe.lost == 0 && safe.broken == 0 && safe.entries > 0 && control.harmed > 0;
    println!("{}", if good { "2 passed, 0 failed" } else { "failed" });
    Ok(if good { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

fn many(cuts: u64, durability: Durability) -> Result<Outcome, Failed> {
    let mut sum = Outcome::default();
    let mut seed = 1;
    while sum.cuts < cuts {
        let one = run(seed, TAPS, CUTS_A_RUN.min(cuts - sum.cuts), durability)?;
        sum.cuts += one.cuts;
        sum.entries += one.entries;
        sum.lost += one.lost;
        sum.broken += one.broken;
        sum.harmed += one.harmed;
        seed += 1;
    }
    Ok(sum)
}
