//! What a language puts between two texts.

/// What each language puts between two texts, taken from its messages once: a screen joins a hundred texts.
#[derive(Default)]
pub(crate) struct Joins {
    /// A label and its value.
    pub(crate) label: String,
    /// The parts of a line.
    pub(crate) list: String,
    /// Parts that have commas of their own.
    pub(crate) apart: String,
    /// Two sentences, the first without a mark at its end.
    pub(crate) sentences: String,
}

impl Joins {
    /// Those of a language. `say` gives the message of that id with the two texts in it; in each language the first comes first.
    pub(crate) fn of(say: impl Fn(&str, &str, &str) -> String) -> Self {
        let between = |id: &str| {
            let (first, then) = ("\u{1}", "\u{2}");
            say(id, first, then).trim_start_matches(first).trim_end_matches(then).to_owned()
        };
        Self {
            label: between("join-label"),
            list: between("join-list"),
            apart: between("join-apart"),
            sentences: between("join-sentences"),
        }
    }
}
