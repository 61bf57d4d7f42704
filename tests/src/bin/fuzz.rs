//! `fuzz SECONDS [TARGET...]`: mutates the kept inputs for this many seconds each and runs the targets on
//! them. It needs no nightly compiler; with one, `cargo fuzz` runs the same targets with coverage. An input
//! that makes a target panic is kept under tests/fuzz/crashers, and the ordinary tests replay it.
#![allow(clippy::print_stdout)] // a command line tool

use restwater_log::sha256_hex;
use restwater_tests::fuzz::{Mutator, TARGETS, Target, folder, kept_inputs, seed_op_file};
use std::panic::catch_unwind;
use std::process::ExitCode;
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

type Failed = Box<dyn std::error::Error>;

fn main() -> Result<ExitCode, Failed> {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let seconds: u64 = args.first().map_or(Ok(60), |n| n.parse())?;
    let seed = SystemTime::now().duration_since(UNIX_EPOCH)?.as_secs();
    println!("seed {seed}");
    let mut failed = 0;
    let chosen: Vec<&Target> =
        TARGETS.iter().filter(|(name, _)| args.len() < 2 || args[1..].iter().any(|a| a == name)).collect();
    for (name, target) in &chosen {
        let mut kept: Vec<Vec<u8>> = kept_inputs(name)?.into_iter().map(|(_, bytes)| bytes).collect();
        if *name == "op_file" {
            kept.extend((0..4).map(|n| seed_op_file(seed + n)));
        }
        let mut mutator = Mutator::new(seed, kept);
        let (mut runs, mut crashed) = (0_u64, None);
        let until = Instant::now() + Duration::from_secs(seconds);
        while Instant::now() < until && crashed.is_none() {
            for _ in 0..50 {
                let input = mutator.make();
                runs += 1;
                if catch_unwind(|| target(&input)).is_err() {
                    crashed = Some(input);
                    break;
                }
            }
        }
        if let Some(input) = crashed {
            let dir = folder().join("crashers").join(name);
            std::fs::create_dir_all(&dir)?;
            let path = dir.join(&sha256_hex(&input)[..16]);
            std::fs::write(&path, &input)?;
            println!("fuzz {name}: crashed after {runs} inputs, kept as {}", path.display());
            failed += 1;
        } else {
            println!("fuzz {name}: {runs} inputs in {seconds} s, no crash");
        }
    }
    println!("{} passed, {failed} failed", chosen.len() - failed);
    Ok(if failed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}
