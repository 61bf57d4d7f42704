//! Time left, the nets, and what their weights are based on.

use super::total::TotalFrom;
use super::weights::{estimate, short};
use super::{AlarmView, MatchInput, MatchPhase, NetView, NetWarning};
use crate::date::hours_minutes;
use crate::figures::{clock, digits};
use crate::{Arg, Refused, Wording};
use restwater_log::{Moment, WeightUnit};
use restwater_match_day::clock::{MINUTE_MS, Phase};
use restwater_match_day::rules::{NetRule, OverLimit};
use restwater_match_day::running::{NearLimit, RunningNet};
use restwater_match_day::weight::Weight;
use restwater_session::own_count::OwnCount;
use restwater_session::{MatchDay, MatchSetup, Stamp};

/// Time left in words and digits.
pub(super) struct Clocks {
    pub(super) phase: MatchPhase,
    pub(super) digits: String,
    pub(super) says: String,
    pub(super) spoken: String,
}

impl Clocks {
    pub(super) fn of(input: &MatchInput, match_day: Option<&MatchDay>) -> Self {
        let still = |phase, id: &str| {
            let says = input.say(id, &[]);
            Self { phase, digits: String::new(), spoken: says.clone(), says }
        };
        let Some(session) = input.session else { return still(MatchPhase::NoSession, "match-no-session") };
        let Some(match_day) = match_day else {
            let id = if session.is_open() { "match-none" } else { "match-none-over" };
            return still(MatchPhase::NoMatch, id);
        };
        let Ok(now) = match_day.phase(input.now) else { return still(MatchPhase::Over, "match-no-clock") };
        let (all_in, all_out) = (match_day.all_in_ms(input.now), match_day.all_out_ms(input.now));
        let (phase, left, id, at) = match now {
            Phase::Before { to_all_in_ms } => (MatchPhase::Before, to_all_in_ms, "match-to-all-in", all_in),
            Phase::Fishing { left_ms } => (MatchPhase::Fishing, left_ms, "match-to-all-out", all_out),
            Phase::Landing { left_ms } => (MatchPhase::Landing, left_ms, "match-to-land", all_out),
            Phase::Over => (MatchPhase::Over, 0, "match-over", all_out),
        };
        let time = local_clock(input.now, match_day.shown_ms(at));
        let says = input.say(id, &[("time", &time)]);
        let uncertain = uncertain_words(input.words, input.now).filter(|_| phase != MatchPhase::Over);
        let says = input.words.sentences(&[&says, uncertain.as_deref().unwrap_or_default()]);
        let left_words = hours_minutes(input.words, left);
        let spoken = input.say("match-spoken", &[("left", &left_words), ("says", &says)]);
        let digits = if phase == MatchPhase::Over { String::new() } else { digits(left) };
        Self { phase, digits, spoken: if phase == MatchPhase::Over { says.clone() } else { spoken }, says }
    }
}

/// A time of the organiser's clock, in the phone's local time.
pub(super) fn local_clock(now: &Stamp, ms: i64) -> String {
    clock(&Moment { wall_ms: ms, ..Moment::clone(&now.shown) })
}

/// "The time left may be wrong by 1 h: this phone's clock was changed.", if that is a minute or more. After a restart under a clock
/// that shows 1970 nobody knows by how much.
fn uncertain_words(words: &Wording, now: &Stamp) -> Option<String> {
    if now.uncertain_ms < MINUTE_MS {
        return None;
    }
    if !now.is_on_the_line() {
        return Some(words.say("match-unknown-time"));
    }
    let by = hours_minutes(words, now.uncertain_ms);
    Some(words.say_with("match-uncertain", &[("by", Arg::Text(&by))]))
}

/// "The match clock is 20 s behind the phone."
fn offset_words(input: &MatchInput, offset_ms: i64) -> Option<String> {
    let seconds = offset_ms.abs() / 1_000;
    let id = match offset_ms.signum() {
        _ if seconds == 0 => return None,
        1 => "match-clock-ahead",
        _ => "match-clock-behind",
    };
    let by = if seconds < 120 { format!("{seconds} s") } else { hours_minutes(input.words, offset_ms.abs()) };
    Some(input.say(id, &[("by", &by)]))
}

