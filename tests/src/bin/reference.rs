//! `./dev reference DIR...`: every check case with computed and expected values and the tolerance.
#![allow(clippy::print_stdout)]

use std::path::Path;
use std::process::ExitCode;

fn main() -> ExitCode {
    let mut dirs = Vec::new();
    let mut only = Vec::new();
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    for argument in &arguments {
        match argument.strip_prefix("--topic=") {
            Some(topic) => only.push(topic),
            None => dirs.push(Path::new(argument)),
        }
    }
    if dirs.is_empty() {
        eprintln!("usage: reference DIR... [--topic=NAME ...]");
        return ExitCode::from(2);
    }
    match restwater_tests::reference::run(&dirs, &only) {
        Ok(outcome) => {
            print!("{}", outcome.text);
            println!("{}", outcome.kinds());
            println!("{} passed, {} failed", outcome.passed, outcome.failed);
            if outcome.failed == 0 && outcome.passed > 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE }
        }
        Err(why) => {
            eprintln!("{why}");
            ExitCode::from(2)
        }
    }
}
