//! Counting the lead down.

use super::{BenchInput, Figures, Part, key};
use crate::figures::clock;
use crate::{Arg, BenchTap, Leaf, LeafKey, LeafLine, Refused};
use restwater_bench::fall::{Calibration, calibrate, depth};

/// How early or late each press may be, in seconds: a guess.
pub const REACTION_S: f64 = 0.3;
const DEPTHS: &[u32] = &[100, 150, 200, 250, 300, 350, 400, 500, 600];

/// Fall time to depth.
pub(super) fn fall(input: &BenchInput) -> Part {
    let (words, choices) = (input.words, input.choices);
    let mut leaf = Leaf::new(words, "bench", "fall");
    let falls: Vec<Calibration> = input.kit.falls.iter().map(|timed| timed.fall).collect();
    let speed = calibrate(&falls, REACTION_S);
    let fall_s = choices.fall_ms.map(|ms| f64::from(ms) / 1_000.0);
    let text = |n: f64, decimals| input.words.figure(n, decimals);
    let found = fall_s.map(|s| speed.and_then(|speed| depth(&speed, s, REACTION_S)));
    leaf.says = match (&choices.falling, fall_s, &found) {
        (Some(at), _, _) => words.say_with("bench-falling", &[("time", Arg::Text(&clock(at)))]),
        (None, Some(s), Some(Ok(found))) => words.say_with(
            "bench-fall-depth",
            &[
                ("seconds", Arg::Text(&text(s, 1))),
                ("metres", Arg::Text(&text(found.depth_m, 1))),
                ("low", Arg::Text(&text(found.low_m, 1))),
                ("high", Arg::Text(&text(found.high_m, 1))),
            ],
        ),
        (None, Some(s), Some(Err(error))) => {
            let seconds = text(s, 1);
            let timed = words.say_with("bench-fall-timed", &[("seconds", Arg::Text(&seconds))]);
            words.sentences(&[&timed, &error.said(words)])
        }
        _ => words.say("bench-fall-says"),
    };
    leaf.lines = falls
        .iter()
        .map(|fall| {
            let (metres, seconds) = (text(fall.depth_m, 2), text(fall.fall_s, 1));
            LeafLine::new(
                words.say_with("bench-at-depth", &[("metres", Arg::Text(&metres))]),
                words.say_with("bench-seconds", &[("seconds", Arg::Text(&seconds))]),
            )
        })
        .collect();
    if let Ok(speed) = &speed {
        let (at, low, high) = (text(speed.speed, 2), text(speed.low, 2), text(speed.high, 2));
        let args = [("speed", Arg::Text(&at)), ("low", Arg::Text(&low)), ("high", Arg::Text(&high))];
        leaf.notes.push(words.say_with("bench-fall-speed", &args));
    }
    leaf.notes.push(words.say("bench-fall-how"));
    let plumbed = Figures {
        tag: "plumbed",
        now: choices.plumbed_cm,
        steps: &[-10, 10],
        usual: DEPTHS,
        least: 10,
        most: 10_000,
        common: false,
        tap: |cm| BenchTap::Plumbed { cm },
    };
    let metres =
        |cm: i64| words.say_with("setup-metres", &[("metres", Arg::Text(&text(cm as f64 / 100.0, 2)))]);
    leaf.rows.push(plumbed.row(words, &metres));
    leaf.keys = keys(input);
    let sub = match &speed {
        Ok(speed) => {
            let speed = text(speed.speed, 2);
            words.say_with(
                "bench-fall-sub",
                &[("speed", Arg::Text(&speed)), ("count", Arg::Count(falls.len()))],
            )
        }
        Err(_) => words.say("bench-fall-none"),
    };
    (leaf, sub)
}

fn keys(input: &BenchInput) -> Vec<LeafKey> {
    let (words, choices) = (input.words, input.choices);
    let falling = choices.falling.is_some();
    let may_keep = !falling && choices.fall_ms.is_some() && !choices.is_fall_kept(input.kit);
    let key = |name: &str, solid, enabled, tap| LeafKey {
        sub: words.say(&format!("bench-key-{name}-sub")),
        solid,
        enabled,
        ..key(format!("{name}-"), words.say(&format!("bench-key-{name}")), tap)
    };
    vec![
        key("splash", !falling, true, BenchTap::Splash),
        key("bottom", falling, falling, BenchTap::Bottom),
        key("calibrate", false, may_keep, BenchTap::Calibrate),
    ]
}
