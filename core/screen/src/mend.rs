//! The Mend screen: doubtful entries of a session, each with the possible corrections.

use super::date::session_day_words;
use super::figures::whole;
use super::{Action, Arg, Choice, ChoiceRow, MendTap, Wording, clock, kind_words};
use restwater_log::{EndSaid, Op, Payload, effective, sorted};
use restwater_session::{
    Cast, DoubtKind, LastTimed, Session, Stamp, gap_before, last_before_end, rhythm, stamps_of, timed,
    wait_end_ms,
};
use restwater_waits::{BITE_EXTRA_GUESS_MIN, TURN_ROUND_GUESS_MIN};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, HashMap};
use uuid::Uuid;

/// Minutes to choose from for a wait.
const WAITS_MIN: &[u32] = &[1, 2, 3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 25, 30, 40, 50, 60];
/// Minutes to choose from for setting a time back.
const BACK_MIN: &[u32] = &[1, 2, 5, 10, 15, 30];
/// No entry but END is set back further, in minutes: no session is longer than a fortnight.
const LONGEST_BACK_MIN: u32 = 14 * 1_440;

/// How far an entry may be set back, in minutes. An END may have been forgotten for any time.
pub fn longest_back_min(payload: &Payload) -> u32 {
    if matches!(payload, Payload::SessionEnded) { u32::MAX / 60 } else { LONGEST_BACK_MIN }
}

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
    /// Both for a screen reader.
    pub spoken: String,
    /// The same with the word on its key, for a screen reader on that key.
    pub key_spoken: String,
    /// What a tap on it sends, which opens it.
    pub open: Action,
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
    /// The possible corrections.
    pub rows: Vec<ChoiceRow>,
    /// What BACK sends: the list again.
    pub back: Action,
}

/// The Mend screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MendView {
    /// What it is about.
    pub title: String,
    /// How many there are, or that there are none.
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
    /// The session to correct, if there is one.
    pub session: Option<&'a Session>,
    /// Whether it is another one than the screens are about: then its day is named.
    pub earlier: bool,
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
        title: match input.session.filter(|_| input.earlier) {
            Some(session) => {
                words.say_with("mend-title-of", &[("day", Arg::Text(&session_day_words(words, session)))])
            }
            None => words.say("mend-title"),
        },
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
    let stamps = stamps_of(ops);
    let mut lines: Vec<(i64, MendLine)> = in_force
        .iter()
        .filter_map(|step| {
            let why = why.remove(&step.op.id)?.join(" ");
            let op = step.op.id;
            let at = happened(session, &stamps, op)?;
            let open = Action::OpenDoubt { op: Some(op) };
            let (spoken, key_spoken) = (String::new(), String::new());
            let what = of_its_cast(words, session, op, what(words, step.payload, at));
            Some((at.at_ms, MendLine { op, what, why, spoken, key_spoken, open }))
        })
        .collect();
    restwater_sorting::by_key(&mut lines, |(at, _)| *at);
    lines.into_iter().map(|(_, line)| line).collect()
}

/// When an entry happened. A cast happened at its splash, even if it was added later.
fn happened<'a>(session: &'a Session, stamps: &'a HashMap<Uuid, Stamp>, op: Uuid) -> Option<&'a Stamp> {
    let cast = session.casts.iter().find(|cast| cast.op == op);
    cast.map(|cast| &cast.start).or_else(|| stamps.get(&op))
}

fn what(words: &Wording, payload: &Payload, at: &Stamp) -> String {
    let (kind, time) = (kind_words(words, payload.kind()), clock(&at.shown));
    words.say_with("entry", &[("what", Arg::Text(&kind)), ("time", Arg::Text(&time))])
}

