//! Times of the swim: a whole frame, and the figures behind it.
//!
//! `cargo bench -p restwater-swim --bench swim`; `tests/bench/swim.py` compares the areas
//! in the figures with GEOS. The day is invented.
#![allow(clippy::unwrap_used, clippy::print_stdout)]

use divan::{Bencher, black_box};
use restwater_swim::{AimingMark, Band, CastAt, Fan, KeptBack, SceneAsk, SceneWords, Spot, Swim, SwimInput};

fn main() {
    let mut arguments = std::env::args().skip_while(|a| a != "--discs");
    match arguments.nth(1).map(|n| n.parse().unwrap()) {
        Some(casts) => println!("{}", discs(casts)),
        None => divan::main(),
    }
}

/// The swim and the disc that each cast disturbed (x, y, radius) as JSON, with our area of fresh water, for the peer.
fn discs(casts: usize) -> serde_json::Value {
    let swim = Swim::new(day(casts)).unwrap();
    let disc = |cast: &CastAt| {
        let (at, radius) = (cast.spot.point(), swim.input().disturbance.radius_m(cast.lead_g));
        [at.x, at.y, radius]
    };
    serde_json::json!({
        "discs": swim.input().casts.iter().map(disc).collect::<Vec<_>>(),
        "swim": swim.water().rings()[0].iter().map(|p| [p.x, p.y]).collect::<Vec<_>>(),
        "fresh_m2": swim.figures(NOW).fresh_m2,
    })
}

const MINUTE: i64 = 60_000;
const NOW: i64 = 360 * MINUTE;

/// A day of casts all over the swim, all within the rest target, so that there is as much as possible to
/// unite.
fn day(casts: usize) -> SwimInput {
    let mark = |id: &str, bearing_deg: f64| AimingMark { id: id.into(), name: id.into(), bearing_deg };
    let whole = |n: usize| i64::try_from(n).unwrap();
    let cast = |i: usize| {
        let t = i as f64;
        let start_ms = whole(i) * 350 * MINUTE / whole(casts);
        CastAt {
            spot: Spot {
                bearing_deg: -27.0 + 54.0 * (t * 0.618_034).fract(),
                range_m: 12.0 + 47.0 * (t * 0.754_878).fract(),
            },
            clipped: true,
            lead_g: Some(28.35),
            start_ms,
            end_ms: Some(start_ms + MINUTE / 2),
            waits_from_ms: start_ms,
            waits_to_ms: Some(start_ms + MINUTE / 2),
            end_seen: true,
            bites: u32::from(i % 5 == 2),
            bite_ms: None,
            liners: u32::from(i % 7 == 3),
            lost: u32::from(i % 11 == 7),
            landed: 0,
        }
    };
    let fan = Fan { from_deg: -28.0, to_deg: 28.0 };
    SwimInput {
        marks: vec![mark("tree", -17.0), mark("gate", -3.0), mark("hut", 16.0)],
        fan: Some(fan),
        casts: (0..casts).map(cast).collect(),
        kept_back: vec![KeptBack {
            fan,
            band: Band { from_m: 50.0, to_m: 60.0 },
            since_ms: 0,
            released_ms: None,
        }],
        rest_target_min: 400.0,
        ..SwimInput::default()
    }
}

/// From the folded input to the packed record.
#[divan::bench(args = [0, 12, 60, 500])]
fn frame(bencher: Bencher, casts: usize) {
    let ask = SceneAsk::new(411.0, 500.0, 6.3, 1.0).unwrap();
    let words = SceneWords::default();
    bencher.with_inputs(|| day(casts)).bench_values(|input| {
        let swim = Swim::new(input).unwrap();
        let figures = swim.figures(NOW);
        let next = swim.where_next(&figures).ranked.first().map(|n| n.cell);
        let ask = SceneAsk { next, ..ask };
        black_box(swim.scene(&figures, &ask, &words).unwrap())
    });
}

/// What is known about the swim and each of its cells: areas, rests and chances.
#[divan::bench(args = [60, 500])]
fn figures(bencher: Bencher, casts: usize) {
    bencher
        .with_inputs(|| Swim::new(day(casts)).unwrap())
        .bench_local_values(|swim| black_box(swim.figures(NOW)));
}
