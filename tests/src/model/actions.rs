//! Every action an angler can do, as lines of a day file. `$cast:2` and the like are filled in when the day is played.

use rand::RngExt;
use rand_chacha::ChaCha8Rng;
use serde_json::{Value, json};

/// One of several.
pub fn pick<'a, T: ?Sized>(rng: &mut ChaCha8Rng, of: &[&'a T]) -> &'a T {
    of[rng.random_range(0..of.len())]
}

fn chosen(rng: &mut ChaCha8Rng, of: &[(&str, &str)]) -> (String, String) {
    let (field, value) = of[rng.random_range(0..of.len())];
    let number = rng.random_range(0..9).to_string();
    (field.to_owned(), value.replace('#', &number))
}

/// What a day is mostly made of: casts and what ends them.
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

/// Beginning and ending, setting back, taking back.
pub fn turning(rng: &mut ChaCha8Rng) -> Value {
    match rng.random_range(0..100) {
        0..25 => json!({"do": "start_session"}),
        25..34 => json!({"do": "start_session", "setup": {"water": "Alder Pool", "peg": "14", "rods": 2}}),
        34..44 => json!({"do": "end_session"}),
        44..54 => json!({"do": "time_back", "minutes": rng.random_range(1..9)}),
        54..82 => json!({"do": "undo"}),
        _ => json!({"do": "redo"}),
    }
}

/// Rigs, spots, notes, marks: what an angler says of the swim and the line.
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

/// Mending in the evening.
pub fn mending(rng: &mut ChaCha8Rng) -> Value {
    let op = format!("$cast:{}", rng.random_range(0..20));
    let (field, value) = chosen(
        rng,
        &[
            ("end", "wound_in"),
            ("end", "landed"),
            ("end", "lost"),
            ("end", "missed"),
            ("after", "#"),
            ("after", "1#"),
            ("back", "#"),
            ("added", "1"),
            ("added", "1"),
            ("stands", "1"),
        ],
    );
    if rng.random_range(0..8) == 0 {
        return json!({"do": "open_doubt", "op": op});
    }
    json!({"do": "mend", "op": op, "field": field, "value": value})
}

/// Marks and landmarks set, named and taken away.
pub fn marking(rng: &mut ChaCha8Rng) -> Value {
    let thing = format!("$thing:{}", rng.random_range(0..9));
    let swim = |field: &str, value: &str| json!({"do": "choose_swim", "field": field, "value": value});
    match rng.random_range(0..8) {
        0..3 => json!({"do": "set_mark", "name": pick(rng, &["gate", "dead tree", "hut"]),
            "bearing_cdeg": rng.random_range(-40..40) * 100}),
        3 => swim("feature", "weed"),
        4 => swim("name", pick(rng, &["willow", "post"])),
        5 => swim("rename", &thing),
        6 => swim("remove", &thing),
        _ => json!({"do": pick(rng, &["undo", "undo", "redo"])}),
    }
}

/// The choices and keys of the screens.
pub fn choosing(rng: &mut ChaCha8Rng) -> Value {
    let line =
        |verb: &str, (field, value): (String, String)| json!({"do": verb, "field": field, "value": value});
    match rng.random_range(0..14) {
        0..3 => line("choose_swim", chosen(rng, SWIM)),
        3 => line("choose_swim", ("remove".into(), format!("$thing:{}", rng.random_range(0..9)))),
        4 => line("choose_swim", ("rename".into(), format!("$thing:{}", rng.random_range(0..9)))),
        5 => line("choose_setup", chosen(rng, SETUP)),
        6 => {
            let (field, value) = chosen(rng, TACKLE);
            json!({"do": "choose", "rod": rng.random_range(1..3), "field": field, "value": value})
        }
        7 | 8 => line("choose_bench", chosen(rng, BENCH)),
        9 => line("choose_book", chosen(rng, BOOK)),
        10 => line("choose_book", ("open".into(), format!("$session:{}", rng.random_range(0..9)))),
        11 => line("choose_conditions", chosen(rng, CONDITIONS)),
        12 => line(
            "choose_cautions",
            chosen(rng, &[("seen", "all"), ("region", "scotland"), ("region", "england")]),
        ),
        _ => other(rng),
    }
}

