//! One change with its two sides.

use super::{FOREST_LOG2, Told};
use crate::compared::{factor_within, factor_words, is_fed, side_counts};
use crate::figures::sentence_case;
use crate::waits::p_words;
use crate::{Action, Arg, StandingQuestion, Wording};
use restwater_compare::{
    ChangeFinding, DAY_CASTS, FEWEST_SWITCHES, Limits, Reason, Side, SideRecord, Verdict,
};
use restwater_compare::{Factor, FactorValue};
use serde::{Deserialize, Serialize};

/// The verdict on a change, for drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum VerdictTone {
    /// Can't tell yet: an open ring.
    Unknown,
    /// Leans to one: half filled.
    Leans,
    /// Clearly better here today: filled.
    Clear,
}

/// One side of a change.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SideView {
    /// The value, "pink".
    pub value: String,
    /// "4 bites in 6 casts, 85 min".
    pub counts: String,
    /// "2.8 an hour for each rod (0.8 to 7.2)".
    pub rate: String,
}

/// One line of the forest plot, in log2 of the ratio, cut to the axis.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ForestPoint {
    /// The ratio, or `None` if one side has no bites.
    pub at: Option<f64>,
    /// Lower end of its 95 % limits.
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// Whether the lower end is beyond the axis.
    pub low_beyond: bool,
    /// Whether the upper end does.
    pub high_beyond: bool,
}

/// The key that starts a test of this change.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct StartTest {
    /// The word on the key.
    pub label: String,
    /// The smaller line.
    pub sub: String,
    /// What a screen reader says.
    pub spoken: String,
    /// What a tap on it sends.
    pub action: Action,
}

/// One change compared with what it replaced.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ChangeView {
    /// "Colour: pink after white".
    pub title: String,
    /// What was there.
    pub old: SideView,
    /// What replaced it.
    pub new: SideView,
    /// For drawing.
    pub tone: VerdictTone,
    /// "Can't tell yet", "Leans to pink", "Pink clearly better here today".
    pub verdict: String,
    /// The verdict as an angler would say it, "Pink or white? Can't tell yet.", followed by the verdict over
    /// days.
    pub says: String,
    /// The evidence: "White: 8 bites in 14 casts, 217 min. Pink: 1 bite in 3 casts, 48 min."
    pub counts: String,
    /// How to find out, if that isn't known and a test can begin: "To find out: white, pink, pink, white on one spot, one rod."
    pub find_out: String,
    /// "Of 100 changes that look like this, about 71 favour pink; 4 favour white; in about 25 the two are
    /// too alike to matter."
    pub probability: String,
    /// The ratio in words.
    pub ratio: String,
    /// Title, verdict and ratio: what a screen reader says about its line of the forest plot.
    pub spoken: String,
    /// Exact and block p, unadjusted and adjusted for the number of comparisons.
    pub p: String,
    /// The result over days if the same was compared on other days, and why today alone can't show more.
    pub reasons: Vec<String>,
    /// How many more casts it would take.
    pub more: String,
    /// Its line of the forest plot.
    pub forest: ForestPoint,
    /// Starts an alternating test; `None` while one is running or no session is open.
    pub start: Option<StartTest>,
}

/// Makes one change.
pub(super) fn change(
    told: &Told,
    f: &ChangeFinding,
    can_start: bool,
    asked: Option<&StandingQuestion>,
) -> ChangeView {
    let words = told.words;
    let value = |record: &SideRecord| told.value(f.factor, &record.value);
    let (whole_old, whole_new) = (value(&f.a), value(&f.b));
    let [old, new] = told.short(f.factor, [&f.a.value, &f.b.value]);
    let (tone, verdict) = verdict(words, f.verdict, &old, &new);
    ChangeView {
        title: title(words, f, &whole_old, &whole_new),
        old: side(words, &f.a, whole_old),
        new: side(words, &f.b, whole_new),
        tone,
        verdict: sentence_case(&verdict),
        says: [Some(says(words, f.verdict, &old, &new)), asked.map(|asked| asked.says(words))]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(" "),
        counts: counts(words, f, &old, &new),
        find_out: find_out(words, f, &old, &new),
        probability: probability(words, f, &old, &new),
        ratio: ratio(words, f, &old, &new),
        spoken: String::new(),
        p: p(words, f),
        reasons: asked
            .and_then(|asked| asked.of_100(words))
            .into_iter()
            .chain(reasons(f).map(|reason| reason_words(words, reason)))
            .collect(),
        more: more(words, f),
        forest: forest(f),
        start: can_start.then(|| start(words, f, &old, &new)).flatten(),
    }
}

/// "Colour: pink after white", "Feed in the 30 min before: first with, then without".
fn title(words: &Wording, f: &ChangeFinding, old: &str, new: &str) -> String {
    let factor = factor_words(words, f.factor);
    let id = match f.factor {
        Factor::Feed if is_fed(&f.b.value) => "change-title-fed",
        Factor::Feed => "change-title-not-fed",
        _ => "change-title",
    };
    words.say_with(
        id,
        &[("factor", Arg::Text(&factor)), ("after", Arg::Text(new)), ("before", Arg::Text(old))],
    )
}

