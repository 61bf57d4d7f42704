//! `crash N`: kills a child N times in the middle of taps, imports, exports, backups and migrations, and
//! looks for every acknowledged entry.
#![allow(clippy::print_stdout)] // a command line tool

use restwater_tests::crash::{Failed, Outcome, Work, child, kill_once};
use std::process::ExitCode;

fn main() -> Result<ExitCode, Failed> {
    let args: Vec<String> = std::env::args().skip(1).collect();
    if let [word, work, seed, dir] = &args[..]
        && word == "child"
    {
        let work = Work::named(work).ok_or("no such work")?;
        child(work, seed.parse()?, dir.as_ref())?;
        return Ok(ExitCode::SUCCESS);
    }
    let kills: u64 = args.first().map_or(Ok(1_000), |n| n.parse())?;
    let program = std::env::current_exe()?;
    let mut failed = 0;
    for (work, n) in Work::ALL.into_iter().zip(0..) {
        let mut outcome = Outcome::default();
        for seed in (n..kills).step_by(Work::ALL.len()) {
            kill_once(&program, work, seed + 1, &mut outcome)?;
        }
        println!(
            "crash {:9}: {} kills ({} too late), {} acknowledged entries looked for, {} lost, {} files checked, {} broken",
            work.name(),
            outcome.kills,
            outcome.late,
            outcome.entries,
            outcome.lost,
            outcome.checked,
            outcome.broken
        );
        let idle = outcome.kills > 0 && (outcome.entries == 0 || outcome.checked == 0);
        failed += u64::from(outcome.lost > 0 || outcome.broken > 0 || idle);
    }
    println!("{} passed, {failed} failed", Work::ALL.len() as u64 - failed);
    Ok(if failed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}
