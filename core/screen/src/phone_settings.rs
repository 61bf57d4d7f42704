//! What belongs to the phone and not to the log: hand, scheme, alarm, whether the screen stays on.

use super::Whose;
use restwater_log::WeightUnit;
use serde::{Deserialize, Serialize};

/// Which thumb taps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Hand {
    /// The right one.
    #[default]
    Right,
    /// The left one: everything is mirrored.
    Left,
}

/// Ink on paper or chalk on ink.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Scheme {
    /// Ink on paper.
    #[default]
    Day,
    /// Chalk on ink.
    Night,
}

/// Hand and scheme.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Settings {
    /// Which thumb taps.
    pub hand: Hand,
    /// Ink on paper or chalk on ink.
    pub scheme: Scheme,
}

/// When a cast that is out rings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum Alarm {
    /// Never.
    Off,
    /// At the end of "hold until".
    Hold,
    /// At "recast by".
    #[default]
    Recast,
    /// So many minutes after the splash.
    After(u16),
}

/// What belongs to the phone beside hand and scheme.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct PhoneChoices {
    /// When a cast that is out rings.
    pub alarm: Alarm,
    /// Whether the screen stays on.
    pub awake: bool,
    /// What fish are weighed in where no match says it.
    pub weights: WeightUnit,
    /// Whose earlier sessions the advice is made from.
    pub whose: Whose,
}

impl Default for PhoneChoices {
    /// The screen stays on: a cold thumb has trouble waking it, and a wait is looked at from afar.
    fn default() -> Self {
        Self { alarm: Alarm::default(), awake: true, weights: WeightUnit::default(), whose: Whose::Me }
    }
}
