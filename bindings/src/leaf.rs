//! Records of the screens made of leaves (Bench, Conditions, Cautions) and of the list of screens.
//!
//! Each is the core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_app::Which;
use restwater_screen::{
    ChoiceRow, Door, DoorGroup, DoorsView, Leaf, LeafKey, LeafLine, LeafSpan, LeafTyping, LeavesView,
};

/// A range on a common scale, drawn as a line with its ends and, where it is known, its middle.
#[uniffi::remote(Record)]
pub struct LeafSpan {
    /// Lower end.
    pub low: f64,
    /// The value itself; none where there is only a range.
    pub at: Option<f64>,
    /// Upper end, cut to the scale.
    pub high: f64,
    /// Whether the upper end lies beyond the scale.
    pub beyond: bool,
    /// Upper end of the scale, which begins at nought; the same for all lines of a leaf.
    pub scale: f64,
}

/// One line: what, how much, and what more there is to say.
#[uniffi::remote(Record)]
pub struct LeafLine {
    /// What: "18 in, 0.12 mm, size 16".
    pub label: String,
    /// How much: "6 of 10". May be empty.
    pub value: String,
    /// A smaller line below; may be empty.
    pub detail: String,
    /// The range behind the value.
    pub span: Option<LeafSpan>,
    /// Whether it heads the lines below it.
    pub heads: bool,
}

/// One key.
#[uniffi::remote(Record)]
pub struct LeafKey {
    /// What to hand back: which field; `leaf` opens the leaf of that id and hands nothing back.
    pub field: String,
    /// Which value.
    pub value: String,
    /// Its word.
    pub label: String,
    /// A smaller line below; may be empty.
    pub sub: String,
    /// Drawn in solid ink: the likeliest next.
    pub solid: bool,
    /// Whether it can be tapped now.
    pub enabled: bool,
}

/// A text that can be typed, at home and with warm hands; never needed while fishing.
#[uniffi::remote(Record)]
pub struct LeafTyping {
    /// Which field to hand back.
    pub field: String,
    /// What it is for.
    pub label: String,
    /// The word on the key that hands it over.
    pub send: String,
}

/// One page.
#[uniffi::remote(Record)]
pub struct Leaf {
    /// Its name, to open it by.
    pub id: String,
    /// Its heading.
    pub title: String,
    /// What it says, in a sentence or two.
    pub says: String,
    /// A caution that belongs to what is entered here; empty where there is none.
    pub caution: String,
    /// Figures.
    pub lines: Vec<LeafLine>,
    /// How they were obtained, and what they can't tell.
    pub notes: Vec<String>,
    /// Keys as wide as the glass: the parts of a screen, sessions.
    pub list: Vec<LeafKey>,
    /// A text that can be typed.
    pub typing: Option<LeafTyping>,
    /// What can be chosen.
    pub rows: Vec<ChoiceRow>,
    /// What can be done.
    pub keys: Vec<LeafKey>,
}

/// A screen of leaves; the first is the one it opens with.
#[uniffi::remote(Record)]
pub struct LeavesView {
    /// The leaves.
    pub leaves: Vec<Leaf>,
}

/// When a screen is used.
#[uniffi::remote(Enum)]
pub enum DoorGroup {
    /// While fishing.
    OnTheBank,
    /// Before the day and after it.
    BeforeAndAfter,
}

/// A screen that can be opened.
#[uniffi::remote(Record)]
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
#[uniffi::remote(Record)]
pub struct DoorsView {
    /// Heading of the screens used while fishing.
    pub on_the_bank: String,
    /// Heading of the others.
    pub before_and_after: String,
    /// The screens.
    pub doors: Vec<Door>,
}
