//! The weigh-in: what the scales showed against the own count.

use super::weights::{estimate, rounded, short};
use super::{MatchInput, MatchKey, MatchLine, WeighInPage};
use crate::MatchTap;
use crate::fish::unit_id;
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
    let (lines, notes) = compared(input, setup);
    let mut pad: Vec<MatchKey> = (1..=9).map(|digit| digit_key(input, digit)).collect();
    pad.extend([next_net(input, &names, place), digit_key(input, 0), unit_key(input)]);
    WeighInPage {
        title: input.say("match-weigh-in-title", &[("net", net)]),
        lines,
        notes,
        figure: input.typed.shown(),
        pad,
        weighed: weighed(input, net),
    }
}

/// The figure is what the net weighed.
fn weighed(input: &MatchInput, net: &str) -> MatchKey {
    let weight = input.typed.weight();
    let typed = weight.grams() > 0.0;
    let take = input.say("match-weigh-in-take", &[]);
    // At large text the smaller line goes, so the weight itself is the word on the key.
    let label = if typed { short(weight) } else { take.clone() };
    MatchKey {
        tag: "take-weight".into(),
        spoken: input.say("match-weigh-in-take-spoken", &[("net", net), ("weight", &label)]),
        label,
        sub: input.say("match-weigh-in-take-sub", &[("net", net)]),
        solid: true,
        enabled: typed && begun(input),
        tap: MatchTap::WeighIn,
    }
}

fn begun(input: &MatchInput) -> bool {
    let phase = input.match_day().and_then(|m| m.phase(input.now).ok());
    phase.is_some_and(|phase| !matches!(phase, Phase::Before { .. }))
}

fn digit_key(input: &MatchInput, digit: u8) -> MatchKey {
    MatchKey {
        tag: format!("digit-{digit}"),
        label: digit.to_string(),
        sub: String::new(),
        spoken: digit.to_string(),
        solid: false,
        enabled: input.typed.takes(digit),
        tap: MatchTap::ScalesDigit { digit },
    }
}

fn unit_key(input: &MatchInput) -> MatchKey {
    let id = unit_id(input.typed);
    MatchKey {
        tag: "unit".into(),
        label: input.say(id, &[]),
        sub: input.say(&format!("{id}-sub"), &[]),
        spoken: input.say(&format!("{id}-spoken"), &[]),
        solid: false,
        enabled: true,
        tap: MatchTap::ScalesUnit,
    }
}

fn next_net(input: &MatchInput, names: &[&str], place: usize) -> MatchKey {
    let next = names.get((place + 1) % names.len().max(1)).copied().unwrap_or_default();
    MatchKey {
        tag: "next-net".into(),
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
