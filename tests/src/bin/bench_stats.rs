//! `./dev bench stats`: three statistics of up to a million waits beside R and lifelines.
//!
//! `bench_stats [PYTHON]`: the Python that has lifelines; by default the one of the virtual
//! environment `target/peers`, which is made and filled on first use.
#![allow(clippy::print_stdout)]

use restwater_tests::bench_stats::{Data, SIZES, lines, ours, peer};
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};

/// The peer's version this was last measured against.
const LIFELINES: &str = "lifelines==0.30.3";

fn main() -> ExitCode {
    match run(std::env::args().nth(1)) {
        Ok(0) => ExitCode::SUCCESS,
        Ok(_) => ExitCode::FAILURE,
        Err(why) => {
            eprintln!("{why}");
            ExitCode::from(2)
        }
    }
}

fn run(python: Option<String>) -> Result<usize, String> {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let python = python.map_or_else(|| peers(here), Ok)?;
    let dir = tempfile::tempdir().map_err(|e| e.to_string())?;
    let (mut held, mut missed) = (0, 0);
    println!("{:<36} {:>12} {:>12} {:>9} {:>7}", "name", "ours", "peer", "ratio", "goal");
    for size in SIZES {
        let data = Data::new(size);
        let mine = ours(&data)?;
        let peers = [("R survival", "Rscript", "bench/stats.R"), ("lifelines", &python, "bench/stats.py")];
        for (name, program, script) in peers {
            let theirs = peer(program, &here.join(script), &data, dir.path())?;
            let mut text = String::new();
            let (h, m) = lines(size, name, &mine, &theirs, &mut text);
            print!("{text}");
            held += h;
            missed += m;
        }
    }
    println!("{held} held, {missed} missed");
    Ok(missed)
}

/// The virtual environment's Python, with lifelines in it.
fn peers(here: &Path) -> Result<String, String> {
    let home: PathBuf = here.join("../target/peers");
    let python = home.join("bin/python");
    let shown = python.display().to_string();
    let has_it =
        |p: &str| Command::new(p).args(["-c", "import lifelines"]).output().is_ok_and(|o| o.status.success());
    if has_it(&shown) {
        return Ok(shown);
    }
    let did = |command: &mut Command| match command.status() {
        Ok(status) if status.success() => Ok(()),
        Ok(status) => Err(format!("{command:?}: {status}")),
        Err(e) => Err(format!("{command:?}: {e}")),
    };
    did(Command::new("python3").args(["-m", "venv"]).arg(&home))?;
    did(Command::new(&python).args(["-m", "pip", "install", "--quiet", LIFELINES]))?;
    if has_it(&shown) { Ok(shown) } else { Err("lifelines was installed but does not load".into()) }
}
