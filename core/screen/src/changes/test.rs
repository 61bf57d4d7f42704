//! The running alternating test: a plain list of casts with the next one marked.

use super::Told;
use crate::compared::factor_within;
use crate::{Action, Arg, Wording};
use restwater_compare::Side;
use restwater_session::value_of;
use serde::{Deserialize, Serialize};

/// The state of a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum StepState {
    /// Cast and in: ticked.
    Done,
    /// Out now.
    Out,
    /// The next to cast: arrowed.
    Next,
    /// Later.
    Later,
}

/// One cast of the plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct StepView {
    /// "3. pink".
    pub label: String,
    /// A or B.
    pub side: String,
    /// Its state.
    pub state: StepState,
    /// What a screen reader says of it: "3. pink, next".
    pub spoken: String,
}

/// The running alternating test.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct AlternationView {
    /// "Test of colour: white and pink".
    pub title: String,
    /// What to cast next.
    pub says: String,
    /// How it is done, and casts that don't count.
    pub notes: Vec<String>,
    /// The casts planned, in order.
    pub steps: Vec<StepView>,
    /// The key that sets rig or spot for the next cast: its smaller line, or `None` if it is set already or
    /// all planned casts are done.
    pub set_sub: Option<String>,
    /// The word on that key.
    pub set_label: String,
    /// Both for a screen reader.
    pub set_spoken: String,
    /// The key that ends the test: its word.
    pub end_label: String,
    /// Its smaller line.
    pub end_sub: String,
    /// Both for a screen reader.
    pub end_spoken: String,
    /// What the key that sets rig or spot sends.
    pub set: Action,
    /// What the key that ends the test sends.
    pub end: Action,
}

/// The running test, if any.
pub(super) fn alternation(told: &Told) -> Option<AlternationView> {
    let (words, session) = (told.words, told.session);
    let test = session.alternation.as_ref()?;
    let progress = test.progress(session);
    let value = |side| told.value(test.factor, test.value(side));
    let (a, b) = (value(Side::A), value(Side::B));
    let factor = factor_within(words, test.factor);
    let names = [("factor", Arg::Text(&factor)), ("a", Arg::Text(&a)), ("b", Arg::Text(&b))];
    let state = |i: usize| match i {
        i if i + 1 == progress.done && progress.last_is_out => StepState::Out,
        i if i < progress.done => StepState::Done,
        i if i == progress.done => StepState::Next,
        _ => StepState::Later,
    };
    let step = |(i, side): (usize, &Side)| {
        let (number, value, state) = ((i + 1).to_string(), value(*side), state(i));
        let label =
            words.say_with("test-step", &[("number", Arg::Text(&number)), ("value", Arg::Text(&value))]);
        StepView {
            side: if *side == Side::A { "A".into() } else { "B".into() },
            state,
            spoken: words.say_with(spoken(state), &[("step", Arg::Text(&label))]),
            label,
        }
    };
    let next = progress.sides.get(progress.done).copied();
    let next_value = next.map(value);
    let out = progress.done.checked_sub(1).filter(|_| progress.last_is_out);
    let out = out.map(|i| value(progress.sides[i]));
    let mut notes = vec![words.say("test-how")];
    if progress.off_plan > 0 {
        notes.push(words.say_with("test-off", &[("count", Arg::Count(progress.off_plan))]));
    }
    let set = session.rod(test.rod).and_then(|r| value_of(test.factor, &r.rig, r.spot.as_ref()));
    let set_sub = next
        .filter(|side| set.as_deref() != Some(test.value(*side)))
        .map(|side| words.say_with("test-set-sub", &[("value", Arg::Text(&value(side)))]));
    Some(AlternationView {
        title: words.say_with("test-title", &names),
        says: says(words, test.rod, out.as_deref(), next_value.as_deref()),
        notes,
        steps: progress.sides.iter().enumerate().map(step).collect(),
        set_sub,
        set_label: words.say("test-set"),
        set_spoken: String::new(),
        end_label: words.say("test-end"),
        end_sub: words.say("test-end-sub"),
        end_spoken: String::new(),
        set: Action::SetNextStep,
        end: Action::EndAlternation,
    })
}

/// The id of the message for the state of a step.
fn spoken(state: StepState) -> &'static str {
    match state {
        StepState::Done => "test-step-done",
        StepState::Out => "test-step-out",
        StepState::Next => "test-step-next",
        StepState::Later => "test-step-later",
    }
}

fn says(words: &Wording, rod: u8, out: Option<&str>, next: Option<&str>) -> String {
    match (out, next) {
        (Some(out), Some(next)) => {
            words.say_with("test-out", &[("value", Arg::Text(out)), ("next", Arg::Text(next))])
        }
        (Some(out), None) => words.say_with("test-last-out", &[("value", Arg::Text(out))]),
        (None, Some(next)) => {
            let rod = rod.to_string();
            words.say_with("test-next", &[("rod", Arg::Text(&rod)), ("value", Arg::Text(next))])
        }
        (None, None) => words.say("test-complete"),
    }
}
