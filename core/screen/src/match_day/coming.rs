//! Casts left, from when casts that are out had better stay out, and the forecast.

use super::now::local_clock;
use super::total::{TotalFrom, total};
use super::weights::estimate;
use super::{MatchInput, MatchLine, RestInput};
use crate::Arg;
use crate::date::hours_minutes;
use crate::figures::whole;
use crate::leave_words::{bites_in_casts, earlier_words, guess_words};
use restwater_match_day::clock::{MINUTE_MS, MatchClock, Phase};
use restwater_match_day::forecast::{LastCast, Range};
use restwater_match_day::running::Running;
use restwater_session::rest::{Rest, finish};
use restwater_session::{MatchDay, casts_ended};
use restwater_sky::daylight::{Light, Place, at_all_out};
use restwater_waits::AdviceState;

/// Casts left, and from when casts that are out had better stay out. The casts are those of the simulation that the bites come
/// from, so that the two can't contradict each other.
pub(super) fn casts(input: &MatchInput, match_day: &MatchDay) -> Vec<MatchLine> {
    let Some(rest) = &input.rest else { return Vec::new() };
    let value = match rest.rest.map(|of| &of.coming) {
        None => input.say("match-cant-tell", &[]),
        // While nothing is said of bites, those that would end casts early aren't counted on.
        Some(coming) if cant_tell(rest) => match coming.casts_without_bites {
            0 => "0".to_owned(),
            casts => input.say("match-casts-least", &[("casts", &casts.to_string())]),
        },
        Some(coming) => likely(input, &coming.casts, whole),
    };
    let label = input.words.say_with("match-casts", &[("out", Arg::Count(baits_out(input)))]);
    vec![MatchLine::new(label, value), late_cast(input, rest, match_day)]
}

/// "Winding in to recast: worth it until 15:12": from then on a new cast has less than half the chance of a full cast. A
/// rod that is in may still be cast, since that costs nothing.
fn late_cast(input: &MatchInput, rest: &RestInput, match_day: &MatchDay) -> MatchLine {
    let label = input.say("match-late", &[]);
    let value = match late(rest) {
        None => input.say("match-cant-tell", &[]),
        Some(last) if match_day.phone_ms(input.now) > phone_ms(input, match_day, last.before_all_out) => {
            input.say(if baits_out(input) > 0 { "match-late-now" } else { "match-late-in" }, &[])
        }
        Some(last) => {
            let time = time_before(input, match_day, last.before_all_out);
            input.say("match-late-from", &[("time", &time)])
        }
    };
    MatchLine::new(label, value)
}

fn fishes(input: &MatchInput, match_day: &MatchDay) -> bool {
    matches!(match_day.phase(input.now), Ok(Phase::Before { .. } | Phase::Fishing { .. }))
}

fn late(rest: &RestInput) -> Option<LastCast> {
    rest.rest.filter(|_| !cant_tell(rest)).and_then(|r| r.last)
}

/// The time this many minutes before all-out, by the phone's clock.
fn phone_ms(input: &MatchInput, match_day: &MatchDay, minutes: f64) -> i64 {
    let all_out = match_day.clock(input.now).map_or(0, MatchClock::all_out_phone_ms);
    all_out - before_ms(minutes)
}

/// The same by the organiser's clock, which the page counts down by.
fn time_before(input: &MatchInput, match_day: &MatchDay, minutes: f64) -> String {
    local_clock(input.now, match_day.shown_ms(match_day.all_out_ms(input.now)) - before_ms(minutes))
}

fn before_ms(minutes: f64) -> i64 {
    libm::round(minutes * MINUTE_MS as f64) as i64
}

/// On how many rods a bait is out.
fn baits_out(input: &MatchInput) -> usize {
    let Some(session) = input.session else { return 0 };
    session.rods.iter().filter(|rod| session.running(rod.number).is_some()).count()
}

