//! Kills: a child process logs, imports, exports, backs up or migrates, is killed with SIGKILL at a random
//! moment, and everything it had acknowledged on its standard output must be there.

mod child;
mod judge;

pub use child::child;

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

/// Anything that prevents the test itself from running.
pub type Failed = Box<dyn std::error::Error>;

/// What the child is busy with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Work {
    /// One append after another.
    Taps,
    /// One import after another.
    Import,
    /// One export after another to the same file.
    Export,
    /// One backup after another, with taps in between.
    Backup,
    /// Opening files of the first schema, which migrates them.
    Migration,
}

impl Work {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Taps, Self::Import, Self::Export, Self::Backup, Self::Migration];

    /// Its name on the command line.
    pub fn name(self) -> &'static str {
        match self {
            Self::Taps => "taps",
            Self::Import => "import",
            Self::Export => "export",
            Self::Backup => "backup",
            Self::Migration => "migration",
        }
    }

    /// The work of a name.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|work| work.name() == name)
    }
}

/// The results of the kills.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Outcome {
    /// Kills.
    pub kills: u64,
    /// Children that had finished before they were killed: their moment was too late.
    pub late: u64,
    /// Acknowledged entries looked for.
    pub entries: u64,
    /// Of these, missing or changed.
    pub lost: u64,
    /// Files on which SQLite's own integrity check was run.
    pub checked: u64,
    /// Files that did not open, were damaged, or were half written under their own name.
    pub broken: u64,
}

/// One kill: starts the child program in a fresh directory, kills it, and checks what is left.
pub fn kill_once(program: &Path, work: Work, seed: u64, outcome: &mut Outcome) -> Result<(), Failed> {
    let dir = tempfile::tempdir()?;
    let mut child = Command::new(program)
        .args(["child", work.name(), &seed.to_string()])
        .arg(dir.path())
        .stdout(Stdio::piped())
        .spawn()?;
    let mut out = BufReader::new(child.stdout.take().ok_or("no standard output")?);
    let mut line = String::new();
    out.read_line(&mut line)?; // "ready": the work begins
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    std::thread::sleep(Duration::from_micros(rng.random_range(0..100_000)));
    outcome.late += u64::from(child.try_wait()?.is_some());
    child.kill()?; // SIGKILL on Unix
    child.wait()?;
    let mut told = Vec::new();
    for line in out.lines() {
        told.push(line?);
    }
    outcome.kills += 1;
    judge::judge(dir.path(), work, seed, &told, outcome)
}
