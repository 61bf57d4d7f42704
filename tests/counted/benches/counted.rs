//! Instructions counted by Callgrind: the same on every run, where a time depends on the machine. `./dev bench count`
//! compares them with `tests/bench/counts.tsv`.
//!
//! Every function prepares what it needs outside the count and does one thing inside it. The days are
//! invented.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use gungraun::{Callgrind, LibraryBenchmarkConfig, library_benchmark, library_benchmark_group, main};
use restwater_app::{Action, App, Which, read_day};
use restwater_exchange::{Incoming, OpFileWriter, Progress, import};
use restwater_log::{Moment, canonical_bytes};
use restwater_store::Store;
use restwater_swim::{AimingMark, CastAt, Fan, SceneAsk, SceneWords, Spot, Swim, SwimInput};
use restwater_tests::importing::{imported_at, no_ids};
use restwater_tests::invented::Phone;
use restwater_tests::phone::Seeded;
use restwater_waits::{Record, Settings, Wait, WaitPosterior};
use std::fs::File;
use std::hint::black_box;
use std::ops::ControlFlow;
use std::path::Path;
use tempfile::TempDir;
use uuid::Uuid;

const DAY: &str = include_str!("../../days/demo.jsonl");
const MINUTE: i64 = 60_000;

/// The demo day up to its last cast, with the app open, and the moment of the next tap.
fn late_in_the_day() -> (TempDir, App, Moment) {
    let dir = tempfile::tempdir().unwrap();
    let day = read_day(DAY).unwrap();
    let mut app = App::open(dir.path(), Box::new(Seeded::new(1)), &day[0].at).unwrap();
    for tap in &day {
        if tap.picture.as_deref() == Some("09-last-cast") {
            let mut at = tap.at.clone();
            at.wall_ms += MINUTE;
            at.mono_ms += MINUTE;
            app.screen(Which::Bank, &at).unwrap();
            return (dir, app, at);
        }
        if let Some(action) = &tap.action {
            app.act(action, &tap.at).unwrap();
        }
    }
    unreachable!("the demo day has its last cast")
}

// A key of the Bank, until the entry is on the disk and the new Bank is read.
#[library_benchmark]
#[bench::wound_in(setup = late_in_the_day)]
fn tap(phone: (TempDir, App, Moment)) -> (TempDir, App, Moment) {
    let (dir, mut app, at) = phone;
    black_box(app.act(&Action::WoundIn { rod: 1 }, &at).unwrap());
    (dir, app, at)
}

// The Bank a second later, as each tick reads it.
#[library_benchmark]
#[bench::a_second_later(setup = late_in_the_day)]
fn bank(phone: (TempDir, App, Moment)) -> (TempDir, App, Moment) {
    let (dir, mut app, mut at) = phone;
    at.wall_ms += 1_000;
    at.mono_ms += 1_000;
    black_box(app.screen(Which::Bank, &at).unwrap());
    (dir, app, at)
}

fn waits(count: usize) -> Vec<Wait> {
    let wait = |i: usize| {
        let u = (i as f64 * 0.618_033_988_749_895 + 0.1).fract();
        let t = 16.0 * (-(-u).ln_1p()).powf(0.7);
        Wait::new(t.min(18.0), t < 18.0).unwrap()
    };
    (0..count).map(wait).collect()
}

fn after_500() -> (WaitPosterior, Wait) {
    let casts = waits(501);
    (WaitPosterior::new(&Record::of_today(&casts[..500]), &Settings::default()).unwrap(), casts[500])
}

// The advice after one more cast on a record of 500.
#[library_benchmark]
#[bench::after_500(setup = after_500)]
fn one_more_cast(record: (WaitPosterior, Wait)) -> WaitPosterior {
    let (mut posterior, cast) = record;
    posterior.add(cast);
    black_box(posterior.advice());
    posterior
}

fn swim_of_60() -> SwimInput {
    let whole = |n: usize| i64::try_from(n).unwrap();
    let cast = |i: usize| CastAt {
        spot: Spot {
            bearing_deg: -27.0 + 54.0 * (i as f64 * 0.618_034).fract(),
            range_m: 12.0 + 47.0 * (i as f64 * 0.754_878).fract(),
        },
        clipped: true,
        lead_g: Some(28.35),
        start_ms: whole(i) * 6 * MINUTE,
        end_ms: Some(whole(i) * 6 * MINUTE + MINUTE),
        waits_from_ms: whole(i) * 6 * MINUTE,
        waits_to_ms: Some(whole(i) * 6 * MINUTE + MINUTE),
        end_seen: true,
        bites: u32::from(i % 5 == 2),
        bite_ms: None,
        liners: u32::from(i % 7 == 3),
        lost: u32::from(i % 11 == 7),
        landed: 0,
    };
    let mark = |name: &str, bearing_deg: f64| AimingMark { id: name.into(), name: name.into(), bearing_deg };
    SwimInput {
        marks: vec![mark("tree", -17.0), mark("gate", -3.0), mark("hut", 16.0)],
        fan: Some(Fan { from_deg: -28.0, to_deg: 28.0 }),
        casts: (0..60).map(cast).collect(),
        rest_target_min: 400.0,
        ..SwimInput::default()
    }
}

