//! The baits and colours that are offered before an angler has names of their own (common practice, no source).

use super::{UsualClass, Wording};
use restwater_compare::Factor;
use restwater_match_day::rules::plain_name;
use std::sync::OnceLock;

/// Message ids of baits.
const BAITS: &[&str] = &["bait-bread", "bait-corn", "bait-maggot", "bait-pellet", "bait-worm"];
/// Message ids of colours.
const COLOURS: &[&str] = &["colour-white", "colour-yellow", "colour-pink", "colour-red", "colour-brown"];

fn ids(factor: Factor) -> &'static [&'static str] {
    match factor {
        Factor::Bait => BAITS,
        Factor::Colour => COLOURS,
        _ => &[],
    }
}

/// The baits or colours that are offered, in the language of the phone.
pub fn usual_names(words: &Wording, factor: Factor) -> Vec<String> {
    ids(factor).iter().map(|id| words.say(id)).collect()
}

/// A value as it is compared: a bait or a colour without regard to case, and one of those offered in English, whichever language
/// it is written in. Logs have several spellings of one value, since earlier versions kept what was typed, and so do other phones.
pub fn plain_value(factor: Factor, value: &str) -> String {
    if ids(factor).is_empty() {
        return value.to_owned();
    }
    let plain = plain_name(value);
    english(NameOf::Value(factor), &plain).map_or(plain, str::to_owned)
}

/// Whether two values are the same however they are spelled.
pub fn same_value(factor: Factor, a: &str, b: &str) -> bool {
    a == b || (!ids(factor).is_empty() && plain_value(factor, a) == plain_value(factor, b))
}

/// What the names are of that are offered.
#[derive(Clone, Copy, PartialEq, Eq)]
enum NameOf {
    Value(Factor),
    Class,
}

/// One of those names, in one language.
struct Usual {
    of: NameOf,
    english: String,
    name: String,
}

/// The English for a plain name if it is one of those offered.
fn english(of: NameOf, plain: &str) -> Option<&'static str> {
    let usual = usual_in_every_language().iter().find(|usual| usual.of == of && usual.name == plain);
    usual.map(|usual| usual.english.as_str())
}

fn usual_in_every_language() -> &'static [Usual] {
    static ALL: OnceLock<Vec<Usual>> = OnceLock::new();
    ALL.get_or_init(|| {
        let usual = |(of, id): (NameOf, &str)| {
            let names = Wording::in_every_language(id, &[]);
            let english = plain_name(&names[0]);
            names.into_iter().map(move |name| Usual { of, english: english.clone(), name: plain_name(&name) })
        };
        let values = [Factor::Bait, Factor::Colour].into_iter();
        let values = values.flat_map(|factor| ids(factor).iter().map(move |id| (NameOf::Value(factor), *id)));
        let classes = UsualClass::ALL.iter().map(|class| (NameOf::Class, class.id()));
        values.chain(classes).flat_map(usual).collect()
    })
}

/// Whether two names are the same of the usual kinds of fish, each in any language.
pub fn same_usual_class(a: &str, b: &str) -> bool {
    let [a, b] = [a, b].map(|name| english(NameOf::Class, &plain_name(name)));
    a.is_some() && a == b
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_is_the_same_in_any_case_and_a_usual_name_in_any_language() {
        assert_eq!(plain_value(Factor::Colour, " Rosa"), "pink");
        assert!(same_value(Factor::Colour, "Rosa", "pink"));
        assert!(same_value(Factor::Bait, "Brot", "bread"));
        assert!(same_value(Factor::Colour, " PLUM", "plum"));
        assert!(!same_value(Factor::Colour, "rosa", "white"));
        assert!(!same_value(Factor::Bait, "rosa", "pink"), "no bait that is offered");
        assert!(!same_value(Factor::Spot, "A", "a"), "figures and places have one spelling");
    }

    #[test]
    fn a_usual_kind_of_fish_is_the_same_in_any_case_and_language() {
        assert!(same_usual_class("Hecht", "PIKE"));
        assert!(!same_usual_class("Hecht", "carp"));
        assert!(!same_usual_class("golden orfe", "golden orfe"), "none of the usual ones");
    }

    #[test]
    fn no_usual_name_stands_for_two() {
        for one in usual_in_every_language() {
            let same = |other: &&Usual| (other.of, &other.name) == (one.of, &one.name);
            let meant: Vec<&String> =
                usual_in_every_language().iter().filter(same).map(|usual| &usual.english).collect();
            assert!(meant.iter().all(|english| **english == one.english), "{} {meant:?}", one.name);
        }
    }
}
