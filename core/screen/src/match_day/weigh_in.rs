//! The weigh-in: what the scales showed against the own count.

use super::weights::{estimate, rounded, short, step, steps, units};
use super::{MatchInput, MatchKey, MatchLine, WeighInPage};
use crate::MatchTap;
use restwater_log::WeightUnit;
use restwater_match_day::clock::Phase;
use restwater_match_day::rules::same_name;
use restwater_match_day::weigh_in::{Agreement, WeighedIn, compare};
use restwater_match_day::weight::Weight;
use restwater_session::MatchSetup;
use restwater_session::own_count::OwnCount;

/// The page of the net on the scales.
pub(super) fn page(input: &MatchInput, setup: &MatchSetup) -> WeighInPage {
    let names: Vec<&str> = setup.rules.nets.iter().map(|net| net.name.as_str()).collect();
    let place = input.scales_net.and_then(|name| names.iter().position(|n| same_name(n, name))).unwrap_or(0);
    let net = names.get(place).copied().unwrap_or_default();
    let unit = setup.unit;
    let big = if unit == WeightUnit::Drams { 2_560 } else { 10_000 };
    let tap = |by| MatchTap::ScalesStep { by };
    let (lines, notes) = compared(input, setup);
    WeighInPage {
        title: input.say("match-weigh-in-title", &[("net", net)]),
        lines,
        notes,
        figure: units(unit, input.scales).to_string(),
        steps: steps(input, unit, input.scales, tap),
        above: vec![
            step(input, unit, -big, input.scales > 0, tap),
            next_net(input, &names, place),
            step(input, unit, big, true, tap),
        ],
        weighed: MatchKey {
            label: input.say("match-weigh-in-take", &[]),
            sub: input.say("match-weigh-in-take-sub", &[("net", net)]),
            spoken: input.say("match-weigh-in-take-spoken", &[("net", net)]),
            solid: true,
            enabled: input.scales > 0 && begun(input),
            tap: MatchTap::WeighIn,
        },
    }
}

fn begun(input: &MatchInput) -> bool {
    let phase = input.match_day().and_then(|m| m.phase(input.now).ok());
    phase.is_some_and(|phase| !matches!(phase, Phase::Before { .. }))
}

fn next_net(input: &MatchInput, names: &[&str], place: usize) -> MatchKey {
    let next = names.get((place + 1) % names.len().max(1)).copied().unwrap_or_default();
    MatchKey {
        label: next.to_uppercase(),
        sub: input.say("match-weigh-in-next-sub", &[]),
        spoken: input.say("match-weigh-in-next-spoken", &[("net", next)]),
        solid: false,
        enabled: names.len() > 1,
        tap: MatchTap::ScalesNet { name: next.to_owned() },
    }
}

/// Each net that was weighed; before that, the own count to hold against it.
fn compared(input: &MatchInput, setup: &MatchSetup) -> (Vec<MatchLine>, Vec<String>) {
    let (Some(session), Some(own)) = (input.session, input.counted()) else {
        return (Vec::new(), Vec::new());
    };
    let net_of = |name: &str| setup.rules.net(name).map(|rule| rule.name.clone());
    let scales: Vec<(String, Weight)> =
        session.scales.iter().filter_map(|s| Some((net_of(&s.net)?, s.shown))).collect();
    let Ok(found) = compare(&scales, &own.running, setup.mark) else {
        return (own_lines(input, setup, own), Vec::new());
    };
    let mut lines: Vec<MatchLine> = found.nets.iter().map(|net| line(input, setup.unit, own, net)).collect();
    for net in own.running.nets.iter().filter(|n| !scales.iter().any(|(name, _)| *name == n.name)) {
        lines.push(own_line(input, setup.unit, &net.name, net.mean_g));
    }
    if found.nets.len() > 1 {
        let total = match setup.unit {
            WeightUnit::Drams => found.scales.exact().nearest_drams(),
            WeightUnit::Grams => found.scales.exact().nearest_grams(),
        };
        lines.push(MatchLine { label: input.say("match-weigh-in-total", &[]), value: short(total) });
    }
    let mut notes = Vec::new();
    let any = |is: Agreement| found.nets.iter().any(|n| n.agreement == is);
    notes.extend(any(Agreement::ScalesMore).then(|| input.say("match-scales-more", &[])));
    notes.extend(any(Agreement::ScalesLess).then(|| input.say("match-scales-less", &[])));
    (lines, notes)
}

/// To the dram or the gram.
fn finest(unit: WeightUnit, grams: f64) -> Weight {
    match unit {
        WeightUnit::Drams => Weight::Drams(libm::round(grams / Weight::Drams(1).grams()) as i64),
        WeightUnit::Grams => Weight::Grams(libm::round(grams) as i64),
    }
}

fn own_lines(input: &MatchInput, setup: &MatchSetup, own: &OwnCount) -> Vec<MatchLine> {
    own.running.nets.iter().map(|n| own_line(input, setup.unit, &n.name, n.mean_g)).collect()
}

fn own_line(input: &MatchInput, unit: WeightUnit, name: &str, mean_g: f64) -> MatchLine {
    let value = input.say("match-own", &[("weight", &estimate(unit, mean_g))]);
    MatchLine { label: name.to_owned(), value }
}

/// "12 lb 7 oz, 4 oz more than counted: agrees".
fn line(input: &MatchInput, unit: WeightUnit, own: &OwnCount, net: &WeighedIn) -> MatchLine {
    let estimated = own.running.nets.iter().any(|n| n.name == net.net && n.estimated.mean_g > 0.0);
    let apart = net.difference_g.abs();
    let by = if estimated { rounded(unit, apart) } else { finest(unit, apart) };
    let differs = if matches!(by, Weight::Drams(0) | Weight::Grams(0)) {
        "match-as-counted"
    } else if net.difference_g >= 0.0 {
        "match-more-by"
    } else {
        "match-less-by"
    };
    let agreement = match net.agreement {
        Agreement::Agrees => "match-agrees",
        Agreement::ScalesMore | Agreement::ScalesLess => "match-differs",
    };
    let value = input.say(
        "match-weighed-in",
        &[
            ("weight", &short(net.scales)),
            ("differs", &input.say(differs, &[("by", &short(by))])),
            ("agreement", &input.say(agreement, &[])),
        ],
    );
    MatchLine { label: net.net.clone(), value }
}
