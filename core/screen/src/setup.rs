//! Setting up a session: everything is optional. The number of a draw is typed by taps, the last set-up can
//! be copied, and the pack list follows from the plan.

use super::bench::hooklength_words;
use super::place::span_words;
use super::place_row::place_row;
use super::{
    Action, Arg, Choice, ChoiceRow, Key, KeyTap, KeyView, KeyWeight, LeafKey, PlanTap, SetupTap, TypedField,
    TypedInto, Which, Wording,
};
use restwater_bench::pack::{Item, Packed};
use restwater_log::SessionSetup;
use serde::{Deserialize, Serialize};

/// The set-up screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SetupView {
    /// What it is about.
    pub title: String,
    /// Peg and, as long as no water was fished before, name of the water, as typed before.
    pub fields: Vec<TypedField>,
    /// The water, the draw, the last set-up, depth, span of the sticks, rods, the pack list: each a row of choices.
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
    /// The session that can be copied, in words; `None` before the first.
    pub last: Option<String>,
    /// Whether it is copied.
    pub copies: bool,
    /// What to pack, each item with whether it is packed.
    pub pack: &'a [(Packed, bool)],
    /// The day of the plan that START adopts, in words, or `None`.
    pub plan: Option<String>,
    /// Whether it was dropped for today.
    pub plan_aside: bool,
    /// The waters to choose from: those fished before.
    pub waters: &'a [String],
    /// The number of cautions not yet dismissed at this peg.
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
    let row = |tag: &str, now: u32, all: &[u32], say: &dyn Fn(u32) -> String, tap: fn(u32) -> SetupTap| {
        let choice = |n: &u32| Choice::new(n.to_string(), say(*n), *n == now, Action::Setup { tap: tap(*n) });
        let label = words.say(&format!("setup-{tag}"));
        let choices = all.iter().map(choice).collect();
        ChoiceRow { value: say(now), ..ChoiceRow::of(tag, label, choices, String::new()) }
    };
    let depth = |cm: u32| match cm {
        0 => words.say("setup-unknown"),
        cm => {
            words.say_with("setup-metres", &[("metres", Arg::Text(&words.figure(f64::from(cm) / 100.0, 2)))])
        }
    };
    let span = row("span", draft.span_tenth_mm, SPANS, &|span| span_words(words, span), |tenth_mm| {
        SetupTap::Span { tenth_mm }
    });
    let mut depth = row("depth", draft.depth_cm.unwrap_or(0), DEPTHS_CM, &depth, |cm| SetupTap::Depth {
        cm: Some(cm).filter(|cm| *cm > 0),
    });
    let settle = row("settle", draft.settle_s, SETTLE_S, &|s| settle_words(words, s), |seconds| {
        SetupTap::Settle { seconds }
    });
    depth.typing = Some(TypedField::sent(words, "depth", depth.label.clone(), TypedInto::Depth));
    let mut rows: Vec<ChoiceRow> = water(input).into_iter().collect();
    rows.extend([
        row("rods", u32::from(draft.rods), RODS, &|n| n.to_string(), |n| SetupTap::Rods { rods: n as u8 }),
        ChoiceRow { source: words.say("source-common"), ..span },
        depth,
        ChoiceRow { source: words.say("source-common"), ..settle },
        twitch(input),
        draw(input),
    ]);
    rows.extend(copy(input));
    rows.extend(plan(input));
    rows.push(pack(input));
    let tap = KeyTap::Open { which: Which::Cautions };
    let cautions = LeafKey::new("screen-cautions", words.say("setup-cautions"), tap);
    let field = |tag: &str, value: Option<&String>, into| {
        TypedField::new(tag, words.say(&format!("setup-{tag}")), value.cloned().unwrap_or_default(), into)
    };
    let mut fields = vec![field("peg", draft.peg.as_ref(), TypedInto::Peg)];
    if input.waters.is_empty() {
        fields.push(field("water", draft.water.as_ref(), TypedInto::Water));
    }
    SetupView {
        title: words.say("setup-title"),
        fields,
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
            tap: Action::StartSession { setup: None }.into(),
        },
    }
}

