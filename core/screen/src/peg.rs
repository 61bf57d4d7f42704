//! A peg in words. The angler types "14" or "Peg 14", and either way it is called so once.

use crate::{Arg, Wording};

/// The peg with the language's word for it: "Peg 14".
pub fn peg_words(words: &Wording, peg: &str) -> String {
    words.say_with("peg", &[("peg", Arg::Text(peg_name(words, peg)))])
}

/// What a message puts after its own word for a peg: "14", also where that word was typed with it.
pub fn peg_name<'a>(words: &Wording, peg: &'a str) -> &'a str {
    let word = words.say_with("peg", &[("peg", Arg::Text(""))]);
    let word = word.trim();
    let peg = peg.trim();
    let begins = peg.get(..word.len()).is_some_and(|start| start.to_lowercase() == word.to_lowercase());
    let rest = if begins { &peg[word.len()..] } else { peg };
    let name = rest.trim_start_matches(['.', ':']).trim_start();
    // "Pegasus" begins with the word and doesn't hold it, and "Peg" alone has no other name.
    if name.is_empty() || rest.starts_with(char::is_alphabetic) { peg } else { name }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_peg_is_called_so_once_in_the_word_of_the_language() {
        let cases = [
            ("en-GB", "14", "Peg\u{a0}14"),
            ("en-GB", "peg 14", "Peg\u{a0}14"),
            ("en-GB", " PEG14 ", "Peg\u{a0}14"),
            ("en-GB", "Pegasus", "Peg\u{a0}Pegasus"),
            ("en-GB", "peg", "Peg\u{a0}peg"),
            ("en-GB", "Platz 14", "Peg\u{a0}Platz 14"),
            ("de-DE", "Platz 14", "Platz\u{a0}14"),
            ("de-DE", "Plätze", "Platz\u{a0}Plätze"),
            ("fr-FR", "place n° 3", "Place\u{a0}n° 3"),
        ];
        for (tag, typed, said) in cases {
            assert_eq!(peg_words(Wording::shared(tag), typed), said, "{tag}");
        }
    }
}
