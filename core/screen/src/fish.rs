//! A landed fish, in a match or not: its class, its net, whether it went back, and the number pad for its weight.

use super::figures::clock;
use super::match_day::{estimate, net_weight, unit_id, weight_words};
use super::{Action, Arg, FishTap, KeyTap, KeyWeight, Which, Wording};
use restwater_log::{FishWeight, RodNumber, WeightUnit};
use restwater_match_day::rules::{NetRule, same_name};
use restwater_match_day::typed::{Scales, TypedWeight};
use restwater_session::own_count::{OwnCount, entered, nets_of};
use restwater_session::{CaughtFish, MatchSetup, NetScales};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// A key about a landed fish.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct FishKey {
    /// A name for tests.
    pub tag: String,
    /// Its word.
    pub label: String,
    /// A smaller line below; may be empty.
    pub sub: String,
    /// What a screen reader says.
    pub spoken: String,
    /// Solid, outlined or chosen.
    pub weight: KeyWeight,
    /// Whether it can be tapped now.
    pub enabled: bool,
    /// What a tap on it does.
    pub tap: KeyTap,
    /// Whether the Bank opens after the tap, because nothing more can be entered here.
    pub closes: bool,
}

/// The screen of a landed fish.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct FishView {
    /// "Fish 7, landed 12:46".
    pub title: String,
    /// What is known of it, and the net it is in.
    pub says: Vec<String>,
    /// The classes, most recently used first.
    pub classes: Vec<FishKey>,
    /// The net or NO WEIGHT, PUT BACK, EARLIER.
    pub small: Vec<FishKey>,
    /// Whether these keys name sides, so that they are read from left to right for either hand.
    pub reads: bool,
    /// Opens the number pad; without a fish it leads to one.
    pub weigh: FishKey,
}

/// The number pad for the weight of a landed fish.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct WeightView {
    /// "Fish 7, landed 12:46".
    pub title: String,
    /// What is known of it.
    pub says: String,
    /// What was typed so far, "6 lb 12 oz".
    pub figure: String,
    /// Twelve keys: the digits from 1 to 9, the key left of 0, 0, and the unit.
    pub pad: Vec<FishKey>,
    /// Confirms the figure as a guess by eye; `None` where it is read on the scales alone.
    pub guess: Option<FishKey>,
    /// Confirms that the figure was read on the scales.
    pub weighed: FishKey,
}

/// As much of a typed rule as the screen of a fish has room for.
const RULE_CHARS: usize = 80;

/// What the first fish of a session still needs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FirstFish {
    /// A session.
    Start,
    /// A cast of the chosen rod.
    Cast(RodNumber),
    /// The landing of a fish on the chosen rod, which is out or has a fish on.
    Landed(RodNumber),
}

/// What both screens are made from.
pub struct FishInput<'a> {
    /// What to do if no fish is landed.
    pub first: FirstFish,
    /// The landed fish.
    pub caught: &'a [CaughtFish],
    /// The index of the fish that taps refer to.
    pub chosen: Option<usize>,
    /// The match, if it is one.
    pub setup: Option<&'a MatchSetup>,
    /// The organiser's rule on fish that die or go back, as it was typed; empty if none was.
    pub rule: &'a str,
    /// Its own count.
    pub count: Option<&'a OwnCount>,
    /// What the scales showed of the nets that were weighed in.
    pub scales: &'a [NetScales],
    /// Names of classes, most recently used first.
    pub classes: &'a [String],
    /// The weight as it is typed.
    pub typed: &'a TypedWeight,
    /// The language.
    pub words: &'a Wording,
}

impl FishInput<'_> {
    fn fish(&self) -> Option<&CaughtFish> {
        self.caught.get(self.chosen?)
    }

    fn say(&self, id: &str, args: &[(&str, &str)]) -> String {
        say(self.words, id, args)
    }

    /// A key with the words of an id.
    fn key(&self, tag: &str, id: &str, tap: FishTap) -> FishKey {
        FishKey {
            tag: tag.into(),
            label: self.say(id, &[]),
            sub: self.say(&format!("{id}-sub"), &[]),
            spoken: self.say(&format!("{id}-spoken"), &[]),
            weight: KeyWeight::Outline,
            enabled: self.fish().is_some(),
            closes: tap.closes(),
            tap: Action::Fish { cast: self.fish().map(|fish| fish.cast), tap }.into(),
        }
    }
}

fn say(words: &Wording, id: &str, args: &[(&str, &str)]) -> String {
    let args: Vec<(&str, Arg)> = args.iter().map(|(name, text)| (*name, Arg::Text(text))).collect();
    words.say_with(id, &args)
}

