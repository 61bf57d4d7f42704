//! Setting up a session: everything may be left as it stands. A peg is drawn in taps, yesterday's set-up is copied, and
//! what to pack follows from the plan.

use super::bench::hooklength_words;
use super::figures::trimmed;
use super::leaf::choice_row;
use super::place::span_words;
use super::{Arg, Choice, ChoiceRow, Key, KeyView, KeyWeight, LeafKey, Wording};
use restwater_bench::pack::{Item, Packed};
use restwater_log::SessionSetup;
use serde::{Deserialize, Serialize};

/// The set-up screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
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
    /// The draw, the last set-up, depth, span of the sticks, rods, the pack list: each a row of choices.
    pub rows: Vec<ChoiceRow>,
    /// Opens the cautions of this peg.
    pub cautions: LeafKey,
    /// START.
    pub start: KeyView,
}

/// What the set-up screen is made from.
pub struct SetupInput<'a> {
    /// The set-up as it was last chosen.
    pub draft: &'a SessionSetup,
    /// The session that can be copied, in words; none before the first.
    pub last: Option<String>,
    /// Whether it is copied.
    pub copies: bool,
    /// What to pack, each with whether it is packed.
    pub pack: &'a [(Packed, bool)],
    /// Cautions not yet put away at this peg.
    pub cautions: usize,
    /// The sentences.
    pub words: &'a Wording,
}

/// Spans in use, in tenths of a millimetre: 12 ft, 2 m, 1 m, 3 m (common practice, no source).
const SPANS: &[u32] = &[36_576, 20_000, 10_000, 30_000];
/// Depths in cm; 0 stands for "not known".
const DEPTHS_CM: &[u32] = &[0, 100, 150, 200, 250, 300, 400, 500, 600];
/// Rods to choose from: few waters allow more (common practice, no source). A session may have as many as
/// [`restwater_session::MOST_RODS`].
const RODS: &[u32] = &[1, 2, 3];
/// Seconds for the bait to settle (common practice, no source); 0 counts from the splash.
const SETTLE_S: &[u32] = &[0, 15, 30, 60, 120, 180, 300];

