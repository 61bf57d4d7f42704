//! `./dev bench stats`: three statistics of up to a million waits compared with R and lifelines, and the
//! exact tests compared with R.
//!
//! `bench_stats [PYTHON]`: the Python that has lifelines; by default the one of the virtual
//! environment `target/peers`, which is made and filled on first use.

use restwater_tests::bench_stats::{Data, SIZES, TABLES, ours, ours_exact, peer, peer_exact, rows};
use std::path::{Path, PathBuf};
use std::process::Command;

/// The peer's version that was last compared.
const LIFELINES: &str = "lifelines==0.30.3";

fn main() -> Result<(), String> {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let python = std::env::args().nth(1).map_or_else(|| peers(here), Ok)?;
    let dir = tempfile::tempdir().map_err(|e| e.to_string())?;
    rows(TABLES, "R stats", &ours_exact(TABLES)?, &peer_exact(&here.join("bench/exact.R"), TABLES)?);
    for size in SIZES {
        let data = Data::new(size);
        let mine = ours(&data)?;
        for (name, program, script) in
            [("R survival", "Rscript", "bench/stats.R"), ("lifelines", &python, "bench/stats.py")]
        {
            rows(size as u64, name, &mine, &peer(program, &here.join(script), &data, dir.path())?);
        }
    }
    Ok(())
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
