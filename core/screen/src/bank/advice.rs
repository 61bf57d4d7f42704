//! What the record says, in words: how little or how much is known comes with it.

use super::{AdviceTone, AdviceView, BankInput, BankState, Reading};
use crate::figures::whole;
use crate::{Arg, Wording};
use restwater_waits::{Advice, AdviceState};

/// Fewer bites than this are called early.
const EARLY_BITES: usize = 6;
/// A loss by habit below this share of the best rate is not worth a sentence.
const WORTH_SAYING: f64 = 0.05;

/// The words for the state of the chosen rod.
pub(super) fn advice(input: &BankInput, state: BankState) -> AdviceView {
    let words = input.words;
    match (state, input.reading) {
        (BankState::NoSession, _) => quiet(words.say("advice-none"), String::new()),
        (BankState::FishOn, _) => quiet(words.say("advice-fish-on"), words.say("advice-fish-on-detail")),
        (_, None) => quiet(words.say("advice-cant-tell"), words.say("advice-cant-tell-prior")),
        (BankState::Ready, Some(reading)) => ready(words, reading),
        (BankState::Out, Some(reading)) => out(words, reading),
    }
}

fn quiet(headline: String, detail: String) -> AdviceView {
    AdviceView { headline, detail, more: Vec::new(), tone: AdviceTone::Quiet }
}

fn ready(words: &Wording, reading: &Reading) -> AdviceView {
    let advice = &reading.advice;
    if advice.state == AdviceState::CantTellYet {
        return AdviceView {
            headline: words.say("advice-ready-cant-tell"),
            tone: AdviceTone::Quiet,
            ..unknown(words, reading)
        };
    }
    let mut more = more(words, reading);
    // Where looking pays the plan is to stay past the band; the reason stands beside the figure.
    if advice.recast_by_min.is_some_and(|recast| advice.next_leave_min > recast + 1.0) {
        more.insert(0, minutes(words, "advice-look", "leave", advice.next_leave_min));
    }
    AdviceView {
        headline: headline(words, advice),
        detail: counts(words, reading),
        more,
        tone: AdviceTone::Quiet,
    }
}

fn out(words: &Wording, reading: &Reading) -> AdviceView {
    let advice = &reading.advice;
    if advice.state == AdviceState::CantTellYet {
        return unknown(words, reading);
    }
    let tone = tone(reading);
    let past = advice.recast_by_min.filter(|_| tone == AdviceTone::Past);
    let headline = past
        .map_or_else(|| headline(words, advice), |recast| minutes(words, "advice-past", "recast", recast));
    AdviceView { headline, detail: counts(words, reading), more: more(words, reading), tone }
}

/// Under three bites: nothing of this water is known, and the words say so.
fn unknown(words: &Wording, reading: &Reading) -> AdviceView {
    let mut more = vec![words.say("advice-cant-tell-prior")];
    more.extend(known_to(words, &reading.advice));
    AdviceView {
        headline: words.say("advice-cant-tell"),
        detail: counts(words, reading),
        more,
        tone: AdviceTone::Unknown,
    }
}

pub(crate) fn headline(words: &Wording, advice: &Advice) -> String {
    let hold = whole(advice.hold_until_min.unwrap_or(0.0));
    let recast = advice.recast_by_min.map(whole);
    match (advice.state, &recast) {
        (AdviceState::LengthHardlyMatters, _) => {
            words.say_with("advice-length-hardly", &[("hold", Arg::Text(&hold))])
        }
        (AdviceState::NothingSpeaksForWindingIn, _) => words.say("advice-nothing-speaks"),
        (_, Some(recast)) => {
            words.say_with("advice-hold-recast", &[("hold", Arg::Text(&hold)), ("recast", Arg::Text(recast))])
        }
        (_, None) => words.say_with("advice-hold-only", &[("hold", Arg::Text(&hold))]),
    }
}

fn tone(reading: &Reading) -> AdviceTone {
    let Some(waited) = reading.waited_min else { return AdviceTone::Quiet };
    let advice = &reading.advice;
    if advice.recast_by_min.is_some_and(|recast| waited > recast) {
        AdviceTone::Past
    } else if advice.hold_until_min.is_some_and(|hold| waited < hold) {
        AdviceTone::Hold
    } else {
        AdviceTone::Band
    }
}

fn counts(words: &Wording, reading: &Reading) -> String {
    let advice = &reading.advice;
    let id = if advice.bites < EARLY_BITES { "advice-early" } else { "advice-so-far" };
    words.say_with(id, &[("bites", Arg::Count(advice.bites)), ("casts", Arg::Count(reading.casts))])
}

/// Further sentences, most telling first.
fn more(words: &Wording, reading: &Reading) -> Vec<String> {
    let advice = &reading.advice;
    let mut more = Vec::new();
    if let Some(on) = &reading.waiting {
        let percent = whole(100.0 * on.bite_in_five);
        more.push(words.say_with("advice-next-five", &[("percent", Arg::Text(&percent))]));
    }
    if let Some((from, to)) = advice.bite_window {
        let (from, to) = (whole(from), whole(to));
        more.push(words.say_with("advice-window", &[("from", Arg::Text(&from)), ("to", Arg::Text(&to))]));
    }
    if advice.beyond_the_record || advice.asks_for_longer {
        more.extend(known_to(words, advice));
    }
    if advice.asks_for_longer {
        more.push(minutes(words, "advice-try-longer", "minutes", advice.longest_wait_min));
    }
    more.extend(lost(words, advice));
    if reading.rhythm.turn_rounds == 0 {
        more.push(minutes(words, "advice-guess", "minutes", reading.rhythm.turn_round_min));
    }
    more
}

fn known_to(words: &Wording, advice: &Advice) -> Option<String> {
    (advice.casts > 0).then(|| minutes(words, "advice-known-to", "minutes", advice.longest_wait_min))
}

fn lost(words: &Wording, advice: &Advice) -> Option<String> {
    let share = advice.lost_at_habit? / advice.best_rate_per_hour;
    let rate = advice.rate_at_habit?;
    (share >= WORTH_SAYING && rate > 0.0).then(|| {
        let percent = whole(100.0 * share);
        words.say_with("advice-lost", &[("percent", Arg::Text(&percent))])
    })
}

fn minutes(words: &Wording, id: &str, name: &str, minutes: f64) -> String {
    words.say_with(id, &[(name, Arg::Text(&whole(minutes)))])
}
