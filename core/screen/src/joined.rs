//! How a language joins two texts: a label and its value, the parts of a line, two sentences. French has a space before a colon
//! at which no line may break, which a shell could not know.

use super::Wording;

impl Wording {
    /// A label with its value: "Depth: 2 m". If one of them is blank, the other alone.
    pub fn labelled(&self, label: &str, value: &str) -> String {
        joined(&[label, value], &self.joins().label)
    }

    /// What separates a label from its value, for a picture whose labels are composed while it is packed.
    pub(crate) fn colon(&self) -> String {
        self.joins().label.clone()
    }

    /// The parts of a line that are not blank: "18 in, 6 of 10".
    pub fn listed(&self, parts: &[impl AsRef<str>]) -> String {
        joined(parts, &self.joins().list)
    }

    /// Reasons and details that have commas of their own: "rested 48 min; a liner beside it".
    pub fn apart(&self, parts: &[impl AsRef<str>]) -> String {
        joined(parts, &self.joins().apart)
    }

    /// Sentences, or headings without a full stop, that are not blank.
    pub fn sentences(&self, parts: &[&str]) -> String {
        let mut all = String::new();
        for part in parts.iter().filter(|part| !part.trim().is_empty()) {
            match all.chars().next_back() {
                None => {}
                // A space between two sentences is the same in each language.
                Some('.' | '!' | '?' | '…') => all.push(' '),
                Some(_) => all.push_str(&self.joins().sentences),
            }
            all.push_str(part);
        }
        all
    }
}

/// The parts that are not blank.
fn joined(parts: &[impl AsRef<str>], between: &str) -> String {
    let mut all = String::new();
    for part in parts.iter().map(AsRef::as_ref).filter(|part| !part.trim().is_empty()) {
        if !all.is_empty() {
            all.push_str(between);
        }
        all.push_str(part);
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    const LANGUAGES: [&str; 3] = ["en-GB", "de-DE", "fr-FR"];

    #[test]
    fn a_label_has_the_colon_of_its_language() {
        let said = LANGUAGES.map(|tag| Wording::shared(tag).labelled("Peg", "22"));
        assert_eq!(said, ["Peg: 22", "Peg: 22", "Peg\u{a0}: 22"]);
        assert_eq!(LANGUAGES.map(|tag| Wording::shared(tag).colon()), [": ", ": ", "\u{a0}: "]);
        assert_eq!(
            LANGUAGES.map(|tag| Wording::shared(tag).apart(&["a", "b"])),
            ["a; b", "a; b", "a\u{a0}; b"]
        );
    }

    #[test]
    fn what_is_blank_leaves_no_mark() {
        for words in LANGUAGES.map(Wording::shared) {
            let joins = words.joins();
            for between in [&joins.label, &joins.list, &joins.apart, &joins.sentences] {
                assert!(
                    !between.contains(['\u{1}', '\u{2}', 'j']),
                    "another order, or no such message: {between:?}"
                );
            }
            assert_eq!(words.labelled("Peg", " "), "Peg");
            assert_eq!(words.labelled("", "22"), "22");
            assert_eq!(words.labelled("", ""), "");
            assert_eq!(words.listed(&["", "a", "", "b", ""]), "a, b");
            assert_eq!(words.apart(&["", "a"]), "a");
            assert_eq!(words.sentences(&["Title", "", "Said."]), "Title. Said.");
        }
    }

    #[test]
    fn a_sentence_that_has_its_mark_gets_no_second_one() {
        let words = Wording::new();
        assert_eq!(
            words.sentences(&["Pink or white?", "Can't tell yet.", "So far"]),
            "Pink or white? Can't tell yet. So far"
        );
    }
}
