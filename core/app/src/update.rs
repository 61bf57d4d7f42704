//! The result of a tap.

use restwater_screen::{Screen, Which};
use serde::{Deserialize, Serialize};

/// The result of a tap.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Update {
    /// The Bank screen after the tap.
    pub screen: Screen,
    /// Whether the log grew.
    pub changed: bool,
    /// Whether the tap was ignored as an accidental second tap.
    pub repeated: bool,
    /// The notice about the tap.
    pub notice: String,
    /// A screen that opens by itself: the Bank after START, the card of the day after END.
    pub opens: Option<Which>,
}
