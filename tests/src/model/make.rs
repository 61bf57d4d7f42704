//! A day out of a seed.

use super::actions::{choosing, fishing, importing, matching, mending, pick, saying, turning};
use super::day::{Day, Step};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use serde_json::{Value, json};

const MIN_MS: i64 = 60_000;
/// 2026-01-17 07:00 UTC plus a year: where a clock set to next year stands.
const NEXT_YEAR_MS: i64 = 1_768_633_200_000 + 365 * 86_400_000;

/// The day of a seed.
pub fn day(seed: u64) -> Day {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let count = rng.random_range(12..70);
    // Some days have quiet clocks, some whole disks: faults are then seen one by one.
    let moods = Moods { clocks: rng.random_range(0..3), disks: rng.random_range(0..3), files: rng.random_range(0..3) };
    let mut steps = vec![Step::new(0, MIN_MS, json!({"do": "start_session", "setup": setup(&mut rng)}))];
    if rng.random_range(0..2) == 0 {
        let setup = setup(&mut rng);
        steps.push(Step::new(1, MIN_MS, json!({"do": "start_session", "setup": setup})));
    }
    for _ in 0..count {
        let step = step(&mut rng, &moods);
        steps.push(step);
    }
    steps.push(Step::new(0, MIN_MS, json!({"step": "restart"})));
    steps.push(Step::new(0, MIN_MS, json!({"step": "swap"})));
    Day { seed, steps }
}

struct Moods {
    clocks: u32,
    disks: u32,
    files: u32,
}

fn setup(rng: &mut ChaCha8Rng) -> Value {
    json!({"water": pick(rng, &["Alder Pool", "Mill Pit"]), "peg": rng.random_range(1..20).to_string(),
        "rods": rng.random_range(1..3)})
}

fn pause_ms(rng: &mut ChaCha8Rng) -> i64 {
    match rng.random_range(0..100) {
        0..4 => rng.random_range(100..700),
        4..60 => rng.random_range(700..60_000),
        60..95 => rng.random_range(1..25) * MIN_MS,
        95..99 => rng.random_range(1..5) * 60 * MIN_MS,
        _ => 20 * 60 * MIN_MS,
    }
}

fn step(rng: &mut ChaCha8Rng, moods: &Moods) -> Step {
    let phone = usize::from(rng.random_range(0..10) < 3);
    let after = pause_ms(rng);
    let weights = [100, 12 * moods.clocks, 8, 6 * moods.disks, 10 * moods.files];
    let mut roll = rng.random_range(0..weights.iter().sum());
    let mut kind = 0;
    while roll >= weights[kind] {
        roll -= weights[kind];
        kind += 1;
    }
    let what = match kind {
        0 => tap(rng),
        1 => clocks(rng),
        2 => json!({"step": pick(rng, &["restart", "kill", "screens", "look_over"])}),
        3 => return disk(rng, phone, after),
        _ => files(rng),
    };
    Step::new(phone, after, what)
}

fn tap(rng: &mut ChaCha8Rng) -> Value {
    match rng.random_range(0..100) {
        0..48 => fishing(rng),
        48..63 => turning(rng),
        63..75 => saying(rng),
        75..81 => mending(rng),
        81..94 => choosing(rng),
        _ => matching(rng),
    }
}

fn clocks(rng: &mut ChaCha8Rng) -> Value {
    match rng.random_range(0..12) {
        0..3 => json!({"step": "jump", "ms": rng.random_range(-180..180) * MIN_MS}),
        3 => json!({"step": "jump", "ms": rng.random_range(-5_000..5_000)}),
        4 => json!({"step": "reset", "wall_ms": rng.random_range(0..100_000)}),
        5 => json!({"step": "reset", "wall_ms": NEXT_YEAR_MS + rng.random_range(0..86_400_000)}),
        6 | 7 => json!({"step": "right"}),
        8 => json!({"step": "zone", "offset_min": rng.random_range(-20..24) * 30}),
        9 => json!({"step": "drift", "ppm": rng.random_range(-60..60)}),
        _ => json!({"step": "boot"}),
    }
}

fn files(rng: &mut ChaCha8Rng) -> Value {
    let of = rng.random_range(0..100);
    match rng.random_range(0..20) {
        0..3 => json!({"step": "export"}),
        3..7 => json!({"step": "import", "from": rng.random_range(0..2), "file": of}),
        7..10 => json!({"step": "swap"}),
        10 | 11 => importing(rng),
        12 => json!({"step": "foreign", "kind": "cut", "of": of, "at": rng.random_range(0..1_000)}),
        13 => json!({"step": "foreign", "kind": "junk", "of": of}),
        14..17 => {
            let off = pick(rng, &[&0_i64, &(7 * MIN_MS), &(-86_400_000), &(365 * 86_400_000)]);
            json!({"step": "foreign", "kind": "later", "of": of, "off_ms": off})
        }
        17 => json!({"step": "foreign", "kind": "map", "of": of}),
        18 => json!({"step": "back_up"}),
        _ => json!({"step": "restore", "of": of}),
    }
}

/// Some steps on a disk that fails.
fn disk(rng: &mut ChaCha8Rng, phone: usize, after: i64) -> Step {
    let count = rng.random_range(1..8);
    let within: Vec<Step> = (0..count).map(|_| Step::new(phone, pause_ms(rng), on_disk(rng))).collect();
    let mut what = json!({"step": "disk", "end": pick(rng, &["whole", "kill", "power"]),
        "at": rng.random_range(0..=1_000)});
    if rng.random_range(0..2) == 0 {
        what["room"] = json!(rng.random_range(0..60_000));
    }
    Step::new(phone, after, what).with_within(&within)
}

fn on_disk(rng: &mut ChaCha8Rng) -> Value {
    match rng.random_range(0..20) {
        0 | 1 => json!({"step": "restart"}),
        2 => json!({"step": "import", "from": rng.random_range(0..2), "file": rng.random_range(0..9)}),
        3 => importing(rng),
        _ => tap(rng),
    }
}
