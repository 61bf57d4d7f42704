//! Outside the hours of a match no bait may be in the water: whether this applies now, and what there is to do then.

use super::advice::quiet;
use super::{AdviceTone, AdviceView, BankInput, BankState};
use crate::Arg;
use restwater_log::RodNumber;
use restwater_match_day::clock::Phase;
use restwater_match_day::rules::NetRule;
use restwater_session::{RodState, Session, fish_is_on, is_weighed_in};

/// The state of the match, if one is on.
fn match_phase(input: &BankInput) -> Option<Phase> {
    input.session?.match_day.as_ref()?.phase(input.now).ok()
}

/// Whether a match is on and no bait may be in the water: before all-in or after all-out.
pub(super) fn is_out_of_hours(input: &BankInput) -> bool {
    match_phase(input).is_some_and(|phase| !matches!(phase, Phase::Fishing { .. }))
}

/// Whether the time to land a fish after all-out has passed too, and no fish is on.
pub(super) fn is_over(input: &BankInput) -> bool {
    matches!(match_phase(input), Some(Phase::Over)) && is_cast_no_more(input)
}

/// Whether all-out has come, so that every bait is to come in and none is to be left for any time.
pub(super) fn is_after_all_out(input: &BankInput) -> bool {
    input.session.is_some_and(|session| restwater_session::is_after_all_out(session, input.now))
}

/// Whether all-out has come and no fish is on: a rod that is in is not to be cast any more. The bait of another may still be out.
pub(super) fn is_cast_no_more(input: &BankInput) -> bool {
    is_after_all_out(input) && input.session.and_then(fish_is_on).is_none()
}

/// Whether nothing is left to do after all-out but END: every bait is in, and every net is weighed.
pub(super) fn is_to_be_ended(input: &BankInput) -> bool {
    input.session.and_then(still_out).is_none() && nets_to_weigh(input).is_empty()
}

/// What there is to do outside the hours of a match, for a rod that is in or whose bait is out.
pub(super) fn advice(input: &BankInput, state: BankState) -> Option<AdviceView> {
    let before = match match_phase(input)? {
        Phase::Before { .. } => true,
        Phase::Landing { .. } | Phase::Over => false,
        Phase::Fishing { .. } => return None,
    };
    let words = input.words;
    if let Some(rod) = input.session.and_then(fish_is_on).filter(|_| !before) {
        let rod = [("rod", Arg::Text(&rod.to_string()))];
        return Some(quiet(words.say_with("advice-all-out-fish-on", &rod), words.say("advice-land-first")));
    }
    let detail = || if before { words.say("advice-before-detail") } else { after_all_out(input) };
    let headline = match (state, before) {
        (BankState::Out, true) => words.say("advice-before-wind-in"),
        (BankState::Out, false) => words.say("advice-all-out-wind-in"),
        _ => match (still_out(input.session?), before) {
            (Some(rod), _) => {
                let id = if before { "advice-before-wind-in-rod" } else { "advice-all-out-wind-in-rod" };
                words.say_with(id, &[("rod", Arg::Text(&rod.to_string()))])
            }
            (None, true) => return None,
            (None, false) => return Some(quiet(words.say("advice-all-out"), detail())),
        },
    };
    Some(AdviceView { tone: AdviceTone::Past, ..quiet(headline, detail()) })
}

/// The first rod whose bait is in the water.
fn still_out(session: &Session) -> Option<RodNumber> {
    session.rods.iter().find(|rod| matches!(rod.state, RodState::Out { .. })).map(|rod| rod.number)
}

fn nets_of<'a>(input: &BankInput<'a>) -> &'a [NetRule] {
    let match_day = input.session.and_then(|session| session.match_day.as_ref());
    match_day.map_or(&[][..], |match_day| &match_day.setup.rules.nets)
}

/// The nets of the match that were not weighed in yet.
fn nets_to_weigh<'a>(input: &BankInput<'a>) -> Vec<&'a str> {
    let weighed = |net: &str| input.session.is_some_and(|session| is_weighed_in(session, net));
    nets_of(input).iter().map(|net| net.name.as_str()).filter(|net| !weighed(net)).collect()
}

/// What is left to do once every bait is in: the weigh-in of every net, and after it only the end.
fn after_all_out(input: &BankInput) -> String {
    let left = nets_to_weigh(input);
    if left.len() == nets_of(input).len() {
        return input.words.say("advice-all-out-detail");
    }
    if left.is_empty() {
        return input.words.say("advice-weighed-in-detail");
    }
    input.words.say_with("advice-not-weighed-detail", &[("nets", Arg::Text(&input.words.listed(&left)))])
}
