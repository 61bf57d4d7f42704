//! The list of screens, in the order in which a day uses them. A new screen needs a line here and its words.

use super::{Which, Wording};
use serde::{Deserialize, Serialize};

/// When a screen is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum DoorGroup {
    /// While fishing.
    OnTheBank,
    /// Before the day and after it.
    BeforeAndAfter,
}

/// A screen that can be opened.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Door {
    /// Which.
    pub which: Which,
    /// When it is used.
    pub group: DoorGroup,
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
pub struct DoorsView {
    /// Heading of the screens used while fishing.
    pub on_the_bank: String,
    /// Heading of the others.
    pub before_and_after: String,
    /// The screens.
    pub doors: Vec<Door>,
}

/// Name, screen, group, and whether it needs a session.
type Line = (&'static str, Which, DoorGroup, Needs);

const DOORS: &[Line] = &[
    ("setup", Which::Setup, DoorGroup::OnTheBank, Needs::NoneOpen),
    ("tackle", Which::Tackle, DoorGroup::OnTheBank, Needs::Open),
    ("swim", Which::Swim, DoorGroup::OnTheBank, Needs::Some),
    ("waits", Which::Waits, DoorGroup::OnTheBank, Needs::Nothing),
    ("changes", Which::Changes, DoorGroup::OnTheBank, Needs::Nothing),
    ("fish", Which::Fish, DoorGroup::OnTheBank, Needs::Some),
    ("match", Which::Match, DoorGroup::OnTheBank, Needs::Nothing),
    ("conditions", Which::Conditions, DoorGroup::OnTheBank, Needs::Open),
    ("day", Which::Day, DoorGroup::BeforeAndAfter, Needs::Some),
    ("bench", Which::Bench, DoorGroup::BeforeAndAfter, Needs::Nothing),
    ("book", Which::Book, DoorGroup::BeforeAndAfter, Needs::Nothing),
    ("cautions", Which::Cautions, DoorGroup::BeforeAndAfter, Needs::Nothing),
    ("mend", Which::Mend, DoorGroup::BeforeAndAfter, Needs::Some),
    ("files", Which::Files, DoorGroup::BeforeAndAfter, Needs::Nothing),
    ("phone", Which::Phone, DoorGroup::BeforeAndAfter, Needs::Nothing),
    ("welcome", Which::Welcome, DoorGroup::BeforeAndAfter, Needs::Nothing),
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
pub const TOP_DOORS: [Which; 2] = [Which::Swim, Which::Fish];

/// Those of them that can be opened now.
pub(crate) fn top_doors(words: &Wording, any: bool, open: bool) -> Vec<Door> {
    open_now(any, open)
        .filter(|(_, which, ..)| TOP_DOORS.contains(which))
        .map(|door| put(words, door))
        .collect()
}

/// The screens that can be opened now.
pub fn doors(words: &Wording, any: bool, open: bool) -> DoorsView {
    DoorsView {
        on_the_bank: words.say("doors-on-the-bank"),
        before_and_after: words.say("doors-before-and-after"),
        doors: open_now(any, open).map(|door| put(words, door)).collect(),
    }
}

/// The lines of the screens that can be opened now.
fn open_now(any: bool, open: bool) -> impl Iterator<Item = &'static Line> {
    DOORS.iter().filter(move |(_, _, _, needs)| match needs {
        Needs::Nothing => true,
        Needs::Open => open,
        Needs::NoneOpen => !open,
        Needs::Some => any,
    })
}

/// A screen in words.
fn put(words: &Wording, (name, which, group, _): &Line) -> Door {
    Door {
        which: *which,
        group: *group,
        label: words.say(&format!("door-{name}")),
        sub: words.say(&format!("door-{name}-sub")),
        spoken: words.say(&format!("door-{name}-spoken")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_screen_has_its_words_and_can_be_opened_when_it_is_of_use() {
        let words = Wording::new();
        for (any, open) in [(false, false), (true, false), (true, true)] {
            for door in doors(&words, any, open).doors {
                for text in [&door.label, &door.sub, &door.spoken] {
                    assert!(!text.starts_with("door-"), "{text}");
                }
            }
        }
        assert!(top_doors(&words, false, false).is_empty(), "no key is shown that opens nothing");
        assert_eq!(
            top_doors(&words, true, false).iter().map(|door| door.which).collect::<Vec<_>>(),
            TOP_DOORS
        );
        let has = |any, open, which| doors(&words, any, open).doors.iter().any(|d| d.which == which);
        assert!(has(false, false, Which::Setup) && !has(true, true, Which::Setup));
        assert!(!has(false, false, Which::Swim) && has(true, false, Which::Swim));
        assert!(!has(true, false, Which::Tackle) && has(true, true, Which::Tackle));
    }
}