/// Where the time of [`late_cast`] comes from, and its range.
fn late_note(input: &MatchInput, rest: &RestInput) -> Option<String> {
    let match_day = input.match_day().filter(|m| fishes(input, m))?;
    let last = late(rest)?;
    let time = |minutes| time_before(input, match_day, minutes);
    let (at, from, to) = (time(last.before_all_out), time(last.high), time(last.low));
    Some(input.say("match-late-how", &[("time", &at), ("from", &from), ("to", &to)]))
}

fn cant_tell(rest: &RestInput) -> bool {
    rest.advice.state == AdviceState::CantTellYet
}

/// Bites, fish and weight to come, the finish, and the daylight.
pub(super) fn coming(input: &MatchInput, match_day: &MatchDay) -> Vec<MatchLine> {
    let setup = &match_day.setup;
    let mut lines = Vec::new();
    if let Some(rest) = &input.rest {
        let known = rest.rest.filter(|_| !cant_tell(rest)).map(|r| &r.coming);
        let line = |id: &str, value: Option<String>| {
            MatchLine::new(input.say(id, &[]), value.unwrap_or_else(|| input.say("match-cant-tell", &[])))
        };
        let count = |range: Range| likely(input, &range, whole);
        let weight = |range: Range| likely(input, &range, |grams| estimate(input.words, setup.unit, grams));
        lines.push(line("match-bites", known.map(|c| count(c.bites))));
        lines.push(line("match-fish-to-come", known.map(|c| count(c.fish))));
        lines.push(line("match-weight-to-come", known.map(|c| weight(c.weight))));
        let end = known.zip(input.at_scales()).map(|(c, own)| finish(&setup.rules, &own, c.weight));
        lines.push(line("match-finish", end.map(weight)));
    } else if let Some((from, weight)) =
        input.session.zip(input.counted()).and_then(|(session, own)| total(input.words, session, setup, own))
    {
        let id = match from {
            TotalFrom::OwnCount => "match-own-count",
            TotalFrom::Both => "match-count-both",
            TotalFrom::Scales => "match-count-scales",
        };
        lines.push(MatchLine::new(input.say(id, &[]), weight));
        if from != TotalFrom::OwnCount {
            lines.extend(super::weigh_in::weighed_lines(input, setup));
        }
    }
    lines.extend(super::section::line(input));
    // Once nothing is to come, the light no longer matters.
    lines.extend(input.rest.as_ref().map(|_| light(input, match_day)));
    lines
}

/// What to expect as a range, and what that rests on: "Likely finish: 16 lb to 52 lb. 3 bites in 5 casts so far."
pub(super) fn says(input: &MatchInput, match_day: &MatchDay) -> String {
    let (Some(session), Some(rest)) = (input.session, &input.rest) else {
        return result_says(input, match_day);
    };
    let Some(Rest { coming, .. }) = rest.rest.filter(|_| !cant_tell(rest)) else {
        return input.say("match-coming-cant-tell", &[]);
    };
    let setup = &match_day.setup;
    let Some(own) = input.at_scales() else { return String::new() };
    let Range { low, high, .. } = finish(&setup.rules, &own, coming.weight);
    let [low, high] = [low, high].map(|grams| estimate(input.words, setup.unit, grams));
    let id = if low == high { "match-coming-one" } else { "match-coming-says" };
    let says = input.say(id, &[("low", &low), ("high", &high)]);
    let counts = bites_in_casts(input.words, rest.advice.bites, casts_ended(session));
    let [own, of_another] = rest.earlier;
    let with = earlier_words(input.words, own, of_another);
    let said: Vec<&str> =
        [says.as_str(), &counts].into_iter().chain(with.iter().map(String::as_str)).collect();
    input.words.sentences(&said)
}

/// After all-out: what to do while nothing is weighed.
fn result_says(input: &MatchInput, match_day: &MatchDay) -> String {
    let over = matches!(match_day.phase(input.now), Ok(Phase::Landing { .. } | Phase::Over));
    let weighs = input.session.is_some_and(restwater_session::Session::is_open);
    let counted = || input.session.zip(input.counted());
    let from = counted().map(|(session, own)| TotalFrom::of(session, own));
    let holds = counted().is_some_and(|(_, own)| own.running.nets.iter().any(|net| net.fish > 0));
    match from {
        Some(TotalFrom::OwnCount | TotalFrom::Both) if over && weighs && holds => {
            input.say("match-result-weigh", &[])
        }
        _ => String::new(),
    }
}

