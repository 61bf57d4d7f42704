//! `pooled_club ANGLERS OUT`: the tables of days of a simulated club, one for each angler, and the core's own fit
//! (club.json), with which tests/pool/club.py compares an engine's.
//!
//! Each angler fishes two days in three on the home water, and one on the next. One water has too few anglers. One
//! angler's first day was sent twice more, from a time before its last cast. Another day was sent with casts, and again when
//! all of it had been undone.
#![allow(clippy::print_stdout)] // a command line tool

use restwater_exchange::{CsvOptions, Origin, Table, month_of, session_csv};
use restwater_session::{fold, waits_of};
use restwater_tests::pooled::{Oddity, odd_day, one_day};
use restwater_tests::sim::club::fitted;
use restwater_tests::sim::water::Water;
use restwater_tests::sim::waters::{seen_before, tuned};
use restwater_waits::Shapes;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File};
use std::io::{BufWriter, Write};
use std::path::Path;
use uuid::Uuid;

type Failed = Box<dyn std::error::Error>;

/// Days that each angler has logged.
const DAYS_EACH: usize = 12;
/// Waters that the club fishes, and one that only three of its anglers do.
const WATERS: usize = 9;
const FEW: usize = 3;
/// The least anglers, and the least days of some of the days.
const LEAST: [usize; 2] = [5, 20];
/// Ranges of the water's temperature in tenths of a degree: each from the last to below this.
const BELOW: [i16; 6] = [-100, 40, 70, 100, 150, 400];

