//! Every action of an angler, as lines of a day file. `$cast:2` and the like are filled in when the day is
//! played.

use rand::RngExt;
use rand_chacha::ChaCha8Rng;
use serde_json::{Value, json};

/// One of several.
pub fn pick<'a, T: ?Sized>(rng: &mut ChaCha8Rng, of: &[&'a T]) -> &'a T {
    of[rng.random_range(0..of.len())]
}

/// What a day mostly consists of: casts and what ends them.
pub fn fishing(rng: &mut ChaCha8Rng) -> Value {
    let rod = if rng.random_range(0..4) == 0 { 2 } else { 1 };
    match rng.random_range(0..100) {
        0..36 => json!({"do": "cast", "rod": rod}),
        36..56 => json!({"do": "bite", "rod": rod}),
        56..66 => json!({"do": "landed", "rod": rod}),
        66..70 => {
            json!({"do": "landed", "rod": rod, "fish": {"by": "weighed", "unit": "drams", "count": 700}})
        }
        70..75 => json!({"do": "lost", "rod": rod}),
        75..80 => json!({"do": "missed", "rod": rod}),
        80..90 => json!({"do": "wound_in", "rod": rod}),
        90..93 => json!({"do": "liner", "rod": rod}),
        93..95 => json!({"do": "indication", "rod": rod}),
        95..97 => json!({"do": "twitch", "rod": rod}),
        _ => json!({"do": "hooklength_lost", "rod": rod}),
    }
}

/// Beginning and ending, setting times back, undoing.
pub fn turning(rng: &mut ChaCha8Rng) -> Value {
    match rng.random_range(0..100) {
        0..25 => json!({"do": "start_session"}),
        25..34 => json!({"do": "start_session", "setup": {"water": "Alder Pool", "peg": "14", "rods": 2}}),
        34..44 => json!({"do": "end_session"}),
        44..54 => json!({"do": "time_back", "minutes": rng.random_range(1..9)}),
        54..58 => json!({"do": pick(rng, &["away", "returned"])}),
        58..82 => json!({"do": "undo"}),
        _ => json!({"do": "redo"}),
    }
}

/// Rigs, spots, notes, marks: what an angler enters about the swim and the tackle.
pub fn saying(rng: &mut ChaCha8Rng) -> Value {
    let rod = rng.random_range(1..3);
    let bearing: i32 = rng.random_range(-40..40) * 100;
    match rng.random_range(0..12) {
        0 => {
            json!({"do": "set_rig", "rod": rod, "rig": {"bait": "bread", "popup_mm": 457, "hooklength_mm": 914,
            "hook_size": 16, "lead_mg": 30_000, "material": "non_toxic"}})
        }
        1 | 2 => json!({"do": "set_spot", "rod": rod, "spot": {"bearing_cdeg": bearing,
            "reach": {"unit": "yards", "hundredths": rng.random_range(15..60) * 100}, "clipped": true}}),
        3 => {
            json!({"do": "note", "text": pick(rng, &["ice in the margin", "= wind \"west\"", "\u{e9} 2 \u{b0}C"])})
        }
        4 | 5 => {
            json!({"do": "set_mark", "name": pick(rng, &["gate", "dead tree", "hut"]), "bearing_cdeg": bearing})
        }
        6 => {
            json!({"do": "place_peg", "lat_e7": 521_000_000, "lon_e7": -18_000_000, "straight_out_cdeg": 18_000})
        }
        7 => json!({"do": "choose_rod", "rod": rod}),
        8 => json!({"do": "mark_here", "name": ""}),
        9 => json!({"do": "cast_here"}),
        10 => json!({"do": pick(rng, &["keep_back", "release", "place_peg_as_typed"])}),
        _ => json!({"do": "step_aim", "step": pick(rng, &["left", "right", "in", "out"])}),
    }
}

/// Corrections in the evening.
pub fn mending(rng: &mut ChaCha8Rng) -> Value {
    let op = format!("$cast:{}", rng.random_range(0..20));
    let minutes: u32 = rng.random_range(1..20);
    let tap = match rng.random_range(0..11) {
        0..4 => json!({"tap": "end", "end": pick(rng, &["wound_in", "landed", "lost", "missed"])}),
        4..6 => json!({"tap": "after", "minutes": minutes}),
        6 => json!({"tap": "back", "minutes": minutes}),
        7 | 8 => json!({"tap": "add_cast"}),
        9 => json!({"tap": "confirm"}),
        _ => return json!({"do": "open_doubt", "op": op}),
    };
    json!({"do": "mend", "op": op, "tap": tap})
}