/// Makes the screen of a fish.
pub fn fish_view(input: &FishInput) -> FishView {
    if input.fish().is_none() {
        return no_fish(input);
    }
    let unit = unit(input.typed);
    let several = input.setup.is_some_and(|setup| setup.rules.nets.len() > 1);
    let first =
        input.setup.filter(|_| several).map_or_else(|| no_weight_key(input), |setup| net_key(input, setup));
    FishView {
        title: title(input),
        says: input.fish().map_or_else(Vec::new, |fish| says(input, unit, fish)),
        classes: input.classes.iter().map(|name| class_key(input, name)).collect(),
        small: vec![first, put_back_key(input), earlier_key(input)],
        reads: false,
        weigh: weigh_key(input),
    }
}

/// Takes the weight off a fish that has one.
fn no_weight_key(input: &FishInput) -> FishKey {
    let key = input.key("no-weight", "fish-no-weight", FishTap::NoWeight);
    FishKey { enabled: input.fish().is_some_and(|fish| fish.weight.is_some()), ..key }
}

/// The key that opens the number pad; it names the weight of a fish that has one.
fn weigh_key(input: &FishInput) -> FishKey {
    let key = FishKey {
        tap: KeyTap::Open { which: Which::Weight },
        ..input.key("weigh", "fish-weigh", FishTap::NextUnit)
    };
    let Some(weight) =
        input.fish().and_then(|fish| fish.weight.as_ref()).and_then(|weight| plain(input.words, weight))
    else {
        return key;
    };
    let what = [("what", weight.as_str())];
    FishKey {
        sub: input.say("key-fish-weight-sub", &what),
        spoken: input.say("key-fish-weight-spoken", &what),
        label: weight,
        ..key
    }
}

/// "12 lb 7 oz", however it was obtained.
fn plain(words: &Wording, weight: &FishWeight) -> Option<String> {
    match weight {
        FishWeight::Weighed { unit, count } | FishWeight::Guessed { unit, count } => {
            Some(weight_words(words, entered(*unit, *count)))
        }
        FishWeight::Class { .. } => None,
    }
}

/// Without a fish, the screen shows no keys that do nothing, but says what to do and offers the key for it.
fn no_fish(input: &FishInput) -> FishView {
    let (tag, says, key, tap): (_, _, _, KeyTap) = match input.first {
        FirstFish::Start => ("start", "fish-none-start", "key-start", KeyTap::Open { which: Which::Setup }),
        FirstFish::Cast(rod) => ("cast", "fish-none-cast", "key-cast", Action::Cast { rod }.into()),
        FirstFish::Landed(rod) => {
            ("landed", "fish-none-landed", "key-landed", Action::Landed { rod, fish: None }.into())
        }
    };
    let sub = if key == "key-cast" { "key-cast-first".to_owned() } else { format!("{key}-sub") };
    let weigh = FishKey {
        tag: tag.into(),
        label: input.say(key, &[]),
        sub: input.say(&sub, &[]),
        spoken: input.say(&format!("{key}-spoken"), &[]),
        weight: KeyWeight::Solid,
        enabled: true,
        tap,
        // A cast is shown on the Bank.
        closes: matches!(input.first, FirstFish::Cast(_)),
    };
    FishView {
        title: title(input),
        says: vec![input.say(says, &[])],
        classes: Vec::new(),
        small: Vec::new(),
        reads: false,
        weigh,
    }
}

/// Makes the number pad.
pub fn weight_view(input: &FishInput) -> WeightView {
    let digit = |digit: u8| FishKey {
        label: digit.to_string(),
        sub: String::new(),
        spoken: digit.to_string(),
        enabled: input.fish().is_some() && input.typed.takes(digit),
        ..input.key(&format!("digit-{digit}"), "fish-next-lb", FishTap::Digit { digit })
    };
    let typed = input.typed.weight().of_a_fish().is_ok();
    let able = |key: FishKey, able: bool| FishKey { enabled: key.enabled && able, ..key };
    let guess = able(input.key("guess", "fish-guess", FishTap::Guessed), typed);
    let rub_out = able(input.key("rub-out", "fish-rub-out", FishTap::RubOut), !input.typed.is_empty());
    let mut pad: Vec<FishKey> = (1..=9).map(digit).collect();
    pad.extend([rub_out, digit(0), input.key("unit", unit_id(input.typed), FishTap::NextUnit)]);
    let weighed = input.key("weighed", "fish-weighed", FishTap::Weighed);
    // The weight is what the angler checks before the tap, so it is the word on the key.
    let label = if typed { weight_words(input.words, input.typed.weight()) } else { weighed.label.clone() };
    // Until something is typed, the pad shows what was entered before.
    let before = input.fish().filter(|_| input.typed.is_empty()).and_then(|fish| fish.weight.as_ref());
    let before = before.and_then(|weight| plain(input.words, weight));
    let spoken = input.say("fish-weighed-spoken", &[("weight", &label)]);
    let sub = if typed { input.say("fish-weighed-take", &[]) } else { weighed.sub.clone() };
    WeightView {
        title: title(input),
        says: input.fish().map_or_else(String::new, |fish| what(input, unit(input.typed), fish)),
        figure: before.unwrap_or_else(|| input.words.decimals(&input.typed.shown())),
        pad,
        guess: Some(guess),
        weighed: FishKey {
            label,
            sub,
            spoken,
            weight: KeyWeight::Solid,
            enabled: weighed.enabled && typed,
            ..weighed
        },
    }
}

