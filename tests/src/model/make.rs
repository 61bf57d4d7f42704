//! Makes a day from a seed.

use super::actions::{
    alarm, choosing, feed, fish, fishing, importing, marking, matching, mending, noting, pick, planning,
    saying, seen, turning,
};
use super::day::{Day, Step};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use serde_json::{Value, json};

const MIN_MS: i64 = 60_000;
/// 2026-01-17 07:00 UTC plus a year: the time of a clock set to next year.
const NEXT_YEAR_MS: i64 = 1_768_633_200_000 + 365 * 86_400_000;

/// The day of a seed.
pub fn day(seed: u64) -> Day {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let count = rng.random_range(12..80_usize);
    let moods = Moods::of(&mut rng);
    let mut steps = vec![Step::new(0, MIN_MS, json!({"do": "start_session", "setup": setup(&mut rng)}))];
    if rng.random_range(0..2) == 0 {
        let setup = setup(&mut rng);
        steps.push(Step::new(1, MIN_MS, json!({"do": "start_session", "setup": setup})));
    }
    while steps.len() < count {
        match rng.random_range(0..100) {
            0..16 => cycle(&mut rng, &mut steps),
            16..20 => next_session(&mut rng, &mut steps),
            20..26 if moods.evening => gap(&mut rng, &mut steps),
            26..30 => aimed(&mut rng, &mut steps),
            30..33 => noted(&mut rng, &mut steps),
            33..36 => rung(&mut rng, &mut steps),
            36..39 => planned(&mut rng, &mut steps),
            _ => {
                let step = step(&mut rng, &moods);
                steps.push(step);
            }
        }
    }
    steps.push(Step::new(0, MIN_MS, json!({"event": "restart"})));
    steps.push(Step::new(0, MIN_MS, json!({"event": "swap"})));
    Day { seed, steps }
}

/// What a day has much of. Some days have steady clocks, some disks that don't fail, so that bugs show up one
/// at a time.
struct Moods {
    clocks: u32,
    disks: u32,
    files: u32,
    swim: u32,
    evening: bool,
}

impl Moods {
    fn of(rng: &mut ChaCha8Rng) -> Self {
        let mut weight = |often: u32| [0, often / 4, often][rng.random_range(0..3)];
        let (clocks, disks, files, swim) = (weight(50), weight(24), weight(50), weight(60));
        Self { clocks, disks, files, swim, evening: rng.random_range(0..3) == 0 }
    }
}

fn setup(rng: &mut ChaCha8Rng) -> Value {
    json!({"water": pick(rng, &["Alder Pool", "Mill Pit"]), "peg": rng.random_range(1..20).to_string(),
        "rods": rng.random_range(1..3)})
}

/// A cast and what ended it, like most of a day.
fn cycle(rng: &mut ChaCha8Rng, steps: &mut Vec<Step>) {
    let phone = usize::from(rng.random_range(0..10) < 3);
    let ends: &[&str] = match rng.random_range(0..4) {
        0 => &["bite", "landed"],
        1 => &["bite", "missed"],
        2 => &["wound_in"],
        _ => &[],
    };
    for verb in ["cast"].iter().chain(ends) {
        let after = rng.random_range(1_000..20 * MIN_MS);
        steps.push(Step::new(phone, after, json!({"do": verb, "rod": 1})));
    }
}

/// A session ends and another begins, usually on another day.
fn next_session(rng: &mut ChaCha8Rng, steps: &mut Vec<Step>) {
    let phone = usize::from(rng.random_range(0..10) < 3);
    steps.push(Step::new(phone, 20 * MIN_MS, json!({"do": "end_session"})));
    let setup = setup(rng);
    let after = [10 * MIN_MS, 23 * 60 * MIN_MS][rng.random_range(0..2)];
    steps.push(Step::new(phone, after, json!({"do": "start_session", "setup": setup})));
}

/// Steady casts, a gap in which one may have been forgotten, and the corrections in the evening.
fn gap(rng: &mut ChaCha8Rng, steps: &mut Vec<Step>) {
    let cast = |after: i64| Step::new(0, after, json!({"do": "cast", "rod": 1}));
    for _ in 0..rng.random_range(3..6) {
        steps.push(cast(rng.random_range(60_000..4 * MIN_MS)));
        if rng.random_range(0..3) > 0 {
            steps.push(Step::new(0, 12 * MIN_MS, json!({"do": "wound_in", "rod": 1})));
        }
    }
    steps.push(cast(rng.random_range(40..90) * MIN_MS));
    for _ in 0..rng.random_range(2..6) {
        let what = mending(rng);
        steps.push(Step::new(0, 5_000, what));
    }
}

/// A spot is aimed at on the Swim screen and cast to, once or more often.
fn aimed(rng: &mut ChaCha8Rng, steps: &mut Vec<Step>) {
    let phone = usize::from(rng.random_range(0..10) < 3);
    for _ in 0..rng.random_range(1..4) {
        let step = json!({"do": "step_aim", "step": pick(rng, &["left", "right", "in", "out"])});
        steps.push(Step::new(phone, 800, step));
    }
    steps.push(Step::new(phone, 2_000, json!({"do": "cast_here"})));
    for _ in 0..rng.random_range(1..3) {
        steps.push(Step::new(phone, pause_ms(rng), json!({"do": "cast", "rod": 1})));
        steps.push(Step::new(phone, rng.random_range(1..20) * MIN_MS, fishing(rng)));
    }
}

/// Notes of some evening, and a look at the page with them.
fn noted(rng: &mut ChaCha8Rng, steps: &mut Vec<Step>) {
    let phone = usize::from(rng.random_range(0..10) < 3);
    for _ in 0..rng.random_range(2..6) {
        let what = if rng.random_range(0..6) == 0 { turning(rng) } else { noting(rng) };
        steps.push(Step::new(phone, rng.random_range(1_000..20_000), what));
    }
    steps.push(Step::new(phone, 5_000, json!({"event": "page", "of": rng.random_range(0..9)})));
}

