//! Benchmarks of the waits: what the screens ask of the posterior, from scratch and after one more cast, and the survival curve
//! at three sizes. Run with `cargo bench -p restwater-waits --bench waits`.

use divan::{Bencher, black_box};
use restwater_waits::{
    Advice, CurveKind, CurvePoint, Record, Settings, SpotCast, SpotEvent, SurvivalCurve, Wait, WaitPosterior,
};

fn main() {
    divan::main();
}

/// Invented waits, the same on every run: most bites within half an hour, the rest wound in at 18.
fn waits(count: usize) -> Vec<Wait> {
    (0..count)
        .filter_map(|i| {
            let u = (i as f64 * 0.618_033_988_749_895 + 0.1).fract();
            let t = 16.0 * (-(-u).ln_1p()).powf(0.7);
            Wait::new(t.min(18.0), t < 18.0).ok()
        })
        .collect()
}

fn posterior(record: &Record) -> Option<WaitPosterior> {
    WaitPosterior::new(record, &Settings::default()).ok()
}

/// What the Waits screen shows: the advice, and its three curves at 48 times with their limits.
fn shown(posterior: &WaitPosterior) -> (Advice, Vec<CurvePoint>) {
    let times: Vec<f64> = (1..=48).map(|i| 0.5 * f64::from(i)).collect();
    let kinds = [CurveKind::Survival, CurveKind::NextMinute, CurveKind::Rate];
    let curves = kinds.iter().flat_map(|&kind| posterior.curve(kind, &times, 0.9).unwrap_or_default());
    (posterior.advice(), curves.collect())
}

/// Acceptance: within 50 ms.
#[divan::bench(args = [500])]
fn advice_and_curves(bencher: Bencher, casts: usize) {
    let casts = waits(casts);
    bencher
        .bench_local(|| posterior(&Record::of_today(black_box(&casts))).map(|posterior| shown(&posterior)));
}

/// Acceptance: within 5 ms.
#[divan::bench(args = [500])]
fn one_more_cast(bencher: Bencher, after: usize) {
    let casts = waits(after + 1);
    let before = posterior(&Record::of_today(&casts[..after]));
    bencher.with_inputs(|| before.clone()).bench_local_values(|mut posterior| {
        if let Some(posterior) = &mut posterior {
            posterior.add(casts[after]);
            black_box(posterior.advice());
        }
        posterior
    });
}

/// Aim: within 1 ms.
#[divan::bench(args = [0, 10, 30])]
fn advice(bencher: Bencher, casts: usize) {
    let casts = waits(casts);
    bencher
        .bench_local(|| posterior(&Record::of_today(black_box(&casts))).map(|posterior| posterior.advice()));
}

#[divan::bench(args = [1_000, 100_000, 1_000_000])]
fn kaplan_meier(bencher: Bencher, count: usize) {
    let casts = waits(count);
    bencher.bench_local(|| SurvivalCurve::new(black_box(&casts)));
}

/// The advice with both fed and unfed casts, from scratch and after one more cast. Aim: a few ms.
#[divan::bench(args = [8, 30])]
fn advice_by_feed(bencher: Bencher, casts: usize) {
    let casts = waits(casts);
    let fed: Vec<bool> = (0..casts.len()).map(|i| i % 3 == 1).collect();
    let record = Record { fed: &fed, ..Record::of_today(&casts) };
    bencher.bench_local(|| posterior(black_box(&record)).map(|posterior| posterior.advice()));
}

/// Aim: a few ms.
#[divan::bench(args = [8, 30])]
fn one_more_by_feed(bencher: Bencher, casts: usize) {
    let casts = waits(casts + 1);
    let fed: Vec<bool> = (1..casts.len()).map(|i| i % 3 == 1).collect();
    let record = Record { fed: &fed, ..Record::of_today(&casts[1..]) };
    let before = posterior(&record);
    bencher.with_inputs(|| before.clone()).bench_local_values(|mut posterior| {
        if let Some(posterior) = &mut posterior {
            posterior.add_by_feed(casts[0], true);
            black_box(posterior.advice());
        }
        posterior
    });
}

/// Where next and how long, from scratch, for casts on 40 cells: the filter, what every cell is worth, the leave time.
/// Acceptance: within 8 ms.
#[divan::bench(args = [12, 60])]
fn spots(bencher: Bencher, casts: usize) {
    let casts = waits(casts);
    let mut at_min = 0.0;
    let mut events = Vec::new();
    for (i, wait) in casts.iter().enumerate() {
        let spot = i % CELLS;
        events.push(SpotEvent::Fished(SpotCast { spot, at_min, wait: *wait }));
        at_min += wait.minutes();
        events.push(SpotEvent::Disturbed { spot, at_min });
        at_min += 2.0;
    }
    let cells: Vec<Option<usize>> = (0..CELLS).map(Some).chain([None]).collect();
    let believed = posterior(&Record::of_today(&casts));
    bencher.bench_local(|| {
        believed.as_ref().and_then(|posterior| {
            let spots = posterior.spots(CELLS, black_box(&events), 45.0);
            for cell in &cells {
                black_box(spots.worth(*cell, at_min));
            }
            spots.leave(Some(0), at_min, &[Some(1)])
        })
    });
}

/// Cells of a swim that were fished or disturbed.
const CELLS: usize = 40;