/// The bite of a cast with what it can be judged by: "bite 11:50, 15 min after the cast at 11:35".
fn of_its_cast(words: &Wording, session: &Session, op: Uuid, what: String) -> String {
    let of = |cast: &&Cast| cast.bite.as_ref().is_some_and(|(_, bite)| *bite == op);
    let Some((cast, (bite, _))) =
        session.casts.iter().find(of).and_then(|cast| Some((cast, cast.bite.as_ref()?)))
    else {
        return what;
    };
    let minutes = whole(bite.at_ms.saturating_sub(cast.start.at_ms) as f64 / 60_000.0);
    let time = clock(&cast.start.shown);
    let args = [("entry", Arg::Text(&what)), ("minutes", Arg::Text(&minutes)), ("time", Arg::Text(&time))];
    words.say_with("mend-of-cast", &args)
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
        DoubtKind::StillOut => "doubt-still-out",
        DoubtKind::LateEnd => "doubt-late-end",
        DoubtKind::NoBreak => "doubt-no-break",
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
    let make = Rows { words, op };
    let mut rows = Vec::new();
    if !kinds.is_empty() {
        rows.push(make.one("keep", "mend-keep-it", MendTap::Confirm));
    }
    if kinds.contains(&DoubtKind::LongGap) {
        rows.push(make.one("added", "mend-added-it", MendTap::AddCast));
        let away = gap_before(session, op).is_some_and(|gap| gap.of_a_break(session).is_ok());
        rows.extend(away.then(|| make.one("away", "mend-away-it", MendTap::WasAway)));
    }
    if stands_alone(step.payload) {
        rows.push(make.one("remove", "mend-remove-it", MendTap::Remove));
    }
    if let Some(cast) = cast.filter(|cast| cast.end.is_some()) {
        rows.extend([make.end(cast), make.after(input.now, session, cast)]);
    } else if !matches!(step.payload, Payload::Unknown { .. }) {
        let back = step.op.at.mono_ms.saturating_sub(step.at.mono_ms) / 60_000;
        let entry = timed(session, input.ops, op);
        let last = last_before_end(session).filter(|_| matches!(step.payload, Payload::SessionEnded));
        rows.extend(make.back(u32::try_from(back).unwrap_or(0), entry.as_ref(), last));
    }
    let stamps = stamps_of(input.ops);
    let at = happened(session, &stamps, op)?;
    let why = if why.is_empty() { words.say("mend-settled") } else { why.join(" ") };
    let back = Action::OpenDoubt { op: None };
    let what = of_its_cast(words, session, op, what(words, step.payload, at));
    Some(MendOpen { op, what, why, rows, back })
}

/// Whether an entry can be removed by itself, because no later entry depends on it.
pub fn stands_alone(payload: &Payload) -> bool {
    matches!(payload, Payload::Fed(_) | Payload::FishShown { .. } | Payload::NeighbourCaught { .. })
}

struct Rows<'a> {
    words: &'a Wording,
    op: Uuid,
}