// A whole frame of the Swim screen: figures, where next, the packed picture.
#[library_benchmark]
#[bench::of_60_casts(setup = swim_of_60)]
fn scene(input: SwimInput) -> Swim {
    let swim = Swim::new(input).unwrap();
    let figures = swim.figures(360 * MINUTE);
    let next = swim.where_next(&figures).ranked.first().map(|next| next.cell);
    let ask = SceneAsk { next, ..SceneAsk::new(411.0, 500.0, 6.3, 1.0).unwrap() };
    black_box(swim.scene(&figures, &ask, &SceneWords::default()).unwrap());
    swim
}

fn twenty_sessions() -> (TempDir, Moment) {
    let dir = tempfile::tempdir().unwrap();
    let mut phone = Phone::new(3);
    let mut store = Store::open(dir.path(), phone.device()).unwrap();
    for _ in 0..20 {
        phone.forget();
        phone.begin();
        (1..250).for_each(|_| {
            phone.tap();
        });
        store.append(phone.ops(), None).unwrap();
    }
    store.pause().unwrap();
    (dir, phone.tick())
}

fn to_the_first_bank(log: (TempDir, Moment)) -> (TempDir, App) {
    let (dir, now) = log;
    let mut app = App::open(dir.path(), Box::new(Seeded::new(1)), &now).unwrap();
    black_box(app.screen(Which::Bank, &now).unwrap());
    (dir, app)
}

// From the start to the first Bank, with a log of 5,000 entries that no app has opened before.
#[library_benchmark]
#[bench::to_the_first_bank(setup = twenty_sessions)]
fn opening(log: (TempDir, Moment)) -> (TempDir, App) {
    to_the_first_bank(log)
}

fn opened_before() -> (TempDir, Moment) {
    let (dir, now) = twenty_sessions();
    let (dir, _) = to_the_first_bank((dir, now.clone()));
    (dir, now)
}

// From the start to the first Bank, with the same log, which an app has opened before: the usual start. What the app keeps of
// earlier sessions is in the store.
#[library_benchmark]
#[bench::to_the_first_bank(setup = opened_before)]
fn opening_again(log: (TempDir, Moment)) -> (TempDir, App) {
    to_the_first_bank(log)
}

fn write_file(path: &Path) {
    let mut file = OpFileWriter::begin(File::create(path).unwrap()).unwrap();
    let mut phone = Phone::new(2);
    for n in 0..10_000 {
        let op = if n % 250 == 0 {
            phone.forget();
            phone.begin();
            phone.ops()[0].clone()
        } else {
            phone.tap()
        };
        file.op(op.id, &canonical_bytes(&op).unwrap()).unwrap();
    }
    file.end().unwrap();
}

fn file_of_10_000() -> (TempDir, Store, File) {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("all.restwater.json-seq");
    write_file(&path);
    let store = Store::open(dir.path(), Uuid::from_u128(1)).unwrap();
    (dir, store, File::open(&path).unwrap())
}

// Importing a partner's file into an empty log.
#[library_benchmark]
#[bench::of_10_000(setup = file_of_10_000)]
fn importing(phone: (TempDir, Store, File)) -> (TempDir, Store) {
    let (dir, mut store, file) = phone;
    let from = Incoming { id: Uuid::from_u128(1), source: "Robin".into(), at: imported_at(0) };
    let tally =
        import(&mut store, file, &from, &mut no_ids, &mut |_: Progress| ControlFlow::Continue(())).unwrap();
    assert_eq!(tally.new, 10_000);
    (dir, store)
}

library_benchmark_group!(
    name = counted,
    benchmarks = [tap, bank, one_more_cast, scene, opening, opening_again, importing]
);

main!(
    config = LibraryBenchmarkConfig::default().tool(Callgrind::with_args(["--cache-sim=no"])),
    library_benchmark_groups = counted
);
