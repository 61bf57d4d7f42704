//! Conditions in a few taps: what is known, and the keys that answer the next question.

use super::figures::clock;
use super::{Action, Arg, ConditionsTap, Leaf, LeafKey, LeafLine, LeavesView, Wording};
use restwater_session::Session;
use restwater_sky::conditions::{Answer, Conditions, Question, answers};

/// All questions, in the order in which they are asked.
const QUESTIONS: [Question; 6] =
    [Question::Water, Question::Air, Question::Wind, Question::WindFrom, Question::Cloud, Question::Colour];

/// Makes the screen; `question` is the one shown now; `None` when all are answered or skipped.
pub fn conditions(words: &Wording, session: Option<&Session>, question: Option<Question>) -> LeavesView {
    let mut leaf = Leaf::new(words, "conditions", "now");
    let Some(session) = session else {
        leaf.says = words.say("conditions-no-session");
        leaf.keys = vec![LeafKey::start(words)];
        return LeavesView { leaves: vec![leaf] };
    };
    let now = session.conditions_now();
    leaf.lines = lines(words, &now);
    leaf.says = match (question, session.conditions.last()) {
        (Some(question), _) => words.say(&format!("conditions-ask-{}", name(question))),
        (None, Some(last)) => {
            let time = clock(&last.at.shown);
            words.say_with("conditions-as-logged", &[("time", Arg::Text(&time))])
        }
        (None, None) => words.say("conditions-none"),
    };
    let send = |tap| Action::Conditions { tap };
    if let Some(question) = question {
        let key = |answer: Answer| {
            let tag = format!("{}-{}", name(question), tag(answer));
            LeafKey::new(tag, choice_words(words, answer), send(ConditionsTap::Answer { answer }))
        };
        leaf.keys = answers(question, &now).into_iter().map(key).collect();
        let skip = send(ConditionsTap::Skip { question });
        leaf.keys.push(LeafKey::new(format!("skip-{}", name(question)), words.say("conditions-skip"), skip));
    } else {
        let again = LeafKey::new("again-", words.say("conditions-again"), send(ConditionsTap::Again));
        leaf.keys.push(LeafKey { sub: words.say("conditions-again-sub"), ..again });
    }
    leaf.notes.push(words.say("conditions-how"));
    LeavesView { leaves: vec![leaf] }
}

/// One line for each thing that is known.
pub(crate) fn lines(words: &Wording, known: &Conditions) -> Vec<LeafLine> {
    let line = |(question, answer): (Question, Answer)| {
        let label = words.say(&format!("conditions-{}", name(question)));
        LeafLine::new(label, choice_words(words, answer))
    };
    known_answers(known).map(line).collect()
}

/// What is known, in the order of the questions.
fn known_answers(known: &Conditions) -> impl Iterator<Item = (Question, Answer)> {
    let all = [
        known.water.map(Answer::Water),
        known.air.map(Answer::Air),
        known.wind.map(Answer::Wind),
        known.wind_from.map(Answer::WindFrom),
        known.cloud.map(Answer::Cloud),
        known.colour.map(Answer::Colour),
    ];
    QUESTIONS.into_iter().zip(all).filter_map(|(question, answer)| Some((question, answer?)))
}

/// The conditions in one line: "water 5 °C, air 3 °C, light wind from the south-west".
pub fn conditions_words(words: &Wording, known: &Conditions) -> String {
    let said = |(question, answer): (Question, Answer)| {
        let value = choice_words(words, answer);
        words.say_with(&format!("conditions-in-{}", name(question)), &[("value", Arg::Text(&value))])
    };
    words.listed(&known_answers(known).map(said).collect::<Vec<_>>())
}

/// The part of a message id that names a question.
fn name(question: Question) -> &'static str {
    match question {
        Question::Water => "water",
        Question::Air => "air",
        Question::Wind => "wind",
        Question::WindFrom => "wind-from",
        Question::Cloud => "cloud",
        Question::Colour => "colour",
    }
}

fn snake<T: serde::Serialize>(value: T) -> String {
    serde_json::to_value(value).ok().and_then(|v| v.as_str().map(str::to_owned)).unwrap_or_default()
}

/// The tag of an answer, for tests.
fn tag(answer: Answer) -> String {
    match answer {
        Answer::Water(t) | Answer::Air(t) => t.to_string(),
        Answer::Wind(wind) => snake(wind),
        Answer::WindFrom(from) => snake(from),
        Answer::Cloud(oktas) => oktas.to_string(),
        Answer::Colour(colour) => snake(colour),
    }
}

fn choice_words(words: &Wording, choice: Answer) -> String {
    match choice {
        Answer::Water(t) | Answer::Air(t) => {
            let t = words.figure(f64::from(t) / 10.0, 1).replace('-', "−");
            words.say_with("bench-celsius", &[("t", Arg::Text(&t))])
        }
        Answer::Wind(wind) => words.say(&format!("wind-{}", snake(wind))),
        Answer::WindFrom(from) => words.say(&format!("from-{}", snake(from))),
        Answer::Cloud(oktas) => words.say_with("cloud-oktas", &[("oktas", Arg::Count(oktas.into()))]),
        Answer::Colour(colour) => words.say(&format!("water-{}", snake(colour))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_answer_has_its_words() {
        let words = Wording::new();
        for question in QUESTIONS {
            for answer in answers(question, &Conditions::default()) {
                let said = choice_words(&words, answer);
                assert!(
                    !said.contains("wind-") && !said.contains("from-") && !said.contains("water-"),
                    "{said}"
                );
            }
        }
    }
}