/// "2 to 5, about 3", or the one number where all are the same.
fn likely(input: &MatchInput, range: &Range, say: impl Fn(f64) -> String) -> String {
    let [low, likely, high] = [range.low, range.likely, range.high].map(say);
    if low == high {
        return low;
    }
    input.say("match-likely", &[("low", &low), ("likely", &likely), ("high", &high)])
}

/// All-out compared with sunset.
fn light(input: &MatchInput, match_day: &MatchDay) -> MatchLine {
    let label = input.say("match-light", &[]);
    let value = light_words(input, match_day).unwrap_or_else(|| input.say("match-light-unknown", &[]));
    MatchLine::new(label, value)
}

fn light_words(input: &MatchInput, match_day: &MatchDay) -> Option<String> {
    let peg = input.peg?;
    let place = Place { lat: peg.lat_e7 as f64 / 1e7, lon: peg.lon_e7 as f64 / 1e7 };
    let all_out = match_day.clock(input.now).ok()?.all_out_phone_ms();
    let at = at_all_out(match_day.shown_ms(all_out), place).ok()?;
    let light = input.say(
        match at.light {
            Light::Day => "match-light-day",
            Light::Twilight => "match-light-twilight",
            Light::Dark => "match-light-dark",
        },
        &[],
    );
    let (Some(sunset), Some(minutes)) = (at.sunset, at.minutes_to_sunset) else { return Some(light) };
    let mut time = local_clock(input.now, sunset);
    let by_phone = match_day.setup.offset_ms.abs() >= MINUTE_MS;
    if by_phone {
        time = input.say("match-sunset-by-phone", &[("time", &time)]);
    }
    // By the minutes that are shown, if the two clocks agree to the minute.
    let shown = sunset.div_euclid(MINUTE_MS)
        - match_day.shown_ms(match_day.all_out_ms(input.now)).div_euclid(MINUTE_MS);
    let minutes = if by_phone { minutes } else { shown };
    let by = hours_minutes(input.words, minutes.abs() * MINUTE_MS);
    let id = if minutes >= 0 { "match-sunset-after" } else { "match-sunset-before" };
    Some(input.say(id, &[("time", &time), ("by", &by), ("light", &light)]))
}

/// How it was obtained.
pub(super) fn notes(input: &MatchInput) -> Vec<String> {
    let place = super::section::note(input);
    let Some(rest) = &input.rest else { return place.into_iter().collect() };
    let mut notes = Vec::new();
    if cant_tell(rest) {
        let times = [("leave", whole(rest.leaves.first)), ("then", whole(rest.leaves.then))];
        notes.push(
            input.say("match-cant-tell-why", &times.each_ref().map(|(name, text)| (*name, text.as_str()))),
        );
    } else if rest.rest.is_some() {
        notes.push(how(input, rest));
        notes.extend(guess_words(input.words, &rest.rhythm));
        notes.extend(late_note(input, rest));
        if rest.weights_guessed {
            notes.push(input.say("match-weights-guessed", &[]));
        }
    }
    notes.extend(place);
    notes.extend(input.at_scales().and_then(|own| eye_note(input, &own)));
    notes
}

/// What the ranges hold, and how long casts are left for them.
fn how(input: &MatchInput, rest: &RestInput) -> String {
    let (leave, then) = (whole(rest.leaves.first), whole(rest.leaves.then));
    let turn = input.words.figure(rest.rhythm.turn_round_min, 1);
    let args = [
        ("leave", Arg::Text(&leave)),
        ("then", Arg::Text(&then)),
        ("turn", Arg::Text(&turn)),
        ("out", Arg::Count(baits_out(input))),
    ];
    input.words.say_with("match-how", &args)
}

fn eye_note(input: &MatchInput, own: &Running) -> Option<String> {
    own.nets.iter().any(|n| n.estimated.mean_g > 0.0).then(|| input.say("match-estimates", &[]))
}
