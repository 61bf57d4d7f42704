//! Times of the swim: a whole frame, and the boolean operations behind its areas.
//!
//! `cargo bench -p restwater-swim --bench swim`; `tests/bench/swim.py` compares it with the same work in
//! GEOS. The day is invented.
#![allow(clippy::unwrap_used, clippy::print_stdout)]

use divan::{Bencher, black_box};
use restwater_swim::{AimingMark, Band, CastAt, Fan, KeptBack, SceneAsk, SceneWords, Spot, Swim, SwimInput};

fn main() {
    let mut arguments = std::env::args().skip_while(|a| a != "--rings");
    match arguments.nth(1).map(|n| n.parse().unwrap()) {
        Some(casts) => println!("{}", rings(casts)),
        None => divan::main(),
    }
}

/// The input of `union` and `difference` as JSON, with the resulting areas, for the peer.
fn rings(casts: usize) -> serde_json::Value {
    let xy = |ring: &Vec<restwater_swim::Point>| ring.iter().map(|p| [p.x, p.y]).collect::<Vec<_>>();
    let alone = |cast: &CastAt| {
        let one = SwimInput { casts: vec![*cast], ..day(casts) };
        xy(&Swim::new(one).unwrap().disturbed_water(NOW).rings()[0])
    };
    let swim = Swim::new(day(casts)).unwrap();
    let disturbed = swim.disturbed_water(NOW);
    serde_json::json!({
        "discs": swim.input().casts.iter().map(alone).collect::<Vec<_>>(),
        "swim": xy(&swim.water().rings()[0]),
        "union_m2": disturbed.area_m2(),
        "difference_m2": swim.water().without(&disturbed).area_m2(),
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

/// The union of the disturbed discs.
#[divan::bench(args = [60, 500])]
fn union(bencher: Bencher, casts: usize) {
    let swim = Swim::new(day(casts)).unwrap();
    bencher.bench_local(|| black_box(swim.disturbed_water(NOW)));
}

/// The swim without them.
#[divan::bench(args = [60, 500])]
fn difference(bencher: Bencher, casts: usize) {
    let swim = Swim::new(day(casts)).unwrap();
    let disturbed = swim.disturbed_water(NOW);
    bencher.bench_local(|| black_box(swim.water().without(&disturbed)));
}
