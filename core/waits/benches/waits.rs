//! Benchmarks of the waits: the posterior from scratch and after one more cast, a short day's advice, and the
//! estimators at three sizes. Run with `cargo bench -p restwater-waits --bench waits`.

use divan::{Bencher, black_box};
use restwater_waits::{
    Accuracy, Advice, Model, Record, Settings, SpotCast, SpotEvent, SurvivalCurve, Wait, WaitPosterior,
    advise, fit,
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

fn settings(accuracy: Accuracy) -> Settings {
    Settings { accuracy, ..Settings::default() }
}

/// The advice, and the wait distributions, which are computed only on demand.
fn whole_answer(posterior: &WaitPosterior) -> (Advice, f64) {
    (posterior.advice(), posterior.ln_evidence())
}

/// Acceptance: within 50 ms.
#[divan::bench(args = [Accuracy::Quick, Accuracy::Standard, Accuracy::Refined])]
fn posterior_of_500_casts(bencher: Bencher, accuracy: Accuracy) {
    let (casts, settings) = (waits(500), settings(accuracy));
    bencher.bench_local(|| {
        let posterior = WaitPosterior::new(&Record::of_today(black_box(&casts)), &settings);
        posterior.map(|posterior| whole_answer(&posterior))
    });
}

/// Acceptance: within 5 ms.
#[divan::bench(args = [Accuracy::Quick, Accuracy::Standard])]
fn one_more_after_500_casts(bencher: Bencher, accuracy: Accuracy) {
    let (casts, settings) = (waits(501), settings(accuracy));
    let posterior = WaitPosterior::new(&Record::of_today(&casts[..500]), &settings).ok();
    bencher.with_inputs(|| posterior.clone()).bench_local_values(|mut posterior| {
        if let Some(posterior) = &mut posterior {
            posterior.add(casts[500]);
            black_box(whole_answer(posterior));
        }
        posterior
    });
}

/// Aim: within 1 ms at `Quick`.
#[divan::bench(args = [0, 10, 30])]
fn quick_advice(bencher: Bencher, casts: usize) {
    let (casts, settings) = (waits(casts), settings(Accuracy::Quick));
    bencher.bench_local(|| advise(&Record::of_today(black_box(&casts)), &settings));
}

#[divan::bench(args = [1_000, 100_000, 1_000_000])]
fn kaplan_meier(bencher: Bencher, count: usize) {
    let casts = waits(count);
    bencher.bench_local(|| SurvivalCurve::new(black_box(&casts)));
}

#[divan::bench(args = [1_000, 100_000, 1_000_000])]
fn weibull_fit(bencher: Bencher, count: usize) {
    let casts = waits(count);
    bencher.bench_local(|| fit(Model::Weibull, black_box(&casts)));
}

/// The advice with both fed and unfed casts, from scratch and after one more cast. Aim: a few ms.
#[divan::bench(args = [8, 30])]
fn advice_by_feed(bencher: Bencher, casts: usize) {
    let (casts, settings) = (waits(casts), settings(Accuracy::Standard));
    let fed: Vec<bool> = (0..casts.len()).map(|i| i % 3 == 1).collect();
    bencher.bench_local(|| advise(&Record { fed: &fed, ..Record::of_today(black_box(&casts)) }, &settings));
}

/// Aim: a few ms.
#[divan::bench(args = [8, 30])]
fn one_more_by_feed(bencher: Bencher, casts: usize) {
    let (casts, settings) = (waits(casts + 1), settings(Accuracy::Standard));
    let fed: Vec<bool> = (1..casts.len()).map(|i| i % 3 == 1).collect();
    let record = Record { fed: &fed, ..Record::of_today(&casts[1..]) };
    let posterior = WaitPosterior::new(&record, &settings).ok();
    bencher.with_inputs(|| posterior.clone()).bench_local_values(|mut posterior| {
        if let Some(posterior) = &mut posterior {
            posterior.add_by_feed(casts[0], true);
            black_box(posterior.advice());
        }
        posterior
    });
}

/// Where next and how long, of casts on 40 cells, from nothing: the filter, what every cell is worth, the leave time.
/// Acceptance: within 8 ms.
#[divan::bench(args = [12, 60])]
fn spots(bencher: Bencher, casts: usize) {
    let casts = waits(casts);
    let settings = settings(Accuracy::Standard);
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
    let posterior = WaitPosterior::new(&Record::of_today(&casts), &settings).ok();
    bencher.bench_local(|| {
        posterior.as_ref().and_then(|posterior| {
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