/// The unit that a weight is typed in.
fn unit(typed: &TypedWeight) -> WeightUnit {
    match typed.scales() {
        Scales::Imperial => WeightUnit::Drams,
        Scales::Metric => WeightUnit::Grams,
    }
}

fn title(input: &FishInput) -> String {
    let place = input.chosen.filter(|i| *i < input.caught.len());
    place.zip(input.fish()).map_or_else(
        || input.say("fish-none", &[]),
        |(i, fish)| {
            input.say("fish-title", &[("number", &(i + 1).to_string()), ("time", &clock(&fish.at.shown))])
        },
    )
}

fn says(input: &FishInput, unit: WeightUnit, fish: &CaughtFish) -> Vec<String> {
    let mut says = vec![what(input, unit, fish)];
    if let Some((setup, net)) = input.setup.and_then(|setup| Some((setup, net_of(input, setup)?))) {
        let before = &input.caught[..input.chosen.unwrap_or(0).min(input.caught.len())];
        let carried = fish.net.is_none() && before.iter().any(|fish| fish.net.is_some());
        let id = if carried { "fish-into-carried" } else { "fish-into" };
        says.push(input.say(id, &[("net", &net.name)]));
        says.extend(net_line(input, setup, net));
    }
    says
}

/// "Carp, 12 lb 7 oz on the scales."
fn what(input: &FishInput, unit: WeightUnit, fish: &CaughtFish) -> String {
    let weight = fish.weight.as_ref().and_then(|weight| of_a_fish(input.words, weight));
    let mean = fish.class.as_ref().and_then(|name| class_mean(input, unit, name));
    let mean = mean.map(|weight| input.say("match-about", &[("weight", &weight)]));
    let known = match (&fish.class, weight.or(mean)) {
        (Some(class), Some(weight)) => Some(input.say("fish-what", &[("class", class), ("weight", &weight)])),
        (Some(only), None) => Some(input.say("fish-only", &[("what", only)])),
        (None, Some(only)) => Some(input.say("fish-only", &[("what", &only)])),
        (None, None) => None,
    };
    match (fish.put_back, known) {
        (true, known) => [known, Some(is_back(input))].into_iter().flatten().collect::<Vec<_>>().join(" "),
        (false, Some(known)) => known,
        (false, None) if input.setup.is_some() => input.say("fish-not-weighed-match", &[]),
        (false, None) => input.say("fish-not-weighed", &[]),
    }
}

/// "Put back." In a match the organiser's rule says whether such a fish counts.
fn is_back(input: &FishInput) -> String {
    let rule = input.rule.trim().trim_end_matches('.');
    match (input.setup, rule) {
        (None, _) => input.say("fish-is-back", &[]),
        (Some(_), "") => input.say("fish-is-back-match", &[]),
        (Some(_), rule) => {
            let shown: String = rule.chars().take(RULE_CHARS).collect();
            let id = if shown.len() < rule.len() { "fish-is-back-rule-cut" } else { "fish-is-back-rule" };
            input.say(id, &[("rule", shown.trim_end())])
        }
    }
}

/// A fish's weight in words: "12 lb 7 oz on the scales", "about 3 lb by eye".
pub(crate) fn of_a_fish(words: &Wording, weight: &FishWeight) -> Option<String> {
    let (id, unit, count) = match weight {
        FishWeight::Weighed { unit, count } => ("fish-on-scales", unit, count),
        FishWeight::Guessed { unit, count } => ("fish-by-eye", unit, count),
        FishWeight::Class { .. } => return None,
    };
    Some(say(words, id, &[("weight", &weight_words(words, entered(*unit, *count)))]))
}

/// "5 lb 2 oz", as learned from the fish of the match.
fn class_mean(input: &FishInput, unit: WeightUnit, name: &str) -> Option<String> {
    let place = input.setup?.class(name)?;
    Some(estimate(input.words, unit, input.count?.learned.get(place)?.mean_g))
}

