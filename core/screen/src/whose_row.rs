//! Words for whose sessions count, and the row of choices for it.

use super::{Action, Choice, ChoiceRow, Whose, Wording};

impl Whose {
    /// "my sessions".
    pub(crate) fn words(self, words: &Wording) -> String {
        words.say(&format!("whose-{}", self.tag()))
    }

    /// The three as a row of choices.
    pub(crate) fn row(
        self,
        words: &Wording,
        tag: &str,
        label: String,
        send: impl Fn(Self) -> Action,
    ) -> ChoiceRow {
        let choices = Self::ALL
            .map(|whose| Choice::new(whose.tag(), whose.words(words), whose == self, send(whose)))
            .to_vec();
        ChoiceRow::of(tag, label, choices, String::new())
    }
}
