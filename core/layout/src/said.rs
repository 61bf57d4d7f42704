//! The words on the glass that belong to no record: the keys at the top, MORE, the fan.

use restwater_screen::Wording;
use serde::{Deserialize, Serialize};

/// A word on a key, with what a screen reader says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Said {
    /// The word on the key.
    pub label: String,
    /// What a screen reader says.
    pub spoken: String,
}

/// The words of the glass.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PadWords {
    /// Opens the list of screens.
    pub screens: Said,
    /// Changes to the day scheme.
    pub day: Said,
    /// Changes to the night scheme.
    pub night: Said,
    /// Changes to the left hand.
    pub left: Said,
    /// Changes to the right hand.
    pub right: Said,
    /// Turns to the next page of small keys.
    pub more: Said,
    /// The small swim fan.
    pub swim: Said,
    /// Turns to the next part of a long leaf.
    pub read_on: Said,
    /// Back to the Bank screen.
    pub back: Said,
    /// Opens the Waits screen.
    pub waits: Said,
    /// Opens "Did it matter?".
    pub changes: Said,
    /// Opens the Match screen.
    pub match_day: Said,
    /// Opens the Files screen.
    pub files: Said,
    /// Opens the Mend screen.
    pub mend: Said,
    /// Opens the Phone screen.
    pub phone: Said,
}

impl PadWords {
    /// The words in a language.
    pub fn of(words: &Wording) -> Self {
        let said = |id: &str| Said { label: words.say(id), spoken: words.say(&format!("{id}-spoken")) };
        Self {
            screens: said("pad-screens"),
            day: said("pad-day"),
            night: said("pad-night"),
            left: said("pad-left"),
            right: said("pad-right"),
            more: said("pad-more"),
            swim: said("pad-swim"),
            read_on: said("pad-read-on"),
            back: said("pad-back"),
            waits: said("pad-waits"),
            changes: said("pad-changes"),
            match_day: said("pad-match"),
            files: said("pad-files"),
            mend: said("pad-mend"),
            phone: said("pad-phone"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_of_the_glass_is_there() {
        let words = Wording::new();
        let said = PadWords::of(&words);
        assert_eq!(said.more.label, "MORE");
        for one in [
            said.screens,
            said.day,
            said.night,
            said.left,
            said.right,
            said.more,
            said.swim,
            said.read_on,
            said.back,
            said.waits,
            said.changes,
            said.match_day,
            said.files,
            said.mend,
            said.phone,
        ] {
            assert!(!one.label.contains("pad-") && !one.spoken.contains("pad-"), "{one:?}");
        }
    }
}
