//! The weigh-in: what the scales showed, compared with the own count.

use super::section::{self, OnScales, hanging, scales_cycle, told};
use super::weights::unit_id;
use super::weights::{estimate, finest, rounded, short};
use super::{MatchInput, MatchKey, MatchLine, WeighInPage};
use crate::MatchTap;
use restwater_log::WeightUnit;
use restwater_match_day::clock::Phase;
use restwater_match_day::rules::same_name;
use restwater_match_day::weigh_in::{Agreement, WeighedIn, compare};
use restwater_match_day::weight::Weight;
use restwater_session::MatchSetup;
use restwater_session::own_count::OwnCount;

/// The page for what is on the scales.
pub(super) fn page(input: &MatchInput, setup: &MatchSetup) -> WeighInPage {
    let all = input.session.map_or_else(Vec::new, |session| scales_cycle(setup, session));
    let on = input.session.and_then(|session| hanging(setup, session, input.on_scales));
    let place = all.iter().position(|other| Some(other) == on.as_ref()).unwrap_or(0);
    let name = on.as_ref().map_or_else(String::new, |on| on.words(input));
    let of_another = matches!(on, Some(OnScales::Peg(_)));
    let before = on.as_ref().filter(|_| input.typed.is_empty()).and_then(|on| known(input, on));
    let (lines, notes) = match on {
        Some(OnScales::Peg(peg)) => {
            (std::iter::once(told(input, peg)).chain(section::line(input)).collect(), Vec::new())
        }
        _ => compared(input, setup),
    };
    let mut pad: Vec<MatchKey> = (1..=9).map(|digit| digit_key(input, digit)).collect();
    let next = all.get((place + 1) % all.len().max(1));
    // In the middle of a figure nothing else is hung on the scales.
    if input.typed.is_empty() {
        pad.extend(next.map(|next| next_key(input, next, all.len() > 1)));
    } else {
        pad.push(rub_out_key(input));
    }
    pad.extend([digit_key(input, 0), unit_key(input)]);
    WeighInPage {
        title: input.say("match-weigh-in-title", &[("net", &name)]),
        lines,
        notes,
        figure: before.as_ref().map_or_else(|| input.words.decimals(&input.typed.shown()), Clone::clone),
        pad,
        weighed: match before {
            Some(before) => weighed_before(input, &name, of_another, before),
            None => weighed(input, &name, of_another),
        },
    }
}

/// What is known of the weight of what is on the scales.
fn known(input: &MatchInput, on: &OnScales) -> Option<String> {
    let session = input.session?;
    let shown = match on {
        OnScales::Net(net) => session.scales.iter().find(|scales| same_name(&scales.net, net))?.shown,
        OnScales::Peg(peg) => session.others.iter().find(|other| other.peg == *peg)?.shown,
    };
    Some(short(input.words, shown))
}

/// The key while nothing is typed for a net whose weight is known: it says so and there is nothing to confirm.
fn weighed_before(input: &MatchInput, name: &str, of_another: bool, weight: String) -> MatchKey {
    let id = if of_another { "match-weigh-in-known" } else { "match-weigh-in-done" };
    MatchKey {
        spoken: input.say(&format!("{id}-spoken"), &[("net", name), ("weight", &weight)]),
        sub: input.say(&format!("{id}-sub"), &[("net", name)]),
        label: weight,
        enabled: false,
        ..weighed(input, name, of_another)
    }
}

/// The key that confirms the figure as the weight of the net; for another angler's before all-out it is a
/// guess.
fn weighed(input: &MatchInput, name: &str, of_another: bool) -> MatchKey {
    let weight = input.typed.weight();
    let typed = weight.grams() > 0.0;
    let guess = of_another && matches!(phase(input), Some(Phase::Before { .. } | Phase::Fishing { .. }));
    let id = if guess { "match-weigh-in-guess" } else { "match-weigh-in-take" };
    // The weight is what the angler checks before the tap, so it is the word on the key.
    let label = if typed { short(input.words, weight) } else { input.say(id, &[]) };
    MatchKey {
        tag: "take-weight".into(),
        spoken: input.say(&format!("{id}-spoken"), &[("net", name), ("weight", &label)]),
        label,
        sub: input.say(&format!("{id}-sub"), &[("net", name)]),
        solid: true,
        enabled: typed && begun(input),
        tap: MatchTap::WeighIn,
    }
}

