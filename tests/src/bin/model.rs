//! `model DAYS [SEED]`: seeded days of two phones, checked by a naive oracle; `model --replay FILE...` plays
//! day files.
#![allow(clippy::print_stdout)] // a command line tool

use restwater_tests::model::{Broken, Day, Outcome, play, read, run, write};
use std::collections::BTreeMap;
use std::error::Error;
use std::process::ExitCode;
use std::time::Instant;

/// Broken days per promise that are shrunk and printed; the others are only counted.
const PRINTED_OF_A_KIND: usize = 1;

fn main() -> Result<ExitCode, Box<dyn Error>> {
    let args: Vec<String> = std::env::args().skip(1).collect();
    if let Some((first, files)) = args.split_first()
        && first == "--replay"
    {
        return replay(files);
    }
    let days: u64 = args.first().map_or(Ok(200), |n| n.parse())?;
    let seed: u64 = args.get(1).map_or(Ok(1), |n| n.parse())?;
    let start = Instant::now();
    let first = seed.wrapping_mul(1_000_000);
    let outcome = run(first..first + days, false);
    let seconds = start.elapsed().as_secs_f64();
    print_broken(&outcome);
    println!(
        "model: {} steps, {} entries, {} taps refused; {:.1} days a second",
        outcome.steps,
        outcome.entries,
        outcome.refused,
        days as f64 / seconds
    );
    Ok(end(outcome.held, outcome.broken.len() as u64))
}

fn end(held: u64, broken: u64) -> ExitCode {
    println!("{held} days held, {broken} broken");
    if broken == 0 && held > 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

/// Shrinks one day for each broken promise and prints it as a file.
fn print_broken(outcome: &Outcome) {
    let mut kinds: BTreeMap<&str, Vec<&(Day, Broken)>> = BTreeMap::new();
    for one in &outcome.broken {
        kinds.entry(one.1.promise).or_default().push(one);
    }
    for (promise, days) in kinds {
        println!("{} broken: {promise}; seeds {}", days.len(), seeds(&days));
        for (day, _) in days.iter().take(PRINTED_OF_A_KIND) {
            for (day, broken) in run([day.seed], true).broken {
                println!("# {}: {}\n{}", broken.promise, broken.why, write(&day));
            }
        }
    }
}

fn seeds(days: &[&(Day, Broken)]) -> String {
    let seeds: Vec<String> = days.iter().take(12).map(|(day, _)| day.seed.to_string()).collect();
    seeds.join(" ")
}

fn replay(files: &[String]) -> Result<ExitCode, Box<dyn Error>> {
    let (mut held, mut broken) = (0, 0);
    for file in files {
        match play(&read(&std::fs::read_to_string(file)?)?) {
            Ok(_) => held += 1,
            Err(why) => {
                broken += 1;
                println!("{file}: {}: {}", why.promise, why.why);
            }
        }
    }
    Ok(end(held, broken))
}
