//! The page of one fish: its class, its weight, its net.

use super::now::weight_of;
use super::weights::{estimate, of_a_fish, short, step, steps, units};
use super::{FishPage, MatchInput, MatchKey};
use crate::MatchTap;
use crate::figures::clock;
use restwater_log::WeightUnit;
use restwater_match_day::rules::{NetRule, same_name};
use restwater_session::CaughtFish;
use restwater_session::MatchSetup;
use restwater_session::own_count::OwnCount;

/// The page of the chosen fish, or of none.
pub(super) fn page(input: &MatchInput, setup: &MatchSetup) -> FishPage {
    let place = input.chosen.filter(|i| *i < input.caught.len());
    let fish = place.and_then(|i| input.caught.get(i));
    let unit = setup.unit;
    let title = place.zip(fish).map_or_else(
        || input.say("match-no-fish", &[]),
        |(i, fish)| {
            input.say(
                "match-fish-title",
                &[("number", &(i + 1).to_string()), ("time", &clock(&fish.at.shown))],
            )
        },
    );
    let big = if unit == WeightUnit::Drams { 2_560 } else { 1 };
    let tap = |by| MatchTap::Step { by };
    let enter = |id: &str, tap, solid| MatchKey {
        solid,
        enabled: fish.is_some() && input.figure > 0,
        ..key(input, id, tap)
    };
    FishPage {
        title,
        says: fish.map_or_else(Vec::new, |fish| says(input, setup, fish)),
        waits: input.caught.last().is_some_and(is_bare),
        classes: setup.classes.iter().map(|class| class_key(input, setup, &class.name, fish)).collect(),
        net: net_key(input, setup, fish),
        more: vec![put_back_key(input, fish), earlier_key(input, place)],
        figure: units(unit, input.figure).to_string(),
        steps: steps(input, unit, input.figure, tap),
        above: vec![
            step(input, unit, -big, input.figure > 0, tap),
            enter("match-guessed", MatchTap::Guessed, false),
            step(input, unit, big, true, tap),
        ],
        weighed: enter("match-weighed", MatchTap::Weighed, true),
    }
}

/// Whether nothing was said of it yet.
fn is_bare(fish: &CaughtFish) -> bool {
    fish.class.is_none() && fish.weight.is_none() && !fish.put_back
}

fn key(input: &MatchInput, id: &str, tap: MatchTap) -> MatchKey {
    MatchKey {
        label: input.say(id, &[]),
        sub: input.say(&format!("{id}-sub"), &[]),
        spoken: input.say(&format!("{id}-spoken"), &[]),
        solid: false,
        enabled: true,
        tap,
    }
}

fn says(input: &MatchInput, setup: &MatchSetup, fish: &CaughtFish) -> Vec<String> {
    let mut says = vec![what(input, setup, fish)];
    let net = net_of(setup, fish).filter(|_| !fish.put_back);
    if let Some(net) = net {
        let id = if fish.net_said { "match-into" } else { "match-into-carried" };
        says.push(input.say(id, &[("net", &net.name)]));
        says.extend(net_line(input, setup, net));
    }
    says
}

/// "Carp, 12 lb 7 oz on the scales."
fn what(input: &MatchInput, setup: &MatchSetup, fish: &CaughtFish) -> String {
    if fish.put_back {
        return input.say("match-is-back", &[]);
    }
    let weight = fish.weight.as_ref().and_then(|w| of_a_fish(input, w));
    let mean = input.counted().zip(fish.class.as_ref()).and_then(|(own, name)| class_mean(setup, own, name));
    let mean = mean.map(|weight| input.say("match-about", &[("weight", &weight)]));
    match (&fish.class, weight, mean) {
        (Some(class), Some(weight), _) => input.say("match-what", &[("class", class), ("weight", &weight)]),
        (Some(class), None, Some(mean)) => input.say("match-what", &[("class", class), ("weight", &mean)]),
        (Some(only), None, None) => input.say("match-only", &[("weight", only)]),
        (None, Some(only), _) => input.say("match-only", &[("weight", &only)]),
        (None, None, _) => input.say("match-not-weighed", &[]),
    }
}

