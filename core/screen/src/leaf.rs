//! A leaf: a page of sentences, figures and keys. Bench, Book, Conditions and Cautions are made of leaves, so that a
//! shell draws them all in one way.

use super::{Action, Axis, Choice, ChoiceRow, KeyTap, TypedField, Which, Wording};
use serde::{Deserialize, Serialize};

/// A range on the axis of its leaf, drawn as a line with its ends and, if known, its middle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct LeafSpan {
    /// Lower end.
    pub low: f64,
    /// The value itself, or `None` if there is only a range.
    pub at: Option<f64>,
    /// Upper end, cut to the axis.
    pub high: f64,
    /// Whether the upper end is beyond the axis.
    pub beyond: bool,
}

/// One line: what, how much, and details.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct LeafLine {
    /// What: "18 in, 0.12 mm, size 16".
    pub label: String,
    /// How much: "6 of 10". May be empty.
    pub value: String,
    /// A smaller line below; may be empty.
    pub detail: String,
    /// The three for a screen reader.
    pub spoken: String,
    /// Label and value alone, for when the detail is on the next page.
    pub figure_spoken: String,
    /// The range behind the value.
    pub span: Option<LeafSpan>,
    /// Whether it heads the lines below it.
    pub heads: bool,
}

/// One key.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct LeafKey {
    /// A name for tests.
    pub tag: String,
    /// Its word.
    pub label: String,
    /// A smaller line below; may be empty.
    pub sub: String,
    /// Both for a screen reader.
    pub spoken: String,
    /// Drawn in solid ink: the likeliest next.
    pub solid: bool,
    /// Whether it can be tapped now.
    pub enabled: bool,
    /// What a tap on it does.
    pub tap: KeyTap,
}

/// One page.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Leaf {
    /// Its name, to open it by.
    pub id: String,
    /// Its heading.
    pub title: String,
    /// What it says, in a sentence or two.
    pub says: String,
    /// A caution that belongs to what is entered here; empty if there is none.
    pub caution: String,
    /// Figures.
    pub lines: Vec<LeafLine>,
    /// The axis on which the ranges of the lines are drawn; none if no line has a range.
    pub axis: Option<Axis>,
    /// How they were obtained, and what they can't tell.
    pub notes: Vec<String>,
    /// Keys as wide as the screen: its parts, sessions.
    pub list: Vec<LeafKey>,
    /// A text that can be typed.
    pub typing: Option<TypedField>,
    /// What can be chosen.
    pub rows: Vec<ChoiceRow>,
    /// What can be done.
    pub keys: Vec<LeafKey>,
    /// Whether the keys are only on the last page, since tapping one means that the text was read.
    pub keys_last: bool,
}

/// A screen of leaves; the first is the one it opens with.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct LeavesView {
    /// The leaves.
    pub leaves: Vec<Leaf>,
}

impl Leaf {
    /// An empty leaf whose heading is the message `id`-title of its room.
    pub(crate) fn new(words: &Wording, room: &str, id: &str) -> Self {
        Self {
            id: id.into(),
            title: words.say(&format!("{room}-{id}-title")),
            says: String::new(),
            caution: String::new(),
            lines: Vec::new(),
            axis: None,
            notes: Vec::new(),
            list: Vec::new(),
            typing: None,
            rows: Vec::new(),
            keys: Vec::new(),
            keys_last: false,
        }
    }

    /// The axis of its ranges, if it has any.
    pub(crate) fn drawn_on(&mut self, axis: &Axis) {
        self.axis = self.lines.iter().any(|line| line.span.is_some()).then(|| axis.clone());
    }

    /// A key of the list that opens this leaf.
    pub(crate) fn opener(&self, sub: String) -> LeafKey {
        let tap = KeyTap::Leaf { id: self.id.clone() };
        LeafKey { sub, ..LeafKey::new(format!("leaf-{}", self.id), self.title.clone(), tap) }
    }
}

impl LeafSpan {
    /// A value with its range, as far as the axis reaches.
    pub(crate) fn on(axis: &Axis, low: f64, at: f64, high: f64) -> Self {
        Self { low: low.min(axis.to), at: Some(at), high: high.min(axis.to), beyond: high > axis.to }
    }
}

impl LeafKey {
    /// An outlined key without a smaller line.
    pub(crate) fn new(tag: impl Into<String>, label: String, tap: impl Into<KeyTap>) -> Self {
        let (sub, spoken) = (String::new(), String::new());
        Self { tag: tag.into(), label, sub, spoken, solid: false, enabled: true, tap: tap.into() }
    }

    /// START on a screen that has nothing to show before a session: it opens the set-up.
    pub(crate) fn start(words: &Wording) -> Self {
        let tap = KeyTap::Open { which: Which::Setup };
        let key = Self::new("start-", words.say("key-start"), tap);
        Self { sub: words.say("key-start-sub"), solid: true, ..key }
    }

    /// START for a new user: a session begins at once with the present set-up, in which everything is
    /// optional.
    pub(crate) fn start_now(words: &Wording) -> Self {
        let key = Self::new("start-now-", words.say("key-start"), Action::StartSession { setup: None });
        Self { sub: words.say("welcome-start-sub"), ..key }
    }
}

impl LeafLine {
    /// A line of what and how much.
    pub(crate) fn new(label: String, value: String) -> Self {
        let (detail, spoken, figure_spoken) = (String::new(), String::new(), String::new());
        Self { label, value, detail, spoken, figure_spoken, span: None, heads: false }
    }

    /// A heading of the lines below it.
    pub(crate) fn heading(label: String) -> Self {
        Self { heads: true, ..Self::new(label, String::new()) }
    }
}

impl Choice {
    /// A choice; `tag` names it to tests.
    pub(crate) fn new(tag: impl Into<String>, label: String, chosen: bool, action: Action) -> Self {
        Self { tag: tag.into(), label, spoken: String::new(), chosen, action }
    }
}

impl ChoiceRow {
    /// A row whose present value is the chosen choice.
    pub(crate) fn of(tag: impl Into<String>, label: String, choices: Vec<Choice>, source: String) -> Self {
        let value = choices.iter().find(|choice| choice.chosen).map_or_else(String::new, |c| c.label.clone());
        let spoken = String::new();
        Self { tag: tag.into(), label, value, spoken, choices, source, typing: None, reads: false }
    }
}
