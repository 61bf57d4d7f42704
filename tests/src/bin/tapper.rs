//! The child of the kill test: taps through the app without a pause and reports what was acknowledged.
//!
//! After each tap it prints the number of ops and the wall time of the running cast's splash, or `-`.
#![allow(clippy::print_stdout)] // a command line tool

use restwater_app::{Action, App};
use restwater_tests::phone::{Seeded, now};
use std::io::Write;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let args: Vec<String> = std::env::args().collect();
    let [_, dir, seed] = &args[..] else { return Err("usage: tapper DIR SEED".into()) };
    let mut app = App::open(dir.as_ref(), Box::new(Seeded::new(seed.parse()?)), &now()?)?;
    let mut out = std::io::stdout().lock();
    if app.session().is_none() {
        app.act(&Action::StartSession { setup: None }, &now()?)?;
    }
    // The previous child was ahead of the clocks too: no clock of a boot runs backwards.
    let last = app.ops().iter().map(|op| op.at.mono_ms).max();
    let ahead_ms = last.map_or(0, |last| last - now().map_or(last, |now| now.mono_ms)).max(0);
    for round in 0_i64.. {
        // Every fourth is undone; UNDO itself is logged, so the count still grows.
        let tap = match round % 4 {
            0 | 2 => Action::Cast { rod: 1 },
            1 => Action::Liner { rod: 1 },
            _ => Action::Undo,
        };
        // The pad's own rule would count quick casts as one: a test may tap at the pace of its clock.
        let mut at = now()?;
        at.mono_ms += ahead_ms + (round + 1) * 701;
        at.wall_ms += ahead_ms + (round + 1) * 701;
        app.act(&tap, &at)?;
        let start = app
            .session()
            .and_then(|s| s.running(1))
            .map_or("-".to_owned(), |c| c.start.shown.wall_ms.to_string());
        writeln!(out, "{} {start} {}", app.ops().len(), at.wall_ms)?;
        out.flush()?;
    }
    Ok(())
}