/// A water fished before, or one that is typed; before the first there is only the line to type it into.
fn water(input: &SetupInput) -> Option<ChoiceRow> {
    let (words, now) = (input.words, input.draft.water.as_deref());
    let some = Some(input.waters).filter(|waters| !waters.is_empty())?;
    let row = place_row(words, "water", now, some, TypedInto::Water);
    Some(ChoiceRow { source: words.say("setup-water-how"), ..row })
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

/// Whether a twitch restarts the wait.
fn twitch(input: &SetupInput) -> ChoiceRow {
    let words = input.words;
    let choice = |restarts: bool| {
        let tag = if restarts { "on" } else { "off" };
        let action = Action::Setup { tap: SetupTap::TwitchRestarts { restarts } };
        Choice::new(
            tag,
            words.say(&format!("setup-twitch-{tag}")),
            input.draft.twitch_restarts == restarts,
            action,
        )
    };
    let choices = [false, true].map(choice).to_vec();
    let value =
        choices.iter().find(|choice| choice.chosen).map_or_else(String::new, |choice| choice.label.clone());
    let row = ChoiceRow::of("twitch", words.say("setup-twitch"), choices, words.say("setup-twitch-how"));
    ChoiceRow { value, ..row }
}

/// The number of the day's draw, one digit for each tap.
fn draw(input: &SetupInput) -> ChoiceRow {
    let words = input.words;
    let choice = |tag: &str, label, tap| Choice::new(tag, label, false, Action::Setup { tap });
    let digits = (0..10_u8).map(|digit| {
        let text = digit.to_string();
        choice(&text, text.clone(), SetupTap::DrawDigit { digit })
    });
    let clear = choice("clear", words.say("setup-draw-clear"), SetupTap::ClearDraw);
    let choices = digits.chain([clear]).collect();
    let value = input.draft.peg.clone().unwrap_or_else(|| words.say("setup-draw-none"));
    ChoiceRow {
        value,
        ..ChoiceRow::of("draw", words.say("setup-draw"), choices, words.say("setup-draw-how"))
    }
}

/// As last time, or not.
fn copy(input: &SetupInput) -> Option<ChoiceRow> {
    let words = input.words;
    let last = input.last.clone()?;
    let choice = |tag: &str, label, chosen, tap| Choice::new(tag, label, chosen, Action::Setup { tap });
    let choices = vec![
        choice("last", last, input.copies, SetupTap::CopyLast),
        choice("none", words.say("setup-copy-none"), !input.copies, SetupTap::CopyNothing),
    ];
    Some(ChoiceRow::of("copy", words.say("setup-copy"), choices, words.say("setup-copy-how")))
}

/// Whether START takes the plan up.
fn plan(input: &SetupInput) -> Option<ChoiceRow> {
    let words = input.words;
    let choice = |tag: &str, label, takes: bool| {
        let action = Action::Plan { tap: PlanTap::Today { takes } };
        Choice::new(tag, label, takes != input.plan_aside, action)
    };
    let of = words.say_with("setup-plan-of", &[("day", Arg::Text(input.plan.as_deref()?))]);
    let choices = vec![choice("take", of, true), choice("none", words.say("setup-plan-none"), false)];
    Some(ChoiceRow::of("plan", words.say("setup-plan"), choices, words.say("setup-plan-how")))
}

/// What to pack; a tap says it is packed.
fn pack(input: &SetupInput) -> ChoiceRow {
    let words = input.words;
    let packed = input.pack.iter().filter(|(_, done)| *done).count();
    let choice = |(i, (packed, done)): (usize, &(Packed, bool))| {
        let action = Action::Setup { tap: SetupTap::Pack { item: packed.item.clone() } };
        Choice::new(i.to_string(), item_words(words, packed), *done, action)
    };
    let choices = input.pack.iter().enumerate().map(choice).collect();
    let args = [("packed", Arg::Count(packed)), ("all", Arg::Count(input.pack.len()))];
    let value = words.say_with("setup-packed", &args);
    ChoiceRow {
        value,
        ..ChoiceRow::of("pack", words.say("setup-pack"), choices, words.say("setup-pack-how"))
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
        // A lead is known by its weight, which is kept with a point.
        Item::Leads(name) => named("pack-leads", &words.decimals(name)),
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
    fn every_item_to_pack_has_its_words() {
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