/// A plan made in the evening, now and then by both phones, and a session that follows it.
fn planned(rng: &mut ChaCha8Rng, steps: &mut Vec<Step>) {
    let phone = usize::from(rng.random_range(0..10) < 3);
    for _ in 0..rng.random_range(1..6) {
        let other = usize::from(rng.random_range(0..4) == 0);
        steps.push(Step::new((phone + other) % 2, rng.random_range(1_000..20_000), planning(rng)));
        if rng.random_range(0..6) == 0 {
            let what = [json!({"event": "swap"}), turning(rng), json!({"event": "restart"})];
            steps.push(Step::new(phone, 5_000, what[rng.random_range(0..3)].clone()));
        }
    }
    next_session(rng, steps);
}

/// A cast with an alarm, checked while it is out.
fn rung(rng: &mut ChaCha8Rng, steps: &mut Vec<Step>) {
    let phone = usize::from(rng.random_range(0..10) < 3);
    steps.push(Step::new(phone, 2_000, alarm(rng)));
    steps.push(Step::new(phone, 2_000, json!({"do": "cast", "rod": rng.random_range(1..3)})));
    for _ in 0..rng.random_range(1..4) {
        let after = rng.random_range(1..25) * MIN_MS;
        if rng.random_range(0..4) == 0 {
            steps.push(Step::new(phone, after, clocks(rng)));
        }
        steps.push(Step::new(phone, after, json!({"event": "watch"})));
    }
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
    let weights =
        [100, moods.clocks, 12, moods.disks, moods.files, moods.swim, if moods.evening { 40 } else { 0 }];
    let mut roll = rng.random_range(0..weights.iter().sum());
    let mut kind = 0;
    while roll >= weights[kind] {
        roll -= weights[kind];
        kind += 1;
    }
    let what = match kind {
        0 => tap(rng),
        1 => clocks(rng),
        2 => {
            let of = ["restart", "kill", "screens", "screens", "look_over", "watch", "page", "salvage"];
            json!({"event": pick(rng, &of), "from": rng.random_range(0..19), "of": rng.random_range(0..19)})
        }
        3 => return disk(rng, phone, after),
        4 => files(rng),
        5 => marking(rng),
        _ => mending(rng),
    };
    Step::new(phone, after, what)
}

fn tap(rng: &mut ChaCha8Rng) -> Value {
    match rng.random_range(0..100) {
        0..48 => fishing(rng),
        48..63 => turning(rng),
        63..75 => saying(rng),
        75..81 => mending(rng),
        81..91 => choosing(rng),
        91..94 => fish(rng),
        94..97 => feed(rng),
        97 => seen(rng),
        _ => matching(rng),
    }
}

fn clocks(rng: &mut ChaCha8Rng) -> Value {
    match rng.random_range(0..13) {
        0..3 => json!({"event": "jump", "ms": rng.random_range(-180..180) * MIN_MS}),
        3 => json!({"event": "jump", "ms": rng.random_range(-5_000..5_000)}),
        4 | 12 => json!({"event": "reset", "wall_ms": rng.random_range(0..100_000)}),
        5 => json!({"event": "reset", "wall_ms": NEXT_YEAR_MS + rng.random_range(0..86_400_000)}),
        6 | 7 => json!({"event": "right"}),
        8 => json!({"event": "zone", "offset_min": rng.random_range(-20..24) * 30}),
        9 => json!({"event": "drift", "ppm": rng.random_range(-60..60)}),
        _ => json!({"event": "boot"}),
    }
}

fn files(rng: &mut ChaCha8Rng) -> Value {
    let of = rng.random_range(0..100);
    match rng.random_range(0..20) {
        0..3 => json!({"event": "export"}),
        3..7 => json!({"event": "import", "from": rng.random_range(0..2), "file": of}),
        7..10 => json!({"event": "swap"}),
        10 | 11 => importing(rng),
        12 => json!({"event": "foreign", "kind": "cut", "of": of, "at": rng.random_range(0..1_000)}),
        13 => json!({"event": "foreign", "kind": "junk", "of": of}),
        14..17 => {
            let off = pick(rng, &[&0_i64, &(7 * MIN_MS), &(-86_400_000), &(365 * 86_400_000)]);
            json!({"event": "foreign", "kind": "later", "of": of, "off_ms": off})
        }
        17 => json!({"event": "foreign", "kind": "map", "of": of}),
        18 => json!({"event": "back_up"}),
        _ => json!({"event": "restore", "of": of}),
    }
}

/// Some steps on a disk that fails.
fn disk(rng: &mut ChaCha8Rng, phone: usize, after: i64) -> Step {
    let count = rng.random_range(1..8);
    let within: Vec<Step> = (0..count).map(|_| Step::new(phone, pause_ms(rng), on_disk(rng))).collect();
    let mut what = json!({"event": "disk", "end": pick(rng, &["whole", "kill", "power"]),
        "at": rng.random_range(0..=1_000)});
    if rng.random_range(0..2) == 0 {
        what["room"] = json!(rng.random_range(0..60_000));
    }
    Step::new(phone, after, what).with_within(&within)
}

fn on_disk(rng: &mut ChaCha8Rng) -> Value {
    match rng.random_range(0..20) {
        0 | 1 => json!({"event": "restart"}),
        2 => json!({"event": "import", "from": rng.random_range(0..2), "file": rng.random_range(0..9)}),
        3 => importing(rng),
        4 => json!({"event": "screens", "from": rng.random_range(0..19)}),
        _ => tap(rng),
    }
}
