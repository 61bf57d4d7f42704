//! Rig and spot in the form of the log: whole numbers in the unit named, all optional.

use serde::{Deserialize, Serialize};

/// What the weight on the line is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum LeadMaterial {
    /// The metal lead.
    Lead,
    /// Anything else: steel, tungsten, stone.
    NonToxic,
}

/// What can be changed between two casts of a rod.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Factor {
    /// Spot: where it was cast, range included.
    Spot,
    /// Bait.
    Bait,
    /// Colour of the bait.
    Colour,
    /// Height of the pop-up off the bottom.
    Height,
    /// Length of the hooklength.
    Hooklength,
    /// Hook size.
    HookSize,
    /// Lead or feeder weight.
    Lead,
    /// Leader.
    Leader,
}

/// What is on the end of the line. Every field may be left empty.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(default)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Rig {
    /// Bait, in the angler's words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bait: Option<String>,
    /// Colour of the bait.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub colour: Option<String>,
    /// Length of the hooklength in mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hooklength_mm: Option<u32>,
    /// Hook size: a bigger number is a smaller hook.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hook_size: Option<u8>,
    /// Pop-up height, counterweight to hook, in mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub popup_mm: Option<u32>,
    /// Weight of the lead or loaded feeder in mg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lead_mg: Option<u32>,
    /// What that weight is made of.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub material: Option<LeadMaterial>,
}

/// How far out, in the unit it was entered in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(tag = "unit", rename_all = "snake_case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Reach {
    /// Turns round two sticks; the span between the sticks is stored with the figure.
    Wraps {
        /// Hundredths of a wrap.
        hundredths: u32,
        /// Span between the sticks in tenths of a millimetre (12 ft is 36 576, 2 m is 20 000).
        span_tenth_mm: u32,
    },
    /// Metres from the rod rest.
    Metres {
        /// Centimetres.
        cm: u32,
    },
    /// Yards from the rod rest.
    Yards {
        /// Hundredths of a yard.
        hundredths: u32,
    },
}

/// Where a cast is aimed.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Spot {
    /// The aiming mark, by the id of the op that set it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mark: Option<uuid::Uuid>,
    /// Degrees clockwise from straight out, in hundredths.
    pub bearing_cdeg: i32,
    /// How far out.
    pub reach: Reach,
    /// Whether the line is in the clip.
    #[serde(default)]
    pub clipped: bool,
}