/// A day by kind, with what it is fitted by.
struct Day {
    angler: usize,
    water: String,
    areas: Vec<(&'static str, String)>,
    by_kind: Vec<f64>,
}

/// One fit, by the core.
#[derive(Serialize)]
struct Line {
    area: &'static str,
    which: String,
    anglers: usize,
    days: usize,
    waters: usize,
    weights: BTreeMap<String, f64>,
}

fn main() -> Result<(), Failed> {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let [anglers, out] = args.as_slice() else { return Err("usage: pooled_club ANGLERS OUT".into()) };
    let (anglers, out) = (anglers.parse::<usize>()?, Path::new(out));
    // A table of a run with more anglers would count too.
    let _ = fs::remove_dir_all(out);
    fs::create_dir_all(out)?;
    let (waters, few) = (tuned(), seen_before()[0]);
    let mut days = Vec::new();
    for angler in 0..anglers {
        let name = format!("restwater-2026-02-14-club-days-{angler:06x}.csv");
        let mut table = BufWriter::new(File::create(out.join(name))?);
        for day in 0..DAYS_EACH {
            let place = if day % 3 == 2 { angler + 1 } else { angler };
            let water = if angler < FEW && day == 0 { few } else { waters[place % WATERS] };
            let number = angler * DAYS_EACH + day;
            days.push(one(&water, angler, number, day == 0, &mut table)?);
        }
        table.flush()?;
    }
    if anglers > 0 {
        sent_before(&waters[0], out)?;
        sent_without_a_day(out)?;
        sent_before_it_was_undone(&waters[1], anglers * DAYS_EACH, out)?;
    }
    let lines = lines(&days);
    fs::write(out.join("club.json"), serde_json::to_vec(&lines)?)?;
    println!("{anglers} anglers, {} days, {} fits", days.len(), lines.len());
    Ok(())
}

/// Writes a day into its angler's table.
fn one(
    water: &Water,
    angler: usize,
    number: usize,
    first: bool,
    out: &mut impl Write,
) -> Result<Day, Failed> {
    // Every fourth day has no temperature.
    let tenths = i16::try_from(number * 29 % 180).ok().filter(|_| number % 4 != 3);
    let day = one_day(water, number as u64, tenths);
    let session = day.session();
    let origin = Origin { phone: Some(phone(angler)), entries: day.entries() };
    let mut bytes = Vec::new();
    session_csv(&session, Table::ClubDays, CsvOptions::default(), origin, &mut bytes)?;
    let header = bytes.iter().position(|b| *b == b'\n').map_or(0, |end| end + 1);
    out.write_all(if first { &bytes } else { &bytes[header..] })?;
    let month = month_of(&session).map_or_else(String::new, |month| month.to_string());
    let mut areas = vec![("all", String::new()), ("water", water.name.into()), ("month", month)];
    areas.extend(tenths.and_then(|tenths| {
        let range = BELOW.windows(2).find(|range| (range[0]..range[1]).contains(&tenths))?;
        Some(("water_temperature", format!("{} {}", range[0], range[1])))
    }));
    let by_kind = Shapes::usual().day_by_kind(&waits_of(&session)).into_iter().map(as_sent).collect();
    Ok(Day { angler, water: water.name.into(), areas, by_kind })
}

/// A figure as the table has it.
fn as_sent(ln: f64) -> f64 {
    format!("{ln:.6}").parse().unwrap_or(ln)
}

/// The first day of the fourth angler again, from a time when it had one entry, with another water's casts: once in a table
/// whose name comes before all others, and once in one whose name comes after.
fn sent_before(other: &Water, out: &Path) -> Result<(), Failed> {
    let number = FEW * DAYS_EACH;
    let day = one_day(other, number as u64, None);
    let origin = Origin { phone: Some(phone(FEW)), entries: 1 };
    for name in ["restwater-2026-02-13-club-days-000003.csv", "restwater-2026-03-01-club-days-000003 (1).csv"]
    {
        let file = File::create(out.join(name))?;
        session_csv(&day.session(), Table::ClubDays, CsvOptions::default(), origin, file)?;
    }
    Ok(())
}

fn phone(angler: usize) -> Uuid {
    Uuid::from_u128(0xA000 + angler as u128)
}

/// The table of an angler who has no day yet: its name comes before all others.
fn sent_without_a_day(out: &Path) -> Result<(), Failed> {
    let session = fold(Uuid::from_u128(1), &[]);
    let mut bytes = Vec::new();
    session_csv(&session, Table::ClubDays, CsvOptions::default(), Origin::default(), &mut bytes)?;
    let header = bytes.iter().position(|b| *b == b'\n').map_or(0, |end| end + 1);
    fs::write(out.join("restwater-2026-01-01-club-days-0000ff.csv"), &bytes[..header])?;
    Ok(())
}

/// A day of the fourth angler that is in no other table, and the same day after all of it was undone.
fn sent_before_it_was_undone(water: &Water, number: usize, out: &Path) -> Result<(), Failed> {
    let day = odd_day(water, Some(water.name), number as u64, None, Oddity::Taken);
    for (day, sent) in [(day.before_last(Oddity::Taken.at_home()), "15"), (day, "14")] {
        let origin = Origin { phone: Some(phone(FEW)), entries: day.entries() };
        let file = File::create(out.join(format!("restwater-2026-03-{sent}-club-days-000003.csv")))?;
        session_csv(&day.session(), Table::ClubDays, CsvOptions::default(), origin, file)?;
    }
    Ok(())
}

/// The fits of all days, and of some of them where there are enough.
fn lines(days: &[Day]) -> Vec<Line> {
    let mut on: BTreeMap<&str, BTreeSet<usize>> = BTreeMap::new();
    for day in days {
        on.entry(&day.water).or_default().insert(day.angler);
    }
    let counted: Vec<&Day> = days.iter().filter(|day| on[day.water.as_str()].len() >= LEAST[0]).collect();
    let mut by_area: BTreeMap<(&'static str, String), Vec<&Day>> = BTreeMap::new();
    for day in counted {
        for area in &day.areas {
            by_area.entry(area.clone()).or_default().push(day);
        }
    }
    let shapes = Shapes::usual();
    let usual: Vec<f64> =
        shapes.kind_weights().iter().map(|w| format!("{w:.12}").parse().unwrap_or(*w)).collect();
    let fit = |days: &[&Day], base: &[f64]| {
        fitted(&days.iter().map(|day| day.by_kind.clone()).collect::<Vec<_>>(), base)
    };
    let all = by_area.get(&("all", String::new())).map_or(usual.clone(), |days| fit(days, &usual));
    let line = |((area, which), days): ((&'static str, String), Vec<&Day>)| {
        let anglers = days.iter().map(|day| day.angler).collect::<BTreeSet<_>>().len();
        let enough = anglers >= LEAST[0] && (area == "all" || days.len() >= LEAST[1]);
        let weights = if area == "all" { all.clone() } else { fit(&days, &all) };
        enough.then(|| Line {
            area,
            which,
            anglers,
            days: days.len(),
            waters: days.iter().map(|day| &day.water).collect::<BTreeSet<_>>().len(),
            weights: shapes.kind_names().iter().cloned().zip(weights).collect(),
        })
    };
    by_area.into_iter().filter_map(line).collect()
}
