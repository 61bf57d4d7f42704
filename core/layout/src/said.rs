//! Words of the screens that are in no record: the list of screens, the pager, BACK, the fan.

use restwater_screen::{Arg, Wording};
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

/// Words that are on the screen beside its record.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PadWords {
    /// Opens the list of screens.
    pub screens: Said,
    /// Opens the further keys of the Swim screen.
    pub further: Said,
    /// The small swim fan.
    pub swim: Said,
    /// Back to the Bank screen.
    pub back: Said,
    /// Opens a doubtful entry.
    pub mend: Said,
    /// Opens the further keys of the Bank; what is spoken is the title of their sheet too.
    pub more: Said,
}

impl PadWords {
    /// The words in a language.
    pub fn of(words: &Wording) -> Self {
        let said = |id: &str| Said { label: words.say(id), spoken: words.say(&format!("{id}-spoken")) };
        Self {
            screens: said("pad-screens"),
            further: said("pad-further"),
            swim: said("pad-swim"),
            back: said("pad-back"),
            mend: said("pad-mend"),
            more: said("pad-keys"),
        }
    }
}

/// The words of the pager, the same on every screen that has more than one page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PagerWords {
    /// The word on the key.
    pub label: String,
    /// Which page it is and how many there are: "2 of 4".
    pub of: String,
    /// What a screen reader says.
    pub spoken: String,
}

impl PagerWords {
    /// The words of a page, counted from 1.
    pub fn of(words: &Wording, page: u32, pages: u32) -> Self {
        let args = [("page", Arg::Count(page as usize)), ("pages", Arg::Count(pages as usize))];
        let say = |id| words.say_with(id, &args);
        Self { label: say("pad-more"), of: say("pad-page"), spoken: say("pad-more-spoken") }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_of_the_glass_is_there() {
        let words = Wording::new();
        let said = PadWords::of(&words);
        assert_eq!(said.back.label, "BACK");
        for one in [said.screens, said.further, said.swim, said.back, said.mend, said.more] {
            assert!(!one.label.contains("pad-") && !one.spoken.contains("pad-"), "{one:?}");
        }
    }

    #[test]
    fn the_pager_says_where_it_is() {
        let said = PagerWords::of(&Wording::new(), 2, 4);
        assert_eq!((said.label.as_str(), said.of.as_str()), ("MORE", "2 of 4"));
        assert!(said.spoken.contains("2 of 4"), "{}", said.spoken);
    }
}
