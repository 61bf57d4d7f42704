//! The section of a match: other anglers' nets, called or guessed, and the place of the own total among them.

use super::MatchSetup;
use super::own_count::{EYE, OwnCount};
use super::{OtherNet, Session, Stamp};
use restwater_match_day::clock::Phase;
use restwater_match_day::rules::{NetRule, OverLimit, same_name};
use restwater_match_day::running::Running;
use restwater_match_day::section::{Place, TotalRange, place};
use restwater_match_day::weigh_in;
use restwater_match_day::weight::Weight;

/// The place of the own total.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// The places it may take.
    pub place: Place,
    /// The own total.
    pub mine: TotalRange,
    /// Other nets that are known.
    pub known: u32,
    /// How many of these are guesses.
    pub guessed: u32,
}

/// The standing in the section, or among the known nets if the extent of the section isn't known. `None`
/// before any net is known.
pub fn standing(session: &Session, setup: &MatchSetup, own: &OwnCount) -> Option<Standing> {
    let counts = |net: &&OtherNet| session.section.is_none_or(|section| section.has(net.peg));
    let others: Vec<&OtherNet> = session.others.iter().filter(counts).collect();
    if others.is_empty() {
        return None;
    }
    let known = others.len() as u32;
    let all = session.section.map_or(known, |section| u32::from(section.left) + u32::from(section.right));
    let ranges: Vec<TotalRange> = others.iter().map(|net| told(net)).collect();
    let mine = mine(session, setup, own);
    let guessed = others.iter().filter(|net| net.guessed).count() as u32;
    Some(Standing { place: place(mine, &ranges, all.saturating_sub(known)), mine, known, guessed })
}

/// The range of another angler's net: a weight by eye may be a quarter out either way, a called weight is
/// exact.
fn told(net: &OtherNet) -> TotalRange {
    let grams = net.shown.grams();
    let out = if net.guessed { EYE } else { 0.0 };
    TotalRange { low_g: grams * (1.0 - out), high_g: grams * (1.0 + out) }
}

/// The own total: what the scales showed, otherwise the own count, with each net within its limit.
fn mine(session: &Session, setup: &MatchSetup, own: &OwnCount) -> TotalRange {
    let mut total = TotalRange { low_g: 0.0, high_g: 0.0 };
    for (net, rule) in at_scales(session, setup, own).nets.iter().zip(&setup.rules.nets) {
        let (low, high) = counted(rule, setup.rules.over_limit, net.lower_g, net.upper_g);
        (total.low_g, total.high_g) = (total.low_g + low, total.high_g + high);
    }
    total
}

/// The running weight with what the scales showed in place of the estimate of each net that was weighed in.
pub fn at_scales(session: &Session, setup: &MatchSetup, own: &OwnCount) -> Running {
    let scales: Vec<(String, Weight)> =
        session.scales.iter().map(|net| (net.net.clone(), net.shown)).collect();
    weigh_in::at_scales(&scales, &own.running, &setup.rules)
}

/// Whether a net was weighed in.
pub fn is_weighed_in(session: &Session, net: &str) -> bool {
    session.scales.iter().any(|scales| same_name(&scales.net, net))
}

/// Whether a match was on and its all-out has come.
pub fn is_after_all_out(session: &Session, now: &Stamp) -> bool {
    let phase = session.match_day.as_ref().and_then(|match_day| match_day.phase(now).ok());
    matches!(phase, Some(Phase::Landing { .. } | Phase::Over))
}

/// How much counts of a net whose weight is between two figures. One that may be over a limit beyond which it does not count is worth
/// nothing or up to the limit.
fn counted(rule: &NetRule, over: OverLimit, low: f64, high: f64) -> (f64, f64) {
    let counts = |grams| rule.counts_g(over, grams);
    match rule.limit.map(Weight::grams) {
        Some(limit) if over == OverLimit::DoesNotCount && low <= limit && limit < high => (0.0, limit),
        _ => (counts(low), counts(high)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use restwater_match_day::rules::NetHolds;

    #[test]
    fn a_net_counts_within_its_limit() {
        let rule =
            NetRule { name: "Net 1".into(), limit: Some(Weight::Grams(1_000)), holds: NetHolds::Anything };
        let of = |over, low, high| counted(&rule, over, low, high);
        assert_eq!(of(OverLimit::CountsToTheLimit, 800.0, 1_200.0), (800.0, 1_000.0));
        assert_eq!(
            of(OverLimit::DoesNotCount, 800.0, 1_200.0),
            (0.0, 1_000.0),
            "it may be over, or just under"
        );
        assert_eq!(of(OverLimit::DoesNotCount, 1_100.0, 1_200.0), (0.0, 0.0));
        let free = NetRule { limit: None, ..rule };
        assert_eq!(counted(&free, OverLimit::DoesNotCount, 800.0, 1_200.0), (800.0, 1_200.0));
    }
}