/// "about 5 lb 2 oz".
fn class_mean(setup: &MatchSetup, own: &OwnCount, name: &str) -> Option<String> {
    Some(estimate(setup.unit, own.learned.get(setup.class(name)?)?.mean_g))
}

/// "Net 1 holds about 23 lb 4 oz. NEAR THE LIMIT".
fn net_line(input: &MatchInput, setup: &MatchSetup, net: &NetRule) -> Option<String> {
    let running = input.counted()?.running.nets.iter().find(|n| n.name == net.name)?;
    let weight = weight_of(input, setup.unit, running);
    let limit =
        net.limit.map_or_else(String::new, |limit| input.say("match-of-limit", &[("limit", &short(limit))]));
    Some(input.say("match-net-now", &[("net", &net.name), ("weight", &weight), ("limit", &limit)]))
}

/// The net a fish is in: the one said or carried over, else the first that may hold it.
fn net_of<'a>(setup: &'a MatchSetup, fish: &CaughtFish) -> Option<&'a NetRule> {
    let kind = fish.class.as_deref().unwrap_or_default();
    let said = fish.net.as_ref().and_then(|name| setup.rules.net(name)).filter(|net| net.may_hold(kind));
    said.or_else(|| setup.rules.nets.iter().find(|net| net.may_hold(kind)))
}

fn class_key(input: &MatchInput, setup: &MatchSetup, name: &str, fish: Option<&CaughtFish>) -> MatchKey {
    let mean = input.counted().and_then(|own| class_mean(setup, own, name)).unwrap_or_default();
    let counts = setup.rules.counts(name);
    let id = if counts { "match-class-sub" } else { "match-class-not" };
    MatchKey {
        label: name.to_uppercase(),
        sub: input.say(id, &[("weight", &mean)]),
        spoken: input.say("match-class-spoken", &[("class", name), ("weight", &mean)]),
        solid: fish.and_then(|f| f.class.as_deref()).is_some_and(|class| same_name(class, name)),
        enabled: fish.is_some(),
        tap: MatchTap::Class { name: name.to_owned() },
    }
}

/// The net of the fish; a tap is the next one that may hold it.
fn net_key(input: &MatchInput, setup: &MatchSetup, fish: Option<&CaughtFish>) -> MatchKey {
    let kind = fish.and_then(|f| f.class.as_deref()).unwrap_or_default();
    let may: Vec<&NetRule> = setup.rules.nets.iter().filter(|net| net.may_hold(kind)).collect();
    let now = fish.and_then(|f| net_of(setup, f)).or_else(|| may.first().copied());
    let place = now.and_then(|now| may.iter().position(|net| net.name == now.name)).unwrap_or(0);
    let next = may.get((place + 1) % may.len().max(1)).copied();
    let name = now.map_or_else(|| input.say("match-net-none", &[]), |net| net.name.clone());
    let other = next.filter(|_| may.len() > 1);
    let sub = other.map_or_else(String::new, |net| input.say("match-net-next", &[("net", &net.name)]));
    MatchKey {
        label: name.to_uppercase(),
        spoken: input.say("match-net-spoken", &[("net", &name), ("next", &sub)]),
        sub,
        solid: false,
        enabled: fish.is_some_and(|f| !f.put_back) && other.is_some(),
        tap: MatchTap::Net { name: other.or(now).map_or(name, |net| net.name.clone()) },
    }
}

fn put_back_key(input: &MatchInput, fish: Option<&CaughtFish>) -> MatchKey {
    let back = fish.is_some_and(|f| f.put_back);
    let id = if back { "match-keep" } else { "match-back" };
    MatchKey { enabled: fish.is_some(), ..key(input, id, MatchTap::PutBack { back: !back }) }
}

/// The fish before this one; after the first the latest again.
fn earlier_key(input: &MatchInput, place: Option<usize>) -> MatchKey {
    let (place, count) = (place.unwrap_or(0), input.caught.len());
    let back = if place == 0 { 0 } else { count - place };
    let id = if place == 0 { "match-latest" } else { "match-earlier" };
    let tap = MatchTap::Fish { back: u32::try_from(back).unwrap_or(0) };
    MatchKey { enabled: count > 1, ..key(input, id, tap) }
}