/// Marks and landmarks set, named and removed.
pub fn marking(rng: &mut ChaCha8Rng) -> Value {
    let thing = format!("$thing:{}", rng.random_range(0..9));
    match rng.random_range(0..8) {
        0..3 => json!({"do": "set_mark", "name": pick(rng, &["gate", "dead tree", "hut"]),
            "bearing_cdeg": rng.random_range(-40..40) * 100}),
        3 => json!({"do": "swim", "tap": {"tap": "feature", "feature": "weed"}}),
        4 => json!({"do": "typed", "into": "swim_name", "text": pick(rng, &["willow", "post"])}),
        5 => json!({"do": "swim", "tap": {"tap": "rename", "id": thing}}),
        6 => json!({"do": "swim", "tap": {"tap": "remove", "thing": {"set": {"id": thing}}}}),
        _ => json!({"do": pick(rng, &["undo", "undo", "redo"])}),
    }
}

/// The choices and keys of the screens, and what is typed by hand.
pub fn choosing(rng: &mut ChaCha8Rng) -> Value {
    let rod: u8 = rng.random_range(1..3);
    let (verb, tap) = match rng.random_range(0..14) {
        0..3 => ("swim", swim(rng)),
        3 | 4 => return marking(rng),
        5 => ("setup", setup(rng)),
        6 => return json!({"do": "tackle", "rod": rod, "tap": tackle(rng)}),
        7 | 8 => ("bench", bench(rng)),
        9 => ("book", book(rng)),
        10 => ("conditions", conditions(rng)),
        11 => return typed(rng),
        12 => (
            "cautions",
            one(rng, &[json!({"tap": "all_seen"}), json!({"tap": "region", "region": "scotland"})]),
        ),
        _ => return other(rng),
    };
    json!({"do": verb, "tap": tap})
}

fn one(rng: &mut ChaCha8Rng, of: &[Value]) -> Value {
    of[rng.random_range(0..of.len())].clone()
}

fn swim(rng: &mut ChaCha8Rng) -> Value {
    let n: u32 = rng.random_range(0..9);
    one(
        rng,
        &[
            json!({"tap": "left_peg", "cm": 1_500}),
            json!({"tap": "right_peg", "cm": 1_800}),
            json!({"tap": "far_bank", "cm": 9_000}),
            json!({"tap": "far_bank_pegged", "pegged": n > 4}),
            json!({"tap": "rest_target", "minutes": 30 + n}),
            json!({"tap": "band", "cm": 500}),
            json!({"tap": "hazard", "hazard": "snag"}),
            json!({"tap": "feature", "feature": "bar"}),
            json!({"tap": "seen", "sign": "rolled"}),
            json!({"tap": "feed", "what": "loose", "measure": "cup"}),
            json!({"tap": "steps", "open": true}),
            json!({"tap": "cell", "cell": {"column": n, "row": 2}}),
            json!({"tap": "steps", "open": false}),
            json!({"tap": "remove", "thing": "outline"}),
        ],
    )
}

fn setup(rng: &mut ChaCha8Rng) -> Value {
    let n: u32 = rng.random_range(0..9);
    one(
        rng,
        &[
            json!({"tap": "rods", "rods": 1 + n % 2}),
            json!({"tap": "depth", "cm": 300}),
            json!({"tap": "copy_last"}),
            json!({"tap": "copy_nothing"}),
            json!({"tap": "draw_digit", "digit": n}),
            json!({"tap": "clear_draw"}),
            json!({"tap": "span", "tenth_mm": 20_000}),
        ],
    )
}

fn tackle(rng: &mut ChaCha8Rng) -> Value {
    let n: u32 = rng.random_range(0..9);
    one(
        rng,
        &[
            json!({"tap": "bait", "name": "corn"}),
            json!({"tap": "colour", "name": "pink"}),
            json!({"tap": "pop_up", "mm": 600 + n}),
            json!({"tap": "hook_size", "size": 14}),
            json!({"tap": "bearing", "cdeg": -100 * i64::from(n)}),
            json!({"tap": "mark", "mark": "$thing:0"}),
            json!({"tap": "clip", "clipped": true}),
            json!({"tap": "feeder", "mg": 30_000}),
            json!({"tap": "feeder", "mg": null}),
            json!({"tap": "lead", "mg": 28_350}),
            json!({"tap": "reach", "reach": {"unit": "metres", "cm": 3_000 + n * 100}}),
        ],
    )
}

fn bench(rng: &mut ChaCha8Rng) -> Value {
    let count: u32 = rng.random_range(0..9);
    one(
        rng,
        &[
            json!({"tap": "tied", "count": count}),
            json!({"tap": "counted", "count": count}),
            json!({"tap": "taken_out", "count": 1}),
            json!({"tap": "wanted", "count": count}),
            json!({"tap": "cut_down", "tenth_mm": 4_572, "count": 1}),
            json!({"tap": "cut_all"}),
            json!({"tap": "tie_all"}),
            json!({"tap": "add_spool"}),
            json!({"tap": "tags", "tenth_mm": 100}),
            json!({"tap": "lift", "mg": 500 + count}),
            json!({"tap": "shot_weight", "mg": 390}),
            json!({"tap": "rung", "tenth_mm": 4_572}),
            json!({"tap": "splash"}),
            json!({"tap": "bottom"}),
            json!({"tap": "calibrate"}),
            json!({"tap": "length", "tenth_mm": 9_144}),
            json!({"tap": "hook_size", "size": 16}),
            json!({"tap": "plumbed", "cm": 300}),
        ],
    )
}

