//! Did it matter? Each change compared with what it replaced, in figures, words and a forest plot.

mod side;
mod test;

pub use side::{ChangeView, ForestPoint, SideView, StartTest, VerdictTone};
pub use test::{AlternationView, StepState, StepView};

use super::chart::{Axis, Tick};
use super::leave_words::not_seen_words;
use super::{Arg, FiguresView, LeafKey, StandingQuestion, Wording};
use crate::casts_that_count::{mark_name, spot_of};
use crate::compared::value_of_factor;
use restwater_compare::{ChangeFinding, Factor, Verdict};
use restwater_log::WeightUnit;
use restwater_session::{Session, casts_by_telling};
use serde::{Deserialize, Serialize};

/// The forest plot reaches from an eighth to eight times.
pub(super) const FOREST_LOG2: f64 = 3.0;

/// "Did it matter?"
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ChangesView {
    /// Its heading.
    pub title: String,
    /// What it says, in one sentence.
    pub says: String,
    /// How many changes were looked at, and what that means; how many casts are in none of them, since their end was not seen.
    pub warning: String,
    /// The axis of the forest plot: log2 of the ratio, new against old.
    pub axis: Axis,
    /// The changes, in the order they were made.
    pub changes: Vec<ChangeView>,
    /// The alternating test that runs.
    pub test: Option<AlternationView>,
    /// The page of figures behind the verdicts; `None` before there is a change.
    pub figures: Option<FiguresView>,
    /// What to do if there is nothing to show yet.
    pub offer: Option<LeafKey>,
}

/// Makes the screen from today's findings and the questions over days on this water; feed is said in this unit.
pub fn changes(
    words: &Wording,
    session: Option<&Session>,
    findings: &[ChangeFinding],
    standing: &[&StandingQuestion],
    unit: WeightUnit,
) -> ChangesView {
    let clear = findings.iter().filter(|f| matches!(f.verdict, Verdict::ClearlyBetterHereToday(_))).count();
    let says = match (session, findings.len()) {
        (None, _) => words.say("changes-no-session"),
        (Some(_), 0) => words.say("changes-none"),
        _ => words.say_with("changes-clear", &[("count", Arg::Count(clear))]),
    };
    let warning = match (session, findings.len()) {
        (Some(session), count @ 1..) => {
            let looked_at = words.say_with("changes-looked-at", &[("count", Arg::Count(count))]);
            let not_seen = not_seen_words(words, casts_by_telling(session).1).unwrap_or_default();
            words.sentences(&[&looked_at, &not_seen])
        }
        _ => String::new(),
    };
    let view = |session: &Session| {
        let can_start = session.is_open() && session.alternation.is_none();
        let of = |f: &ChangeFinding| {
            let asked = standing.iter().find(|asked| asked.is_about(f.factor, &f.a.value, &f.b.value));
            side::change(&Told { words, session, unit }, f, can_start, asked.copied())
        };
        findings.iter().map(of).collect()
    };
    let changes: Vec<ChangeView> = session.map(view).unwrap_or_default();
    let raised = (changes.len() > 1).then(|| words.say("changes-raised"));
    let asked_today = |asked: &&&StandingQuestion| {
        findings.iter().any(|f| asked.is_about(f.factor, &f.a.value, &f.b.value))
    };
    let over_days = standing.iter().filter(asked_today).filter_map(|asked| asked.figures(words));
    let figures =
        changes.iter().map(|change| side::figures(words, change)).chain(over_days).chain(raised).collect();
    ChangesView {
        title: words.say("changes-title"),
        says,
        warning,
        axis: forest_axis(words),
        figures: (!changes.is_empty())
            .then(|| FiguresView { title: words.say("waits-figures"), lines: figures }),
        changes,
        test: session.and_then(|session| test::alternation(&Told { words, session, unit })),
        offer: session
            .is_none_or(|session| !session.is_open() && findings.is_empty())
            .then(|| LeafKey::start(words)),
    }
}

/// What the values of a change are put into words with.
#[derive(Clone, Copy)]
pub(super) struct Told<'a> {
    words: &'a Wording,
    session: &'a Session,
    /// What feed is said in.
    unit: WeightUnit,
}

impl Told<'_> {
    /// Two values by the shortest names that tell them apart, where the title has the whole: of spots the marks alone.
    fn short(&self, factor: Factor, values: [&str; 2]) -> [String; 2] {
        let marks = values.map(|value| mark_name(self.session, value).filter(|_| factor == Factor::Spot));
        match marks {
            [Some(a), Some(b)] if a != b => [a, b],
            _ => values.map(|value| self.value(factor, value)),
        }
    }

    /// A value in words: a spot by its mark and range, a length as it was meant, anything else as it is spelled.
    fn value(&self, factor: Factor, value: &str) -> String {
        match factor {
            Factor::Spot => spot_of(self.words, self.session, value),
            _ => value_of_factor(self.words, factor, value, self.unit),
        }
    }
}

fn forest_axis(words: &Wording) -> Axis {
    let label = |power: i32| match power {
        0 => words.say("forest-same"),
        p if p < 0 => format!("1/{}", 1_u32 << p.unsigned_abs()),
        p => format!("\u{d7}{}", 1_u32 << p.unsigned_abs()),
    };
    let ticks = (-3..=3).map(|power| Tick { at: f64::from(power), label: label(power) }).collect();
    Axis { label: words.say("forest-axis"), from: -FOREST_LOG2, to: FOREST_LOG2, ticks }
}

#[cfg(test)]
mod tests;
