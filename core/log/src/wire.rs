//! The log's own types for data of other domains, so that renaming a field of a domain never changes the file
//! format. Lengths are whole tenths of a millimetre, weights whole drams or grams, temperatures tenths of a
//! degree.

use serde::{Deserialize, Serialize};

/// A tied hooklength.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Hooklength {
    /// From the loop to the bend of the hook, in tenths of a millimetre.
    #[serde(rename = "length")]
    pub length_tenth_mm: u32,
    /// Line diameter in thousandths of a millimetre.
    pub diameter_um: u16,
    /// Size on the packet: the bigger the number the smaller the hook.
    pub hook_size: u8,
    /// Length of the hair in millimetres, if it has one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hair_mm: Option<u16>,
}

/// Line that a tie uses beyond its finished length, in tenths of a millimetre.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Allowances {
    /// Taken by the knot at the hook, hair and tag included.
    #[serde(rename = "hook_knot")]
    pub hook_knot_tenth_mm: u32,
    /// Length of the loop; it takes twice that.
    #[serde(rename = "loop_length")]
    pub loop_length_tenth_mm: u32,
    /// Tag left at the loop knot.
    #[serde(rename = "tag")]
    pub tag_tenth_mm: u32,
}

/// A weight in the unit it was read in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Weight {
    /// Whole drams.
    Drams(i64),
    /// Whole grams.
    Grams(i64),
}

/// What a net may hold.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NetHolds {
    /// Any fish.
    Anything,
    /// Only fish of these kinds.
    Only(Vec<String>),
}

/// One keepnet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NetRule {
    /// The angler's name for it.
    pub name: String,
    /// The most it may hold, if there is a limit.
    pub limit: Option<Weight>,
    /// What may go in.
    pub holds: NetHolds,
}

/// What becomes of a net over its limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OverLimit {
    /// Weighed in at the limit.
    #[default]
    CountsToTheLimit,
    /// Does not count at all.
    DoesNotCount,
}

/// Which kinds of fish count.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Counting {
    /// Every fish.
    #[default]
    Everything,
    /// Only these kinds.
    Only(Vec<String>),
    /// All but these kinds.
    AllBut(Vec<String>),
}

/// The rules of one match.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct MatchRules {
    /// The nets.
    pub nets: Vec<NetRule>,
    /// What becomes of a net over its limit.
    pub over_limit: OverLimit,
    /// Which kinds of fish count.
    pub counting: Counting,
    /// Minutes after all-out in which a fish hooked before it may be landed.
    pub landing_min: u16,
    /// Minutes before all-out at which to sound.
    pub alarms_min: Vec<u16>,
}

/// Where the wind comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs)] // the eight points of the compass
pub enum WindFrom {
    N,
    Ne,
    E,
    Se,
    S,
    Sw,
    W,
    Nw,
}

/// How hard the wind blows, in steps of the Beaufort scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WindStrength {
    /// Force 0.
    Calm,
    /// Forces 1 to 3.
    Light,
    /// Force 4.
    Moderate,
    /// Force 5.
    Fresh,
    /// Forces 6 and 7.
    Strong,
    /// Force 8 and over.
    Gale,
}

/// Colour of the water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WaterColour {
    /// The bottom shows in the margin.
    Clear,
    /// A tinge.
    Tinged,
    /// Coloured.
    Coloured,
    /// As brown as it gets.
    Muddy,
}

/// Conditions as logged; anything may be left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Conditions {
    /// Air, in tenths of a degree Celsius.
    #[serde(rename = "air", skip_serializing_if = "Option::is_none")]
    pub air_tenth_c: Option<i16>,
    /// Water, in tenths of a degree Celsius.
    #[serde(rename = "water", skip_serializing_if = "Option::is_none")]
    pub water_tenth_c: Option<i16>,
    /// Where the wind comes from; nothing when calm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wind_from: Option<WindFrom>,
    /// How hard it blows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wind: Option<WindStrength>,
    /// Eighths of the sky in cloud.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cloud: Option<u8>,
    /// Colour of the water.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub colour: Option<WaterColour>,
}

/// What kind of thing is in the water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FeatureKind {
    /// A rise of the bottom.
    Bar,
    /// A step down.
    DropOff,
    /// A hole.
    Hole,
    /// Weed.
    Weed,
    /// Silt.
    Silt,
    /// Gravel.
    Gravel,
    /// Clay.
    Clay,
    /// An island or its margin.
    Island,
    /// Fish seen.
    FishSeen,
    /// Anything else.
    Other,
}