fn side(words: &Wording, record: &SideRecord, value: String) -> SideView {
    let (rate, range) = (words.figure(record.per_hour, 1), range(words, record.per_hour_limits, 1));
    SideView {
        value,
        counts: side_counts(words, record.bites, record.casts, record.minutes),
        rate: words.say_with("change-rate", &[("rate", Arg::Text(&rate)), ("limits", Arg::Text(&range))]),
    }
}

fn range(words: &Wording, limits: Limits, decimals: usize) -> String {
    let (low, high) = (words.figure(limits.low, decimals), words.figure(limits.high, decimals));
    let id = if limits.high.is_finite() { "range" } else { "range-open" };
    words.say_with(id, &[("low", Arg::Text(&low)), ("high", Arg::Text(&high))])
}

fn verdict(words: &Wording, verdict: Verdict, old: &str, new: &str) -> (VerdictTone, String) {
    let of = |side| if side == Side::A { old } else { new };
    let say = |id, side| words.say_with(id, &[("value", Arg::Text(of(side)))]);
    match verdict {
        Verdict::CantTellYet => (VerdictTone::Unknown, words.say("verdict-cant-tell")),
        Verdict::LeansTo(side) => (VerdictTone::Leans, say("verdict-leans", side)),
        Verdict::ClearlyBetterHereToday(side) => (VerdictTone::Clear, say("verdict-clear", side)),
    }
}

/// "Pink or white? Can't tell yet."
fn says(words: &Wording, verdict: Verdict, old: &str, new: &str) -> String {
    let (id, side) = match verdict {
        Verdict::CantTellYet => ("change-says-cant-tell", Side::B),
        Verdict::LeansTo(side) => ("change-says-leans", side),
        Verdict::ClearlyBetterHereToday(side) => ("change-says-clear", side),
    };
    let value = if side == Side::A { old } else { new };
    // In that message the value begins a sentence.
    let value = if id == "change-says-clear" { sentence_case(value) } else { value.to_owned() };
    let args = [("new", Arg::Text(new)), ("old", Arg::Text(old)), ("value", Arg::Text(&value))];
    sentence_case(&words.say_with(id, &args))
}

/// What each side brought.
fn counts(words: &Wording, f: &ChangeFinding, old: &str, new: &str) -> String {
    let of = |value: &str, record: &SideRecord| {
        let counts = side_counts(words, record.bites, record.casts, record.minutes);
        let args = [("value", Arg::Text(value)), ("counts", Arg::Text(&counts))];
        sentence_case(&words.say_with("change-counts", &args))
    };
    [of(old, &f.a), of(new, &f.b)].join(" ")
}

/// Which casts would give an answer, if the record gives none.
fn find_out(words: &Wording, f: &ChangeFinding, old: &str, new: &str) -> String {
    if matches!(f.verdict, Verdict::ClearlyBetterHereToday(_)) {
        return String::new();
    }
    // Two spots can't be compared on one spot.
    let id = match (f.factor == Factor::Spot, is_too_much_for_a_day(f)) {
        (true, true) => "change-find-out-spots-days",
        (true, false) => "change-find-out-spots",
        (false, true) => "change-find-out-days",
        (false, false) => "change-find-out",
    };
    words.say_with(id, &[("a", Arg::Text(old)), ("b", Arg::Text(new))])
}

/// Rates with their limits, the ratio and every p, for the page behind the verdicts.
pub(super) fn figures(words: &Wording, change: &ChangeView) -> String {
    let side = |side: &SideView| format!("{}.", words.labelled(&sentence_case(&side.value), &side.rate));
    [
        format!("{}.", change.title),
        side(&change.old),
        side(&change.new),
        change.ratio.clone(),
        change.p.clone(),
    ]
    .join(" ")
}

/// Why nothing can be said of a change that was made too few times.
fn too_few_switches(f: &ChangeFinding) -> Option<Reason> {
    let once = f.reasons.contains(&Reason::ChangedOnce);
    (f.switches < FEWEST_SWITCHES).then_some(if once { Reason::ChangedOnce } else { Reason::TooFewSwitches })
}

/// The other reasons: each is said once.
fn reasons(f: &ChangeFinding) -> impl Iterator<Item = Reason> {
    let said = too_few_switches(f).is_some();
    let of_switches = |reason: &Reason| matches!(reason, Reason::ChangedOnce | Reason::TooFewSwitches);
    f.reasons.iter().copied().filter(move |reason| !(said && of_switches(reason)))
}

fn probability(words: &Wording, f: &ChangeFinding, old: &str, new: &str) -> String {
    if let Some(reason) = too_few_switches(f) {
        return reason_words(words, reason);
    }
    let of_100 = |p: f64| libm::round(100.0 * p) as usize;
    let (for_old, for_new) = (of_100(f.belief.a), of_100(f.belief.b));
    let (first, second) = if for_old > for_new { (old, new) } else { (new, old) };
    words.say_with(
        "change-of-100",
        &[
            ("value", Arg::Text(first)),
            ("other", Arg::Text(second)),
            ("better", Arg::Count(for_old.max(for_new))),
            ("worse", Arg::Count(for_old.min(for_new))),
            ("same", Arg::Count(100_usize.saturating_sub(for_old + for_new))),
        ],
    )
}

