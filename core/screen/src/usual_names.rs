//! The baits and colours that are offered before an angler has names of their own (common practice, no source).

use super::{UsualClass, Wording};
use restwater_compare::Factor;
use restwater_match_day::rules::same_name;

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

/// Whether two names are the same bait or colour of those offered, each in any language.
pub fn same_usual_name(factor: Factor, a: &str, b: &str) -> bool {
    ids(factor).iter().any(|id| both_are(id, [a, b]))
}

/// Whether two names are the same of the usual kinds of fish, each in any language.
pub fn same_usual_class(a: &str, b: &str) -> bool {
    UsualClass::ALL.iter().any(|class| both_are(class.id(), [a, b]))
}

fn both_are(id: &str, names: [&str; 2]) -> bool {
    let known = Wording::in_every_language(id, &[]);
    names.iter().all(|name| known.iter().any(|known| same_name(known, name)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_usual_name_is_the_same_in_any_language_and_case() {
        assert!(same_usual_name(Factor::Colour, "Rosa", "pink"));
        assert!(same_usual_name(Factor::Bait, "Brot", "bread"));
        assert!(!same_usual_name(Factor::Colour, "rosa", "white"));
        assert!(!same_usual_name(Factor::Colour, "plum", "plum"), "not one of those offered");
    }
}
