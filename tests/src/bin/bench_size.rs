//! `bench_size`: what a log of 10^2 to 10^6 casts costs, and the exponent with which the cost grows with its
//! size.
//!
//! A day has 40 casts. Folding a whole log and the estimators have to look at every cast, so their cost
//! should grow linearly with the size. The cost of opening the log, of a tap and of a screen must hardly
//! grow, since they look only at today and a few earlier days.

use restwater_app::{Action, App, Which};
use restwater_log::{Moment, Payload};
use restwater_session::{fold, waits_of};
use restwater_store::Store;
use restwater_tests::bench_row::{Row, exponent, median, timed};
use restwater_tests::invented::Phone;
use restwater_tests::phone::Seeded;
use restwater_waits::{Limits, Record, Settings, SurvivalCurve, Wait, WaitPosterior};
use std::path::Path;
use std::time::Duration;

type Failed = Box<dyn std::error::Error>;

const SIZES: [usize; 5] = [100, 1_000, 10_000, 100_000, 1_000_000];
const CASTS_A_DAY: usize = 40;
/// The posterior covers today and five days before it: 500 casts are twice the busiest week.
const MOST_IN_A_POSTERIOR: usize = 10_000;
const RUNS: u64 = 7;

/// What is measured, with the largest exponent allowed.
const COSTS: [(&str, f64); 5] = [
    ("fold of all days", 1.1),
    ("survival curve with limits", 1.15),
    ("advice", 1.1),
    ("open to first Bank record", 0.25),
    ("one tap", 0.25),
];

fn main() -> Result<(), Failed> {
    let mut costs: [Vec<(f64, Duration)>; COSTS.len()] = Default::default();
    let mut note = |which: usize, size: usize, time: Duration| {
        Row::time(format!("size: {}, {size} casts", COSTS[which].0), time).noted();
        costs[which].push((size as f64, time));
    };
    for size in SIZES {
        let dir = tempfile::tempdir()?;
        let log = write(dir.path(), size)?;
        note(0, size, log.folding);
        estimators(size, &log.waits, &mut note)?;
        let [open, tap] = opened(dir.path(), log.now)?;
        note(3, size, open);
        note(4, size, tap);
    }
    for ((name, most), costs) in COSTS.iter().zip(&costs) {
        let power = exponent(costs);
        let row = Row::new(format!("size: exponent of {name}"), format!("{power:.2}"));
        row.judged(&format!("<= {most}"), power <= *most);
    }
    Ok(())
}

/// A log on disk: the time it took to fold it, its waits, and the moment after its last entry.
struct Log {
    folding: Duration,
    waits: Vec<Wait>,
    now: Moment,
}

/// Writes a log of this many casts, with one transaction per day.
fn write(dir: &Path, casts: usize) -> Result<Log, Failed> {
    let mut phone = Phone::new(casts as u64);
    let mut store = Store::open(dir, phone.device())?;
    let mut log = Log { folding: Duration::ZERO, waits: Vec::with_capacity(casts), now: phone.tick() };
    let mut made = 0;
    while made < casts {
        phone.forget();
        phone.begin();
        for _ in 0..CASTS_A_DAY.min(casts - made) {
            a_cast(&mut phone, made);
            made += 1;
        }
        if made < casts {
            phone.log(Payload::SessionEnded, None);
        }
        store.append(phone.ops(), None)?;
        let (time, session) = timed(|| fold(phone.ops()[0].session, phone.ops()));
        log.folding += time;
        log.waits.extend(waits_of(&session));
    }
    log.now = phone.tick();
    Ok(log)
}

/// Every third cast has a bite.
fn a_cast(phone: &mut Phone, number: usize) {
    phone.log(Payload::Cast { rod: 1 }, None);
    if number.is_multiple_of(3) {
        phone.log(Payload::Bite { rod: 1 }, None);
        phone.log(Payload::Landed { rod: 1, fish: None }, None);
    } else {
        phone.log(Payload::WoundIn { rod: 1 }, None);
    }
}

fn estimators(
    size: usize,
    waits: &[Wait],
    note: &mut impl FnMut(usize, usize, Duration),
) -> Result<(), Failed> {
    let (time, curve) =
        timed(|| SurvivalCurve::new(waits).and_then(|curve| curve.limits(Limits::LogLog, 0.95)));
    curve?;
    note(1, size, time);
    if size <= MOST_IN_A_POSTERIOR {
        let record = Record::of_today(waits);
        let (time, advice) =
            timed(|| WaitPosterior::new(&record, &Settings::default()).map(|posterior| posterior.advice()));
        advice?;
        note(2, size, time);
    }
    Ok(())
}

/// The median time of opening the log to its first Bank record, and of one tap in it.
fn opened(dir: &Path, mut now: Moment) -> Result<[Duration; 2], Failed> {
    let (mut opens, mut taps) = (Vec::new(), Vec::new());
    for run in 0..RUNS {
        let (time, app) = timed(|| -> Result<App, Failed> {
            let mut app = App::open(dir, Box::new(Seeded::new(run)), &now)?;
            std::hint::black_box(app.screen(Which::Bank, &now)?);
            Ok(app)
        });
        opens.push(time);
        let mut app = app?;
        for action in [Action::Cast { rod: 1 }, Action::WoundIn { rod: 1 }] {
            now.wall_ms += 60_000;
            now.mono_ms += 60_000;
            let (time, update) = timed(|| app.act(&action, &now));
            update?;
            taps.push(time);
        }
    }
    Ok([median(&mut opens), median(&mut taps)])
}