fn book(rng: &mut ChaCha8Rng) -> Value {
    let session = format!("$session:{}", rng.random_range(0..9));
    one(
        rng,
        &[
            json!({"tap": "close"}),
            json!({"tap": "open", "session": session}),
            json!({"tap": "open", "session": session}),
            json!({"tap": "latitude", "e7": 521_000_000}),
            json!({"tap": "keep_place"}),
            json!({"tap": "filter", "set": "shown", "by": {"on": "season", "season": null}}),
        ],
    )
}

fn conditions(rng: &mut ChaCha8Rng) -> Value {
    let n: u32 = rng.random_range(0..9);
    one(
        rng,
        &[
            json!({"tap": "answer", "answer": {"water": 40 + n}}),
            json!({"tap": "answer", "answer": {"air": 30 + n}}),
            json!({"tap": "answer", "answer": {"wind": "light"}}),
            json!({"tap": "answer", "answer": {"wind_from": "sw"}}),
            json!({"tap": "answer", "answer": {"cloud": n % 9}}),
            json!({"tap": "again"}),
            json!({"tap": "skip", "question": "air"}),
        ],
    )
}

fn typed(rng: &mut ChaCha8Rng) -> Value {
    let rod: u8 = rng.random_range(1..3);
    let (into, text) = match rng.random_range(0..10) {
        0 => (json!("water"), "Alder Pool"),
        1 => (json!("water"), ""),
        2 => (json!("peg"), "14"),
        3 => (json!("depth"), "3.5"),
        4 => (json!("peg_latitude"), "52 7 24 N"),
        5 => (json!("peg_longitude"), "-1.2"),
        6 => (json!("note"), "herons all day"),
        7 => (json!("plan"), "begin at 2 ft"),
        8 => (json!({"bait": {"rod": rod}}), "bread"),
        _ => (json!({"lead": {"rod": rod}}), "far too heavy"),
    };
    json!({"do": "typed", "into": into, "text": text})
}

fn other(rng: &mut ChaCha8Rng) -> Value {
    let alarm = alarm(rng);
    one(
        rng,
        &[
            json!({"do": "waits", "tap": {"tap": "time_left", "minutes": 90}}),
            json!({"do": "phone", "tap": {"tap": "alarm", "alarm": "hold"}}),
            alarm,
            json!({"do": "set", "hand": "left"}),
            json!({"do": "replay", "steps_back": 2}),
            json!({"do": "start_alternation", "a": {"factor": "bait", "name": "bread"},
            "b": {"factor": "bait", "name": "corn"}}),
            json!({"do": "set_next_step"}),
            json!({"do": "end_alternation"}),
        ],
    )
}

/// When the alarm of a bait that is out is to ring.
pub fn alarm(rng: &mut ChaCha8Rng) -> Value {
    let after: u32 = rng.random_range(1..40);
    let alarm = [json!({"after": after}), json!({"after": after}), json!("off")];
    json!({"do": "phone", "tap": {"tap": "alarm", "alarm": one(rng, &alarm)}})
}

/// A session is opened or closed in the Book, or a note is written in it.
pub fn noting(rng: &mut ChaCha8Rng) -> Value {
    match rng.random_range(0..6) {
        0 => json!({"do": "book", "tap": {"tap": "close"}}),
        1 | 2 => {
            let session = format!("$session:{}", rng.random_range(0..9));
            json!({"do": "book", "tap": {"tap": "open", "session": session}})
        }
        3 => json!({"do": "typed", "into": "plan", "text": "begin at 2 ft"}),
        _ => {
            let text = pick(rng, &["herons all day", "ice in the margin", "a kingfisher"]);
            json!({"do": "typed", "into": "note", "text": text})
        }
    }
}

