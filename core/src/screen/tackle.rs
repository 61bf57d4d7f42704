//! The tackle of one rod: what is on the line and where it goes, changed by taps.

use serde::{Deserialize, Serialize};

/// One value that can be tapped.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Choice {
    /// What it says.
    pub label: String,
    /// What to hand back to choose it.
    pub value: String,
    /// Whether it is the present one.
    pub chosen: bool,
}

/// One thing that can be changed, with its present value and what it may become.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ChoiceRow {
    /// The field to hand back, "popup", "span".
    pub field: String,
    /// What it is called.
    pub label: String,
    /// The present value in words.
    pub value: String,
    /// A step down and a step up first where the value is a figure, then recent and usual ones.
    pub choices: Vec<Choice>,
    /// Where the usual ones come from, "common practice, no source"; empty for the angler's own.
    pub source: String,
}

/// The tackle screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct TackleView {
    /// "Rod 1: next cast".
    pub title: String,
    /// Which rod.
    pub rod: u8,
    /// The rows.
    pub rows: Vec<ChoiceRow>,
}
