//! Where one sentence ends and the next begins, for pages of large text: a page ends between two of them.

/// The sentences of a text, without the spaces between them. A full stop ends one if more than a single letter is before it
/// ("z. B.", "e.g.") and a new word begins after it: with a capital, or with a figure after a word ("Two bites. 3 liners.").
pub fn sentences_of(text: &str) -> Vec<String> {
    let mut all = Vec::new();
    let mut begin = 0;
    for (at, _) in text.char_indices().filter(|(_, c)| c.is_whitespace()) {
        if ends_in(&text[begin..at], text[at..].trim_start()) {
            all.push(&text[begin..at]);
            begin = at;
        }
    }
    all.push(&text[begin..]);
    all.into_iter().map(|one| one.trim().to_owned()).filter(|one| !one.is_empty()).collect()
}

/// The clauses of a text, without the spaces between them: where a sentence higher than a page is divided.
pub fn clauses_of(text: &str) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match all.last_mut().filter(|clause| !clause.ends_with([',', ';', ':', '.'])) {
            Some(clause) => {
                clause.push(' ');
                clause.push_str(word);
            }
            None => all.push(word.to_owned()),
        }
    }
    all
}

fn ends_in(before: &str, after: &str) -> bool {
    let said = before.trim_end_matches(['"', '\'', '”', '’', '»', '“', ')', '\u{a0}', ' ']);
    let Some(stop) = said.chars().next_back().filter(|c| matches!(c, '.' | '!' | '?' | '…')) else {
        return before.ends_with('\n') || after.is_empty();
    };
    let word = said[..said.len() - stop.len_utf8()].rsplit(|c: char| c.is_whitespace() || c == '.').next();
    let word = word.unwrap_or_default();
    let letters = word.chars().filter(|c| c.is_alphabetic()).count();
    let figures = word.chars().any(|c| c.is_ascii_digit());
    let next = after.trim_start_matches(['"', '\'', '“', '„', '«', '(', '\u{a0}', ' ']).chars().next();
    match next {
        Some(c) if c.is_uppercase() => figures || letters > 1 || stop != '.',
        Some(c) if c.is_ascii_digit() => letters > 3 || stop != '.',
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_is_divided_where_its_sentences_end() {
        for (text, parts) in [
            (
                "Keep away. Ring 105 at once! Why? It is live.",
                &["Keep away.", "Ring 105 at once!", "Why?", "It is live."] as &[&str],
            ),
            ("Leave at 15:30. The net is full.", &["Leave at 15:30.", "The net is full."]),
            ("Two bites. 3 liners.", &["Two bites.", "3 liners."]),
            ("Schnur in z. B. Ruten. Nr. 5 gilt.", &["Schnur in z. B. Ruten.", "Nr. 5 gilt."]),
            ("A lead of 1.5 oz, e.g. on ice, sinks.", &["A lead of 1.5 oz, e.g. on ice, sinks."]),
            ("Restez à 9 m. « Danger ! » Partez.", &["Restez à 9 m. « Danger ! »", "Partez."]),
            ("One without a stop", &["One without a stop"]),
            ("", &[]),
        ] {
            assert_eq!(sentences_of(text), parts, "{text}");
        }
    }

    #[test]
    fn a_sentence_is_divided_at_its_commas_and_colons() {
        let text = "Never light a stove in a tent, nor leave one there: the gas can kill.";
        assert_eq!(
            clauses_of(text),
            ["Never light a stove in a tent,", "nor leave one there:", "the gas can kill."]
        );
    }

    #[test]
    fn no_word_is_lost_and_none_is_added() {
        let text = "He said \"go.\" Then: 3 m. off.  Two  spaces.";
        assert_eq!(
            sentences_of(text).join(" ").split_whitespace().collect::<Vec<_>>(),
            text.split_whitespace().collect::<Vec<_>>()
        );
    }
}
