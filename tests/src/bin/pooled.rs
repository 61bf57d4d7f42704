//! `pooled CASTS OUT`: the logs of many simulated anglers, exported as a club would get them (OUT/files), and the core's own
//! results (core.json), with which tests/pool/compare.py compares an engine's figures.
//!
//! Some days were sent twice, by two partners: as they are, as they were before their last entries, or as they were before a
//! cast was entered or undone at home, or all of it was undone. The names of the files don't tell which is the later.
#![allow(clippy::print_stdout)] // a command line tool

use restwater_exchange::{CsvOptions, Origin, Table, month_of, session_csv};
use restwater_session::{Session, waits_of};
use restwater_tests::pooled::{Day, Oddity, odd_day};
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

/// One water in one month, by the core.
#[derive(Serialize)]
struct Line {
    water: String,
    month: u8,
    waits: usize,
    bites: usize,
    bites_per_rod_hour: f64,
    still_without: [Option<f64>; 4],
}

/// The two tables that one phone sent.
struct Tables {
    casts: BufWriter<File>,
    sessions: BufWriter<File>,
    begun: bool,
}

impl Tables {
    fn new(folder: &Path, phone: &str) -> Result<Self, Failed> {
        let file =
            |table: &str| File::create(folder.join(format!("restwater-2026-03-31-{table}-{phone}.csv")));
        let (casts, sessions) = (BufWriter::new(file("casts")?), BufWriter::new(file("sessions")?));
        Ok(Self { casts, sessions, begun: false })
    }

    fn add(&mut self, day: &Day) -> Result<Session, Failed> {
        let session = day.session();
        let origin = Origin { phone: None, entries: day.entries() };
        for (table, out) in [(Table::Casts, &mut self.casts), (Table::Sessions, &mut self.sessions)] {
            let mut bytes = Vec::new();
            session_csv(&session, table, CsvOptions::default(), origin, &mut bytes)?;
            let header = bytes.iter().position(|b| *b == b'\n').map_or(0, |end| end + 1);
            out.write_all(if self.begun { &bytes[header..] } else { &bytes })?;
        }
        self.begun = true;
        Ok(session)
    }

    fn end(mut self) -> Result<(), Failed> {
        self.casts.flush()?;
        Ok(self.sessions.flush()?)
    }
}

fn main() -> Result<(), Failed> {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let [casts, out] = args.as_slice() else { return Err("usage: pooled CASTS OUT".into()) };
    let (casts, out) = (casts.parse::<usize>()?, Path::new(out));
    let folder = out.join("files");
    // Tables of a run before would count too.
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder)?;
    let mut whole = Tables::new(&folder, "00000b")?;
    let mut partners = [Tables::new(&folder, "00000a (1)")?, Tables::new(&folder, "00000c")?];
    let mut pooled: BTreeMap<(String, u8), Vec<Wait>> = BTreeMap::new();
    let (mut made, mut number) = (0, 0);
    let waters = tuned();
    while made < casts {
        let (water, round) = (&waters[number % waters.len()], number / waters.len());
        let oddity = Oddity::ALL[round % Oddity::ALL.len()];
        let day = odd_day(water, Some(water.name), number as u64, None, oddity);
        let session = whole.add(&day)?;
        if oddity.at_home() > 0 || number.is_multiple_of(4) {
            let before = if oddity.at_home() > 0 { oddity.at_home() } else { [0, 5][number / 8 % 2] };
            partners[number / 4 % 2].add(&day.before_last(before))?;
        }
        made += session.casts.len();
        pool(&session, &mut pooled);
        number += 1;
    }
    whole.end()?;
    for tables in partners {
        tables.end()?;
    }
    let lines: Vec<Line> = pooled.into_iter().map(line).collect::<Result<_, Failed>>()?;
    fs::write(out.join("core.json"), serde_json::to_vec_pretty(&lines)?)?;
    println!("{made} casts of {number} sessions, {} waters and months", lines.len());
    Ok(())
}

fn pool(session: &Session, pooled: &mut BTreeMap<(String, u8), Vec<Wait>>) {
    let (Some(water), Some(month)) = (session.setup.water.clone(), month_of(session)) else { return };
    let waits = waits_of(session);
    if !waits.is_empty() {
        pooled.entry((water, month)).or_default().extend(waits);
    }
}

fn line(((water, month), waits): ((String, u8), Vec<Wait>)) -> Result<Line, Failed> {
    let curve = SurvivalCurve::new(&waits)?;
    let bites = waits.iter().filter(|wait| wait.is_bite()).count();
    let hours: f64 = waits.iter().map(|wait| wait.minutes()).sum::<f64>() / 60.0;
    let still_without = AT_MIN.map(|at| (at <= curve.longest_min()).then(|| curve.survival_at(at)));
    let bites_per_rod_hour = bites as f64 / hours;
    Ok(Line { water, month, waits: waits.len(), bites, bites_per_rod_hour, still_without })
}
