//! What a tap gives back.

use restwater_screen::{Screen, Which};
use serde::{Deserialize, Serialize};

/// What a tap gives back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Update {
    /// The Bank screen as it now stands.
    pub screen: Screen,
    /// Whether the log grew.
    pub changed: bool,
    /// Whether the tap was ignored as a second one.
    pub repeated: bool,
    /// What undo would now take back.
    pub undo_label: Option<String>,
    /// What to say of the tap.
    pub notice: String,
    /// A screen that comes up of itself: the Bank after START, the card of the day after END.
    pub opens: Option<Which>,
}