/// The line of the Bank screen while a match is on: "3 h 14 to all-out".
pub(crate) fn bank_line(words: &Wording, match_day: &MatchDay, fish_on: bool, now: &Stamp) -> Option<String> {
    let (id, ms) = match match_day.phase(now).ok()? {
        Phase::Before { to_all_in_ms } => ("match-bank-before", to_all_in_ms),
        Phase::Fishing { left_ms } => ("match-bank-fishing", left_ms),
        // The time to land a fish is of use only while there is one.
        Phase::Landing { left_ms } if fish_on => ("match-bank-landing", left_ms),
        Phase::Landing { .. } | Phase::Over => ("match-bank-over", 0),
    };
    // Time left is rounded down, so that nobody relies on a minute that isn't there.
    Some(words.say_with(id, &[("time", Arg::Text(&hours_minutes(words, ms)))]))
}

/// The nets with their running weights.
pub(super) fn nets(input: &MatchInput, setup: &MatchSetup) -> Vec<NetView> {
    let (Some(count), Some(running)) = (input.counted(), input.at_scales()) else { return Vec::new() };
    let nets = running.nets.iter().zip(&setup.rules.nets);
    nets.map(|(net, rule)| net_view(input, setup, count, net, rule)).collect()
}

/// "over the limit: counts 50 lb", by the rule that was set.
fn over_words(input: &MatchInput, setup: &MatchSetup, limit: Weight) -> String {
    match setup.rules.over_limit {
        OverLimit::CountsToTheLimit => {
            input.say("match-over-limit-counts", &[("limit", &short(input.words, limit))])
        }
        OverLimit::DoesNotCount => input.say("match-over-limit-nothing", &[]),
    }
}

fn net_view(
    input: &MatchInput,
    setup: &MatchSetup,
    count: &OwnCount,
    net: &RunningNet,
    rule: &NetRule,
) -> NetView {
    let unit = setup.unit;
    let weight = net_weight(input.words, unit, net);
    let fish = input.words.say_with("match-fish", &[("count", Arg::Count(net.fish as usize))]);
    let weighed = input.is_weighed_in(&net.name);
    let holds = match net.fish {
        _ if weighed => input.say("match-net-weighed", &[("fish", &fish), ("weight", &weight)]),
        0 => input.say("match-net-empty", &[]),
        _ => input.say("match-net-holds", &[("fish", &fish), ("weight", &weight)]),
    };
    let (low, high) = (estimate(input.words, unit, net.lower_g), estimate(input.words, unit, net.upper_g));
    let range = (low != high).then(|| input.say("match-net-range", &[("low", &low), ("high", &high)]));
    let of = rule.limit.map(|limit| input.say("match-net-limit", &[("limit", &short(input.words, limit))]));
    let (warning, id) = match net.near {
        NearLimit::Clear => (NetWarning::Clear, ""),
        NearLimit::Near => (NetWarning::Near, "match-near"),
        NearLimit::AtLimit => (NetWarning::AtLimit, "match-at-limit"),
    };
    let over = rule.limit.filter(|_| net.is_over(rule)).map(|limit| over_words(input, setup, limit));
    let says = over.unwrap_or_else(|| if id.is_empty() { String::new() } else { input.say(id, &[]) });
    let limit: Vec<String> = of.into_iter().chain(range).collect();
    let limit = input.words.apart(&limit);
    let limit_g = rule.limit.map(Weight::grams);
    let shares = limit_g.map_or_else(Vec::new, |g| vec![net.lower_g / g, net.mean_g / g, net.upper_g / g]);
    let parts = [net.name.as_str(), &holds, &limit, &says];
    let spoken = input.words.listed(&parts);
    NetView {
        name: net.name.clone(),
        holds,
        heading: String::new(),
        limit,
        says,
        warning,
        shares,
        in_use: !weighed && count.using.as_deref() == Some(&net.name),
        spoken,
    }
}

