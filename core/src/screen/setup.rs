//! Setting up a session: everything may be left as it stands.

use super::figures::trimmed;
use super::place::span_words;
use super::{Arg, Choice, ChoiceRow, Key, KeyView, KeyWeight, Wording};
use crate::log::SessionSetup;
use serde::{Deserialize, Serialize};

/// The set-up screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SetupView {
    /// What it is about.
    pub title: String,
    /// Name of the water, as typed before.
    pub water: String,
    /// Label of that field.
    pub water_label: String,
    /// Peg, as typed.
    pub peg: String,
    /// Label of that field.
    pub peg_label: String,
    /// Depth, span of the sticks, rods: each a row of choices.
    pub rows: Vec<ChoiceRow>,
    /// START.
    pub start: KeyView,
}

/// Spans in use, in tenths of a millimetre: 12 ft, 2 m, 1 m, 3 m (common practice, no source).
const SPANS: &[u32] = &[36_576, 20_000, 10_000, 30_000];
/// Depths in cm; 0 stands for "not known".
const DEPTHS_CM: &[u32] = &[0, 100, 150, 200, 250, 300, 400, 500, 600];
const RODS: &[u32] = &[1, 2, 3];

/// Makes the set-up screen from the set-up as it was last chosen.
pub fn setup(words: &Wording, draft: &SessionSetup) -> SetupView {
    let row = |field: &str, now: u32, all: &[u32], usual: bool, say: &dyn Fn(u32) -> String| ChoiceRow {
        field: field.into(),
        label: words.say(&format!("setup-{field}")),
        value: say(now),
        choices: all
            .iter()
            .map(|n| Choice { label: say(*n), value: n.to_string(), chosen: *n == now })
            .collect(),
        source: if usual { words.say("source-common") } else { String::new() },
    };
    let depth = |cm: u32| match cm {
        0 => words.say("setup-unknown"),
        cm => words.say_with("setup-metres", &[("metres", Arg::Text(&trimmed(f64::from(cm) / 100.0, 2)))]),
    };
    SetupView {
        title: words.say("setup-title"),
        water: draft.water.clone().unwrap_or_default(),
        water_label: words.say("setup-water"),
        peg: draft.peg.clone().unwrap_or_default(),
        peg_label: words.say("setup-peg"),
        rows: vec![
            row("rods", u32::from(draft.rods), RODS, false, &|n| n.to_string()),
            row("span", draft.span_tenth_mm, SPANS, true, &|span| span_words(words, span)),
            row("depth", draft.depth_cm.unwrap_or(0), DEPTHS_CM, false, &depth),
        ],
        start: KeyView {
            key: Key::Start,
            label: words.say("key-start"),
            sub: Some(words.say("key-start-sub")),
            spoken: words.say("key-start-spoken"),
            weight: KeyWeight::Solid,
            enabled: true,
        },
    }
}