fn other(rng: &mut ChaCha8Rng) -> Value {
    match rng.random_range(0..7) {
        0 => json!({"do": "choose_casts", "field": "left", "value": "90"}),
        1 => json!({"do": "choose_phone", "field": "alarm", "value": "hold"}),
        2 => json!({"do": "set", "hand": "left"}),
        3 => json!({"do": "replay", "steps_back": rng.random_range(0..3)}),
        4 => json!({"do": "start_alternation", "factor": "height", "a": "45.7 cm", "b": "61 cm"}),
        5 => json!({"do": "set_next_step"}),
        _ => json!({"do": "end_alternation"}),
    }
}

/// Taps on the Match screen.
pub fn matching(rng: &mut ChaCha8Rng) -> Value {
    let rule = |field: &str, value: &str| json!({"tap": "choose", "field": field, "value": value});
    let tap = match rng.random_range(0..14) {
        0..3 => rule("begin", "1"),
        3 => rule("all-out", "30"),
        4 => rule("nets", "2"),
        5 => rule("classes", "kind-carp"),
        6 => rule("off", "1"),
        7 => json!({"tap": "heard", "signal": "all_in"}),
        8 => json!({"tap": "weight", "unit": "drams", "count": 640, "guessed": false}),
        9 => json!({"tap": "class", "name": "Carp"}),
        10 => json!({"tap": "net", "name": "Net 1"}),
        11 => json!({"tap": "put_back", "back": true}),
        12 => json!({"tap": "fish", "back": 1}),
        _ => json!({"tap": "weighed_in", "net": "Net 1", "unit": "drams", "count": 9_000}),
    };
    json!({"do": "match", "tap": tap})
}

/// A whole import taken back, or brought back.
pub fn importing(rng: &mut ChaCha8Rng) -> Value {
    json!({"do": pick(rng, &["undo_import", "redo_import"]), "id": format!("$import:{}", rng.random_range(0..3))})
}

const SWIM: &[(&str, &str)] = &[
    ("left", "1500"),
    ("right", "1800"),
    ("far", "9000"),
    ("rest", "3#"),
    ("band", "500"),
    ("feature", "bar"),
    ("feature", "weed"),
    ("hazard", "snag"),
    ("ray", "#"),
    ("rays", ""),
    ("name", "willow #"),
    ("name", "post"),
    ("remove", "outline"),
    ("lat", "52.1"),
    ("lon", "-1.2"),
    ("out", "180"),
];
const SETUP: &[(&str, &str)] = &[
    ("water", "Alder Pool"),
    ("water", "Mill Pit"),
    ("water", ""),
    ("peg", "#"),
    ("rods", "1"),
    ("rods", "2"),
    ("depth", "300"),
    ("copy", "last"),
    ("copy", "none"),
    ("draw", "#"),
];
const TACKLE: &[(&str, &str)] = &[
    ("bait", "corn"),
    ("colour", "pink"),
    ("popup", "61#"),
    ("hook", "14"),
    ("hooklength_lost", "1"),
    ("bearing", "-#00"),
    ("bearing", "mark $thing:0"),
    ("clip", "true"),
    ("reach", "{\"unit\":\"metres\",\"cm\":3#00}"),
];
const BENCH: &[(&str, &str)] = &[
    ("tied", "#"),
    ("counted", "#"),
    ("taken_out", "1"),
    ("wanted", "#"),
    ("cut", "4572 1"),
    ("cut_all", ""),
    ("tie_all", ""),
    ("spool_add", ""),
    ("tag", "100"),
    ("lift", "50#"),
    ("shot", "390"),
    ("rung", "4572"),
    ("splash", ""),
    ("bottom", ""),
    ("calibrate", ""),
    ("length", "9144"),
    ("hook", "16"),
    ("plumbed", "300"),
];
const BOOK: &[(&str, &str)] = &[
    ("close", ""),
    ("note", "herons all day"),
    ("note", "begin earlier #"),
    ("plan", "begin at 2 ft"),
    ("lat", "521000000"),
    ("keep_place", ""),
    ("season", ""),
];
const CONDITIONS: &[(&str, &str)] = &[
    ("water", "4#"),
    ("air", "3#"),
    ("wind", "light"),
    ("wind_from", "sw"),
    ("cloud", "#"),
    ("again", ""),
    ("skip", "air"),
];
