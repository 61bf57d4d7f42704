//! Setting up a session: everything may be left as it stands.

use super::{ChoiceRow, KeyView};
use serde::{Deserialize, Serialize};

/// The set-up screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SetupView {
    /// What it is about.
    pub title: String,
    /// Name of the water, as typed before.
    pub water: String,
    /// Label of that field.
    pub water_label: String,
    /// Peg, as typed.
    pub peg: String,
    /// Label of that field.
    pub peg_label: String,
    /// Depth, span of the sticks, rods: each a row of choices.
    pub rows: Vec<ChoiceRow>,
    /// START.
    pub start: KeyView,
}