/// Makes the set-up screen.
pub fn setup(input: &SetupInput) -> SetupView {
    let (words, draft) = (input.words, input.draft);
    let row = |field: &str, now: u32, all: &[u32], usual: bool, say: &dyn Fn(u32) -> String| {
        let choices = all.iter().map(|n| (n.to_string(), say(*n))).collect();
        let source = if usual { words.say("source-common") } else { String::new() };
        let mut row =
            choice_row(field, words.say(&format!("setup-{field}")), &now.to_string(), choices, source);
        row.value = say(now);
        row
    };
    let depth = |cm: u32| match cm {
        0 => words.say("setup-unknown"),
        cm => words.say_with("setup-metres", &[("metres", Arg::Text(&trimmed(f64::from(cm) / 100.0, 2)))]),
    };
    let mut rows = vec![
        row("rods", u32::from(draft.rods), RODS, false, &|n| n.to_string()),
        row("span", draft.span_tenth_mm, SPANS, true, &|span| span_words(words, span)),
        row("depth", draft.depth_cm.unwrap_or(0), DEPTHS_CM, false, &depth),
        row("settle", draft.settle_s, SETTLE_S, true, &|s| settle_words(words, s)),
        twitch(input),
        draw(input),
    ];
    rows.extend(copy(input));
    rows.push(pack(input));
    let cautions = LeafKey::new("door", "cautions", words.say("setup-cautions"));
    SetupView {
        title: words.say("setup-title"),
        water: draft.water.clone().unwrap_or_default(),
        water_label: words.say("setup-water"),
        peg: draft.peg.clone().unwrap_or_default(),
        peg_label: words.say("setup-peg"),
        rows,
        cautions: LeafKey {
            sub: words.say_with("setup-cautions-sub", &[("count", Arg::Count(input.cautions))]),
            ..cautions
        },
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

/// "none", "30 s", "2 min".
fn settle_words(words: &Wording, seconds: u32) -> String {
    let count = |n: u32| [("count", Arg::Count(n as usize))];
    match seconds {
        0 => words.say("setup-settle-none"),
        s if s % 60 == 0 => words.say_with("setup-settle-minutes", &count(s / 60)),
        s => words.say_with("setup-settle-seconds", &count(s)),
    }
}

/// Whether a twitch starts the wait anew.
fn twitch(input: &SetupInput) -> ChoiceRow {
    let words = input.words;
    let choices = ["off", "on"].map(|value| (value.to_owned(), words.say(&format!("setup-twitch-{value}"))));
    let now = if input.draft.twitch_restarts { "on" } else { "off" };
    choice_row("twitch", words.say("setup-twitch"), now, choices.into(), words.say("setup-twitch-how"))
}

/// The number of the day's draw, a digit a tap.
fn draw(input: &SetupInput) -> ChoiceRow {
    let words = input.words;
    let digits = (0..10).map(|digit| (digit.to_string(), digit.to_string()));
    let choices = digits.chain([("clear".to_owned(), words.say("setup-draw-clear"))]).collect();
    let mut row = choice_row("draw", words.say("setup-draw"), "", choices, words.say("setup-draw-how"));
    row.value = input.draft.peg.clone().unwrap_or_else(|| words.say("setup-draw-none"));
    row
}

/// As last time, or not.
fn copy(input: &SetupInput) -> Option<ChoiceRow> {
    let words = input.words;
    let last = input.last.clone()?;
    let choices = vec![("last".to_owned(), last), ("none".to_owned(), words.say("setup-copy-none"))];
    let now = if input.copies { "last" } else { "none" };
    Some(choice_row("copy", words.say("setup-copy"), now, choices, words.say("setup-copy-how")))
}

/// What to pack; a tap says it is packed.
fn pack(input: &SetupInput) -> ChoiceRow {
    let words = input.words;
    let packed = input.pack.iter().filter(|(_, done)| *done).count();
    let choice = |(item, done): &(Packed, bool)| Choice {
        label: item_words(words, item),
        value: serde_json::to_string(&item.item).unwrap_or_default(),
        chosen: *done,
    };
    ChoiceRow {
        field: "pack".into(),
        label: words.say("setup-pack"),
        value: words.say_with(
            "setup-packed",
            &[("packed", Arg::Count(packed)), ("all", Arg::Count(input.pack.len()))],
        ),
        choices: input.pack.iter().map(choice).collect(),
        source: words.say("setup-pack-how"),
    }
}

fn item_words(words: &Wording, packed: &Packed) -> String {
    let count = packed.count as usize;
    let named =
        |id: &str, name: &str| words.say_with(id, &[("count", Arg::Count(count)), ("name", Arg::Text(name))]);
    match &packed.item {
        Item::Rods => named("pack-rods", ""),
        Item::Hooklengths(kind) => named("pack-named", &hooklength_words(words, kind)),
        Item::Shot(name) => named("pack-shot", name),
        Item::Leads(name) => named("pack-leads", name),
        Item::Bait(name) => named("pack-bait", name),
        Item::DistanceSticks => words.say("pack-sticks"),
        Item::LandingNet => words.say("pack-landing-net"),
        Item::Mat => words.say("pack-mat"),
        Item::Disgorger => words.say("pack-disgorger"),
        Item::Keepnets => named("pack-keepnets", ""),
        Item::Licence => words.say("pack-licence"),
        Item::Phone => words.say("pack-phone"),
        Item::Light => words.say("pack-light"),
        Item::DryClothes => words.say("pack-dry-clothes"),
        Item::FirstAid => words.say("pack-first-aid"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_bench::pack::{DayPlan, list};

    #[test]
    fn every_thing_to_pack_has_its_words() {
        let words = Wording::new();
        let plan = DayPlan {
            rods: 2,
            shot: vec![("BB".into(), 4)],
            leads: vec![("30 g".into(), 2)],
            baits: vec![("bread".into(), 1)],
            keepnets: 2,
            dark: true,
            frost: true,
            ..DayPlan::default()
        };
        let all: Vec<String> = list(&plan).iter().map(|item| item_words(&words, item)).collect();
        assert!(all.len() >= 14 && all.iter().all(|text| !text.contains("pack-")), "{all:?}");
        assert_eq!(all[0], "2 rods");
    }
}