/// Converts limits of old against new to those of new against old.
fn turned(limits: Limits) -> Limits {
    let over = |x: f64| if x > 0.0 { 1.0 / x } else { f64::INFINITY };
    Limits { low: over(limits.high), high: over(limits.low) }
}

fn ratio(words: &Wording, f: &ChangeFinding, old: &str, new: &str) -> String {
    let pair = [("value", Arg::Text(new)), ("other", Arg::Text(old))];
    let Some(ratio) = f.ratio.filter(|r| *r > 0.0) else {
        return sentence_case(&words.say_with("change-ratio-open", &pair));
    };
    let (ratio, limits) = (words.figure(1.0 / ratio, 2), range(words, turned(f.ratio_limits), 2));
    let [value, other] = pair;
    let said = [value, other, ("ratio", Arg::Text(&ratio)), ("limits", Arg::Text(&limits))];
    sentence_case(&words.say_with("change-ratio", &said))
}

fn p(words: &Wording, f: &ChangeFinding) -> String {
    let say = |p| p_words(words, p);
    let (exact, block) = (say(f.exact_p), say(f.block.p));
    let any_look = say(f.any_look_p_adjusted);
    let (exact_adjusted, block_adjusted) = (say(f.exact_p_adjusted), say(f.block_p_adjusted));
    let mut text = words.say_with(
        "change-p",
        &[
            ("exact", Arg::Text(&exact)),
            ("block", Arg::Text(&block)),
            ("count", Arg::Count(f.looked_at)),
            ("exactadjusted", Arg::Text(&exact_adjusted)),
            ("blockadjusted", Arg::Text(&block_adjusted)),
            ("anylook", Arg::Text(&any_look)),
        ],
    );
    if f.block.smallest_p >= restwater_compare::CLEAR_BELOW {
        let least = words.figure(f.block.smallest_p, 2);
        text.push(' ');
        text.push_str(&words.say_with("change-block-once", &[("least", Arg::Text(&least))]));
    }
    text
}

fn reason_words(words: &Wording, reason: Reason) -> String {
    words.say(match reason {
        Reason::TooFewBites => "reason-few-bites",
        Reason::TooFewCasts => "reason-few-casts",
        Reason::ChangedOnce => "reason-once",
        Reason::TooFewSwitches => "reason-few-switches",
        Reason::BitesInClumps => "reason-clumps",
        Reason::NotHeldYet => "reason-not-held",
        Reason::ReadAllDay => "reason-read-all-day",
        Reason::ManyLooks => "reason-many",
        Reason::LeftForDifferentTimes => "reason-times",
        Reason::ChangedTogether(factor) => {
            let factor = factor_within(words, factor);
            return words.say_with("reason-together", &[("factor", Arg::Text(&factor))]);
        }
    })
}

/// Whether not even a whole day of alternated casts would settle it.
fn is_too_much_for_a_day(f: &ChangeFinding) -> bool {
    f.more_casts.is_some_and(|more| more.casts.is_none() && libm::round(10.0 * more.assurance) < 1.0)
}

fn more(words: &Wording, f: &ChangeFinding) -> String {
    if matches!(f.verdict, Verdict::ClearlyBetterHereToday(_)) {
        return words.say("change-more-clear");
    }
    let Some(more) = f.more_casts else { return String::new() };
    match (more.casts, libm::round(10.0 * more.assurance) as usize) {
        (Some(casts), _) => words.say_with("change-more", &[("casts", Arg::Count(casts))]),
        (None, _) if is_too_much_for_a_day(f) => {
            words.say_with("change-more-day", &[("casts", Arg::Count(DAY_CASTS))])
        }
        (None, days) => words
            .say_with("change-more-maybe", &[("casts", Arg::Count(DAY_CASTS)), ("days", Arg::Count(days))]),
    }
}

fn forest(f: &ChangeFinding) -> ForestPoint {
    let cut = |x: f64| x.clamp(-FOREST_LOG2, FOREST_LOG2);
    let limits = turned(f.ratio_limits);
    let (low, high) = (libm::log2(limits.low), libm::log2(limits.high));
    let at = f.ratio.filter(|r| *r > 0.0).map(|r| cut(-libm::log2(r)));
    ForestPoint {
        at,
        low: cut(low),
        high: cut(high),
        low_beyond: low < -FOREST_LOG2,
        high_beyond: high > FOREST_LOG2,
    }
}

fn start(words: &Wording, f: &ChangeFinding, old: &str, new: &str) -> Option<StartTest> {
    let pair = [("a", Arg::Text(old)), ("b", Arg::Text(new))];
    let read = |record: &SideRecord| FactorValue::read(f.factor, &record.value);
    Some(StartTest {
        label: words.say("change-start"),
        sub: words.say_with("change-start-sub", &pair),
        spoken: words.say_with("change-start-spoken", &pair),
        action: Action::StartAlternation { a: read(&f.a)?, b: read(&f.b)? },
    })
}