/// "Net 1 may be at its limit.", for each net that an angler has to think of. The details are beside its bar.
pub(super) fn limit_says(input: &MatchInput, setup: &MatchSetup) -> String {
    let Some(running) = input.at_scales() else { return String::new() };
    let says = |(net, rule): (&RunningNet, &NetRule)| {
        let id = match net.near {
            _ if net.is_over(rule) => "match-says-over-limit",
            NearLimit::AtLimit => "match-says-at-limit",
            // No more fish go into a net that was weighed in.
            NearLimit::Near if !input.is_weighed_in(&net.name) => "match-says-near-limit",
            NearLimit::Near | NearLimit::Clear => return None,
        };
        Some(input.say(id, &[("net", &net.name)]))
    };
    let all: Vec<String> = running.nets.iter().zip(&setup.rules.nets).filter_map(says).collect();
    all.join(" ")
}

/// Exact if all fish were weighed, otherwise "about" to the ounce.
pub(crate) fn net_weight(words: &Wording, unit: WeightUnit, net: &RunningNet) -> String {
    if net.estimated.mean_g > 0.0 {
        return words.say_with("match-about", &[("weight", Arg::Text(&estimate(words, unit, net.mean_g)))]);
    }
    let exact = net.weighed.exact();
    match unit {
        WeightUnit::Drams => short(words, exact.nearest_drams()),
        WeightUnit::Grams => short(words, exact.nearest_grams()),
    }
}

/// What the weights are based on, and what they leave out.
pub(super) fn notes(input: &MatchInput) -> Vec<String> {
    if let Some(Err(error)) = input.count {
        return vec![input.say("match-no-count", &[("why", &error.said(input.words))])];
    }
    let mut notes: Vec<String> = Vec::new();
    notes.extend(input.setup().and_then(|setup| offset_words(input, setup.offset_ms)));
    let Some(count) = input.counted() else { return notes };
    let counted =
        |id: &str, n: u32| (n > 0).then(|| input.words.say_with(id, &[("count", Arg::Count(n as usize))]));
    // Once every net was weighed in, nothing is counted as average any more.
    let all_weighed = input.session.is_some_and(|session| TotalFrom::of(session, count) == TotalFrom::Scales);
    notes.extend(counted("match-unknown", count.unknown).filter(|_| !all_weighed));
    notes.extend(counted("match-not-counted", count.running.not_counted));
    notes.extend(counted("match-put-back", count.put_back));
    notes.extend(counted("match-no-net", count.no_net.len() as u32));
    notes
}

/// "All-out at 15:30." by the organiser's clock.
pub(crate) fn end_words(words: &Wording, match_day: &MatchDay, now: &Stamp) -> String {
    let time = local_clock(now, match_day.shown_ms(match_day.all_out_ms(now)));
    words.say_with("match-alarm-text", &[("time", Arg::Text(&time))])
}

/// Alarms still to come.
pub(super) fn alarms_to_come(words: &Wording, match_day: &MatchDay, now: &Stamp) -> Vec<AlarmView> {
    let all = alarms(words, match_day, now);
    all.into_iter().filter(|alarm| alarm.at_ms > now.shown.wall_ms).collect()
}

/// All alarms of the match, soonest first; none once its time is over.
pub(crate) fn alarms(words: &Wording, match_day: &MatchDay, now: &Stamp) -> Vec<AlarmView> {
    if !matches!(match_day.phase(now), Ok(Phase::Before { .. } | Phase::Fishing { .. })) {
        return Vec::new();
    }
    let minutes = &match_day.setup.rules.alarms_min;
    let all = match_day.clock(now).and_then(|clock| clock.alarms(minutes, i64::MIN));
    all.unwrap_or_default()
        .into_iter()
        .map(|alarm| AlarmView {
            minutes: alarm.minutes,
            at_ms: match_day.wall_ms(alarm.phone_ms, now),
            says: words.say_with("match-alarm", &[("minutes", Arg::Text(&alarm.minutes.to_string()))]),
        })
        .collect()
}
