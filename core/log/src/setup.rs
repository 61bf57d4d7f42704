//! The set-up of a session and of its swim, in the form of the log.

use serde::{Deserialize, Serialize};

/// Rods are numbered from 1 in the order they were set up.
pub type RodNumber = u8;

/// How a session was set up. Everything may be left empty.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(default)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SessionSetup {
    /// Name of the water, in the angler's words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub water: Option<String>,
    /// Peg name or number.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub peg: Option<String>,
    /// Water depth in cm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub depth_cm: Option<u32>,
    /// Span of the distance sticks in tenths of a millimetre.
    pub span_tenth_mm: u32,
    /// How many rods.
    pub rods: RodNumber,
    /// Seconds from the splash that don't count as waiting.
    pub settle_s: u32,
    /// Whether a twitch restarts the wait.
    pub twitch_restarts: bool,
}

impl Default for SessionSetup {
    fn default() -> Self {
        Self {
            water: None,
            peg: None,
            depth_cm: None,
            span_tenth_mm: 36_576, // 12 ft: common practice, no source; changed at set-up
            rods: 1,
            settle_s: 0,
            twitch_restarts: false,
        }
    }
}

/// Bounds, bands and rest target of a swim. Distances are in cm and optional.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(default)]
pub struct SwimSetup {
    /// To the next peg on the left.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub left_peg_cm: Option<u32>,
    /// To the next peg on the right.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right_peg_cm: Option<u32>,
    /// To the far bank.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub far_bank_cm: Option<u32>,
    /// Whether the far bank is pegged, so that the swim ends halfway.
    pub far_bank_pegged: bool,
    /// Width of the bands; `None` for the usual ones.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub band_cm: Option<u32>,
    /// Minutes after which water counts as rested.
    pub rest_target_min: u32,
}

impl Default for SwimSetup {
    /// No bounds. The 45 minutes are a guess, which a tap changes.
    fn default() -> Self {
        Self {
            left_peg_cm: None,
            right_peg_cm: None,
            far_bank_cm: None,
            far_bank_pegged: false,
            band_cm: None,
            rest_target_min: 45,
        }
    }
}