/// Taps on the Match screen.
pub fn matching(rng: &mut ChaCha8Rng) -> Value {
    let rule = |rule: Value| json!({"tap": "rule", "rule": rule});
    let tap = match rng.random_range(0..18) {
        0..3 => rule(json!({"rule": "begin"})),
        3 => rule(json!({"rule": "move_all_out", "minutes": 30})),
        4 => rule(json!({"rule": "nets", "count": 2})),
        5 => rule(json!({"rule": "class", "class": "carp"})),
        6 => json!({"tap": "off"}),
        7 => json!({"tap": "heard", "signal": "all_in"}),
        8..13 => return fish(rng),
        13 => json!({"tap": "weighed_in", "net": "Net 1", "unit": "drams", "count": 9_000}),
        14 => json!({"tap": "section", "left": rng.random_range(0..5), "right": 3}),
        15 => json!({"tap": "scales_peg", "peg": {"side": pick(rng, &["left", "right"]), "place": 1}}),
        16 => json!({"tap": "scales_digit", "digit": rng.random_range(0..10)}),
        _ => json!({"tap": "weigh_in"}),
    };
    json!({"do": "match", "tap": tap})
}

/// What is entered about a landed fish, on the bank or afterwards.
pub fn fish(rng: &mut ChaCha8Rng) -> Value {
    let tap = match rng.random_range(0..12) {
        0..2 => json!({"tap": "put_back", "back": true}),
        2..4 => json!({"tap": "class", "name": pick(rng, &["Carp", "Roach", "Crucian"])}),
        4 => json!({"tap": "weight", "unit": "drams", "count": 640, "guessed": false}),
        5 => json!({"tap": "digit", "digit": rng.random_range(0..10)}),
        6 => json!({"tap": "next_unit"}),
        7 => json!({"tap": "weighed"}),
        8 => json!({"tap": "guessed"}),
        9 => json!({"tap": "no_weight"}),
        10 => json!({"tap": "net", "name": "Net 1"}),
        _ => json!({"tap": "meant", "back": 1}),
    };
    if rng.random_range(0..3) == 0 {
        return json!({"do": "fish", "cast": format!("$cast:{}", rng.random_range(0..20)), "tap": tap});
    }
    json!({"do": "fish", "tap": tap})
}

/// Feed by hand: measures, counts, weights, repeats.
pub fn feed(rng: &mut ChaCha8Rng) -> Value {
    let tap = match rng.random_range(0..12) {
        0..4 => json!({"tap": "again"}),
        4 => json!({"tap": "measure", "what": "loose", "measure": "handful"}),
        5 => json!({"tap": "measure", "what": "ball", "measure": "ball"}),
        6 => json!({"tap": "measure", "what": "spod", "measure": "fill"}),
        7 => json!({"tap": "count", "count": rng.random_range(0..6)}),
        8 => json!({"tap": "at_aim", "aim": rng.random_range(0..2) == 0}),
        9 => json!({"tap": "digit", "digit": rng.random_range(0..10)}),
        10 => json!({"tap": pick(rng, &["weighed", "clear"])}),
        _ => json!({"tap": "weight", "what": "bag", "unit": "grams", "count": 60}),
    };
    json!({"do": "feed", "tap": tap})
}

/// Fish that show.
pub fn seen(rng: &mut ChaCha8Rng) -> Value {
    let tap = match rng.random_range(0..6) {
        0 => json!({"tap": "at_aim", "aim": rng.random_range(0..2) == 0}),
        1 | 2 => json!({"tap": "neighbour", "side": pick(rng, &["left", "right", "across"])}),
        _ => json!({"tap": "sign", "sign": pick(rng, &["rolled", "bubbles", "topping"])}),
    };
    json!({"do": "seen", "tap": tap})
}

/// A line of the plan for a day, written or removed; whether today follows it.
pub fn planning(rng: &mut ChaCha8Rng) -> Value {
    let n: u32 = rng.random_range(1..4);
    let tap = match rng.random_range(0..12) {
        0 => json!({"tap": "rig", "rod": n, "change": {"tap": "bait", "name": "corn"}}),
        1 => json!({"tap": "rig", "rod": n, "change": {"tap": "hook_size", "size": 14 + n}}),
        2 => json!({"tap": "no_rig", "rod": n}),
        3 => json!({"tap": "reach", "reach": {"unit": "yards", "hundredths": 3_000 + 100 * n}}),
        4 => json!({"tap": "mark", "name": "gate"}),
        5 => json!({"tap": "no_start"}),
        6 => json!({"tap": "leave", "minutes": 10 * n}),
        7 => json!({"tap": "leave", "minutes": null}),
        8 => json!({"tap": "move", "at": {"by": "all_in", "minutes": 60 * n}}),
        9 => json!({"tap": "no_peg", "peg": "14"}),
        10 => json!({"tap": "today", "takes": n > 1}),
        _ => {
            let text =
                pick(rng, &["14: bread to the island", "14: corn", "a4 margins", "A4", "12:30 too late"]);
            return json!({"do": "typed", "into": "plan_peg", "text": text});
        }
    };
    json!({"do": "plan", "tap": tap})
}

/// A whole import undone, or restored.
pub fn importing(rng: &mut ChaCha8Rng) -> Value {
    json!({"do": pick(rng, &["undo_import", "redo_import"]), "id": format!("$import:{}", rng.random_range(0..3))})
}