fn phase(input: &MatchInput) -> Option<Phase> {
    input.match_day().and_then(|m| m.phase(input.now).ok())
}

fn begun(input: &MatchInput) -> bool {
    phase(input).is_some_and(|phase| !matches!(phase, Phase::Before { .. }))
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

/// The key that erases the last digit.
fn rub_out_key(input: &MatchInput) -> MatchKey {
    MatchKey {
        tag: "rub-out".into(),
        label: input.say("fish-rub-out", &[]),
        sub: input.say("fish-rub-out-sub", &[]),
        spoken: input.say("fish-rub-out-spoken", &[]),
        solid: false,
        enabled: true,
        tap: MatchTap::ScalesRubOut,
    }
}

/// The key that selects the next net, the angler's or another's.
fn next_key(input: &MatchInput, next: &OnScales, enabled: bool) -> MatchKey {
    let name = next.words(input);
    MatchKey {
        tag: "next-net".into(),
        label: name.to_uppercase(),
        sub: input.say("match-weigh-in-next-sub", &[]),
        spoken: input.say("match-weigh-in-next-spoken", &[("net", &name)]),
        solid: false,
        enabled,
        tap: next.tap(),
    }
}

/// Each net that was weighed; before that, the own count for comparison.
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
        // As they count for the place: a net over its limit only as the rules give it.
        let rules = &setup.rules;
        let counts = |net: &WeighedIn| {
            rules.net(&net.net).map_or(0.0, |rule| rule.counts_g(rules.over_limit, net.scales.grams()))
        };
        let total = finest(setup.unit, found.nets.iter().map(counts).sum());
        lines.push(MatchLine::new(input.say("match-weigh-in-total", &[]), short(input.words, total)));
    }
    let mut notes = Vec::new();
    let any = |is: Agreement| found.nets.iter().any(|n| n.agreement == is);
    notes.extend(any(Agreement::ScalesMore).then(|| input.say("match-scales-more", &[])));
    notes.extend(any(Agreement::ScalesLess).then(|| input.say("match-scales-less", &[])));
    (lines, notes)
}

/// The nets that were weighed, each compared with the own count.
pub(super) fn weighed_lines(input: &MatchInput, setup: &MatchSetup) -> Vec<MatchLine> {
    let weighed = |line: &MatchLine| input.is_weighed_in(&line.label);
    compared(input, setup).0.into_iter().filter(weighed).collect()
}

fn own_lines(input: &MatchInput, setup: &MatchSetup, own: &OwnCount) -> Vec<MatchLine> {
    own.running.nets.iter().map(|n| own_line(input, setup.unit, &n.name, n.mean_g)).collect()
}

fn own_line(input: &MatchInput, unit: WeightUnit, name: &str, mean_g: f64) -> MatchLine {
    let value = input.say("match-own", &[("weight", &estimate(input.words, unit, mean_g))]);
    MatchLine::new(name.to_owned(), value)
}

/// "12 lb 7 oz, 4 oz over own count, within its range".
fn line(input: &MatchInput, unit: WeightUnit, own: &OwnCount, net: &WeighedIn) -> MatchLine {
    let estimated = own.running.nets.iter().any(|n| n.name == net.net && n.estimated.mean_g > 0.0);
    // The own count as it is said, so that the three weights add up.
    let own_g = net.scales.grams() - net.difference_g;
    let apart = if estimated { net.scales.grams() - rounded(unit, own_g).grams() } else { net.difference_g };
    let by = if estimated { rounded(unit, apart.abs()) } else { finest(unit, apart.abs()) };
    let differs = if matches!(by, Weight::Drams(0) | Weight::Grams(0)) {
        "match-as-counted"
    } else if apart >= 0.0 {
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
            ("weight", &short(input.words, net.scales)),
            ("differs", &input.say(differs, &[("by", &short(input.words, by))])),
            ("agreement", &input.say(agreement, &[])),
        ],
    );
    MatchLine::new(net.net.clone(), value)
}
