//! A model of two phones: seeded days of taps, clocks, files, kills and full disks, checked after every step
//! by an oracle that uses no type of the core.

mod act;
mod actions;
mod beside;
mod check;
mod clock;
mod day;
mod device;
mod foreign;
mod happen;
mod make;
mod naive;
mod oracle;
mod plans;
mod shrink;
mod world;

pub use check::Broken;
pub use day::{Day, read, write};
pub use make::day;

use std::path::Path;
use tempfile::TempDir;

/// The results of some days.
#[derive(Debug, Default)]
pub struct Outcome {
    /// Days on which every promise was kept.
    pub held: u64,
    /// Steps taken on them.
    pub steps: u64,
    /// Entries that were written on them.
    pub entries: u64,
    /// Taps that were refused on them.
    pub refused: u64,
    /// The other days, shrunk, with the promise that was broken.
    pub broken: Vec<(Day, Broken)>,
}

/// A folder in memory if the machine has one, which makes thousands of days quick.
fn folder() -> std::io::Result<TempDir> {
    let memory = Path::new("/dev/shm");
    if memory.is_dir() { TempDir::new_in(memory) } else { TempDir::new() }
}

/// Plays one day; returns what it did, or the promise that was broken.
pub fn play(day: &Day) -> Result<(u64, u64, u64), Broken> {
    let folder = folder().map_err(|e| Broken { promise: "the model can begin", why: e.to_string() })?;
    let world = world::play(day, folder.path()).map_err(|(step, broken)| Broken {
        why: format!("at step {} of {}: {}", step + 1, day.steps.len(), broken.why),
        ..broken
    })?;
    let entries: usize = world.sides.iter().map(|side| side.oracle.log.len()).sum();
    Ok((world.taken, entries as u64, world.refused))
}

/// Plays the days of these seeds; a broken one is shrunk if `small` is set.
pub fn run(seeds: impl IntoIterator<Item = u64>, small: bool) -> Outcome {
    let mut outcome = Outcome::default();
    for seed in seeds {
        let day = make::day(seed);
        match play(&day) {
            Ok((steps, entries, refused)) => {
                outcome.held += 1;
                outcome.steps += steps;
                outcome.entries += entries;
                outcome.refused += refused;
            }
            Err(broken) => {
                outcome.broken.push(if small { shrunk(&day, broken) } else { (day, broken) });
            }
        }
    }
    outcome
}

fn shrunk(day: &Day, broken: Broken) -> (Day, Broken) {
    let mut breaks = |day: &Day| play(day).err().map(|broken| broken.promise.to_owned());
    let day = shrink::shrink(day, broken.promise, &mut breaks);
    let broken = play(&day).err().unwrap_or(broken);
    (day, broken)
}
