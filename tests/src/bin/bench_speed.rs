//! `bench_speed [PROFILE]`: the core's most expensive answers, in the profile this was built with.

use restwater_log::{canonical_bytes, op_from_bytes};
use restwater_session::fold;
use restwater_tests::bench_row::{Row, median, timed};
use restwater_tests::invented::log_of;
use restwater_waits::{CurveKind, Record, Settings, Wait, WaitPosterior};

const RUNS: usize = 21;

fn main() {
    let profile = std::env::args().nth(1).unwrap_or_else(|| "as built".into());
    let waits: Vec<Wait> =
        (0..500).filter_map(|i| Wait::new(1.0 + f64::from(i * 37 % 29), i % 3 == 0).ok()).collect();
    let ops = log_of(1, 1, 250);
    let bodies: Vec<Vec<u8>> = ops.iter().filter_map(|op| canonical_bytes(op).ok()).collect();
    let times: Vec<f64> = (1..=48).map(|i| 0.5 * f64::from(i)).collect();
    let curve = |of: WaitPosterior| of.curve(CurveKind::Survival, &times, 0.9);
    let posterior = || {
        let found = WaitPosterior::new(&Record::of_today(&waits), &Settings::default()).and_then(curve);
        found.is_ok_and(|points| points.len() == times.len())
    };
    let reading = || bodies.iter().filter(|body| op_from_bytes(body).is_ok()).count() == ops.len();
    let folding = || !fold(ops[0].session, &ops).casts.is_empty();
    let jobs: [(&str, &dyn Fn() -> bool); 3] =
        [("a curve of 500 casts", &posterior), ("250 entries read", &reading), ("a day folded", &folding)];
    for (name, job) in jobs {
        let mut times: Vec<_> = (0..RUNS).map(|_| timed(job).0).collect();
        Row::time(format!("profile: {profile}, {name}"), median(&mut times)).noted();
    }
}
