//! Nets of other anglers, and the place of the own total among them.

use super::weights::{estimate, short};
use super::{MatchInput, MatchLine, MatchSetup};
use crate::MatchTap;
use restwater_log::{OtherPeg, Side};
use restwater_session::{OtherNet, Section, Session, Standing, standing};
use serde::{Deserialize, Serialize};

/// What is on the scales.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum OnScales {
    /// One of the angler's nets, by its name.
    Net(String),
    /// Another angler's nets.
    Peg(OtherPeg),
}

impl OnScales {
    pub(super) fn tap(&self) -> MatchTap {
        match self {
            Self::Net(name) => MatchTap::ScalesNet { name: name.clone() },
            Self::Peg(peg) => MatchTap::ScalesPeg { peg: *peg },
        }
    }

    /// "Net 2", "3rd peg left".
    pub(super) fn words(&self, input: &MatchInput) -> String {
        match self {
            Self::Net(name) => name.clone(),
            Self::Peg(peg) => peg_words(input, *peg),
        }
    }
}

/// What may be on the scales, in the order in which a key goes through it: the angler's nets, then the pegs
/// of the section in the order of the scales. If the extent of the section isn't known, the pegs next to the
/// angler's.
pub fn scales_cycle(setup: &MatchSetup, session: &Session) -> Vec<OnScales> {
    let section = session.section.unwrap_or(Section { left: 1, right: 1 });
    let nets = setup.rules.nets.iter().map(|net| OnScales::Net(net.name.clone()));
    nets.chain(section.pegs().into_iter().map(OnScales::Peg)).collect()
}

/// What is on the scales: what was chosen as long as it is one of these, otherwise the first.
pub fn hanging(setup: &MatchSetup, session: &Session, chosen: Option<&OnScales>) -> Option<OnScales> {
    let all = scales_cycle(setup, session);
    all.iter().find(|on| Some(*on) == chosen).or(all.first()).cloned()
}

fn peg_words(input: &MatchInput, peg: OtherPeg) -> String {
    let id = match peg.side {
        Side::Left => "match-peg-left",
        Side::Right => "match-peg-right",
        Side::Across => "match-peg-across",
    };
    input.say(id, &[("place", &peg.place.to_string())])
}

/// What is known of another angler's nets: "12 lb 4 oz, called", "about 10 lb, guessed".
pub(super) fn told(input: &MatchInput, peg: OtherPeg) -> MatchLine {
    let known = input.session.and_then(|s| s.others.iter().find(|net: &&OtherNet| net.peg == peg));
    let value = known.map_or_else(
        || input.say("match-other-none", &[]),
        |net| {
            let id = if net.guessed { "match-other-guessed" } else { "match-other-called" };
            input.say(id, &[("weight", &short(input.words, net.shown))])
        },
    );
    MatchLine::new(peg_words(input, peg), value)
}

fn standing_now(input: &MatchInput) -> Option<Standing> {
    standing(input.session?, input.setup()?, input.counted()?)
}

/// "Place in the section: 2 to 4 of 10".
pub(super) fn line(input: &MatchInput) -> Option<MatchLine> {
    let place = standing_now(input)?.place;
    let section = input.session.is_some_and(|session| session.section.is_some());
    let label = input.say(if section { "match-place" } else { "match-place-known" }, &[]);
    let (best, worst, of) = (place.best.to_string(), place.worst.to_string(), place.of.to_string());
    let id = if best == worst { "match-place-is" } else { "match-place-between" };
    Some(MatchLine::new(label, input.say(id, &[("best", &best), ("worst", &worst), ("of", &of)])))
}

/// What the place is based on.
pub(super) fn note(input: &MatchInput) -> Option<String> {
    let standing = standing_now(input)?;
    let unit = input.setup()?.unit;
    let (low, high) =
        (estimate(input.words, unit, standing.mine.low_g), estimate(input.words, unit, standing.mine.high_g));
    let mine = if low == high { low } else { input.say("match-range", &[("low", &low), ("high", &high)]) };
    let all = standing.place.of.saturating_sub(1).to_string();
    let (known, guessed) = (standing.known.to_string(), standing.guessed.to_string());
    Some(
        input.say(
            "match-place-how",
            &[("mine", &mine), ("known", &known), ("all", &all), ("guessed", &guessed)],
        ),
    )
}
