//! 200 kills between taps: no acknowledged entry is missing afterwards, and the running wait is right.

use restwater_app::{App, Screen, Which};
use restwater_log::Moment;
use restwater_tests::phone::{Seeded, now};
use std::error::Error;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

const KILLS: u64 = 200;
/// After this many kills the log is a new one; until then each child continues with what the killed one left.
const KILLS_A_LOG: u64 = 10;
const FIVE_MINUTES_MS: i64 = 300_000;

/// The last line of the child before it was killed.
struct Acknowledged {
    ops: usize,
    running_since_ms: Option<i64>,
    tapped_ms: i64,
}

fn tap_and_kill(dir: &Path, seed: u64) -> Result<Acknowledged, Box<dyn Error>> {
    let mut child = Command::new(env!("CARGO_BIN_EXE_tapper"))
        .arg(dir)
        .arg(seed.to_string())
        .stdout(Stdio::piped())
        .spawn()?;
    let mut out = BufReader::new(child.stdout.take().ok_or("no standard output")?);
    let mut first = String::new();
    out.read_line(&mut first)?;
    // A moment independent of the taps, spread over some tens of them.
    std::thread::sleep(Duration::from_micros(seed * 7_919 % 40_000));
    child.kill()?;
    child.wait()?;
    let rest: Vec<String> = out.lines().collect::<Result<_, _>>()?;
    // A line cut off by the kill was not acknowledged completely.
    let last = rest.iter().rev().find(|line| line.split(' ').count() == 3).unwrap_or(&first);
    let fields: Vec<&str> = last.trim().split(' ').collect();
    let [ops, since, tapped] = fields[..] else { return Err(format!("the child said {last:?}").into()) };
    Ok(Acknowledged { ops: ops.parse()?, running_since_ms: since.parse().ok(), tapped_ms: tapped.parse()? })
}

/// The digits of rod 1 five minutes after the running cast's splash, by the same boot or after a reboot.
fn elapsed_ms(app: &mut App, since_ms: i64, rebooted: bool) -> Result<i64, Box<dyn Error>> {
    let start = app.session().and_then(|s| s.running(1)).ok_or("nothing runs")?.start.shown.clone();
    assert_eq!(start.wall_ms, since_ms);
    let mut later = Moment {
        wall_ms: start.wall_ms + FIVE_MINUTES_MS,
        mono_ms: start.mono_ms + FIVE_MINUTES_MS,
        ..Moment::clone(&start)
    };
    if rebooted {
        later.boot = "another".into();
        later.mono_ms = 7;
    }
    let Screen::Bank(bank) = app.screen(Which::Bank, &later)? else {
        return Err("not the Bank screen".into());
    };
    Ok(bank.rods[0].elapsed_ms)
}

#[test]
fn two_hundred_kills_lose_nothing() -> Result<(), Box<dyn Error>> {
    let mut entries = 0;
    let mut dir = tempfile::tempdir()?;
    for kill in 0..KILLS {
        if kill % KILLS_A_LOG == 0 {
            dir = tempfile::tempdir()?;
        }
        let said = tap_and_kill(dir.path(), kill + 1)?;
        let mut app = App::open(dir.path(), Box::new(Seeded::new(1_000 + kill)), &now()?)?;
        // A tap whose answer was cut off by the kill may have been stored; never the other way round.
        assert!(
            app.ops().len() >= said.ops,
            "kill {kill}: {} of {} ops are there",
            app.ops().len(),
            said.ops
        );
        entries += said.ops;
        if app.ops().len() == said.ops
            && let Some(since_ms) = said.running_since_ms
        {
            assert!(since_ms <= said.tapped_ms);
            for rebooted in [false, true] {
                let off = elapsed_ms(&mut app, since_ms, rebooted)? - FIVE_MINUTES_MS;
                assert!(off.abs() <= 1_000, "kill {kill}: the wait is {off} ms off");
            }
        }
    }
    assert!(entries > KILLS as usize, "the child hardly tapped: {entries} entries");
    Ok(())
}
