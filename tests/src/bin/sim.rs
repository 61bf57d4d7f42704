//! `./dev sim [--days=N]`: the simulated bank. Prints bites per hour, shares of the oracle's, what is said
//! of changes, and every goal as held or missed. Fails when one is missed. Fewer days than the usual
//! 2,000 a water are for a quick look: their goals mean little.
#![allow(clippy::print_stdout)]

use restwater_tests::sim::change::{Habit, said};
use restwater_tests::sim::share::{Days, catches};
use restwater_tests::sim::water::{Kind, Water};
use restwater_tests::sim::waters::tuned;
use restwater_tests::sim::{goal, on_two_threads, table};
use std::process::ExitCode;

/// Days a water.
const DAYS: u64 = 2000;
/// Days fished after each book of five.
const PER_BOOK: u64 = 8;
/// How many times as keen the fish are for the better colour, where there is one.
const EFFECTS: [f64; 2] = [2.0, 4.0];

fn main() -> ExitCode {
    let mut days = DAYS;
    for argument in std::env::args().skip(1) {
        match argument.strip_prefix("--days=").map(str::parse) {
            Some(Ok(asked)) if asked >= PER_BOOK => days = asked,
            _ => {
                eprintln!("usage: sim [--days=N], N at least {PER_BOOK}");
                return ExitCode::from(2);
            }
        }
    }
    let waters = tuned();
    let asked = Days { run: 0, first: days, books: days / PER_BOOK, per_book: PER_BOOK };
    println!("Bites per hour, {days} first days of five hours a water\n");
    let all = on_two_threads(&waters, |water| catches(water, asked));
    println!("{}", table::bites_per_hour(&all));
    println!("Restwater's advice as a share of the oracle's bites\n\n{}", table::shares(&all));
    let rows = on_two_threads(&comparisons(&waters), |&(water, habit, name, effect)| {
        (format!("{}, {name}", water.name), effect, said(&water, habit, effect, days, 0))
    });
    println!("\"Clearly better\", {days} days a line\n\n{}", table::changes(&rows));
    let mut goals = goal::of_advice(&all);
    goals.extend(goal::of_changes(&rows));
    for goal in &goals {
        println!("{} {}", if goal.held { "held  " } else { "MISSED" }, goal.text);
    }
    let held = goals.iter().filter(|goal| goal.held).count();
    println!("{held} held, {} missed", goals.len() - held);
    if held == goals.len() { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

/// Every way to change on every second water without an effect, and alternating with one.
fn comparisons(waters: &[Water]) -> Vec<(Water, Habit, &'static str, f64)> {
    let uneven = |w: &&Water| {
        matches!(w.kind, Kind::Overdispersed | Kind::Drift | Kind::NobodyHome | Kind::Disturbance)
    };
    let plain = waters.iter().filter(|w| !uneven(w)).step_by(3);
    let mut list = Vec::new();
    for water in plain.chain(waters.iter().filter(uneven)) {
        list.extend(Habit::ALL.map(|(habit, name)| (*water, habit, name, 1.0)));
        list.extend(EFFECTS.map(|effect| (*water, Habit::Alternating, "alternating", effect)));
    }
    list
}