/// "Net 1 holds about 23 lb 4 oz."
fn net_line(input: &FishInput, setup: &MatchSetup, net: &NetRule) -> Option<String> {
    if let Some(scales) = input.scales.iter().find(|scales| same_name(&scales.net, &net.name)) {
        let weight = weight_words(input.words, scales.shown);
        return Some(input.say("fish-net-weighed", &[("net", &net.name), ("weight", &weight)]));
    }
    let running = input.count?.running.nets.iter().find(|n| n.name == net.name)?;
    let weight = net_weight(input.words, setup.unit, running);
    let limit = net.limit.map_or_else(String::new, |limit| {
        input.say("fish-of-limit", &[("limit", &weight_words(input.words, limit))])
    });
    Some(input.say("fish-net-now", &[("net", &net.name), ("weight", &weight), ("limit", &limit)]))
}

/// The net that the fish in question is in.
fn net_of<'a>(input: &FishInput<'a>, setup: &'a MatchSetup) -> Option<&'a NetRule> {
    let place = input.chosen.filter(|place| *place < input.caught.len())?;
    let net = nets_of(setup, input.caught).into_iter().nth(place)??;
    setup.rules.net(&net)
}

fn class_key(input: &FishInput, name: &str) -> FishKey {
    let mean = class_mean(input, unit(input.typed), name);
    let counts = input.setup.is_none_or(|setup| setup.rules.counts(name));
    let sub = match mean.as_deref() {
        _ if !counts => input.say("fish-class-not", &[]),
        mean => mean.unwrap_or_default().to_owned(),
    };
    let spoken = match mean {
        Some(mean) => input.say("fish-class-mean-spoken", &[("class", name), ("weight", &mean)]),
        None => input.say("fish-class-spoken", &[("class", name)]),
    };
    let chosen =
        input.fish().and_then(|fish| fish.class.as_deref()).is_some_and(|class| same_name(class, name));
    let key = input.key("class", "fish-clear", FishTap::Class { name: name.to_owned() });
    FishKey {
        tag: format!("class-{}", name.to_uppercase()),
        label: name.to_uppercase(),
        sub,
        spoken,
        weight: KeyWeight::chosen(chosen),
        ..key
    }
}

/// The net of the fish; a tap changes to the next one that may hold it.
fn net_key(input: &FishInput, setup: &MatchSetup) -> FishKey {
    let fish = input.fish();
    let kind = fish.and_then(|f| f.class.as_deref()).unwrap_or_default();
    let may: Vec<&NetRule> = setup.rules.nets.iter().filter(|net| net.may_hold(kind)).collect();
    let now = net_of(input, setup).or_else(|| may.first().copied());
    let place = now.and_then(|now| may.iter().position(|net| net.name == now.name)).unwrap_or(0);
    let next = may.get((place + 1) % may.len().max(1)).copied();
    let name = now.map_or_else(|| input.say("fish-net-none", &[]), |net| net.name.clone());
    let other = next.filter(|_| may.len() > 1);
    let sub = other.map_or_else(String::new, |net| input.say("fish-net-next", &[("net", &net.name)]));
    let goes_to = other.or(now).map_or_else(|| name.clone(), |net| net.name.clone());
    let key = input.key("fish-net", "fish-clear", FishTap::Net { name: goes_to });
    FishKey {
        label: name.to_uppercase(),
        spoken: input.say("fish-net-spoken", &[("net", &name), ("next", &sub)]),
        sub,
        enabled: fish.is_some_and(|f| !f.put_back) && other.is_some(),
        ..key
    }
}

fn put_back_key(input: &FishInput) -> FishKey {
    let back = input.fish().is_some_and(|fish| fish.put_back);
    let id = if back { "fish-keep" } else { "fish-back" };
    FishKey { weight: KeyWeight::chosen(back), ..input.key("put-back", id, FishTap::PutBack { back: !back }) }
}

/// Chooses the previous fish; after the first one the latest again.
fn earlier_key(input: &FishInput) -> FishKey {
    let (place, count) = (input.chosen.unwrap_or(0), input.caught.len());
    let back = if place == 0 { 0 } else { count.saturating_sub(place) };
    let id = if place == 0 { "fish-latest" } else { "fish-earlier" };
    let tap = FishTap::Meant { back: u32::try_from(back).unwrap_or(0) };
    FishKey { enabled: count > 1, ..input.key("earlier", id, tap) }
}

/// The fish that the chosen rod landed last, for the row of it on the Bank.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LandedFish {
    /// The cast it was landed on.
    pub cast: Uuid,
    /// Its class, if entered.
    pub class: Option<String>,
    /// Its weight, if entered.
    pub weight: Option<FishWeight>,
    /// Whether it went back.
    pub put_back: bool,
    /// The class used last.
    pub offered: Option<String>,
}

impl LandedFish {
    /// Its weight in words.
    pub(super) fn weight_words(&self, words: &Wording) -> Option<String> {
        plain(words, self.weight.as_ref()?)
    }
}