impl Rows<'_> {
    fn choice(&self, tag: impl Into<String>, label: String, chosen: bool, tap: MendTap) -> Choice {
        Choice::new(tag, label, chosen, Action::Mend { op: self.op, tap })
    }

    fn row(&self, tag: &str, value: String, choices: Vec<Choice>, source: String) -> ChoiceRow {
        ChoiceRow { value, ..ChoiceRow::of(tag, self.words.say(&format!("mend-{tag}")), choices, source) }
    }

    fn minutes(&self, n: u32) -> String {
        self.words.say_with("mend-minutes", &[("minutes", Arg::Count(n as usize))])
    }

    /// A row with a single choice.
    fn one(&self, tag: &str, label: &str, tap: MendTap) -> ChoiceRow {
        let choice = self.choice("yes", self.words.say(label), false, tap);
        self.row(tag, String::new(), vec![choice], String::new())
    }

    fn end(&self, cast: &Cast) -> ChoiceRow {
        let now = end_said(cast);
        let choice = |(end, kind): (EndSaid, &str)| {
            self.choice(kind, kind_words(self.words, kind), now == Some(end), MendTap::End { end })
        };
        let choices: Vec<Choice> = [
            (EndSaid::WoundIn, "wound_in"),
            (EndSaid::Landed, "landed"),
            (EndSaid::Lost, "lost"),
            (EndSaid::Missed, "missed"),
        ]
        .map(choice)
        .to_vec();
        let value = choices.iter().find(|choice| choice.chosen).map(|choice| choice.label.clone());
        self.row("end", value.unwrap_or_else(|| self.words.say("mend-not-seen")), choices, String::new())
    }

    /// Minutes to the bite or the end, as far as the next entry of its rod allows.
    fn after(&self, at: &Stamp, session: &Session, cast: &Cast) -> ChoiceRow {
        let end = end_said(cast).unwrap_or(EndSaid::WoundIn);
        let now = wait_to_mend_s(session, cast, end).map(|s| (s + 30) / 60);
        let longest = cast.latest.as_ref().unwrap_or(at).ms_since(&cast.start) / 60_000;
        let choice = |n: &u32| {
            self.choice(n.to_string(), self.minutes(*n), now == Some(*n), MendTap::After { minutes: *n })
        };
        let choices = WAITS_MIN.iter().filter(|n| i64::from(**n) <= longest).map(choice).collect();
        let value = now.map_or_else(String::new, |n| self.minutes(n));
        self.row("after", value, choices, self.words.say("mend-after-how"))
    }

    /// Minutes to set a time back by, as far as what was logged before allows; first of all, back to that, if the entry may have
    /// been made long after it.
    fn back(&self, now: u32, entry: Option<&LastTimed>, last: Option<&Stamp>) -> Option<ChoiceRow> {
        let to_last = entry.zip(last).and_then(|(entry, last)| {
            let minutes = u32::try_from(entry.tapped.ms_since(last) / 60_000).ok()?;
            let label = self.words.say_with("mend-back-last", &[("time", Arg::Text(&clock(&last.shown)))]);
            let offered = (1..=longest_back_min(&entry.payload)).contains(&minutes);
            offered.then(|| self.choice("last", label, minutes == now, MendTap::Back { minutes }))
        });
        let fits = |n: &&u32| entry.is_none_or(|entry| entry.in_the_way(60 * **n).is_none());
        let choice =
            |n: &u32| self.choice(n.to_string(), self.minutes(*n), *n == now, MendTap::Back { minutes: *n });
        let choices: Vec<Choice> =
            to_last.into_iter().chain(BACK_MIN.iter().filter(fits).map(choice)).collect();
        (!choices.is_empty())
            .then(|| self.row("back", self.minutes(now), choices, self.words.say("mend-back-how")))
    }
}

/// What ended a cast, in the form of a correction, or `None` if it was not seen.
pub fn end_said(cast: &Cast) -> Option<EndSaid> {
    restwater_session::end_said(&cast.end.as_ref()?.cause)
}

/// Seconds from the splash to the bite or the end. If the end was not seen, it was at some time before the
/// next splash: a turn-round earlier is proposed, and before that what a bite costs if the cast ended in one. It is entered only
/// once the angler says how the cast ended.
pub fn wait_to_mend_s(session: &Session, cast: &Cast, end: EndSaid) -> Option<u32> {
    let minutes = wait_end_ms(session, cast)?.saturating_sub(cast.start.at_ms) as f64 / 60_000.0;
    let rhythm = rhythm(session, TURN_ROUND_GUESS_MIN, BITE_EXTRA_GUESS_MIN);
    let before_min = match end {
        _ if !cast.end_not_seen() => 0.0,
        EndSaid::WoundIn => rhythm.turn_round_min,
        EndSaid::Landed | EndSaid::Lost | EndSaid::Missed => rhythm.turn_round_min + rhythm.bite_extra_min,
    };
    (minutes >= 0.0).then(|| libm::round((minutes - before_min).max(0.0) * 60.0) as u32)
}
