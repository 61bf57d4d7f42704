//! The list of screens, in the order in which a day uses them. A new screen needs a line here and its words.

use super::{Which, Wording};
use serde::{Deserialize, Serialize};

/// When a screen is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum ScreenGroup {
    /// While fishing.
    OnTheBank,
    /// Before the day and after it.
    BeforeAndAfter,
}

/// A screen that can be opened.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ScreenKey {
    /// Which.
    pub which: Which,
    /// When it is used.
    pub group: ScreenGroup,
    /// Its word.
    pub label: String,
    /// A smaller line below.
    pub sub: String,
    /// What a screen reader says.
    pub spoken: String,
}

/// The list with its headings.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ScreenListView {
    /// Heading of the screens used while fishing.
    pub on_the_bank: String,
    /// Heading of the others.
    pub before_and_after: String,
    /// The screens.
    pub keys: Vec<ScreenKey>,
}

/// Name, screen, group, and whether it needs a session.
type Line = (&'static str, Which, ScreenGroup, Needs);

const SCREENS: &[Line] = &[
    ("setup", Which::Setup, ScreenGroup::OnTheBank, Needs::NoneOpen),
    ("tackle", Which::Tackle, ScreenGroup::OnTheBank, Needs::Open),
    ("swim", Which::Swim, ScreenGroup::OnTheBank, Needs::Some),
    ("waits", Which::Waits, ScreenGroup::OnTheBank, Needs::Nothing),
    ("changes", Which::Changes, ScreenGroup::OnTheBank, Needs::Nothing),
    ("fish", Which::Fish, ScreenGroup::OnTheBank, Needs::Some),
    ("match", Which::Match, ScreenGroup::OnTheBank, Needs::Nothing),
    ("conditions", Which::Conditions, ScreenGroup::OnTheBank, Needs::Open),
    ("day", Which::Day, ScreenGroup::BeforeAndAfter, Needs::Some),
    ("bench", Which::Bench, ScreenGroup::BeforeAndAfter, Needs::Nothing),
    ("book", Which::Book, ScreenGroup::BeforeAndAfter, Needs::Nothing),
    ("cautions", Which::Cautions, ScreenGroup::BeforeAndAfter, Needs::Nothing),
    ("mend", Which::Mend, ScreenGroup::BeforeAndAfter, Needs::Some),
    ("files", Which::Files, ScreenGroup::BeforeAndAfter, Needs::Nothing),
    ("phone", Which::Phone, ScreenGroup::BeforeAndAfter, Needs::Nothing),
    ("welcome", Which::Welcome, ScreenGroup::BeforeAndAfter, Needs::Nothing),
];

/// What a screen needs to be useful.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Needs {
    Nothing,
    Open,
    NoneOpen,
    Some,
}

/// The screens whose keys are at the top of the Bank, in this order.
pub const TOP_SCREEN_KEYS: [Which; 2] = [Which::Swim, Which::Fish];

/// Those of them that can be opened now.
pub(crate) fn top_screen_keys(words: &Wording, any: bool, open: bool) -> Vec<ScreenKey> {
    open_now(any, open)
        .filter(|(_, which, ..)| TOP_SCREEN_KEYS.contains(which))
        .map(|line| put(words, line))
        .collect()
}

/// The screens that can be opened now.
pub fn screen_list(words: &Wording, any: bool, open: bool) -> ScreenListView {
    ScreenListView {
        on_the_bank: words.say("screens-on-the-bank"),
        before_and_after: words.say("screens-before-and-after"),
        keys: open_now(any, open).map(|line| put(words, line)).collect(),
    }
}

/// The lines of the screens that can be opened now.
fn open_now(any: bool, open: bool) -> impl Iterator<Item = &'static Line> {
    SCREENS.iter().filter(move |(_, _, _, needs)| match needs {
        Needs::Nothing => true,
        Needs::Open => open,
        Needs::NoneOpen => !open,
        Needs::Some => any,
    })
}

/// A screen in words.
fn put(words: &Wording, (name, which, group, _): &Line) -> ScreenKey {
    ScreenKey {
        which: *which,
        group: *group,
        label: words.say(&format!("open-{name}")),
        sub: words.say(&format!("open-{name}-sub")),
        spoken: words.say(&format!("open-{name}-spoken")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_screen_has_its_words_and_can_be_opened_when_it_is_of_use() {
        let words = Wording::new();
        for (any, open) in [(false, false), (true, false), (true, true)] {
            for key in screen_list(&words, any, open).keys {
                for text in [&key.label, &key.sub, &key.spoken] {
                    assert!(!text.starts_with("open-"), "{text}");
                }
            }
        }
        assert!(top_screen_keys(&words, false, false).is_empty(), "no key is shown that opens nothing");
        assert_eq!(
            top_screen_keys(&words, true, false).iter().map(|key| key.which).collect::<Vec<_>>(),
            TOP_SCREEN_KEYS
        );
        let has = |any, open, which| screen_list(&words, any, open).keys.iter().any(|key| key.which == which);
        assert!(has(false, false, Which::Setup) && !has(true, true, Which::Setup));
        assert!(!has(false, false, Which::Swim) && has(true, false, Which::Swim));
        assert!(!has(true, false, Which::Tackle) && has(true, true, Which::Tackle));
    }
}
