//! `pooled CASTS OUT`: the logs of many simulated anglers, exported as a club would get them (casts.csv,
//! sessions.csv), and the core's own results (core.json), with which tests/pool/compare.py compares an
//! engine's figures.
#![allow(clippy::print_stdout)] // a command line tool

use restwater_exchange::{CsvOptions, Table, session_csv};
use restwater_session::{Session, wait_of};
use restwater_tests::pooled::{BEGIN_MS, one_day};
use restwater_tests::sim::waters::tuned;
use restwater_waits::{SurvivalCurve, Wait};
use serde::Serialize;
use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{BufWriter, Write};
use std::path::Path;

type Failed = Box<dyn std::error::Error>;

/// Minutes at which the survival curve is read.
const AT_MIN: [f64; 4] = [5.0, 10.0, 15.0, 20.0];
/// One water in one month, as the core has it.
#[derive(Serialize)]
struct Line {
    water: String,
    month: u32,
    casts: usize,
    bites: usize,
    bites_per_hour: f64,
    still_without: [Option<f64>; 4],
}

fn main() -> Result<(), Failed> {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let [casts, out] = args.as_slice() else { return Err("usage: pooled CASTS OUT".into()) };
    let casts: usize = casts.parse()?;
    let out = Path::new(out);
    fs::create_dir_all(out)?;
    let mut casts_csv = BufWriter::new(File::create(out.join("casts.csv"))?);
    let mut sessions_csv = BufWriter::new(File::create(out.join("sessions.csv"))?);
    let mut pooled: BTreeMap<(String, u32), Vec<Wait>> = BTreeMap::new();
    let (mut made, mut number) = (0, 0);
    let waters = tuned();
    while made < casts {
        let session = one_day(&waters[number % waters.len()], number as u64, None);
        table(&session, Table::Casts, &mut casts_csv, number == 0)?;
        table(&session, Table::Sessions, &mut sessions_csv, number == 0)?;
        made += session.casts.len();
        pool(&session, &mut pooled);
        number += 1;
    }
    casts_csv.flush()?;
    sessions_csv.flush()?;
    let lines: Vec<Line> = pooled.into_iter().map(line).collect::<Result<_, Failed>>()?;
    fs::write(out.join("core.json"), serde_json::to_vec_pretty(&lines)?)?;
    println!("{made} casts of {number} sessions, {} waters and months", lines.len());
    Ok(())
}

/// Writes a table of one session; the header only for the first.
fn table(session: &Session, table: Table, out: &mut impl Write, first: bool) -> Result<(), Failed> {
    let mut bytes = Vec::new();
    session_csv(session, table, CsvOptions::default(), None, &mut bytes)?;
    let header = bytes.iter().position(|b| *b == b'\n').map_or(0, |end| end + 1);
    out.write_all(if first { &bytes } else { &bytes[header..] })?;
    Ok(())
}

fn pool(session: &Session, pooled: &mut BTreeMap<(String, u32), Vec<Wait>>) {
    let Some(started) = &session.started else { return };
    let month = ((started.shown.wall_ms - BEGIN_MS) / 86_400_000) as u64;
    let water = session.setup.water.clone().unwrap_or_default();
    let waits = pooled.entry((water, month_of(month))).or_default();
    waits.extend(session.casts.iter().filter_map(|cast| wait_of(session, cast)));
}

/// Month of a day of that winter: November 2025 has 30 days, December and January 31, February 28.
fn month_of(day: u64) -> u32 {
    match day {
        0..30 => 11,
        30..61 => 12,
        61..92 => 1,
        92..120 => 2,
        _ => 3,
    }
}

fn line(((water, month), waits): ((String, u32), Vec<Wait>)) -> Result<Line, Failed> {
    let curve = SurvivalCurve::new(&waits)?;
    let bites = waits.iter().filter(|wait| wait.is_bite()).count();
    let hours: f64 = waits.iter().map(|wait| wait.minutes()).sum::<f64>() / 60.0;
    let still_without = AT_MIN.map(|at| (at <= curve.longest_min()).then(|| curve.survival_at(at)));
    Ok(Line { water, month, casts: waits.len(), bites, bites_per_hour: bites as f64 / hours, still_without })
}
