//! What a match refuses.

use super::{Refused, say};
use crate::Wording;
use restwater_match_day::class::ClassError;
use restwater_match_day::clock::ClockError;
use restwater_match_day::rules::RulesError;
use restwater_match_day::running::RunningError;
use restwater_match_day::weight::WeightError;
use restwater_session::match_setup::MatchError;

impl Refused for MatchError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::Clock(error) => error.said(words),
            Self::Rules(error) => error.said(words),
            Self::Class(error) => error.said(words),
            Self::Weight(error) => error.said(words),
            Self::NoNet => say(words, "no-net", &[]),
            Self::DuplicateClass(name) => say(words, "same-class", &[("name", name)]),
            Self::NoSuchClass(name) => say(words, "no-such-class", &[("name", name)]),
            Self::WeighInBeforeAllIn => say(words, "not-begun", &[]),
        }
    }
}

impl Refused for ClockError {
    fn said(&self, words: &Wording) -> String {
        let of = |case, n: i64| say(words, case, &[("n", &n.to_string())]);
        match self {
            Self::OutBeforeIn(minutes) => of("out-before-in", *minutes),
            Self::NoTime => say(words, "out-at-in", &[]),
            Self::TooLong(hours) => of("match-too-long", *hours),
            Self::OffsetTooLarge(hours) => of("clocks-too-far", *hours),
            Self::NotAMoment => say(words, "no-moment", &[]),
            Self::LandingTooLong(minutes) => of("landing-too-long", (*minutes).into()),
            Self::AlarmTooEarly(minutes) => of("alarm-too-early", (*minutes).into()),
        }
    }
}

impl Refused for RulesError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::DuplicateNet(name) => say(words, "same-net", &[("name", name)]),
            Self::NoName => say(words, "net-no-name", &[]),
            Self::HoldsNothing(name) => say(words, "net-holds-nothing", &[("name", name)]),
            Self::NothingCounts => say(words, "nothing-counts", &[]),
            Self::LandingTooLong(minutes) => say(words, "landing-too-long", &[("n", &minutes.to_string())]),
            Self::Limit { net, source } => {
                say(words, "net-limit", &[("name", net), ("why", &source.said(words))])
            }
            Self::NoSuchNet(name) => say(words, "no-such-net", &[("name", name)]),
            Self::WrongNet { kind, net } => say(words, "wrong-net", &[("kind", kind), ("name", net)]),
        }
    }
}

impl Refused for ClassError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::NoName => say(words, "class-no-name", &[]),
            Self::BadSpread { name, .. } => say(words, "bad-spread", &[("name", name)]),
            Self::Weight(error) => error.said(words),
        }
    }
}

impl Refused for WeightError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::Negative(weight) => say(words, "weight-negative", &[("weight", &words.decimals(weight))]),
            Self::Zero => say(words, "weight-zero", &[]),
            Self::Absurd { weight, most } => {
                let args = [("weight", &*words.decimals(weight)), ("most", &words.decimals(most))];
                say(words, "weight-absurd", &args)
            }
            Self::SixteenOrMore(_) => say(words, "sixteen", &[]),
            Self::NoUnit(typed) => say(words, "weight-no-unit", &[("value", typed)]),
            Self::TooFine(typed) => say(words, "weight-too-fine", &[("value", typed)]),
            Self::NotAWeight(typed) => say(words, "no-weight", &[("value", typed)]),
        }
    }
}

impl Refused for RunningError {
    fn said(&self, words: &Wording) -> String {
        match self {
            Self::Rules(error) => error.said(words),
            Self::Weight(error) => error.said(words),
            Self::GuessBackwards { low, high } => {
                let (low, high) = (words.decimals(&low.to_string()), words.decimals(&high.to_string()));
                say(words, "guess-backwards", &[("low", &low), ("high", &high)])
            }
            Self::NoSuchClass(number) => say(words, "no-such-class", &[("name", &number.to_string())]),
        }
    }
}
