//! The Mend screen: doubtful entries of a session, each with what can be said of it.

use super::{Arg, Choice, ChoiceRow, Wording, clock, kind_words};
use restwater_log::{EndSaid, Op, Payload, effective, sorted};
use restwater_session::{Cast, DoubtKind, EndCause, Session, Stamp, rhythm};
use restwater_waits::{BITE_EXTRA_GUESS_MIN, TURN_ROUND_GUESS_MIN};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use uuid::Uuid;

/// Minutes to choose from for a wait.
const WAITS_MIN: &[u32] = &[1, 2, 3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 25, 30, 40, 50, 60];
/// Minutes to choose from for setting a time back.
const BACK_MIN: &[u32] = &[1, 2, 5, 10, 15, 30];

/// One doubtful entry of the list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MendLine {
    /// The entry.
    pub op: Uuid,
    /// What it is and when.
    pub what: String,
    /// Why it is doubtful.
    pub why: String,
}

/// The entry that is open.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MendOpen {
    /// The entry.
    pub op: Uuid,
    /// What it is and when.
    pub what: String,
    /// Why it is doubtful, or that it no longer is.
    pub why: String,
    /// What can be said of it.
    pub rows: Vec<ChoiceRow>,
}

/// The Mend screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MendView {
    /// What it is about.
    pub title: String,
    /// How many there are, or that there is none.
    pub says: String,
    /// The doubtful entries, in the order of the day.
    pub lines: Vec<MendLine>,
    /// The entry that is open, if one is.
    pub open: Option<MendOpen>,
}

/// What the Mend screen is made from.
pub struct MendInput<'a> {
    /// The words of the locale.
    pub words: &'a Wording,
    /// The session that the screens are about, if one is open.
    pub session: Option<&'a Session>,
    /// Its ops as they were written.
    pub ops: &'a [Op],
    /// Now, on the time line of the session.
    pub now: &'a Stamp,
    /// The entry that is open, if one is.
    pub open: Option<Uuid>,
}

/// Makes the Mend screen.
pub fn mend_view(input: &MendInput) -> MendView {
    let words = input.words;
    let lines = input.session.map_or_else(Vec::new, |session| lines(words, session, input.ops));
    let open = input.session.zip(input.open).and_then(|(session, op)| open(input, session, op));
    MendView {
        title: words.say("mend-title"),
        says: words.say_with("mend-says", &[("count", Arg::Count(lines.len()))]),
        lines,
        open,
    }
}

/// Each doubtful entry once, with every reason.
fn lines(words: &Wording, session: &Session, ops: &[Op]) -> Vec<MendLine> {
    let mut why: BTreeMap<Uuid, Vec<String>> = BTreeMap::new();
    for doubt in &session.doubts {
        why.entry(doubt.op).or_default().push(words.say(doubt_id(doubt.kind)));
    }
    let ordered = sorted(ops);
    let in_force = effective(&ordered);
    let mut lines: Vec<(i64, MendLine)> = in_force
        .iter()
        .filter_map(|step| {
            let why = why.remove(&step.op.id)?.join(" ");
            let said = session.time_line.place(step.op.device, &step.at);
            let at = happened(session, step.op.id).unwrap_or(&said);
            Some((at.at_ms, MendLine { op: step.op.id, what: what(words, step.payload, at), why }))
        })
        .collect();
    restwater_sorting::by_key(&mut lines, |(at, _)| *at);
    lines.into_iter().map(|(_, line)| line).collect()
}

/// A cast happened at its splash, however late it was told of.
fn happened(session: &Session, op: Uuid) -> Option<&Stamp> {
    session.casts.iter().find(|cast| cast.op == op).map(|cast| &cast.start)
}

fn what(words: &Wording, payload: &Payload, at: &Stamp) -> String {
    let (kind, time) = (kind_words(words, payload.kind()), clock(&at.shown));
    words.say_with("entry", &[("what", Arg::Text(&kind)), ("time", Arg::Text(&time))])
}

fn doubt_id(kind: DoubtKind) -> &'static str {
    match kind {
        DoubtKind::EndNotSeen => "doubt-end-not-seen",
        DoubtKind::OutcomeNotSeen => "doubt-outcome-not-seen",
        DoubtKind::NothingOut => "doubt-nothing-out",
        DoubtKind::NoFishOn => "doubt-no-fish-on",
        DoubtKind::SecondBite => "doubt-second-bite",
        DoubtKind::OutsideSession => "doubt-outside-session",
        DoubtKind::BackInTime => "doubt-back-in-time",
        DoubtKind::ClockMoved => "doubt-clock-moved",
        DoubtKind::Approximate => "doubt-approximate",
        DoubtKind::LongGap => "doubt-long-gap",
        DoubtKind::NoLanding => "doubt-no-landing",
        DoubtKind::Newer => "doubt-newer",
    }
}

