//! Conditions in a few taps: what is known, and the keys of what is asked next.

use super::figures::{clock, trimmed};
use super::{Arg, Leaf, LeafKey, LeafLine, LeavesView, Wording};
use restwater_session::Session;
use restwater_sky::conditions::{Choice, Conditions, Step, WaterColour, WindFrom, WindStrength, choices};

/// Everything asked, in the order asked.
const STEPS: [Step; 6] = [Step::Water, Step::Air, Step::Wind, Step::WindFrom, Step::Cloud, Step::Colour];

/// Makes the screen; `step` is what is asked now, none where all is known or skipped.
pub fn conditions(words: &Wording, session: Option<&Session>, step: Option<Step>) -> LeavesView {
    let mut leaf = Leaf::new(words, "conditions", "now");
    let Some(session) = session else {
        leaf.says = words.say("conditions-no-session");
        return LeavesView { leaves: vec![leaf] };
    };
    let now = session.conditions_now();
    leaf.lines = lines(words, &now);
    leaf.says = match (step, session.conditions.last()) {
        (Some(step), _) => words.say(&format!("conditions-ask-{}", name(step))),
        (None, Some(last)) => {
            let time = clock(&last.at.shown);
            words.say_with("conditions-as-logged", &[("time", Arg::Text(&time))])
        }
        (None, None) => words.say("conditions-none"),
    };
    if let Some(step) = step {
        let key = |choice: Choice| LeafKey::new(name(step), &value(choice), choice_words(words, choice));
        leaf.keys = choices(step, &now).into_iter().map(key).collect();
        leaf.keys.push(LeafKey::new("skip", name(step), words.say("conditions-skip")));
    } else {
        let again = LeafKey::new("again", "", words.say("conditions-again"));
        leaf.keys.push(LeafKey { sub: words.say("conditions-again-sub"), ..again });
    }
    leaf.notes.push(words.say("conditions-how"));
    LeavesView { leaves: vec![leaf] }
}

/// What is known, a line each; what is not is left out.
pub(crate) fn lines(words: &Wording, known: &Conditions) -> Vec<LeafLine> {
    let all = [
        known.water.map(Choice::Water),
        known.air.map(Choice::Air),
        known.wind.map(Choice::Wind),
        known.wind_from.map(Choice::WindFrom),
        known.cloud.map(Choice::Cloud),
        known.colour.map(Choice::Colour),
    ];
    let line = |(step, choice): (Step, Option<Choice>)| {
        let label = words.say(&format!("conditions-{}", name(step)));
        choice.map(|choice| LeafLine::new(label, choice_words(words, choice)))
    };
    STEPS.into_iter().zip(all).filter_map(line).collect()
}

/// The conditions in one line: "water 5 °C, air 3 °C, light wind from the south-west".
pub fn conditions_words(words: &Wording, known: &Conditions) -> String {
    lines(words, known)
        .iter()
        .map(|l| format!("{} {}", l.label.to_lowercase(), l.value))
        .collect::<Vec<_>>()
        .join(", ")
}

/// The name of a step, as keys hand it back.
pub(crate) fn name(step: Step) -> &'static str {
    match step {
        Step::Water => "water",
        Step::Air => "air",
        Step::Wind => "wind",
        Step::WindFrom => "wind-from",
        Step::Cloud => "cloud",
        Step::Colour => "colour",
    }
}

/// The step of that name.
pub fn step_of(text: &str) -> Option<Step> {
    STEPS.into_iter().find(|step| name(*step) == text)
}

fn snake<T: serde::Serialize>(value: T) -> String {
    serde_json::to_value(value).ok().and_then(|v| v.as_str().map(str::to_owned)).unwrap_or_default()
}

fn value(choice: Choice) -> String {
    match choice {
        Choice::Water(t) | Choice::Air(t) => t.to_string(),
        Choice::Wind(wind) => snake(wind),
        Choice::WindFrom(from) => snake(from),
        Choice::Cloud(oktas) => oktas.to_string(),
        Choice::Colour(colour) => snake(colour),
    }
}

/// What a key of a step hands back, read again; none where it is no value of that step.
pub fn choice_of(step: Step, text: &str) -> Option<Choice> {
    let named = serde_json::Value::String(text.to_owned());
    Some(match step {
        Step::Water => Choice::Water(text.parse().ok()?),
        Step::Air => Choice::Air(text.parse().ok()?),
        Step::Wind => Choice::Wind(serde_json::from_value::<WindStrength>(named).ok()?),
        Step::WindFrom => Choice::WindFrom(serde_json::from_value::<WindFrom>(named).ok()?),
        Step::Cloud => Choice::Cloud(text.parse().ok()?),
        Step::Colour => Choice::Colour(serde_json::from_value::<WaterColour>(named).ok()?),
    })
}

fn choice_words(words: &Wording, choice: Choice) -> String {
    match choice {
        Choice::Water(t) | Choice::Air(t) => {
            let t = trimmed(f64::from(t) / 10.0, 1).replace('-', "−");
            words.say_with("bench-celsius", &[("t", Arg::Text(&t))])
        }
        Choice::Wind(wind) => words.say(&format!("wind-{}", snake(wind))),
        Choice::WindFrom(from) => words.say(&format!("from-{}", snake(from))),
        Choice::Cloud(oktas) => words.say_with("cloud-oktas", &[("oktas", Arg::Count(oktas.into()))]),
        Choice::Colour(colour) => words.say(&format!("water-{}", snake(colour))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_key_hands_back_what_it_says() {
        let words = Wording::new();
        for step in STEPS {
            for choice in choices(step, &Conditions::default()) {
                assert_eq!(choice_of(step, &value(choice)), Some(choice));
                let said = choice_words(&words, choice);
                assert!(
                    !said.contains("wind-") && !said.contains("from-") && !said.contains("water-"),
                    "{said}"
                );
            }
            assert_eq!(step_of(name(step)), Some(step));
            assert_eq!(choice_of(step, "soup"), None);
        }
    }
}
