//! The rods' clocks.

use super::hours::is_after_all_out;
use super::{BankInput, BankState, RodView};
use crate::figures::{clock, digits};
use crate::{Action, Arg};
use restwater_log::RodNumber;
use restwater_session::{Rod, RodState, Session, Stamp, running_wait_ms};

/// One clock for each rod, in order.
pub(super) fn rods(input: &BankInput, session: &Session) -> Vec<RodView> {
    let first = due_first(input, session);
    session.rods.iter().map(|rod| view(input, session, rod, first == Some(rod.number))).collect()
}

/// The rod to recast first, if several are out; while the record says nothing yet, the one that has waited longest. After all-out
/// none is to be recast.
fn due_first(input: &BankInput, session: &Session) -> Option<RodNumber> {
    if is_after_all_out(input) {
        return None;
    }
    let left = |rod: &Rod| {
        let RodState::Out { .. } = rod.state else { return None };
        let waited_ms = running_wait_ms(session, session.running(rod.number)?, input.now)?;
        let leave = input.leaves.iter().find(|leave| leave.rod == rod.number);
        let leave_ms = leave.map_or(0, |leave| (leave.recast_min * 60_000.0) as i64);
        Some((leave_ms.saturating_sub(waited_ms), rod.number))
    };
    let out: Vec<(i64, RodNumber)> = session.rods.iter().filter_map(left).collect();
    let first = out.iter().min()?;
    (out.len() > 1).then_some(first.1)
}

/// What can be seen of a rod at a glance, if it is not the only one.
fn label(input: &BankInput, session: &Session, name: &str, state: BankState, first: bool) -> String {
    let id = match state {
        _ if session.rods.len() < 2 => return name.to_owned(),
        BankState::FishOn => "rod-fish-on",
        BankState::Out if first => "rod-due-first",
        BankState::Out => return name.to_owned(),
        BankState::Ready | BankState::Landed | BankState::Away | BankState::Over | BankState::NoSession => {
            "rod-in"
        }
    };
    input.words.say_with(id, &[("rod", Arg::Text(name))])
}

fn view(input: &BankInput, session: &Session, rod: &Rod, first: bool) -> RodView {
    let words = input.words;
    let name = words.say_with("rod", &[("rod", Arg::Text(&rod.number.to_string()))]);
    let (state, since) = state(session, rod);
    let elapsed_ms = since.map_or(0, |since| input.now.ms_since(since).max(0));
    let said = match (state, since) {
        (BankState::Ready, None) => words.say("since-never"),
        (_, None) => words.say("since-none"),
        (state, Some(since)) => {
            let [sure, about] = since_ids(state, session.away().is_some());
            let id = if doubtful(input.now, since) { about } else { sure };
            words.say_with(id, &[("time", Arg::Text(&clock(&since.shown)))])
        }
    };
    let minutes = usize::try_from(elapsed_ms / 60_000).unwrap_or_default();
    let spoken =
        words.say_with(spoken_id(state), &[("rod", Arg::Text(&name)), ("minutes", Arg::Count(minutes))]);
    let label = label(input, session, &name, state, first);
    let spoken =
        if first { words.say_with("spoken-due-first", &[("rod", Arg::Text(&spoken))]) } else { spoken };
    let chosen = rod.number == input.chosen;
    let alert = match state {
        BankState::FishOn if !chosen => words.say("rod-alert"),
        // Digits would be read as a wait.
        BankState::Ready if session.rods.len() > 1 => words.say("rod-in-alone"),
        _ => String::new(),
    };
    let word = if state == BankState::Ready { words.say("rod-in-alone") } else { String::new() };
    RodView {
        rod: rod.number,
        alert,
        word,
        state,
        digits: since.map_or_else(String::new, |_| digits(elapsed_ms)),
        since: said,
        spoken,
        spoken_since: String::new(),
        first,
        chosen,
        choose: Action::ChooseRod { rod: rod.number },
        elapsed_ms,
        number: words.say_with("rod-number", &[("rod", Arg::Count(usize::from(rod.number)))]),
        name,
        label,
    }
}

/// What the rod is doing and since when the clock counts: the splash, the bite, or the wind-in.
fn state<'a>(session: &'a Session, rod: &'a Rod) -> (BankState, Option<&'a Stamp>) {
    let cast = |index: usize| session.casts.get(index);
    match &rod.state {
        // Away from the rods it is the break that is counted, not a turn-round.
        RodState::Ready { since } => {
            (BankState::Ready, session.away().map(|rest| &rest.from).or(since.as_ref()))
        }
        RodState::Out { cast: index } => (BankState::Out, cast(*index).map(|c| &c.start)),
        RodState::FishOn { cast: index } => {
            (BankState::FishOn, cast(*index).and_then(|c| c.bite.as_ref()).map(|(at, _)| at))
        }
    }
}

/// The start was set back by hand, the phone was rebooted meanwhile, or its clock was moved.
fn doubtful(now: &Stamp, since: &Stamp) -> bool {
    let span = now.since(since);
    since.shown.approx_s > 0 || span.uncertain_ms != 0 || span.jump_ms != 0
}

/// The message for a known start and for an approximate one.
fn since_ids(state: BankState, away: bool) -> [&'static str; 2] {
    match state {
        BankState::Ready | BankState::Landed | BankState::Away if away => ["since-away", "since-away-about"],
        BankState::Out => ["since-out", "since-out-about"],
        BankState::FishOn => ["since-fish", "since-fish-about"],
        BankState::Ready | BankState::Landed | BankState::Away | BankState::Over | BankState::NoSession => {
            ["since-ready", "since-ready-about"]
        }
    }
}

fn spoken_id(state: BankState) -> &'static str {
    match state {
        BankState::Out => "spoken-out",
        BankState::FishOn => "spoken-fish",
        BankState::Ready | BankState::Landed | BankState::Away | BankState::Over | BankState::NoSession => {
            "spoken-ready"
        }
    }
}