fn open(input: &MendInput, session: &Session, op: Uuid) -> Option<MendOpen> {
    let words = input.words;
    let ordered = sorted(input.ops);
    let in_force = effective(&ordered);
    let step = in_force.iter().find(|step| step.op.id == op)?;
    let kinds: Vec<DoubtKind> = session.doubts.iter().filter(|d| d.op == op).map(|d| d.kind).collect();
    let why: Vec<String> = kinds.iter().map(|kind| words.say(doubt_id(*kind))).collect();
    let cast = session.casts.iter().find(|cast| cast.op == op);
    let mut rows = Vec::new();
    if !kinds.is_empty() {
        rows.push(one(words, "stands", "mend-stands-it"));
    }
    if kinds.contains(&DoubtKind::LongGap) {
        rows.push(one(words, "added", "mend-added-it"));
    }
    if let Some(cast) = cast.filter(|cast| cast.end.is_some()) {
        rows.extend([end_row(words, cast), after_row(input, session, cast)]);
    } else if !matches!(step.payload, Payload::Unknown { .. }) {
        let back = step.op.at.mono_ms.saturating_sub(step.at.mono_ms) / 60_000;
        rows.push(back_row(words, u32::try_from(back).unwrap_or(0)));
    }
    let said = session.time_line.place(step.op.device, &step.at);
    let at = cast.map_or(&said, |cast| &cast.start);
    let why = if why.is_empty() { words.say("mend-settled") } else { why.join(" ") };
    Some(MendOpen { op, what: what(words, step.payload, at), why, rows })
}

/// A row with one thing to say.
fn one(words: &Wording, field: &str, label: &str) -> ChoiceRow {
    ChoiceRow {
        field: field.into(),
        label: words.say(&format!("mend-{field}")),
        value: String::new(),
        choices: vec![Choice { label: words.say(label), value: "yes".into(), chosen: false }],
        source: String::new(),
    }
}

fn end_row(words: &Wording, cast: &Cast) -> ChoiceRow {
    let now = end_said(cast);
    let all = [
        (EndSaid::WoundIn, "wound_in"),
        (EndSaid::Landed, "landed"),
        (EndSaid::Lost, "lost"),
        (EndSaid::Missed, "missed"),
    ];
    let value = now.and_then(|now| all.iter().find(|(end, _)| *end == now));
    ChoiceRow {
        field: "end".into(),
        label: words.say("mend-end"),
        value: value.map_or_else(|| words.say("mend-not-seen"), |(_, id)| kind_words(words, id)),
        choices: all
            .iter()
            .map(|(end, id)| Choice {
                label: kind_words(words, id),
                value: (*id).into(),
                chosen: now == Some(*end),
            })
            .collect(),
        source: String::new(),
    }
}

/// Minutes to the bite or the end, as far as what was logged next on its rod allows.
fn after_row(input: &MendInput, session: &Session, cast: &Cast) -> ChoiceRow {
    let words = input.words;
    let minutes = |n: u32| words.say_with("mend-minutes", &[("minutes", Arg::Count(n as usize))]);
    let now = wait_to_mend_s(session, cast).map(|s| (s + 30) / 60);
    let longest = cast.latest.as_ref().unwrap_or(input.now).ms_since(&cast.start) / 60_000;
    let choices = WAITS_MIN.iter().filter(|n| i64::from(**n) <= longest);
    ChoiceRow {
        field: "after".into(),
        label: words.say("mend-after"),
        value: now.map_or_else(String::new, minutes),
        choices: choices
            .map(|n| Choice { label: minutes(*n), value: n.to_string(), chosen: now == Some(*n) })
            .collect(),
        source: words.say("mend-after-how"),
    }
}

fn back_row(words: &Wording, now: u32) -> ChoiceRow {
    let minutes = |n: u32| words.say_with("mend-minutes", &[("minutes", Arg::Count(n as usize))]);
    ChoiceRow {
        field: "back".into(),
        label: words.say("mend-back"),
        value: minutes(now),
        choices: BACK_MIN
            .iter()
            .map(|n| Choice { label: minutes(*n), value: n.to_string(), chosen: *n == now })
            .collect(),
        source: words.say("mend-back-how"),
    }
}

/// What ended a cast, in the words of one who remembers; none where it was not seen.
pub fn end_said(cast: &Cast) -> Option<EndSaid> {
    match cast.end.as_ref()?.cause {
        EndCause::Landed { .. } => Some(EndSaid::Landed),
        EndCause::Lost => Some(EndSaid::Lost),
        EndCause::Missed => Some(EndSaid::Missed),
        EndCause::WoundIn | EndCause::SessionEnded => Some(EndSaid::WoundIn),
        EndCause::OutcomeNotSeen | EndCause::EndNotSeen => None,
    }
}

/// Seconds from the splash to the bite or the end. Where the end was not seen the bait was in at some time before the
/// next splash: a turn-round earlier is proposed, and said of the cast only once the angler says how it ended.
pub fn wait_to_mend_s(session: &Session, cast: &Cast) -> Option<u32> {
    let minutes = cast.wait_end()?.minutes_since(&cast.start);
    let turn_min = rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN).turn_round_min;
    let turn_min = if cast.end_not_seen() { turn_min } else { 0.0 };
    (minutes >= 0.0).then(|| libm::round((minutes - turn_min).max(0.0) * 60.0) as u32)
}
