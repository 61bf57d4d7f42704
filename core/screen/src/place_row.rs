//! The row of a water or a peg, for the session to come and for one that was begun.

use super::{Action, Choice, ChoiceRow, TypedField, TypedInto, Wording};
use restwater_match_day::rules::same_name;

/// A row of the water or the peg: those known before, none, and a line to type another into.
pub(crate) fn place_row(
    words: &Wording,
    tag: &str,
    now: Option<&str>,
    known: &[String],
    into: TypedInto,
) -> ChoiceRow {
    let choice = |tag: String, label: String, text: &str| {
        let action = Action::Typed { into, text: text.to_owned() };
        Choice::new(tag, label, same_name(now.unwrap_or_default(), text), action)
    };
    let unknown = words.say("setup-unknown");
    let known = known.iter().enumerate().map(|(i, name)| choice(i.to_string(), name.clone(), name));
    let choices = known.chain([choice("none".into(), unknown.clone(), "")]).collect();
    let label = words.say(&format!("setup-{tag}"));
    let typing = Some(TypedField::sent(words, tag, label.clone(), into));
    let value = now.map_or(unknown, str::to_owned);
    ChoiceRow { value, typing, ..ChoiceRow::of(tag, label, choices, String::new()) }
}
