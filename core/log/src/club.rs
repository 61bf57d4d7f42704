//! The start for advice that a club gives its anglers, as it is logged. It is a choice made on one phone and belongs to no day,
//! so its entries are in the angler's own kit.

use serde::{Deserialize, Serialize};

/// Which days weights were fitted to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "of", rename_all = "snake_case")]
pub enum ClubDays {
    /// All of them.
    All,
    /// Those on one water.
    Water {
        /// Its name.
        water: String,
    },
    /// Those of one month.
    Month {
        /// From 1 to 12.
        month: u8,
    },
    /// Those with a water temperature in this range, in tenths of a degree Celsius.
    WaterTemperature {
        /// The lowest.
        from: i16,
        /// Above the highest.
        until: i16,
    },
}

/// What was fitted to some of a club's days.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClubWeights {
    /// To which days.
    #[serde(flatten)]
    pub days_of: ClubDays,
    /// Anglers who fished them.
    pub anglers: u32,
    /// How many days.
    pub days: u32,
    /// The weight of each kind of shape in millionths, in the order of the kinds of that version.
    pub weights: Vec<u32>,
}

/// A club's start, as it is in the file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClubStart {
    /// The name of the club as typed; may be empty.
    pub name: String,
    /// Version of the shapes that the weights are for.
    pub shapes: u32,
    /// How many anglers' days it was fitted to.
    pub anglers: u32,
    /// To how many days.
    pub days: u32,
    /// Of how many waters.
    pub waters: u32,
    /// The weights: those of all days, and those of some of the days.
    pub fitted: Vec<ClubWeights>,
    /// SHA-256 of the file's record, in hexadecimal digits.
    pub sha256: String,
}
